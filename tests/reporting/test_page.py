"""The page as text: what is on it, in what order, and that hostile texts change nothing of it."""

import re
from collections.abc import Callable
from html.parser import HTMLParser
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from reviewer.judging.reviewed import Review
from reviewer.notation.plain import plain
from reviewer.reporting.page.page import PageReport
from reviewer.reporting.remedy_words import remedy_words
from reviewer.reviewing import review as review_of

SPECIMENS = Path(__file__).parents[2] / "specimens"
VOID = {"meta", "br", "line", "circle", "rect", "polyline", "polygon", "path"}
HOSTILE = [
    "<script>alert(1)</script>", '"><img src=x onerror=alert(1)>', "' onload='x", "</style><b>",
    "--><svg onload=x>", "{{ 7 * 7 }}", "{% raw %}", "&lt;b&gt;", "]]>", "\x1b[2J\x00", "a\u202eb",
    "\udc80", "javascript:x", "</section></main>",
]  # fmt: skip
Infested = Callable[[Review, str], Review]


class Outline(HTMLParser):
    """The tags of a page in order, its ids, its references, its headings and its texts."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.tags: list[str] = []
        self.ids: list[str] = []
        self.names: list[str] = []
        self.references: list[str] = []
        self.levels: list[int] = []
        self.open: list[str] = []
        self.said: list[str] = []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        if tag not in VOID:
            self.open.append(tag)
        for name, value in attributes:
            self.names.append(name)
            if name == "id":
                self.ids.append(value or "")
            if name == "href":
                self.references.append(value or "")
            if name in ("aria-labelledby", "headers", "for"):
                self.references += [f"#{each}" for each in (value or "").split()]
        if re.fullmatch("h[1-6]", tag):
            self.levels.append(int(tag[1]))

    def handle_startendtag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attributes)
        if tag not in VOID:
            self.open.pop()

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if "style" not in self.open:
            self.said.append(data)

    @property
    def text(self) -> str:
        return " ".join(" ".join(self.said).split())


def page_of(*reviews: Review) -> str:
    report = PageReport("1.2.3")
    return "".join(report.put(report.piece(each)) for each in reviews) + report.end()


def without_style_and_pictures(page: str) -> str:
    """A page without its style, which has a file of its own, and what drawings have tests for."""
    page = re.sub(r"<style>.*?</style>", "<style></style>", page, flags=re.DOTALL)
    return re.sub(r"<svg.*?</svg>", "<svg></svg>", page, flags=re.DOTALL)


@pytest.fixture(scope="session")
def unread(reviewed: Callable[..., Review]) -> Review:
    """A design that cannot be read."""
    return reviewed("design: Lid\nparts:\n  lid: {kind: gap, least: 30 mn}\n", "lid.yaml")


def test_every_verdict(stage: Review, held: Callable[[str, str], None]) -> None:
    held("stage.html", without_style_and_pictures(page_of(stage)))


def test_a_page_needs_nothing_but_itself(bench: Review, shop: Review, unread: Review) -> None:
    for text in (page_of(bench), page_of(shop, unread)):
        outline = Outline(text)
        assert outline.open == []
        assert {"script", "link", "img", "iframe", "object", "base"}.isdisjoint(outline.tags)
        assert not [name for name in outline.names if name.startswith("on") or name == "src"]
        assert "url(" not in text
        assert "@import" not in text
        outside = re.findall(r"[a-z]+://[^'\" ]*", text)
        assert set(outside) <= {"http://www.w3.org/2000/svg"}
        assert "default-src 'none'" in text


def test_every_reference_has_its_place(bench: Review, shop: Review, stage: Review) -> None:
    outline = Outline(page_of(bench, shop, stage))
    assert len(set(outline.ids)) == len(outline.ids)
    assert {each.removeprefix("#") for each in outline.references} <= set(outline.ids)
    assert all(each.startswith("#") for each in outline.references)


def test_headings_go_down_by_one(bench: Review, shop: Review, stage: Review) -> None:
    """WCAG 2.1, 1.3.1 and technique G141: no level is left out."""
    levels = Outline(page_of(stage, bench, shop)).levels
    assert levels[0] == 1
    assert levels.count(1) == 1
    for before, after in pairwise(levels):
        assert after <= before + 1


def test_what_to_change_before_cutting_is_on_top(bench: Review) -> None:
    text = Outline(page_of(bench)).text
    order = [
        *("Fernleigh potting bench", "things to change", "What to do, in order", "Before cutting"),
        *("While assembling", "When loading", "In use", "Not reviewed", "Where it is"),
        *("Each in full", "Not reviewed, and why", "What holds", "Cautions"),
        "Where each number comes from",
    ]
    at = 0
    for words in order:
        at = text.index(words, at)


def test_nothing_is_left_out(bench: Review, shop: Review, stage: Review) -> None:
    for review in (bench, shop, stage):
        text = Outline(page_of(review)).text
        for finding in review.findings:
            if finding.verdict == "not applicable" or finding.is_silenced:
                continue
            assert finding.name in text
            if finding.verdict in ("fail", "review"):
                assert " ".join(plain(finding.message, 4000).split()) in text
                assert finding.source.rstrip(".") in text
                assert f"{finding.place.path}:{finding.place.line}" in text
            for reason in finding.open_because:
                assert reason.removesuffix(" fails") in text
        for change in review.changes:
            assert f"{change.name}: {change.does}" in text
            assert change.why in text
        assert "reviewer 1.2.3; the rules" in text


def test_remedies_are_corrections_in_place(bench: Review) -> None:
    text = Outline(page_of(bench)).text
    tried = 0
    for finding in bench.findings:
        for remedy in finding.remedies.offered if finding.remedies else ():
            words = remedy_words(remedy, bench.path)
            if len(remedy.changes) == 1:
                name, rest = words.split(" from ", 1)
                old, rest = rest.split(" to ", 1)
                new, place = rest.split(" (")
                assert f"{name} from {old} to {new} {place.rstrip(')')}" in text
                tried += 1
    assert tried > 10


def test_a_number_stands_in_the_ledger_once(bench: Review) -> None:
    page = page_of(bench)
    ledger = page[page.index('<ol class="ledger">') :]
    told = re.findall(r"<p><b>([^<]*)</b> = <b>([^<]*)</b>", ledger)
    assert len(told) > 100
    assert len(set(told)) == len(told)
    assert [int(each) for each in re.findall(r'<li id="\w+-n(\d+)"', ledger)] == [
        *range(1, len(told) + 1)
    ]


def test_the_way_to_a_fail_is_drawn_with_what_it_holds_back(bench: Review) -> None:
    page = page_of(bench)
    held = [
        (reason.removesuffix(" fails"), each.name)
        for each in bench.findings
        for reason in each.open_because
        if reason.endswith(" fails")
    ]
    assert held
    for failed, name in held:
        if any(each.name == failed and each.verdict == "fail" for each in bench.findings):
            says = re.search(rf">The way to {re.escape(failed)}</title>\s*<desc[^>]*>(.*?)</desc>",
                             page, re.DOTALL)  # fmt: skip
            assert says is not None, failed
            told = says[1].split(". ")[0].removeprefix("Held back until it is mended: ")
            assert name in told.rstrip(".").split(", ")


def test_concessions_are_told_on_top_and_in_full(stage: Review) -> None:
    text = Outline(page_of(stage)).text
    head = "the workshop accepts foot.heavy_enough until 2027-06-01: sandbags lie on it"
    assert text.index("foot.heavy_enough") < text.index("Each in full") < text.index(head)


def test_several_designs_begin_with_a_list_of_them(
    stage: Review, shop: Review, unread: Review
) -> None:
    page = page_of(stage, shop, unread)
    outline = Outline(page)
    assert page.index('<nav aria-label="Designs">') < page.index('<main id="sheet"')
    assert outline.tags.count("section") == 3
    assert "Two designs reviewed" in outline.text
    assert "one file not reviewed" in outline.text
    assert "lid.yaml:3:30" in outline.text
    assert "<nav" not in page_of(stage)


def test_no_design_is_a_page_too() -> None:
    assert "No design was reviewed." in Outline(page_of()).text


@pytest.mark.parametrize("hostile", HOSTILE)
def test_a_text_changes_nothing_but_itself(
    stage: Review, shop: Review, unread: Review, infested: Infested, hostile: str
) -> None:
    """The tags of a page, their order and their attributes are the same for any text."""
    for review in (stage, shop):
        usual, found = (
            Outline(page_of(infested(review, "x"))),
            Outline(page_of(infested(review, hostile))),
        )
        assert found.tags == usual.tags
        assert found.names == usual.names
        told = " ".join(plain(hostile, 4000).split())
        assert found.text.count(told) >= 20


@settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(hostile=st.text(min_size=1, max_size=30))
def test_any_text_changes_nothing_but_itself(
    stage: Review, infested: Infested, hostile: str
) -> None:
    usual, found = (
        Outline(page_of(infested(stage, "x"))),
        Outline(page_of(infested(stage, hostile))),
    )
    assert found.tags == usual.tags
    assert found.names == usual.names


def test_the_same_page_on_every_run(stage: Review, bench: Review) -> None:
    assert page_of(stage, bench) == page_of(stage, bench)


def test_the_curve_of_a_gap_of_which_something_is_found() -> None:
    """The turning corner pinches half way: its gap is drawn over the travel, with its number."""
    review = review_of(SPECIMENS / "mechanisms" / "turning_corner.yaml")
    report = PageReport("1")
    text = report.put(report.piece(review)) + report.end()
    found = Outline(text)
    assert any("over the travel, with the bands that are a hazard" in each for each in found.said)
    assert len(found.ids) == len(set(found.ids))
