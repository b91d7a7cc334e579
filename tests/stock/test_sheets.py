"""Sheets against the thickness tables of their standards, and their names as people write them."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.notation.quantity import read_quantity
from reviewer.stock.materials import Material, materials
from reviewer.stock.sheets import Sheet, read_sheet, sheets, sheets_of, thicknesses
from reviewer.stock.table import StockError, UnknownStock

PS_1 = "PS 1, unsanded, as reprinted"


@pytest.mark.parametrize(
    ("text", "low", "high", "source"),
    [
        # mm, as printed beside the inches
        ("1/4 softwood plywood", 5.56, 7.14, PS_1),
        ("3/8 softwood plywood", 8.73, 10.32, PS_1),
        ("15/32 softwood plywood", 11.11, 12.70, PS_1),
        ("1/2 softwood plywood", 11.11, 12.70, PS_1 + "; the usual 1/2 is category 15/32"),
        ("19/32 softwood plywood", 14.29, 15.88, PS_1),
        ("5/8 softwood plywood", 14.29, 15.88, PS_1 + "; the usual 5/8 is category 19/32"),
        ("23/32 softwood plywood", 17.46, 19.05, PS_1),
        ("3/4 softwood plywood", 17.46, 19.05, PS_1 + "; the usual 3/4 is category 23/32"),
        ("1 in softwood plywood", 24.13, 26.67, PS_1),
        ("4 mm birch plywood", 3.5, 4.1, "Handbook of Finnish Plywood, from memory"),
        ("9 mm birch plywood", 8.8, 9.5, "Handbook of Finnish Plywood, from memory"),
        ("18 mm birch plywood", 17.1, 18.1, "Handbook of Finnish Plywood, from memory"),
        ("18 mm softwood plywood", 17.06, 18.74, "EN 315 sanded, from memory"),
        ("18 mm MDF", 17.8, 18.2, "EN 622-1, from memory"),
        ("25 mm MDF", 24.7, 25.3, "EN 622-1, from memory"),
        ("19 mm particleboard", 18.7, 19.3, "EN 312 sanded, from memory"),
        ("0.8 mm high-pressure laminate", 0.7, 0.9, "EN 438, from memory"),
    ],
)
def test_bands(text, low, high, source):
    row = read_sheet(text)
    assert row.low * 1e3 == pytest.approx(low, abs=0.012)
    assert row.high * 1e3 == pytest.approx(high, abs=0.012)


@pytest.mark.parametrize(
    ("nominal", "plies"),
    [(4, 3), (6.5, 5), (9, 7), (12, 9), (15, 11), (18, 13), (21, 15), (24, 17), (27, 19), (30, 21)],
)
def test_birch_plywood_measures_its_plies(nominal, plies):
    # 1.4 mm plies, the two faces sanded to 1.1 mm; Handbook of Finnish Plywood, from memory.
    row = read_sheet(f"{nominal} mm birch plywood")
    assert row.actual * 1e3 == pytest.approx(1.4 * (plies - 2) + 2.2)


def test_three_quarter_plywood_is_not_three_quarters():
    """The trade's own: 3/4 plywood is 18.3 mm at best (23/32 in is 18.26 mm; common practice)."""
    for text in ("3/4 birch ply", "3/4 softwood ply"):
        row = read_sheet(text)
        assert row.nominal == 0.01905
        assert row.actual < 0.0183


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("18 mm birch plywood", "18 mm birch plywood"),
        ("18mm Birch Ply", "18 mm birch plywood"),
        ("3/4 birch ply", "3/4 in birch plywood"),
        ("3/4 in birch plywood", "3/4 in birch plywood"),
        ('3/4" baltic birch', "3/4 in birch plywood"),
        ("3/4-in birch plywood", "3/4 in birch plywood"),
        ("1/2 MDF", "1/2 in MDF"),
        ("0.75 in MDF", "3/4 in MDF"),
        ("12.7 mm mdf", "1/2 in MDF"),
        ("6.5 mm birch plywood", "6.5 mm birch plywood"),
        ("1-1/2 in Douglas fir", "1-1/2 in Douglas-fir"),
        ("1 1/2 in Douglas fir", "1-1/2 in Douglas-fir"),
        ("6 mm 6061-T6", "6 mm 6061-T6"),
        ("10 mm HDPE", "10 mm HDPE"),
    ],
)
def test_reading_a_sheet(text, name):
    assert read_sheet(text).name == name


def test_every_sheet_is_read_back_from_its_name():
    for row in sheets():
        assert row.nominal == read_quantity(row.label).value
        if row.material in materials():
            assert read_sheet(row.name).nominal == row.nominal


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            "birch plywood",
            'sheet "birch plywood"; expected a thickness and a material, as in '
            "18 mm birch plywood or 3/4 birch ply",
        ),
        (
            "18 birch plywood",
            'sheet "18 birch plywood"; expected a unit after 18, as in "18 mm birch plywood"',
        ),
        (
            "17 mm hardboard",
            'sheet "17 mm hardboard"; hardboard is sold as 1/8 in, 3.2 mm, 1/4 in, 6.4 mm; '
            "add a row for this one to the shop's stock, with its source",
        ),
        (
            "3/0 MDF",
            'sheet "3/0 MDF"; the fraction divides by zero: found 3/0, expected a fraction such '
            "as 3/4; write another number than 0 after the /",
        ),
    ],
)
def test_error_of_a_sheet(text, message):
    with pytest.raises(StockError) as error:
        read_sheet(text)
    assert str(error.value) == message


def test_error_of_a_sheet_of_an_unknown_material():
    with pytest.raises(UnknownStock) as error:
        read_sheet("18 mm brich plywood")
    assert str(error.value) == (
        'no material is called "brich plywood"; the nearest is "birch plywood" or "fir plywood" '
        'or "birch ply"'
    )


@given(st.text(max_size=60))
def test_no_text_brings_a_traceback(text):
    with suppress(StockError, UnknownStock):
        read_sheet(text)


def test_the_ladder_of_thicknesses():
    birch = materials().find("birch plywood")
    metric = (3, 4, 6, 6.5, 9, 12, 15, 18, 21, 24, 27, 30)
    assert thicknesses(birch, inches=False) == tuple(each / 1e3 for each in metric)
    assert thicknesses(birch, inches=True)[-2:] == (0.01905, 0.0254)
    for row in materials():
        rising = thicknesses(row)
        assert list(rising) == sorted(set(rising))
        assert rising, row.name


def test_bands_hold_the_mean_and_sheets_have_sizes():
    for row in sheets():
        assert not row.low > row.actual, row.name
        assert not row.high < row.actual, row.name
        for length, width in row.sizes:
            assert 1.0 < width <= length < 4.0, row.name


def test_metal_and_plastic_measure_what_they_are_called():
    for row in sheets():
        if row.material in ("metal", "plastic"):
            assert row.actual == pytest.approx(row.nominal, abs=1e-7), row.name


def test_bands_are_as_narrow_as_tolerances_are():
    # A slip of a figure shows: no band is wider than a tenth of the thickness and 1.2 mm.
    for row in sheets():
        if row.low == row.low:
            assert row.high - row.low < 0.1 * row.nominal + 1.2e-3, row.name
            assert abs(row.actual - row.nominal) < 0.101 * row.nominal, row.name


def test_a_shop_adds_a_sheet_and_a_material():
    bamboo = Material(name="bamboo ply", family="plywood", source="weighed in the shop")
    own = Sheet(
        name="19 mm bamboo ply", material="bamboo ply", label="19 mm", nominal=0.019,
        actual=0.0188, source="calipers, ten sheets",
    )  # fmt: skip
    table, known = sheets().with_rows([own]), materials().with_rows([bamboo])
    assert read_sheet("19 mm bamboo ply", table, known) is own
    assert sheets_of(bamboo, table) == (own,)
    with pytest.raises(StockError) as error:
        read_sheet("19 mm bamboo ply", known=known)
    assert str(error.value) == (
        'sheet "19 mm bamboo ply"; bamboo ply is sold as no thickness that the table knows; '
        "add a row for this one to the shop's stock, with its source"
    )
