"""The text of `measured` that a load test leaves to fill in, ready to be copied into a design."""

import json
import re
from collections.abc import Iterable, Iterator, Sequence

from reviewer.notation.plain import plain
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.studying.load_test import LoadTest, Reading

SIMPLE = re.compile(r"[A-Za-z][A-Za-z0-9_ -]*")
WIDTH = 72
GAP = "____"


def record_lines(values: Quantities, tests: Iterable[LoadTest]) -> Iterator[str]:
    """The lines of `measured`, with gaps where something has to be filled in."""
    yield "measured:"
    for test in tests:
        for reading in test.readings:
            yield from _entry(values, test, reading)


def _entry(values: Quantities, test: LoadTest, reading: Reading) -> Iterator[str]:
    unit = values.unit("m").symbol
    under = [written(each) for each in test.under]
    yield f"  - quantity: {reading.quantity}"
    yield f"    under: {under[0]}" if len(under) == 1 else f"    under: [{', '.join(under)}]"
    if test.configuration:
        yield f"    configuration: {written(test.configuration)}"
    yield "    zero: own weight"
    yield f"    value: {GAP} {unit} ± {GAP} {unit}"
    yield f"    by: {GAP}"
    yield f"    on: {GAP}-{GAP[:2]}-{GAP[:2]}"
    if values.design.revision:
        yield f"    revision: {written(values.design.revision)}"
    yield "    fingerprint: >-"
    yield from _wrapped([f"{name} {mark}" for name, mark in reading.marks.items()])


def _wrapped(marks: Sequence[str]) -> Iterator[str]:
    """Marks in lines that fit, none of them broken."""
    line = ""
    for number, mark in enumerate(marks, 1):
        piece = mark + ("," if number < len(marks) else "")
        if line and len(line) + 1 + len(piece) > WIDTH:
            yield f"      {line}"
            line = ""
        line = f"{line} {piece}".lstrip()
    yield f"      {line}"


def written(text: str) -> str:
    """A text as YAML has it, in quotes where it could be read as something else.

    >>> written("C"), written("1.0"), written("no: more")
    ('C', '"1.0"', '"no: more"')
    """
    safe = plain(text)
    return safe if SIMPLE.fullmatch(safe) else json.dumps(safe, ensure_ascii=False)
