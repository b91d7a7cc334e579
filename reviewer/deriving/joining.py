"""In which order parts are joined, each to what carries it.

Steps go from the ground up, save where a part says `after`: then the parts that it names have been
joined to their own carriers before, on the bench.
"""

from collections.abc import Iterable

from reviewer.notation.ordering import ordered
from reviewer.reading.design import Design


def joining_order(design: Design) -> tuple[str, ...]:
    """The parts that carry load, in the order in which each is joined to its carrier.

    Where two could come next, the one nearer to the ground does, then the one written first.
    """
    names = [name for name, part in design.parts.items() if part.kind.carries_load]
    before = {name: design.parts[name].given.get("after") for name in names}
    first = ((other, name) for name, given in before.items() if given for other in given.value)
    ground_up = _sorted(names, dict(zip(names, range(len(names)), strict=True)), _carried(design))
    return _sorted(names, {name: place for place, name in enumerate(ground_up)}, first)


def _carried(design: Design) -> Iterable[tuple[str, str]]:
    return ((below, name) for name, part in design.parts.items() for below in part.carried_by)


def _sorted(
    names: Iterable[str], place: dict[str, int], pairs: Iterable[tuple[str, str]]
) -> tuple[str, ...]:
    """Names so that the first of each pair comes before the second, else by their place."""
    known = frozenset(names)
    among = [pair for pair in pairs if known.issuperset(pair)]
    return ordered(known, among, key=place.__getitem__)
