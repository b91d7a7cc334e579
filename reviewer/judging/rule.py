"""A rule, as a pack states it once its words have been read and checked."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any, NamedTuple

from reviewer.judging.compiled import Condition, Requirement
from reviewer.judging.finding import ByShop, Level, Stage
from reviewer.judging.template import Template
from reviewer.notation.problem import Place
from reviewer.parts.any_part import ANY


@dataclass(frozen=True, slots=True)
class Scope:
    """What a rule ranges over: one part of a kind, pairs of parts, or all parts of a kind.

    `binders` are (name, kind) in order; the bare part has the name "". `how` is "one", "each"
    (every pair), "neighbours" (pairs that follow each other), or "every" (one finding over all
    parts of the kind).
    """

    binders: tuple[tuple[str, str], ...]
    how: str = "one"

    @property
    def is_of_any(self) -> bool:
        """Whether it is for parts of any kind: then only where it applies is it told."""
        return any(kind == ANY.name for _, kind in self.binders)


class Case(NamedTuple):
    """One case of a proof: the side that it is on, and values by name.

    Values are SI numbers, texts or truths.
    """

    side: str
    values: Mapping[str, Any]
    place: Place


@dataclass(frozen=True, slots=True)
class Proof:
    """Cases in which a rule holds and fails, and in which it rests (does not apply).

    Of a rule that asks a person, cases in which it asks and in which it rests.
    """

    cases: tuple[Case, ...]
    place: Place


class LateProof:
    """A proof that is read when its cases are first asked for.

    The packs that come with the project are proven by the tests and by `rules --prove`; a review
    has no use for their proofs and does not wait for them.
    """

    def __init__(self, read: Callable[[], Proof | None], place: Place) -> None:
        """Keep how to read a proof, and where it stands."""
        self._read = read
        self.place = place

    @cached_property
    def cases(self) -> tuple[Case, ...]:
        """The cases of the proof. Raises ValueError where it cannot be read."""
        proof = self._read()
        if proof is None:
            raise ValueError(f"{self.place.path}:{self.place.line}: this proof cannot be read")
        return proof.cases


@dataclass(frozen=True, slots=True)
class Rule:
    """A requirement on the quantities of one kind of part, or a question to a person.

    `require` is None for a rule that only asks: its findings are for a person to judge.
    """

    name: str
    scope: Scope
    behind: tuple[str, ...]
    when: Condition | None
    require: Requirement | None
    level: Level
    stage: Stage
    hazard: str | None
    question: str
    says: Template
    because: str
    change: tuple[str, ...]
    source: str
    proof: Proof | LateProof
    place: Place
    requires: str = ""
    tolerance: bool = False  # whether it asks for a study of the tolerances, each time
    by_shop: ByShop | None = None

    @property
    def is_silenced(self) -> bool:
        """Whether a shop lets it count for nothing."""
        return self.by_shop is not None and self.by_shop.silences

    @property
    def names(self) -> tuple[str, ...]:
        """The quantities that decide it, those of the requirement first."""
        tests = [test for test in (self.require, self.when) if test is not None]
        return tuple(dict.fromkeys(name for test in tests for name in test.names))
