"""Hubs by hand, and beside a slewing ring of the same table."""

from math import pi

import pytest

from reviewer.parts.registry import KINDS

HUB = """
  hub:
    kind: hub
    carried_by: base
    mass: 0 kg
    plate: {{material: birch plywood, thickness: {thickness}, diameter: 520{plate}}}
    upper: {{bearing: "6204"}}
    spacing: 125
    height: 200
    flange: {{diameter: 160}}
    {more}
loads: {{lean: {{force: 480 N, on: hub, at: {{radius: 250}}, all_round: true}}}}
"""
YOUNG = 206e9


def hub(thickness=18, plate="", more=""):
    return HUB.format(thickness=thickness, plate=plate, more=more)


def test_the_pair_of_bearings(asked) -> None:
    """480 N at 250 mm are 120 N m: over 125 mm, 960 N on each bearing."""
    found = asked(hub())
    assert found("hub.carry.moment") == pytest.approx(120)
    assert found("hub.upper.peak_load") == pytest.approx(960)
    assert found("hub.lower.peak_load") == pytest.approx(960)
    assert found("hub.carry.peak_load") == pytest.approx(960)
    assert found("hub.carry.axial_load") == pytest.approx(480)


def test_a_push_at_the_rim_goes_to_the_upper_bearing(asked) -> None:
    """50 N at 100 mm above it: 50 (1 + 100/125) above, 50 x 100/125 below."""
    text = hub().partition("loads:")[0]
    push = "loads: {hip: {force: 50 N, on: hub, direction: inward, all_round: true, level: 725}}"
    found = asked(text + push)  # the base is 500 mm high, the upper bearing stands at 625 mm
    assert found("hub.lower.peak_load") == pytest.approx(40)
    assert found("hub.upper.peak_load") == pytest.approx(90)


def test_static_load_of_the_locating_bearing(asked) -> None:
    """P0 = max(Fr, 0.6 Fr + 0.5 Fa), ISO 76:2006, 5.2; 0.5 C0 along the axis of a 6204."""
    heavy = hub().replace("480 N", "2400 N").replace("radius: 250", "radius: 10")
    found = asked(heavy)
    radial = 2400 * 0.010 / 0.125
    assert found("hub.upper.equivalent_load") == pytest.approx(0.6 * radial + 0.5 * 2400)
    assert found("hub.lower.equivalent_load") == pytest.approx(radial)
    below = asked(heavy.replace("spacing:", "locating: lower\n    spacing:"))
    assert below("hub.lower.equivalent_load") == pytest.approx(0.6 * radial + 0.5 * 2400)
    assert found("hub.carry.axial_limit") == 0.5 * found("hub.upper.static_rating")


def test_play_at_the_rim(asked) -> None:
    """Two bearings of bore 20: 5 to 20 um, ISO 5753-1 group CN; 40 um over 125 mm."""
    found = asked(hub())
    assert found("hub.play.tilt") == pytest.approx(40e-6 / 0.125, rel=1e-9)
    assert found("hub.play.rim") == pytest.approx(40e-6 / 0.125 * 0.260, rel=1e-9)
    assert asked(hub(more="preloaded: true"))("hub.play.rim") == 0.0


def test_tilt_of_bearings_and_spindle(asked) -> None:
    """M (1/k1 + 1/k2)/s^2 + M s/(3 E I), and M a/(E I) of what stands out above."""
    more = "spindle: {diameter: 18, overhang: 30}\n    lower: {stiffness: 20 kN/mm}"
    text = hub(more=more).replace('"6204"}', '"6204", stiffness: 20 kN/mm}')
    inertia = pi * 0.018**4 / 64
    seats = 120 * (2 / 20e6) / 0.125**2
    bends = 120 * (0.125 / 3 + 0.030) / (YOUNG * inertia)
    assert asked(text)("hub.tilt") == pytest.approx(seats + bends, rel=1e-9)


def test_bending_of_the_spindle(asked) -> None:
    """32 M / (pi d^3)."""
    found = asked(hub(more="spindle: {material: C45}"))
    assert found("hub.spindle.bending_stress") == pytest.approx(32 * 120 / (pi * 0.020**3))
    assert found.verdict("hub.spindle_bends") == "pass"
    thin = asked(hub(more="spindle: {material: C45, diameter: 12}"))
    assert thin.verdict("hub.spindle_bends") == "fail"


def test_the_plate_over_its_flange(asked) -> None:
    """Rigid, nothing; else with the cube of its thickness; a wider flange holds it better."""
    plain = hub("{}", ", modulus: 9 GPa").replace("material: birch plywood, ", "")
    thin, thick = (asked(plain.replace("{}", str(each))) for each in (15, 30))
    ratio = thin("hub.rim.from_plate") / thick("hub.rim.from_plate")
    assert ratio == pytest.approx(8, rel=0.01)
    assert asked(hub(plate=", rigid: true"))("hub.rim.from_plate") == 0.0
    wide = asked(hub().replace("flange: {diameter: 160}", "flange: {diameter: 240}"))
    assert wide("hub.rim.from_plate") < asked(hub())("hub.rim.from_plate")


def test_turning_it(asked) -> None:
    """0.5 mu P d of both bearings, mu = 0.003 at starting."""
    found = asked(hub())
    equivalent = max(960, 0.6 * 960 + 0.5 * 480) + 960
    torque = 0.5 * 0.003 * equivalent * 0.020
    assert found("hub.turning.torque") == pytest.approx(torque)
    assert found("hub.turning.hand_force") == pytest.approx(torque / 0.260)


@pytest.mark.parametrize(
    "name",
    [
        *("carry.peak_load", "carry.axial_load", "carry.moment", "tilt", "play.tilt", "play.rim"),
        *("rim.from_springs", "rim.from_plate", "rim_sink", "rim.moves", "rim.tilts", "rim.basis"),
        *("turning.torque", "turning.hand_force", "height", "reach.radius"),
    ],
)
def test_what_means_the_same_has_the_name_it_has_on_a_ring(name) -> None:
    ring, other = KINDS["slewing_ring"].by_path[name], KINDS["hub"].by_path[name]
    assert ring.unit == other.unit


def test_one_table_on_a_ring_and_on_a_hub(asked) -> None:
    """The ring holds the plate far out, the hub in the middle: its plate bends much more."""
    on_hub = asked(hub())
    text = hub().partition("loads:")
    ring = """
  hub:
    kind: slewing_ring
    carried_by: base
    mass: 0 kg
    plate: {material: birch plywood, thickness: 18, diameter: 520}
    carry: {bearing: "6001", count: 10, circle: 430}
    hold_down: {bearing: "6000", count: 5, circle: 430}
"""
    on_ring = asked(ring + "".join(text[1:]))
    assert on_ring("hub.carry.moment") == pytest.approx(on_hub("hub.carry.moment"))
    assert on_hub("hub.rim.from_plate") > 2 * on_ring("hub.rim.from_plate")
