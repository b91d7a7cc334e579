"""The potting bench with what moves it: what goes wrong on the way, and at neither end.

Expected numbers are worked by hand from the measures in the file, as each line says.
"""

from math import acos, hypot, pi

import pytest

NAME = "potting_bench/moving"
MOTION = ("moving_pair.", "move.", "rotation.", "travel.")
RACK, BAR, TAP, LAMP = 350.0, 30.0, 280.0, hypot(270.1, 270.1)  # mm: tip, half width, distances


def at(found, part: str, path: str):
    values = found.derived.values
    return values.at(values.plan.slot(part, path), 0)


def test_what_motion_has_to_say_of_it(review_of):
    found = review_of(NAME)
    told = {
        each.name: each.verdict
        for each in found.findings
        if each.rule.startswith(MOTION) and each.verdict not in ("pass", "not applicable")
    }
    assert {name: each for name, each in told.items() if each != "review"} == {
        "lamp_and_rack.fingers": "fail",
        "rack_and_tap.keeps_apart": "fail",
        "rack_and_tap.clearance": "open",
        "rack_and_tap.fingers": "open",
    }
    assert told["fold.all_compared"] == "review"


def test_the_collision_is_only_on_the_way(review_of):
    """The bar's side reaches the tap where the tap's middle is half the bar and its radius off."""
    found = review_of(NAME)
    half = acos((BAR + 20.0) / TAP)  # of the angle from square to where they touch
    first = 0.5 - (pi / 2 - half) / pi
    assert at(found, "rack_and_tap", "clearance") == 0.0
    assert at(found, "rack_and_tap", "overlap.from") == pytest.approx(first, abs=2e-4)
    assert at(found, "rack_and_tap", "overlap.to") == pytest.approx(1.0 - first, abs=2e-4)
    assert at(found, "rack_and_tap", "ends") == pytest.approx((TAP - BAR - 20.0) / 1000, abs=1e-5)


def test_the_pinch_is_only_on_the_way(review_of):
    """At an eighth of a turn the tip points at the lamp; at the start it is beside the bar."""
    found = review_of(NAME)
    assert at(found, "lamp_and_rack", "clearance") == pytest.approx(
        (LAMP - RACK - 20.0) / 1000, abs=1e-5
    )
    assert at(found, "lamp_and_rack", "travel") == pytest.approx(0.25, abs=0.01)
    assert at(found, "lamp_and_rack", "ends") == pytest.approx(
        (270.1 - BAR - 20.0) / 1000, abs=1e-5
    )


def test_travels_move_what_the_load_path_sees(review_of):
    """Slid out first, then lifted: 100 mm by 0.55 of the drive, up from 0.65 on."""
    found = review_of(NAME)
    names = found.derived.cases.names
    values = found.derived.values

    def in_case(part: str, path: str, case: str) -> float:
        return values.at(values.plan.slot(part, path), names.index(case))

    assert in_case("trays", "out", "soil, closed") == 0.0
    assert in_case("trays", "out", "soil, open") == pytest.approx(0.1)
    assert in_case("trays", "rim.radius", "soil, open") == pytest.approx(0.7)
    assert in_case("middle", "lifted", "soil, open") == pytest.approx(0.15)
    on_the_way = [name for name in names if name.startswith("soil, ") and "open at 0.55" in name]
    assert on_the_way
    for case in on_the_way:
        assert in_case("trays", "out", case) == pytest.approx(0.1)
        assert in_case("middle", "lifted", case) == 0.0


def test_both_faults_are_marked_in_the_text(text_of):
    assert text_of(NAME).count("# Fault:") == 2
