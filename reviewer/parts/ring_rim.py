"""The rim of a slewing ring: how it plays and sinks."""

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.rings import rim_play, tilt_from_gaps
from reviewer.parts.allowed import stated
from reviewer.parts.rim_sums import rim_sums
from reviewer.parts.ring_bending import BentRing
from reviewer.parts.row import Measure, Row


def free_rim(tilt: Number, reach: Number, circle: Number, count: int) -> Number:
    """How far the pressed rim moves down freely, until the hold-downs opposite stop the plate.

    Geometry.

    Notes
    -----
    tilt (r - D/2 cos(pi/n)).
    """
    return rim_play(tilt, reach, circle, count).sink


def sink_from_springs(sink: Number, tilt: Number, reach: Number) -> Number:
    """How far the rim would sink on the rollers' springs if the plate were rigid.

    Geometry.

    Notes
    -----
    Sink of the middle plus tilt times the reach.
    """
    return sink + tilt * reach


def sink_from_plate(springs: Number, bent: BentRing | None) -> Number:
    """How much farther the rim sinks because the plate bends; nothing where it is taken as rigid.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959).
    """
    return 0.0 * springs if bent is None else np.maximum(bent.rim_sink - springs, 0.0)


def basis_of(bent: BentRing | None, rigid: bool) -> str:
    """What the answer is worth, as a sentence of a finding."""
    if bent is not None:
        return "The plate's own bending is in it, as of a thin disc: rough by a third"
    why = "as the design asks" if rigid else "since its bending stiffness is not known"
    return f"The plate is taken as rigid, {why}, so this is a lower bound"


def play_of_gap(
    gap: Number,
    carry_circle: Number,
    carry_count: int,
    hold_circle: Number,
    hold_count: int,
    reach: Number,
) -> Number:
    """How far the pressed rim moves down freely in a gap of the hold-downs.

    Geometry.

    Notes
    -----
    Tilt in the gap times (r - D/2 cos(pi/n)).
    """
    tilt = tilt_from_gaps(gap, 0.0, carry_circle, carry_count, hold_circle, hold_count)
    return rim_play(tilt, reach, carry_circle, carry_count).sink


BENT = {"bent": "rollers_bent?"}

RIM = (
    Row(
        "play.tilt",
        "rad",
        "angle that the plate can tilt freely in the gap of its hold-downs",
        formula=tilt_from_gaps,
        needs={
            "gap_up": "hold_down.gap",
            "gap_down": "carry.gap",
            "carry_circle": "carry.circle",
            "carry_count": "carry.count",
            "hold_circle": "hold_down.circle",
            "hold_count": "hold_down.count",
        },
    ),
    Row(
        "play.rim",
        "m",
        "free play down at the farthest rim",
        formula=free_rim,
        needs={
            "tilt": "play.tilt",
            "reach": "reach.radius",
            "circle": "carry.circle",
            "count": "carry.count",
        },
        read="at the farthest rim, from a beam on what carries it, as a hand lifts and presses it",
    ),
    Row("carry.gap", "m", "own weight keeps the carrying rollers touching", formula=lambda: 0.0),
    Row(
        "play.allowed",
        "m",
        "free play that the rim may have",
        Measure(above=0.0, example="3 mm"),
        formula=stated,
        needs={"limit": "limit.rim_play"},
    ),
    Row(
        "rim.from_springs",
        "m",
        "how far the farthest rim sinks on the rollers' springs, if the plate is rigid",
        formula=sink_from_springs,
        needs={"sink": "rigid.sink", "tilt": "rigid.tilt", "reach": "reach.radius"},
    ),
    Row(
        "rim.from_plate",
        "m",
        "how much farther it sinks because the plate bends",
        formula=sink_from_plate,
        needs={"springs": "rim.from_springs", **BENT},
    ),
    *rim_sums("plate"),
    Row(
        "play.rim_dry",
        "m",
        "free play down at the farthest rim in the driest air",
        formula=play_of_gap,
        needs={
            "gap": "hold_down.gap_dry",
            "carry_circle": "carry.circle",
            "carry_count": "carry.count",
            "hold_circle": "hold_down.circle",
            "hold_count": "hold_down.count",
            "reach": "reach.radius",
        },
    ),
    Row(
        "rim.basis",
        "text",
        "what the sink of the rim is worth",
        formula=basis_of,
        needs={**BENT, "rigid": "plate.rigid"},
    ),
)
