"""Designs of which what they came to is kept, and the others: all in their order."""

from collections.abc import Iterator, Sequence

from reviewer.command.cache import Cache
from reviewer.command.desk import Desk
from reviewer.command.done import Done
from reviewer.command.entry import done_of
from reviewer.command.inputs import STANDARD_INPUT, Input
from reviewer.command.workers import all_done, workers_for

AT_HAND = 32 << 20  # bytes of entries that wait in memory; more are read again in their turn

Entries = dict[int, bytes | None]


def kept_or_done(
    desk: Desk, cache: Cache, inputs: Sequence[Input], workers: int | None
) -> Iterator[Done]:
    """What each design came to, in order: as it is kept, else reviewed now."""
    entries = _entries(cache, inputs)
    others = [each for index, each in enumerate(inputs) if index not in entries]
    reviewed = all_done(desk, others, workers_for(workers, len(others)))
    for index, each in enumerate(inputs):
        if index not in entries:
            yield next(reviewed)
            continue
        body = entries.pop(index) or _entry(cache, each)
        yield (done_of(body) if body else None) or desk.done(each)


def _entries(cache: Cache, inputs: Sequence[Input]) -> Entries:
    """What is kept of the designs, by their place in the list."""
    found: Entries = {}
    room = AT_HAND
    for index, each in enumerate(inputs):
        body = _entry(cache, each)
        if body is not None:
            room -= len(body)
            found[index] = body if room > 0 else None
    return found


def _entry(cache: Cache, each: Input) -> bytes | None:
    if each.problem is not None or each.path == STANDARD_INPUT:
        return None
    try:
        return cache.found(cache.key(each, each.read()))
    except OSError:
        return None
