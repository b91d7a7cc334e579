"""What explains a reading: for each value behind it, what it would have to be.

All values are moved in one batch on the sample axis; those that could come near are then solved
together, each in samples of its own.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import log

import numpy as np

from reviewer.judging.measured import Explanation
from reviewer.notation.dimension import ANGLE, LENGTH, MASS
from reviewer.notation.preferred import preferred_units
from reviewer.notation.show import unit_for
from reviewer.notation.units import parse_unit
from reviewer.parts.row import Measure, Row
from reviewer.reading.design import GivenValue, Measured, Part
from reviewer.reading.due import is_within
from reviewer.reading.measured_on import may_be_calibrated
from reviewer.studying.gauge import Array, Gauge
from reviewer.studying.given import Given, places_of
from reviewer.studying.study import Field

STEP = 0.01
SPAN = log(10.0)  # a value is looked for between a tenth of what it is and ten times as much
GROWTH, GROWN = 1.25, 4  # how far past a straight guess the first bracket goes; how often it grows
ROUNDS = 14
CLOSE, NEARLY = 1e-10, 1e-6  # of what is read: where a search ends, and what is found at all
USUAL = 0.01  # share of a value without a tolerance that is as plausible as a whole tolerance
USUAL_LENGTH = 0.2e-3  # m, and of a length at least so much, which saw and rule leave
USUAL_OF_STOCK = 0.1  # of what the file leaves to tables: moduli and stiffnesses scatter
FARTHEST = 5.0  # times the change of the most plausible one: what needs more is not named
MOST_SOLVED = 8


@dataclass(frozen=True, slots=True)
class Candidate:
    """A value behind a reading: the field that a study moves, its row, and what it is now."""

    name: str
    field: Field
    row: Row
    now: float
    given: GivenValue | None

    @property
    def scale(self) -> float:
        """The change that is as plausible as any: half the tolerance, or a share of the value."""
        quantity = self.given.quantity if self.given else None
        band = 0.0 if quantity is None else (quantity.high - quantity.low) / 2
        least = USUAL_LENGTH if self.row.dimension == LENGTH else 0.0
        return band or max(least, (USUAL if self.given else USUAL_OF_STOCK) * abs(self.now))

    def allows(self, value: float) -> bool:
        """Whether a value is within the bounds of the field."""
        entry = self.row.given
        return not isinstance(entry, Measure) or is_within(entry, value)


def candidates(gauge: Gauge, test: Measured, on: set[str]) -> list[Candidate]:
    """The numbers behind a reading that a file gives, could give, or takes from stock.

    `on` are the loads that stood on it. Zeros are left out: no share of them explains anything.
    """
    plan = gauge.derived.values.plan
    design = gauge.derived.design
    found: list[Candidate] = []
    for slot in sorted(gauge.wanted):
        node = plan.nodes[slot]
        owner = design.parts.get(node.part)
        if owner is None and node.part in on:
            owner = design.loads[node.part]
        if owner is None or not node.row.is_number:
            continue
        if _is_told(owner, node.row) or may_be_calibrated(node.row, owner):
            found += _candidate(gauge, owner, node.row, test)
    return found


def _is_told(owner: Part, row: Row) -> bool:
    return row.path in owner.given and isinstance(row.given, Measure)


def _candidate(gauge: Gauge, owner: Part, row: Row, test: Measured) -> Iterator[Candidate]:
    places = [
        each
        for each in places_of(gauge.derived.design, owner, row)
        if len(each.field) == 2 or each.field[2] == test.configuration
    ]
    given: Given | None = places[-1] if places else None
    field: Field = given.field if given else (owner.name, row.path)
    slot = gauge.derived.values.plan.slots[owner.name, row.path]
    now = gauge.derived.values.at(slot, gauge.case)
    if np.isfinite(now) and now != 0.0:
        value = given.value if given else None
        yield Candidate(f"{owner.name}.{row.path}", field, row, now, value)


def explained(
    gauge: Gauge, test: Measured, on: set[str], target: float, most: int
) -> tuple[Explanation, ...]:
    """The values best able to explain a reading, the most plausible first.

    Plausible is what has to move least, by its tolerance; where it has none by one per cent of
    it, a length by 0.2 mm, and what the file leaves to tables by ten per cent. Of those that are
    alike what the file itself gives comes first. What it does not give is looked at where it is a
    stiffness, a modulus and the like; sizes that it leaves out follow from others.
    """
    every = [
        each
        for each in candidates(gauge, test, on)
        if each.given or each.row.dimension not in (LENGTH, MASS, ANGLE)
    ]
    near = _near(gauge, every, target)
    needed = solved(gauge, near, [target] * len(near))
    found = [
        _explanation(gauge, each, float(value))
        for each, value in zip(near, needed, strict=True)
        if np.isfinite(value)
    ]
    found.sort(key=lambda each: (round(each.strain, 6), not each.text, each.name))
    return tuple(each for each in found[:most] if each.strain <= FARTHEST * found[0].strain)


def _explanation(gauge: Gauge, each: Candidate, needed: float) -> Explanation:
    units = preferred_units(gauge.derived.design.units)
    unit = parse_unit("1") if each.row.unit == "1" else unit_for(each.row.dimension, units)
    told = Explanation(each.name, each.now, needed, unit, abs(needed - each.now) / each.scale)
    if each.given is None or each.given.calibrated_by:
        return told
    return replace(told, text=each.given.text, place=each.given.place)


def _near(gauge: Gauge, every: Sequence[Candidate], target: float) -> list[Candidate]:
    """The candidates that seem to need the least change, from what one per cent of each does."""
    if not every:
        return []
    slopes = _slopes(gauge, every)
    asked = target - gauge.nominal
    with np.errstate(divide="ignore", invalid="ignore"):
        strain = np.abs(asked / slopes) * np.array([abs(each.now) / each.scale for each in every])
    strain[~np.isfinite(strain) | (np.abs(asked) > 2 * SPAN * np.abs(slopes))] = np.inf
    order = np.argsort(np.round(strain, 9), kind="stable")
    return [every[index] for index in order[:MOST_SOLVED] if np.isfinite(strain[index])]


def _slopes(gauge: Gauge, every: Sequence[Candidate]) -> Array:
    """How far the reading goes with the logarithm of each value, from one per cent of it."""
    ways = np.full(len(every), log(1 + STEP))
    slopes: Array = (_readings(gauge, every, ways) - gauge.nominal) / ways
    return slopes


def _readings(gauge: Gauge, every: Sequence[Candidate], ways: Array) -> Array:
    """The reading with each value alone moved so far, on a scale of logarithms."""
    numbers: dict[Field, Array] = {}
    for index, each in enumerate(every):
        column = np.full(len(every), each.now)
        value = each.now * float(np.exp(ways[index]))
        column[index] = value if each.allows(value) else np.nan
        numbers[each.field] = column
    return gauge.reads(numbers)


def solved(gauge: Gauge, every: Sequence[Candidate], targets: Sequence[float]) -> Array:
    """For each candidate the value at which its target is read, on the side to which it slopes.

    Unknown where there is none between a tenth and ten times of what it is now. All are solved
    together: brackets that grow, then false position after Illinois (Dowell and Jarratt, 1971).
    """
    if not every:
        return np.empty(0)
    goal = np.array(targets)
    near = np.zeros(len(every))
    off_near = gauge.nominal - goal
    with np.errstate(divide="ignore", invalid="ignore"):
        far = np.clip(-off_near / _slopes(gauge, every) * GROWTH, -SPAN, SPAN)
    off_far = _readings(gauge, every, far) - goal
    for _ in range(GROWN):
        same = off_near * off_far > 0
        if not same.any():
            break
        near, off_near = np.where(same, far, near), np.where(same, off_far, off_near)
        far = np.where(same, np.clip(2 * far, -SPAN, SPAN), far)
        off_far = np.where(same, _readings(gauge, every, far) - goal, off_far)
    ways = _between(gauge, every, goal, (near, off_near), (far, off_far))
    return np.array([each.now for each in every]) * np.exp(ways)


Ends = tuple[Array, Array]  # where an end of a bracket is, and how far it is off its target there


def _between(
    gauge: Gauge, every: Sequence[Candidate], goal: Array, one: Ends, other: Ends
) -> Array:
    """Where each reading is its target, between two ends on either side of it; else unknown."""
    (a, off_a), (b, off_b) = one, other
    sound = off_a * off_b <= 0
    for _ in range(ROUNDS):
        with np.errstate(divide="ignore", invalid="ignore"):
            middle = np.where(off_a == off_b, a, (a * off_b - b * off_a) / (off_b - off_a))
        off = _readings(gauge, every, middle) - goal
        crossed = off * off_b <= 0
        a, off_a = np.where(crossed, b, a), np.where(crossed, off_b, off_a / 2)
        b, off_b = middle, off
        if np.all(~sound | (np.abs(off) <= CLOSE * np.abs(goal))):
            break
    close = np.abs(off_b) <= NEARLY * np.maximum(np.abs(goal), abs(gauge.nominal))
    return np.where(sound & close, b, np.nan)
