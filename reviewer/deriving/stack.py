"""Many designs of one structure evaluated at once, along the sample axis, as each by itself.

What is computed is equal to the bit to what a review of each design alone computes.
"""

from collections.abc import Sequence
from types import NoneType
from typing import Any, NamedTuple, get_args

import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.evaluate import UNKNOWN, Values, computed, evaluate
from reviewer.deriving.groups import Groups, Indices, groups_of, marks_of
from reviewer.deriving.inputs import given_values
from reviewer.deriving.plan import DESIGN, MISSING, Node
from reviewer.deriving.recipe import is_choice, recipe_of
from reviewer.deriving.structure import Structure
from reviewer.reading.design import Design

ABSENT, NARROW, WIDE = range(3)


class Numbers(NamedTuple):
    """A number of all samples: (samples or 1, cases or 1).

    `shape` tells of each sample whether it is not there at all, one number, or one for each case,
    where samples differ in that; it is None where they do not.
    """

    array: NDArray[np.float64]
    shape: NDArray[np.int8] | None = None


class Things(NamedTuple):
    """Choices or objects, one a group of samples."""

    groups: Groups
    things: tuple[Any, ...]

    def of(self, chosen: Indices | None) -> Any:
        """The thing of some samples of one group; of words by sample and case their own."""
        group = self.groups.which[0 if chosen is None else chosen[0]]
        thing = self.things[group]
        if chosen is None or not isinstance(thing, np.ndarray) or len(thing) == 1:
            return thing
        return thing[np.searchsorted(self.groups.members[group], chosen)]


class CannotStack(Exception):
    """Designs differ in what is there of something that an object is made of."""

    def __init__(self, groups: Groups) -> None:
        """Keep the groups in which they do not differ."""
        super().__init__()
        self.groups = groups


class Stack:
    """The values of some designs of one structure, by slot."""

    def __init__(self, structure: Structure, designs: Sequence[Design]) -> None:
        """Evaluate some designs. Raises EvaluationFault and CannotStack."""
        self.structure = structure
        self.samples = len(designs)
        self.cases = len(structure.cases.names)
        self.columns: list[Any] = [None] * len(structure.plan.nodes)
        self._recipe = structure.noted("recipe", lambda: recipe_of(structure.plan))
        self.everyone = groups_of([0] * self.samples)
        self._groups: dict[frozenset[int], Groups] = {frozenset(): self.everyone}
        self._given, self._chosen = given_columns(structure, designs)
        plan = structure.plan
        for node in filter(is_choice, plan.nodes):  # first of all: groups are made of them
            self.columns[node.slot] = self._chosen.get(node.slot, Things(self.everyone, (None,)))
        with np.errstate(all="ignore"):
            for slot in plan.order:
                self.columns[slot] = self._column(plan.nodes[slot])

    def picked(self, slot: int, chosen: Indices | None) -> Any:
        """A value as a formula sees it, of samples that agree in all choices behind it."""
        column = self.columns[slot]
        if isinstance(column, Things):
            return column.of(chosen)
        array, shape = column
        if shape is not None:
            kind = shape[0 if chosen is None else chosen[0]]
            if kind == ABSENT:
                return UNKNOWN
            array = array[:, :1] if kind == NARROW else array
        return array if chosen is None or len(array) == 1 else array[chosen]

    def groups(self, choices: frozenset[int]) -> Groups:
        """The samples in groups that agree in some choices."""
        found = self._groups.get(choices)
        if found is None:
            rest = sorted(choices)
            marks = [self.columns[slot].groups.which for slot in rest]
            found = self._groups[choices] = self.everyone.finer(marks)
        return found

    def groups_reading(self, slots: Sequence[int], choices: frozenset[int]) -> Groups:
        """The samples in groups that agree in choices, and in what there is of some numbers."""
        shapes = [
            column.shape
            for column in (self.columns[slot] for slot in slots)
            if isinstance(column, Numbers) and column.shape is not None
        ]
        return self.groups(choices).finer(shapes) if shapes else self.groups(choices)

    def _column(self, node: Node) -> Numbers | Things:
        if is_choice(node):
            return Things(*self.columns[node.slot])
        given = self._given.get(node.slot)
        if node.given or node.formula is None:
            return Numbers(UNKNOWN) if given is None else given
        choices = self._recipe.choices[node.slot]
        groups = self.groups_reading([slot for _, slot in node.inputs if slot != MISSING], choices)
        if self._recipe.joined[node.slot] and groups is not self.groups(choices):
            raise CannotStack(groups)
        if groups.is_one:
            chosen: list[Indices | None] = [None]
        else:
            chosen = list(groups.members)
        answers = [self._answer(node, each, given) for each in chosen]
        if not node.row.is_number:
            return Things(groups, tuple(answers))
        if not may_be_nothing(node):
            return self._together(chosen, answers)
        members, parts = self._parted(node, chosen, answers, given)
        return self._together(members, parts)

    def _answer(self, node: Node, chosen: Indices | None, overruled: Numbers | None) -> Any:
        instead = None
        if overruled is not None:
            instead = overruled.array if chosen is None else overruled.array[chosen]
        return computed(node, Picker(self, chosen), instead)

    def _parted(
        self,
        node: Node,
        chosen: Sequence[Indices | None],
        answers: Sequence[Any],
        overruled: Numbers | None,
    ) -> tuple[list[Any], list[Any]]:
        """Answers apart for samples of which all is unknown, where those of others are known.

        Of one such sample by itself a formula may say that the number is not there at all.
        """
        members, parts = [], []
        for each, answer in zip(chosen, answers, strict=True):
            lost = np.isnan(answer).all(axis=1) if np.isnan(answer[:, 0]).any() else None
            if len(answer) == 1 or lost is None or lost.all() or not lost.any():
                members.append(each)
                parts.append(answer)
                continue
            samples = np.arange(self.samples) if each is None else each
            if self._recipe.joined[node.slot]:
                raise CannotStack(groups_of(np.isin(np.arange(self.samples), samples[lost])))
            for part in (samples[lost], samples[~lost]):
                members.append(part)
                parts.append(self._answer(node, part, overruled))
        return members, parts

    def _together(self, members: Sequence[Any], parts: Sequence[Any]) -> Numbers:
        """Answers of groups of samples as one number of all samples."""
        if len(parts) == 1:
            return Numbers(parts[0])
        if all(part is UNKNOWN for part in parts):
            return Numbers(UNKNOWN)
        array = np.full((self.samples, max(part.shape[1] for part in parts)), np.nan)
        shape = np.empty(self.samples, np.int8)
        for each, part in zip(members, parts, strict=True):
            array[each] = part
            shape[each] = ABSENT if part is UNKNOWN else NARROW if part.shape[1] == 1 else WIDE
        return Numbers(array, None if (shape == shape[0]).all() else shape)


def may_be_nothing(node: Node) -> bool:
    """Whether a formula may say that a number is not there at all, by what it says it returns."""
    if node.row.take is not None:
        return False
    said = getattr(node.formula, "__annotations__", {}).get("return", Any)
    return said is Any or said is None or isinstance(said, str) or NoneType in get_args(said)


class Picker(Sequence[Any]):
    """The values of some samples of a stack by slot; `chosen` is None for all."""

    def __init__(self, stack: Stack, chosen: Indices | None) -> None:
        """Pick some samples, which agree in whatever is asked for."""
        self._stack, self._chosen = stack, chosen

    def __len__(self) -> int:
        """How many slots there are."""
        return len(self._stack.columns)

    def __getitem__(self, slot: Any) -> Any:
        """The value of a slot."""
        return self._stack.picked(slot, self._chosen)


class SampleValues(Values):
    """The values of one design of a stack, as its own review has them.

    What the stack does not keep apart, objects made of numbers, is computed when it is asked for.
    """

    def __init__(self, stack: Stack, sample: int, design: Design) -> None:
        """One sample of a stack, which is of a design."""
        self.plan = stack.structure.plan
        self.cases = stack.cases
        self.samples = 1
        self._stack, self._design = stack, design
        self._picker = Picker(stack, np.array([sample]))

    def __getattr__(self, name: str) -> Any:
        """All values in a list, as a study takes them."""
        if name not in ("values", "overrules"):
            raise AttributeError(name)
        given = given_values(self._design, self.plan, self._stack.structure.cases)
        whole = evaluate(self.plan, given, self.cases)
        self.values, self.overrules = whole.values, whole.overrules
        return getattr(self, name)

    def value(self, slot: int) -> Any:
        """A value, save that an object may be that of several designs."""
        return self._picker[slot]


def given_columns(
    structure: Structure, designs: Sequence[Design]
) -> tuple[dict[int, Numbers], dict[int, Things]]:
    """Numbers and choices that some designs of a structure give, with the defaults."""
    alike = groups_of([0] * len(designs))
    numbers: dict[int, Numbers] = {}
    choices: dict[int, Things] = {}
    owners = [{DESIGN: each.facts, **each.parts, **each.loads} for each in designs]
    for node in structure.plan.nodes:
        if node.given:
            values = [each[node.part].given[node.row.path].value for each in owners]
            if node.row.is_number:
                numbers[node.slot] = Numbers(np.array(values, float)[:, None])
            else:
                groups = groups_of(marks_of(values))
                choices[node.slot] = Things(groups, tuple(values[k[0]] for k in groups.members))
        elif node.slot in structure.defaults:
            value = structure.defaults[node.slot]
            if node.row.is_number:
                numbers[node.slot] = Numbers(value)
            else:
                choices[node.slot] = Things(alike, (value,))
    _override(numbers, structure, designs)
    return numbers, choices


def _override(numbers: dict[int, Numbers], structure: Structure, designs: Sequence[Design]) -> None:
    """Spread the numbers that configurations change over the cases of each configuration."""
    cases = structure.cases
    changed: set[int] = set()
    for index, configuration in enumerate(designs[0].configurations):
        for field in configuration.overrides:
            slot = structure.plan.slots[field]
            if slot not in changed:
                base = numbers[slot].array if slot in numbers else UNKNOWN
                spread = np.broadcast_to(base, (len(designs), len(cases.names))).copy()
                numbers[slot] = Numbers(spread)
                changed.add(slot)
            values = [each.configurations[index].overrides[field].value for each in designs]
            numbers[slot].array[:, cases.configuration == index] = np.array(values, float)[:, None]
