"""Names in an order in which each comes after those that it needs.

The standard library's sorter, and not networkx: loading that takes a tenth of a cold review, and an
order is all that a review needs of a graph that holds no circle.
"""

from collections.abc import Callable, Hashable, Iterable
from graphlib import CycleError, TopologicalSorter
from heapq import heappop, heappush
from typing import Any, TypeVar

T = TypeVar("T", bound=Hashable)


class Circle(ValueError):
    """Names that need each other in a circle."""


def ordered(
    names: Iterable[T], pairs: Iterable[tuple[T, T]], key: Callable[[T], Any] = lambda name: name
) -> tuple[T, ...]:
    """The names so that the first of each pair comes before the second, else in order of key.

    Raises Circle where there is no such order.

    >>> ordered("cab", [("c", "a")])
    ('b', 'c', 'a')
    """
    sorter: TopologicalSorter[T] = TopologicalSorter()
    for name in names:
        sorter.add(name)
    for first, second in pairs:
        sorter.add(second, first)
    try:
        sorter.prepare()
    except CycleError:
        raise Circle("there is no order") from None
    ready: list[tuple[Any, T]] = []
    found: list[T] = []
    while sorter.is_active():
        for name in sorter.get_ready():
            heappush(ready, (key(name), name))
        name = heappop(ready)[1]
        found.append(name)
        sorter.done(name)
    return tuple(found)
