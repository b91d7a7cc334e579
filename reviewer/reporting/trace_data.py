"""A trace as data: a tree of steps, a step that is shared listed once."""

from reviewer.reporting.data import Data, in_unit, rounded
from reviewer.studying.trace import Step


def trace_data(step: Step) -> Data:
    """A step with all that is behind it; the value in its unit, null where it is unknown."""
    return _data(step, set())


def _data(step: Step, seen: set[str]) -> Data:
    if step.again or step.name in seen:
        return {"name": step.name, "see": "above"}
    seen.add(step.name)
    return {
        "name": step.name,
        "says": step.says,
        "value": _value(step),
        "unit": step.unit.symbol if step.unit else None,
        "case": step.case,
        "formula": step.formula or None,
        "source": step.source or None,
        "path": step.path,
        "line": step.line,
        "calibrated_by": step.calibrated_by or None,
        "open_because": list(step.open_because) or None,
        "inputs": [_data(each, seen) for each in step.inputs],
    }


def _value(step: Step) -> float | str | bool | None:
    if isinstance(step.value, float):
        return in_unit(step.value, step.unit) if step.unit else rounded(step.value)
    return step.value
