"""The words of measurements: what each of them calibrates."""

from collections.abc import Iterable, Iterator

from reviewer.judging.measured import Tested
from reviewer.notation.problem import on_line
from reviewer.notation.show import show

DIGITS = 4


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
