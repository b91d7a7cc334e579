"""The given values in which two designs differ."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from reviewer.parts.row import Row
from reviewer.reading.design import Design, GivenValue
from reviewer.studying.study import Field


@dataclass(frozen=True, slots=True)
class Edit:
    """One value that was given otherwise, was added, or was taken out.

    `field` is None for what is no value of one part: a part, a load, a configuration or a
    combination that was added, taken out or changed as a whole. `old` and `new` are the texts.
    """

    name: str
    field: Field | None
    old: GivenValue | None
    new: GivenValue | None
    note: str = ""

    @property
    def is_exchange(self) -> bool:
        """Whether a value stands in the place of another, so that the one can be tried alone."""
        return self.field is not None and self.old is not None and self.new is not None


def edits(old: Design, new: Design) -> Iterator[Edit]:
    """Everything in which two designs differ that can bear on a finding, in order of name."""
    before = {**old.parts, **old.loads}
    after = {**new.parts, **new.loads}
    for name in sorted(before.keys() | after.keys()):
        if name not in after:
            yield Edit(name, None, None, None, "taken out")
        elif name not in before:
            yield Edit(name, None, None, None, "added")
        elif before[name].kind.name != after[name].kind.name:
            note = f"{before[name].kind.name} became {after[name].kind.name}"
            yield Edit(name, None, None, None, note)
        else:
            rows = after[name].kind.rows
            yield from _values(name, rows, before[name].given, after[name].given)
    yield from _facts(old, new)
    yield from _configurations(old, new)
    if old.combinations != new.combinations and _named(old) != _named(new):
        yield Edit("combinations", None, None, None, "changed")


def _named(design: Design) -> list[tuple[object, ...]]:
    """Combinations without their places."""
    return [
        (each.name, each.own_weight, sorted(each.factors.items()))
        for each in design.combinations or ()
    ]


def _values(
    name: str,
    rows: Sequence[Row],
    before: Mapping[str, GivenValue],
    after: Mapping[str, GivenValue],
) -> Iterator[Edit]:
    for row in rows:
        one, other = before.get(row.path), after.get(row.path)
        if _differ(one, other):
            yield Edit(f"{name}.{row.path}", (name, row.path), one, other)


def _differ(one: GivenValue | None, other: GivenValue | None) -> bool:
    if one is None or other is None:
        return one is not other
    bands = [
        (each.quantity.low, each.quantity.high) if each.quantity else None for each in (one, other)
    ]
    return bool(one.value != other.value) or bands[0] != bands[1]


def _facts(old: Design, new: Design) -> Iterator[Edit]:
    for row in new.facts.kind.rows:
        if row.path in ("design", "revision", "lengths"):
            continue
        one, other = old.facts.given.get(row.path), new.facts.given.get(row.path)
        if _differ(one, other):
            yield Edit(f"design.{row.path}", ("design", row.path), one, other)


def _configurations(old: Design, new: Design) -> Iterator[Edit]:
    """Overrides that differ, where both designs have the configuration."""
    before = {each.name: each for each in old.configurations}
    places = {each.name: index for index, each in enumerate(old.configurations)}
    for each in new.configurations:
        if each.name not in before:
            yield Edit(f"configuration {each.name}", None, None, None, "added")
            continue
        overrides = before[each.name].overrides
        for part, path in sorted(overrides.keys() | each.overrides.keys()):
            one, other = overrides.get((part, path)), each.overrides.get((part, path))
            if _differ(one, other):
                where: Field = (part, path, places[each.name])
                yield Edit(f"{part}.{path} ({each.name})", where, one, other)
    for gone in before.keys() - {each.name for each in new.configurations}:
        yield Edit(f"configuration {gone}", None, None, None, "taken out")
