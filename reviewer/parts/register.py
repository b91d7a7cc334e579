"""Registering kinds: each is checked before the first design is, and refused with the mend."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from reviewer.parts.any_part import ANY
from reviewer.parts.facts import FACTS, LIMIT
from reviewer.parts.kind import Kind
from reviewer.parts.measurement import MEASUREMENT
from reviewer.parts.row_checks import check_row, check_words, scopes_of
from reviewer.parts.shop_facts import SHOP

OURS = "reviewer"
RESERVED = frozenset(
    {FACTS.name, MEASUREMENT.name, ANY.name, "load", "carrier", "carried", SHOP, LIMIT}
)
NONE: Mapping[str, Kind] = MappingProxyType({})
LOAD_PATH = (
    *("carried_by", "weight", "centre.x", "centre.y", "place.x", "place.y"),
    *("whole", "shares", "action"),
)


@dataclass(frozen=True, slots=True)
class Fault:
    """What is wrong with a kind, or with one of its rows, and how to mend it."""

    kind: str
    row: str
    what: str
    mend: str

    def __str__(self) -> str:
        """Place, what is wrong and the mend, in one line."""
        row = f", row {self.row}" if self.row else ""
        return f"kind {self.kind}{row}: {self.what}; {self.mend}"


class KindError(Exception):
    """Kinds that cannot be registered: the package that brings them, and all their faults."""

    def __init__(self, plug_in: str, faults: Iterable[Fault]) -> None:
        """Tell each fault on a line of its own."""
        self.plug_in = plug_in
        self.faults = tuple(faults)
        super().__init__("\n".join(f"{plug_in}, {fault}" for fault in self.faults))


def register(
    kinds: Iterable[Kind], *, plug_in: str = OURS, beside: Mapping[str, Kind] = NONE
) -> Mapping[str, Kind]:
    """The kinds by name, with those that are registered already, each checked.

    `plug_in` is the package that brings them. Raises KindError with every fault of all of them.
    What rows say in words (defaults, units in docstrings) takes as long to check as all the rest:
    of the kinds that come with Reviewer a test does it once, of a plug-in's it is done here.
    """
    brought = tuple(kinds)
    known = {**{kind.name: kind for kind in reversed(brought)}, **beside}
    faults = [
        *(fault for kind in brought for fault in _misnamed(kind, known)),
        *(fault for kind in brought for fault in _off_the_load_path(kind)),
        *(fault for kind in brought for fault in problems_of(kind, known, words=plug_in != OURS)),
    ]
    if faults:
        raise KindError(plug_in, faults)
    return MappingProxyType({**beside, **{kind.name: kind for kind in brought}})


def problems_of(kind: Kind, kinds: Mapping[str, Kind], *, words: bool = True) -> tuple[Fault, ...]:
    """Everything that is wrong with a kind's rows beside the other kinds; of `words`, if asked."""
    scopes = scopes_of(kind, kinds)
    checks = (check_row, check_words) if words else (check_row,)
    found = [
        Fault(kind.name, row.path, what, mend)
        for row in kind.rows
        for check in checks
        for what, mend in check(row, scopes)
    ]
    return (*_doubled(kind), *found, *_circles(kind))


def _misnamed(kind: Kind, known: Mapping[str, Kind]) -> Iterator[Fault]:
    if kind.name in RESERVED:
        what = "the name means something else in designs and rules"
        yield Fault(kind.name, "", what, "give it a name of its own")
    elif known[kind.name] is not kind:
        yield Fault(kind.name, "", "there is a kind of this name", "give it a name of its own")


def _off_the_load_path(kind: Kind) -> Iterator[Fault]:
    """Rows without which what a part carries would not reach the ground."""
    missing = [path for path in LOAD_PATH if kind.carries_load and path not in kind.by_path]
    if missing:
        what = f"it carries load and has no row {', '.join(missing)}"
        mend = "add the rows of tree() and of single() or array(), or set carries_load=False"
        yield Fault(kind.name, "", what, mend)


def _doubled(kind: Kind) -> Iterator[Fault]:
    seen: set[str] = set()
    for row in kind.rows:
        if row.path in seen:
            yield Fault(kind.name, row.path, "two rows have this path", "take one of them out")
        seen.add(row.path)


def _circles(kind: Kind) -> Iterator[Fault]:
    """Rows of one kind that need each other: nothing could be computed first."""
    needs = {row.path: [need.removesuffix("?") for need in row.needs.values()] for row in kind.rows}
    done: set[str] = set()
    for start in needs:
        circle = _circle_from(start, needs, done, [])
        if circle:
            chain = " needs ".join([*circle, circle[0]])
            what = f"rows need each other in a circle: {chain}"
            yield Fault(kind.name, circle[0], what, "take one need out")
            return


def _circle_from(
    path: str, needs: Mapping[str, list[str]], done: set[str], walked: list[str]
) -> list[str]:
    if path in walked:
        return walked[walked.index(path) :]
    if path in done or path not in needs:
        return []
    done.add(path)
    for need in needs[path]:
        circle = _circle_from(need, needs, done, [*walked, path])
        if circle:
            return circle
    return []
