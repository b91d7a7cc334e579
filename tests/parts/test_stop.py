"""Stops end to end: energy and force by hand and by textbooks."""

from math import sqrt

import pytest

G = 9.80665  # m/s2, ISO 80000-3:2019, 3-9.2
STOP = "  stop: {{kind: stop, carried_by: base, mass: 0 kg, {more}}}"


def stop(more: str) -> str:
    return STOP.format(more=more)


@pytest.mark.parametrize(
    ("more", "energy", "source"),
    [
        ("stops: {mass: 4 kg, speed: 0.5 m/s}", 0.5, "m v^2 / 2"),
        ("stops: {mass: 5 kg, drop: 100}", 5 * G * 0.1, "m g h"),
        ("stops: {inertia: 4 kg m^2, rate: 1 rad/s}", 2.0, "J w^2 / 2"),
        (
            "stops: {mass: 4 kg, speed: 0.5 m/s, inertia: 4 kg m^2, rate: 1 rad/s}",
            *(2.5, "both together"),
        ),
        ("energy: 3 J", 3.0, "as given"),
    ],
)
def test_energy_of_what_arrives(asked, more: str, energy: float, source: str) -> None:
    assert asked(stop(more))("stop.energy") == pytest.approx(energy, rel=1e-12)


# Gere, Mechanics of Materials, 2.8, and Shigley, Mechanical Engineering Design, 4-17, by energy.
FORCES = [
    ("energy: 0.5 J, stiffness: 10 kN/m", 100.0, "sqrt(2 E k)"),
    ("energy: 0.5 J, gives: 10", 100.0, "a spring that gives 10 mm: 2 E / s"),
    ("energy: 0.5 J, gives: 10, buffer: steady", 50.0, "E / s"),
    (
        "stops: {mass: 10 kg, drop: 0}, stiffness: 98.0665 kN/m",
        *(2 * 10 * G, "twice the weight even without a drop"),
    ),
    (
        "stops: {mass: 10 kg, drop: 12}, stiffness: 98.0665 kN/m",
        *(6 * 10 * G, "1 + sqrt(1 + 2 h/d), d = 1 mm: six times the weight"),
    ),
    (
        "stops: {mass: 10 kg, drop: 12}, gives: 6",
        *(2 * (10 * G * (0.012 + 0.006)) / 0.006, "the same, by its travel of 6 mm"),
    ),
    (
        "stops: {mass: 10 kg, drop: 12}, gives: 6, buffer: steady",
        *(10 * G * 0.018 / 0.006, "energy over travel, the weight's own way with it"),
    ),
]


@pytest.mark.parametrize(("more", "force", "source"), FORCES)
def test_force_of_the_stop(asked, more: str, force: float, source: str) -> None:
    assert asked(stop(more))("stop.force") == pytest.approx(force, rel=1e-9)


def test_what_lies_on_a_stop_is_what_falls_on_it(asked) -> None:
    found = asked(
        "  stop: {kind: stop, carried_by: base, mass: 0 kg, stops: {drop: 20}, gives: 2}\n"
        "  leaf: {kind: top, carried_by: stop, mass: 3 kg, diameter: 300}"
    )
    assert found("stop.energy", "own weight") == pytest.approx(3 * G * 0.020, rel=1e-12)


@pytest.mark.parametrize(
    ("bolt", "count", "planes", "resistance"),
    [
        ("M12x40", 1, 1, 32.4),
        ("M16x40", 1, 1, 60.3),
        ("M16x40", 2, 1, 120.6),
        ("M20x40", 1, 1, 94.1),
        ("M20x40", 1, 2, 188.2),
    ],
)
def test_bolts_in_shear(asked, bolt, count, planes, resistance) -> None:
    """EN 1993-1-8, table 3.4: class 8.8 in kN, as steel designers' tables print it; from memory.

    The load's factor of 1.5 (EN 1990) is taken on the side of the strength.
    """
    found = asked(stop(f"bolt: {bolt}, bolt_count: {count}, bolt_planes: {planes}"))
    assert found("stop.strength") * 1.5 == pytest.approx(resistance * 1e3, rel=4e-3)


def test_leaning_by_the_lever_of_both_radii(asked) -> None:
    found = asked(stop("push: 300 N, push_radius: 600, radius: 150, strength: 1100 N"))
    assert found("stop.leaning_force") == pytest.approx(1200, rel=1e-12)
    assert found.verdict("stop.holds_open") == "fail"
    assert asked(stop("push: 300 N, strength: 301 N")).verdict("stop.holds_open") == "pass"
    assert asked(stop("push: 300 N, strength: 299 N")).verdict("stop.holds_open") == "fail"


@pytest.mark.parametrize(
    ("rest", "energy", "verdict"),
    [
        ("", 9.9, "pass"),
        ("", 10.1, "fail"),
        ("service: public", 3.9, "pass"),
        ("service: public", 4.1, "fail"),
        ("reached_by: [children]", 4.1, "fail"),
    ],
)
def test_little_enough_arrives_where_hands_are(asked, rest, energy, verdict) -> None:
    """ISO 14120:2015, 5.2.5: 4 J, or 10 J with a device that stops it; from memory."""
    found = asked(stop(f"energy: {energy} J, gives: 5, strength: 50 kN"), rest)
    assert found.verdict("stop.gentle") == verdict


@pytest.mark.parametrize(("strength", "verdict"), [(101, "pass"), (99, "fail")])
def test_a_stop_bears_what_arrives(asked, strength: int, verdict: str) -> None:
    more = f"energy: 0.5 J, stiffness: 10 kN/m, strength: {strength} N"
    assert asked(stop(more)).verdict("stop.stops") == verdict


def test_a_stop_that_gives_nothing_is_open(asked) -> None:
    """A rigid stop would have no least force: it must say how far it gives way."""
    found = asked(stop("energy: 0.5 J, strength: 800 N"))
    assert found.verdict("stop.stops") == "open"


def test_a_stop_of_what_moves_slowly_by_its_own_spring(asked) -> None:
    found = asked(stop("stops: {mass: 2 kg, speed: 1 m/s}, stiffness: 50 N/mm"))
    assert found("stop.force") == pytest.approx(sqrt(2 * 1.0 * 50e3), rel=1e-12)
