"""A table against a kind's fields: what is read, and the whole message of all that is refused."""

import pytest

from reviewer.notation.units import UNITS
from reviewer.parts.kind import Kind
from reviewer.parts.row import Measure, Row, Stock
from reviewer.reading.context import Context
from reviewer.reading.events import read_yaml
from reviewer.reading.fields import read_fields
from reviewer.reading.tree import Table
from reviewer.stock.bearings import bearings
from reviewer.stock.fasteners import read_fastener
from reviewer.stock.materials import materials


def test_refusal(read_wheel, refusal):
    text, message = refusal
    given, said = read_wheel(text)
    assert said == message
    assert not given


# Values are exact by definition of the units: 1 in = 25.4 mm, 1 ft = 12 in (NIST SP 811, B.8),
# 0 degC = 273.15 K (SI Brochure, 9th edition, 2.3.1).
@pytest.mark.parametrize(
    ("text", "lengths", "path", "value", "limits"),
    [
        ("offset: 210 mm", None, "offset", 0.21, (0.21, 0.21)),
        ("offset: 210", "mm", "offset", 0.21, (0.21, 0.21)),
        ("offset: 3/4", "in", "offset", 0.01905, (0.01905, 0.01905)),
        ("offset: 5'-6 1/2\"", None, "offset", 1.6891, (1.6891, 1.6891)),
        ('offset: "18 mm"', None, "offset", 0.018, (0.018, 0.018)),
        ("offset: 18 mm ± 0.3 mm", None, "offset", 0.018, (0.0177, 0.0183)),
        ("offset: 18 +0.2/-0.5", "mm", "offset", 0.018, (0.0175, 0.0182)),
        ("at: {x: \u22123 mm}", None, "at.x", -0.003, (-0.003, -0.003)),
        ("friction: 0.3", None, "friction", 0.3, (0.3, 0.3)),
        ("friction: 12 %", None, "friction", 0.12, (0.12, 0.12)),
        ("room: 23 degC", None, "room", 296.15, (296.15, 296.15)),
        ("rollers: {gap: touching}", None, "rollers.gap", 0.0, (0.0, 0.0)),
        ("rollers: {gap: unknown}", None, "rollers.gap", 0.0002, (0.0001, 0.0003)),
        ("rollers: {gap: 0 mm}", None, "rollers.gap", 0.0, (0.0, 0.0)),
        ("rollers: {gap: 5 mm}", None, "rollers.gap", 0.005, (0.005, 0.005)),
        ("plate: {thickness: 100 mm}", None, "plate.thickness", 0.1, (0.1, 0.1)),
    ],
)
def test_measure(read_wheel, text, lengths, path, value, limits):
    given, said = read_wheel(text, lengths)
    assert said == ""
    quantity = given[path].quantity
    assert given[path].value == pytest.approx(value, rel=1e-12)
    assert (quantity.low, quantity.high) == pytest.approx(limits, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "path", "value"),
    [
        ("rollers: {count: 3}", "rollers.count", 3),
        ("rollers: {count: 012}", "rollers.count", 12),
        ("rollers: {count: 24}", "rollers.count", 24),
        ("drive: crank", "drive", "crank"),
        ('drive: "crank"', "drive", "crank"),
        ("at: edge", "at", "edge"),
        ("users: [children, adults]", "users", ("children", "adults")),
        ("users: adults", "users", ("adults",)),
        ("covered: true", "covered", True),
        ("covered: False", "covered", False),
        ("checked: 2026-11-25", "checked", "2026-11-25"),
        ("label: 12", "label", "12"),
        ("label: no", "label", "no"),
        ('label: "{case} ..."', "label", "{case} ..."),
        ("beside: base", "beside", "base"),
        ("carried_by: base", "carried_by", ("base",)),
        ("carried_by: [bench, base]", "carried_by", ("bench", "base")),
    ],
)
def test_static_value(read_wheel, text, path, value):
    given, said = read_wheel(text)
    assert said == ""
    assert given[path].value == value
    assert type(given[path].value) is type(value)
    assert given[path].quantity is None


def test_stock_is_found_whether_quoted_or_not(read_wheel):
    given, said = read_wheel(
        "plate: {material: Birch-Plywood}\nrollers: {bearing: 6001}\nbolt: M8x40\n"
    )
    assert said == ""
    assert given["plate.material"].value is materials().find("birch plywood")
    assert given["rollers.bearing"].value is bearings().find("6001")
    assert given["rollers.bearing"].text == "6001"
    assert given["bolt"].value == read_fastener("M8x40")


def test_shape_fills_its_measures(read_wheel):
    given, said = read_wheel("section: {note: extruded, tube: [30, 1 in, 2 ± 0.1]}", "mm")
    assert said == ""
    assert given["section"].value == "tube"
    assert [given[f"section.{side}"].value for side in ("width", "height", "wall")] == [
        0.03,
        0.0254,
        0.002,
    ]
    assert given["section.wall"].quantity.high == pytest.approx(0.0021)
    assert "section.diameter" not in given


def test_shape_of_one_measure_needs_no_brackets(read_wheel):
    for text in ("section: {round: 20 mm}", "section: {round: [20 mm]}"):
        given, said = read_wheel(text)
        assert said == ""
        assert (given["section"].value, given["section.diameter"].value) == ("round", 0.02)


def test_notes_are_passed_over_in_every_table(read_wheel):
    given, said = read_wheel(
        "note: tried twice\nplate: {note: 3, thickness: 18 mm}\nat: {note: , x: 1 mm}\n"
    )
    assert said == ""
    assert list(given) == ["plate.thickness", "at.x"]


def test_every_value_has_its_place_and_text(read_wheel):
    given, _ = read_wheel("offset: 210 mm\nplate:\n  thickness: '18 mm'\nsection: {round: 2 mm}\n")
    places = {
        path: (each.text, each.place.line, each.place.column, each.place.end_column)
        for path, each in given.items()
    }
    assert places == {
        "offset": ("210 mm", 1, 9, 15),
        "plate.thickness": ("18 mm", 3, 14, 21),
        "section": ("round", 4, 11, 16),
        "section.diameter": ("2 mm", 4, 18, 22),
    }


def test_all_problems_of_a_table_are_told_and_sound_fields_kept(read_wheel):
    given, said = read_wheel("offset: 3 kg\nzzz: 1\ncovered: yes\nfriction: 0.3\n")
    assert [line for line in said.split("\n") if line.startswith("wheel.yaml")] == [
        "wheel.yaml:1:9: a mass stands where a length is due",
        "wheel.yaml:2:1: a wheel has no field zzz",
        "wheel.yaml:3:10: covered is true or false",
    ]
    assert list(given) == ["friction"]


def test_skipped_keys_are_known_at_the_top_alone():
    kind = Kind("box", "a box", (Row("lid.stock", "", "its board", Stock("materials")),))
    text = "kind: box\nlid: {kind: box}\nknd: box\n"
    document = read_yaml(text, "box.yaml")
    assert isinstance(document.root, Table)
    context = Context("box.yaml", document.lines)
    assert read_fields(document.root, kind, context, frozenset({"kind"})) == {}
    assert [(each.place.line, each.expected, each.mend) for each in context.problems] == [
        (2, "stock", None),
        (3, "one of lid and kind", "write kind"),
    ]


def test_stock_comes_from_the_context():
    kind = Kind("box", "a box", (Row("board", "", "its board", Stock("materials")),))
    document = read_yaml("board: shed door\n", "box.yaml")
    assert isinstance(document.root, Table)
    context = Context("box.yaml", document.lines, stock={"materials": str.upper})
    assert read_fields(document.root, kind, context)["board"].value == "SHED DOOR"


def test_bounds_are_shown_in_the_unit_of_the_value(read_wheel):
    _, said = read_wheel("rollers: {gap: 1/4}", "in")
    assert "expected at least 0 in and at most 0.197 in" in said
    _, said = read_wheel("rollers: {gap: 0.6}", "cm")
    assert "expected at least 0 cm and at most 0.5 cm" in said


def test_units_are_noted_as_they_are_used():
    document = read_yaml("offset: 2 in\nfriction: 12 %\nrollers: {gap: touching}\n", "w.yaml")
    assert isinstance(document.root, Table)
    kind = Kind(
        "wheel",
        "a wheel",
        (
            Row("offset", "m", "travel", Measure()),
            Row("friction", "1", "friction", Measure()),
            Row("rollers.gap", "m", "gap", Measure(words=(("touching", "0 mm"),))),
        ),
    )
    context = Context("w.yaml", document.lines)
    read_fields(document.root, kind, context)
    assert [quantity.unit for _, quantity in context.quantities] == [UNITS["in"], UNITS["%"]]
