"""Rows of a bolted joint that say what it bears along its bolts or screws."""

from reviewer.mechanics.formula import Number
from reviewer.parts.clamp_grip import bolt_preload, softer_bears
from reviewer.parts.joint_pull import (
    engaged,
    engagement_asked,
    heads_hold,
    insert_holds,
    least_length,
    pressed_by,
    pull_borne,
    screws_hold,
    washer_holds,
)
from reviewer.parts.root_bolts import clearance_hole_of, washer_of
from reviewer.parts.row import Measure, Row
from reviewer.stock.fasteners import Fastener

BOLT = {"bolt": "bolt", "property_class": "bolt_class"}
UNDER = {"washer": "washer", "hole": "hole"}
WHERE = {"cases": "design.cases", "service_class": "service_class"}


def hole_of(bolt: Fastener) -> Number:
    """Diameter of the medium clearance hole.

    ISO 273, in the stock row of the thread.
    """
    return clearance_hole_of(bolt, "medium")


def _washer_holds(member: str) -> Row:
    return Row(
        f"{member}.washer_holds",
        "N",
        f"pull of one bolt that the {member} member bears under a washer",
        formula=washer_holds,
        needs={
            "material": f"{member}.material",
            "thickness": f"{member}.thickness",
            **UNDER,
            **WHERE,
        },
        governs="least",
    )


def pulled() -> tuple[Row, ...]:
    """Washers, the pull that the bolts bear, and the pressure of their preload."""
    return (
        Row(
            "washer",
            "m",
            "outer diameter of the washers",
            Measure(above=0.0, example="24 mm"),
            formula=washer_of,
            needs={"bolt": "bolt"},
        ),
        Row(
            "hole",
            "m",
            "diameter of the holes",
            Measure(above=0.0),
            formula=hole_of,
            needs={"bolt": "bolt"},
        ),
        Row("pull", "N", "pull along all bolts or screws together", Measure(at_least=0.0)),
        _washer_holds("first"),
        _washer_holds("second"),
        Row(
            "pull_capacity",
            "N",
            "pull that the bolts and the wood under their washers bear",
            formula=pull_borne,
            needs={
                **BOLT,
                "count": "bolt_count",
                "far_end": "far_end",
                "under_head": "first.washer_holds",
                "under_nut": "second.washer_holds",
            },
            governs="least",
        ),
        Row(
            "tightening",
            "N m",
            "torque to which each bolt is tightened",
            Measure(above=0.0, example="10 N m"),
        ),
        Row(
            "preload",
            "N",
            "preload of one bolt",
            formula=bolt_preload,
            needs={**BOLT, "torque": "tightening?"},
            because="has no such property class at this thread",
        ),
        Row(
            "preload_pressure",
            "Pa",
            "mean pressure of the preload under a washer",
            formula=pressed_by,
            needs={"preload": "preload", **UNDER},
        ),
        Row(
            "allowed_pressure",
            "Pa",
            "pressure that the softer member bears without a dent",
            Measure(above=0.0),
            formula=softer_bears,
            needs={"hub": "first.material", "shaft": "second.material"},
            governs="least",
        ),
    )


def far_end() -> tuple[Row, ...]:
    """What holds the bolt's far end: a nut, a thread in metal, or an insert."""
    through = {"first": "first.thickness", "second": "second.thickness"}
    reach = {"far_end": "far_end", "bolt": "bolt", **through}
    return (
        Row(
            "least_length",
            "m",
            "length of bolt that goes through, with washers, nut and the threads beyond it",
            formula=least_length,
            needs={**reach, "beyond": "limit.threads_beyond_nut"},
        ),
        Row(
            "engagement",
            "m",
            "length of thread in the tapped member",
            Measure(at_least=0.0),
            formula=engaged,
            needs=reach,
            because="is the length of thread in a tapped member, and this one is not tapped",
        ),
        Row(
            "least_engagement",
            "m",
            "length of thread at which the bolt breaks before the tapped one strips",
            formula=engagement_asked,
            needs={**BOLT, "tapped": "second.material"},
            because="is not known of a thread cut in wood",
        ),
        Row("insert.diameter", "m", "outer diameter of the insert's thread", Measure(above=0.0)),
        Row("insert.depth", "m", "length of the insert's thread in the wood", Measure(above=0.0)),
        Row(
            "insert.capacity",
            "N",
            "pull that the inserts bear: an estimate",
            formula=insert_holds,
            needs={
                "gravity": "second.specific_gravity",
                "diameter": "insert.diameter",
                "depth": "insert.depth",
                "count": "bolt_count",
                "margin": "limit.insert_margin",
            },
            governs="least",
        ),
    )


def screws() -> tuple[Row, ...]:
    """Screws instead of bolts: their threads in the second member, their heads in the first."""
    return (
        Row("screw.diameter", "m", "diameter over the screw's thread", Measure(above=0.0)),
        Row(
            "screw.thread",
            "m",
            "length of thread in the second member, its tip left out",
            Measure(above=0.0),
        ),
        Row("screw.head", "m", "diameter of the screw's head", Measure(above=0.0)),
        Row(
            "screw.withdrawal",
            "N",
            "pull against which the screws' threads hold",
            formula=screws_hold,
            needs={
                "material": "second.material",
                "gravity": "second.specific_gravity",
                "diameter": "screw.diameter",
                "thread": "screw.thread",
                "nds_duration": "nds_duration",
                "modification": "modification",
                "count": "bolt_count",
            },
            because="is known from six diameters of thread on only, for screws of 6 to 12 mm",
            governs="least",
        ),
        Row(
            "screw.pull_through",
            "N",
            "pull at which the screws' heads go through the first member",
            formula=heads_hold,
            needs={
                "gravity": "first.specific_gravity",
                "head": "screw.head",
                "thickness": "first.thickness",
                "nds_duration": "nds_duration",
                "count": "bolt_count",
            },
            governs="least",
        ),
    )
