"""The words of measurements: what each of them calibrates."""

from collections.abc import Iterable, Iterator

from reviewer.judging.measured import Tested
from reviewer.notation.problem import on_line
from reviewer.notation.show import show
from reviewer.reading.design import Design

DIGITS = 4


def settled_in(design: Design) -> Iterator[str]:
    """The values of a design that measurements settle: a sentence for each."""
    for part in design.parts.values():
        for path, given in part.given.items():
            if given.calibrated_by:
                test = f"{given.calibrated_by} ({on_line(given.place, design.path)})"
                yield f"Calibrated: {part.name}.{path} is {given.text} by the test {test}."


def calibrations_told(tests: Iterable[Tested], own: str) -> Iterator[str]:
    """What the measurements of a design calibrate: a sentence for each value."""
    for test in tests:
        done = test.calibration
        if done is not None:
            after, before = (show(each, done.unit, DIGITS) for each in (done.after, done.before))
            yield (
                f"Calibrated: {done.name} is {after} by the test {done.test} "
                f"({on_line(done.place, own)}), and {before} without it."
            )
