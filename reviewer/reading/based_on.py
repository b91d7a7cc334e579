"""Designs that are based on another file of their tree: a family of sizes, or the next revision.

What differs is merged by key: a table with the table of the same key, anything else takes the place
of what was there. `null` takes a key out. Each value keeps the file and line that it stands in.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from reviewer.notation.problem import Place, Problem
from reviewer.reading.events import read_yaml
from reviewer.reading.folder import Folder, Refused
from reviewer.reading.tree import Document, Node, Scalar, Table
from reviewer.reading.words import shown

BASED_ON = "based_on"
MOST_BASES = 5
NULLS = frozenset(("null", "Null", "NULL", "~"))  # an empty value is a slip, and takes nothing out


@dataclass(frozen=True, slots=True)
class Family:
    """A design merged with the files that it is based on.

    `documents` are the files themselves, the design's own first.
    """

    document: Document
    documents: tuple[Document, ...]

    @property
    def lines(self) -> Mapping[str, tuple[str, ...]]:
        """The lines of each file by its path."""
        return {each.path: each.lines for each in self.documents}


def with_bases(document: Document, folder: Folder | None) -> Family:
    """Merge a design with the files that it is based on, if it is; problems are the document's.

    Circles, chains of more than five files, and paths that leave the folder are problems. Of a
    design whose base cannot be read the document has no root.
    """
    root = document.root
    if not isinstance(root, Table) or root.get(BASED_ON) is None:
        return Family(document, (document,))
    chain = _Chain([document], folder)
    chain.follow()
    own, *bases = chain.documents
    problems = [*own.problems, *(problem for base in bases for problem in base.problems)]
    roots = [each.root for each in chain.documents if isinstance(each.root, Table)]
    found: Table | None = None
    sound = not chain.problems and not any(base.problems for base in bases)
    if sound and len(roots) == len(chain.documents):
        found = roots[-1]
        for each, table in reversed(list(zip(chain.documents[:-1], roots[:-1], strict=True))):
            found = _Merge(each, problems).merged(found, table)
        found = _without_own(found, root)
    problems += chain.problems
    return Family(replace(own, root=found, problems=tuple(problems)), tuple(chain.documents))


def _without_own(merged: Table, own: Table) -> Table:
    """The merged table with the design's own `based_on`, not that of a file below."""
    entries = [each for each in merged.entries if each[0].text != BASED_ON]
    key, value = own.key(BASED_ON), own.get(BASED_ON)
    assert key is not None
    assert value is not None
    return Table(((key, value), *entries), own.place)


@dataclass
class _Chain:
    """A design and the files that it is based on, each on the next."""

    documents: list[Document]
    folder: Folder | None
    problems: list[Problem] = field(default_factory=list)

    def follow(self) -> None:
        """Read one file after the other, until one is based on nothing."""
        seen = {_real(self.documents[0].path)}
        while (value := self._next()) is not None:
            try:
                document = self._read(value, seen)
            except Refused as refused:
                self._refuse(value.place, refused)
                return
            self.documents.append(document)

    def _next(self) -> Scalar | None:
        root = self.documents[-1].root
        value = root.get(BASED_ON) if isinstance(root, Table) else None
        if value is None or isinstance(value, Scalar):
            return value
        words = ("based_on names one file", "a list or table", "the path of a file", None)
        self._refuse(value.place, Refused(words))
        return None

    def _read(self, value: Scalar, seen: set[Path]) -> Document:
        """Read the next file. Raises Refused."""
        if self.folder is None:
            what = "a design that comes as text cannot be based on a file"
            mend = "save it, and review the file"
            raise Refused((what, shown(value.text), "a design in a file", mend))
        path = self.folder.path(value.text, self.documents[-1].path)
        if _real(path) in seen:
            chain = " on ".join([*(each.path for each in self.documents), path])
            what, expected = "designs are based on each other in a circle", "an end of the chain"
            raise Refused((what, chain, expected, None))
        if len(self.documents) > MOST_BASES:
            what = "designs are based on each other in too long a chain"
            found, expected = f"more than {MOST_BASES} files", f"at most {MOST_BASES}"
            raise Refused((what, found, expected, "base it on a file further down"))
        seen.add(_real(path))
        return read_yaml(self.folder.read(path), path)

    def _refuse(self, place: Place, refused: Refused) -> None:
        lines = self.documents[-1].lines
        line = lines[place.line - 1] if 0 < place.line <= len(lines) else None
        self.problems.append(Problem(place, *refused.words, line))


def _real(path: str) -> Path:
    return Path(path).resolve()


class _Merge:
    """Merges the tables of a file into those of the file that it is based on."""

    def __init__(self, document: Document, problems: list[Problem]) -> None:
        self.document = document
        self.problems = problems

    def merged(self, base: Table, own: Table) -> Table:
        """The table of the base with what the own one changes, adds and takes out."""
        changes = {key.text: (key, value) for key, value in own.entries}
        entries = [*self._of_base(base, changes), *self._of_own(own, base)]
        return Table(tuple(entries), own.place)

    def _of_base(
        self, base: Table, changes: Mapping[str, tuple[Scalar, Node]]
    ) -> Iterator[tuple[Scalar, Node]]:
        for key, value in base.entries:
            if key.text not in changes:
                yield key, value
                continue
            own_key, own = changes[key.text]
            if isinstance(own, Table) and isinstance(value, Table):
                yield own_key, self.merged(value, own)
            elif not _takes_out(own):
                yield own_key, own

    def _of_own(self, own: Table, base: Table) -> Iterator[tuple[Scalar, Node]]:
        known = {key.text for key, _ in base.entries}
        for key, value in own.entries:
            if key.text in known:
                continue
            if _takes_out(value):
                self._refuse_nothing(key)
            else:
                yield key, value

    def _refuse_nothing(self, key: Scalar) -> None:
        lines = self.document.lines
        line = lines[key.place.line - 1] if key.place.line <= len(lines) else None
        what = "there is nothing to take out: the file that this one is based on lacks the key"
        expected = "a key of that file, or a value"
        self.problems.append(Problem(key.place, what, shown(key.text), expected, None, line))


def _takes_out(node: Node) -> bool:
    return isinstance(node, Scalar) and not node.quoted and node.text in NULLS
