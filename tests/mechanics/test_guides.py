"""Guides, slots, stops and hubs against equilibrium, geometry and motion followed step by step."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, optimize

from reviewer.mechanics.guides import (
    guide_reactions,
    guide_tilt,
    largest_offset,
    overlap,
    share_of_push,
)
from reviewer.mechanics.hub import hub_play_angle, hub_reactions, hub_tilt
from reviewer.mechanics.slots import (
    slot_angle,
    slot_backdrive_torque,
    slot_hold_margin,
    slot_jam_margin,
    slot_play,
    slot_torque,
    slot_web,
    straight_slot_angle,
)
from reviewer.mechanics.stops import (
    falling_energy,
    impact_factor,
    moving_energy,
    spring_stop_force,
    spring_stop_travel,
    steady_stop_force,
    turning_energy,
)


@given(st.floats(0.05, 1.0), st.floats(0.05, 0.5), st.floats(0.0, 1.0))
def test_push_at_an_offset_by_equilibrium(length, friction, share):
    """Two-point contact: push P at a, load W on the axis, reactions N at both ends, friction."""
    offset = share * largest_offset(length, friction)
    # P - W - 2 mu N = 0; P a - N L = 0, solved for the load that one newton of push moves.
    load, _ = np.linalg.solve([[1, 2 * friction], [0, length]], [1.0, offset])
    assert share_of_push(offset, length, friction) == pytest.approx(load, abs=1e-12)


def test_guide_by_moments():
    front, rear = guide_reactions(100.0, 0.3, 0.1)
    assert front - rear == pytest.approx(100)
    assert front * 0.1 == pytest.approx(100 * 0.4)
    assert overlap(0.4, 0.5) == pytest.approx(-0.1)
    assert math.isnan(guide_reactions(100.0, 0.3, 0.0).front)


def test_tilt_of_a_slide_in_its_guide():
    """A rectangle turned in a channel: largest angle at which its corners still fit, both ways."""
    length, width, clearance = 0.2, 0.03, 0.5e-3

    def excess(angle):
        return length * math.sin(angle) + width * math.cos(angle) - width - clearance

    angle = optimize.brentq(excess, 0, 0.1)
    assert guide_tilt(clearance, length) == pytest.approx(2 * angle, rel=1e-3)


@given(st.floats(0.05, 0.9), st.floats(0.0, 0.3), st.floats(0.0, 0.3))
def test_slot_torque_by_equilibrium(angle, friction, guide):
    """Follower pressed by the slot's wall with friction; the slide's guide takes the side force."""
    cos, sin = math.cos(angle), math.sin(angle)
    normal = 1 / (cos - friction * sin - guide * (sin + friction * cos))
    expected = normal * (sin + friction * cos) * 0.2
    if slot_jam_margin(angle, friction, guide) > 0.02:
        assert slot_torque(1.0, 0.2, angle, friction, guide) == pytest.approx(expected)
    elif slot_jam_margin(angle, friction, guide) < 0:
        assert math.isnan(slot_torque(1.0, 0.2, angle, friction, guide))


def test_slot_without_friction_does_the_work_of_the_slides():
    """Torque times turn is force times travel, along a spiral."""
    radii = np.linspace(0.10, 0.20, 2001)
    advance = 0.15
    angles = slot_angle(radii, advance)
    torque = slot_torque(50.0, radii, angles, 0.0)
    work = np.trapezoid(torque, (radii - 0.10) / advance)
    assert work == pytest.approx(50 * 0.10, rel=1e-6)


def test_straight_slot_is_the_tangent_of_its_polar_curve():
    distance, radius, step = 0.1, 0.2, 1e-6
    # r = d / cos(t): slope dr/dt / r, numerically.
    turn = math.acos(distance / radius)
    slope = (distance / math.cos(turn + step) - distance / math.cos(turn - step)) / (2 * step)
    assert straight_slot_angle(distance, radius) == pytest.approx(slot_angle(radius, slope))
    assert math.isnan(straight_slot_angle(0.3, 0.2))


def test_leaning_on_a_slide():
    assert slot_backdrive_torque(300.0, 0.2, math.radians(5), 0.2) == 0.0
    assert slot_hold_margin(math.radians(5), 0.2) > 0
    back = slot_backdrive_torque(300.0, 0.2, math.radians(40), 0.05)
    assert back == pytest.approx(60 * math.tan(math.radians(40) - math.atan(0.05)))
    assert slot_hold_margin(math.radians(40), 0.05) < 0


def test_jam_margin_is_where_the_torque_has_no_end():
    """Where the normal force of the equilibrium above goes to infinity, found by its zero."""
    angle, friction = 0.8, 0.2

    def push(guide):
        cos, sin = math.cos(angle), math.sin(angle)
        return cos - friction * sin - guide * (sin + friction * cos)

    limit = optimize.brentq(push, 0, 5)
    assert slot_jam_margin(angle, friction, limit) == pytest.approx(0, abs=1e-12)


def test_play_in_a_slot():
    """A wall at psi moved sideways by the clearance: along the radius, and around the circle."""
    angle, clearance = math.radians(30), 0.2e-3
    normal = np.array([math.cos(angle), -math.sin(angle)])  # radial, tangential
    play = slot_play(clearance, 0.2, angle)
    assert normal @ [play.radial, 0] == pytest.approx(clearance)
    assert normal @ [0, -play.turn * 0.2] == pytest.approx(clearance)


def test_web_of_logarithmic_spirals():
    """Distance from a point of one spiral to the next spiral, searched."""
    radius, count, angle, width = 0.12, 24, math.radians(30), 3e-3
    growth = math.tan(angle)

    def apart(turn):
        other = radius * math.exp(growth * (turn - 2 * math.pi / count))
        return math.hypot(other * math.cos(turn) - radius, other * math.sin(turn))

    found = optimize.minimize_scalar(apart, bounds=(-0.5, 0.5), method="bounded")
    web = slot_web(radius, count, angle, width)
    assert web == pytest.approx(found.fun - width, rel=0.1)


def test_stop_by_following_the_motion():
    """m x'' = -k x from 0.5 m/s until it stands still."""
    mass, speed, stiffness = 4.0, 0.5, 10e3
    energy = moving_energy(mass, speed)

    def still(_, state):
        return state[1]

    still.terminal = True
    motion = integrate.solve_ivp(
        lambda _, state: [state[1], -stiffness / mass * state[0]],
        (0, 1),
        [0.0, speed],
        events=still,
        rtol=1e-10,
        atol=1e-12,
    )
    travel = motion.y_events[0][0][0]
    assert spring_stop_travel(energy, stiffness) == pytest.approx(travel, rel=1e-6)
    assert spring_stop_force(energy, stiffness) == pytest.approx(stiffness * travel, rel=1e-6)
    assert steady_stop_force(energy, travel) * travel == pytest.approx(energy)
    assert turning_energy(2.0, 3.0) == pytest.approx(9.0)


@given(st.floats(0, 1.0), st.floats(1e-5, 1e-2))
def test_impact_by_energy(height, deflection):
    """Weight times drop and sink is the energy of the spring (Gere 2.8)."""
    sink = impact_factor(height, deflection) * deflection
    assert sink**2 / (2 * deflection) == pytest.approx(height + sink)


def test_suddenly_applied_load_is_doubled():
    # Gere, Mechanics of Materials, 2.8, the limit h = 0; from memory.
    assert impact_factor(0.0, 1e-3) == 2.0
    assert falling_energy(2.0, 0.5) == pytest.approx(9.80665)
    assert falling_energy(1.0, 0.5) == pytest.approx(9.80665 / 2)


def test_hub_by_equilibrium():
    upper, lower = hub_reactions(50.0, 0.1, 120.0, 0.125)
    assert upper - lower == pytest.approx(50)
    assert lower * 0.125 == pytest.approx(50 * 0.1 + 120)
    assert hub_play_angle(18e-6, 12e-6, 0.06) == pytest.approx(0.5e-3)


def test_hub_tilt_by_energy():
    """Castigliano: strain energy of both seats and of the spindle, derived by the moment."""
    spacing, upper, lower, bending = 0.06, 20e6, 15e6, 4120.0

    def energy(moment):
        seats = (moment / spacing) ** 2 / 2 * (1 / upper + 1 / lower)
        spindle, _ = integrate.quad(lambda x: (moment * x / spacing) ** 2, 0, spacing)
        return seats + spindle / (2 * bending)

    tilt = (energy(121.0) - energy(119.0)) / 2
    assert hub_tilt(120.0, spacing, upper, lower, bending) == pytest.approx(tilt)
    assert hub_tilt(120.0, spacing, upper, math.inf) == pytest.approx(120 / upper / spacing**2)
