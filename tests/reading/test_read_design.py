"""A design file as a whole: what it says, and the whole message of all that is refused."""

from itertools import permutations

import pytest

from reviewer.reading.carriers import find_circle
from reviewer.reading.design import Configuration
from reviewer.reading.parts import MOST_PARTS

BENCH = """\
design: Potting bench
revision: C
service: public
parts:
  base: {kind: wheel, offset: 2 in}
  ring: {kind: wheel, carried_by: base, plate: {thickness: 18}, rollers: {count: 10}}
  trays: {kind: wheel, carried_by: [ring, base], offset: 0}
  seam: {kind: slot, between: [ring, trays], note: closes on purpose}
configurations:
  closed: {}
  open: {trays.offset: 210, ring.plate.thickness: 18.3 ± 0.3, note: trays out}
loads:
  soil: {mass: 60 kg, over: trays}
  lean: {force: 500 N, on: ring, at: rim, all_round: true}
  push: {force: 90 lbf, on: trays, at: {radius: 160, azimuth: 60 deg}}
combinations:
  worst: {own_weight: 0.9, lean: 1.5}
  both: {lean: 1, soil: 1.35, note: a windy day}
concessions:
  - {rule: wheel.turns, part: ring, by: the shop, why: "tried for a year", until: 2026-11-25}
  - {rule: wheel.rolls, part: base, by: the shop, why: heavy}
lengths: mm
"""
SMALLEST = "design: Bench\nparts: {ring: {kind: wheel}}\n"


def test_refusal(read, refusal):
    text, message = refusal
    design, said = read(text)
    assert said == message
    assert design is None


def test_parts_loads_and_facts(read):
    design, said = read(BENCH)
    assert said == ""
    assert (design.name, design.revision, design.path) == ("Potting bench", "C", "bench.yaml")
    assert design.facts.given["service"].value == "public"
    assert {name: part.carried_by for name, part in design.parts.items()} == {
        "base": (),
        "ring": ("base",),
        "trays": ("ring", "base"),
        "seam": (),
    }
    assert [part.kind.name for part in design.parts.values()] == ["wheel"] * 3 + ["slot"]
    assert design.parts["ring"].given["plate.thickness"].value == 0.018
    assert design.parts["ring"].given["rollers.count"].value == 10
    assert "kind" not in design.parts["ring"].given
    assert design.parts["ring"].place.line == 6
    assert {name: load.carried_by for name, load in design.loads.items()} == {
        "soil": ("trays",),
        "lean": ("ring",),
        "push": ("trays",),
    }
    lean, push = design.loads["lean"].given, design.loads["push"].given
    assert (lean["at"].value, lean["force"].value, lean["all_round"].value) == ("rim", 500.0, True)
    assert push["at.radius"].value == 0.16
    assert "at" not in push
    assert design.lines == tuple(BENCH.splitlines())


def test_configurations_combinations_and_concessions(read):
    design, _ = read(BENCH)
    closed, opened = design.configurations
    assert (closed.name, closed.overrides, opened.name) == ("closed", {}, "open")
    assert {key: given.value for key, given in opened.overrides.items()} == {
        ("trays", "offset"): 0.21,
        ("ring", "plate.thickness"): 0.0183,
    }
    assert opened.overrides["ring", "plate.thickness"].quantity.high == pytest.approx(0.0186)
    assert [(each.name, each.own_weight, each.factors) for each in design.combinations] == [
        ("worst", 0.9, {"lean": 1.5}),
        ("both", 1.0, {"lean": 1.0, "soil": 1.35}),
    ]
    assert [(each.rule, each.part, each.until) for each in design.concessions] == [
        ("wheel.turns", "ring", "2026-11-25"),
        ("wheel.rolls", "base", None),
    ]


def test_smallest_design(read):
    design, said = read(SMALLEST)
    assert said == ""
    assert list(design.parts) == ["ring"]
    assert design.loads == {}
    assert design.configurations == (Configuration(""),)
    assert design.combinations is None
    assert design.concessions == ()
    assert design.units == ()


@pytest.mark.parametrize("section", ["configurations", "combinations", "loads"])
def test_an_empty_section_is_as_good_as_none(read, section):
    design, said = read(f"{SMALLEST}{section}: {{}}\n")
    assert said == ""
    assert design.configurations == (Configuration(""),)
    assert design.combinations is None


def test_units_come_in_the_order_of_their_first_use(read):
    design, _ = read(BENCH)
    assert [unit.symbol for unit in design.units] == ["mm", "in", "kg", "N", "lbf", "deg"]
    design, _ = read(BENCH.replace("lengths: mm", "lengths: in").replace("18.3 ± 0.3", "1"))
    assert design is None  # 18 in is no thickness of a plate
    design, _ = read(
        SMALLEST.replace("kind: wheel", "kind: wheel, offset: 3, bolt: M8") + "lengths: in"
    )
    assert [unit.symbol for unit in design.units] == ["in"]


def test_order_of_keys_changes_no_value(read):
    sections = [
        "design: Bench",
        "parts: {ring: {kind: wheel, carried_by: base, offset: 3}, base: {kind: wheel}}",
        "loads: {lean: {force: 500 N, on: ring}}",
        "lengths: cm",
    ]
    for order in permutations(sections):
        design, said = read("\n".join(order))
        assert said == ""
        assert design.parts["ring"].given["offset"].value == 0.03
        assert design.loads["lean"].carried_by == ("ring",)


def test_a_part_that_stands_on_a_circle_is_not_blamed_for_it():
    carriers = {"shelf": ("arm",), "arm": ("ring",), "ring": ("arm", "base"), "base": ()}
    assert find_circle(carriers) == ("arm", "ring")


def test_a_long_chain_of_carriers_is_no_circle(read):
    parts = [f"  p{n}: {{kind: wheel, carried_by: p{n + 1}}}" for n in range(149)]
    text = "design: Tower\nparts:\n" + "\n".join([*parts, "  p149: {kind: wheel}"])
    design, said = read(text)
    assert said == ""
    assert len(design.parts) == 150
    _, said = read(text.replace("p149: {kind: wheel}", "p149: {kind: wheel, carried_by: p0}"))
    assert said.startswith("bench.yaml:3:33: parts carry each other in a circle")
    assert "found p0 on p1, p1 on p2," in said
    assert "p7 on p8, and so on\n" in said


def test_more_than_a_hundred_problems_end_in_a_notice(read):
    fields = "".join(f"    q{n}: 1\n" for n in range(500))
    design, said = read(f"design: Bench\nparts:\n  ring:\n    kind: wheel\n{fields}")
    assert design is None
    told = [line for line in said.split("\n") if line.startswith("bench.yaml:")]
    assert len(told) == 101
    assert told[99] == "bench.yaml:104:5: a wheel has no field q99"
    assert told[100] == "bench.yaml:105:5: too many problems to list"
    assert said.endswith(
        "    found more than 100\n"
        "    expected a design that can be read\n"
        "    mend: mend the 100 above first\n"
        "        q100: 1\n"
        "        ^^^^"
    )


@pytest.mark.parametrize(
    ("source", "line"),
    [
        ("", "bench.yaml:1:1: the file says nothing"),
        ("- ring", "bench.yaml:1:1: the file is a list"),
        (b"\xff\xfe", "bench.yaml:1:1: the file is in UTF-16"),
        ("parts: [", "bench.yaml:1:8: the [ is not closed"),
    ],
)
def test_what_is_no_table_is_told_as_yaml(read, source, line):
    design, said = read(source)
    assert design is None
    assert line in said.split("\n")


def test_problems_come_in_the_order_of_the_file(read):
    _, said = read("loads: {a: {force: 1 N, on: x}}\nparts: {b: {kind: y}}\nzzz: 1\n")
    places = [line.split(": ")[0] for line in said.split("\n") if line.startswith("bench")]
    assert places == ["bench.yaml:1:1", "bench.yaml:1:29", "bench.yaml:2:19", "bench.yaml:3:1"]


def test_too_many_parts(read):
    """So that a review of what a stranger sends ends soon."""
    parts = "design: Bench\nparts:\n" + "".join(
        f"  p{number}: {{kind: slot}}\n" for number in range(MOST_PARTS)
    )
    assert read(parts)[1] == ""
    assert read(parts + "  last: {kind: slot}\n")[1] == (
        "bench.yaml:153:3: the design has too many parts\n"
        "    found last\n"
        "    expected at most 150\n"
        "    mend: write like parts as one with a count, or what is built apart in a file apart\n"
        "      last: {kind: slot}\n"
        "      ^^^^"
    )
