"""Whole reports in text, on designs and rules of the tests' own."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from reviewer.judging.pack import Pack, read_pack
from reviewer.judging.reviewed import Review
from reviewer.notation.plain import plain
from reviewer.notation.problem import Place, Problem
from reviewer.parts.registry import KINDS
from reviewer.reporting.sheet import Style, columns
from reviewer.reporting.text import TextReport
from reviewer.reviewing import review_source

Reviewed = Callable[..., Review]

SOUND = """\
design: Lid
parts:
  lid: {kind: gap, least: 30 mm, most: 60 mm, depth: 20 mm, closing_force: 40 N}
"""
UNREAD = "design: Lid\nparts:\n  lid: {kind: gap, least: 30 mn}\n"


def told(review: Review, questions: dict[str, str], width: int = 80, **more: bool) -> str:
    report = TextReport(Style(width), questions, **more)
    return report.add(review) + report.end()


@pytest.mark.parametrize("width", [80, 40])
def test_every_verdict(
    stage: Review, questions: dict[str, str], held: Callable[[str, str], None], width: int
) -> None:
    held(f"stage_{width}.txt", told(stage, questions, width))


def test_a_sound_design(reviewed: Reviewed, questions: dict[str, str]) -> None:
    text = told(reviewed(SOUND, "lid.yaml"), questions)
    assert text.startswith("Lid\nlid.yaml\nNothing to change.\n\nWHAT HOLDS ---")
    assert text.count("[ ]") == 0
    assert "Four rules hold, listed below with the part of the limit" in text
    assert "CAUTIONS" in text  # a rule against crushing is among those that hold


def test_cautions_only_where_there_is_a_hazard(questions: dict[str, str]) -> None:
    pack = one_rule("require: least >= 5 mm")
    text = told(reviewed_by(pack, SOUND), questions)
    assert text == (
        "Lid\nlid.yaml\nNothing to change.\n\n"
        f"WHAT HOLDS {'-' * 69}\n\n"
        "One rule holds, listed below with the part of the limit that is used.\n\n"
        "    0.17  lid.one\n"
    )


def one_rule(body: str, *, level: str = "must", says: str = "Said.") -> Pack:
    text = (
        f"- rule: gap.one\n  {body}\n  level: {level}\n  stage: cutting\n  says: {says}\n"
        "  because: So.\n  source: the house\n"
        "  proof: {holds: {least: 10 mm}, fails: {least: 1 mm}}\n"
    )
    pack = read_pack(text, "one.yaml", KINDS)
    assert pack.problems == ()
    return pack


def reviewed_by(pack: Pack, text: str, path: str = "lid.yaml") -> Review:
    return review_source(text, path, [pack])


def test_a_design_without_any_rule(reviewed: Reviewed, questions: dict[str, str]) -> None:
    text = "design: Post\nparts:\n  post: {kind: shaft, diameter: 20 mm, length: 300 mm}\n"
    assert told(reviewed(text, "post.yaml"), questions) == (
        "Post\npost.yaml\nNo rule is for what this design has: nothing was reviewed.\n"
    )


def test_a_fail_whose_fields_are_not_given_names_the_part(questions: dict[str, str]) -> None:
    pack = one_rule("require: least >= 50 mm")
    text = told(reviewed_by(pack, SOUND), questions)
    assert "[ ] Change lid (line 3)\n    Said.\n    Why: So.\n" in text


def test_the_governing_case_is_told_once(questions: dict[str, str]) -> None:
    pack = one_rule("require: least >= 50 mm", says="'Under {case} it is {least}.'")
    text = told(reviewed_by(pack, SOUND), questions)
    assert "Under own weight it is 30 mm." in text
    assert "Must change: needs 50 mm, has 30 mm, 1.67 times as much.\n" in text


def test_a_design_that_cannot_be_read(reviewed: Reviewed, questions: dict[str, str]) -> None:
    review = reviewed(UNREAD, "lid.yaml")
    assert told(review, questions) == (
        "lid.yaml\nNot reviewed: one problem, told on standard error.\n"
    )
    whole = told(review, questions, problems=True)
    assert whole.startswith("lid.yaml\nNot reviewed: one problem.\n\nlid.yaml:3:")
    assert "    found mn\n" in whole


def test_several_designs(reviewed: Reviewed, questions: dict[str, str], stage: Review) -> None:
    report = TextReport(Style(), questions)
    line = "=" * 80
    parts = [report.add(each) for each in (reviewed(SOUND), stage, reviewed(UNREAD))]
    assert not parts[0].startswith("\n")
    assert all(part.startswith(f"\n{line}\n\n") for part in parts[1:])
    assert report.end() == (
        f"\n{line}\n\nTwo designs reviewed, one of them with something to change, one file not "
        "reviewed.\n".replace("not reviewed", "not\nreviewed")
    )


def test_a_pack_that_was_left_out_is_told(questions: dict[str, str]) -> None:
    problem = Problem(Place("shop.yaml", 3, 1, 2), "a rule lacks says", "", "")
    review = replace(reviewed_by(one_rule("require: least >= 5 mm"), SOUND), problems=(problem,))
    text = told(review, questions)
    assert "Reviewed without what is wrong in shop.yaml.\n" in text


def test_ten_passes_are_listed_and_all_on_request(
    reviewed: Reviewed, questions: dict[str, str]
) -> None:
    lids = "".join(
        f"  lid{number:02}: {{kind: gap, least: {30 + number} mm, closing_force: 40 N, "
        f"depth: 20 mm}}\n"
        for number in range(12)
    )
    review = reviewed(f"design: Lids\nparts:\n{lids}", "lids.yaml")
    few = told(review, questions)
    assert few.count(".wide_enough") == 10
    assert few.index("0.83  lid00") < few.index("0.64  lid09")
    assert (
        "48 rules hold; the ten nearest to their limits are listed below with the part\n"
        "that is used, and --all lists every one. 24 rules do not apply here.\n" in few
    )
    every = told(review, questions, everything=True)
    assert every.count(".wide_enough") == 12
    assert "48 rules hold, listed below with the part of the limit that is used." in every


def test_concessions_against_tipping_and_crushing_come_first(
    reviewed: Reviewed, questions: dict[str, str]
) -> None:
    text = (
        "design: Lid\nparts:\n"
        "  foot: {kind: base, feet: {count: 4, circle: 400 mm}, height: 100 mm, mass: 6 kg}\n"
        "  a: {kind: gap, least: 30 mm, closing_force: 200 N, depth: 20 mm}\n"
        "concessions:\n"
        "  - {rule: gap.light_enough, part: a, by: Ann, why: it is damped}\n"
        "  - {rule: base.heavy_enough, part: foot, by: Ann, why: it is bolted down}\n"
    )
    review = reviewed(text)
    damped = "Ann accepts a.light_enough, with no end: it is damped"
    bolted = "Ann accepts foot.heavy_enough, with no end: it is bolted down"
    found = told(review, questions)
    assert found.index(bolted) < found.index(damped) < found.index("NOT REVIEWED")
    assert "BEFORE CUTTING" not in found
    hazards = {"a.light_enough": "crushing", "foot.heavy_enough": None}
    turned = tuple(
        replace(each, hazard=hazards.get(each.name, each.hazard)) for each in review.findings
    )
    found = told(replace(review, findings=turned), questions)
    assert found.index(damped) < found.index(bolted)


def test_a_stale_concession_is_to_be_taken_out(
    reviewed: Reviewed, questions: dict[str, str]
) -> None:
    text = SOUND + "concessions:\n  - {rule: gap.wide_enough, part: lid, by: Ann, why: once}\n"
    found = told(reviewed(text), questions)
    assert "[ ] Take the concession on line 5 out, or renew it\n" in found


@pytest.mark.parametrize("width", range(40, 101, 4))
def test_no_line_is_wider_than_the_terminal(
    stage: Review, questions: dict[str, str], width: int
) -> None:
    for line in told(stage, questions, width).splitlines():
        assert columns(line) <= width or " " not in line.strip(), line


@pytest.mark.parametrize(
    "hostile",
    ["\x1b[2J\x1b[31mgone", "a\u202eb", "line\nbreak", "bell\x07", "\x9b31m", "\udc80", "a\tb"],
)
def test_nothing_from_a_file_steers_the_terminal(
    stage: Review, questions: dict[str, str], hostile: str
) -> None:
    texts = {"message": hostile, "because": hostile, "case": hostile, "hazard": hostile}
    lists = {"change": (hostile,), "open_because": (hostile,), "others": (hostile,)}
    findings = tuple(
        replace(
            each,
            **texts,
            **lists,
            part=hostile,
            place=replace(each.place, path=hostile),
            numbers=tuple(replace(number, name=hostile, says=hostile) for number in each.numbers),
            concession=each.concession and replace(each.concession, by=hostile, why=hostile),
        )
        for each in stage.findings
    )
    found = told(replace(stage, path=hostile, findings=findings), dict.fromkeys(questions, hostile))
    assert found.count(plain(hostile)) > 50
    for line in found.splitlines():
        assert line == "" or line.isprintable()


def test_names_of_a_design_are_made_safe(reviewed: Reviewed, questions: dict[str, str]) -> None:
    text = 'design: "a\\u202eb"\nrevision: "c\\nd"\nparts:\n  lid: {kind: gap, least: 30 mm}\n'
    review = reviewed(text)
    assert review.problems == ()
    assert told(review, questions).startswith("a\\u202eb, revision c d\n")
