"""How the plate of a hub plays, tilts and sinks, and what turns it."""

from reviewer.mechanics.hub import hub_play_angle, hub_tilt
from reviewer.mechanics.ring_loads import hand_force
from reviewer.parts.allowed import stated
from reviewer.parts.hub_forces import (
    bend_on_flange,
    hold_to_flange,
    shape_on_flange,
    sink_of_plate,
    spindle_stiffness,
    torque_of_bearings,
)
from reviewer.parts.rim_sums import rim_sums
from reviewer.parts.ring_rim import basis_of
from reviewer.parts.row import Measure, Row

AT = {"action": "action", "x": "place.x", "y": "place.y"}

MOVES = (
    Row(
        "play.tilt",
        "rad",
        "angle that the plate can tilt freely in the clearance of its bearings",
        formula=hub_play_angle,
        needs={
            "upper_clearance": "upper.clearance",
            "lower_clearance": "lower.clearance",
            "spacing": "spacing",
        },
    ),
    Row(
        "play.rim",
        "m",
        "free play up and down at the farthest rim",
        formula=lambda tilt, reach: tilt * reach,
        needs={"tilt": "play.tilt", "reach": "reach.radius"},
        read="at the farthest rim, from a beam on what carries it, as a hand lifts and presses it",
    ),
    Row(
        "play.allowed",
        "m",
        "free play that the rim may have",
        Measure(above=0.0, example="3 mm"),
        formula=stated,
        needs={"limit": "limit.rim_play"},
    ),
    Row(
        "spindle.stiffness",
        "N m^2",
        "bending stiffness of the spindle",
        formula=spindle_stiffness,
        needs={"modulus": "spindle.modulus", "diameter": "spindle.diameter"},
    ),
    Row(
        "tilt",
        "rad",
        "how far the flange tilts on its bearings and its spindle",
        formula=lambda moment, spacing, upper, lower, spindle, overhang: (
            hub_tilt(moment, spacing, upper, lower, spindle) + moment * overhang / spindle
        ),
        needs={
            "moment": "carry.moment",
            "spacing": "spacing",
            "upper": "upper.stiffness",
            "lower": "lower.stiffness",
            "spindle": "spindle.stiffness",
            "overhang": "spindle.overhang",
        },
    ),
    Row("plate.entry", "", "where the loads come into the plate", built=True),
    Row(
        "plate.shape",
        "",
        "how the plate gives way between flange and loads, for a rigidity of one",
        formula=shape_on_flange,
        needs={
            "radius": "plate.radius",
            "opening": "plate.opening_radius",
            "flange": "flange.diameter",
            "entry": "plate.entry",
        },
    ),
    Row(
        "flange.standing",
        "",
        "the plate on its flange",
        formula=hold_to_flange,
        needs={**AT, "level": "level", "flange": "flange.diameter"},
    ),
    Row(
        "plate_bent",
        "",
        "how the plate bends over its flange",
        formula=bend_on_flange,
        searches=True,
        needs={
            "standing": "flange.standing",
            "entry": "plate.entry",
            "shape": "plate.shape",
            "rigidity": "plate.rigidity?",
            "reach": "reach.radius",
            "rigid": "plate.rigid",
        },
    ),
    Row(
        "rim.from_springs",
        "m",
        "how far the farthest rim sinks on bearings and spindle, if the plate is rigid",
        formula=lambda tilt, reach: tilt * reach,
        needs={"tilt": "tilt", "reach": "reach.radius"},
    ),
    Row(
        "rim.from_plate",
        "m",
        "how much farther it sinks because the plate bends over its flange",
        formula=sink_of_plate,
        needs={"bent": "plate_bent?", "tilt": "tilt"},
    ),
    *rim_sums("flange"),
    Row(
        "rim.basis",
        "text",
        "what the sink of the rim is worth",
        formula=basis_of,
        needs={"bent": "plate_bent?", "rigid": "plate.rigid"},
    ),
    Row(
        "turning.torque",
        "N m",
        "torque that turns the plate",
        formula=torque_of_bearings,
        needs={
            "upper": "upper.equivalent_load",
            "lower": "lower.equivalent_load",
            "bore": "spindle.diameter",
        },
    ),
    Row(
        "turning.hand_force",
        "N",
        "force of a hand at the rim that turns the plate",
        formula=hand_force,
        needs={"torque": "turning.torque", "radius": "reach.radius"},
    ),
)
