"""The base: what stands on the floor, on feet around its middle or at its corners."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.resultant import Action, Overturning
from reviewer.mechanics.stability import Actions, stability_ratio
from reviewer.mechanics.supports import Supports, circle
from reviewer.mechanics.worst_direction import worst_direction
from reviewer.parts.carried import CARRIED
from reviewer.parts.figures import figure
from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.row import Count, Measure, Row

FOOT_STIFFNESS = 1e6  # N/m; feet are alike, so that their shares do not depend on it


class Standing(NamedTuple):
    """Feet under the base: loads [N], and moments about the worst line between two feet [N m]."""

    peak: Number
    least: Number
    moment: Number
    restoring_moment: Number


def feet_of(
    count: int | None, diameter: Any, start: Any, length: Any, width: Any
) -> Supports | None:
    """Where the feet stand: around a circle, or at the corners of a rectangle."""
    if count is not None and diameter is not None:
        x, y = circle(count, diameter / 2, start)
        return Supports(x, y, FOOT_STIFFNESS)
    if length is None or width is None:
        return None
    signs_x, signs_y = np.array([1.0, -1.0, -1.0, 1.0]), np.array([1.0, 1.0, -1.0, -1.0])
    return Supports(length[..., None] / 2 * signs_x, width[..., None] / 2 * signs_y, FOOT_STIFFNESS)


def standing_on(feet: Supports, action: Action, x: Number, y: Number) -> Standing:
    """Foot loads and safety against tipping, for the worst direction of what can turn."""
    weight = action.weight.about(x, y, 0.0)
    loads = action.loads.about(x, y, 0.0)
    total = action.total.about(x, y, 0.0)
    ratio = stability_ratio(feet, actions(weight), actions(loads))
    found = worst_direction(feet, total.force, total.moment_x, total.moment_y, total.moment_round)
    return Standing(found.peak[0], found.least[0], ratio.moment, ratio.restoring_moment)


def actions(overturning: Overturning) -> Actions:
    """A resultant at a joint as the solver takes it."""
    return Actions(*overturning)


STANDS = {"solution": "standing"}
TIPS = "the loads tip it over"
FEET = ("count", "circle", "from", "length", "width")

BASE = Kind(
    name="base",
    says="what stands on the floor",
    rows=(
        *tree(several=False),
        figure("base", "height", *(f"feet.{key}" for key in FEET)),
        *single(),
        Row(
            "height",
            "m",
            "height of its top above the floor",
            Measure(at_least=0.0, example="620 mm"),
        ),
        CARRIED,
        Row("feet.count", "", "feet, evenly spaced on a circle", Count(at_least=3, at_most=100)),
        Row(
            "feet.circle",
            "m",
            "diameter of the circle of the feet",
            Measure(above=0.0, example="900 mm"),
        ),
        Row("feet.from", "rad", "azimuth of the first foot", Measure(default="0 deg")),
        Row(
            "feet.length",
            "m",
            "distance between feet at the corners of a rectangle",
            Measure(above=0.0),
        ),
        Row(
            "feet.width",
            "m",
            "distance between feet at the corners, the other way",
            Measure(above=0.0),
        ),
        Row(
            "feet.places",
            "",
            "where the feet stand",
            formula=feet_of,
            needs={
                "count": "feet.count?",
                "diameter": "feet.circle?",
                "start": "feet.from",
                "length": "feet.length?",
                "width": "feet.width?",
            },
            because="gives neither a count and circle nor a length and width of the feet",
        ),
        Row(
            "standing",
            "",
            "the base on its feet",
            formula=standing_on,
            needs={"feet": "feet.places", "action": "action", "x": "place.x", "y": "place.y"},
        ),
        Row(
            "feet.peak_load",
            "N",
            "load on the busiest foot",
            needs=STANDS,
            take="peak",
            because=TIPS,
        ),
        Row(
            "feet.least_load",
            "N",
            "load on the idlest foot",
            needs=STANDS,
            take="least",
            governs="least",
            because=TIPS,
        ),
        Row(
            "tipping.moment",
            "N m",
            "moment of the loads about the line through two feet",
            needs=STANDS,
            take="moment",
        ),
        Row(
            "tipping.restoring_moment",
            "N m",
            "moment of own weight that holds against it",
            needs=STANDS,
            take="restoring_moment",
            governs="least",
        ),
    ),
)
