"""The core of the parser: operators by how tight they bind (Pratt, POPL 1973)."""

from collections.abc import Callable, Mapping

from reviewer.judging.expression import Expression, Span
from reviewer.judging.language_error import LanguageError
from reviewer.judging.tokens import Token
from reviewer.judging.unexpected import VALUE, unexpected

DEEPEST = 50

OR, AND, NOT, COMPARE, ADD, MULTIPLY, NEGATE, RAISE, OF = range(10, 100, 10)

Prefix = Callable[["Parser", Token], Expression]
Infix = Callable[["Parser", Expression, Token, int], Expression]


class Parser:
    """Reads tokens from left to right; `at` is the next one.

    `prefix` reads what begins with a token of a kind. `infix` gives how tight an operator binds,
    and reads it and what is right of it, from the left side and where that starts.
    """

    __slots__ = ("at", "depth", "infix", "prefix", "tokens")

    def __init__(
        self,
        found: list[Token],
        prefix: Mapping[str, Prefix],
        infix: Mapping[str, tuple[int, Infix]],
    ) -> None:
        self.tokens = found
        self.prefix = prefix
        self.infix = infix
        self.at = 0
        self.depth = 0

    def condition(self, binding: int) -> Expression:
        """Read what binds tighter than `binding`: a value, and the operators that follow it."""
        self.depth += 1
        first = self.tokens[self.at]
        if self.depth > DEEPEST:
            raise too_deep(first.span)
        prefix = self.prefix.get(first.kind)
        if prefix is None or (binding > NOT and first.kind in {"not", "every"}):
            raise unexpected(self.tokens, self.at, VALUE)
        self.at += 1
        left = prefix(self, first)
        while True:
            token = self.tokens[self.at]
            infix = self.infix.get(token.kind)
            if infix is None or infix[0] <= binding:
                break
            self.at += 1
            left = infix[1](self, left, token, first.start)
        self.depth -= 1
        return left

    def expect(self, kind: str, expected: str) -> Token:
        """Pass over a token of one kind, or refuse what stands in its place."""
        token = self.tokens[self.at]
        if token.kind != kind:
            raise unexpected(self.tokens, self.at, expected)
        self.at += 1
        return token

    def passes(self, kind: str) -> bool:
        """Pass over a token if it is of one kind, and say whether it was."""
        found = self.tokens[self.at].kind == kind
        self.at += found
        return found

    def span(self, start: int) -> Span:
        """From a place to the end of the last token read."""
        return (start, self.tokens[self.at - 1].end)


def too_deep(span: Span) -> LanguageError:
    """Return the error for an expression that is nested without end."""
    return LanguageError(
        span,
        "the expression is nested too deep",
        f"more than {DEEPEST} levels",
        f"at most {DEEPEST}",
        "split it into rules of its own, or group a long chain in parentheses",
    )
