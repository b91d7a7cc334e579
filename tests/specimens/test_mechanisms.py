"""The puppet stage's mechanism: what is told of it, and a number of each kind worked by hand."""

from math import atan, cos, hypot, pi, radians, sqrt, tan

import pytest

G = 9.80665  # m/s2, ISO 80000-3
BIRCH_PLYWOOD = 680.0  # kg/m3, Handbook of Finnish Plywood, mean; from memory
STEEL = 7850.0  # kg/m3, EN 1991-1-1 table A.4: 77 to 78.5 kN/m3
PASSING = {"pass", "not applicable"}

FAULTS = {
    "drawer_guide.stays_in": "pulled out by three quarters",
    "flap_plate.holds": "a weak catch",
    "flap_plate.in_order": "the lift begins too early",
    "flap_plate.play": "slots 1 mm too wide",
    "flap_plate.runs_free": "steep slots of wood on wood",
    "flap_plate.webs": "slots out to the rim",
    "floor_ramp.by_hand": "a step of 4 mm",
    "floor_ramp.crest_holds": "an edge of 1 mm",
    "floor_ramp.high_enough": "5 mm too low",
    "floor_ramp.rests": "a roller on a slope",
    "props.sags": "a shelf of 9 mm over 900 mm",
    "second_guide.does_not_jam": "pushed far beside its middle",
    "second_guide.droops": "2.4 mm of play",
    "wall_lever.bending": "a bar of 3 by 8 mm",
    "wall_lever.by_hand": "the lever the wrong way round",
    "wall_stop.gentle": "30 kg at 1 m/s",
    "wall_stop.holds_open": "a tenth of the lever",
    "wall_stop.stops": "stopped over half a millimetre",
}
HELD_BACK = {
    "drawer_guide.by_hand": "drawer_guide.does_not_jam",
    "drawer_guide.does_not_jam": "drawer_guide.stays_in",
    "drawer_guide.droops": "drawer_guide.stays_in",
    "flap_plate.by_hand": "flap_plate.runs_free",
    "props.sags_for_years": "props.sags",
    "second_guide.by_hand": "second_guide.does_not_jam",
}


def told(found) -> dict[str, str]:
    """The verdict of every finding that is not pass or not applicable, by its name."""
    assert not found.problems
    return {each.name: each.verdict for each in found.findings if each.verdict not in PASSING}


def test_the_sound_one_is_told_this_and_no_more(review_of):
    assert told(review_of("mechanisms/puppet_stage")) == {
        "flap_plate.draws_in": "review",
        "frame.load_test": "review",
    }


def test_every_fault_of_the_first_one_is_found_and_nothing_else(review_of):
    asked = {
        "flap_plate.draws_in": "review",
        "frame.load_test": "review",
        "wall_lever.let_go": "review",
    }
    verdicts = dict.fromkeys(FAULTS, "fail") | dict.fromkeys(HELD_BACK, "open") | asked
    assert told(review_of("mechanisms/puppet_stage_first")) == verdicts


def test_what_stands_behind_a_fault_names_it(review_of):
    found = review_of("mechanisms/puppet_stage_first").findings
    reasons = {each.name: each.open_because for each in found if each.verdict == "open"}
    assert reasons == {name: (f"{fault} fails",) for name, fault in HELD_BACK.items()}


def plate_of(diameter: float, thickness: float) -> float:
    """Weight of a disc of birch plywood [N]."""
    return pi / 4 * diameter**2 * thickness * BIRCH_PLYWOOD * G


def hand_on_the_plate() -> float:
    """n F r tan(psi + phi) / (1 - mu tan(psi + phi)) over the rim [N]: worst inside or outside.

    Slides with UHMW-PE on steel, at most 0.20; rollers 0.03.
    """
    force = 0.20 * (plate_of(0.700, 0.012) + plate_of(0.640, 0.012) + 60) / 4
    advance = 0.100 / radians(60)

    def torque(radius: float) -> float:
        slope = tan(atan(advance / radius) + atan(0.03))
        return force * radius * slope / (1 - 0.20 * slope)

    return 4 * max(torque(0.160), torque(0.260)) / 0.350


def dip_of_the_ramp() -> float:
    """W sqrt(2 r h - h^2) / (r - h) of a 6001, 28 mm across, in a dip of 0.4 mm [N]."""
    return 120 * sqrt(0.4 * (28 - 0.4)) / (14 - 0.4)


def hand_on_the_lever() -> float:
    """(wall and bar) a / b, level on its way [N]."""
    wall = 0.900 * 0.600 * 0.009 * BIRCH_PLYWOOD
    bar = 0.012 * 0.030 * (0.080 + 0.420) * STEEL
    return (wall + bar) * G * 0.080 / 0.420


def rear_of_the_drawer() -> float:
    """F a / L: the middle 40 mm beyond a guide in which 160 mm are left [N]."""
    weight = (0.380 * 0.300 * 0.012 * BIRCH_PLYWOOD + 0.8) * G + 60
    return weight * 0.040 / 0.160


def stopping_the_wall() -> float:
    """2 E / s = m v^2 / s [N]."""
    return 3 * 0.4**2 / 0.003


def sag_of_the_props() -> float:
    """5 q L^4 / (384 E t^3 / 12) of birch plywood of 18 mm, 10048 MPa along its face [m]."""
    pressure = 0.018 * BIRCH_PLYWOOD * G + 80 / (0.900 * 0.300)
    return 5 * pressure * 0.900**4 / (384 * 10048e6 * 0.018**3 / 12)


HEADLINES = [
    ("flap_plate", "hand_force", "flap", hand_on_the_plate(), "pressure angle, Norton"),
    ("floor_ramp", "rest.dip", "own weight", dip_of_the_ramp(), "moments about the edge"),
    ("wall_lever", "hand_force", "own weight", hand_on_the_lever(), "moments about the pivot"),
    ("drawer_guide", "rear", "tools", rear_of_the_drawer(), "moments about the guide's end"),
    ("wall_stop", "force", "own weight", stopping_the_wall(), "energy, Shigley 4-17"),
    ("props", "sag", "puppets", sag_of_the_props(), "Gere (2009), table G-2 case 1"),
]


@pytest.mark.parametrize(("part", "path", "case", "by_hand", "source"), HEADLINES)
def test_a_number_by_hand(part, path, case, by_hand, source, review_of, number_of):
    found = review_of("mechanisms/puppet_stage")
    assert number_of(found, part, path, case) == pytest.approx(by_hand, rel=2e-3), source


def test_the_slope_of_the_ramp_is_that_of_its_points(review_of, number_of):
    """40 mm over 240 mm, and the force W (s + c)/(1 - c s)."""
    found = review_of("mechanisms/puppet_stage")
    slope = 40 / 240
    force = 120 * (slope + 0.03) / (1 - 0.03 * slope)
    assert number_of(found, "floor_ramp", "slope_force", "own weight") == pytest.approx(force)
    assert cos(number_of(found, "floor_ramp", "steepest", "own weight")) == pytest.approx(
        240 / hypot(240, 40)
    )


def test_a_corner_that_comes_too_near_half_way_is_found_and_nothing_else(review_of):
    assert told(review_of("mechanisms/turning_corner")) == {
        "foot.load_test": "review",
        "post.free_to_move": "review",
        "round.all_compared": "review",  # the foot has no outline
        "post_and_table.fingers": "fail",  # 12 mm half way; 95 mm at both ends
        "shelf_and_table.shears": "review",
    }
