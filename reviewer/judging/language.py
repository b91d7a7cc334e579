"""The language of rules: a small grammar of our own, that can compute and compare, nothing else.

    condition  = comparison | condition ("and" | "or") condition | ("not" | "every") condition
    comparison = number (("<" | "<=" | ">" | ">=" | "==" | "!=") number)*       two, or a range
               | number "in" "[" text ("," text)* "]"
    number     = number ("+" | "-" | "*" | "/") number | "-" number | number "^" exponent
               | literal | text | name | "(" condition ")" | function "(" number ("," number)* ")"
               | "table" "(" number "," "[" number ":" number ("," number ":" number)* "]" ")"
               | ("largest" | "least" | "sum") "of" number | "given" "(" name ")"

Whether the names exist and the dimensions fit is the next step's question (dimensions.py).
"""

from reviewer.judging.calls import read_name
from reviewer.judging.expression import Expression, children
from reviewer.judging.language_error import LanguageError
from reviewer.judging.operators import INFIX, PREFIX
from reviewer.judging.pratt import DEEPEST, Parser, Prefix, too_deep
from reviewer.judging.tokens import tokens
from reviewer.judging.unexpected import REST, unexpected

MOST_NODES = 400

_PREFIX: dict[str, Prefix] = {**PREFIX, "name": read_name}


def parse(text: str) -> Expression:
    """Read an expression. Raises LanguageError, and nothing else, for any text that is none.

    >>> parse("2 mm < gap").operators
    ('<',)
    """
    found = tokens(text)
    parser = Parser(found, _PREFIX, INFIX)
    expression = parser.condition(0)
    if found[parser.at].kind != "end":
        raise unexpected(found, parser.at, REST)
    if len(found) > DEEPEST:
        _check_size(expression)
    return expression


def _check_size(expression: Expression) -> None:
    """Refuse a tree too large or too deep for those who walk it. No node comes without a token."""
    count = 0
    level: list[Expression] = [expression]
    for _ in range(DEEPEST):
        count += len(level)
        level = [child for node in level for child in children(node)]
    if level:
        raise too_deep(expression.span)
    if count > MOST_NODES:
        raise LanguageError(
            expression.span,
            "the expression is too large",
            f"{count} values and operators",
            f"at most {MOST_NODES}",
            "split it into rules of its own",
        )
