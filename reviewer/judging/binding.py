"""Binding: a rule's names to the slots of the parts that it is judged on."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from itertools import combinations, pairwise, product
from typing import Any, TypeVar

import numpy as np

from reviewer.deriving.evaluate import UNKNOWN, Values
from reviewer.deriving.plan import DESIGN, Plan
from reviewer.judging.rule import Rule
from reviewer.parts.any_part import ANY
from reviewer.parts.facts import WITHIN_DESIGN
from reviewer.reading.design import Design
from reviewer.stock.table import Choice

T = TypeVar("T")
OF_THE_DESIGN = tuple(f"{scope}." for scope in (DESIGN, *WITHIN_DESIGN))


@dataclass(frozen=True, slots=True)
class Bound:
    """A rule on one part, on a pair, or on all parts of a kind.

    `part` is the part that the finding is of, `others` the rest of a pair or collection;
    `members` lists, for each binder, the parts that its names range over.
    """

    part: str
    others: tuple[str, ...]
    members: tuple[tuple[str, tuple[str, ...]], ...]
    collected: bool
    design: Design
    values: Values
    known: dict[str, tuple[int | None, ...]] = field(default_factory=dict, compare=False)
    notes: dict[str, Any] = field(default_factory=dict, compare=False)

    def of(self, design: Design, values: Values) -> "Bound":
        """The same binding to another design of the structure, with its values."""
        return Bound(
            *(self.part, self.others, self.members, self.collected, design, values),
            *(self.known, self.notes),
        )

    def once(self, what: str, make: Callable[[], T]) -> T:
        """What follows from the binding alone: made once for all designs of a structure."""
        if what not in self.notes:
            self.notes[what] = make()
        found: T = self.notes[what]
        return found

    @property
    def cases(self) -> int:
        """How many cases there are."""
        return self.values.cases

    @property
    def samples(self) -> int:
        """How many samples there are; the first is the nominal one."""
        return self.values.samples

    def slots(self, name: str) -> tuple[int | None, ...]:
        """The slots that a name of the rule stands for: one, or one a member; kept."""
        found = self.known.get(name)
        if found is None:
            found = self.known[name] = self._slots(name)
        return found

    def _slots(self, name: str) -> tuple[int | None, ...]:
        plan = self.values.plan
        scope, _, rest = name.partition(".")
        if scope in (DESIGN, *WITHIN_DESIGN):
            return (plan.slot(scope, rest),)
        return tuple(self._slot(plan, part, path) for part, path in self.paths(name)) or (None,)

    def _slot(self, plan: Plan, part: str, name: str) -> int | None:
        part, name = self._of(part, name)
        if name.startswith("carrier."):
            carrier = self._carrier_of(part)
            return plan.slot(carrier, name.removeprefix("carrier.")) if carrier else None
        return plan.slot(part, name)

    def lookup(self, name: str) -> Any:
        """The value of a name: arrays over cases, with the members as axis 0 of a collection."""
        found = [self._value(slot) for slot in self.slots(name)]
        if not self.collected or name.startswith(OF_THE_DESIGN):
            return found[0]
        if any(value is None or isinstance(value, str) for value in found):
            return found
        return np.stack(np.broadcast_arrays(*found))

    def _value(self, slot: int | None) -> Any:
        if slot is None:
            return UNKNOWN
        value = self.values.value(slot)
        return getattr(value, "name", value) if isinstance(value, Choice) else value

    def absent(self, names: tuple[str, ...]) -> Iterator[str]:
        """What some names stand for and the design does not have, in a reader's words."""
        for name in names:
            for part, path in self.paths(name):
                if self._slot(self.values.plan, part, path) is not None:
                    continue
                on, rest = self._carrier_of(part), path.removeprefix("carrier.")
                if rest == path:
                    yield f"{part}.{path}"
                else:
                    yield f"{on}.{rest}" if on else f"a part that carries {part}"

    def paths(self, name: str) -> tuple[tuple[str, str], ...]:
        """The parts and their paths that a name of the rule stands for; none of the design's."""
        scope, _, rest = name.partition(".")
        if scope in (DESIGN, *WITHIN_DESIGN):
            return ()
        for binder, parts in self.members:
            if binder in ("", scope):
                return tuple(self._of(part, rest if binder else name) for part in parts)
        return ()

    def _of(self, part: str, name: str) -> tuple[str, str]:
        """The part and path of a name: one.x of a part that follows from others is theirs."""
        owner = self.design.parts.get(part)
        scope, _, rest = name.partition(".")
        if owner is not None and scope in owner.kind.of:
            return owner.of[owner.kind.of.index(scope)], rest
        return part, name

    def _carrier_of(self, part: str) -> str | None:
        carriers = self.design.parts[part].carried_by if part in self.design.parts else ()
        return carriers[0] if carriers else None

    def all_slots(self, names: tuple[str, ...]) -> list[int]:
        """The slots behind some names, for finding out which are unknown."""
        return [slot for name in names for slot in self.slots(name) if slot is not None]


def bind(rule: Rule, design: Design, values: Values) -> Iterator[Bound]:
    """The parts, pairs or collections of a design that a rule is judged on, in order of name."""
    by_binder = [(binder, _parts(design, kind)) for binder, kind in rule.scope.binders]
    if not all(parts for _, parts in by_binder):
        return
    if rule.scope.how == "every":
        members = tuple((binder, parts) for binder, parts in by_binder)
        everyone = tuple(sorted({part for _, parts in by_binder for part in parts}))
        yield Bound(DESIGN, everyone, members, True, design, values)
        return
    for chosen in _CHOOSERS[rule.scope.how]([parts for _, parts in by_binder]):
        members = tuple(
            (binder, (part,)) for (binder, _), part in zip(by_binder, chosen, strict=True)
        )
        yield Bound(chosen[0], chosen[1:], members, False, design, values)


def _parts(design: Design, kind: str) -> tuple[str, ...]:
    if kind == DESIGN:
        return (DESIGN,)
    everyone = sorted(design.parts.items())
    if kind == ANY.name:
        return tuple(name for name, part in everyone if part.kind.carries_load)
    return tuple(name for name, part in everyone if part.kind.name == kind)


def _one(parts: list[tuple[str, ...]]) -> Iterator[tuple[str, ...]]:
    return ((part,) for part in parts[0])


def _each_pair(parts: list[tuple[str, ...]]) -> Iterator[tuple[str, ...]]:
    if all(group == parts[0] for group in parts):
        return combinations(parts[0], len(parts))
    return product(*parts)


def _neighbours(parts: list[tuple[str, ...]]) -> Iterator[tuple[str, ...]]:
    """Pairs that follow each other in order of name, the last and the first included."""
    names = sorted({part for group in parts for part in group})
    pairs = list(pairwise(names))
    if len(names) > 2:
        pairs.append((names[-1], names[0]))
    for one, other in pairs:
        if one in parts[0] and other in parts[-1]:
            yield one, other
        elif other in parts[0] and one in parts[-1]:
            yield other, one


_CHOOSERS: dict[str, Callable[[list[tuple[str, ...]]], Iterator[tuple[str, ...]]]] = {
    "one": _one,
    "each": _each_pair,
    "neighbours": _neighbours,
}
