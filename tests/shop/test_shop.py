"""What a shop's file changes: stock, levels, limits by service, tightened and silenced rules."""

import json
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from reviewer import Review
from reviewer.command.main import main
from reviewer.command.status import status_of
from reviewer.judging.finding import Finding
from reviewer.reporting.data import JsonReport, review_data
from reviewer.reporting.data_schema import report_schema
from reviewer.reporting.sheet import Style
from reviewer.reporting.text import TextReport

InShop = Callable[..., Review]

SLIDE = """\
design: Slide
lengths: mm
{facts}
parts:
  slit: {{kind: gap, least: {least}, most: {most}}}
"""
BY = "by: Ada, why: so"


def finding(found: Review, name: str) -> Finding:
    return next(each for each in found.findings if each.name == name)


def verdict(found: Review, name: str) -> str:
    assert found.problems == ()
    return finding(found, name).verdict


def text_of(found: Review) -> str:
    return TextReport(Style(), {}).add(found)


# The published limits: EN 581-1 lets a finger in from 7 mm and out from 18 mm; where children
# reach GB 28007-2011 says 5 mm and ISO 13854 25 mm. All as reprinted.
@pytest.mark.parametrize(
    ("facts", "least", "most", "expected"),
    [
        ("service: private", 0, 6.9, "pass"),
        ("service: private", 0, 7.1, "fail"),
        ("service: private", 18.1, 60, "pass"),
        ("service: private", 17.9, 60, "fail"),
        ("service: shop", 18.1, 60, "pass"),
        ("service: public", 0, 6.9, "fail"),
        ("service: public", 0, 4.9, "pass"),
        ("service: public", 25.1, 60, "pass"),
        ("service: public", 24.9, 60, "fail"),
        ("service: shop\nreached_by: [adults, children]", 18.1, 60, "fail"),
        ("service: shop\nreached_by: [adults, children]", 25.1, 60, "pass"),
        ("note: private where nothing is said", 18.1, 60, "pass"),
    ],
)
def test_a_design_differs_by_its_service_and_not_by_edited_rules(
    in_shop: InShop, facts: str, least: float, most: float, expected: str
) -> None:
    found = in_shop("", SLIDE.format(facts=facts, least=least, most=most))
    assert verdict(found, "slit.fingers") == expected


@pytest.mark.parametrize(
    ("change", "facts", "expected"),
    [
        ("value: 20 mm", "service: private", "fail"),
        ("value: 20 mm", "service: public", "pass"),  # on all levels: looser than the public's 25
        ("value: 30 mm, for: public", "service: public", "fail"),
        ("value: 30 mm, for: public", "service: private", "pass"),
        ("value: 30 mm, for: [public, children]", "reached_by: [children]", "fail"),
    ],
)
def test_a_shop_changes_a_limit_on_some_levels_or_on_all(
    in_shop: InShop, change: str, facts: str, expected: str
) -> None:
    least = 19 if "private" in facts else 26 if "30" in change else 22
    shop = f"limits:\n  fingers_clear: {{{change}, {BY}}}\n"
    found = in_shop(shop, SLIDE.format(facts=facts, least=least, most=60))
    assert verdict(found, "slit.fingers") == expected


def test_a_limit_says_why_in_the_chain_of_numbers(in_shop: InShop) -> None:
    from reviewer.studying.trace import trace

    shop = "limits:\n  fingers_clear: {value: 20 mm, by: Ada, why: our slides are slow}\n"
    found = in_shop(shop, SLIDE.format(facts="", least=19, most=60))
    step = trace(found, "limit.fingers_clear")
    assert (step.value, step.formula) == (0.020, "our slides are slow")
    assert step.source == "set by Ada; the shop's own fingers_clear, shop.yaml:3"
    names = [each.name for each in trace(found, "slit.fingers").inputs]
    assert names[:4] == ["slit.most", "limit.fingers_enter", "slit.least", "limit.fingers_clear"]


def test_what_a_design_gives_itself_comes_before_the_limit(in_shop: InShop) -> None:
    shop = f"limits:\n  overhang_over_sag: {{value: 4000, {BY}}}\n"
    bench = (
        "design: Bench\nlengths: mm\nparts:\n"
        "  frame: {kind: base, feet: {count: 4, circle: 800}, height: 600, mass: 90 kg}\n"
        "  lid: {kind: top, carried_by: frame, material: birch plywood, thickness: 18,\n"
        "        diameter: 700, overhang: 200LAST}\n"
        "loads:\n  lean: {force: 300 N, on: lid, at: rim, all_round: true}\n"
    )
    assert verdict(in_shop(shop, bench.replace("LAST", "")), "lid.edge_sags") == "fail"
    given = in_shop(shop, bench.replace("LAST", ", allowed_sag: 20"))
    assert verdict(given, "lid.edge_sags") == "pass"


HAND = SLIDE.format(facts="", least=100.1, most=200).replace(
    "most: 200", "most: 200, depth: 100, closing_force: 300 N"
)


@pytest.mark.parametrize(
    ("change", "expected", "utilisation"),
    [
        ("level: note", "pass", 100 / 100.1),
        ("tighten: 0.8", "fail", 125 / 100.1),
        ("loosen: 1.25", "pass", 80 / 100.1),
    ],
)
def test_a_limit_is_moved_by_a_factor(
    in_shop: InShop, change: str, expected: str, utilisation: float
) -> None:
    found = in_shop(f"rules:\n  gap.hands: {{{change}, {BY}}}\n", HAND)
    hands = finding(found, "slit.hands")
    assert hands.verdict == expected
    assert hands.utilisation == pytest.approx(utilisation, rel=1e-12)


def test_a_level_and_a_factor_go_together_and_every_report_says_so(in_shop: InShop) -> None:
    shop = "rules:\n  gap.hands: {tighten: 0.8, level: note, by: Ada, why: big hands here}\n"
    found = in_shop(shop, HAND)
    assert finding(found, "slit.hands").level == "note"
    assert (
        "Ours (shop.yaml) has its own way with these:\n"
        "\n"
        "Rule gap.hands: tightened to 0.8 of its limit, level note, not must\n"
        "    Ada: big hands here.\n"
        "    shop.yaml:3\n"
    ) in text_of(found)


SILENCE = "rules:\n  gap.hands: {silence: true, by: Ada, why: a light curtain stops it}\n"


def test_a_silenced_rule_counts_for_nothing_and_is_told_in_full(in_shop: InShop) -> None:
    found = in_shop(SILENCE, HAND.replace("100.1", "60"))
    assert finding(found, "slit.hands").verdict == "fail"
    found = replace(found, findings=tuple(each for each in found.findings if each.part == "slit"))
    assert status_of(found, "note", allow_open=False) == 0
    text = text_of(found)
    assert "Nothing to change, one silenced by the shop.\n" in text
    assert (
        "Rule gap.hands: silenced\n"
        "    Ada: a light curtain stops it.\n"
        "    On slit it would fail.\n"
        "    The gap opens to 200 mm and is 100 mm deep, so that a hand goes in; it\n"
        "    closes to 60 mm with 300 N, and 100 mm is least for a hand.\n"
        "    Why: A hand that is in a gap when a force closes it is crushed.\n"
        "    Must hold (hazard: crushing).\n"
    ) in text


def test_what_is_silenced_holds_nothing_back(in_shop: InShop) -> None:
    house = (
        "- rule: gap.behind\n  behind: gap.hands\n  require: most <= 300 mm\n  level: note\n"
        "  stage: using\n  says: Wide.\n  because: So.\n  source: ours\n"
        "  proof: {holds: {most: 290 mm}, fails: {most: 310 mm}}\n"
    )
    design = HAND.replace("100.1", "60")
    held = in_shop("packs: [house.yaml]\n", design, house=house)
    assert verdict(held, "slit.behind") == "open"
    free = in_shop(f"packs: [house.yaml]\n{SILENCE}", design, house=house)
    assert verdict(free, "slit.behind") == "pass"


def test_reports_as_data_name_the_shop_and_its_changes(in_shop: InShop) -> None:
    found = in_shop(SILENCE, HAND)
    report = JsonReport()
    data: dict[str, Any] = json.loads(report.add(found) + report.end())
    Draft202012Validator(report_schema()).validate(data)
    change = {
        "subject": "rule",
        "name": "gap.hands",
        "does": "silenced",
        "by": "Ada",
        "why": "a light curtain stops it",
        "path": "shop.yaml",
        "line": 3,
    }
    design = review_data(found)
    assert design["shop"] == {"name": "Ours", "path": "shop.yaml", "changes": [change]}
    (hands,) = [each for each in design["findings"] if each["rule"] == "gap.hands"]
    assert hands["silenced"] == change


def test_the_stock_of_a_shop(in_shop: InShop) -> None:
    shop = (
        "lengths: mm\nstock:\n  materials:\n"
        "    gaboon: {like: birch plywood, density: 480 kg/m^3, source: our scales}\n"
        "  bearings:\n"
        '    "16101": {bore: 12, outer: 30, width: 8, static_rating: 2.4 kN, source: the box}\n'
    )
    bench = (
        "design: Bench\nlengths: mm\nparts:\n"
        "  frame: {kind: base, feet: {count: 4, circle: 800}, height: 600, mass: 30 kg}\n"
        "  lid: {kind: top, carried_by: frame, material: gaboon, thickness: 10, diameter: 1000}\n"
    )
    found = in_shop(shop, bench)
    assert found.derived is not None
    values = found.derived.values
    mass = values.at(values.plan.slot("lid", "mass"), 0)
    assert mass == pytest.approx(480 * 0.010 * 3.14159265358979 * 0.25, rel=1e-12)  # pi D^2 / 4


def test_rules_list_what_the_shop_changed(
    in_shop: InShop, capsys: pytest.CaptureFixture[str]
) -> None:
    in_shop(SILENCE)
    assert main(["rules", "--shop", "shop.yaml"]) == 0
    assert "    the shop    silenced, Ada: a light curtain stops it\n" in capsys.readouterr().out


def test_a_study_is_not_held_back_by_what_is_silenced(in_shop: InShop) -> None:
    house = (
        "- rule: gap.behind\n  behind: gap.hands\n  require: most <= 150 mm\n  level: must\n"
        "  stage: using\n  says: Wide.\n  because: So.\n  change: [most]\n  source: ours\n"
        "  proof: {holds: {most: 149 mm}, fails: {most: 151 mm}}\n"
    )
    in_shop(f"packs: [house.yaml]\n{SILENCE}", HAND.replace("100.1", "60"), house=house)
    assert main(["check", "bench.yaml", "--format", "json", "--output", "told.json"]) == 1
    data = json.loads(Path("told.json").read_text("utf-8"))
    (behind,) = [each for each in data["designs"][0]["findings"] if each["rule"] == "gap.behind"]
    assert behind["remedies"][0]["field"] == "most"
