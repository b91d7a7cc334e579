"""Traces in text and in JSON."""

import json
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from reviewer.judging.finding import Finding
from reviewer.judging.reviewed import Review
from reviewer.notation.units import parse_unit
from reviewer.reporting.data_schema import trace_schema
from reviewer.reporting.sheet import Style, columns
from reviewer.reporting.trace_data import trace_data
from reviewer.reporting.trace_text import trace_text
from reviewer.studying.trace import Step, trace

MM, N = parse_unit("mm"), parse_unit("N")


def step(name: str, value: Any = None, **more: Any) -> Step:
    """A step with everything empty that is not named."""
    fields: dict[str, Any] = {
        "says": f"what {name} is",
        "unit": MM,
        "formula": "",
        "source": "",
        "line": None,
        "case": None,
        "inputs": (),
    }
    return Step(name=name, value=value, **{**fields, **more})


GIVEN = step("lid.width", 0.04, line=3)
SHARED = step("lid.span", 0.08, formula="2 w.", source="Geometry.", inputs=(GIVEN,))
TOP = step(
    "lid.sag",
    0.0012,
    formula="F L^3 / (48 E I)",
    source="Any handbook of beams.",
    case="lean, open",
    inputs=(
        SHARED,
        step("lid.force", 150.0, unit=N, inputs=(step("lid.span", 0.08, again=True), GIVEN)),
        step("lid.material", "birch plywood", unit=None, line=4),
        step("lid.hinged", True, unit=None),
        step("lid.count", 3, unit=parse_unit("1"), line=5),
    ),
)


def test_a_trace_in_text() -> None:
    assert trace_text(TOP, "lid.yaml", Style()) == (
        "lid.sag = 1.2 mm\n"
        "  what lid.sag is\n"
        '  under "lean, open"\n'
        "  F L^3 / (48 E I) [Any handbook of beams]\n"
        "\n"
        "  lid.span = 80 mm\n"
        "      2 w. [Geometry]\n"
        "    lid.width = 40 mm, line 3\n"
        "  lid.force = 150 N\n"
        "      what lid.force is\n"
        "    lid.span = 80 mm, listed above\n"
        "    lid.width = 40 mm, line 3\n"
        "  lid.material = birch plywood, line 4\n"
        "  lid.hinged = yes, default\n"
        "  lid.count = 3, line 5\n"
    )


def test_an_unknown_value_says_why() -> None:
    told = trace_text(
        step("lid.sag", None, open_because=("lid.depth is not given",)), "lid.yaml", Style()
    )
    assert told == (
        "lid.sag = unknown\n  what lid.sag is\n  unknown, because lid.depth is not given\n"
    )


def test_what_a_step_is_is_told_once() -> None:
    told = trace_text(step("lid.sag", 0.04, inputs=(GIVEN,)), "lid.yaml", Style())
    assert told == ("lid.sag = 40 mm\n  what lid.sag is\n\n  lid.width = 40 mm, line 3\n")


def test_a_trace_in_json() -> None:
    data = trace_data(TOP)
    assert data == {
        "name": "lid.sag",
        "says": "what lid.sag is",
        "value": 1.2,
        "unit": "mm",
        "case": "lean, open",
        "formula": "F L^3 / (48 E I)",
        "source": "Any handbook of beams.",
        "path": None,
        "line": None,
        "calibrated_by": None,
        "open_because": None,
        "inputs": [
            {
                "name": "lid.span",
                "says": "what lid.span is",
                "value": 80.0,
                "unit": "mm",
                "case": None,
                "formula": "2 w.",
                "source": "Geometry.",
                "path": None,
                "line": None,
                "calibrated_by": None,
                "open_because": None,
                "inputs": [leaf("lid.width", 40.0, "mm", 3)],
            },
            {
                **leaf("lid.force", 150.0, "N", None),
                "inputs": [
                    {"name": "lid.span", "see": "above"},
                    {"name": "lid.width", "see": "above"},
                ],
            },
            leaf("lid.material", "birch plywood", None, 4),
            leaf("lid.hinged", True, None, None),
            leaf("lid.count", 3, "1", 5),
        ],
    }
    Draft202012Validator(trace_schema()).validate(data)


def leaf(name: str, value: Any, unit: str | None, line: int | None) -> dict[str, Any]:
    return {
        "name": name,
        "says": f"what {name} is",
        "value": value,
        "unit": unit,
        "case": None,
        "formula": None,
        "source": None,
        "path": None,
        "line": line,
        "calibrated_by": None,
        "open_because": None,
        "inputs": [],
    }


def steps(data: dict[str, Any]) -> Iterator[dict[str, Any]]:
    yield data
    for each in data.get("inputs", ()):
        yield from steps(each)


def test_every_number_of_a_design_can_be_traced(stage: Review) -> None:
    validator = Draft202012Validator(trace_schema())
    assert stage.derived is not None
    names = [finding.name for finding in stage.findings]
    names += [node.name for node in stage.derived.values.plan.nodes if node.row.is_number]
    assert len(names) > 50
    for name in names:
        found = trace(stage, name)
        data = trace_data(found)
        validator.validate(json.loads(json.dumps(data, allow_nan=False)))
        whole = [each["name"] for each in steps(data) if "see" not in each]
        assert len(whole) == len(set(whole)), "a shared step is listed once"
        for line in trace_text(found, "stage.yaml", Style(40)).splitlines():
            assert columns(line) <= 40 or " " not in line.strip()


@pytest.mark.parametrize(
    ("name", "value", "unit", "line"),
    [
        ("curtain.depth", 90.0, "mm", 6),
        ("foot.mass", 6.0, "kg", 5),
        ("foot.feet.count", 4, "1", 5),
        ("hatch.closing_force", 200.0, "N", 7),
        ("hatch.depth", None, "mm", None),
    ],
)
def test_given_values_come_with_their_line(
    stage: Review, name: str, value: float | None, unit: str, line: int | None
) -> None:
    data = trace_data(trace(stage, name))
    assert (data["value"], data["unit"], data["line"]) == (value, unit, line)


def test_a_value_that_a_configuration_changes_has_the_line_of_the_change(
    reviewed: Callable[..., Review],
) -> None:
    text = (
        "design: Lid\nparts:\n"
        "  lid: {kind: gap, width: 30 mm}\n"
        "configurations:\n  shut: {}\n  wide:\n    lid.width: 45 mm\n"
    )
    data = trace_data(trace(reviewed(text), "lid.most"))
    assert (data["value"], data["case"]) == (45.0, "own weight, wide")
    assert (data["inputs"][0]["value"], data["inputs"][0]["line"]) == (45.0, 7)


def test_a_finding_is_traced_to_the_lines_that_it_stands_on(stage: Review) -> None:
    finding: Finding = next(each for each in stage.findings if each.name == "curtain.wide_enough")
    data = trace_data(trace(stage, "curtain.wide_enough"))
    assert data["value"] == finding.utilisation == 2.5
    assert data["formula"] == "fail: least >= 25 mm"
    assert ("curtain.least", 10.0, 6) in [
        (each["name"], each["value"], each["line"]) for each in data["inputs"]
    ]
