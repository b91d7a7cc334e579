"""The hold-downs of a slewing ring: what each may take, and what gives way first."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.track import FULL_PLASTIC
from reviewer.parts.joint_holds import hole_of
from reviewer.parts.joint_pull import washer_holds
from reviewer.parts.root_bolts import washer_of
from reviewer.parts.row import Count, Measure, Row, Stock
from reviewer.parts.sheet_rows import THICKNESS
from reviewer.stock.materials import Material

NOT_MOUNTED = " (not its fastening, of which nothing is told)"


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
    """The least of several capacities [N], which it is, and among which it was looked for."""

    load: Number
    name: Any
    among: str


def weakest(bearing: Number, bolt: Number, track: Number, pull_through: Number | None) -> Weakest:
    """What a roller carries: the least of bearing, bolt, track and what holds it to its carrier.

    Statics; a chain is as strong as its weakest link.
    """
    names = ["bearing", "bolt", "track"]
    capacities = [bearing, bolt, track]
    if pull_through is not None:
        names.append("pull-through")
        capacities.append(pull_through)
    told = ", ".join(names) if pull_through is not None else ", ".join(names) + NOT_MOUNTED
    stacked = np.stack(np.broadcast_arrays(*capacities))
    least = np.argmin(stacked, axis=0)  # an unknown one comes first, and stays unknown
    return Weakest(np.min(stacked, axis=0), np.array(names)[least], told)


def mount_holds(
    material: Material,
    thickness: Number,
    bolts: int,
    washer: Number,
    hole: Number,
    cases: Any,
    service_class: int,
) -> Number:
    """Load at which the washers of a hold-down's fastening crush or go through what carries it.

    EN 1995-1-1:2004, 8.5.2(2), and statics of shear round the washer, k_mod / (gamma_M gamma_Q).
    """
    return bolts * washer_holds(material, thickness, washer, hole, cases, service_class)


MOUNT = (
    Row(
        "hold_down.mount.material",
        "",
        "what a hold-down's bracket is bolted to",
        Stock("materials", example="birch plywood"),
    ),
    Row("hold_down.mount.thickness", "m", "how thick that is", THICKNESS),
    Row(
        "hold_down.mount.bolt",
        "",
        "bolts of a hold-down's bracket",
        Stock("fasteners", example="M6x40"),
    ),
    Row("hold_down.mount.count", "", "such bolts to each bracket", Count(default=1)),
    Row(
        "hold_down.mount.washer",
        "m",
        "outer diameter of their washers",
        Measure(above=0.0),
        formula=washer_of,
        needs={"bolt": "hold_down.mount.bolt"},
    ),
    Row(
        "hold_down.mount.hole",
        "m",
        "diameter of their holes",
        Measure(above=0.0),
        formula=hole_of,
        needs={"bolt": "hold_down.mount.bolt"},
    ),
)
HOLD = (
    *MOUNT,
    Row(
        "hold_down.pull_through",
        "N",
        "load that pulls a hold-down's fastening out of what carries it",
        Measure(above=0.0, example="900 N"),
        formula=mount_holds,
        needs={
            "material": "hold_down.mount.material",
            "thickness": "hold_down.mount.thickness",
            "bolts": "hold_down.mount.count",
            "washer": "hold_down.mount.washer",
            "hole": "hold_down.mount.hole",
            "cases": "design.cases",
            "service_class": "design.service_class",
        },
        governs="least",
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
    Row(
        "hold_down.among",
        "text",
        "what that was looked for among",
        needs={"solution": "hold_down.weakest"},
        take="among",
    ),
)
