"""The chain of numbers behind a quantity or a finding, back to the lines of the file."""

from math import pi
from pathlib import Path
from typing import Any, NamedTuple

import pytest

from reviewer import review
from reviewer.deriving.derived import derive
from reviewer.judging.judge import judge
from reviewer.judging.pack import in_order, read_pack
from reviewer.judging.reviewed import Review
from reviewer.notation.show import show
from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.register import register
from reviewer.parts.row import Choice, Measure, Row
from reviewer.reading.read_design import read_design
from reviewer.studying.trace import NoSuchQuantity, Step, trace

SPECIMENS = Path(__file__).parents[2] / "specimens"


class Section(NamedTuple):
    """Torsion constant [m^4] and section modulus [m^3] of a round bar."""

    torsion: Any
    modulus: Any


def section_of(diameter: Any, wall: Any) -> Section:
    """Properties of a round section.

    Gere and Goodno, Mechanics of Materials (2009), appendix E.

    Notes
    -----
    J = pi d^4 / 32, W = pi d^3 / 32.
    """
    return Section(pi * diameter**4 / 32, pi * diameter**3 / 32)


def twist(torque: Any, length: Any, torsion: Any, stiffness: Any) -> Any:
    """Twist of a bar.

    Gere and Goodno, Mechanics of Materials (2009), 3.3.

    Notes
    -----
    T L / (G J).

    Where the bar is round.
    """
    return torque * length / (stiffness * torsion)


def stress(force: Any, length: Any, modulus: Any) -> Any:
    """Bending stress, by a formula that names no source."""
    return force * length / modulus


BAR = Kind(
    name="bar",
    says="a round bar",
    rows=(
        *tree(),
        *single(),
        Row("height", "m", "its height", Measure(default="0 mm")),
        Row("diameter", "m", "its diameter", Measure(above=0.0)),
        Row("wall", "m", "its wall", Measure(above=0.0)),
        Row("length", "m", "its length", Measure(above=0.0)),
        Row("torque", "N m", "what turns it", Measure()),
        Row("stiffness", "Pa", "its shear modulus", Measure(default="80 GPa")),
        Row("slip", "m", "how far it slips", Measure(default="0 mm")),
        Row("wood", "", "what it is made of", Choice(("ash", "oak"), default="ash")),
        Row(
            "section",
            "",
            "its section",
            formula=section_of,
            needs={"diameter": "diameter", "wall": "wall?"},
        ),
        Row(
            "section.torsion",
            "m^4",
            "torsion constant",
            needs={"solution": "section"},
            take="torsion",
        ),
        Row(
            "section.modulus",
            "m^3",
            "section modulus",
            needs={"solution": "section"},
            take="modulus",
        ),
        Row(
            "twist",
            "rad",
            "how far it twists",
            formula=twist,
            needs={
                "torque": "torque",
                "length": "length",
                "torsion": "section.torsion",
                "stiffness": "stiffness",
            },
        ),
        Row(
            "lag",
            "m",
            "how far its end lags",
            formula=lambda twist, length, slip: twist * length + slip,
            needs={"twist": "twist", "length": "length", "slip": "slip"},
        ),
        Row(
            "sway",
            "m",
            "lag and twist once more",
            formula=lambda lag, twist, length: lag + twist * length,
            needs={"lag": "lag", "twist": "twist", "length": "length"},
        ),
        Row(
            "spare",
            "N",
            "what it could bear besides",
            formula=lambda force: 900.0 - force,
            needs={"force": "bears.force"},
            governs="least",
        ),
        Row(
            "stress",
            "Pa",
            "bending stress",
            formula=stress,
            needs={"force": "bears.force", "length": "length", "modulus": "section.modulus"},
        ),
    ),
)
KINDS = register([BAR], plug_in="tests")
RULE = """
- rule: bar.quick
  level: must
  stage: cutting
  require: lag <= 5 mm
  says: It lags {lag}.
  because: So.
  source: statics, by hand
  proof: {holds: {lag: 1 mm}, fails: {lag: 9 mm}}
"""
DESIGN = """\
design: a bar
lengths: mm
parts:
  rod:
    kind: bar
    mass: 2 kg
    diameter: 20
    length: 600
    torque: 12 N m
loads:
  a: {force: 300 N, on: rod}
  b: {force: 500 N, on: rod}
configurations:
  short: {}
  long: {rod.length: 900}
"""


def reviewed(text: str = DESIGN) -> Review:
    design, problems = read_design(text, "bar.yaml", KINDS)
    assert design is not None, problems
    derived = derive(design)
    rules, misfits = in_order([read_pack(RULE, "pack.yaml", KINDS)])
    assert not misfits
    findings = judge(design, derived.values, derived.cases, rules)
    return Review("bar.yaml", (), findings, derived)


def traced(name: str, text: str = DESIGN) -> Step:
    return trace(reviewed(text), name)


def outline(step: Step, depth: int = 0) -> list[str]:
    """Each step as a line: its name, its value as a reader sees it, and the line that gives it."""
    value = step.value
    if isinstance(value, float) and step.unit is not None:
        value = show(value, step.unit)
    line = f", line {step.line}" if step.line else ""
    again = ", see above" if step.again else ""
    below = [each for inner in step.inputs for each in outline(inner, depth + 1)]
    return [f"{'  ' * depth}{step.name} = {value}{line}{again}", *below]


def walk(step: Step) -> list[Step]:
    return [step, *(each for inner in step.inputs for each in walk(inner))]


def test_the_whole_chain_of_a_number() -> None:
    """12 N m x 0.9 m / (80 GPa x pi 20^4 / 32 mm^4) = 8.594e-3 rad = 0.492 deg, x 900 mm: 7.73 mm.

    The section is an object of the program's own and is passed over; a wall that nobody gave and a
    slip of zero say nothing.
    """
    assert outline(traced("rod.lag")) == [
        "rod.lag = 7.73 mm",
        "  rod.twist = 0.492 deg",
        "    rod.torque = 12 N m, line 9",
        "    rod.length = 900 mm, line 15",
        "    rod.section.torsion = 15708 mm^4",
        "      rod.diameter = 20 mm, line 7",
        "    rod.stiffness = 80000 MPa",
        "  rod.length = 900 mm, line 15",
    ]


def test_a_shared_step_is_listed_once_and_referred_to() -> None:
    assert outline(traced("rod.sway")) == [
        "rod.sway = 15.5 mm",
        "  rod.lag = 7.73 mm",
        "    rod.twist = 0.492 deg",
        "      rod.torque = 12 N m, line 9",
        "      rod.length = 900 mm, line 15",
        "      rod.section.torsion = 15708 mm^4",
        "        rod.diameter = 20 mm, line 7",
        "      rod.stiffness = 80000 MPa",
        "    rod.length = 900 mm, line 15",
        "  rod.twist = 0.492 deg, see above",
        "  rod.length = 900 mm, line 15",
    ]
    again = next(step for step in walk(traced("rod.sway")) if step.again)
    assert (again.formula, again.source, again.inputs) == ("", "", ())


def test_forces_come_down_through_objects_that_are_passed_over() -> None:
    """In the case where most comes down; the load path has words of its own."""
    step = traced("rod.bears.force")
    assert step.case == "all loads, long"
    assert step.formula.startswith("Own weight and all that comes down")
    names = {each.name: each.value for each in walk(step)}
    assert names["rod.mass"] == 2.0
    assert (names["a.force"], names["b.force"]) == (300.0, 500.0)
    assert all(each.value is not None for each in walk(step))


def test_each_step_says_what_it_is_how_and_from_where() -> None:
    step = traced("rod.twist")
    assert step.says == "how far it twists"
    assert step.formula == "T L / (G J)."
    assert step.source == "Gere and Goodno, Mechanics of Materials (2009), 3.3."


def test_a_part_of_a_solution_says_how_the_solution_was_found() -> None:
    step = traced("rod.section.torsion")
    assert step.formula == "J = pi d^4 / 32, W = pi d^3 / 32."
    assert step.source == "Gere and Goodno, Mechanics of Materials (2009), appendix E."


def test_a_formula_without_notes_or_source_is_told_in_words() -> None:
    step = traced("rod.stress")
    assert (step.formula, step.source) == (
        "Bending stress, by a formula that names no source.",
        "",
    )
    assert (traced("rod.lag").formula, traced("rod.lag").source) == ("", "")


def test_a_given_value_has_its_line_and_no_formula() -> None:
    step = traced("rod.torque")
    assert (step.line, step.formula, step.source, step.inputs) == (9, "", "", ())


def test_the_governing_case_is_named_at_the_top_alone() -> None:
    step = traced("rod.stress")
    assert step.case == "all loads, long"
    assert all(each.case is None for each in walk(step)[1:])


def test_where_the_least_governs() -> None:
    step = traced("rod.spare")
    assert step.case == "all loads, long"
    assert step.value == pytest.approx(900 - 800 - 2 * 9.80665)
    up = DESIGN.replace("a: {force: 300 N,", "a: {direction: up, force: 300 N,")
    assert traced("rod.spare", up).case == "b, long"


def test_of_cases_that_tie_the_first_is_named() -> None:
    """Both loads alike: in order of name a comes before b, and long before short."""
    assert traced("rod.bears.force", DESIGN.replace("300 N", "500 N")).case == "all loads, long"
    alone = DESIGN.replace("300 N", "500 N") + "combinations: {y: {b: 1}, x: {a: 1}}\n"
    assert traced("rod.bears.force", alone).case == "x, long"


def test_a_case_in_which_it_is_unknown_is_the_one_to_ask_about() -> None:
    text = DESIGN.replace("    length: 600\n", "")
    step = traced("rod.twist", text)
    assert (step.value, step.case) == (None, "own weight, short")
    assert step.open_because == ("rod.length is not given: its length",)


def test_why_it_is_unknown_is_told_at_the_top_alone() -> None:
    text = DESIGN.replace("    diameter: 20\n", "").replace("    torque: 12 N m\n", "")
    step = traced("rod.lag", text)
    assert step.open_because == (
        "rod.diameter is not given: its diameter",
        "rod.torque is not given: what turns it",
    )
    assert all(each.open_because == () for each in walk(step)[1:])


def test_a_finding_and_the_quantities_of_its_rule() -> None:
    step = traced("rod.quick")
    assert (step.name, step.says) == ("rod.quick", "It lags 7.73 mm.")
    assert step.formula == "fail: lag <= 5 mm"
    assert (step.case, step.source) == ("own weight, long", "statics, by hand")
    assert step.value == pytest.approx(7.735 / 5, rel=1e-3)
    assert outline(step)[1:3] == ["  rod.lag = 7.73 mm", "    rod.twist = 0.492 deg"]


def test_a_finding_may_be_asked_for_by_its_rule() -> None:
    assert traced("bar.quick") == traced("rod.quick")


def test_a_finding_that_is_open_says_why() -> None:
    step = traced("rod.quick", DESIGN.replace("    diameter: 20\n", ""))
    assert (step.value, step.formula) == (None, "open: lag <= 5 mm")
    assert step.open_because == ("rod.diameter is not given: its diameter",)


@pytest.mark.parametrize(
    ("name", "value"), [("rod.wood", "ash"), ("design.service", "private"), ("a.force", 300.0)]
)
def test_words_and_numbers_of_a_design(name: str, value: str | float) -> None:
    assert traced(name).value == value


@pytest.mark.parametrize(
    ("name", "near"),
    [
        ("rod.lagg", "rod.lag"),
        ("rod.quik", "rod.quick"),
        ("red.lag", "rod.lag"),
        ("rod.twis", "rod.twist"),
        ("nothing", None),
        ("", None),
    ],
)
def test_a_name_that_the_design_does_not_have(name: str, near: str | None) -> None:
    with pytest.raises(NoSuchQuantity) as refused:
        traced(name)
    assert (refused.value.name, refused.value.near) == (name, near)


@pytest.mark.parametrize("name", ["rod.section", "rod.action", "rod.whole", "design.cases"])
def test_an_object_of_the_programs_own_is_neither_told_nor_offered(name: str) -> None:
    with pytest.raises(NoSuchQuantity):
        traced(name)
    with pytest.raises(NoSuchQuantity) as refused:
        traced(name[:-1])
    assert refused.value.near != name


def test_many_parts_that_share_their_loads_are_walked_once() -> None:
    """Twenty storeys, each on two posts: the ways down double with every storey.

    Below the first floor stand 20 floors of 2 kg and 19 pairs of posts, half on each post of 1 kg.
    """
    storeys = "".join(
        f"  l{n}: {{kind: bar, carried_by: f{n - 1}, at: {{x: -300}}, mass: 1 kg}}\n"
        f"  r{n}: {{kind: bar, carried_by: f{n - 1}, at: {{x: 300}}, mass: 1 kg}}\n"
        f"  f{n}: {{kind: bar, carried_by: [l{n}, r{n}], mass: 2 kg}}\n"
        for n in range(1, 21)
    )
    text = f"design: a tower\nlengths: mm\nparts:\n  f0: {{kind: bar, mass: 9 kg}}\n{storeys}"
    step = traced("l1.bears.force", text)
    assert step.value == pytest.approx((1 + (20 * 2 + 19 * 2) / 2) * 9.80665, rel=1e-9)
    assert len(walk(step)) < 1000


def test_the_specimen_is_traced_to_its_lines() -> None:
    """Through the kinds that come with Reviewer: every step that the file gives has its line."""
    text = (
        "design: a shelf\nlengths: mm\nparts:\n  wall: {kind: base, mass: 24 kg}\n"
        "  arms: {kind: arm, carried_by: wall, mass: 1 kg, root: {radius: 150}, reach: 400}\n"
        "loads:\n  crate: {force: 100 N, on: arms, at: {radius: 550}}\n"
    )
    steps = {step.name: step for step in walk(trace(review(text), "arms.root_moment"))}
    assert {name: steps[name].line for name in ("arms.mass", "arms.reach", "crate.force")} == {
        "arms.mass": 5,
        "arms.reach": 5,
        "crate.force": 7,
    }


def test_a_list_of_points_is_told_by_their_count() -> None:
    """The profile of the puppet stage's ramp has four points."""
    found = review(SPECIMENS / "mechanisms" / "puppet_stage_first.yaml")
    assert trace(found, "floor_ramp.profile").value == "4 points"
