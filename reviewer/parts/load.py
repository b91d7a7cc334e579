"""A load: a force on a part, at a place, from a direction."""

from typing import Any

import numpy as np

from reviewer.mechanics.placing import DIRECTIONS
from reviewer.mechanics.weight import weight
from reviewer.mechanics.wood_factors import DURATIONS
from reviewer.parts.groups import LOAD_PATH
from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Flag, Measure, PartName, Row


def radius_of_load(
    word: str, radius: Any, x: Any, y: Any, rim: Any, inset: Any, middle: Any
) -> Any:
    """Distance of the load from the middle of the part on which it stands."""
    if radius is not None:
        return radius
    if x is not None or y is not None:
        return np.hypot(0.0 if x is None else x, 0.0 if y is None else y)
    if word == "rim":
        return np.nan if rim is None else rim - inset
    return 0.0 if middle is None else middle


def azimuth_of_load(azimuth: Any, x: Any, y: Any) -> Any:
    """Azimuth of the load, from its plan position where that is given."""
    if x is None and y is None:
        return azimuth
    return np.arctan2(0.0 if y is None else y, 0.0 if x is None else x)


def level_of_load(level: Any, height: Any, lifted: Any) -> Any:
    """Height of the upper face of what it stands on, lifted as far as that is."""
    top = level if height is None else level + height
    return top if lifted is None else top + lifted


LASTING = dict(zip(DURATIONS, (1.0, 0.8, 0.3, 0.0, 0.0), strict=True))


def lasting_share_of_load(duration: str) -> Any:
    """Share of a load that lies there on average: under it wood and plastic creep.

    EN 1990, table A1.1, psi_2: storage 0.8, dwellings 0.3, from memory; that the class of duration
    tells which is common practice.
    """
    return LASTING[duration]


def stands_anywhere(word: str) -> bool:
    """Whether a load that does not say so can stand at any azimuth: at a rim it can."""
    return word == "rim"


LOAD = Kind(
    name="load",
    says="a force on a part",
    rows=(
        Row(
            "force",
            "N",
            "size of the force",
            Measure(at_least=0.0, example="500 N"),
            formula=weight,
            needs={"mass": "mass"},
        ),
        Row("mass", "kg", "mass whose weight is the force", Measure(at_least=0.0, example="60 kg")),
        Row("on", "", "the part on which it stands", PartName()),
        Row("over", "", "the part over which it is spread", PartName()),
        Row("at", "", "where on the part", Choice(("rim", "centre"), default="centre")),
        Row("at.radius", "m", "distance from the part's middle", Measure(at_least=0.0)),
        Row("at.azimuth", "rad", "azimuth of the place", Measure(default="0 deg")),
        Row("at.x", "m", "plan position from the part's middle", Measure()),
        Row("at.y", "m", "plan position from the part's middle", Measure()),
        Row(
            "duration",
            "",
            "how long it lies there at a time: over 10 years, over 6 months, over a week, less",
            Choice(DURATIONS, default="medium-term"),
        ),
        Row(
            "lasting",
            "1",
            "share of it that lies there on average over the years",
            Measure(at_least=0.0, at_most=1.0),
            formula=lasting_share_of_load,
            needs={"duration": "duration"},
        ),
        Row("inset", "m", "how far inside the rim", Measure(default="0 mm", at_least=0.0)),
        Row(
            "all_round",
            "",
            "whether it can stand at any azimuth; so it can at a rim, unless an azimuth is given",
            Flag(default=None),
            formula=stands_anywhere,
            needs={"word": "at"},
        ),
        Row("direction", "", "which way it acts", Choice(tuple(DIRECTIONS), default="down")),
        Row(
            "level",
            "m",
            "height above the floor at which a level force acts",
            Measure(at_least=0.0, example="730 mm"),
            formula=level_of_load,
            needs={
                "level": "carrier.level",
                "height": "carrier.height?",
                "lifted": "carrier.lifted?",
            },
        ),
        Row(
            "radius",
            "m",
            "distance of the load from the middle of its part",
            formula=radius_of_load,
            needs={
                "word": "at",
                "radius": "at.radius?",
                "x": "at.x?",
                "y": "at.y?",
                "rim": "carrier.rim.radius?",
                "inset": "inset",
                "middle": "carrier.centre.radius?",
            },
            because="is at the rim of a part that has none",
        ),
        Row(
            "azimuth",
            "rad",
            "azimuth of the load",
            formula=azimuth_of_load,
            needs={"azimuth": "at.azimuth", "x": "at.x?", "y": "at.y?"},
        ),
        Row(
            "half_radius",
            "m",
            "distance of the middle of one half of the area that it covers",
            formula=lambda half: half,
            needs={"half": "carrier.half.radius"},
        ),
        Row(
            "place.x", "m", "the part's middle", formula=lambda x: x, needs={"x": "carrier.place.x"}
        ),
        Row(
            "place.y", "m", "the part's middle", formula=lambda y: y, needs={"y": "carrier.place.y"}
        ),
        Row("member", "", "what one of several like parts gets of it", built=True),
        *LOAD_PATH[:3],
    ),
)
