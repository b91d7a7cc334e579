"""What becomes of a measurement: predicted and read, what explains it, what has changed since."""

from dataclasses import dataclass
from math import isnan

from reviewer.notation.problem import Place
from reviewer.notation.units import Unit
from reviewer.reading.design import Measured


@dataclass(frozen=True, slots=True)
class Explanation:
    """A value that would explain a reading: what it is now, and what it would have to be.

    SI values with the `unit` to show them in. `text` and `place` are those of a given value; one
    that the design computes or takes from stock has neither. `strain` is the change over the
    value's tolerance, or over what is usual of it where it has none.
    """

    name: str
    now: float
    needed: float
    unit: Unit
    strain: float
    text: str = ""
    place: Place | None = None


@dataclass(frozen=True, slots=True)
class Stale:
    """What has changed since something was measured.

    `changes` are the values that differ, each told with both; `unknown` says why nobody can tell.
    """

    changes: tuple[str, ...] = ()
    unknown: str = ""

    @property
    def is_fresh(self) -> bool:
        """Whether it is known that nothing has changed."""
        return not self.changes and not self.unknown


@dataclass(frozen=True, slots=True)
class Calibration:
    """A value that a proven measurement settles, in place of what the design would take."""

    test: str
    name: str
    before: float
    after: float
    unit: Unit
    place: Place


@dataclass(frozen=True, slots=True)
class Tested:
    """One measurement held against the prediction, all in SI with the `unit` to show it in.

    `least` and `most` are the prediction at the worst corners of the tolerances; `tolerated` is
    how far the reading may be off by them and by its own uncertainty; `scatter` is the share of the
    prediction that formulas leave out. `explanations` are None where none were searched.
    `why_unknown` tells why there is no prediction, `why_uncalibrated` why nothing was calibrated.
    """

    measured: Measured
    loading: str
    predicted: float
    least: float
    most: float
    tolerated: float
    scatter: float
    unit: Unit
    stale: Stale
    explanations: tuple[Explanation, ...] | None = ()
    calibration: Calibration | None = None
    why_unknown: tuple[str, ...] = ()
    why_uncalibrated: str = ""

    @property
    def read(self) -> float:
        """What was read."""
        return float(self.measured.value.value)

    @property
    def difference(self) -> float:
        """How far the reading is from the prediction."""
        return abs(self.read - self.predicted)

    @property
    def scale(self) -> float:
        """What differences are a share of: the prediction, or the reading where that is zero."""
        return abs(self.predicted) or abs(self.read) or 1.0

    @property
    def allowed(self) -> float:
        """How far the reading may be off in all."""
        return self.tolerated + self.scatter * self.scale

    @property
    def agrees(self) -> bool | None:
        """Whether the reading is within its band; None where that is unknown."""
        if isnan(self.difference) or isnan(self.allowed):
            return None
        return self.difference <= self.allowed * (1 + 1e-9)
