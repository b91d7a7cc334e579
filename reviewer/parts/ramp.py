"""A ramp: what a follower climbs when it is pushed along, and where it comes to rest."""

from reviewer.mechanics.formula import Number
from reviewer.parts.figures import LIES, figure
from reviewer.parts.from_stock import of_bearing
from reviewer.parts.groups import same, single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.ramp_forces import crest_capacity, forces
from reviewer.parts.ramp_path import end_of, height_there, path_of, steepest_angle, top_of
from reviewer.parts.row import Choice, Count, Measure, Points, Row, Stock
from reviewer.parts.rubbing import rubbing
from reviewer.parts.skirt import level_push

PROFILE = Points(
    (
        Row("travel", "m", "place along the travel", Measure(example="120 mm")),
        Row("height", "m", "height of the follower there", Measure(example="40 mm")),
    )
)


def radius_of(outer_diameter: Number) -> Number:
    """Radius of the roller.

    Geometry.
    """
    return outer_diameter / 2


def _crest() -> tuple[Row, ...]:
    """The edge over which a roller turns."""
    return (
        Row("material", "", "material of its face", Stock("materials", example="birch plywood")),
        Row("crest.radius", "m", "radius of the edge over which it turns", Measure(above=0.0)),
        Row(
            "crest.load",
            "N",
            "load of one roller on that edge",
            formula=lambda load, followers: load / followers,
            needs={"load": "load", "followers": "followers"},
        ),
        Row(
            "crest.capacity",
            "N",
            "load at which a roller dents that edge",
            formula=crest_capacity,
            needs={
                "material": "material",
                "edge_radius": "crest.radius",
                "radius": "roller.radius",
                "width": "roller.width",
            },
            governs="least",
        ),
    )


RAMP = Kind(
    name="ramp",
    says="a slope that a follower climbs when it is pushed along",
    rows=(
        *tree(),
        LIES,
        figure("ramp", "profile", "rise", "run", "flat", "azimuth"),
        *single(),
        Row("profile", "", "points of the follower's path, the first at its foot", PROFILE),
        Row("rise", "m", "height of a straight ramp", Measure(above=0.0, example="40 mm")),
        Row("run", "m", "length of a straight ramp along the travel", Measure(above=0.0)),
        Row(
            "flat",
            "m",
            "level stretch behind a straight ramp",
            Measure(default="0 mm", at_least=0.0),
        ),
        Row(
            "path",
            "",
            "points of the follower's path",
            formula=path_of,
            needs={"profile": "profile?", "rise": "rise?", "run": "run?", "flat": "flat"},
        ),
        Row("travel", "m", "length of the whole travel", formula=end_of, needs={"path": "path"}),
        Row(
            "stands",
            "m",
            "place along the travel at which the follower stands",
            Measure(at_least=0.0, example="120 mm"),
            formula=same,
            needs={"place": "travel"},
        ),
        Row(
            "height",
            "m",
            "height of the follower where it stands",
            formula=height_there,
            needs={"path": "path", "at": "stands"},
        ),
        Row(
            "reached",
            "m",
            "greatest height that the follower reaches",
            formula=top_of,
            needs={"path": "path"},
            governs="least",
        ),
        Row("lift", "m", "height that it must reach", Measure(above=0.0)),
        Row(
            "steepest",
            "rad",
            "angle of the steepest part to the travel",
            formula=steepest_angle,
            needs={"path": "path"},
        ),
        Row("follower", "", "how it moves", Choice(("rolls", "slides"), default="rolls")),
        Row("followers", "", "how many share the load", Count(default=1, at_most=100)),
        Row("bearing", "", "bearing that rolls on it", Stock("bearings", example='"6001"')),
        Row(
            "roller.radius",
            "m",
            "radius of the roller",
            Measure(above=0.0, example="14 mm"),
            formula=radius_of,
            needs={"outer_diameter": "roller.diameter"},
        ),
        Row(
            "roller.diameter",
            "m",
            "outer diameter of the bearing",
            formula=of_bearing("outer", "Outer diameter of the bearing"),
            needs={"bearing": "bearing"},
        ),
        Row(
            "roller.width",
            "m",
            "width of the roller on the ramp",
            Measure(above=0.0),
            formula=of_bearing("width", "Width of the bearing"),
            needs={"bearing": "bearing"},
        ),
        Row(
            "rolling_resistance",
            "1",
            "rolling resistance over the load, bearing included",
            Measure(default="0.03", at_least=0.0, below=1.0),
        ),
        *rubbing(),
        Row(
            "guide_friction",
            "1",
            "friction in the guide of what is moved, under the side force of the ramp",
            Measure(at_least=0.0, at_most=3.0),
            formula=same,
            needs={"place": "friction.largest"},
        ),
        Row(
            "load",
            "N",
            "load that stands on it across the travel",
            Measure(at_least=0.0, example="400 N"),
            formula=same,
            needs={"place": "bears.force"},
        ),
        Row(
            "closes_with",
            "N",
            "force with which what it lifts closes a gap: all of its weight",
            formula=same,
            needs={"place": "load"},
        ),
        Row(
            "push",
            "N",
            "level force that may push the follower where it stands",
            Measure(at_least=0.0),
            formula=level_push,
            needs={"action": "action"},
        ),
        Row(
            "dip",
            "m",
            "depth of a dip with edges in which it rests",
            Measure(default="0 mm", at_least=0.0),
        ),
        Row(
            "step",
            "m",
            "edge that it must climb at the foot",
            Measure(default="0 mm", at_least=0.0),
        ),
        Row(
            "stop_force",
            "N",
            "level force that a stop holds where it stands",
            Measure(default="0 N", at_least=0.0),
        ),
        *forces(),
        *_crest(),
    ),
)
