"""The one error of the language: what is wrong in an expression, where, and how to mend it."""

from reviewer.judging.expression import Span
from reviewer.notation.problem import Place, Problem, render


class LanguageError(ValueError):
    """An expression or a text that is refused, as data.

    `span` is the start and the end of the fault in the text, in code points; `what`, `found`,
    `expected` and `mend` are those of a `Problem`.
    """

    def __init__(
        self, span: Span, what: str, found: str, expected: str, mend: str | None = None
    ) -> None:
        super().__init__(span, what, found, expected, mend)
        self.span = span
        self.what = what
        self.found = found
        self.expected = expected
        self.mend = mend

    def __str__(self) -> str:
        return self.what

    def moved(self, by: int) -> "LanguageError":
        """Return the same error in a text that begins `by` characters further on."""
        span = (self.span[0] + by, self.span[1] + by)
        return LanguageError(span, self.what, self.found, self.expected, self.mend)

    def problem(self, text: str, path: str = "expression") -> Problem:
        """Place the error in the text that was read, as if that were a file of its own."""
        start = min(self.span[0], len(text))
        first = text.rfind("\n", 0, start) + 1
        last = text.find("\n", start)
        source_line = text[first : last if last >= 0 else len(text)]
        end = min(max(self.span[1], start + 1), first + max(len(source_line), 1))
        place = Place(path, text.count("\n", 0, start) + 1, start - first + 1, end - first + 1)
        return Problem(place, self.what, self.found, self.expected, self.mend, source_line)

    def with_caret(self, text: str) -> str:
        """Print the error with the line of the text that it is in and a caret below."""
        return render(self.problem(text))
