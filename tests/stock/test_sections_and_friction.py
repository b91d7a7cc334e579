"""The ladders of tubes and bars, and friction as ranges."""

import pytest

from reviewer.stock.friction import friction_between, frictions
from reviewer.stock.sections import SHAPES, diameters, inch_sections, sections, sections_of
from reviewer.stock.table import StockError, UnknownStock


def test_shaft_diameters():
    # Metric shafts as merchants keep them: common practice.
    wanted = (6, 8, 10, 12, 14, 15, 16, 18, 20, 25, 30)
    assert set(wanted) <= {round(each * 1e3) for each in diameters()}


@pytest.mark.parametrize(
    ("table", "shape"),
    [
        *((sections, shape) for shape in SHAPES),
        *((inch_sections, shape) for shape in SHAPES if shape != "equal angle"),
    ],
)
def test_ladders_rise_and_sections_can_be_made(table, shape):
    ladder = sections_of(shape, table())
    assert ladder
    assert [row.size for row in ladder] == sorted({row.size for row in ladder})
    for row in ladder:
        assert row.height <= row.width
        assert not 2 * row.wall >= row.height
        assert (row.wall == row.wall) == ("tube" in shape or "angle" in shape)
        assert table().find(row.name) is row


@pytest.mark.parametrize(
    ("name", "width", "height", "wall", "source"),
    [
        ("20x20x1.5 square tube", 20, 20, 1.5, "common practice"),
        ("50x50x3 square tube", 50, 50, 3, "common practice"),
        ("60x30x2 rectangular tube", 60, 30, 2, "common practice"),
        ("12x1.5 round tube", 12, 12, 1.5, "common practice"),
    ],
)
def test_sections_are_called_by_their_size(name, width, height, wall, source):
    row = sections().find(name)
    assert row.size == (width / 1e3, height / 1e3, wall / 1e3)


def test_error_of_an_unknown_shape():
    with pytest.raises(StockError) as error:
        sections_of("hexagon")
    assert str(error.value) == (
        'shape "hexagon"; expected one of square tube, rectangular tube, round tube, round bar, '
        "square bar, flat bar, equal angle"
    )


@pytest.mark.parametrize(
    ("first", "second", "static", "kinetic", "source"),
    [
        ("wood", "steel", (0.2, 0.6), None, "structural engineers' archive, as reprinted"),
        ("wood", "wood", (0.25, 0.5), (0.2, 0.2), "Serway Table 5.1, from memory"),
        ("UHMW-PE", "steel", (0.15, 0.20), (0.12, 0.12), "static as reprinted, kinetic memory"),
        ("aluminium", "steel", (0.61, 0.61), (0.47, 0.47), "static as reprinted, kinetic memory"),
        ("acetal", "steel", (0.25, 0.50), None, "as reprinted"),
        ("nylon", "steel", (0.30, 0.50), None, "as reprinted"),
        ("timber", "concrete", (0.40, 0.40), None, "EN 1995-2 Table 6.1, from memory"),
    ],
)
def test_friction(first, second, static, kinetic, source):
    row = friction_between(first, second)
    assert (row.static_low, row.static_high) == static
    if kinetic:
        assert (row.kinetic_low, row.kinetic_high) == kinetic
    assert friction_between(second, first) is row


def test_friction_of_a_ball_bearing():
    # Friction moment 0.5 mu P d, mu 0.0010 to 0.0015, starting up to twice; catalogues, reprinted.
    row = frictions().find("deep groove ball bearing")
    assert (row.kinetic_low, row.kinetic_high) == (0.0010, 0.0015)
    assert (row.static_low, row.static_high) == (2 * row.kinetic_low, 2 * row.kinetic_high)


def test_moving_is_never_harder_than_starting():
    for row in frictions():
        assert row.static_low <= row.static_high, row.name
        assert not row.kinetic_low > row.kinetic_high, row.name
        assert not row.kinetic_high > row.static_high, row.name


def test_error_of_an_unknown_pair():
    with pytest.raises(UnknownStock) as error:
        friction_between("wood", "stele")
    assert str(error.value) == (
        'no friction pair is called "wood on stele"; the nearest is "wood on steel" or '
        '"wet wood on steel" or "wood on metal"'
    )


def test_a_section_in_inches_is_called_by_its_size():
    # Common practice, from memory: 1 1/2 inch square, 1/8 inch of wall.
    row = inch_sections().find("1-1/2x1-1/2x1/8 in square tube")
    assert row.size == pytest.approx((0.0381, 0.0381, 0.003175))
