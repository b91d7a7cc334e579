"""The bolted root of an arm: its bolts and washers, how far it turns, the play of its holes."""

from reviewer.parts.allowed import stated
from reviewer.parts.clamp import CLASSES
from reviewer.parts.root_bolts import (
    bolt_bears,
    bolt_tension,
    clearance_hole_of,
    first_known,
    root_play,
    sinks_by_turning,
    spacing_in_seat,
    stiffness_of_root,
    washer_bears,
    washer_of,
    words_for,
)
from reviewer.parts.row import Choice, Count, Flag, Measure, Row, Stock

SERIES = ("fine", "medium", "coarse")


def _bolts() -> tuple[Row, ...]:
    bolt = {"bolt": "root.bolt"}
    return (
        Row(
            "root.bolt",
            "",
            "bolts in a row along the arm that hold it",
            Stock("fasteners", example="M8x60"),
        ),
        Row("root.bolts", "", "how many in the row", Count(default=2, at_most=20)),
        Row("root.bolt_class", "", "property class of the bolts", Choice(CLASSES, default="8.8")),
        Row(
            "root.edge",
            "m",
            "from the edge of what carries it to the first bolt",
            Measure(at_least=0.0, default="25 mm"),
        ),
        Row(
            "root.spacing",
            "m",
            "distance between the bolts",
            Measure(above=0.0),
            spacing_in_seat,
            {"seat": "seat", "edge": "root.edge", "count": "root.bolts"},
        ),
        Row(
            "root.holes",
            "",
            "series of the clearance holes, ISO 273",
            Choice(SERIES, default="medium"),
        ),
        Row("root.tapped", "", "whether the holes in one of the two parts are tapped", Flag()),
        Row(
            "root.hole",
            "m",
            "diameter of the clearance holes",
            Measure(above=0.0),
            clearance_hole_of,
            {**bolt, "series": "root.holes"},
        ),
        Row(
            "root.washer",
            "m",
            "outer diameter of the washers on what carries it",
            Measure(above=0.0, example="24 mm"),
            washer_of,
            bolt,
        ),
        Row(
            "root.material",
            "",
            "material of what carries it",
            formula=first_known,
            needs={"plate": "carrier.plate.material?", "panel": "carrier.material?"},
        ),
        Row(
            "root.thickness",
            "m",
            "thickness of what carries it",
            Measure(above=0.0),
            first_known,
            {"plate": "carrier.plate.thickness?", "panel": "carrier.thickness?"},
        ),
    )


def _forces() -> tuple[Row, ...]:
    row = {"edge": "root.edge", "spacing": "root.spacing", "count": "root.bolts"}
    ring = {"washer": "root.washer", "hole": "root.hole"}
    return (
        Row(
            "root.bolt_force",
            "N",
            "tension in the bolt farthest inward",
            formula=bolt_tension,
            needs={"moment": "root_moment", **row},
        ),
        Row(
            "root.bolt_capacity",
            "N",
            "tension that one bolt bears",
            formula=bolt_bears,
            needs={"bolt": "root.bolt", "property_class": "root.bolt_class"},
            because="has no such property class at this thread",
            governs="least",
        ),
        Row(
            "root.washer_capacity",
            "N",
            "force of a bolt that its washer can press on the plate",
            formula=washer_bears,
            governs="least",
            needs={
                "plate": "root.material",
                **ring,
                "cases": "design.cases",
                "service_class": "service_class",
            },
        ),
        Row(
            "root.stiffness",
            "N m/rad",
            "stiffness of the root's joint against turning",
            Measure(above=0.0, example="20 kN m/rad"),
            stiffness_of_root,
            {"plate": "root.material?", "thickness": "root.thickness?", **ring, **row},
        ),
        Row(
            "root.sinks",
            "m",
            "how far the tip sinks because the root's joint turns",
            formula=sinks_by_turning,
            needs={"moment": "root_moment", "stiffness": "root.stiffness?", "reach": "reach"},
        ),
        Row(
            "root.taken",
            "text",
            "how the joint at the root is taken",
            formula=words_for,
            needs={"stiffness": "root.stiffness?"},
        ),
        Row(
            "root.play",
            "rad",
            "angle by which it can stand out of line in its holes",
            formula=root_play,
            needs={"bolt": "root.bolt", "hole": "root.hole", "tapped": "root.tapped", **row},
        ),
        Row(
            "root.tip_play",
            "m",
            "how far its tip can stand out of line, to each side",
            formula=lambda play, reach: play * reach,
            needs={"play": "root.play", "reach": "reach"},
            read="at the tip of an arm, as a hand moves it to both sides; half of the way",
        ),
        Row(
            "root.allowed_tip_play",
            "m",
            "how far its tip may stand out of line",
            Measure(above=0.0),
            stated,
            {"limit": "limit.tip_play"},
        ),
    )


def root() -> tuple[Row, ...]:
    """The bolts at the root of an arm, and what the joint asks and gives."""
    return (*_bolts(), *_forces())
