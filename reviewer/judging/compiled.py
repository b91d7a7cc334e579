"""Numbers, conditions and requirements compiled: checked once, evaluated as often as one likes.

An environment is a function from a dotted name to its value, as arithmetic.py has it.
"""

from itertools import count
from typing import Any, NamedTuple

import numpy as np

from reviewer.judging import misfit
from reviewer.judging.arithmetic import Closure, Environment, number
from reviewer.judging.comparison import Flag
from reviewer.judging.conditions import condition
from reviewer.judging.dimensions import Inferred, check_condition, inferred
from reviewer.judging.expression import (
    Aggregate,
    Arithmetic,
    Call,
    Comparison,
    Expression,
    Not,
    Power,
    Table,
    walk,
)
from reviewer.judging.kinds import Collection, Vocabulary
from reviewer.judging.language_error import LanguageError
from reviewer.judging.outcome import Outcome
from reviewer.judging.terms import compile_terms, terms_of
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

_RECKONING = (Arithmetic, Power, Call, Table, Aggregate)
_OPPOSITE = {"<": ">=", "<=": ">", ">": "<=", ">=": "<", "==": "!=", "!=": "=="}


class Answer(NamedTuple):
    """Where a condition holds, and where it is known; it holds only where it is known."""

    holds: Flag
    known: Flag


class Condition:
    """A condition that has been checked; `names` are the quantities that it uses, each once.

    It is compiled when it is first tested: most rules of a shop are for parts that a design lacks.
    """

    __slots__ = ("_many", "_truth", "expression", "names")

    def __init__(self, expression: Expression, found: Inferred) -> None:
        self.expression = expression
        self.names = found.names
        self._many = found.many
        self._truth: Closure | None = None

    def test(self, environment: Environment) -> Answer:
        """Say where it holds, and where that is known."""
        if self._truth is None:
            self._truth = quietly(self.expression, condition(self.expression, self._many).value)
        holds, fails = self._truth(environment)
        return Answer(holds, holds | fails)


class Requirement:
    """A requirement that has been checked; `names` are the quantities that it uses, each once.

    `terms` are its comparisons, in order; an outcome's `which` points to the one that governs. It
    is compiled when it is first judged.
    """

    __slots__ = ("_judged", "_many", "expression", "names", "terms")

    def __init__(self, expression: Expression, found: Inferred) -> None:
        self.expression = expression
        self.names = found.names
        self.terms = tuple(terms_of(expression, found.dimensions))
        self._many = found.many
        self._judged: Closure | None = None

    def judge(self, environment: Environment) -> Outcome:
        """Judge the values of an environment."""
        if self._judged is None:
            compiled = compile_terms(self.expression, self._many, count()).value
            self._judged = quietly(self.expression, compiled)
        holds, fails, *rest = self._judged(environment)
        return Outcome(holds, holds | fails, *rest)


def compile_number(expression: Expression, lookup: Vocabulary) -> Closure:
    """Compile a number: a function from an environment to a float or an array, in SI units.

    Raises LanguageError for what does not fit together, or is no number.

    >>> from reviewer.judging.kinds import Names
    >>> from reviewer.judging.language import parse
    >>> from reviewer.notation.dimension import LENGTH
    >>> compile_number(parse("2 * reach + 1 m"), Names(reach=LENGTH))({"reach": 3.0}.get)
    7.0
    """
    found = inferred(expression, lookup)
    kind = found.kind.of if isinstance(found.kind, Collection) else found.kind
    if not isinstance(kind, Dimension):
        raise misfit.not_a_number(expression, kind)
    return quietly(expression, number(expression, found.many).value)


def compile_condition(expression: Expression, lookup: Vocabulary) -> Condition:
    """Check and compile a condition. Raises LanguageError.

    >>> from reviewer.judging.kinds import Names
    >>> from reviewer.judging.language import parse
    >>> from reviewer.notation.dimension import FORCE
    >>> uplift = compile_condition(parse("force > 0 N"), Names(force=FORCE))
    >>> uplift.test({"force": 90.0}.get)
    Answer(holds=True, known=True)
    """
    return Condition(expression, check_condition(expression, lookup))


def judge(expression: Expression, lookup: Vocabulary) -> Requirement:
    """Check and compile a requirement. Raises LanguageError, also for `not` around a comparison.

    >>> from reviewer.judging.kinds import Names
    >>> from reviewer.judging.language import parse
    >>> from reviewer.notation.dimension import LENGTH
    >>> judge(parse("gap >= 2 mm"), Names(gap=LENGTH)).judge({"gap": 0.008}.get)
    Outcome(holds=True, known=True, demand=0.002, capacity=0.008, utilisation=0.25, which=0)
    """
    found = check_condition(expression, lookup)
    _check_not(expression)
    return Requirement(expression, found)


def quietly(expression: Expression, value: Closure) -> Closure:
    """Return a closure without numpy's warnings, where it reckons with more than it is given."""
    if not any(isinstance(node, _RECKONING) for node in walk(expression)):
        return value

    def quiet(environment: Environment) -> Any:
        with np.errstate(all="ignore"):
            return value(environment)

    return quiet


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
