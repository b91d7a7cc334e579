"""The chain of numbers behind a quantity or a finding, back to the values that the file gives."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from math import isinf
from typing import Any

import networkx as nx

from reviewer.deriving.derived import Derived
from reviewer.deriving.evaluate import Values
from reviewer.deriving.plan import DESIGN, MISSING, Node
from reviewer.deriving.unknown import is_unknown, why_open
from reviewer.judging.finding import Finding
from reviewer.judging.reviewed import Review
from reviewer.notation.dimension import Dimension
from reviewer.notation.nearest import nearest
from reviewer.notation.plain import plain
from reviewer.notation.preferred import preferred_units
from reviewer.notation.show import unit_for
from reviewer.notation.units import Unit, parse_unit
from reviewer.parts.row import Count
from reviewer.reading.design import Design, GivenValue, Part
from reviewer.stock.table import Choice

NEARLY = 1e-9


class NoSuchQuantity(LookupError):
    """A name that is neither a quantity nor a rule of the design, with the nearest one."""

    def __init__(self, name: str, near: str | None) -> None:
        """Keep the name that was asked for and the nearest known one."""
        super().__init__(name)
        self.name = name
        self.near = near


@dataclass(frozen=True, slots=True)
class Step:
    """One number of a chain: where it comes from, and what it was computed from.

    `value` is in SI with the `unit` to show it in; a word where there is no unit; None where it is
    unknown. `line` and `columns` are those of a given value, and `path` its file; `calibrated_by`
    is the test that settles it. `again` marks a step that is listed further up.
    """

    name: str
    says: str
    value: float | str | bool | None
    unit: Unit | None
    formula: str
    source: str
    line: int | None
    case: str | None
    inputs: tuple["Step", ...]
    again: bool = False
    open_because: tuple[str, ...] = ()
    path: str | None = None
    columns: tuple[int, int] | None = None
    calibrated_by: str = ""
    written: str = ""  # the text of a given value that has a tolerance


def trace(review: Review, name: str) -> Step:
    """The chain behind PART.QUANTITY or PART.RULE.

    Raises NoSuchQuantity for a name that the design does not have. The review must have a design.
    """
    assert review.derived is not None
    tracer = _Tracer(review.derived)
    for finding in review.findings:
        if name in (finding.name, finding.rule) and not _is_quantity(review.derived, name):
            return tracer.of_finding(finding)
    part, _, path = name.partition(".")
    slot = review.derived.values.plan.slot(part, path)
    if slot is None or not _is_shown(review.derived.values.plan.nodes[slot]):
        raise NoSuchQuantity(name, nearest(name, _known(review)))
    case = governing_case(review.derived.values, slot)
    return tracer.step(slot, case, set(), top=True)


def trace_part(review: Review, name: str) -> Step | None:
    """Every quantity of a part, without what is behind each; None where there is no such part.

    The review must have a design.
    """
    assert review.derived is not None
    owner = owner_of(review.derived.design, name)
    if owner is None:
        return None
    values = review.derived.values
    tracer = _Tracer(review.derived)
    slots = [node.slot for node in values.plan.nodes if node.part == name and _is_shown(node)]
    steps = [tracer.bare(slot, governing_case(values, slot)) for slot in slots]
    return Step(
        name=name,
        says=owner.kind.says,
        value=owner.kind.name,
        unit=None,
        formula="",
        source="",
        line=owner.place.line,
        case=None,
        inputs=tuple(sorted(steps, key=lambda step: (step.line is None, step.name))),
        path=owner.place.path,
    )


def trace_of(review: Review, finding: Finding) -> Step:
    """The chain behind one finding of a review, which must have a design."""
    assert review.derived is not None
    return _Tracer(review.derived).of_finding(finding)


def bare_steps(review: Review, slots: Iterable[int], case: str | None) -> dict[int, Step]:
    """Quantities in a case, without what is behind them; objects of the program's own are not told.

    The review must have a design.
    """
    assert review.derived is not None
    tracer = _Tracer(review.derived)
    names = review.derived.cases.names
    number = names.index(case) if case in names else 0
    nodes = review.derived.values.plan.nodes
    return {
        slot: replace(tracer.step(slot, number, {slot}), again=False)
        for slot in slots
        if _is_shown(nodes[slot])
    }


def _is_quantity(derived: Derived, name: str) -> bool:
    part, _, path = name.partition(".")
    return derived.values.plan.slot(part, path) is not None


def _known(review: Review) -> list[str]:
    assert review.derived is not None
    nodes = [node.name for node in review.derived.values.plan.nodes if _is_shown(node)]
    design = review.derived.design
    return [*nodes, *(finding.name for finding in review.findings), *design.parts, *design.loads]


def governing_case(values: Values, slot: int) -> int:
    """The case in which a quantity has the value that matters; the first of those that tie."""
    node = values.plan.nodes[slot]
    if not node.row.is_number:
        return 0
    known = [
        (values.at(slot, case), case)
        for case in range(values.cases)
        if not is_unknown(values.at(slot, case))
    ]
    if len(known) < values.cases:  # an unknown case is the one to ask about
        return next(case for case in range(values.cases) if is_unknown(values.at(slot, case)))
    sign = 1.0 if node.row.governs == "largest" else -1.0
    best = max(sign * value for value, _ in known)
    near = best if isinf(best) else best - NEARLY * abs(best)
    return next(case for value, case in known if sign * value >= near)


def _is_shown(node: Node) -> bool:
    """Whether a node is a number or a word, and not an object of the program's own."""
    return node.row.unit != "" or node.row.given is not None


class _Tracer:
    """Walks back through the plan of one design."""

    def __init__(self, derived: Derived) -> None:
        self.values = derived.values
        self.cases = derived.cases
        self.design = derived.design
        self.units = preferred_units(derived.design.units)

    def of_finding(self, finding: Finding) -> Step:
        """The chain of a finding: the quantities of its rule in the case that governs."""
        case = self.cases.names.index(finding.case) if finding.case in self.cases.names else 0
        seen: set[int] = set()
        inputs = tuple(self.step(slot, case, seen) for slot in finding.slots)
        known = not is_unknown(finding.utilisation)
        return Step(
            name=finding.name,
            says=finding.message,
            value=finding.utilisation if known else None,
            unit=parse_unit("1"),
            formula=f"{finding.verdict}: {finding.requires}"
            if finding.requires
            else finding.verdict,
            source=finding.source,
            line=None,
            case=finding.case,
            inputs=inputs,
            open_because=finding.open_because,
        )

    def step(self, slot: int, case: int, seen: set[int], *, top: bool = False) -> Step:
        """One quantity and what is behind it; what was listed before is only named."""
        node = self.values.plan.nodes[slot]
        again = slot in seen
        seen.add(slot)
        formula, source = _words_of(self._computing(node))
        unknown = is_unknown(self.values.at(slot, case))
        causes = why_open(self.values, [slot], case) if unknown and top else ()
        source_value = self._given(node, case)
        place = source_value.place if source_value else None
        return Step(
            name=node.name,
            says=node.row.says,
            value=self._value(slot, case),
            unit=self._unit(node),
            formula="" if node.given or again else formula,
            source="" if node.given or again else source,
            line=place.line if place else None,
            path=place.path if place else None,
            columns=(place.column, place.end_column) if place else None,
            calibrated_by=source_value.calibrated_by if source_value else "",
            written=_with_tolerance(source_value),
            case=self.cases.names[case] if top and node.row.is_number else None,
            inputs=() if again else tuple(self._inputs(node, case, seen)),
            again=again and not node.given,
            open_because=tuple(f"{cause.name} {cause.reason}" for cause in causes),
        )

    def bare(self, slot: int, case: int) -> Step:
        """One quantity without what is behind it."""
        return replace(self.step(slot, case, set(), top=True), inputs=())

    def _inputs(self, node: Node, case: int, seen: set[int]) -> Iterator[Step]:
        """The steps below a node; objects of the program's own are passed over."""
        for slot in self._slots_below(node):
            source = self.values.plan.nodes[slot]
            if self._says_nothing(source, case):
                continue
            yield self.step(slot, case, seen)

    def _says_nothing(self, node: Node, case: int) -> bool:
        """Whether a step is only a default of zero, or a field that nobody gave or needs."""
        value = self.values.at(node.slot, case)
        if is_unknown(value):
            return not node.given and not node.inputs
        return value == 0 and not any(
            self.values.plan.nodes[slot].given for slot in self._all_below(node.slot)
        )

    def _all_below(self, slot: int) -> set[int]:
        graph = self.values.plan.graph
        return nx.ancestors(graph, slot) | {slot}

    def _slots_below(self, node: Node) -> Iterator[int]:
        """What a node is computed from; an object is passed over, once, to what it comes from."""
        waiting, passed = [slot for _, slot in reversed(node.inputs)], set()
        while waiting:
            slot = waiting.pop()
            if slot == MISSING or slot in passed:
                continue
            passed.add(slot)
            source = self.values.plan.nodes[slot]
            if _is_shown(source):
                yield slot
            elif source.part != DESIGN:
                waiting.extend(each for _, each in reversed(source.inputs))

    def _computing(self, node: Node) -> Any:
        """The formula behind a node: of a part of a solution, the one that solved it."""
        while node.row.take is not None and node.inputs and node.inputs[0][1] != MISSING:
            node = self.values.plan.nodes[node.inputs[0][1]]
        return node.formula

    def _value(self, slot: int, case: int) -> float | str | bool | None:
        value = self.values.at(slot, case)
        if is_unknown(value):
            return None
        if isinstance(value, Choice):
            return str(getattr(value, "name", value))
        if isinstance(value, float | int | str):
            return value
        if not isinstance(value, tuple):
            return str(value)
        are_words = all(isinstance(each, str) for each in value)
        return ", ".join(value) if are_words else f"{len(value)} points"

    def _unit(self, node: Node) -> Unit | None:
        if isinstance(node.row.given, Count):
            return parse_unit("1")
        if not node.row.is_number:
            return None
        dimension: Dimension = node.row.dimension
        return parse_unit("1") if node.row.unit == "1" else unit_for(dimension, self.units)

    def _given(self, node: Node, case: int) -> GivenValue | None:
        """The value given for a node: that of the case's configuration where it changes it."""
        configuration = self.design.configurations[self.cases.configuration[case]]
        changed = configuration.overrides.get((node.part, node.row.path))
        owner = owner_of(self.design, node.part)
        return changed or (owner.given.get(node.row.path) if owner else None)


def _with_tolerance(given: GivenValue | None) -> str:
    """A given value with its tolerance, as the file writes it; empty where it has none."""
    quantity = given.quantity if given else None
    has_band = quantity is not None and quantity.low < quantity.high
    return plain(given.text) if given and has_band else ""


def owner_of(design: Design, name: str) -> Part | None:
    """The part, load or design of a name."""
    if name == DESIGN:
        return design.facts
    return design.parts.get(name) or design.loads.get(name)


def _words_of(formula: Any) -> tuple[str, str]:
    """A formula in words and its source, out of its docstring."""
    text = (getattr(formula, "__doc__", None) or "").strip()
    paragraphs = [" ".join(part.split()) for part in re.split(r"\n\s*\n", text)]
    if not text or text.startswith("lambda"):
        return "", ""
    notes = re.search(r"Notes\n\s*-----\n\s*(.*?)(?:\n\s*\n|\Z)", text, re.DOTALL)
    said = " ".join(notes.group(1).split()) if notes else paragraphs[0]
    source = paragraphs[1] if len(paragraphs) > 1 else ""
    headings = ("Parameters", "Notes", ">>>", "Returns")
    return said, "" if source.startswith(headings) else source
