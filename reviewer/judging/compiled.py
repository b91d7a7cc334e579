"""Numbers, conditions and requirements compiled: checked once, evaluated as often as one likes.

An environment is a function from a dotted name to its value, as arithmetic.py has it.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, NamedTuple

import numpy as np

from reviewer.judging.agreement import is_zero
from reviewer.judging.arithmetic import Closure, Environment, number
from reviewer.judging.comparison import Flag, Truth
from reviewer.judging.conditions import condition
from reviewer.judging.dimensions import check_condition, infer
from reviewer.judging.expression import Comparison, Expression, Not, names, walk
from reviewer.judging.kinds import Collection, Vocabulary
from reviewer.judging.language_error import LanguageError
from reviewer.judging.outcome import Judged, Outcome
from reviewer.judging.terms import Term, compile_terms
from reviewer.judging.writing import write
from reviewer.notation.dimension import Dimension

__all__ = [
    "Answer",
    "Condition",
    "Outcome",
    "Requirement",
    "compile_condition",
    "compile_number",
    "judge",
]

_OPPOSITE = {"<": ">=", "<=": ">", ">": "<=", ">=": "<", "==": "!=", "!=": "=="}


class Answer(NamedTuple):
    """Where a condition holds, and where it is known; it holds only where it is known."""

    holds: Flag
    known: Flag


@dataclass(frozen=True, slots=True)
class Condition:
    """A condition, checked and compiled; `names` are the quantities it uses, each once."""

    expression: Expression
    names: tuple[str, ...]
    _truth: Callable[[Environment], Truth]

    def test(self, environment: Environment) -> Answer:
        """Say where it holds, and where that is known."""
        with np.errstate(all="ignore"):
            holds, fails = self._truth(environment)
            return Answer(holds, holds | fails)


@dataclass(frozen=True, slots=True)
class Requirement:
    """A requirement, checked and compiled; `names` are the quantities it uses, each once.

    `terms` are its comparisons in order, and `dimensions` what their demand and capacity are: None
    for a term without them. An outcome's `which` points into both.
    """

    expression: Expression
    names: tuple[str, ...]
    terms: tuple[Term, ...]
    dimensions: tuple[Dimension | None, ...]
    _judged: Callable[[Environment], Judged]

    def judge(self, environment: Environment) -> Outcome:
        """Judge the values of an environment."""
        with np.errstate(all="ignore"):
            return self._judged(environment).outcome()


def compile_number(expression: Expression, lookup: Vocabulary) -> Closure:
    """Compile a number: a function from an environment to a float or an array, in SI units.

    Raises LanguageError for what does not fit together, or is no number.

    >>> from reviewer.judging.kinds import Names
    >>> from reviewer.judging.language import parse
    >>> from reviewer.notation.dimension import LENGTH
    >>> compile_number(parse("2 * reach + 1 m"), Names(reach=LENGTH))({"reach": 3.0}.get)
    7.0
    """
    kind = infer(expression, lookup)
    if not isinstance(kind.of if isinstance(kind, Collection) else kind, Dimension):
        raise TypeError("a text or a condition is no number")
    value = number(expression, _collected(expression, lookup)).value

    def quietly(environment: Environment) -> Any:
        with np.errstate(all="ignore"):
            return value(environment)

    return quietly


def compile_condition(expression: Expression, lookup: Vocabulary) -> Condition:
    """Check and compile a condition. Raises LanguageError.

    >>> from reviewer.judging.kinds import Names
    >>> from reviewer.judging.language import parse
    >>> from reviewer.notation.dimension import FORCE
    >>> uplift = compile_condition(parse("force > 0 N"), Names(force=FORCE))
    >>> uplift.test({"force": 90.0}.get)
    Answer(holds=True, known=True)
    """
    check_condition(expression, lookup)
    truth = condition(expression, _collected(expression, lookup)).value
    return Condition(expression, _each_once(expression), truth)


def judge(expression: Expression, lookup: Vocabulary) -> Requirement:
    """Check and compile a requirement. Raises LanguageError, also for `not` around a comparison.

    >>> from reviewer.judging.kinds import Names
    >>> from reviewer.judging.language import parse
    >>> from reviewer.notation.dimension import LENGTH
    >>> judge(parse("gap >= 2 mm"), Names(gap=LENGTH)).judge({"gap": 0.008}.get)
    Outcome(holds=True, known=True, demand=0.002, capacity=0.008, utilisation=0.25, which=0)
    """
    check_condition(expression, lookup)
    _check_not(expression)
    terms: list[Term] = []
    judged = compile_terms(expression, _collected(expression, lookup), terms).value
    dimensions = tuple(_dimension(term, lookup) for term in terms)
    return Requirement(expression, _each_once(expression), tuple(terms), dimensions, judged)


def _each_once(expression: Expression) -> tuple[str, ...]:
    return tuple(dict.fromkeys(name for name, _ in names(expression)))


def _collected(expression: Expression, lookup: Vocabulary) -> frozenset[str]:
    """Return the names that have a value for each member of a collection."""
    return frozenset(name for name, _ in names(expression) if isinstance(lookup(name), Collection))


def _check_not(expression: Expression) -> None:
    """Refuse `not` around a comparison: which side would be the demand?"""
    for node in walk(expression):
        if not isinstance(node, Not):
            continue
        inner = next((each for each in walk(node) if isinstance(each, Comparison)), None)
        if inner is None:
            continue
        mend = None
        if node.operand is inner and len(inner.operators) == 1:
            turned = Comparison(inner.operands, (_OPPOSITE[inner.operators[0]],), inner.span)
            mend = f"write {write(turned)}"
        raise LanguageError(
            node.span,
            "a requirement does not turn a comparison round by not",
            write(node),
            "the opposite comparison",
            mend,
        )


def _dimension(term: Term, lookup: Vocabulary) -> Dimension | None:
    if term.demand is None or term.capacity is None:
        return None
    kind = infer(term.capacity if is_zero(term.demand) else term.demand, lookup)
    kind = kind.of if isinstance(kind, Collection) else kind
    return kind if isinstance(kind, Dimension) else None
