"""What a spindle with two bearings bears, how it tilts and what turns it."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.bearings import pure_axial_limit
from reviewer.mechanics.bearings import static_equivalent_load as equivalent
from reviewer.mechanics.formula import Number
from reviewer.mechanics.hub import hub_reactions
from reviewer.mechanics.resultant import Action
from reviewer.mechanics.rollers import friction_moment, radial_approach
from reviewer.mechanics.track import secant_stiffness
from reviewer.parts.ring_bending import BentRing, bend_ring
from reviewer.parts.ring_plate import Entry, Shape, plate_shape
from reviewer.parts.ring_solution import stand_on_rollers
from reviewer.stock.bearings import Bearing
from reviewer.stock.friction import frictions

FLANGE_BOLTS = 12  # points at which the plate is held to its flange, both ways
FLANGE_STIFFNESS = 1e9  # N/m of each: so much that only the plate gives way
LIGHT = ("60", "68", "69")  # diameter series 0, 8 and 9, by how their sizes begin
LEAST_LOAD = 10.0  # N, below which no stiffness of a contact is asked for


class HubSolution(NamedTuple):
    """Forces [N] and moment [N m] at the upper bearing, and the loads of both bearings [N]."""

    axial_load: Number
    radial_load: Number
    moment: Number
    upper: Number
    lower: Number
    peak: Number


def solve_hub(action: Action, x: Number, y: Number, level: Number, spacing: Number) -> HubSolution:
    """Loads of the two bearings of a spindle, for the worst direction.

    Statics: moments about each bearing.

    Notes
    -----
    (F h + M)/s and F more above; level forces and moments are taken to point the same way.
    """
    total = action.total
    about = total.about(x, y, level)
    moment = np.hypot(about.moment_x, about.moment_y) + about.moment_round
    radial = np.hypot(total.push_x, total.push_y) + total.push_round
    upper, lower = hub_reactions(radial, 0.0, moment, spacing)
    return HubSolution(about.force, radial, moment, upper, lower, np.maximum(upper, lower))


def equivalent_load(radial: Number, axial: Number, locating: str, which: str) -> Number:
    """Static equivalent load of one of the two bearings; the locating one has all axial load.

    ISO 76:2006, 5.2.

    Notes
    -----
    P0 = 0.6 Fr + 0.5 Fa, not below Fr.
    """
    return equivalent(radial, np.abs(axial) if locating == which else 0.0 * axial)


def axial_limit(upper: Bearing, lower: Bearing, locating: str) -> Number:
    """Axial load that the locating bearing carries.

    General bearing catalogues, common practice.

    Notes
    -----
    0.5 C0; 0.25 C0 with a bore up to 12 mm or in a light series.
    """
    bearing = upper if locating == "upper" else lower
    light = float(bearing.name.startswith(LIGHT))
    return pure_axial_limit(bearing.static_rating, bearing.bore, light)


def bearing_stiffness(load: Number, bearing: Bearing) -> Number:
    """Radial stiffness of a bearing at its own load.

    Palmgren, Ball and Roller Bearing Engineering (1959); from memory.

    Notes
    -----
    F / approach. The seat is taken as stiff. Unknown where the balls are not in the tables.
    """
    if bearing.balls is None:
        return np.nan
    taken = np.maximum(load, LEAST_LOAD)
    return secant_stiffness(taken, radial_approach(taken, bearing.balls, bearing.ball_diameter))


def clearance_of(bearing: Bearing, preloaded: bool) -> Number:
    """Radial clearance of a bearing at its widest, none where the pair is set against each other.

    ISO 5753-1, group CN.
    """
    return 0.0 if preloaded else bearing.clearance.high


def spindle_stiffness(modulus: Number, diameter: Number) -> Number:
    """Bending stiffness of a solid round spindle.

    Geometry.

    Notes
    -----
    E pi d^4 / 64.
    """
    square = diameter * diameter
    return modulus * np.pi / 64 * square * square


def hold_to_flange(action: Action, x: Number, y: Number, level: Number, flange: Number) -> Any:
    """The plate's load about its axis, and the flange as bolts that hold it both ways.

    Statics.
    """
    group = (FLANGE_BOLTS, flange, FLANGE_STIFFNESS, 0.0)
    return stand_on_rollers(action, x, y, level, *group, *group, 0.0, 0.0)


def shape_on_flange(radius: Number, opening: Number, flange: Number, entry: Entry) -> Shape:
    """How the plate gives way between its flange and its loads.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), art. 62 and 71.
    """
    return plate_shape(radius, opening, flange, flange, FLANGE_BOLTS, entry)


def bend_on_flange(
    standing: Any, entry: Entry, shape: Shape, rigidity: Number | None, reach: Number, rigid: bool
) -> BentRing | None:
    """How the plate bends over its flange, for the worst direction of the load.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959). As a ring's plate.
    """
    return bend_ring(standing, entry, shape, rigidity, reach, rigid)


def sink_of_plate(bent: BentRing | None, tilt: Number) -> Number:
    """How far the rim sinks because the plate bends over its flange; nothing where it is rigid.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959).
    """
    return 0.0 * tilt if bent is None else bent.rim_sink


def torque_of_bearings(upper: Number, lower: Number, bore: Number) -> Number:
    """Torque that turns the hub from rest.

    General bearing catalogues, common practice.

    Notes
    -----
    0.5 mu P d of both, mu = 0.003 at starting, seals left out.
    """
    friction = frictions().find("deep groove ball bearing").static_high
    return friction_moment(upper + lower, bore, friction)
