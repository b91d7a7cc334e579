"""Many designs in several processes: the same answers in the same order as with one.

Each process gets a few designs at a time and sends back what each came to, as plain data. When one
ends before its time, the design that it was at is reported as a fault, and another goes on.
"""

import signal
import sys
from collections import deque
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from multiprocessing import get_context
from multiprocessing.connection import Connection, wait
from typing import Any

from reviewer.command.desk import CHUNK, Desk
from reviewer.command.done import Done
from reviewer.command.inputs import Input, fetched
from reviewer.notation.under_way import telling

ROUNDS = 2  # chunks for each process, where there are few designs


class Ended(Exception):
    """A process ended while it reviewed a design."""


def crew_done(desk: Desk, inputs: Sequence[Input], workers: int) -> Iterator[Done]:
    """What each design came to, in order, reviewed by some processes."""
    crew = _Crew(desk, inputs, workers)
    try:
        yield from crew.in_order()
    finally:
        crew.dismiss()


@dataclass
class _Worker:
    """A process, and the designs that it has still to send back.

    It reviews them together, or `alone` one after the other, and then `at` is the one it is at.
    """

    process: Any
    line: Connection
    chunk: deque[int] = field(default_factory=deque)
    at: int | None = None
    alone: bool = False


class _Crew:
    """Processes at work on a list of designs."""

    def __init__(self, desk: Desk, inputs: Sequence[Input], workers: int) -> None:
        self.desk = desk
        self.inputs = inputs
        self.context: Any = get_context("fork" if _forks() else "spawn")
        size = min(CHUNK, max(1, len(inputs) // (ROUNDS * workers)))
        self.chunks = deque(
            range(start, min(start + size, len(inputs))) for start in range(0, len(inputs), size)
        )
        self.ahead = (workers + 1) * size  # designs that may wait for one before them
        self.next = 0
        self.ready: dict[int, Done] = {}
        desk.packs.of()  # read once, before there are more processes
        self.workers = [self._hired() for _ in range(workers)]

    def in_order(self) -> Iterator[Done]:
        """What each design came to, as soon as all before it have been told."""
        while self.next < len(self.inputs):
            self._give_out()
            if self.next in self.ready:
                yield self.ready.pop(self.next)
                self.next += 1
                continue
            busy = {each.line: each for each in self.workers if each.chunk}
            for line in wait(list(busy)):
                self._take_in(busy[line])  # type: ignore[index]

    def dismiss(self) -> None:
        """Let no process be left."""
        for each in self.workers:
            each.line.close()
            each.process.kill()
            each.process.join()

    def _hired(self) -> _Worker:
        ours, theirs = self.context.Pipe()
        others = [each.line for each in getattr(self, "workers", [])]
        arguments = (self.desk, theirs, [ours, *others] if _forks() else [])
        process = self.context.Process(target=_work, args=arguments, daemon=True)
        process.start()
        theirs.close()
        return _Worker(process, ours)

    def _give_out(self) -> None:
        for each in self.workers:
            if each.chunk or not self.chunks or self.chunks[0].start >= self.next + self.ahead:
                continue
            self._send(each, self.chunks.popleft())

    def _send(self, worker: _Worker, numbers: Sequence[int], *, alone: bool = False) -> None:
        worker.chunk, worker.at, worker.alone = deque(numbers), None, alone
        try:
            tasks = [(number, fetched(self.inputs[number])) for number in numbers]
            worker.line.send((alone, tasks))
        except OSError:
            self._replace(worker)

    def _take_in(self, worker: _Worker) -> None:
        """Take one message: the design that a process is at now, or what one came to."""
        try:
            number, done = worker.line.recv()
        except (EOFError, OSError):
            self._replace(worker)
            return
        if done is None:
            worker.at = number
        else:
            self.ready[number] = done
            worker.chunk.remove(number)
            worker.at = None

    def _replace(self, worker: _Worker) -> None:
        """A process has ended: report the design that it was at, and go on with the others."""
        worker.process.join()
        worker.line.close()
        rest = list(worker.chunk)
        if worker.alone:
            at = rest.pop(0) if worker.at is None else worker.at
            ended = Ended(f"the process that reviewed it ended ({_how(worker.process.exitcode)})")
            self.ready[at] = self.desk.fault(self.inputs[at].path, ended)
            rest = [number for number in rest if number != at]
        place = self.workers.index(worker)
        self.workers.remove(worker)
        self.workers.insert(place, self._hired())
        if rest:
            self._send(self.workers[place], rest, alone=True)  # to see which one it is


def _one_by_one(desk: Desk, line: Connection, tasks: Sequence[tuple[int, Input]]) -> Iterator[Done]:
    """Review some designs, and say of each when it is begun."""
    for number, each in tasks:
        line.send((number, None))
        yield desk.done(each)


def _forks() -> bool:
    return sys.platform == "linux"


def _how(exitcode: int | None) -> str:
    if exitcode is not None and exitcode < 0:
        return signal.Signals(-exitcode).name
    return f"exit status {exitcode}"


def _work(desk: Desk, line: Connection, others: Sequence[Connection]) -> None:
    """What a process does: review what it gets, until nobody is there to give it more."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # whoever began it ends it
    for other in others:
        other.close()
    try:
        with telling(None):  # only whoever began it shows how far it is
            while True:
                alone, tasks = line.recv()
                inputs = [each for _, each in tasks]
                answers = _one_by_one(desk, line, tasks) if alone else desk.all_done(inputs)
                for (number, _), done in zip(tasks, answers, strict=True):
                    line.send((number, done))
    except (EOFError, OSError):
        return
