"""How each operator of the language is read."""

from reviewer.judging.exponent import read_exponent
from reviewer.judging.expression import (
    Among,
    Arithmetic,
    Comparison,
    Every,
    Expression,
    Logical,
    Negative,
    Not,
    Power,
    Quantity,
    Text,
)
from reviewer.judging.language_error import LanguageError
from reviewer.judging.literals import negated
from reviewer.judging.pratt import (
    ADD,
    AND,
    COMPARE,
    MULTIPLY,
    NEGATE,
    NOT,
    OR,
    RAISE,
    Infix,
    Parser,
    Prefix,
)
from reviewer.judging.tokens import Token

COMPARISONS = ("<", "<=", ">", ">=", "==", "!=")
_SAME_WAY = ({"<", "<="}, {">", ">="})


def _literal(_: Parser, token: Token) -> Expression:
    assert token.literal is not None
    return token.literal


def _parenthesis(parser: Parser, _: Token) -> Expression:
    inner = parser.condition(0)
    parser.expect(")", "an operator or )")
    return inner


def _negative(parser: Parser, token: Token) -> Expression:
    operand = parser.condition(NEGATE)
    span = parser.span(token.start)
    if isinstance(operand, Quantity) and not operand.from_zero:
        return negated(operand, span)
    return Negative(operand, span)


def _not(parser: Parser, token: Token) -> Expression:
    return Not(parser.condition(NOT), parser.span(token.start))


def _every(parser: Parser, token: Token) -> Expression:
    return Every(parser.condition(NOT), parser.span(token.start))


def _sum(parser: Parser, left: Expression, token: Token, start: int) -> Expression:
    return Arithmetic(token.kind, left, parser.condition(ADD), parser.span(start))


def _product(parser: Parser, left: Expression, token: Token, start: int) -> Expression:
    return Arithmetic(token.kind, left, parser.condition(MULTIPLY), parser.span(start))


def _power(parser: Parser, left: Expression, token: Token, start: int) -> Expression:
    behind_unit = parser.tokens[parser.at - 2]
    if isinstance(left, Quantity) and left.unit and behind_unit.kind == "number":
        raise LanguageError(
            (start, token.end),
            "the power could be that of the unit or of the quantity",
            f"{behind_unit.text} ^",
            "one or the other",
            f"write ({behind_unit.text})^ for the quantity's",
        )
    exponent, parser.at = read_exponent(parser.tokens, parser.at)
    return Power(left, exponent, parser.span(start))


def _logical(parser: Parser, left: Expression, token: Token, start: int) -> Expression:
    binding = AND if token.kind == "and" else OR
    operands = [left, parser.condition(binding)]
    while parser.passes(token.kind):
        operands.append(parser.condition(binding))
    return Logical(token.kind, tuple(operands), parser.span(start))


def _comparison(parser: Parser, left: Expression, token: Token, start: int) -> Expression:
    operands, operators = [left, parser.condition(COMPARE)], [token.kind]
    while parser.tokens[parser.at].kind in COMPARISONS:
        operators.append(parser.tokens[parser.at].kind)
        parser.at += 1
        operands.append(parser.condition(COMPARE))
    span = parser.span(start)
    one_way = any(set(operators) <= way for way in _SAME_WAY)
    if len(operators) > 2 or (len(operators) == 2 and not one_way):
        raise LanguageError(
            span,
            "the comparisons make no range",
            " ".join(operators),
            "one comparison, or a range such as 5 mm <= gap <= 8 mm",
            "join comparisons by and",
        )
    return Comparison(tuple(operands), tuple(operators), span)


def _among(parser: Parser, left: Expression, _: Token, start: int) -> Expression:
    parser.expect("[", "a list of texts in brackets")
    texts: list[Text] = []
    while not texts or parser.passes(","):
        literal = parser.expect("text", "a text in quotes").literal
        assert isinstance(literal, Text)
        texts.append(literal)
    parser.expect("]", ", or ]")
    return Among(left, tuple(texts), parser.span(start))


PREFIX: dict[str, Prefix] = {
    "number": _literal,
    "text": _literal,
    "(": _parenthesis,
    "-": _negative,
    "not": _not,
    "every": _every,
}

INFIX: dict[str, tuple[int, Infix]] = {
    "or": (OR, _logical),
    "and": (AND, _logical),
    "in": (COMPARE, _among),
    "+": (ADD, _sum),
    "-": (ADD, _sum),
    "*": (MULTIPLY, _product),
    "/": (MULTIPLY, _product),
    "^": (RAISE, _power),
    **dict.fromkeys(COMPARISONS, (COMPARE, _comparison)),
}
