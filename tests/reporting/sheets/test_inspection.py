"""The inspection sheet of the potting bench, whole; chords, heights and how limits are rounded."""

from math import pi, sin
from pathlib import Path

import pytest

from reviewer import review
from reviewer.reporting.sheets.inspection import INSPECTION
from reviewer.reporting.sheets.making import sheet_of
from reviewer.reporting.sheets.sheet import NoSheet, Sheet, Table
from reviewer.reporting.sheets.text_sheet import text_sheet

HERE = Path(__file__).parent
BENCH = Path("specimens") / "potting_bench" / "revision_c.yaml"


@pytest.fixture(scope="module")
def sheet() -> Sheet:
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(HERE.parents[2])
        found = sheet_of(INSPECTION, review(BENCH))
    assert isinstance(found, Sheet)
    return found


def rows(sheet: Sheet) -> dict[str, tuple[str, ...]]:
    blocks = [block for section in sheet.sections for block in section.blocks]
    tables = [each for each in blocks if isinstance(each, Table) and len(each.columns) == 6]
    return {row[0]: row for each in tables for row in each.rows}


def test_the_sheet_of_the_bench(sheet: Sheet) -> None:
    assert text_sheet(sheet) == (HERE / "expected" / "inspection.txt").read_text("utf-8")


def test_it_fits_eighty_columns(sheet: Sheet) -> None:
    assert max(len(line) for line in text_sheet(sheet).splitlines()) <= 80


def test_a_chord_is_that_of_its_circle(sheet: Sheet) -> None:
    """D sin(pi / n), any handbook of geometry."""
    found = rows(sheet)
    circle, chord = found["ring.carry.circle"], found["chord of it, one of 16 to the next"]
    for one, other in zip(circle[1:4], chord[1:4], strict=True):
        whole = float(one) * sin(pi / 16)
        assert float(other) == pytest.approx(whole, abs=0.11)  # told to a tenth, inward


def test_rollers_may_differ_in_height_by_what_the_gap_may_grow(sheet: Sheet) -> None:
    found = rows(sheet)
    gap = found["ring.hold_down.gap"]
    heights = found["heights of the carrying rollers, highest less lowest"]
    assert float(heights[3]) == pytest.approx(float(gap[3]) - float(gap[1]), abs=1.1e-4)


@pytest.mark.parametrize(
    ("gap", "least", "told"),
    [("26 mm", 0.025, "25"), ("1.02 in", 0.025, "0.9843")],  # 0.98425 in: up, never down
)
def test_a_limit_is_never_told_wider_than_it_is(gap: str, least: float, told: str) -> None:
    flap = f"{{kind: gap, least: {gap}, most: 5 in, depth: 15 mm}}"
    text = f"design: Flap\nreached_by: [adults, children]\nparts: {{flap: {flap}}}\n"
    found = sheet_of(INSPECTION, review(text))
    assert isinstance(found, Sheet)
    assert rows(found)["flap.least"][2] == told
    assert float(told) * (0.0254 if "in" in gap else 0.001) >= least * (1 - 1e-9)


def test_each_line_names_a_rule_that_is_listed(sheet: Sheet) -> None:
    last = sheet.sections[-1].blocks[0]
    assert isinstance(last, Table)
    listed = {row[0] for row in last.rows}
    assert all(set(row[4].split(", ")) <= listed for row in rows(sheet).values())
    assert all(row[2].endswith("?") for row in last.rows)


def test_there_is_none_where_no_rule_is_near() -> None:
    text = "design: Slot\nparts: {slot: {kind: gap, least: 300 mm, most: 400 mm}}\n"
    found = sheet_of(INSPECTION, review(text))
    assert found == NoSheet("no rule keeps a size of the design near to what it is")
