"""Keys that a kind does not have: what was probably meant, and where it belongs."""

from collections.abc import Iterator

from reviewer.notation.nearest import nearest
from reviewer.parts.kind import Keys, Kind
from reviewer.reading.context import Context, article, listed, write
from reviewer.reading.tree import Scalar
from reviewer.reading.words import shown

MOST_PLACES = 3


def refuse_key(
    key: Scalar, keys: Keys, prefix: str, kind: Kind, context: Context, skip: frozenset[str]
) -> None:
    """Report an unknown key, with the nearest known one or the place where it belongs."""
    path = prefix + key.text
    known = [*keys.children, *sorted(skip)]
    row = kind.by_path.get(path)
    if row is not None and row.given is None:
        what = f"{path} of {article(kind.name)} is computed, not given"
    else:
        what = f"{article(kind.name)} has no field {shown(path)}"
    expected = f"one of {listed(known)}" if len(known) > 1 else listed(known)
    mend = None if path in kind.by_path else _mend(key.text, known, path, kind)
    context.refuse(key.place, what, shown(key.text), expected, mend)


def _mend(word: str, known: list[str], path: str, kind: Kind) -> str | None:
    """The place where this very key belongs, else the nearest key here, else one elsewhere."""
    paths = [row.path for row in kind.given_rows() if not row.only]
    if "." in word and path in paths:
        return f"write {as_table(path)}"
    exact = list(_ending_in(word, paths))
    if exact:
        return f"write {' or '.join(as_table(each) for each in exact[:MOST_PLACES])}"
    near = nearest(word, known)
    if near is None:
        other = nearest(word, {each.rpartition(".")[2] for each in paths})
        elsewhere = list(_ending_in(other, paths)) if other else []
        near = " or ".join(as_table(each) for each in elsewhere[:MOST_PLACES])
    return write(near)


def _ending_in(word: str, paths: list[str]) -> Iterator[str]:
    return (path for path in paths if path.rpartition(".")[2] == word)


def as_table(path: str) -> str:
    """Write a path as the tables that it stands in.

    >>> as_table("plate.thickness"), as_table("mass")
    ('plate: {thickness: ...}', 'mass: ...')
    """
    *groups, name = path.split(".")
    return "".join(f"{group}: {{" for group in groups) + f"{name}: ..." + "}" * len(groups)
