"""New values in the file's own notation, on sensible steps, and off the ladders of the trade."""

import pytest

from reviewer.judging.remedies import Change
from reviewer.notation.problem import Place
from reviewer.notation.quantity import read_quantity
from reviewer.notation.units import UNITS, parse_unit
from reviewer.parts.registry import KINDS
from reviewer.reading.read_design import read_design
from reviewer.reading.shop_stock import Tables
from reviewer.stock.sheets import Sheet, sheets
from reviewer.studying.given import places_of
from reviewer.studying.ladders import rungs_of
from reviewer.studying.rewriting import measure_text, rewritten
from reviewer.studying.steps import on_step, step_of

DESIGN = """\
design: Ladders
lengths: mm
parts:
  foot: {kind: base, feet: {count: 5, circle: 900}, height: 300, mass: 20 kg}
  ring:
    kind: slewing_ring
    carried_by: foot
    plate: {material: birch plywood, thickness: 12, diameter: 560}
    carry: {bearing: "626", count: 6, circle: 460, bolt: M6x30}
  top: {kind: top, carried_by: ring, material: birch plywood, thickness: 3/4 in, diameter: 900}
  rod: {kind: shaft, carried_by: foot, diameter: 16, length: 300, material: C45,
    lever: {length: 60}}
"""


@pytest.mark.parametrize(
    ("text", "value", "lengths", "expected"),
    [
        ("18 mm", 0.021, None, "21 mm"),
        ("18", 0.0215, "mm", "21.5"),
        ("3/4 in", 0.0254, None, "1 in"),
        ("3/4", 0.022225, "in", "7/8"),
        ("1-1/2", 1.75 * 0.0254, "in", "1 3/4"),
        ("2'-1 1/2\"", 26 * 0.0254, None, "26 in"),
        ("18 mm ± 0.3 mm", 0.021, None, "21 mm ± 0.3 mm"),
        ("(18 ± 0.3) mm", 0.021, None, "21 mm ± 0.3 mm"),
        ("18 ± 0.3", 0.021, "mm", "21 ± 0.3"),
        ("18 mm +0.2/-0.5 mm", 0.021, None, "21 mm +0.2/-0.5 mm"),
        ("18 mm ± 0.3 mm uniform", 0.021, None, "21 mm ± 0.3 mm uniform"),
        ("20 kg", 25.0, None, "25 kg"),
        ("1 kN/mm", 2e6, None, "2 kN/mm"),
        ("12 %", 0.15, None, "15 %"),
    ],
)
def test_a_value_is_written_as_the_file_writes_it(
    text: str, value: float, lengths: str | None, expected: str
) -> None:
    declared = UNITS[lengths] if lengths else None
    before = read_quantity(text, lengths=declared)
    told = measure_text(before, text, value)
    assert told == expected
    after = read_quantity(told, expected=before.dimension, lengths=declared)
    assert after.value == pytest.approx(value, rel=1e-12)
    assert after.high - after.low == pytest.approx(before.high - before.low)
    assert after.spread == before.spread


@pytest.mark.parametrize(
    ("value", "unit", "step"),
    [
        (0.64, "mm", 5), (0.1, "mm", 5), (0.099, "mm", 2), (0.036, "mm", 1), (0.012, "mm", 0.5),
        (0.003, "mm", 0.1), (0.00015, "mm", 0.005), (0.64, "m", 0.005), (24.0, "kg", 1),
        (0.508, "in", 1 / 8), (0.0508, "in", 1 / 16), (0.0254, "in", 1 / 32),
        (0.0127, "in", 1 / 64), (0.0002, "in", 0.0002),
    ],
)  # fmt: skip
def test_the_step_of_a_size(value: float, unit: str, step: float) -> None:
    assert step_of(value, parse_unit(unit)) == pytest.approx(step, rel=1e-9)


@pytest.mark.parametrize(
    ("value", "up", "further", "expected"),
    [
        (0.6874, True, 0, 0.690),
        (0.6874, False, 0, 0.685),
        (0.690, True, 0, 0.690),
        (0.690, True, 1, 0.695),
        (0.690, False, 1, 0.685),
        (-0.6874, True, 0, -0.690),
    ],
)
def test_the_next_step(value: float, up: bool, further: int, expected: float) -> None:
    assert on_step(value, parse_unit("mm"), up=up, further=further) == pytest.approx(expected)


def texts(field: str, tables: Tables | None = None) -> list[object]:
    design, problems = read_design(DESIGN, "x.yaml", KINDS)
    assert design is not None, problems
    part, _, path = field.partition(".")
    owner = design.parts[part]
    given = next(places_of(design, owner, owner.kind.by_path[path]))
    return [rung.values for rung in rungs_of(given, tables or Tables())]


def test_a_plate_comes_in_the_thicknesses_of_its_material_and_unit() -> None:
    # sheets.tsv: Handbook of Finnish Plywood, from memory.
    millimetres = [
        float(values["plate.thickness"]) * 1e3 for values in texts("ring.plate.thickness")
    ]  # type: ignore[index]
    assert millimetres == pytest.approx([3, 4, 6, 6.5, 9, 12, 15, 18, 21, 24, 27, 30])
    inches = [float(values["thickness"]) / 0.0254 for values in texts("top.thickness")]  # type: ignore[index]
    assert inches == pytest.approx([1 / 8, 1 / 4, 3 / 8, 1 / 2, 5 / 8, 3 / 4, 1])


def test_a_shop_has_sheets_of_its_own() -> None:
    row = Sheet(
        name="13 mm birch plywood, offcuts", material="birch plywood", label="13 mm",
        nominal=0.013, actual=0.0127, source="calliper",
    )  # fmt: skip
    tables = Tables(sheets=sheets().with_rows([row]))
    found = [float(each["plate.thickness"]) for each in texts("ring.plate.thickness", tables)]  # type: ignore[index]
    assert 0.013 in found
    assert len(found) == len(texts("ring.plate.thickness")) + 1


def test_a_shaft_is_a_round_bar() -> None:
    found = [float(values["diameter"]) * 1e3 for values in texts("rod.diameter")]  # type: ignore[index]
    assert found == pytest.approx(sorted(found))
    assert {14, 15, 16, 18, 20, 22, 25} <= {round(each) for each in found}


def test_a_bearing_brings_the_bolt_that_fits_its_bore() -> None:
    found = {values["carry.bearing"].name: values for values in texts("ring.carry.bearing")}  # type: ignore[index]
    assert "carry.bolt" not in found["626"]  # 6 mm bore: the bolt M6 stays
    assert found["6001"]["carry.bolt"].name == "M12x30"  # 12 mm bore
    assert found["6000"]["carry.bolt"].name == "M10x30"
    assert "607" not in found  # 7 mm bore: no bolt of the table fits it closely


def test_a_bolt_in_a_bearing_stays_within_its_bore() -> None:
    names = [values["carry.bolt"].name for values in texts("ring.carry.bolt")]  # type: ignore[index]
    assert names == ["M6x30"]


def test_counts_go_from_a_quarter_to_four_times_within_bounds() -> None:
    counts = [values["feet.count"] for values in texts("foot.feet.count")]  # type: ignore[index]
    assert counts == list(range(3, 21))


def test_changes_on_one_line_leave_each_other_in_place() -> None:
    line = "a: [10, 20]  # \"x\"\nb: '5 mm'\n"
    changes = [
        Change("p", "one", "10", "100", Place("x", 1, 5, 7)),
        Change("p", "two", "20", "7", Place("x", 1, 9, 11)),
        Change("p", "b", "5 mm", "6 mm", Place("x", 2, 4, 10), "'"),
    ]
    assert rewritten(line, changes) == "a: [100, 7]  # \"x\"\nb: '6 mm'\n"
