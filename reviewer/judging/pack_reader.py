"""What the readers of a pack share: one list of problems, each with the line that it is on."""

from collections.abc import Iterable, Sequence

from reviewer.judging.language_error import LanguageError
from reviewer.notation.nearest import nearest
from reviewer.notation.problem import Place, Problem
from reviewer.notation.quantity import QuantityError
from reviewer.reading.tree import Scalar, Table
from reviewer.reading.words import MAX_PROBLEMS


class PackReader:
    """Reads parts of one pack and gathers everything that is wrong with them."""

    def __init__(self, path: str, lines: Sequence[str], problems: list[Problem]) -> None:
        """Read a pack; problems go to the list given."""
        self.path = path
        self.lines = lines
        self.problems = problems

    @property
    def is_full(self) -> bool:
        """Whether there are more problems than a reader can use, so that reading may stop."""
        return len(self.problems) > MAX_PROBLEMS

    def refuse(
        self, place: Place, what: str, found: str, expected: str, mend: str | None = None
    ) -> None:
        """Note a problem, with the line on which it stands."""
        line = self.lines[place.line - 1] if 0 < place.line <= len(self.lines) else None
        self.problems.append(Problem(place, what, found, expected, mend, line))

    def refuse_key(self, key: Scalar, known: Iterable[str], owner: str) -> None:
        """Note a key that nobody knows."""
        names = list(known)
        near = nearest(key.text, names)
        mend = f"write {near}" if near else None
        self.refuse(
            key.place, f"{owner} has no such key", key.text, f"one of {', '.join(names)}", mend
        )

    def text(self, table: Table, key: str) -> str:
        """The text of a key; nothing where it is not there."""
        node = table.get(key)
        if node is None:
            return ""
        if not isinstance(node, Scalar):
            self.refuse(node.place, f"{key} is not a text", "a list or table", "a text")
            return ""
        return node.text

    def refuse_in(self, scalar: Scalar, error: LanguageError) -> None:
        """Note an error of the language at its place within a scalar."""
        place = scalar.place
        line = self.lines[place.line - 1] if place.line <= len(self.lines) else ""
        at = line.find(scalar.text, place.column - 1)
        if at >= 0:
            start, end = error.span
            first = at + 1 + start
            place = Place(place.path, place.line, first, max(first + 1, at + 1 + end))
        self.refuse(place, error.what, error.found, error.expected, error.mend)

    def refuse_quantity(self, scalar: Scalar, error: QuantityError) -> None:
        """Note a quantity that cannot be read; a pack declares no unit for bare numbers."""
        mend = error.mend and error.mend.partition(", or declare ")[0]
        self.refuse(scalar.place, error.what, error.found, error.expected, mend)
