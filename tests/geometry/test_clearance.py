"""Least clearance: closed forms worked by hand, and random mechanisms against brute force."""

from math import cos, hypot, pi, sin, sqrt

import numpy as np
import pytest

from reviewer.geometry.bounds import Encounter, Mover, examine, meet
from reviewer.geometry.chain import Chain, Fixed, Lift, Slide, Turn, between
from reviewer.geometry.clearance import TOLERANCE, least_clearance
from reviewer.geometry.course import Course, Crank, StraightSlot, Table
from reviewer.geometry.edges import edges_of
from reviewer.geometry.intervals import Path, gap_curve, in_band, within
from reviewer.geometry.outline import Disc, Outline, Polygon, Rectangle, Ring, Sector, Slot
from tests.geometry.mechanisms import any_mechanism, brute_force, encounter_of

NEAR = TOLERANCE


def straight(amount: float, start: float = 0.0) -> Course:
    return Course(0, Table(((0.0, start), (1.0, start + amount))))


def meeting(one: Outline, other: Outline, *chain: object, **more: object) -> Encounter:
    return Encounter(edges_of(one), edges_of(other), chain, 1, **more)  # type: ignore[arg-type]


def slides_past(one: Outline, other: Outline) -> Encounter:
    """The other goes from x = -300 to 400 mm along y = 200 mm."""
    return meeting(one, other, Fixed(-0.3, 0.2), Slide(straight(0.7)))


def test_circle_against_circle() -> None:
    """At x = 0 the middles are 200 mm apart; the radii are 100 and 50 mm. By hand."""
    found = least_clearance(slides_past(Disc(0.1), Disc(0.05)))
    assert found.clearance == pytest.approx(0.05, abs=NEAR)
    assert found.at[0] == pytest.approx(3 / 7, abs=0.01)
    assert found.settled


def test_circle_on_a_crank_against_a_circle() -> None:
    """Arm 200 mm about (0, 0), the other disc at (350, 0): middles 150 mm apart at azimuth 0."""
    mover = (Turn(straight(pi, -pi / 3)), Fixed(0.2, 0.0))
    found = least_clearance(meeting(Disc(0.06), Disc(0.05), *between((Fixed(0.35, 0.0),), mover)))
    assert found.clearance == pytest.approx(0.35 - 0.2 - 0.11, abs=NEAR)
    assert found.at[0] == pytest.approx(1 / 3, abs=0.01)


def test_a_gap_that_never_changes_is_settled_at_once() -> None:
    """Concentric ring and sector: 20 mm all the way, though the sector's corners move 0.8 m."""
    ring = Mover(edges_of(Ring(0.5, 0.42)), ())
    sector = Mover(edges_of(Sector(0.4, 0.3, 1.0)), (Turn(straight(2.0)),))
    for encounter in (meet(ring, sector, 1), meet(sector, ring, 1)):
        found = least_clearance(encounter)
        assert found.clearance == pytest.approx(0.02, abs=NEAR)
        assert found.evaluations < 100
    rail = meeting(
        Rectangle(0.6, 0.02), Rectangle(0.3, 0.1), Fixed(0.0, 0.062), Slide(straight(0.2))
    )
    found = least_clearance(rail)
    assert found.clearance == pytest.approx(0.002, abs=NEAR)
    assert found.evaluations < 100


def test_crank_and_slot() -> None:
    """A yoke moved by a crank of 80 mm comes 160 mm near the wall at half a turn."""
    yoke = Slide(Course(0, Table(((0.0, 0.0), (1.0, 2 * pi))), Crank(0.08)))
    found = least_clearance(meeting(Rectangle(0.02, 0.4), Rectangle(0.02, 0.1), Fixed(-0.2), yoke))
    assert found.clearance == pytest.approx(0.2 - 0.16 - 0.02, abs=NEAR)
    assert found.at[0] == pytest.approx(0.5, abs=0.01)


def test_a_pin_in_a_straight_slot_of_a_turning_plate() -> None:
    """Pin at 160 mm, after 60 degrees at 260 mm; half way by the polar equation of the line."""
    slot = StraightSlot(0.16, 0.26, pi / 3)
    half = sin(pi / 3) / (sin(pi / 6) / 0.16 + sin(pi / 6) / 0.26)
    assert float(slot.at(np.array(pi / 6))) == pytest.approx(half - 0.16, abs=1e-12)
    assert float(slot.at(np.array(pi / 3))) == pytest.approx(0.1, abs=1e-12)
    pin = Slide(Course(0, Table(((0.0, 0.0), (1.0, pi / 3))), slot))
    found = least_clearance(meeting(Ring(0.4, 0.3), Disc(0.01), Fixed(0.16), pin))
    assert found.clearance == pytest.approx(0.3 - 0.26 - 0.01, abs=NEAR)
    assert found.at == (1.0,)


@pytest.mark.parametrize("count", [3, 5, 8])
def test_sectors_that_open_radially(count: int) -> None:
    """Each goes out along its middle by s: their sides part by 2 s sin(pi / n). By hand."""
    angle, out = 2 * pi / count, 0.1
    neighbour = (Fixed(azimuth=angle), Slide(straight(out)))
    encounter = meeting(
        Sector(0.5, 0.2, angle),
        Sector(0.5, 0.2, angle),
        *between((Slide(straight(out)),), neighbour),
    )
    curve = gap_curve(encounter, Path(0, (0.0,)), 5)
    assert curve.gap == pytest.approx(2 * out * curve.travel * sin(angle / 2), abs=1e-9)
    finger = in_band(encounter, Path(0, (0.0,)), 0.005, 0.025)
    per_travel = 2 * out * sin(angle / 2)
    ends = (finger[0].start, finger[0].end)
    assert len(finger) == 1
    assert ends == pytest.approx((0.005 / per_travel, min(0.025 / per_travel, 1.0)), abs=2e-4)


def test_a_lever_through_a_slot() -> None:
    """A bar 12 mm thick swings 20 degrees about a pivot 60 mm under a plate 18 mm thick.

    Its opening is 80 mm long. The bar's side is nearest to the corner (40, 78 or 60) mm: to the
    line through the pivot at 20 degrees from upright it is X cos - Y sin, less half of the bar.
    """
    side = Polygon(((0.04, 0.06), (0.3, 0.06), (0.3, 0.078), (0.04, 0.078)))
    lever = Fixed(0.0, 0.15, -pi / 2)
    swing = Turn(Course(0, Table(((0.0, -pi / 9), (1.0, pi / 9)))))
    found = least_clearance(meeting(side, Rectangle(0.3, 0.012), swing, lever))
    expected = min(0.04 * cos(pi / 9) - y * sin(pi / 9) for y in (0.06, 0.078)) - 0.006
    assert found.clearance == pytest.approx(expected, abs=NEAR)
    assert found.at == (0.0,)


def test_heights_that_do_not_meet_keep_bodies_apart() -> None:
    """Over each other in plan, 30 mm apart in height; the lift brings them to 5 mm."""
    lift = Lift(straight(-0.025))
    apart = meeting(Disc(0.1), Disc(0.1), lift, above=0.03, below=-0.1)
    assert least_clearance(apart).clearance == pytest.approx(0.005, abs=NEAR)
    aside = meeting(Disc(0.1), Disc(0.1), Fixed(0.24), lift, above=0.055, below=-0.1)
    assert least_clearance(aside).clearance == pytest.approx(hypot(0.04, 0.03), abs=NEAR)


def test_two_travels_that_can_be_anywhere() -> None:
    """Two arms with discs on their ends: nearest where both point at the other."""
    one = (Turn(Course(0, Table(((0.0, -0.5), (1.0, 1.5))))), Fixed(0.2))
    other = (Fixed(0.5, 0.0, pi), Turn(Course(1, Table(((0.0, -1.5), (1.0, 0.5))))), Fixed(0.15))
    chain: Chain = between(one, other)
    found = least_clearance(Encounter(edges_of(Disc(0.03)), edges_of(Disc(0.05)), chain, 2))
    assert found.clearance == pytest.approx(0.5 - 0.35 - 0.08, abs=NEAR)
    assert found.at == pytest.approx((0.25, 0.75), abs=0.01)


def test_what_touches_only_between_the_ends_is_found() -> None:
    """A disc of 50 mm passes a corner 49.99 mm off its path: they overlap for a moment."""
    corner = Polygon(((0.0, 0.0), (0.1, -0.1), (-0.1, -0.1)))
    encounter = meeting(corner, Disc(0.05), Fixed(-0.3, 0.04999), Slide(straight(0.6)))
    assert least_clearance(encounter).clearance <= NEAR
    where = within(encounter, Path(0, (0.0,)), 0.0)
    half = sqrt(0.05**2 - 0.04999**2) / 0.6
    assert (where[0].start, where[0].end) == pytest.approx((0.5 - half, 0.5 + half), abs=2e-4)


def test_an_opening_holds_what_stays_within_it() -> None:
    """A disc of 20 mm goes 15 mm to each side in a slot of 60 by 24 mm: 2 mm at its sides."""
    hole = edges_of(Slot(0.06, 0.024), inverse=True)
    inside = Encounter(hole, edges_of(Disc(0.01)), (Fixed(-0.015), Slide(straight(0.03))), 1)
    assert least_clearance(inside).clearance == pytest.approx(0.002, abs=NEAR)
    outside = Encounter(hole, edges_of(Disc(0.01)), (Fixed(-0.015), Slide(straight(0.06))), 1)
    assert least_clearance(outside).clearance == 0.0


def test_the_speed_bound_holds() -> None:
    """No point comes further than `moves` says over a box, at 200 places in it."""
    random = np.random.default_rng(11)
    for _ in range(40):
        encounter = encounter_of(any_mechanism(random))
        middle, half = np.array([[0.37]]), np.array([[0.05]])
        found = examine(encounter, middle, half)
        inside = np.linspace(0.32, 0.42, 200)[:, None]
        seen = examine(encounter, inside, 0.0 * inside).distance
        if not any(0.32 < each < 0.42 for each in _breaks(encounter)):
            assert np.all(seen >= found.least[0] - 1e-12)
            assert np.all(np.abs(seen - found.distance[0]) <= found.moves[0] + 1e-12)


def _breaks(encounter: Encounter) -> list[float]:
    steps = [step for step in encounter.chain if not isinstance(step, Fixed)]
    return [each for step in steps for each in step.course.breaks]


def test_500_random_mechanisms_against_brute_force() -> None:
    """At 20,000 steps: no collision missed, and the clearance within a hundredth of a millimetre.

    Between two steps the brute force itself can miss up to half of what the bodies move there.
    """
    random = np.random.default_rng(2026)
    wrong = []
    for number in range(500):
        mechanism = any_mechanism(random)
        encounter = encounter_of(mechanism)
        found = least_clearance(encounter)
        brute = brute_force(mechanism)
        lowest = float(brute.min())
        step = np.full((1, 1), 0.5 / 20_000)
        missed = float(
            examine(encounter, np.array([[int(brute.argmin()) / 20_000]]), step).moves[0]
        )
        near = lowest - missed - NEAR <= found.clearance <= lowest + NEAR + 2e-6
        sure = lowest > 0.0 or found.clearance <= NEAR
        if not (near and sure and found.settled and found.bound <= lowest + 2e-6):
            wrong.append((number, found, lowest))
    assert wrong == []
