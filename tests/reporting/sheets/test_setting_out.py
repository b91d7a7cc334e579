"""The setting-out sheet: tables against closed forms, the order of work, what was measured."""

import math
import re

import pytest

from reviewer.reporting.sheets.making import sheet_of
from reviewer.reporting.sheets.page_sheet import page_sheet
from reviewer.reporting.sheets.setting_out import SETTING_OUT
from reviewer.reporting.sheets.sheet import BLANK, Checks, Figure, NoSheet, Table
from reviewer.reporting.sheets.text_sheet import text_sheet
from reviewer.reviewing import review_source

HEAD = "design: By hand\nlengths: {unit}\nparts:\n"
BASE = "  base: {kind: base, feet: {count: 5, circle: 900 mm}, height: 620 mm, mass: 24 kg}\n"
SQUARE = (
    "  base: {kind: base, feet: {length: 500 mm, width: 400 mm}, height: 620 mm, mass: 24 kg}\n"
)


def sheet(part: str, unit: str = "mm", base: str = SQUARE):
    text = HEAD.format(unit=unit) + base + f"  marks: {{kind: divided_circle, {part}}}\n"
    return sheet_of(SETTING_OUT, review_source(text, "hand.yaml"))


def tables(made):
    return [block for section in made.sections for block in section.blocks
            if isinstance(block, Table)]  # fmt: skip


@pytest.mark.parametrize("count", [3, 5, 7, 8, 16])
def test_what_is_set_is_on_the_circle(count):
    """x^2 + y^2 = r^2, and the chord is the distance to the mark that the table names."""
    made = sheet(f"count: {count}, circle: 580")
    to_set = tables(made)[0]
    places = [(float(row[4]), float(row[5])) for row in to_set.rows]
    assert len(places) == count
    for number, (row, place) in enumerate(zip(to_set.rows, places, strict=True)):
        assert math.hypot(*place) == pytest.approx(290.0, abs=0.1)
        angle = math.degrees(math.atan2(place[1], place[0])) % 360
        assert angle == pytest.approx(360 * number / count, abs=0.03)
        if row[3]:
            whence = (290.0, 0.0) if row[2] == "mark 1" else (-290.0, 0.0)
            assert float(row[3]) == pytest.approx(math.dist(place, whence), abs=0.13)
            assert float(row[3]) <= 580 / math.sqrt(2) + 0.1  # a right angle at most


def test_chords_and_diagonals_are_those_between_the_places():
    made = sheet("count: 8, circle: 580")
    to_set, to_check = tables(made)
    places = [(float(row[4]), float(row[5])) for row in to_set.rows]
    pairs = set()
    for row in to_check.rows:
        first, second = (int(each) - 1 for each in re.findall(r"\d+", row[0]))
        assert float(row[1]) == pytest.approx(math.dist(places[first], places[second]), abs=0.15)
        assert row[-1] == BLANK
        assert frozenset((first, second)) not in pairs
        pairs.add(frozenset((first, second)))
    assert {frozenset((k, (k + 1) % 8)) for k in range(8)} < pairs
    assert {frozenset((k, k + 4)) for k in range(4)} < pairs


def test_the_tolerance_is_that_of_two_marks():
    """M8 in 9 mm leaves 0.5 mm to each mark (ASME Y14.5, app. B), 1 mm to a chord."""
    made = sheet("count: 6, circle: 200, bolt: M8x40")
    assert {row[2] for row in tables(made)[1].rows} == {"1"}


def test_inches_are_fractions():
    """A hexagon's side is its radius: 6 1/2 in; a square's diagonal sqrt(2) of its side."""
    made = sheet("count: 6, circle: 13", "in")
    assert tables(made)[1].rows[0][1] == "6 1/2"
    square = sheet("count: 4, circle: 13", "in")
    assert tables(square)[1].rows[0][1] == "9 3/16"  # 9.1924: the nearest 64th


def test_the_order_of_work_is_direct_and_says_why():
    made = sheet("count: 16, circle: 580")
    (order,) = [block for block in made.sections[0].blocks if isinstance(block, Checks)]
    assert "by its own chord" in order.items[3].text
    said = text_sheet(made)
    assert "Do not step the circle off" in said
    assert "4.6 mm off" in " ".join(said.split())  # 15 times 0.3 mm over cos 11.25 deg
    stepped = " ".join(text_sheet(sheet("count: 16, circle: 580, set_by: stepped")).split())
    assert "set the dividers within 0.033 mm" in stepped  # 0.5 cos(11.25 deg) / 15


def test_what_was_measured_stands_beside_and_marks_are_told():
    """Chords of a pentagon of radius 100: 117.557 mm; one mark is 2 mm too far round."""
    radius, off = 100.0, 2.0
    angles = [2 * math.pi * k / 5 + (off / radius if k == 2 else 0.0) for k in range(5)]
    places = [(radius * math.cos(a), radius * math.sin(a)) for a in angles]
    chords = [f"{math.dist(places[k], places[(k + 1) % 5]):.2f}" for k in range(5)]
    made = sheet(f"count: 5, circle: 200, measured: {{chords: [{', '.join(chords)}]}}")
    _, to_check, standing = tables(made)
    assert [row[3] for row in to_check.rows[:5]] == [f"{float(each):.1f}" for each in chords]
    assert to_check.rows[5][3] == ""
    assert "Out of place: 3. " in standing.caption
    assert float(standing.rows[2][1]) == pytest.approx(off, abs=0.02)
    others = [float(standing.rows[k][1]) for k in (0, 1, 3, 4)]
    assert others == pytest.approx([0.0] * 4, abs=0.02)


def test_lines_of_80_columns_and_a_page():
    made = sheet("count: 60, circle: 580, bolt: M6x40")
    assert max(len(line) for line in text_sheet(made).splitlines()) <= 80
    page = page_sheet([made])
    assert page.count("<table>") == 2
    (figure,) = [block for block in made.sections[0].blocks if isinstance(block, Figure)]
    assert figure.svg in page
    assert figure.svg.count("<text") == 60


def test_point_a_stands_across_where_no_mark_does():
    made = sheet("count: 5, circle: 200")
    (figure,) = [block for block in made.sections[0].blocks if isinstance(block, Figure)]
    assert ">A</text>" in figure.svg
    assert {row[2] for row in tables(made)[0].rows} == {"line", "mark 1", "point A"}


def test_a_circle_that_is_not_known_says_so():
    made = sheet("of: base")  # without a group
    assert "not known" in made.sections[0].blocks[0]


def test_no_circle_no_sheet():
    made = sheet_of(SETTING_OUT, review_source(HEAD.format(unit="mm") + SQUARE, "hand.yaml"))
    assert isinstance(made, NoSheet)


def test_what_stands_on_a_circle_needs_no_entry_of_its_own():
    """Five feet on a circle of 900 mm: a side of the pentagon is 900 sin 36 deg, 529.0 mm."""
    made = sheet_of(SETTING_OUT, review_source(HEAD.format(unit="mm") + BASE, "hand.yaml"))
    assert [section.heading for section in made.sections] == ["base, feet"]
    to_set, to_check = tables(made)
    assert len(to_set.rows) == 5
    assert [row[1] for row in to_check.rows[:5]] == ["529.0"] * 5
    assert {row[2] for row in to_check.rows} == {"1"}
    entry = made.sections[0].blocks[-1]
    assert "{kind: divided_circle, of: base, group: feet, bolt: ..., measured: " in entry


def test_a_circle_with_an_entry_is_told_once():
    made = sheet("of: base, group: feet", base=BASE)
    assert [section.heading for section in made.sections] == ["marks"]


def test_what_lines_up_is_told():
    text = HEAD.format(unit="mm") + BASE + (
        "  line: {kind: lining_up, bolt: M8x60, spacing: 100, far_end: 340, alike: 5,"
        " lined_up_by: fixture, adjust: {by: slot, range: 3}}\n"
    )  # fmt: skip
    made = sheet_of(SETTING_OUT, review_source(text, "hand.yaml"))
    said = " ".join(text_sheet(made).split())
    assert "line: lined up by a fixture." in said
    assert "all lie in the fixture while their bolts are tightened" in said
    assert "adjusted by slot (far end: 13 mm to each side)" in said  # 3 (1 + 340/100)
