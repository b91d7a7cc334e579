"""Chords, sagittas and errors of divided circles. `seen` says how each number was seen."""

import math

import pytest

from reviewer.mechanics.dividing import (
    chord,
    chord_tolerance,
    direct_error,
    mark_place,
    sagitta,
    stepped_error,
    stepping_setting,
)
from reviewer.mechanics.lining_up import angle_of_float, sideways_float

REGULAR = "side of the regular polygon, closed form in square roots"
HANDBOOK = "s = R - sqrt(R^2 - c^2/4), exact, by script"
DEGREE = math.pi / 180
ROOT = math.sqrt

# fmt: off
SIDES = {  # of the regular polygon in a circle of diameter 1
    3: ROOT(3) / 2, 4: ROOT(2) / 2, 5: ROOT(10 - 2 * ROOT(5)) / 4, 6: 0.5,
    8: ROOT(2 - ROOT(2)) / 2, 10: (ROOT(5) - 1) / 4, 12: (ROOT(6) - ROOT(2)) / 4,
    16: ROOT(2 - ROOT(2 + ROOT(2))) / 2,
}
ROWS = [
    *[(chord, (1.0, 2 * math.pi / n), side, 1e-12, REGULAR, "computed")
      for n, side in SIDES.items()],
    *[(chord, (0.6, 2 * math.pi / n), side * 1e-3, 5e-6, "segments on R = 300", "computed")
      for n, side in [(12, 155.29), (8, 229.61), (16, 117.05)]],
    (chord, (1.0, math.pi), 1.0, 1e-12, "the diameter", "computed"),
    *[(sagitta, (2 * radius * 1e-3, c * 1e-3), s * 1e-3, tolerance * 1e-3, HANDBOOK, "computed")
      for radius, c, s, tolerance in [(300, 400, 76.393, 5e-4), (600, 600, 80.385, 5e-4),
                                      (500, 100, 2.5063, 5e-5)]],
    *[(sagitta, (0.6, c * 1e-3), s * 1e-3, 1e-5, "segments on R = 300", "computed")
      for c, s in [(155.29, 10.222), (229.61, 22.836), (117.05, 5.764)]],
    # M8 in two holes of 9 mm, and a stud in one hole.
    (sideways_float, (9e-3, 9e-3, 8e-3, 0.0), 1e-3, 1e-9, "ASME Y14.5 app. B, H - F", "memory"),
    (sideways_float, (3.94e-3, 3.5e-3, 3.5e-3, 0.0), 0.22e-3, 1e-9,
     "ASME Y14.5 app. B, (H - F)/2, as reprinted", "print"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, abs=tolerance), (source, seen)


@pytest.mark.parametrize(
    ("near", "far", "degrees"), [(0.6e-3, 0.6e-3, 1.146), (0.3e-3, 0.3e-3, 0.573)]
)
def test_angle_between_two_bolts_60_mm_apart(near, far, degrees):
    """M6 in 6.6 mm through both, and one of both tapped: geometry, by script."""
    assert angle_of_float(near, far, 60e-3).worst / DEGREE == pytest.approx(degrees, abs=5e-4)


@pytest.mark.parametrize("count", [3, 4, 5, 10, 16])
def test_places_are_a_chord_apart(count):
    """Pythagoras between neighbouring places."""
    places = [mark_place(0.58, 2 * math.pi * k / count) for k in (0, 1)]
    apart = math.dist(*places)
    assert apart == pytest.approx(chord(0.58, 2 * math.pi / count), rel=1e-12)


@pytest.mark.parametrize("count", [3, 5, 16])
@pytest.mark.parametrize("setting", [1e-6, 1e-5])
def test_stepping_round_with_dividers_set_wrong(count, setting):
    """Each step turns by 2 asin((c + e)/D); the steps are followed, and not their slope."""
    diameter = 0.58
    wide = 2 * math.asin((chord(diameter, 2 * math.pi / count) + setting) / diameter)
    off = (count - 1) * (wide - 2 * math.pi / count) * diameter / 2
    assert stepped_error(setting, count, count - 1).steady == pytest.approx(off, rel=1e-3)
    assert stepping_setting(off, count) == pytest.approx(setting, rel=1e-3)


@pytest.mark.parametrize("degrees", [10, 60, 90, 150])
def test_setting_a_mark_by_its_chord(degrees):
    """The arc cosine turned round: the angle whose chord is longer by the error."""
    diameter, angle, error = 0.58, degrees * DEGREE, 1e-6
    wide = 2 * math.asin((chord(diameter, angle) + error) / diameter)
    assert direct_error(error, angle) == pytest.approx((wide - angle) * diameter / 2, rel=1e-3)


def test_a_chord_across_the_middle_places_nothing():
    assert math.isnan(direct_error(1e-4, math.pi))
    assert math.isnan(sagitta(0.6, 0.61))
    assert math.isnan(chord(0.0, 1.0))


def test_chords_of_marks_in_place_stay_within_tolerance():
    """Two marks anywhere in their zones: the corners of both zones, every one tried."""
    permitted, diameter, angle = 0.3e-3, 0.58, 2 * math.pi / 16
    places = [mark_place(diameter, angle * k) for k in (0, 1)]
    ways = [k * math.pi / 180 for k in range(0, 360, 2)]
    apart = [
        math.dist(
            (places[0].x + permitted * math.cos(a), places[0].y + permitted * math.sin(a)),
            (places[1].x + permitted * math.cos(b), places[1].y + permitted * math.sin(b)),
        )
        for a in ways
        for b in ways
    ]
    nominal = chord(diameter, angle)
    worst = max(abs(each - nominal) for each in apart)
    assert chord_tolerance(permitted).worst == pytest.approx(worst, rel=2e-3)
