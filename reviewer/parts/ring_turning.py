"""What it takes to turn a slewing ring by hand."""

import numpy as np

from reviewer.mechanics.contact import line_contact
from reviewer.mechanics.formula import Number
from reviewer.mechanics.resultant import Action
from reviewer.mechanics.ring_loads import TurningTorque, hand_force, turning_torque
from reviewer.mechanics.track import rolling_coefficient
from reviewer.parts.from_stock import of_bearing
from reviewer.parts.row import Measure, Row
from reviewer.parts.skirt import level_push
from reviewer.stock.bearings import Bearing
from reviewer.stock.friction import frictions


def load_on_rollers(
    axial: Number, uplift: Number, squeeze: Number | None, hold: int | None
) -> Number:
    """Sum of the loads on all rollers: what is carried, and twice what the hold-downs press.

    Statics: what presses down on the plate from above presses on the rollers below it as well.

    Notes
    -----
    W + 2 max(uplift, n squeeze): the hold-downs press under a load, or because the plate swells.
    """
    if squeeze is None or hold is None:
        return axial + 2 * uplift
    return axial + 2 * np.maximum(uplift, hold * squeeze)


def rolling_loss(
    load: Number, length: Number, diameter: Number, modulus: Number, loss: Number
) -> Number:
    """Rolling resistance of a roller on its track against its load, at the mean roller load.

    Johnson, Contact Mechanics (1985), 9.4.

    Notes
    -----
    2 b / (3 pi R) times the loss. Known within a factor of three.
    """
    half_width = line_contact(load, length, diameter / 2, modulus).half_width
    return rolling_coefficient(half_width, diameter / 2, loss)


def torque_to_turn(
    load: Number,
    circle: Number,
    diameter: Number,
    rolling: Number,
    bearing: Bearing,
    length: Number,
    toe_in: Number,
) -> TurningTorque:
    """Torque that turns the plate from rest, by what takes it.

    Johnson, Contact Mechanics (1985), 9.4 for the track; general bearing catalogues for the
    bearings; statics for the rest. Within a factor of three.

    Notes
    -----
    F c R, 0.5 mu F d R/r, mu F l/4 and mu F R sin(a); frictions at their high end.
    """
    bearings, track = (
        frictions().find(pair) for pair in ("deep groove ball bearing", "wood on steel")
    )
    return turning_torque(
        load,
        circle / 2,
        diameter / 2,
        rolling,
        bearing.bore,
        bearings.static_high,
        length,
        track.static_high,
        toe_in,
    )


def load_on_side(action: Action) -> Number:
    """Sum of the loads on the side rollers under a level push, upper bound.

    Statics of one-way springs all round.

    Notes
    -----
    4 P / pi of many rollers, of which those in front carry as the cosine.
    """
    return 4 / np.pi * level_push(action)


def torque_of_side(
    load: Number, radius: Number, diameter: Number, rolling: Number, bearing: Bearing
) -> Number:
    """Torque that the side rollers take under a level push; their axles stand along the spindle.

    Johnson, Contact Mechanics (1985), 9.4 for the edge, as the track's; bearing catalogues.

    Notes
    -----
    F c R + 0.5 mu F d R/r.
    """
    friction = frictions().find("deep groove ball bearing").static_high
    outer = diameter / 2
    return turning_torque(load, radius, outer, rolling, bearing.bore, friction, 0.0, 0.0, 0.0).total


def with_side(all_others: Number, side: Number | None) -> Number:
    """Torque of the carrying rollers and hold-downs, and of the side rollers where there are any.

    Statics.
    """
    return all_others if side is None else all_others + side


TORQUE = {"solution": "turning"}

TURNING = (
    Row(
        "track.loss",
        "1",
        "share of the elastic work that the track keeps while a roller passes",
        Measure(at_least=0.0, at_most=1.0, default="20 %"),
    ),
    Row(
        "carry.toe_in",
        "rad",
        "angle between a roller's way and the circle that it runs on",
        Measure(at_least=0.0, default="0.5 deg"),
    ),
    Row(
        "rollers.load",
        "N",
        "sum of the loads on all rollers, the plate swollen in the dampest air",
        formula=load_on_rollers,
        needs={
            "axial": "carry.axial_load",
            "uplift": "uplift.force",
            "squeeze": "hold_down.squeeze?",
            "hold": "hold_down.count?",
        },
    ),
    Row(
        "carry.rolling",
        "1",
        "rolling resistance of the track against the load",
        formula=rolling_loss,
        needs={
            "load": "roller.reference_load",
            "length": "contact.length",
            "diameter": "carry.outer_diameter",
            "modulus": "contact.modulus",
            "loss": "track.loss",
        },
    ),
    Row(
        "turning",
        "",
        "torque that turns the plate, by what takes it",
        formula=torque_to_turn,
        needs={
            "load": "rollers.load",
            "circle": "carry.circle",
            "diameter": "carry.outer_diameter",
            "rolling": "carry.rolling",
            "bearing": "carry.bearing",
            "length": "contact.length",
            "toe_in": "carry.toe_in",
        },
    ),
    Row("turning.rolling", "N m", "torque lost in the track", needs=TORQUE, take="rolling"),
    Row("turning.bearings", "N m", "torque lost in the bearings", needs=TORQUE, take="bearing"),
    Row(
        "turning.spin",
        "N m",
        "torque lost because cylinders turn on the spot",
        needs=TORQUE,
        take="spin",
    ),
    Row(
        "turning.sideways",
        "N m",
        "torque lost because rollers do not point along their circle",
        needs=TORQUE,
        take="toe_in",
    ),
    Row(
        "side.diameter",
        "m",
        "outer diameter of the side rollers",
        formula=of_bearing("outer", "Outer diameter of the bearing"),
        needs={"bearing": "side.bearing"},
    ),
    Row(
        "side.load",
        "N",
        "sum of the loads on the side rollers under a level push",
        formula=load_on_side,
        needs={"action": "action"},
    ),
    Row(
        "turning.side",
        "N m",
        "torque lost at the side rollers",
        formula=torque_of_side,
        needs={
            "load": "side.load",
            "radius": "plate.radius",
            "diameter": "side.diameter",
            "rolling": "carry.rolling",
            "bearing": "side.bearing",
        },
    ),
    Row("turning.carried", "N m", "torque lost at all other rollers", needs=TORQUE, take="total"),
    Row(
        "turning.torque",
        "N m",
        "torque that turns the plate",
        formula=with_side,
        needs={"all_others": "turning.carried", "side": "turning.side?"},
    ),
    Row(
        "turning.hand_force",
        "N",
        "force of a hand at the rim that turns the plate",
        formula=hand_force,
        needs={"torque": "turning.torque", "radius": "reach.radius"},
    ),
)
