"""How many processes review, and that one alone does it without any more machinery."""

import os
from collections.abc import Iterator, Sequence

from reviewer.command.desk import Desk
from reviewer.command.done import Done
from reviewer.command.inputs import Input

FROM = 8  # designs from which more than one process is worth its start
MOST = 8  # processes, where no number is asked for


def workers_for(asked: int | None, designs: int) -> int:
    """How many processes: as asked, else one for few designs, and as many as there are cores."""
    if asked is not None:
        return max(1, min(asked, designs))
    return min(_cores(), MOST) if designs >= FROM else 1


def _cores() -> int:
    """How many cores this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def all_done(desk: Desk, inputs: Sequence[Input], workers: int) -> Iterator[Done]:
    """What each design came to, in order, whoever reviewed it."""
    if workers < 2:
        return desk.all_done(inputs)
    from reviewer.command.crew import crew_done  # processes are not wanted for one design

    return crew_done(desk, inputs, workers)
