"""Whether a measurement still tells of the design: what has changed behind it since."""

import hashlib
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass

import networkx as nx

from reviewer.deriving.derived import Derived
from reviewer.deriving.plan import Plan, build_plan
from reviewer.judging.measured import Stale
from reviewer.notation.plain import plain
from reviewer.reading.design import Design, GivenValue, Measured, Part
from reviewer.studying.changed import Edit, edits
from reviewer.studying.gauge import factors_of

STRUCTURE = ("carried_by", "on", "over")  # say what stands on what; no number depends on them alone
DIGITS = 6
Find = Callable[[str, str | None], "Design | str"]
"""Finds the design in a file that another one names; a text says why it cannot be looked at."""


@dataclass(frozen=True)
class Behind:
    """Part and path of all that a measurement depends on in one design, and whose they are."""

    fields: frozenset[tuple[str, str]]
    owners: frozenset[str]

    def holds(self, part: str, path: str) -> bool:
        """Whether a value is among them; what carries a part is, where the part is."""
        return (part, path) in self.fields or (path in STRUCTURE and part in self.owners)


def values_behind(design: Design, plan: Plan, test: Measured) -> Behind:
    """All that a measurement depends on in a design; loads that were not on are left out."""
    slot = plan.slots.get((test.part, test.path))
    if slot is None:
        return Behind(frozenset(), frozenset())
    off = design.loads.keys() - factors_of(design, test).keys()
    slots = nx.ancestors(plan.graph, slot) | {slot}
    nodes = [plan.nodes[each] for each in slots if plan.nodes[each].part not in off]
    fields = frozenset((node.part, node.row.path) for node in nodes)
    return Behind(fields, frozenset(part for part, _ in fields))


def changes_behind(
    test: Measured, old: Design, new: Design, plans: tuple[Plan, Plan], made: Iterable[Edit]
) -> Iterator[Edit]:
    """The changes from one design to another that touch what a measurement depends on.

    A tolerance that changed, or another measurement that calibrates a value, changes no thing.
    """
    both = [values_behind(*each, test) for each in zip((old, new), plans, strict=True)]
    configuration = new.configurations[test.configuration].name
    for edit in made:
        if edit.field is None:
            if _whole(edit, configuration, both) or _recombined(edit, test, old, new):
                yield edit
        elif _is_other(edit) and any(each.holds(*edit.field[:2]) for each in both):
            at = edit.field[2] if len(edit.field) > 2 else None
            if at is None or old.configurations[at].name == configuration:
                yield edit


def _whole(edit: Edit, configuration: str, both: Iterable[Behind]) -> bool:
    """Whether what was added, taken out or made another kind is behind the measurement."""
    if edit.name.startswith("configuration "):
        return edit.name == f"configuration {configuration}"
    return any(edit.name in each.owners for each in both)


def _recombined(edit: Edit, test: Measured, old: Design, new: Design) -> bool:
    if edit.name != "combinations":
        return False
    return factors_of(old, test) != factors_of(new, test)


def _is_other(edit: Edit) -> bool:
    values = [None if each is None else each.value for each in (edit.old, edit.new)]
    calibrated = any(each is not None and each.calibrated_by for each in (edit.old, edit.new))
    return values[0] != values[1] and not calibrated


def told(edit: Edit) -> str:
    """A change as a reader reads it: ring.plate.thickness 24 -> 21."""
    if edit.field is None:
        return f"{plain(edit.name)} ({edit.note})"
    texts = [plain(each.text) if each else "-" for each in (edit.old, edit.new)]
    return f"{plain(edit.name)} {texts[0]} -> {texts[1]}"


def stale_of(derived: Derived, test: Measured, find: Find) -> Stale:
    """What has changed behind a measurement, by the best record there is of what it was made on.

    Its own fingerprint; else the file that it names, or in which it stands; else its revision.
    """
    design = derived.design
    old: Design | str | None = None
    if test.of is not None:
        old = find(test.of, test.place.path)
    elif test.place.path != design.path:
        old = find(test.place.path, None)
    if test.fingerprint:
        marks = fingerprint(derived, test)
        differing = sorted(
            name
            for name in marks.keys() | test.fingerprint.keys()
            if marks.get(name) != test.fingerprint.get(name)
        )
        if not differing:
            return Stale()
        if not isinstance(old, Design):
            return Stale(tuple(f"a value of {plain(name)}" for name in differing))
    if test.revision == design.revision and test.revision and test.of is None:
        return Stale()
    if old is None and test.revision and test.revision != design.revision:
        old = _of_revision(design, test.revision, find)
    if isinstance(old, str):
        return Stale(unknown=old)
    return Stale() if old is None else Stale(tuple(_differing(derived, old, test)))


def _differing(derived: Derived, old: Design, test: Measured) -> Iterator[str]:
    design = derived.design
    names = [each.name for each in old.configurations]
    wanted = design.configurations[test.configuration].name
    if wanted not in names:
        yield f"the configuration {plain(wanted)} (added)"
        return
    plans = build_plan(old), derived.values.plan
    for edit in changes_behind(test, old, design, plans, edits(old, design)):
        yield told(edit)


def _of_revision(design: Design, revision: str, find: Find) -> Design | str:
    """The design of a revision, among the files that this one is based on."""
    for path in design.files:
        if path != design.path:
            found = find(path, None)
            if isinstance(found, Design) and found.revision == revision:
                return found
    now = f"revision {plain(design.revision)}" if design.revision else "of no revision"
    return (
        f"it was measured on revision {plain(revision)} and this is {now}; no fingerprint, "
        "no file and nothing that this design is based on tells what has changed between them"
    )


def fingerprint(derived: Derived, test: Measured) -> dict[str, str]:
    """A mark for each part and load behind a measurement, of the values that the file gives it."""
    design = derived.design
    behind = values_behind(design, derived.values.plan, test)
    overrides = design.configurations[test.configuration].overrides
    owners = {**design.parts, **design.loads}
    lines = {
        name: list(_lines(owners[name], behind, overrides))
        for name in sorted(behind.owners & owners.keys())
    }
    return {name: _mark([owners[name].kind.name, *told]) for name, told in lines.items() if told}


def _mark(lines: Iterable[str]) -> str:
    return hashlib.sha256("\n".join(lines).encode()).hexdigest()[:DIGITS]


def _lines(
    owner: Part, behind: Behind, overrides: Mapping[tuple[str, str], GivenValue]
) -> Iterator[str]:
    """The given values of a part that are behind a measurement, each on a line."""
    given = dict(owner.given)
    given |= {path: value for (part, path), value in overrides.items() if part == owner.name}
    for path, value in sorted(given.items()):
        if behind.holds(owner.name, path) and not value.calibrated_by:
            yield f"{path} {_canonical(value)}"


def _canonical(value: GivenValue) -> str:
    if isinstance(value.value, float):
        return f"{value.value:.9g}"
    return str(getattr(value.value, "name", value.value))


def stale_tests(
    old: Derived, new: Derived, made: Iterable[Edit]
) -> tuple[tuple[Measured, tuple[Edit, ...]], ...]:
    """The measurements that both designs have, and that changes between them make stale."""
    known = {_record(each, old.design) for each in old.design.measured}
    plans = old.values.plan, new.values.plan
    found = []
    for test in new.design.measured:
        if _record(test, new.design) not in known or _is_renewed(new, test):
            continue
        edited = tuple(changes_behind(test, old.design, new.design, plans, made))
        if edited:
            found.append((test, edited))
    return tuple(found)


def _record(test: Measured, design: Design) -> tuple[object, ...]:
    """A measurement without its place: the same reading, wherever the file has it."""
    configuration = design.configurations[test.configuration].name
    reading = test.value.value, test.by, test.on, test.step, test.zeroed
    return (test.quantity, configuration, tuple(sorted(test.under)), *reading)


def _is_renewed(new: Derived, test: Measured) -> bool:
    """Whether the record itself says that it was made on the new design."""
    return bool(test.fingerprint) and fingerprint(new, test) == dict(test.fingerprint)
