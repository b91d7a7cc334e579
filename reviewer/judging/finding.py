"""A finding: what one rule says of one part."""

from dataclasses import dataclass
from typing import Literal

from reviewer.judging.influence import Influence
from reviewer.judging.remedies import Remedies
from reviewer.judging.scatter import Scatter
from reviewer.notation.problem import Place
from reviewer.notation.units import Unit
from reviewer.reading.design import Concession

Verdict = Literal["pass", "fail", "open", "review", "not applicable"]
Level = Literal["must", "should", "note"]
Stage = Literal["cutting", "assembling", "loading", "using"]

LEVELS: tuple[Level, ...] = ("must", "should", "note")
STAGES: tuple[Stage, ...] = ("cutting", "assembling", "loading", "using")


@dataclass(frozen=True, slots=True)
class Side:
    """One side of a comparison: SI value, what it is called, and the unit to show it in."""

    value: float
    unit: Unit


@dataclass(frozen=True, slots=True)
class Number:
    """A number that matters to a finding: what it is and its value in the unit to show."""

    name: str
    says: str
    value: float
    unit: Unit


@dataclass(frozen=True, slots=True)
class ByShop:
    """What a shop makes of a rule or of a limit: what it does, by whom, why, and where it says so.

    `subject` is "rule" or "limit". A rule that it `silences` counts for nothing.
    """

    subject: str
    name: str
    does: str
    by: str
    why: str
    place: Place
    hazard: str | None = None
    silences: bool = False


@dataclass(frozen=True, slots=True)
class Finding:
    """Verdict, level, stage, utilisation, governing case and place of one rule on one part.

    `utilisation` is NaN where it has no number. `message` is the rule's `says` with its numbers
    filled in, `because` its reason, `change` the given fields that could mend it, each with its
    present value. `numbers` are the three that matter most; `slots` are all the quantities that the
    rule reads and `requires` its requirement as the pack has it. `open_because` names what is
    missing.
    """

    rule: str
    part: str
    others: tuple[str, ...]
    verdict: Verdict
    level: Level
    stage: Stage
    hazard: str | None
    utilisation: float
    demand: Side | None
    capacity: Side | None
    case: str | None
    place: Place
    message: str
    because: str
    source: str
    change: tuple[str, ...]
    numbers: tuple[Number, ...]
    slots: tuple[int, ...] = ()
    requires: str = ""
    open_because: tuple[str, ...] = ()
    concession: Concession | None = None
    by_shop: ByShop | None = None
    remedies: Remedies | None = None  # None: not searched
    influences: tuple[Influence, ...] | None = None  # None: not computed
    calibrated: tuple[str, ...] = ()  # values that a measurement settles, and that it stands on
    scatter: Scatter | None = None  # None: not sampled, or no tolerance touches it

    @property
    def is_silenced(self) -> bool:
        """Whether a shop lets the rule count for nothing."""
        return self.by_shop is not None and self.by_shop.silences

    @property
    def name(self) -> str:
        """Where the finding is: part, and the rule's own name on it."""
        return f"{self.part}.{self.rule.split('.', 1)[1]}"
