"""Groups of rows that several kinds share."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.weight import weight
from reviewer.parts.assembling import assembling
from reviewer.parts.row import Count, Measure, PartName, Row, Text


def same(place: Any) -> Any:
    """Taken over as it is."""
    return place


def placed(at: Any, below: Any, moved: Any) -> Any:
    """Where it stands: its own position, and its travels', beside the middle of what carries it."""
    return below + at + moved


class Middle(NamedTuple):
    """Plan position of the common centre of mass of like parts around an axis [m]."""

    x: Any
    y: Any


def middle_of_array(place_x: Any, place_y: Any, radius: Any, count: int, start: Any) -> Middle:
    """Centre of mass of like parts; of several, evenly spaced, the axis itself.

    Geometry.
    """
    if count > 1:
        return Middle(place_x, place_y)
    return Middle(place_x + radius * np.cos(start), place_y + radius * np.sin(start))


OFF_THEM = "is unknown because what lies on them tips off, or is neither one nor as many as they"

PLACE = (
    Row("at.x", "m", "plan position from its carrier's middle", Measure(default="0 mm")),
    Row("at.y", "m", "plan position from its carrier's middle", Measure(default="0 mm")),
    Row("below.x", "m", "plan position of the middle of all that carries it", built=True),
    Row("below.y", "m", "plan position of the middle of all that carries it", built=True),
    Row("moved.x", "m", "how far its travels have moved it in plan", built=True),
    Row("moved.y", "m", "how far its travels have moved it in plan", built=True),
    Row("lifted", "m", "how far its travels, and what carries it, have lifted it", built=True),
    Row(
        "place.x",
        "m",
        "plan position from the axis of the design",
        formula=placed,
        needs={"at": "at.x", "below": "below.x", "moved": "moved.x"},
    ),
    Row(
        "place.y",
        "m",
        "plan position from the axis of the design",
        formula=placed,
        needs={"at": "at.y", "below": "below.y", "moved": "moved.y"},
    ),
)


def _top_of_carrier(level: Any, height: Any) -> Any:
    """The floor where there is no carrier; a carrier of unknown height is taken as flat."""
    if level is None:
        return 0.0
    return level if height is None else level + height


LEVEL = (
    Row(
        "level",
        "m",
        "height of its underside above the floor",
        Measure(at_least=0.0, example="620 mm"),
        formula=_top_of_carrier,
        needs={"level": "carrier.level?", "height": "carrier.height?"},
    ),
)

LOAD_PATH = (
    Row("whole", "", "own weight and all that comes down on it in full", built=True),
    Row("shares", "", "what each of several carriers gets", built=True),
    Row("action", "", "what it bears and passes on", built=True),
    Row("total", "", "own weight and loads together", needs={"solution": "action"}, take="total"),
    Row(
        "bears.force",
        "N",
        "vertical force that it passes on, own weight included",
        needs={"solution": "total"},
        take="force",
        because="is unknown because what it shares with others tips off them",
    ),
    Row("reach.radius", "m", "how far it, or anything that it carries, reaches", built=True),
)


def tree(*, several: bool = True) -> tuple[Row, ...]:
    """What every part that carries load has: its carrier, place, weight and what it bears."""
    return (
        Row("carried_by", "", "the part, or the parts, that carry it", PartName(several=several)),
        Row("fixed", "", "fields that a remedy must leave as they are", Text()),
        *PLACE,
        *LEVEL,
        *LOAD_PATH,
        *assembling(),
    )


def single(mass_from: Any = None, needs: dict[str, str] | None = None) -> tuple[Row, ...]:
    """Weight of a part that is there once, with its centre on its place."""
    return (
        Row(
            "mass",
            "kg",
            "mass",
            Measure(at_least=0.0, example="24 kg"),
            formula=mass_from,
            needs=needs or {},
        ),
        Row("count", "", "how many there are", formula=lambda: 1),
        Row("weight", "N", "own weight", formula=weight, needs={"mass": "mass", "count": "count"}),
        Row("centre.x", "m", "plan position of its mass", formula=same, needs={"place": "place.x"}),
        Row("centre.y", "m", "plan position of its mass", formula=same, needs={"place": "place.y"}),
        Row("centre.radius", "m", "radius at which its mass stands", formula=lambda: 0.0),
    )


def array(mass_from: Any, needs: dict[str, str]) -> tuple[Row, ...]:
    """Weight of like parts evenly spaced around the axis; `centre.radius` is the kind's own."""
    around = {"place_x": "place.x", "place_y": "place.y", "radius": "centre.radius"}
    return (
        Row("count", "", "how many there are, evenly spaced around the axis", Count(default=1)),
        Row("from", "rad", "azimuth of the first one", Measure(default="0 deg")),
        Row(
            "mass",
            "kg",
            "mass of one",
            Measure(at_least=0.0, example="1.2 kg"),
            formula=mass_from,
            needs=needs,
        ),
        Row(
            "weight",
            "N",
            "own weight of all",
            formula=weight,
            needs={"mass": "mass", "count": "count"},
        ),
        Row(
            "middle",
            "",
            "where the mass of all stands",
            formula=middle_of_array,
            needs={**around, "count": "count", "start": "from"},
        ),
        Row(
            "centre.x",
            "m",
            "plan position of the mass of all",
            needs={"solution": "middle"},
            take="x",
        ),
        Row(
            "centre.y",
            "m",
            "plan position of the mass of all",
            needs={"solution": "middle"},
            take="y",
        ),
        Row("member", "", "the most loaded one, with what it carries", built=True),
        Row(
            "member.force",
            "N",
            "greatest force on one of them, own weight included",
            needs={"solution": "member"},
            take="force",
            because=OFF_THEM,
        ),
        Row(
            "member.moment",
            "N m",
            "moment of that force about the axis of the design",
            needs={"solution": "member"},
            take="moment",
            because=OFF_THEM,
        ),
    )
