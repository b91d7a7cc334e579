"""The forces between the plate of a slewing ring and its rollers, as quantities."""

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.parts.ring_bending import bend_ring, with_bending
from reviewer.parts.ring_plate import plate_shape
from reviewer.parts.ring_solution import solve_ring, stand_on_rollers
from reviewer.parts.row import Row

SOLVED = {"solution": "rollers"}
TURNS_OVER = (
    "is unknown because the load leaves the circle of the rollers and nothing holds the far side"
    " down: the plate turns over"
)


def concentration(peak: Number, rigid: Number) -> Number:
    """Busiest roller of the plate that bends over that of a rigid one.

    Definition.
    """
    return peak / rigid


def lift_off(sink: Number, tilt: Number, circle: Number) -> Number:
    """How far the plate rises above the roller that is farthest from the load; never below zero.

    Geometry of a flat plate; the plate's own bending is left out.

    Notes
    -----
    tilt D / 2 - sink.
    """
    rises = tilt * circle / 2 - sink
    return np.where(np.isnan(rises), np.nan, np.maximum(rises, 0.0))


AT = {"action": "action", "x": "place.x", "y": "place.y", "level": "level"}

SOLUTION = (
    Row(
        "standing",
        "",
        "what the plate carries, on its rollers as springs",
        formula=stand_on_rollers,
        needs={
            **AT,
            **{f"carry_{key}": f"carry.{key}" for key in ("count", "circle", "stiffness", "from")},
            **{
                f"hold_{key}": f"hold_down.{key}?"
                for key in ("count", "circle", "stiffness", "from", "gap", "preload")
            },
        },
    ),
    Row(
        "rollers_rigid",
        "",
        "the forces between a rigid plate and its rollers, found for the worst direction",
        formula=solve_ring,
        searches=True,
        needs={"standing": "standing", **AT},
    ),
    Row("plate.entry", "", "where the loads come into the plate", built=True),
    Row(
        "plate.shape",
        "",
        "how the plate gives way between rollers and loads, for a rigidity of one",
        formula=plate_shape,
        needs={
            "radius": "plate.radius",
            "opening": "plate.opening_radius",
            "carry": "carry.circle",
            "hold": "hold_down.circle?",
            "hold_count": "hold_down.count?",
            "entry": "plate.entry",
        },
    ),
    Row(
        "rollers_bent",
        "",
        "the forces between a plate that bends and its rollers, found for the worst direction",
        formula=bend_ring,
        searches=True,
        needs={
            "standing": "standing",
            "entry": "plate.entry",
            "shape": "plate.shape",
            "rigidity": "plate.rigidity?",
            "reach": "reach.radius",
            "rigid": "plate.rigid",
        },
    ),
    Row(
        "rollers",
        "",
        "the forces between plate and rollers, the plate's own bending in them where it is known",
        formula=with_bending,
        needs={"rigid": "rollers_rigid", "bent": "rollers_bent?"},
    ),
    Row(
        "rigid.peak_load",
        "N",
        "load on the busiest carrying roller if the plate were rigid",
        needs={"solution": "rollers_rigid"},
        take="carry_peak",
        because=TURNS_OVER,
    ),
    Row(
        "rigid.sink",
        "m",
        "how far the middle would sink on its rollers if the plate were rigid",
        needs={"solution": "rollers_rigid"},
        take="sink",
        because=TURNS_OVER,
    ),
    Row(
        "rigid.tilt",
        "rad",
        "how far the plate would tilt on its rollers if it were rigid",
        needs={"solution": "rollers_rigid"},
        take="tilt",
        because=TURNS_OVER,
    ),
    Row(
        "carry.concentration",
        "1",
        "load on the busiest roller over what it would be if the plate were rigid",
        formula=concentration,
        needs={"peak": "carry.peak_load", "rigid": "rigid.peak_load"},
    ),
    Row(
        "carry.axial_load",
        "N",
        "vertical force on the ring, own weight included",
        needs=SOLVED,
        take="axial_load",
    ),
    Row("carry.moment", "N m", "overturning moment on the ring", needs=SOLVED, take="moment"),
    Row(
        "carry.peak_load",
        "N",
        "load on the busiest carrying roller",
        needs=SOLVED,
        take="carry_peak",
        because=TURNS_OVER,
    ),
    Row(
        "carry.least_load",
        "N",
        "load on the idlest carrying roller",
        needs=SOLVED,
        take="carry_least",
        governs="least",
        because=TURNS_OVER,
    ),
    Row(
        "carry.peak_direction",
        "rad",
        "azimuth of the load at which the busiest roller is busiest",
        needs=SOLVED,
        take="direction",
        because=TURNS_OVER,
    ),
    Row(
        "hold_down.peak_load",
        "N",
        "load on the busiest hold-down",
        needs=SOLVED,
        take="hold_peak",
        because=TURNS_OVER,
    ),
    Row(
        "uplift.force",
        "N",
        "sum of the forces on the hold-downs",
        needs=SOLVED,
        take="uplift",
        because=TURNS_OVER,
    ),
    Row(
        "sink",
        "m",
        "how far the plate's edge as a whole sinks on its rollers",
        needs=SOLVED,
        take="sink",
        because=TURNS_OVER,
    ),
    Row(
        "tilt",
        "rad",
        "how far the plate tilts on its rollers",
        needs=SOLVED,
        take="tilt",
        because=TURNS_OVER,
    ),
    Row(
        "lift",
        "m",
        "how far the plate lifts off the rollers opposite the load",
        formula=lift_off,
        needs={"sink": "sink", "tilt": "tilt", "circle": "carry.circle"},
        read="at the rim opposite the load, from a beam on what carries it, as it rises",
    ),
    Row(
        "rolling_over.moment",
        "N m",
        "moment that would turn the plate over the rollers",
        needs=SOLVED,
        take="turning_over",
    ),
    Row(
        "rolling_over.restoring_moment",
        "N m",
        "moment of its own weight against that",
        needs=SOLVED,
        take="restoring",
    ),
)
