"""How names, the language's own functions, tables and collections are read."""

from reviewer.judging.expression import Aggregate, Call, Expression, Given, Name, Table
from reviewer.judging.language_error import LanguageError
from reviewer.judging.pratt import ADD, OF, Parser
from reviewer.judging.tokens import Token
from reviewer.notation.nearest import nearest

MOST_ARGUMENTS = 20

FUNCTIONS = {
    **dict.fromkeys(["abs", "sqrt", "sin", "cos", "tan", "asin", "acos", "atan"], (1, 1)),
    **dict.fromkeys(["min", "max"], (2, MOST_ARGUMENTS)),
}
AGGREGATES = ("largest", "least", "sum")
_CALLED = frozenset({*FUNCTIONS, "table", "given"})
_COLLECTED = {"max": "largest", "min": "least", **dict(zip(AGGREGATES, AGGREGATES, strict=True))}


def read_name(parser: Parser, token: Token) -> Expression:
    """Read what begins with a word: a name, a call, or a collection's `largest of`."""
    following = parser.tokens[parser.at]
    if following.kind == "(":
        return _call(parser, token)
    if following.text == "of" and following.kind == "name":
        return _aggregate(parser, token)
    if token.text in _CALLED:
        raise LanguageError(
            token.span,
            f"{token.text} is a function and needs what it works on",
            token.text,
            "parentheses behind it",
            f"write {token.text}(...)",
        )
    return Name(token.text, token.span)


def _call(parser: Parser, token: Token) -> Expression:
    if token.text not in _CALLED:
        raise _unknown(token)
    parser.expect("(", "(")
    if token.text == "given":
        inner = parser.expect("name", "the name of a quantity")
        parser.expect(")", ")")
        return Given(Name(inner.text, inner.span), parser.span(token.start))
    if token.text == "table":
        return _table(parser, token)
    arguments = [parser.condition(0)]
    while parser.passes(","):
        arguments.append(parser.condition(0))
    parser.expect(")", "an operator, a comma or )")
    least, most = FUNCTIONS[token.text]
    if not least <= len(arguments) <= most:
        raise _wrong_count(parser, token, len(arguments))
    return Call(token.text, tuple(arguments), parser.span(token.start))


def _unknown(token: Token) -> LanguageError:
    meant = nearest(token.text, _CALLED)
    mend = f"write {meant}(...)" if meant else None
    if token.text in AGGREGATES:
        mend = f"write {token.text} of ..."
    return LanguageError(
        token.span,
        f"{token.text!r} is none of the functions",
        token.text,
        f"one of {', '.join(sorted(_CALLED))}",
        mend,
    )


def _wrong_count(parser: Parser, token: Token, count: int) -> LanguageError:
    least, most = FUNCTIONS[token.text]
    collected = _COLLECTED.get(token.text)
    return LanguageError(
        parser.span(token.start),
        f"{token.text} has the wrong number of values",
        str(count),
        "one" if most == 1 else f"from {least} to {most}",
        f"write {collected} of ... for a collection" if collected and count == 1 else None,
    )


def _table(parser: Parser, token: Token) -> Expression:
    argument = parser.condition(0)
    parser.expect(",", "an operator or a comma")
    parser.expect("[", "the table's points, as in [1 m: 20 N, 2 m: 30 N]")
    points: list[tuple[Expression, Expression]] = []
    while not points or parser.passes(","):
        at = _constant(parser)
        parser.expect(":", "a colon and the value at that point")
        points.append((at, _constant(parser)))
    parser.expect("]", "a comma or ]")
    parser.expect(")", ")")
    return Table(argument, tuple(points), parser.span(token.start))


def _constant(parser: Parser) -> Expression:
    """Read a number that stands in the text, with its sign."""
    token = parser.tokens[parser.at + (parser.tokens[parser.at].kind == "-")]
    if token.kind != "number":
        raise LanguageError(
            token.span,
            "a table's points are constant numbers",
            token.text or "the end",
            "a number with its unit",
        )
    return parser.condition(ADD)


def _aggregate(parser: Parser, token: Token) -> Expression:
    if token.text not in AGGREGATES:
        meant = _COLLECTED.get(token.text) or nearest(token.text, AGGREGATES)
        raise LanguageError(
            token.span,
            f"{token.text!r} cannot be taken of a collection",
            token.text,
            f"one of {', '.join(AGGREGATES)}",
            f"write {meant} of" if meant else None,
        )
    parser.at += 1
    return Aggregate(token.text, parser.condition(OF), parser.span(token.start))
