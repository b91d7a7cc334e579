"""A clamp: a split hub that bolts close on a shaft or post."""

from reviewer.mechanics.clamps import engagement_ratio, mean_pressure, slip_demand
from reviewer.parts.clamp_grip import (
    FITS,
    bolt_preload,
    bolt_proof_load,
    closing_force,
    greatest_pressure,
    grip_of,
    lever_of_hub,
    lost_with_time,
    softer_bears,
    tightest,
    torque_held,
)
from reviewer.parts.from_stock import modulus_of
from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Count, Measure, Row, Stock

CLASSES = ("4.6", "5.8", "8.8", "10.9", "12.9", "A2-70")


def _closing() -> tuple[Row, ...]:
    """What the bolts spend on closing the slit, and the lever of a hub slotted on one side."""
    return (
        Row(
            "closing.gap",
            "m",
            "by how much the slit must close until the clamp grips",
            Measure(at_least=0.0, example="0.2 mm"),
        ),
        Row("closing.thickness", "m", "thickness of a cheek where it bends", Measure(above=0.0)),
        Row("closing.arm", "m", "from where a cheek bends to the bolts", Measure(above=0.0)),
        Row(
            "closing.force",
            "N",
            "force of the bolts that only closes the slit",
            Measure(at_least=0.0),
            formula=closing_force,
            needs={
                "modulus": "modulus?",
                "length": "length",
                "thickness": "closing.thickness?",
                "arm": "closing.arm?",
                "gap": "closing.gap?",
            },
        ),
        Row(
            "hinge.bolts",
            "m",
            "from the middle of the side without a slit to the bolts",
            Measure(above=0.0),
        ),
        Row(
            "hinge.shaft",
            "m",
            "from the middle of the side without a slit to the shaft's axis",
            Measure(above=0.0),
        ),
        Row(
            "hinge.ratio",
            "1",
            "how many times the bolts' force it grips with",
            formula=lever_of_hub,
            needs={"bolts": "hinge.bolts?", "shaft": "hinge.shaft?"},
            governs="least",
        ),
    )


CLAMP = Kind(
    name="clamp",
    says="a split hub that bolts close on a shaft or post",
    rows=(
        *tree(),
        *single(),
        Row(
            "bore",
            "m",
            "diameter of the shaft that it holds",
            Measure(above=0.0, example="20 mm"),
            formula=lambda diameter: diameter,
            needs={"diameter": "carrier.diameter"},
        ),
        Row(
            "length", "m", "length of the shaft that it holds", Measure(above=0.0, example="30 mm")
        ),
        Row("bolt", "", "bolt that closes it", Stock("fasteners", example="M8x40")),
        Row("bolt_class", "", "property class of the bolts", Choice(CLASSES, default="8.8")),
        Row("bolt_count", "", "bolts that close it over this shaft", Count(default=2)),
        Row(
            "tightening",
            "N m",
            "torque to which each bolt is tightened",
            Measure(above=0.0, example="20 N m"),
        ),
        Row(
            "scatter",
            "1",
            "how far tightening misses its aim",
            Measure(default="30 %", at_least=0.0, below=1.0),
        ),
        Row(
            "friction",
            "1",
            "friction between hub and shaft",
            Measure(default="0.15", above=0.0, at_most=1.0),
        ),
        Row(
            "fit",
            "",
            "how it lies on the shaft: on lines, run in as the cosine, or bored to size and thin",
            Choice(tuple(FITS), default="line"),
        ),
        Row(
            "bolt_preload",
            "N",
            "preload of one bolt",
            formula=bolt_preload,
            needs={"bolt": "bolt", "property_class": "bolt_class", "torque": "tightening?"},
            because="has no such property class at this thread",
        ),
        Row(
            "bolt_peak",
            "N",
            "preload of one bolt, drawn as tight as it may be",
            formula=tightest,
            needs={"preload": "bolt_preload", "scatter": "scatter"},
        ),
        Row(
            "bolt_proof_load",
            "N",
            "load that one bolt bears without stretching for good",
            formula=bolt_proof_load,
            needs={"bolt": "bolt", "property_class": "bolt_class"},
            because="has no such property class at this thread",
            governs="least",
        ),
        Row("material", "", "material of the clamp", Stock("materials", example="6063-T6")),
        Row(
            "modulus",
            "Pa",
            "modulus of elasticity of the clamp",
            Measure(above=0.0),
            formula=modulus_of,
            needs={"material": "material"},
        ),
        *_closing(),
        Row(
            "relaxation",
            "1",
            "share of the grip that is lost with time",
            Measure(at_least=0.0, below=1.0),
            formula=lost_with_time,
            needs={"material": "material?"},
        ),
        Row(
            "grip",
            "N",
            "force that surely presses the halves together",
            formula=grip_of,
            needs={
                "bolt_force": "bolt_preload",
                "count": "bolt_count",
                "scatter": "scatter",
                "closing": "closing.force",
                "relaxation": "relaxation",
                "ratio": "hinge.ratio",
            },
            governs="least",
        ),
        Row(
            "torque_held",
            "N m",
            "torque that friction holds",
            formula=torque_held,
            needs={"grip": "grip", "diameter": "bore", "friction": "friction", "fit": "fit"},
            governs="least",
        ),
        Row(
            "slip_torque",
            "N m",
            "torque asked, with a force along the shaft taken in",
            formula=slip_demand,
            needs={"torque": "torque_asked", "axial": "axial", "diameter": "bore"},
        ),
        Row(
            "axial",
            "N",
            "force along the shaft that it must hold too",
            Measure(default="0 N", at_least=0.0),
        ),
        Row(
            "torque_asked",
            "N m",
            "torque that it must hold",
            Measure(at_least=0.0),
            formula=lambda torque: torque,
            needs={"torque": "carrier.torque"},
        ),
        Row(
            "engagement",
            "1",
            "length held over the shaft's diameter",
            formula=engagement_ratio,
            needs={"length": "length", "diameter": "bore"},
        ),
        Row(
            "pressure",
            "Pa",
            "mean pressure between clamp and shaft",
            formula=mean_pressure,
            needs={"grip": "grip", "diameter": "bore", "length": "length"},
        ),
        Row(
            "greatest_pressure",
            "Pa",
            "greatest pressure on what is gripped, the bolts drawn as tight as they may be",
            formula=greatest_pressure,
            needs={
                "bolt_force": "bolt_preload",
                "count": "bolt_count",
                "scatter": "scatter",
                "ratio": "hinge.ratio",
                "diameter": "bore",
                "length": "length",
                "fit": "fit",
            },
        ),
        Row(
            "allowed_pressure",
            "Pa",
            "pressure that the softer of clamp and shaft bears",
            Measure(above=0.0),
            formula=softer_bears,
            needs={"hub": "material?", "shaft": "carrier.material?"},
            governs="least",
        ),
    ),
)
