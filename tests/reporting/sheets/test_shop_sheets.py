"""Cutting list, assembly and cost of the potting bench as its maker uses them."""

import re
from pathlib import Path
from xml.etree import ElementTree

import pytest

from reviewer import review
from reviewer.reporting.sheet import columns
from reviewer.reporting.sheets.making import sheet_of
from reviewer.reporting.sheets.page_sheet import page_sheet
from reviewer.reporting.sheets.registry import MAKERS
from reviewer.reporting.sheets.sheet import Caution, Figure, NoSheet, Sheet, Table
from reviewer.reporting.sheets.text_sheet import text_sheet
from reviewer.reviewing import review_source

BENCH = Path(__file__).parents[3] / "specimens" / "potting_bench" / "workshop" / "bench.yaml"
NAMES = ("cutting", "assembly", "weight")
SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module")
def bench():
    return review(BENCH)


@pytest.fixture(scope="module")
def sheets(bench) -> dict[str, Sheet]:
    found = {name: sheet_of(MAKERS[name], bench) for name in NAMES}
    assert all(isinstance(each, Sheet) for each in found.values())
    return found  # type: ignore[return-value]


def blocks(sheet: Sheet, kind: type) -> list:
    return [each for section in sheet.every for each in section.blocks if isinstance(each, kind)]


def table(sheet: Sheet, caption: str) -> dict[str, tuple[str, ...]]:
    """The rows of a table by their first text that is no number."""
    (found,) = [each for each in blocks(sheet, Table) if each.caption.startswith(caption)]
    return {next(cell for cell in row if not cell.isdigit()): row for row in found.rows}


# What is cut, in mm: measured by hand from the file, with 0.5 mm for sanding on each edge, and 5 mm
# more on what is cut round; sheets measure what the Finnish handbook says (from memory).
CUT = [
    ("packing", "18 mm birch plywood", "17.6", "3", "round 500", "511 x 511"),
    ("middle", "18 mm birch plywood", "17.6", "1", "round 576", "587 x 587"),
    ("ring", "24 mm birch plywood", "23.2", "1", "round 640", "651 x 651"),
    ("trays", "15 mm birch plywood", "14.8", "5", "673 x 360", "674 x 361"),
]


@pytest.mark.parametrize("expected", CUT, ids=[each[0] for each in CUT])
def test_what_is_cut_from_sheets(sheets, expected: tuple[str, ...]) -> None:
    assert table(sheets["cutting"], "What is cut")[expected[0]][1:] == expected


def test_the_apron_is_cut_in_lengths_that_a_sheet_has(sheets) -> None:
    """3707 mm around 1180 mm; the longest sheet has 2500 mm, less two margins of 10 mm."""
    row = table(sheets["cutting"], "What is cut")["apron"]
    assert row[4:6] == ("2", "1854 x 80")


def test_lengths_of_bar_with_a_kerf_between_them(sheets) -> None:
    assert table(sheets["cutting"], "Lengths to cut")["arms"][3:] == ("5", "490")
    text = text_sheet(sheets["cutting"])
    assert "40 x 40 x 2 mm tube, 6063-T5: 2463 mm" in text  # 5 x 490 and 4 x 3.2


def test_circles_about_a_pivot(sheets) -> None:
    """A cutter of 12 mm outside a disc of 640 mm: 320 mm to its near edge, 326 to its middle."""
    row = table(sheets["cutting"], "Circles about")["ring_round"]
    assert row[1:] == ("640", "the disc", "outside", "326", "320", "6 mm, 12 mm deep")


def test_what_is_bought_by_standard_size(sheets) -> None:
    rows = {row[2]: row[0] for row in table(sheets["cutting"], "Bearings and bolts").values()}
    (found,) = [each for each in blocks(sheets["cutting"], Table) if "Bearings" in each.caption]
    rows = {row[2]: row[0] for row in found.rows}
    assert rows == {"6000": "5", "6201": "24", "M12x50": "24", "M8x40": "4"}


def test_the_layouts_are_to_scale_and_hold_every_piece(sheets) -> None:
    figures = blocks(sheets["cutting"], Figure)
    assert [each.title.partition(":")[0] for each in figures] == [
        "15 mm birch plywood",
        "18 mm birch plywood",
        "24 mm birch plywood",
    ]
    drawn = ElementTree.fromstring(figures[2].svg)
    _, sheet, piece = drawn.iter(f"{SVG}rect")  # the ground, the sheet, the one piece on it
    (disc,) = drawn.iter(f"{SVG}circle")
    scale = 1525 / float(sheet.get("width", "nan"))
    assert float(piece.get("width", "nan")) * scale == pytest.approx(651, abs=0.1)
    assert 2 * float(disc.get("r", "nan")) * scale == pytest.approx(640, abs=0.1)


def test_the_order_of_assembly_and_what_is_lifted(sheets) -> None:
    """The packing is bolted to the ring on the bench, and is lifted with it: 7.05 and 5.25 kg."""
    rows = table(sheets["assembly"], "Steps")
    assert list(rows)[:4] == ["base", "packing", "ring", "arms, 5 of them"]
    assert rows["base"][4:] == ("64", "4")  # of 20 kg each
    assert rows["ring"][2:] == ("base", "packing", "12.3", "1")


def test_what_stands_in_for_now(sheets) -> None:
    row = table(sheets["assembly"], "Parts that stand in")["lift"]
    assert row == ("lift", "E", "a shaft of stainless steel", "not yet")


def test_each_sheet_has_its_own_cautions(sheets) -> None:
    hazards = {name: {each.hazard for each in blocks(sheets[name], Caution)} for name in NAMES}
    assert hazards == {
        "cutting": {"dust", "cutters"},
        "assembly": {"lifting", "tipping"},
        "weight": set(),
    }


def test_what_it_costs_at_the_shops_own_prices(sheets) -> None:
    """92 + 104 + 139 for a sheet each, 2.45 m at 9.80, 5 at 2.40, 24 at 3.10 and 24 at 0.85."""
    rows = table(sheets["weight"], "At the prices")
    sheets_of = {name: row for name, row in rows.items() if "plywood" in name}
    assert {name: row[1] for name, row in sheets_of.items()} == {
        "15 mm birch plywood": "1 sheet",
        "18 mm birch plywood": "1 sheet",
        "24 mm birch plywood": "1 sheet",
    }
    assert rows["together"][3] == f"{92 + 104 + 139 + 2.45 * 9.8 + 12 + 24 * 3.95:.2f}"
    text = text_sheet(sheets["weight"])
    assert "not in the sum: 20 mm round C45, 20 mm beech, 90 mm wide, M8x40." in " ".join(
        text.split()
    )


@pytest.mark.parametrize("name", NAMES)
def test_sheets_fit_80_columns(sheets, name: str) -> None:
    assert max(columns(line) for line in text_sheet(sheets[name]).splitlines()) <= 80


def test_pictures_on_a_page_have_names_of_their_own(sheets) -> None:
    page = page_sheet(list(sheets.values()))
    found = re.findall(r" id='([^']+)'", page)
    assert len(found) == len(set(found)) == 6


def test_without_a_shop_nothing_is_left_and_nothing_priced() -> None:
    found = review(BENCH.parents[1] / "revision_c.yaml")
    cutting, weight = (sheet_of(MAKERS[name], found) for name in ("cutting", "weight"))
    assert isinstance(cutting, Sheet)
    assert isinstance(weight, Sheet)
    assert "No shop's file says kerf, trim, sanding, oversize" in text_sheet(cutting)
    assert "so no cost is told" in text_sheet(weight)
    assert table(cutting, "What is cut")["ring"][6] == "640 x 640"


def test_a_design_of_gaps_has_no_such_sheets() -> None:
    found = review_source("design: D\nparts:\n  lid: {kind: gap, least: 9 mm}\n", "d.yaml")
    assert all(isinstance(sheet_of(MAKERS[name], found), NoSheet) for name in NAMES)


RISKY = """design: D
lengths: mm
parts:
  top: {kind: top, material: birch plywood, thickness: 18, diameter: 1600}
  groove: {kind: router_cut, of: top, width: 12, depth: 6, climbs: true, piece: 120}
"""


def test_risky_cuts_and_boards_that_fit_no_sheet() -> None:
    sheet = sheet_of(MAKERS["cutting"], review_source(RISKY, "d.yaml"))
    assert isinstance(sheet, Sheet)
    hazards = [each.hazard for each in blocks(sheet, Caution)]
    assert {"climb cut", "small part", "not laid out", "this review fails"} <= set(hazards)


def test_a_cutter_at_its_full_reach_is_cautioned(tmp_path: Path) -> None:
    shop = "shop: S\nlengths: mm\ncutters: {one: {diameter: 12, cutting_length: 20, shank: 12}}\n"
    (tmp_path / "shop.yaml").write_text(shop, "utf-8")
    text = RISKY.replace("depth: 6, climbs: true, piece: 120", "depth: 18.5")
    (tmp_path / "d.yaml").write_text(text, "utf-8")
    sheet = sheet_of(MAKERS["cutting"], review(tmp_path / "d.yaml"))
    assert isinstance(sheet, Sheet)
    assert "cutter at full reach" in [each.hazard for each in blocks(sheet, Caution)]
