"""What is computed of a design: cases, plan and values in one."""

from dataclasses import dataclass

from reviewer.deriving.cases import Cases
from reviewer.deriving.evaluate import Values, evaluate
from reviewer.deriving.inputs import given_values
from reviewer.deriving.structure import structure_of
from reviewer.reading.design import Design


@dataclass(frozen=True)
class Derived:
    """What was computed of a design: every quantity over every case."""

    design: Design
    cases: Cases
    values: Values


def derive(design: Design) -> Derived:
    """Compute every quantity of a design."""
    structure = structure_of(design)
    plan, cases = structure.plan, structure.cases
    values = evaluate(plan, given_values(design, plan, cases), len(cases.names))
    return Derived(design, cases, values)
