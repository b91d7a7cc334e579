"""Router and saw cuts in a shop: cutters against depth, width, corners; sheets against their names.

Sheets: birch plywood of 12 mm measures 11.5 to 12.5 mm and of 18 mm 17.1 to 18.1 mm, mean 17.6 mm
(Handbook of Finnish Plywood, from memory, as in the stock tables).
"""

from math import cos, sin
from pathlib import Path
from typing import Any

import pytest

from reviewer import review

SHOP = """shop: Hill workshop
lengths: mm
cutters:
  thick: {diameter: 12, cutting_length: 25, shank: 8, length: 70}
  thin: {diameter: 6, cutting_length: 19, shank: 6, length: 60}
  round over: {shape: round over, diameter: 30, cutting_length: 15, shank: 8}
  table saw: {shape: saw, kerf: 3.2, depth: 75}
  trim saw: {shape: saw, kerf: 2, depth: 50}
allowances: {kerf: 2.8, trim: 10, collet: 20}
"""
HEAD = "design: by hand\nlengths: mm\nparts:\n"
TOP = "  top: {kind: top, material: birch plywood, thickness: 18, diameter: 900}\n"


class Made:
    """A design in a shop's folder, reviewed."""

    def __init__(self, folder: Path, parts: str, shop: str = SHOP) -> None:
        if shop:
            (folder / "shop.yaml").write_text(shop, "utf-8")
        (folder / "bench.yaml").write_text(f"{HEAD}{parts}", "utf-8")
        self.found = review(folder / "bench.yaml")
        assert self.found.problems == ()
        self.values = self.found.derived.values

    def __call__(self, name: str) -> Any:
        part, _, path = name.partition(".")
        slot = self.values.plan.slot(part, path)
        assert slot is not None, name
        return self.values.at(slot, 0)

    def verdicts(self, name: str) -> list[str]:
        return [each.verdict for each in self.found.findings if each.name == name]

    def verdict(self, name: str) -> str:
        (found,) = self.verdicts(name)
        return found

    def says(self, name: str) -> str:
        return next(each.message for each in self.found.findings if each.name == name)


@pytest.fixture
def made(tmp_path: Path):
    return lambda parts, shop=SHOP: Made(tmp_path, parts, shop)


def cut(more: str, host: str = TOP) -> str:
    return f"{host}  cut: {{kind: router_cut, of: top, {more}}}\n"


CHOSEN = [
    ("width: 12.1, depth: 20", "thick", 50.0, "its shank of 8 goes into 12.1: 70 less 20 held"),
    ("width: 12, depth: 20", "thick", 50.0, "a shank of 8 in 12"),
    ("width: 10, depth: 17", "thin", 40.0, "the thick one does not go in; 60 less 20"),
    ("width: 6, depth: 10", "thin", 19.0, "a shank as thick as the cut: the edges alone"),
    ("width: 6, depth: 40", "thin", 19.0, "none reaches: the deepest"),
    ("width: 12, depth: 20, cutter: thin", "thin", 40.0, "the one that is named"),
    ("width: 30, depth: 20, corner: 5", "thin", 40.0, "a radius of 5 takes no cutter of 12"),
]


@pytest.mark.parametrize(("more", "name", "reach", "why"), CHOSEN)
def test_the_widest_cutter_that_goes_in_and_reaches(
    made, more: str, name: str, reach: float, why: str
) -> None:
    found = made(cut(more))
    assert found("cut.tool.name") == name
    assert found("cut.tool.reach") * 1e3 == pytest.approx(reach, abs=1e-9), why


@pytest.mark.parametrize(
    ("more", "rule", "verdict"),
    [
        ("width: 6, depth: 19", "cutter_reaches", "pass"),
        ("width: 6, depth: 19.1", "cutter_reaches", "fail"),
        ("width: 5.9, depth: 6", "cutter_goes_in", "fail"),
        ("width: 5.9, depth: 6", "cutter_reaches", "open"),
        ("width: 30, depth: 6, corner: 3", "corner_cut", "pass"),
        ("width: 30, depth: 6, corner: 2.9", "corner_cut", "fail"),
        ("width: 6, depth: 17.2", "reach_to_spare", "fail"),
        ("width: 6, depth: 6, pass: 3", "passes_shallow", "pass"),
        ("width: 6, depth: 6, pass: 3.1", "passes_shallow", "fail"),
        ("width: 6, depth: 6, climbs: true", "not_climbing", "fail"),
        ("width: 6, depth: 6, climbs: true, by_hand: false", "not_climbing", "pass"),
        ("width: 6, depth: 8.5", "wood_left", "pass"),
        ("width: 6, depth: 8.6", "wood_left", "fail"),
        ("width: 6, depth: 6, piece: 299", "piece_held", "fail"),
    ],
)
def test_a_cut_against_the_cutters(made, more: str, rule: str, verdict: str) -> None:
    """17.1 mm at the thinnest leaves 8.6 under 8.5 and 8.5 under 8.6; half of it is 8.55."""
    assert made(cut(more)).verdict(f"cut.{rule}") == verdict


def test_a_cutter_that_the_shop_does_not_have(made) -> None:
    found = made(cut("width: 12, depth: 6, cutter: long"))
    assert found.verdict("cut.cutter_reaches") == "open"
    assert found("cut.tool.name") == "no cutter of the shop"


def test_without_a_shop_it_is_said_once(made) -> None:
    parts = TOP + "".join(
        f"  cut_{each}: {{kind: router_cut, of: top, width: 12, depth: 6}}\n" for each in "abc"
    )
    found = made(parts, shop="")
    assert found.verdicts("design.cutters_unknown") == ["review"]
    assert not [each for each in found.found.findings if each.verdict == "open"]


TAKEN = [
    ("width: 12.5", 0.0, 1.0, "pass", "fail", "11.5 to 12.5 in 12.5"),
    ("width: 12.4", -0.1, 0.9, "fail", "fail", "the thickest does not go in"),
    ("width: 12, takes: {measured: 11.7}", 0.3, 0.3, "pass", "pass", "the sheet at hand"),
]


@pytest.mark.parametrize(("more", "least", "most", "goes_in", "held", "why"), TAKEN)
def test_a_sheet_in_its_groove(
    made, more: str, least: float, most: float, goes_in: str, held: str, why: str
) -> None:
    takes = "takes: {material: birch plywood, thickness: 12"
    measured = more.partition("takes: {")[2].rstrip("}")
    width = more.partition(",")[0]
    sheet = f"{takes}, {measured}}}" if measured else f"{takes}}}"
    found = made(cut(f"{width}, depth: 6, {sheet}"))
    assert found("cut.play.least") * 1e3 == pytest.approx(least, abs=1e-9)
    assert found("cut.play.most") * 1e3 == pytest.approx(most, abs=1e-9)
    assert found.verdict("cut.sheet_goes_in") == goes_in
    assert found.verdict("cut.sheet_held") == held


def test_the_face_from_which_the_depth_counts(made) -> None:
    """From the near face the floor follows the sheet's band of 1 mm, from the far one not."""
    near = made(cut("width: 12, depth: 8, parallel_within: 0.3"))
    assert near("cut.parallel") * 1e3 == pytest.approx(1.0, abs=1e-9)
    assert near("cut.left") * 1e3 == pytest.approx(17.1 - 8, abs=1e-9)
    assert near.verdict("cut.floor_parallel") == "fail"
    far = made(cut("width: 12, depth: 8, parallel_within: 0.3, rides_on: far face"))
    assert far("cut.parallel") == 0.0
    assert far("cut.left") * 1e3 == pytest.approx(18 - 8, abs=1e-9)
    assert far.verdict("cut.floor_parallel") == "pass"


def test_a_disc_and_a_hole_about_a_pivot(made) -> None:
    """A cutter of 12 mm runs 6 mm outside the line of a disc, and 6 mm inside that of a hole."""
    assert made(cut("circle: 880"))("cut.pivot.radius") * 1e3 == pytest.approx(446.0)
    assert made(cut("circle: 880, keeps: hole"))("cut.pivot.radius") * 1e3 == pytest.approx(434.0)


def test_a_cut_without_a_depth_goes_through_the_thickest_sheet(made) -> None:
    found = made(cut("circle: 880"))
    assert found("cut.depth") * 1e3 == pytest.approx(18.1)
    assert found("cut.passes") == 4  # 18.1 in steps of half of 12


SAWN = [
    ("thickness: 70", "pass", 75.0, "70 and 5 for the teeth"),
    ("thickness: 70.1", "fail", 75.1, "a tenth more"),
    ("thickness: 45, tilt: 45 deg", "pass", 45 * 2**0.5 + 5, "45 along a slant of 45 degrees"),
    ("thickness: 50, tilt: 45 deg", "fail", 50 * 2**0.5 + 5, "75.7"),
    ("thickness: 45, tilt: 60 deg", "fail", 95.0, "twice 45 and 5"),
]


@pytest.mark.parametrize(("more", "verdict", "height", "why"), SAWN)
def test_the_blade_at_its_tilt(made, more: str, verdict: str, height: float, why: str) -> None:
    found = made(f"{TOP}  bevel: {{kind: saw_cut, {more}}}\n")
    assert found("bevel.tool.name") == "table saw"
    assert found("bevel.height") * 1e3 == pytest.approx(height, abs=1e-9), why
    assert found.verdict("bevel.blade_reaches") == verdict


def test_a_saw_that_is_named_and_the_part_that_is_cut(made) -> None:
    found = made(f"{TOP}  bevel: {{kind: saw_cut, of: top, saw: trim saw}}\n")
    assert found("bevel.thickness") * 1e3 == pytest.approx(18)
    assert (found("bevel.tool.depth") * 1e3, found("bevel.kerf") * 1e3) == (50.0, 2.0)


SIZES = [
    ("diameter: 1500", "pass", "1525 square"),
    ("diameter: 1506", "fail", "1525 less two margins of 10 is 1505"),
    ("length: 2480, width: 1230", "pass", "2500 by 1250"),
    ("length: 2480, width: 1235", "fail", "1250 less two margins of 10 is 1230"),
]


@pytest.mark.parametrize(("size", "verdict", "why"), SIZES)
def test_a_part_against_the_sheets_that_are_sold(made, size: str, verdict: str, why: str) -> None:
    top = f"  top: {{kind: top, material: birch plywood, thickness: 18, {size}}}\n"
    assert made(top).verdict("top.fits_on_a_sheet") == verdict, why


def test_a_sheet_of_the_shop_is_a_sheet(made) -> None:
    shop = f"""{SHOP}stock:
  sheets:
    offcut: {{material: birch plywood, nominal: 19, actual: 18.6, length: 800, width: 500,
      source: us}}
"""
    top = "  top: {kind: top, material: birch plywood, thickness: 19, length: 790, width: 480}\n"
    found = made(top, shop)
    assert found.verdict("top.fits_on_a_sheet") == "fail"  # 780 by 480 inside its margins
    assert found("top.blank.actual") * 1e3 == pytest.approx(18.6)
    assert found("top.blank.share") == pytest.approx(790 / 780)


@pytest.mark.parametrize(
    ("layers", "thickness", "off", "verdict"),
    [(1, 18, 0.4, "pass"), (3, 54, 1.2, "fail"), (3, 52.8, 0.0, "pass")],
)
def test_layers_add_up_to_what_is_drawn(
    made, layers: int, thickness: float, off: float, verdict: str
) -> None:
    """Three sheets of 18 mm measure 3 x 17.6 = 52.8 mm."""
    top = (
        f"  top: {{kind: top, material: birch plywood, thickness: {thickness}, diameter: 500, "
        f"made: {{layers: {layers}, each: 18}}}}\n"
    )
    found = made(top)
    assert found("top.made.off") * 1e3 == pytest.approx(off, abs=1e-9)
    assert found.verdict("top.layers_add_up") == verdict


def test_layers_that_are_cut_before_they_are_glued(made) -> None:
    top = (
        "  top: {kind: top, material: birch plywood, thickness: 35.2, diameter: 500, "
        "made: {layers: 2, each: 18, cut: before gluing}}\n"
    )
    assert made(top).verdict("top.glued_before_cut") == "fail"
    assert made(top.replace("before", "after")).verdict("top.glued_before_cut") == "pass"


HALF = 530 / 445 / 2  # rad; half of the angle of the sector
TRAYS = [
    ("form: rectangle", 530.0, 310.0, "as it is drawn"),
    ("form: sector", 2 * 600 * sin(HALF), 600 - 290 * cos(HALF), "its outer chord and its rise"),
]


@pytest.mark.parametrize(("form", "across", "along", "why"), TRAYS)
def test_a_sector_takes_more_than_its_width(made, form, across, along, why) -> None:
    """A sector of 310 mm from a radius of 290 mm, 530 mm wide on its arc half way out."""
    found = made(
        "  top: {kind: tray, material: birch plywood, thickness: 15, inner: 290, depth: 310, "
        f"width: 530, count: 5, {form}}}\n"
    )
    assert found("top.blank.length") * 1e3 == pytest.approx(across, rel=1e-5), why
    assert found("top.blank.width") * 1e3 == pytest.approx(along, rel=1e-5), why
