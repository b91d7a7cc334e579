"""A lever: a bar on a pivot by which a hand lifts a load."""

import numpy as np

from reviewer.mechanics.bending import bending_stress
from reviewer.mechanics.cantilevers import cantilever_deflection
from reviewer.mechanics.formula import Number
from reviewer.mechanics.lever_travel import LeverTravel, lever_travel
from reviewer.parts.allowed import stated
from reviewer.parts.arm import bar_mass
from reviewer.parts.bars import bar_material, section
from reviewer.parts.figures import LIES, figure
from reviewer.parts.groups import same, single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Measure, Row

ARMS = {"load_arm": "load_arm", "hand_arm": "hand_arm?", "side": "hand_side"}
LEVEL_ENOUGH = np.pi / 2


def travel_of(
    load: Number,
    load_arm: Number,
    hand_arm: Number | None,
    start: Number,
    end: Number,
    bend: Number,
    pull: str,
    friction_torque: Number,
) -> LeverTravel:
    """Forces through the travel; of a lever without a hand, which a shaft turns, only the torque.

    Statics: moments about the pivot.
    """
    plumb = 1.0 if pull == "plumb" else 0.0
    if hand_arm is not None:
        return lever_travel(load, load_arm, hand_arm, start, end, bend, plumb, friction_torque)
    turned = lever_travel(load, load_arm, load_arm, start, end, 0.0, 0.0, friction_torque)
    return LeverTravel(np.nan, np.nan, np.nan, turned.peak_torque)


def whole_length(load_arm: Number, hand_arm: Number | None, side: str) -> Number:
    """Length of the bar, from end to end.

    Geometry.
    """
    if hand_arm is None:
        return load_arm
    return load_arm + hand_arm if side == "opposite" else np.maximum(load_arm, hand_arm)


def lever_moment(torque: Number, load_arm: Number, hand_arm: Number | None, side: str) -> Number:
    """Largest bending moment in the bar.

    Statics.

    Notes
    -----
    The torque about the pivot; with hand and load on one side, where the nearer of them stands,
    T (1 - near/far).
    """
    if hand_arm is None or side == "opposite":
        return torque
    return torque * (1 - np.minimum(load_arm, hand_arm) / np.maximum(load_arm, hand_arm))


def lift_of(load_arm: Number, start: Number, end: Number) -> Number:
    """Height by which the load rises over the travel.

    Geometry.

    Notes
    -----
    a (sin A2 - sin A1).
    """
    return load_arm * (np.sin(end) - np.sin(start))


def hand_way(hand_arm: Number, start: Number, end: Number) -> Number:
    """Way of the hand over the travel.

    Geometry.

    Notes
    -----
    b |A2 - A1|.
    """
    return hand_arm * np.abs(end - start)


def load_end_sinks(
    load: Number, load_arm: Number, modulus: Number, second_moment: Number
) -> Number:
    """How far the load's end of the bar bends down, the pivot taken as rigid.

    Gere and Goodno, Mechanics of Materials (2009), table G-1 case 4.

    Notes
    -----
    W a^3 / (3 E I), with the bar level.
    """
    return cantilever_deflection(load, load_arm, load_arm, modulus * second_moment)


def _angle(path: str, says: str) -> Row:
    bounds = Measure(default="0 deg", at_least=-LEVEL_ENOUGH, at_most=LEVEL_ENOUGH)
    return Row(path, "rad", says, bounds)


def _of_travel(path: str, unit: str, says: str, take: str) -> Row:
    return Row(path, unit, says, needs={"solution": "travel"}, take=take)


SHAPE = (
    *("load_arm", "hand_arm", "hand_side", "bend", "from", "azimuth"),
    *("section.width", "section.height", "section.diameter"),
)


def closes_with(load: Number, hand: Number, hand_arm: Number | None, load_arm: Number) -> Number:
    """Force at the load's end as it comes down: what hangs there, and a hand that presses.

    Statics of a lever without friction, level.

    Notes
    -----
    W + F b / a.
    """
    return load + (0.0 if hand_arm is None else hand * hand_arm / load_arm)


LEVER = Kind(
    name="lever",
    says="a bar on a pivot by which a hand lifts a load",
    rows=(
        *tree(),
        LIES,
        figure("lever", *SHAPE),
        *single(bar_mass, {"area": "section.area", "length": "length", "density": "density"}),
        *section(),
        *bar_material("S235"),
        Row(
            "load_arm",
            "m",
            "from the pivot to the load",
            Measure(above=0.0, example="60 mm"),
            formula=same,
            needs={"place": "carrier.lever.length"},
        ),
        Row("hand_arm", "m", "from the pivot to the hand", Measure(above=0.0, example="400 mm")),
        Row(
            "hand_side",
            "",
            "on which side of the pivot the hand is, seen from the load",
            Choice(("opposite", "same"), default="opposite"),
        ),
        Row("length", "m", "length of the bar", Measure(above=0.0), whole_length, ARMS),
        _angle("from", "angle of the load's arm above level where the travel begins"),
        _angle("to", "angle of the load's arm above level where the travel ends"),
        _angle("bend", "angle between the hand's arm and the line of the load's arm"),
        Row(
            "pull",
            "",
            "how the hand pulls: square to its arm all the way, or plumb",
            Choice(("square", "plumb"), default="square"),
        ),
        Row(
            "load",
            "N",
            "weight that it lifts, its own included",
            Measure(at_least=0.0, example="400 N"),
            formula=same,
            needs={"place": "bears.force"},
        ),
        Row(
            "friction_torque",
            "N m",
            "torque lost in the pivot and in what it drives",
            Measure(at_least=0.0, default="0 N m"),
        ),
        Row(
            "travel",
            "",
            "forces through the travel",
            formula=travel_of,
            needs={
                "load": "load",
                "load_arm": "load_arm",
                "hand_arm": "hand_arm?",
                "start": "from",
                "end": "to",
                "bend": "bend",
                "pull": "pull",
                "friction_torque": "friction_torque",
            },
        ),
        _of_travel("hand_force", "N", "greatest force of the hand on its way", "peak_force"),
        _of_travel("start_force", "N", "force of the hand where it begins", "start_force"),
        _of_travel("end_force", "N", "force of the hand where it ends", "end_force"),
        _of_travel("torque", "N m", "greatest torque about the pivot", "peak_torque"),
        Row(
            "allowed_hand_force",
            "N",
            "force that a hand may be asked for",
            Measure(above=0.0),
            formula=stated,
            needs={"limit": "limit.hand_force"},
        ),
        Row(
            "closes_with",
            "N",
            "force with which its load closes a gap, pressed down by a hand",
            formula=closes_with,
            needs={
                "load": "load",
                "hand": "allowed_hand_force",
                "hand_arm": "hand_arm?",
                "load_arm": "load_arm",
            },
        ),
        Row(
            "lift",
            "m",
            "height by which the load rises",
            formula=lift_of,
            needs={"load_arm": "load_arm", "start": "from", "end": "to"},
            governs="least",
        ),
        Row(
            "hand_way",
            "m",
            "way of the hand",
            formula=hand_way,
            needs={"hand_arm": "hand_arm", "start": "from", "end": "to"},
        ),
        Row(
            "bending_moment",
            "N m",
            "greatest bending moment in the bar",
            formula=lever_moment,
            needs={"torque": "torque", **ARMS},
        ),
        Row(
            "bending_stress",
            "Pa",
            "bending stress",
            formula=bending_stress,
            needs={"moment": "bending_moment", "section_modulus": "section.section_modulus"},
        ),
        Row(
            "sinks",
            "m",
            "how far the load's end bends down",
            formula=load_end_sinks,
            needs={
                "load": "load",
                "load_arm": "load_arm",
                "modulus": "modulus",
                "second_moment": "section.second_moment",
            },
            read="at the load's end, from a straightedge along the bar",
        ),
    ),
)
