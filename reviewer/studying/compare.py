"""Two designs compared: what got better and worse, which quantities moved, what was changed."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Literal

from reviewer.deriving.derived import Derived
from reviewer.judging.finding import LEVELS, Finding, Level
from reviewer.judging.reviewed import Review
from reviewer.judging.rule import Rule
from reviewer.notation.dimension import Dimension
from reviewer.notation.preferred import preferred_units
from reviewer.notation.show import unit_for
from reviewer.notation.units import Unit, parse_unit
from reviewer.reading.design import Measured
from reviewer.studying.attribution import Explained, explained
from reviewer.studying.changed import Edit, edits
from reviewer.studying.staleness import stale_tests

Turn = Literal["fails now", "mended", "not judged now", "worse", "better", "new", "gone", "same"]
TURNS: tuple[Turn, ...] = (
    *("fails now", "not judged now", "worse", "mended", "better", "new", "gone", "same"),
)
MOVED = 1e-6  # relative: smaller movements are none
SEEN = 0.005  # relative: quantities that move by less are not listed
MOST_QUANTITIES = 40


@dataclass(frozen=True, slots=True)
class Pair:
    """One finding before and after; either is None where it is not there."""

    name: str
    turn: Turn
    before: Finding | None
    after: Finding | None
    explained: Explained | None = None

    @property
    def either(self) -> Finding:
        """The finding as it is, or as it was."""
        found = self.after or self.before
        assert found is not None
        return found

    def regresses(self, level: Level) -> bool:
        """Whether it fails, or cannot be judged, and did not before; from a level on."""
        grave = LEVELS.index(self.either.level) <= LEVELS.index(level)
        after = self.after
        if after is None or not grave or after.concession or after.is_silenced:
            return False
        was = self.before.verdict if self.before else None
        worsened = after.verdict == "fail" and was != "fail"
        return worsened or (after.verdict == "open" and was not in ("open", "fail"))


@dataclass(frozen=True, slots=True)
class Movement:
    """One quantity before and after, SI values in the unit of the new file."""

    name: str
    says: str
    before: float
    after: float
    unit: Unit


@dataclass(frozen=True)
class Comparison:
    """What became of a design: findings, quantities that rules read, and values of the file.

    `stale` are the recorded measurements that the changes make stale, each with those that do.
    """

    old: Review
    new: Review
    pairs: tuple[Pair, ...]
    movements: tuple[Movement, ...]
    edits: tuple[Edit, ...] = field(default=())
    stale: tuple[tuple[Measured, tuple[Edit, ...]], ...] = ()

    def regressions(self, level: Level) -> tuple[Pair, ...]:
        """What fails or is open now, and was not, from a level on."""
        return tuple(pair for pair in self.pairs if pair.regresses(level))

    def turned(self, turn: Turn) -> tuple[Pair, ...]:
        """The findings of one turn, the most used first."""
        found = [pair for pair in self.pairs if pair.turn == turn]
        return tuple(sorted(found, key=lambda pair: (-_used(pair.after or pair.before), pair.name)))


def compare(old: Review, new: Review, rules: tuple[Rule, ...]) -> Comparison:
    """Compare two reviews by the same rules; both have a design."""
    assert old.derived is not None
    assert new.derived is not None
    made = tuple(edits(old.derived.design, new.derived.design))
    parts = explained(old.derived, new.derived, rules, made)
    before = {(each.name, each.others): each for each in old.findings}
    after = {(each.name, each.others): each for each in new.findings}
    pairs = []
    for key in sorted(before.keys() | after.keys()):
        one, other = before.get(key), after.get(key)
        name = " with ".join([key[0], *key[1]])
        pairs.append(Pair(name, _turn(one, other), one, other, parts.get(key)))
    return Comparison(
        old,
        new,
        tuple(pairs),
        tuple(_movements(old.derived, new.derived, old, new)),
        made,
        stale_tests(old.derived, new.derived, made),
    )


def _turn(before: Finding | None, after: Finding | None) -> Turn:
    if before is None or after is None:
        return _alone(before, after)
    if after.verdict == "fail" and before.verdict != "fail":
        return "fails now"
    if before.verdict == "fail" and after.verdict in ("pass", "not applicable"):
        return "mended"
    if after.verdict == "open" and before.verdict not in ("open", "fail"):
        return "not judged now"
    change = _used(after) - _used(before)
    if before.verdict == after.verdict and abs(change) > MOVED * max(1.0, abs(_used(before))):
        return "worse" if change > 0 else "better"
    return "same"


def _alone(before: Finding | None, after: Finding | None) -> Turn:
    """The turn of a finding that only one of the designs has."""
    if after is not None and after.verdict == "fail":
        return "fails now"
    if all(each is None or each.verdict == "not applicable" for each in (before, after)):
        return "same"
    return "gone" if after is None else "new"


def _used(finding: Finding | None) -> float:
    if finding is None or math.isnan(finding.utilisation):
        return 0.0
    return finding.utilisation


def _movements(old: Derived, new: Derived, before: Review, after: Review) -> Iterator[Movement]:
    """The quantities that rules read and both designs have, the most moved first."""
    units = preferred_units(new.design.units)
    names = {slot for finding in after.findings for slot in finding.slots}
    found: list[tuple[float, Movement]] = []
    for slot in sorted(names):
        node = new.values.plan.nodes[slot]
        other = old.values.plan.slot(node.part, node.row.path)
        if other is None or not node.row.is_number:
            continue
        if old.values.plan.nodes[other].row.dimension != node.row.dimension:
            continue
        values = (_governing(old, other), _governing(new, slot))
        moved = _moved(*values)
        if moved > SEEN:
            dimension: Dimension = node.row.dimension
            unit = parse_unit("1") if node.row.unit == "1" else unit_for(dimension, units)
            found.append((moved, Movement(node.name, node.row.says, *values, unit)))
    ranked = sorted(found, key=lambda each: (-round(each[0], 9), each[1].name))
    yield from (movement for _, movement in ranked[:MOST_QUANTITIES])


def _governing(derived: Derived, slot: int) -> float:
    """The value that matters over all cases; unknown where one of them is."""
    values = derived.values.number(slot)[0]
    governs = derived.values.plan.nodes[slot].row.governs
    return float(values.max() if governs == "largest" else values.min())


def _moved(before: float, after: float) -> float:
    """How far a quantity moved, relative to the larger of the two; unknown ones do not."""
    if not math.isfinite(before) or not math.isfinite(after):
        return 0.0
    size = max(abs(before), abs(after))
    return abs(after - before) / size if size else 0.0
