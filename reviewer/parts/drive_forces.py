"""What a drive plate asks of the hand, what leaning on it does, and in what order it moves."""

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.parts.allowed import stated
from reviewer.parts.drive_slots import ENDS
from reviewer.parts.groups import same
from reviewer.parts.ramp_forces import jam_angle, roller_friction
from reviewer.parts.row import Choice, Measure, Row
from reviewer.parts.rubbing import rubbing
from reviewer.parts.skirt import level_push
from reviewer.parts.slot_travel import SlotTravel, driving_torque, leaning_torque, torque_for_one


def sliding_force(force: Number, slots: int, friction: Number) -> Number:
    """Force along the radius that moves one slide against the friction of what lies on it.

    Coulomb friction; each slide carries its share of what lies on all of them.

    Notes
    -----
    mu F / n.
    """
    return friction * force / slots


def hold_friction(follower: str, friction: Number) -> Number:
    """Friction on which the slot may count to hold its slide: of a roller none."""
    return 0.0 * friction if follower == "rolls" else friction


def first_ends(first: str, slide_to: Number, lift_to: Number) -> Number:
    """Turn at which the first of slide and lift ends."""
    return slide_to if first == "slide" else lift_to


def second_begins(first: str, slide_from: Number, lift_from: Number) -> Number:
    """Turn at which the second of slide and lift begins."""
    return lift_from if first == "slide" else slide_from


def drive() -> tuple[Row, ...]:
    """Friction, and what the hand must give."""
    return (
        *rubbing(),
        Row(
            "rolling_resistance",
            "1",
            "rolling resistance over the load, bearing included",
            Measure(default="0.03", at_least=0.0, below=1.0),
        ),
        Row(
            "slot_friction",
            "1",
            "resistance of the follower in its slot",
            formula=roller_friction,
            needs={
                "follower": "follower",
                "rolling": "rolling_resistance",
                "friction": "friction.largest",
            },
        ),
        Row(
            "guide_friction",
            "1",
            "friction of the slides in their guides",
            Measure(at_least=0.0, at_most=3.0),
            same,
            {"place": "friction.largest"},
        ),
        Row(
            "slide_force",
            "N",
            "force along the radius that moves one slide",
            Measure(at_least=0.0, example="40 N"),
            sliding_force,
            {"force": "bears.force", "slots": "slots", "friction": "guide_friction"},
        ),
        Row(
            "jam_angle",
            "rad",
            "angle of the slot and of the friction together",
            formula=jam_angle,
            needs={
                "steepest": "slot.steepest",
                "friction": "slot_friction",
                "guide_friction": "guide_friction",
            },
        ),
        Row(
            "torque",
            "N m",
            "greatest torque that moves all slides",
            formula=driving_torque,
            needs={
                "slot": "slot.travel",
                "force": "slide_force",
                "slots": "slots",
                "friction": "slot_friction",
                "guide_friction": "guide_friction",
            },
            because="jams: its slots and the friction together are too steep",
        ),
        Row(
            "hand_radius",
            "m",
            "radius at which the hand turns it",
            Measure(above=0.0),
            same,
            {"place": "rim.radius"},
        ),
        Row(
            "hand_force",
            "N",
            "force of the hand that turns it",
            formula=lambda torque, radius: torque / radius,
            needs={"torque": "torque", "radius": "hand_radius"},
        ),
        Row(
            "allowed_hand_force",
            "N",
            "force that a hand may be asked for",
            Measure(above=0.0),
            stated,
            {"limit": "limit.hand_force"},
        ),
        Row(
            "closes_with",
            "N",
            "force with which a slide closes a gap, a hand turning the plate",
            formula=closes_with,
            needs={
                "slot": "slot.travel",
                "hand": "allowed_hand_force",
                "radius": "hand_radius",
                "friction": "slot_friction",
                "guide_friction": "guide_friction",
            },
            because="jams: its slots and the friction together are too steep",
        ),
    )


def closes_with(
    slot: SlotTravel, hand: Number, radius: Number, friction: Number, guide_friction: Number
) -> Number:
    """Force of one slide alone against what is in its way, a hand turning the plate.

    Statics, as for the torque; at the place of the slot where it is greatest.

    Notes
    -----
    F R / (r t/(1 - mu_g t)), t = tan(psi + phi): all of the hand's force on the slide that is held.
    """
    least: Number = np.min(torque_for_one(slot, friction, guide_friction), axis=-1)
    return hand * radius / least


def rest() -> tuple[Row, ...]:
    """What leaning on a slide does, and the order of slide and lift."""
    return (
        Row(
            "stands",
            "m",
            "radius at which the followers stand",
            Measure(above=0.0),
            same,
            {"place": "slot.outer"},
        ),
        Row(
            "push",
            "N",
            "level force with which somebody leans on a slide",
            Measure(at_least=0.0),
            level_push,
            {"action": "action"},
        ),
        Row(
            "holding_friction",
            "1",
            "friction on which its slots may count to hold",
            formula=hold_friction,
            needs={"follower": "follower", "friction": "friction.least"},
            governs="least",
        ),
        Row(
            "leaning_torque",
            "N m",
            "torque with which that push turns the plate",
            formula=leaning_torque,
            needs={
                **ENDS,
                "turn": "slot.turn",
                "distance": "slot.distance?",
                "stands": "stands",
                "push": "push",
                "friction": "holding_friction",
            },
        ),
        Row(
            "catch_torque",
            "N m",
            "torque that a catch or stop holds",
            Measure(at_least=0.0, default="0 N m"),
        ),
        Row(
            "first",
            "",
            "which of slide and lift must end before the other begins",
            Choice(("slide", "lift")),
        ),
        Row(
            "slide.from", "rad", "turn at which the slides begin to move", Measure(default="0 deg")
        ),
        Row(
            "slide.to",
            "rad",
            "turn at which the slides have moved",
            formula=lambda begin, turn: begin + turn,
            needs={"begin": "slide.from", "turn": "slot.turn"},
        ),
        Row("lift.from", "rad", "turn at which the lift begins", Measure(example="70 deg")),
        Row("lift.to", "rad", "turn at which the lift ends", Measure(example="110 deg")),
        Row(
            "first_ends",
            "rad",
            "turn at which the first movement ends",
            formula=first_ends,
            needs={"first": "first", "slide_to": "slide.to", "lift_to": "lift.to"},
        ),
        Row(
            "second_begins",
            "rad",
            "turn at which the second movement begins",
            formula=second_begins,
            governs="least",
            needs={"first": "first", "slide_from": "slide.from", "lift_from": "lift.from"},
        ),
    )
