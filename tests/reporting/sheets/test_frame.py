"""The frame of the sheets: what each says first, and how it is written as text, Markdown, page."""

import re
from datetime import date
from html.parser import HTMLParser

import pytest

from reviewer.reporting.sheet import Style, columns
from reviewer.reporting.sheets.making import Maker, sheet_of, sheets_of
from reviewer.reporting.sheets.markdown_sheet import markdown_sheet
from reviewer.reporting.sheets.page_sheet import page_sheet
from reviewer.reporting.sheets.registry import MAKERS
from reviewer.reporting.sheets.sheet import (
    BLANK,
    Body,
    Caution,
    Check,
    Checks,
    Column,
    Figure,
    NoSheet,
    Section,
    Sheet,
    Table,
)
from reviewer.reporting.sheets.text_sheet import table_lines, text_sheet
from reviewer.reviewing import Review, review_source

BENCH = """design: Bench <b>"1"</b>
revision: B
lengths: mm
reached_by: [adults, children]
parts:
  box: {kind: base, feet: {count: 4, circle: 150}, height: 700, mass: 2 kg}
  board: {kind: top, carried_by: box, material: birch plywood, thickness: 3, diameter: 900}
  lid: {kind: gap, least: 12, most: 40}
  hole: {kind: gap, least: 12, most: 40, depth: 15}
loads:
  lean: {force: 400 N, on: board, at: rim, all_round: true}
"""
CONCEDED = """concessions:
  - {rule: gap.fingers, part: hole, by: Ada Reeve, why: nobody reaches it, until: 2027-01-01}
  - {rule: base.stands, part: box, by: Olu Marsh, why: it is screwed to the wall}
"""
DAY = date(2026, 11, 25)
SVG = "<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9' role='img'></svg>"


def _of(review: Review) -> Body | NoSheet:
    table = Table(
        "What to cut",
        (Column("part"), Column("thickness", "mm", "right"), Column("measured", "mm", fill=True)),
        (("lid <i>", "18", BLANK), ("a board | of two", "9.5", BLANK)),
    )
    blocks = (
        "Cut the *large* ones first.",
        table,
        Checks((Check("cut"), Check("calliper at five places", "mm"))),
        Caution("cutter", "Hold it with a push stick."),
        Figure("The layout", "Two boards beside each other.", SVG),
    )
    return Body((Section("the work", blocks),), (Caution("dust", "Wear a mask."),))


OURS = Maker("ours", "A sheet of ours", _of)


@pytest.fixture(scope="module")
def sheet() -> Sheet:
    found = sheet_of(OURS, review_source(BENCH, "bench.yaml"))
    assert isinstance(found, Sheet)
    return found


def test_every_sheet_stands_under_its_revision_and_the_verdict(sheet: Sheet) -> None:
    assert (sheet.title, sheet.revision) == ("A sheet of ours", "B")
    headings = [section.heading for section in sheet.every]
    assert headings[0] == "the review"
    assert headings[-2:] == ["cautions", "the work"]
    assert "not reviewed" in headings


def test_a_review_that_fails_says_so_first_and_why() -> None:
    found = sheet_of(OURS, review_source(BENCH, "bench.yaml"))
    assert isinstance(found, Sheet)
    (warned, *why) = found.every[0].blocks
    assert isinstance(warned, Caution)
    assert warned.hazard == "this review fails"
    assert any("box.stands" in str(each) and "line 6" in str(each) for each in why)


def test_the_gravest_concession_comes_first_and_in_full() -> None:
    review = review_source(f"{BENCH}{CONCEDED}", "bench.yaml", on=DAY)
    conceded = [each for each in review.findings if each.concession]
    found = sheet_of(OURS, review)
    assert isinstance(found, Sheet)
    (section,) = [each for each in found.every if each.heading == "accepted on purpose"]
    assert len(section.blocks) == len(conceded) == 2
    first = section.blocks[0]
    assert isinstance(first, Caution)
    (of_it,) = [each for each in conceded if each.hazard == "tipping"]
    assert first.hazard == "tipping"
    for words in ("Olu Marsh", "It is screwed to the wall", of_it.message, of_it.because):
        assert words in first.text


def test_text_has_everything_within_80_columns(sheet: Sheet) -> None:
    text = text_sheet(sheet, Style())
    assert max(columns(line) for line in text.splitlines()) <= 80
    assert text.startswith('A SHEET OF OURS\nBench <b>"1"</b>, revision B\nbench.yaml\n')
    assert text.endswith("""
! DUST: Wear a mask.

THE WORK -----------------------------------------------------------------------

Cut the *large* ones first.

What to cut
part              thickness, mm  measured, mm
----------------  -------------  ------------
lid <i>                      18  __________
a board | of two            9.5  __________

[ ] cut
[ ] calliper at five places  __________ mm

! CUTTER: Hold it with a push stick.

Figure: The layout. Two boards beside each other.
""")


def test_markdown_marks_what_would_be_markup(sheet: Sheet) -> None:
    text = markdown_sheet(sheet)
    assert "Cut the \\*large\\* ones first." in text
    assert "| lid \\<i\\> | 18 |  |" in text
    assert "| a board \\| of two | 9.5 |  |" in text
    assert "- [ ] calliper at five places \\_\\_" in text
    assert "> **Cutter.** Hold it with a push stick." in text


class _Read(HTMLParser):
    """The elements of a page and its text."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.text = ""
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))

    def handle_data(self, data: str) -> None:
        self.text += data


def test_the_page_is_whole_in_itself_and_takes_texts_as_texts(sheet: Sheet) -> None:
    read = _Read(page_sheet([sheet, sheet], ["Load test: nothing is loaded"]))
    names = [tag for tag, _ in read.tags]
    assert names.count("article") == 3
    assert names.count("svg") == names.count("figure") == 2
    assert "i" not in names
    assert not {"script", "img", "link", "iframe"} & set(names)
    assert all(not {"src", "href", "onload"} & set(attributes) for _, attributes in read.tags)
    assert 'Bench <b>"1"</b>, revision B' in read.text
    assert "lid <i>" in read.text
    assert "Load test: nothing is loaded" in read.text
    assert [a["class"] for tag, a in read.tags if tag == "td" and "class" in a][:2] == [
        "right",
        "fill",
    ]


def test_a_name_cannot_leave_the_string_of_the_page_foot() -> None:
    review = review_source(BENCH.replace("revision: B", "revision: '</style><i>\"}'"), "b.yaml")
    found = sheet_of(OURS, review)
    assert isinstance(found, Sheet)
    page = page_sheet([found])
    assert page.count("</style>") == 1
    assert re.search(r"content: \"[A-Za-z0-9\\ ]*\";", page)


@pytest.mark.parametrize("width", [40, 60, 80, 100])
def test_no_table_is_wider_than_the_page(width: int) -> None:
    heads = tuple(Column(f"a heading of column {each}", "mm", "right") for each in range(6))
    rows = [tuple("some words and 12.5" for _ in heads)] * 2
    lines = table_lines(heads, rows, width)
    assert max(columns(line) for line in lines) <= width
    assert sum(line.count("12.5") for line in lines) == 12


def test_a_table_that_no_width_can_hold_becomes_a_list() -> None:
    heads = (Column("unbreakable" * 3), Column("another" * 5), Column("third"))
    lines = table_lines(heads, [("1", "2", "3")], 60)
    assert lines[:3] == [f"{'unbreakable' * 3}: 1", f"{'another' * 5}: 2", "third: 3"]


def test_a_maker_without_a_sheet_says_why(sheet: Sheet) -> None:
    none = Maker("none", "Nothing", lambda review: NoSheet("there is nothing to cut"))
    sheets, without = sheets_of([OURS, none], review_source(BENCH, "bench.yaml"))
    assert [each.name for each in sheets] == ["ours"]
    assert [(maker.name, found.reason) for maker, found in without] == [
        ("none", "there is nothing to cut")
    ]


def test_a_design_that_cannot_be_read_has_no_sheet() -> None:
    assert sheet_of(OURS, review_source("design: 1\n", "x.yaml")) == NoSheet(
        "the design could not be read"
    )


@pytest.mark.parametrize("name", MAKERS)
def test_each_maker_is_filed_under_its_name(name: str) -> None:
    assert MAKERS[name].name == name
