"""Sheets by their trade names: what they are called beside what they measure, all through a review.

Measures are those of the Handbook of Finnish Plywood, thickness table, from memory.
"""

import pytest

from reviewer import review
from reviewer.notation.problem import render
from reviewer.studying.bands import bands_of
from reviewer.studying.given import places_of
from reviewer.studying.ladders import rungs_of
from reviewer.studying.rewriting import text_of


def top(thickness: str, more: str = "") -> str:
    return (
        f"\n  lid: {{kind: top, carried_by: base, diameter: 600, thickness: {thickness}{more}}}\n"
    )


BIRCH = ", material: birch plywood"
# thickness, more, mm: counted with, called, least, most
SIZES = [
    ("3/4 birch ply", "", 17.6, 19.05, 17.1, 18.3),
    ("18 mm birch plywood", "", 17.6, 18.0, 17.1, 18.1),
    ("18", BIRCH, 18.0, 18.0, 17.1, 18.1),
    ("17.6", BIRCH, 17.6, 18.0, 17.1, 18.1),
    ("3/4 in", BIRCH, 19.05, 19.05, 17.1, 18.3),
    ("12", BIRCH, 12.0, 12.0, 11.5, 12.5),
    ("1/2 birch ply", BIRCH, 12.0, 12.7, 11.5, 12.7),
]


@pytest.mark.parametrize(("thickness", "more", "counted", "called", "least", "most"), SIZES)
def test_both_sizes_are_kept(asked, thickness, more, counted, called, least, most) -> None:
    found = asked(top(thickness, more))
    sizes = ("thickness", "sheet.nominal", "sheet.low", "sheet.high")
    measured = [found(f"lid.{each}") * 1000 for each in sizes]
    assert measured == pytest.approx([counted, called, least, most], rel=1e-9)


def test_the_name_of_the_sheet_is_that_of_the_material_too(asked) -> None:
    """680 kg/m3 over 17.6 mm: Handbook of Finnish Plywood, mean density, from memory."""
    found = asked(top("3/4 birch ply"))
    assert found("lid.mass") == pytest.approx(3.14159265 / 4 * 0.6**2 * 0.0176 * 680, rel=1e-6)


VERDICTS = [
    ("3/4 in", BIRCH, "fail"),  # 19.05 / 17.6 = 1.08
    ("3/4 birch ply", "", "pass"),
    ("18", BIRCH, "pass"),  # 18 / 17.6 = 1.02
    ("18.4", BIRCH, "not applicable"),  # measured by hand: no sheet of the table
    ("20", ", material: beech", "pass"),  # planed to 20 mm
]


@pytest.mark.parametrize(("thickness", "more", "verdict"), VERDICTS)
def test_a_thickness_that_only_the_name_has_is_told(asked, thickness, more, verdict) -> None:
    assert asked(top(thickness, more)).verdict("lid.measured") == verdict


def test_the_message_says_what_the_sheet_measures(asked) -> None:
    said = asked(top("3/4 in", BIRCH)).says("lid.measured")
    assert "measures 17.1 mm to 18.3 mm, 17.6 mm in the mean; the review counted with 19.1" in said


REFUSED = [
    (top("3/4 birch ply", ", material: MDF"), "a sheet of another material than material"),
    (top("20 mm birch plywood"), "no sheet is sold so thick"),
    (top("3/4 birch plie"), "3/4"),
    (top("18 mmm"), "18 mmm"),
]


@pytest.mark.parametrize(("parts", "words"), REFUSED)
def test_what_is_no_sheet_is_refused(parts, words) -> None:
    base = "base: {kind: base, feet: {length: 2000, width: 2000}, height: 500, mass: 400 kg}"
    found = review(f"design: sheets\nlengths: mm\nparts:\n  {base}\n{parts}")
    assert len(found.problems) == 1
    assert words in render(found.problems[0])


def test_the_band_of_the_sheet_is_a_tolerance(asked) -> None:
    (band,) = bands_of(asked(top("3/4 birch ply")).found.derived)
    assert (band.name, band.spread) == ("lid.thickness", "uniform")
    assert [band.low, band.nominal, band.high] == pytest.approx([0.0171, 0.0176, 0.0183])


def test_other_sheets_are_called_as_this_one_is(asked) -> None:
    design = asked(top("3/4 birch ply")).found.derived.design
    lid = design.parts["lid"]
    (given,) = places_of(design, lid, lid.kind.by_path["thickness"])
    called = [text_of(given, rung.size) for rung in rungs_of(given)]
    assert called[-3:] == ["5/8 in birch plywood", "3/4 in birch plywood", "1 in birch plywood"]
    assert not list(places_of(design, lid, lid.kind.by_path["material"]))


@pytest.mark.parametrize(
    ("width", "verdict"),
    [("18.35", "pass"), ("18.25", "fail")],
)
def test_a_groove_takes_the_thickest_sheet(asked, width, verdict) -> None:
    """3/4 birch ply measures 18.3 mm at most."""
    hole = f"shape: cornered, width: {width}, length: 100, passes: {{width: 3/4 birch ply}}"
    found = asked(f"\n  groove: {{kind: opening, {hole}, room: {{allowed: 0}}}}\n")
    assert found.verdict("groove.takes_every_sheet") == verdict
    assert found("groove.passes.rattles") == pytest.approx(float(width) / 1000 - 0.0171)
