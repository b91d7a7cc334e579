"""The chain of numbers behind a finding as a code flow of SARIF: each number with its value."""

from collections.abc import Iterator

from reviewer.notation.problem import Place
from reviewer.reporting.sarif_text import Data, Places, message
from reviewer.reporting.trace_text import shown
from reviewer.studying.trace import Step

ESSENTIAL, IMPORTANT, UNIMPORTANT = "essential", "important", "unimportant"


def code_flow(step: Step, places: Places) -> Data:
    """A chain from what the file gives to the verdict, each number once, in order of reckoning."""
    told = list(_steps(step, 0, set()))
    locations = [
        _location(each, depth, order, places) for order, (each, depth) in enumerate(told, 1)
    ]
    return {"threadFlows": [{"locations": locations}]}


def _steps(step: Step, depth: int, seen: set[str]) -> Iterator[tuple[Step, int]]:
    """The steps, each behind those that it is computed from."""
    if step.again or step.name in seen:
        return
    seen.add(step.name)
    for each in step.inputs:
        yield from _steps(each, depth + 1, seen)
    yield step, depth


def _location(step: Step, depth: int, order: int, places: Places) -> Data:
    where: Data = {}
    if step.line is not None and step.path is not None:
        column, end = step.columns or (1, 1)
        where = places.location(Place(step.path, step.line, column, end))
    return {
        "location": {
            "message": message(places.relative(_words(step))),
            "logicalLocations": [{"fullyQualifiedName": step.name}],
            **where,
        },
        "kinds": _kinds(step, depth),
        "state": {step.name: message(shown(step))},
        "nestingLevel": depth,
        "executionOrder": order,
        "importance": _importance(step, depth),
    }


def _words(step: Step) -> str:
    """What a number is, how it is computed, and by what source."""
    source = f"[{step.source}]" if step.source else ""
    unknown = f"Unknown, because {', '.join(step.open_because)}." if step.open_because else ""
    says = f"{step.name} = {shown(step)}: {step.says}"
    return " ".join(filter(None, [says, step.formula, source, unknown]))


def _kinds(step: Step, depth: int) -> list[str]:
    """What a step does, in words of the standard (3.38.8)."""
    kinds = ["value"] if depth else []
    if step.line is not None:
        kinds.append("acquire")
    if step.value is None:
        kinds.append("unknown")
    return kinds or ["value"]


def _importance(step: Step, depth: int) -> str:
    if depth <= 1:
        return ESSENTIAL
    return IMPORTANT if step.line is not None else UNIMPORTANT
