"""What moves a follower over a ramp, what holds it where it stands, and what its crest bears."""

import numpy as np

from reviewer.mechanics.contact import contact_modulus, effective_radius
from reviewer.mechanics.contact_yield import line_yield_force
from reviewer.mechanics.followers import edge_force, rolling_force
from reviewer.mechanics.formula import Number
from reviewer.mechanics.profiles import profile_slopes
from reviewer.mechanics.ramps import lowering_force, raising_force
from reviewer.parts.allowed import stated
from reviewer.parts.ramp_path import Path, slopes_of
from reviewer.parts.row import Measure, Row
from reviewer.stock.materials import Material, completed

STEEL, STEEL_RATIO = 210e9, 0.3  # Pa and 1, of a roller; EN 1993-1-1, 3.2.6
HERE = {"path": "path", "at": "stands", "load": "load"}


def driving_force(
    path: Path, load: Number, follower: str, rolling: Number, friction: Number
) -> Number:
    """Greatest level force that moves the follower over the whole travel.

    Meriam and Kraige, Statics, 6/4, at every slope of the ramp.

    Notes
    -----
    Rolling: W (s + c)/(1 - c s). Sliding: W tan(a + phi) up, W tan(phi - a) down. Never below 0.
    """
    slope, weight = slopes_of(path), np.asarray(load)[..., None]
    if follower == "rolls":
        force = rolling_force(weight, slope, np.asarray(rolling)[..., None])
    else:
        angle, rubbing = np.arctan(np.abs(slope)), np.asarray(friction)[..., None]
        up, down = raising_force(weight, angle, rubbing), lowering_force(weight, angle, rubbing)
        force = np.where(slope >= 0, up, down)
    greatest: Number = np.maximum(np.max(force, axis=-1), 0.0)
    return greatest


def edges_force(load: Number, radius: Number | None, dip: Number, step: Number) -> Number:
    """Level force that lifts a roller out of the dip in which it rests, or over the foot's edge.

    Statics: moments about the edge.

    Notes
    -----
    The higher of the two; nothing where there is neither.
    """
    edge = np.maximum(dip, step)
    if np.all(edge == 0.0):
        return 0.0 * load
    return np.nan if radius is None else edge_force(load, radius, edge)


def dip_force(load: Number, radius: Number | None, dip: Number) -> Number:
    """Level force that lifts a roller out of the dip in which it rests.

    Statics: moments about the edge.
    """
    return edges_force(load, radius, dip, 0.0 * dip)


def larger(first: Number, second: Number) -> Number:
    """The larger of two forces, which do not act at one place."""
    return np.maximum(first, second)


def _leads_down(path: Path, at: Number) -> Number:
    """How steeply the steeper side leads down from a place; zero where neither does."""
    before, after = profile_slopes(at, path.travel, path.height)
    return np.maximum(np.maximum(before, -after), 0.0)


def asked_at_rest(path: Path, at: Number, load: Number, push: Number) -> Number:
    """Level force that moves a follower from where it stands: the load's own and a push.

    Statics, without the friction that may be missing.

    Notes
    -----
    W s + P, s of the steeper side that leads down; a rolling follower does not lock on a slope.
    """
    return load * _leads_down(path, at) + push


def friction_holds(path: Path, at: Number, load: Number, follower: str, friction: Number) -> Number:
    """Level force that friction surely holds where the follower stands; of a roller none.

    Meriam and Kraige, Statics, 6/4.

    Notes
    -----
    W tan(phi - a) with what the slope pushes, W tan(a), added again: the force that a sliding
    follower on a ramp holds is W (tan(phi - a) + tan(a)) in all.
    """
    if follower == "rolls":
        return 0.0 * load
    slope = _leads_down(path, at)
    level: Number = np.tan(np.arctan(friction) - np.arctan(slope))
    return load * np.maximum(level + slope, 0.0)


def jam_angle(steepest: Number, friction: Number, guide_friction: Number) -> Number:
    """Angle between the push and what resists it: at 90 deg a follower jams.

    Norton, Cam Design and Manufacturing Handbook, pressure angle; statics.

    Notes
    -----
    a + phi + phi_g.
    """
    return steepest + np.arctan(friction) + np.arctan(guide_friction)


def held_in_all(dip: Number, stop: Number, friction: Number) -> Number:
    """Level force that dip, stop and friction hold together."""
    return dip + stop + friction


def roller_friction(follower: str, rolling: Number, friction: Number) -> Number:
    """Resistance of the follower on the ramp: that of rolling or that of sliding."""
    return rolling if follower == "rolls" else friction


def crest_capacity(
    material: Material, edge_radius: Number, radius: Number, width: Number
) -> Number:
    """Load at which a roller first dents the rounded edge of a crest over which it turns.

    Johnson, Contact Mechanics (1985), 6.2 (p0 = 1.67 Y); from memory.

    Notes
    -----
    pi L R (1.67 Y)^2 / E*, 1/R of roller and edge together; E through the face of a panel.
    """
    whole = completed(material)
    ratio = whole.poisson
    modulus = contact_modulus(whole.modulus_through, ratio, STEEL, STEEL_RATIO)
    together = effective_radius(radius, edge_radius)
    return line_yield_force(whole.compression_across, width, together, modulus)


def forces() -> tuple[Row, ...]:
    """What moves the follower over the ramp, and what holds it where it stands."""
    return (
        Row(
            "slope_force",
            "N",
            "greatest level force up its slopes",
            formula=driving_force,
            needs={
                "path": "path",
                "load": "load",
                "follower": "follower",
                "rolling": "rolling_resistance",
                "friction": "friction.largest",
            },
            because="jams: its slope and the friction together are too steep",
        ),
        Row(
            "edge_force",
            "N",
            "level force out of the dip or over the foot's edge",
            formula=edges_force,
            needs={"load": "load", "radius": "roller.radius?", "dip": "dip", "step": "step"},
            because="needs the radius of a roller that is larger than its dip or step",
        ),
        Row(
            "drive_force",
            "N",
            "greatest level force that moves it over the whole travel",
            formula=larger,
            needs={"first": "slope_force", "second": "edge_force"},
        ),
        Row(
            "allowed_force",
            "N",
            "force with which it may be driven",
            Measure(above=0.0),
            formula=stated,
            needs={"limit": "limit.hand_force"},
        ),
        Row(
            "jam_angle",
            "rad",
            "angle of the slope and of the friction together",
            formula=jam_angle,
            needs={
                "steepest": "steepest",
                "friction": "rubbing_in",
                "guide_friction": "guide_friction",
            },
        ),
        Row(
            "rubbing_in",
            "1",
            "resistance of the follower on the ramp",
            formula=roller_friction,
            needs={
                "follower": "follower",
                "rolling": "rolling_resistance",
                "friction": "friction.largest",
            },
        ),
        Row(
            "rest.asked",
            "N",
            "level force that moves it from where it stands",
            formula=asked_at_rest,
            needs={**HERE, "push": "push"},
        ),
        Row(
            "rest.friction",
            "N",
            "level force that friction surely holds there",
            formula=friction_holds,
            needs={**HERE, "follower": "follower", "friction": "friction.least"},
            governs="least",
        ),
        Row(
            "rest.dip",
            "N",
            "level force that the dip holds",
            formula=dip_force,
            needs={"load": "load", "radius": "roller.radius?", "dip": "dip"},
            governs="least",
        ),
        Row(
            "rest.held",
            "N",
            "level force that dip, stop and friction hold there",
            formula=held_in_all,
            needs={"dip": "rest.dip", "stop": "stop_force", "friction": "rest.friction"},
            governs="least",
        ),
    )
