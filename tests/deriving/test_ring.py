"""A slewing ring, from the text of a design to its roller loads: published values and statics."""

from math import cos, pi

import pytest

from reviewer import review

G = 9.80665  # m/s2, ISO 80000-3:2019, 3-9.2
SECTION_5 = "bearings.md section 5, computed by two independent solvers; rigid plate"

# A plate without mass, as the published table has it; the base is heavy, so that it stays.
RING = """
parts:
  base: {{kind: base, feet: {{count: 4, circle: 3000}}, height: 600, mass: 900 kg}}
  ring:
    kind: slewing_ring
    carried_by: base
    mass: {mass} kg
    plate: {{material: birch plywood, thickness: 18, diameter: 1000, rigid: true}}
    carry: {{bearing: "6001", count: {count}, circle: 640{start}}}
    {hold_down}
  top: {{kind: top, carried_by: ring, mass: 0 kg, diameter: 1000}}
loads:
  lean: {{force: {force} N, on: top, at: {{radius: {radius} mm}}, all_round: true}}
"""
RADIUS, LOAD = 0.32, 1200.0


def ring(count: int, ratio: float, hold_down: str = "", **how: object) -> str:
    fields = {"mass": 0, "start": "", "force": LOAD, **how}
    radius = round(1000 * RADIUS * ratio, 6)
    return RING.format(count=count, radius=radius, hold_down=hold_down, **fields)


@pytest.mark.parametrize(
    ("count", "ratio", "share", "source"),
    [
        (3, 0.2, 0.4667, SECTION_5),
        (3, 0.4, 0.6000, SECTION_5),
        (3, 0.5, 0.6667, SECTION_5),
        (4, 0.2, 0.3500, SECTION_5),
        (4, 0.4, 0.4500, SECTION_5),
        (4, 0.5, 0.5000, SECTION_5),
        (4, 0.6, 0.6000, SECTION_5),
        (4, 0.7, 0.7000, SECTION_5),
        (6, 0.2, 0.2333, SECTION_5),
        (6, 0.4, 0.3000, SECTION_5),
        (6, 0.5, 0.3333, SECTION_5),
        (6, 0.6, 0.3778, SECTION_5),
        (6, 0.7, 0.4277, SECTION_5),
        (6, 0.8, 0.6000, SECTION_5),
    ],
)
def test_the_busiest_roller(answers, count: int, ratio: float, share: float, source: str) -> None:
    found = answers(ring(count, ratio))
    assert found("ring.carry.peak_load", "lean") == pytest.approx(LOAD * share, abs=LOAD * 5e-5)
    assert found("ring.carry.axial_load", "lean") == pytest.approx(LOAD, rel=1e-12)
    assert found("ring.carry.moment", "lean") == pytest.approx(LOAD * RADIUS * ratio, rel=1e-9)


@pytest.mark.parametrize(
    ("count", "ratio", "source"),
    [
        (3, 0.2, "bilateral formula of bearings.md 5, before the first lifts: W/n - 2M/(nR)"),
        (4, 0.4, "the same"),
        (6, 0.2, "the same"),
        (12, 0.3, "the same"),
    ],
)
def test_the_idlest_roller_before_any_lifts(answers, count: int, ratio: float, source: str) -> None:
    found = answers(ring(count, ratio))
    least = LOAD / count * (1 - 2 * ratio)
    assert found("ring.carry.least_load", "lean") == pytest.approx(least, rel=1e-9)


@pytest.mark.parametrize(("count", "ratio"), [(4, 0.5), (6, 0.6), (6, 0.8)])
def test_the_idlest_roller_once_one_has_lifted(answers, count: int, ratio: float) -> None:
    """First lift-off at e/R = 1/2 in the earliest orientation, whatever the number of rollers."""
    assert answers(ring(count, ratio))("ring.carry.least_load", "lean") == pytest.approx(
        0, abs=1e-6
    )


@pytest.mark.parametrize("start", [0, 10, 47])
def test_where_the_first_roller_stands_does_not_matter(answers, start: int) -> None:
    """Every azimuth is searched: the first roller may stand anywhere."""
    found = answers(ring(6, 0.7, start=f", from: {start} deg"))
    assert found("ring.carry.peak_load", "lean") == pytest.approx(LOAD * 0.4277, abs=LOAD * 5e-5)


TIPS = [(3, 0.6), (3, 0.9), (4, 0.8), (4, 0.9), (6, 0.9)]
TURNS_OVER = (
    "is unknown because the load leaves the circle of the rollers and nothing holds the far side "
    "down: the plate turns over"
)


@pytest.mark.parametrize(("count", "ratio"), TIPS)
def test_a_plate_that_tips_has_no_roller_load_and_says_so(answers, count: int, ratio) -> None:
    """TIP in the table of bearings.md section 5: never 0 N, which would pass in silence."""
    found = answers(ring(count, ratio))
    assert found.reasons("ring.carry.peak_load", "lean") == [f"ring.carry.peak_load {TURNS_OVER}"]
    for name in ("carry.least_load", "hold_down.peak_load", "uplift.force", "sink", "tilt"):
        assert len(found.reasons(f"ring.{name}", "lean")) == 1
    line = RADIUS * cos(pi / count)  # bearings.md 5: tipping in the weakest direction, statics
    turning = LOAD * (RADIUS * ratio - line)
    assert found("ring.rolling_over.moment", "lean") == pytest.approx(turning, rel=1e-9)
    assert found("ring.rolling_over.restoring_moment", "lean") == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(("count", "ratio"), TIPS)
def test_a_plate_that_tips_fails_and_its_roller_load_is_held_back(count: int, ratio) -> None:
    found = {
        finding.name: finding
        for finding in review(f"design: tipping\nlengths: mm\n{ring(count, ratio)}").findings
    }
    assert found["ring.stays_down"].verdict == "fail"
    assert found["ring.stays_down"].case == "lean"
    assert found["ring.roller_load"].verdict == "open"
    assert found["ring.roller_load"].open_because == ("ring.stays_down fails",)


@pytest.mark.parametrize(("count", "ratio"), [(4, 0.69), (6, 0.85), (12, 0.95)])
def test_a_plate_just_short_of_tipping_passes(count: int, ratio) -> None:
    found = {
        finding.name: finding.verdict
        for finding in review(f"design: upright\nlengths: mm\n{ring(count, ratio)}").findings
    }
    assert found["ring.stays_down"] == "pass"


def test_own_weight_holds_the_plate_down(answers) -> None:
    """120 N m over the line at R cos 60 deg, held by 20 kg at the middle."""
    found = answers(ring(3, 0.9, mass=20, force=250))
    line = RADIUS / 2
    assert found("ring.rolling_over.moment", "lean") == pytest.approx(
        250 * (0.9 * RADIUS - line), rel=1e-9
    )
    assert found("ring.rolling_over.restoring_moment", "lean") == pytest.approx(
        20 * G * line, rel=1e-9
    )
    assert found("ring.rolling_over.restoring_moment", "lean, 0.9 of own weight") == pytest.approx(
        0.9 * 20 * G * line, rel=1e-9
    )


SAME = 'hold_down: {{bearing: "6001", count: {count}, circle: 640, gap: 0}}'


@pytest.mark.parametrize("count", [3, 4, 6, 12])
@pytest.mark.parametrize("ratio", [0.6, 1.0, 2.0])
def test_hold_downs_opposite_every_roller_make_a_linear_ring(answers, count: int, ratio) -> None:
    """Bilateral ring of bearings.md 5: Fmax = W/n (1 + 2 e/R), Fmin = W/n (1 - 2 e/R)."""
    found = answers(ring(count, ratio, hold_down=SAME.format(count=count)))
    most, least = LOAD / count * (1 + 2 * ratio), LOAD / count * (1 - 2 * ratio)
    assert found("ring.carry.peak_load", "lean") == pytest.approx(most, rel=1e-7)
    assert found("ring.hold_down.peak_load", "lean") == pytest.approx(-least, rel=1e-7)


def test_uplift_of_a_linear_ring(answers) -> None:
    """Six pairs, e = R: W/6 (1 + 2 cos t) is below zero for t = 180 deg alone: W/6; or, turned by
    30 deg, for two of them: 2 W/6 (2 cos 30 deg - 1)."""
    found = answers(ring(6, 1.0, hold_down=SAME.format(count=6)))
    turned = 2 * LOAD / 6 * (2 * cos(pi / 6) - 1)
    assert found("ring.uplift.force", "lean") == pytest.approx(turned, rel=1e-6)


def test_a_pure_moment(answers) -> None:
    """Fmax = 4 M / (n D): bearings.md 5, bilateral, without axial load."""
    text = ring(6, 0.0, hold_down=SAME.format(count=6)).replace(
        "at: {radius: 0.0 mm}", "direction: outward, level: 1100"
    )
    found = answers(text)
    moment = LOAD * 0.5
    assert found("ring.carry.moment", "lean") == pytest.approx(moment, rel=1e-9)
    assert found("ring.carry.peak_load", "lean") == pytest.approx(
        4 * moment / (6 * 2 * RADIUS), rel=1e-7
    )


def test_three_rollers_and_three_hold_downs_by_statics(answers) -> None:
    """At e = 2 R the forces follow from balance: rollers at 0, 120, 240, hold-downs 60 deg between.

    Load towards the roller at 0 deg: it bears N, the hold-down at 180 deg H, N - H = W and
    N + H = W e/R. Load towards 60 deg: two rollers and two hold-downs stand R/2 before and behind,
    so that the sums are N - H = W and N + H = 2 W e/R.
    """
    hold = 'hold_down: {bearing: "6001", count: 3, circle: 640, gap: 0, from: 60 deg}'
    found = answers(ring(3, 2.0, hold_down=hold))
    assert found("ring.carry.peak_load", "lean") >= LOAD * 1.5 * (1 - 1e-9)
    assert found("ring.hold_down.peak_load", "lean") >= LOAD * 0.75 * (1 - 1e-9)
    assert found("ring.uplift.force", "lean") == pytest.approx(LOAD * 1.5, rel=1e-6)


@pytest.mark.parametrize("gap", [0, 0.15])
def test_hold_downs_do_nothing_before_the_plate_lifts(answers, gap: float) -> None:
    hold = f'hold_down: {{bearing: "6001", count: 6, circle: 640, gap: {gap}}}'
    found = answers(ring(6, 0.4, hold_down=hold))
    assert found("ring.carry.peak_load", "lean") == pytest.approx(LOAD * 0.3, rel=1e-6)
    assert found("ring.uplift.force", "lean") == pytest.approx(0, abs=1e-6)


def test_a_gap_lets_the_plate_tilt_before_it_is_held(answers) -> None:
    """The tilt grows at least by the gap over the diameter of the circle, and it is held."""
    hold = 'hold_down: {{bearing: "6001", count: 6, circle: 640, gap: {gap}}}'
    tight = answers(ring(6, 1.2, hold_down=hold.format(gap=0)))
    loose = answers(ring(6, 1.2, hold_down=hold.format(gap=0.5)))
    more = loose("ring.tilt", "lean") - tight("ring.tilt", "lean")
    assert more >= 0.5e-3 / (2 * RADIUS)
    assert loose("ring.uplift.force", "lean") > 0


@pytest.mark.parametrize(("count", "each"), [(3, 90.0), (6, 45.0), (12, 22.5)])
def test_preload_presses_the_rollers_with_nothing_on_the_plate(answers, count, each) -> None:
    """Three hold-downs set against the plate with 90 N each: the rollers share 270 N."""
    hold = 'hold_down: {bearing: "6001", count: 3, circle: 640, preload: 90 N}'
    found = answers(ring(count, 0.0, hold_down=hold, force=0))
    assert found("ring.hold_down.peak_load", "own weight") == pytest.approx(90, rel=1e-6)
    assert found("ring.carry.peak_load", "own weight") == pytest.approx(each, rel=1e-6)
