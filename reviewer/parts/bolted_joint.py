"""A bolted joint: two members held together by bolts, or by screws, through the first."""

from reviewer.parts.clamp import CLASSES
from reviewer.parts.groups import same, single, tree
from reviewer.parts.joint_holds import far_end, pulled, screws
from reviewer.parts.joint_members import basis_of, group_of
from reviewer.parts.joint_pull import mass_of_bolts
from reviewer.parts.joint_rows import distances, in_time, member
from reviewer.parts.joint_shear import (
    across_of,
    bearing_diameter,
    bending_yield_of,
    effective_count,
    en_allowed,
    en_modes,
    geometry_of,
    length_in_second,
    nds_allowed,
    nds_modes,
)
from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Count, Flag, Measure, Row, Stock


def _bolts() -> tuple[Row, ...]:
    return (
        Row("bolt", "", "bolt through both members", Stock("fasteners", example="M8x60")),
        Row("bolt_class", "", "property class of the bolts", Choice(CLASSES, default="8.8")),
        Row("bolt_count", "", "bolts or screws, in a row along the grain", Count(default=1)),
        Row(
            "far_end",
            "",
            "what holds the far end of the bolt",
            Choice(("nut", "tapped", "insert"), default="nut"),
        ),
        Row(
            "threaded",
            "",
            "whether the bolt's thread lies in the wood, as of a bolt threaded to its head",
            Flag(default=True),
        ),
        Row(
            "bolt_diameter",
            "m",
            "nominal diameter of the bolt",
            formula=lambda bolt: bolt.thread.diameter,
            needs={"bolt": "bolt"},
        ),
        Row(
            "bolt_length",
            "m",
            "length of the bolt",
            formula=lambda bolt: bolt.length,
            needs={"bolt": "bolt"},
            because="stands in the bolt's name, as in M8x60, and this one gives none",
        ),
        Row(
            "bearing_diameter",
            "m",
            "diameter that bears on the wood",
            formula=bearing_diameter,
            needs={"bolt": "bolt", "threaded": "threaded"},
        ),
        Row(
            "bending_yield",
            "Pa",
            "bending yield strength of the bolt, by which the NDS counts",
            Measure(above=0.0),
            formula=bending_yield_of,
            needs={"bolt": "bolt", "property_class": "bolt_class"},
            because="has no such property class at this thread",
        ),
        Row(
            "length_in_second",
            "m",
            "length of the bolt in the second member",
            formula=length_in_second,
            needs={
                "far_end": "far_end",
                "thickness": "second.thickness",
                "length": "bolt_length?",
                "first": "first.thickness",
                "washer": "washer_thickness",
            },
        ),
        Row(
            "washer_thickness",
            "m",
            "thickness of a plain washer",
            formula=lambda bolt: bolt.thread.washer_thickness,
            needs={"bolt": "bolt"},
        ),
    )


def _yield_modes() -> tuple[Row, ...]:
    lengths = {"first": "first.thickness", "second": "length_in_second"}
    angles = {"first_angle": "first.angle", "second_angle": "second.angle"}
    return (
        Row(
            "yields.nds",
            "",
            "allowable value of one bolt by each yield mode of the NDS",
            formula=nds_modes,
            needs={
                "diameter": "bearing_diameter",
                **lengths,
                "first_bearing": "first.bearing",
                "second_bearing": "second.bearing",
                **angles,
                "bending_yield": "bending_yield",
            },
        ),
        Row(
            "yields.en",
            "",
            "characteristic value of one bolt by each mode of EN 1995-1-1",
            formula=en_modes,
            needs={
                "bolt": "bolt",
                "property_class": "bolt_class",
                **lengths,
                "first_material": "first.material",
                "second_material": "second.material",
                **angles,
            },
        ),
        *(
            Row(
                f"one.{code}",
                "N",
                f"{says} value of one bolt across it, by {name}",
                needs={"solution": f"yields.{code}"},
                take="capacity",
                because="needs a member of wood or board for which the codes give a value",
                governs="least",
            )
            for code, says, name in (
                ("nds", "allowable", "the NDS"),
                ("en", "characteristic", "EN 1995-1-1"),
            )
        ),
    )


def _across() -> tuple[Row, ...]:
    near = {"spacing": "spacing?", "count": "bolt_count"}
    return (
        Row(
            "shear",
            "N",
            "force across all bolts together",
            Measure(at_least=0.0),
            formula=same,
            needs={"place": "bears.force"},
        ),
        Row(
            "geometry",
            "1",
            "share of the NDS's full value that distances short of full leave",
            formula=geometry_of,
            needs={"distances": "distances.nds", "end": "end?", **near},
            governs="least",
        ),
        Row(
            "group",
            "1",
            "share of single bolts that a row of them bears, by the NDS",
            formula=group_of,
            needs={
                "first": "first.material",
                "second": "second.material",
                "first_stretch": "first.stretch",
                "second_stretch": "second.stretch",
                "diameter": "bolt_diameter",
                **near,
            },
            governs="least",
        ),
        Row(
            "basis",
            "text",
            "how rough the values of the members are",
            formula=basis_of,
            needs={"first": "first.material", "second": "second.material"},
        ),
        Row(
            "effective_count",
            "1",
            "how many of the bolts in a row count, by EN 1995-1-1",
            formula=effective_count,
            needs={**near, "diameter": "bolt_diameter"},
            governs="least",
        ),
        Row(
            "nds_capacity",
            "N",
            "what the bolts bear across them by the NDS",
            formula=nds_allowed,
            needs={
                "one": "one.nds",
                "count": "bolt_count",
                "geometry": "geometry",
                "group": "group",
                "duration": "nds_duration",
            },
            governs="least",
        ),
        Row(
            "en_capacity",
            "N",
            "what the bolts bear across them by EN 1995-1-1, k_mod and both margins taken",
            formula=en_allowed,
            needs={
                "one": "one.en",
                "count": "effective_count",
                "modification": "modification",
            },
            governs="least",
        ),
        Row(
            "across",
            "",
            "the less of the two, and what limits it",
            formula=across_of,
            needs={
                "nds": "yields.nds",
                "en": "yields.en",
                "nds_capacity": "nds_capacity",
                "en_capacity": "en_capacity",
            },
        ),
        Row(
            "shear_capacity",
            "N",
            "what the bolts bear across them: the less of both codes",
            Measure(above=0.0),
            needs={"solution": "across"},
            take="capacity",
            governs="least",
        ),
        Row(
            "limited_by",
            "text",
            "how the joint gives way first across its bolts",
            needs={"solution": "across"},
            take="limited_by",
        ),
    )


BOLTED_JOINT = Kind(
    name="bolted_joint",
    says="two members, at least one of wood or board, held together by bolts or screws",
    rows=(
        *tree(),
        *single(mass_of_bolts, {"bolt": "bolt?", "count": "bolt_count"}),
        *member("first", "under the head"),
        *member("second", "at the far end"),
        *_bolts(),
        *distances(),
        *in_time(),
        *_yield_modes(),
        *_across(),
        *pulled(),
        *far_end(),
        *screws(),
    ),
)
