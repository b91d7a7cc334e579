"""Telling: a verdict put into words, with its numbers in the units of the file."""

import math
from collections.abc import Mapping
from typing import Any

from reviewer.deriving.cases import Cases
from reviewer.deriving.evaluate import Values
from reviewer.deriving.unknown import is_unknown, why_open
from reviewer.judging.binding import Bound
from reviewer.judging.finding import Finding, Number, Side
from reviewer.judging.judged import Judged
from reviewer.judging.rule import Rule
from reviewer.notation.dimension import Dimension
from reviewer.notation.plain import plain
from reviewer.notation.preferred import preferred_units
from reviewer.notation.problem import Place, on_line
from reviewer.notation.show import show, unit_for
from reviewer.notation.units import parse_unit
from reviewer.parts.row import Row
from reviewer.reading.design import Design, GivenValue

MOST_NUMBERS = 3


class Teller:
    """Puts the verdicts of one design into words."""

    def __init__(self, design: Design, values: Values, cases: Cases) -> None:
        """Tell of a design, from its evaluated values."""
        self.design = design
        self.values = values
        self.cases = cases
        self.units = preferred_units(design.units)
        self._units: dict[str, Any] = {}

    def told(self, rule: Rule, bound: Bound, judged: Judged) -> Finding:
        """The finding of a verdict that was reached, or that is open for want of an input."""
        demand, capacity = self._sides(rule, judged)
        if judged.verdict in ("open", "not applicable"):
            message = rule.question
        else:
            message = self._message(rule, bound, judged, demand, capacity)
        unknown = list(judged.unknown)
        causes = why_open(self.values, unknown, judged.case) if unknown else ()
        reasons = [f"{cause.name} {cause.reason}" for cause in causes]
        if judged.verdict == "open":
            named = f"{bound.part}.{rule.name.split('.', 1)[1]}"
            reasons += (
                f"{named} needs {each}, which the design does not have"
                for each in dict.fromkeys(bound.absent(rule.names))
            )
        return self._finding(
            rule,
            bound,
            judged,
            demand=demand,
            capacity=capacity,
            message=message,
            open_because=tuple(plain(reason) for reason in reasons),
        )

    def held(self, rule: Rule, bound: Bound, failed: str) -> Finding:
        """The finding that is withheld because what it stands behind failed."""
        message = f"Not judged, because {failed} fails."
        judged = Judged("open", 0, None)
        return self._finding(
            rule, bound, judged, message=message, open_because=(f"{failed} fails",)
        )

    def _finding(
        self,
        rule: Rule,
        bound: Bound,
        judged: Judged,
        *,
        message: str,
        demand: Side | None = None,
        capacity: Side | None = None,
        open_because: tuple[str, ...] = (),
    ) -> Finding:
        place, change = self._place_and_change(rule, bound, judged)
        return Finding(
            rule=rule.name,
            part=bound.part,
            others=bound.others,
            verdict=judged.verdict,
            level=rule.level,
            stage=rule.stage,
            hazard=rule.hazard,
            utilisation=_utilisation(judged),
            demand=demand,
            capacity=capacity,
            case=self._case(rule, bound, judged),
            place=place,
            message=message,
            because=rule.because,
            source=rule.source,
            change=change,
            numbers=self._numbers(rule, bound, judged),
            slots=bound.once("read", lambda: tuple(dict.fromkeys(bound.all_slots(rule.names)))),
            requires=rule.requires,
            by_shop=rule.by_shop,
            open_because=open_because,
        )

    def _case(self, rule: Rule, bound: Bound, judged: Judged) -> str | None:
        """The governing case; none where all that the rule looks at is alike in every case."""
        if judged.verdict not in ("pass", "fail", "review"):
            return None
        varies = any(
            self.values.varies(slot) for slot in bound.once("said", lambda: _said(rule, bound))
        )
        return self.cases.names[judged.case] if varies else None

    def _sides(self, rule: Rule, judged: Judged) -> tuple[Side | None, Side | None]:
        """Demand and capacity of the comparison that governs, in the units of the file."""
        outcome = judged.outcome
        if outcome is None or rule.require is None or judged.verdict not in ("pass", "fail"):
            return None, None
        dimension = rule.require.terms[int(outcome.which[judged.case])].dimension
        if dimension is None:
            return None, None
        unit = unit_for(dimension, self.units)
        demand, capacity = (
            Side(value, unit) if math.isfinite(value) else None
            for value in (float(outcome.demand[judged.case]), float(outcome.capacity[judged.case]))
        )
        return demand, capacity

    def _message(
        self, rule: Rule, bound: Bound, judged: Judged, demand: Side | None, capacity: Side | None
    ) -> str:
        special: Mapping[str, str] = {
            "demand": _side(demand),
            "capacity": _side(capacity),
            "utilisation": show(_utilisation(judged), parse_unit("1")),
            "case": self.cases.names[judged.case],
            "part": bound.part,
        }

        def fill(name: str) -> str:
            return special[name] if name in special else self._said(bound, name, judged.case)

        return plain(rule.says.render(fill), limit=1000)

    def _said(self, bound: Bound, name: str, case: int) -> str:
        """The value of a name as a reader reads it; of a collection, the members' in a list."""
        return ", ".join(
            "unknown" if slot is None else self.shown(slot, case) for slot in bound.slots(name)
        )

    def shown(self, slot: int, case: int) -> str:
        """A quantity's value in one case, in the unit of the file."""
        row = self.values.plan.nodes[slot].row
        value = self.values.at(slot, case)
        if is_unknown(value):
            return "unknown"
        if row.is_number:
            return show(value, self.unit_of(row))
        if isinstance(value, bool):
            return "yes" if value else "no"
        return str(getattr(value, "name", value))

    def unit_of(self, row: Row) -> Any:
        """The unit in which a row's numbers are shown."""
        found = self._units.get(row.unit)
        if found is None:
            dimension: Dimension = row.dimension
            found = parse_unit("1") if row.unit == "1" else unit_for(dimension, self.units)
            self._units[row.unit] = found
        return found

    def _numbers(self, rule: Rule, bound: Bound, judged: Judged) -> tuple[Number, ...]:
        """The numbers that matter most: those of the requirement, then those to change."""
        found: dict[int, Number] = {}
        for slot in bound.once("numbers", lambda: _numbers(rule, bound)):
            if len(found) == MOST_NUMBERS:
                break
            node = self.values.plan.nodes[slot]
            value = self.values.at(slot, judged.case)
            if not is_unknown(value):
                found[slot] = Number(node.name, node.row.says, value, self.unit_of(node.row))
        return tuple(found.values())

    def _place_and_change(
        self, rule: Rule, bound: Bound, judged: Judged
    ) -> tuple[Place, tuple[str, ...]]:
        """Where to change what: the first given value of the rule's list, else the part itself.

        A value that the governing case's configuration sets comes before those of the part.
        """
        configuration = self.design.configurations[self.cases.configuration[judged.case]]
        owner = self.design.parts.get(bound.part, self.design.facts)
        fields = bound.once("fields", lambda: _fields(rule, bound))
        found: list[tuple[str, GivenValue, str]] = []
        for part, path in fields:
            override = configuration.overrides.get((part, path))
            if override is not None:
                found.append((f"{part}.{path}", override, f" in {configuration.name}"))
        for part, path in fields:
            given = self.design.parts.get(part, self.design.facts).given.get(path)
            if given is not None:
                found.append((f"{part}.{path}", given, ""))
        place = found[0][1].place if found else owner.place
        texts = tuple(
            f"{name} ({plain(given.text)}{where}, {on_line(given.place, self.design.path)})"
            for name, given, where in found
        )
        return place, texts


def _said(rule: Rule, bound: Bound) -> list[int]:
    """The slots that a rule reads or tells of."""
    return bound.all_slots((*rule.names, *(name for name, _ in rule.says.names)))


def _numbers(rule: Rule, bound: Bound) -> list[int]:
    """The slots of the numbers that a rule reads, then of those to change."""
    nodes = bound.values.plan.nodes
    slots = bound.all_slots((*rule.names, *rule.change))
    return [slot for slot in dict.fromkeys(slots) if nodes[slot].row.is_number]


def _fields(rule: Rule, bound: Bound) -> list[tuple[str, str]]:
    """Where the values stand that a rule names to change: on a part, or on its board."""
    named = [field for name in rule.change for field in bound.paths(name)]
    return list(dict.fromkeys(bound.design.source(part, path) for part, path in named))


def _utilisation(judged: Judged) -> float:
    if judged.outcome is None or judged.verdict not in ("pass", "fail"):
        return math.nan
    return float(judged.outcome.utilisation[judged.case])


def _side(side: Side | None) -> str:
    return "unknown" if side is None else show(side.value, side.unit)
