"""The hold-downs of a slewing ring: what each may take, and what gives way first."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.track import FULL_PLASTIC
from reviewer.parts.row import Measure, Row


def load_of_dent(strength: Number, length: Number, diameter: Number, depth: Number) -> Number:
    """Roller load that presses a mark of a given depth into the track, within a factor of two.

    Tabor, The Hardness of Metals (1951), from memory: constant pressure 3 Y over the chord.

    Notes
    -----
    3 Y L w, w = 2 sqrt(d h - h^2).
    """
    chord = 2 * np.sqrt(diameter * depth - depth * depth)
    return FULL_PLASTIC * strength * length * chord


class Weakest(NamedTuple):
    """The least of several capacities [N], and which it is."""

    load: Number
    name: Any


def weakest(bearing: Number, bolt: Number, track: Number, pull_through: Number | None) -> Weakest:
    """What a roller carries: the least of bearing, bolt, track and what holds it to its carrier.

    Statics; a chain is as strong as its weakest link.
    """
    names = ["bearing", "bolt", "track"]
    capacities = [bearing, bolt, track]
    if pull_through is not None:
        names.append("pull-through")
        capacities.append(pull_through)
    stacked = np.stack(np.broadcast_arrays(*capacities))
    least = np.argmin(stacked, axis=0)  # an unknown one comes first, and stays unknown
    return Weakest(np.min(stacked, axis=0), np.array(names)[least])


HOLD = (
    Row(
        "hold_down.pull_through",
        "N",
        "load that pulls a hold-down's fastening out of what carries it",
        Measure(above=0.0, example="900 N"),
    ),
    Row(
        "hold_down.track_capacity",
        "N",
        "hold-down load that presses the allowed mark into the plate",
        formula=load_of_dent,
        needs={
            "strength": "track.strength",
            "length": "hold_down.width",
            "diameter": "hold_down.outer_diameter",
            "depth": "contact.allowed_dent",
        },
    ),
    Row(
        "hold_down.weakest",
        "",
        "what gives way first at a hold-down",
        formula=weakest,
        needs={
            "bearing": "hold_down.bearing_capacity",
            "bolt": "hold_down.bolt_capacity",
            "track": "hold_down.track_capacity",
            "pull_through": "hold_down.pull_through?",
        },
    ),
    Row(
        "hold_down.allowed_load",
        "N",
        "load that a hold-down may take",
        Measure(above=0.0),
        needs={"solution": "hold_down.weakest"},
        take="load",
    ),
    Row(
        "hold_down.limited_by",
        "text",
        "what limits that load",
        needs={"solution": "hold_down.weakest"},
        take="name",
    ),
)
