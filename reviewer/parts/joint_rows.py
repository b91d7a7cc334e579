"""Rows of a bolted joint: what is drawn together, and how near its bolts come to edges."""

from typing import Any

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.spacing import EnSpacing, NdsSpacing, en_bolt_spacing, nds_bolt_spacing
from reviewer.parts.joint_members import METAL, bearing_of, gravity_of, stretch_of, width_of
from reviewer.parts.lasting import modification_of, shortest_duration
from reviewer.parts.row import Count, Measure, Row, Stock
from reviewer.parts.sheet_rows import THICKNESS
from reviewer.stock.fasteners import Fastener
from reviewer.stock.materials import Material

RIGHT_ANGLE = 1.5708


def member(name: str, says: str) -> tuple[Row, ...]:
    """One of the two members of a joint."""
    return (
        Row(
            f"{name}.material",
            "",
            f"material of the {name} member, {says}",
            Stock("materials", example="C24"),
        ),
        Row(
            f"{name}.thickness",
            "m",
            f"thickness of the {name} member",
            THICKNESS,
        ),
        Row(
            f"{name}.angle",
            "rad",
            f"angle between the load and the grain of the {name} member",
            Measure(default="0 deg", at_least=0.0, at_most=RIGHT_ANGLE),
        ),
        Row(
            f"{name}.specific_gravity",
            "1",
            f"specific gravity of the {name} member, ovendry",
            Measure(above=0.0, below=1.3),
            formula=gravity_of,
            needs={"material": f"{name}.material"},
            because="is not known of what is not wood",
        ),
        Row(
            f"{name}.bearing",
            "Pa",
            f"dowel bearing strength of the {name} member by the NDS",
            Measure(above=0.0),
            formula=bearing_of,
            needs={
                "material": f"{name}.material",
                "gravity": f"{name}.specific_gravity?",
                "diameter": "bearing_diameter",
                "angle": f"{name}.angle",
            },
            governs="least",
        ),
        Row(
            f"{name}.width",
            "m",
            f"width of the {name} member across the force: what its edges need, if it is not told",
            Measure(above=0.0),
            formula=width_of,
            needs={"edge": "edge?", "diameter": "bolt_diameter"},
        ),
        Row(
            f"{name}.stretch",
            "N",
            f"modulus of elasticity of the {name} member times its area, along the force",
            formula=stretch_of,
            needs={
                "material": f"{name}.material",
                "thickness": f"{name}.thickness",
                "width": f"{name}.width",
                "angle": f"{name}.angle",
            },
        ),
    )


def nds_distances(diameter: Number, first: Number, second: Number) -> NdsSpacing:
    """Distances of the bolts by the NDS, as of softwood.

    NDS 2018, tables 12.5.1A to 12.5.1D, from memory.
    """
    return nds_bolt_spacing(diameter, np.minimum(first, second))


def en_distances(bolt: Fastener, first: Number, second: Number) -> EnSpacing:
    """Distances of the bolts by EN 1995-1-1, for the greater of the two angles to the grain.

    EN 1995-1-1:2004, table 8.4, from memory.
    """
    return en_bolt_spacing(bolt.thread.diameter, np.maximum(first, second))


def spacing_in_row(bolt: Fastener) -> Number:
    """Distance along the grain between bolts, load along it: the greatest over the angles.

    EN 1995-1-1:2004, table 8.4, from memory.
    """
    return en_bolt_spacing(bolt.thread.diameter, 0.0).in_row


def _told(path: str, says: str) -> Row:
    return Row(path, "m", says, Measure(above=0.0))


def _limit(path: str, says: str, solution: str, take: str) -> Row:
    return Row(path, "m", says, needs={"solution": solution}, take=take)


def distances() -> tuple[Row, ...]:
    """How near the bolts come to ends, edges and each other, and how near they may."""
    return (
        _told("end", "from the bolt to the end that it is pulled towards, along the grain"),
        _told("edge", "from the bolt to the edge that it is pressed towards, across the grain"),
        _told("spacing", "from one bolt to the next, along the grain"),
        Row(
            "distances.nds",
            "",
            "distances by the NDS",
            formula=nds_distances,
            needs={
                "diameter": "bolt_diameter",
                "first": "first.thickness",
                "second": "second.thickness",
            },
        ),
        Row(
            "distances.en",
            "",
            "distances by EN 1995-1-1",
            formula=en_distances,
            needs={"bolt": "bolt", "first": "first.angle", "second": "second.angle"},
        ),
        _limit("least_end", "least distance from an end", "distances.nds", "end_least"),
        _limit("least_spacing", "least distance between bolts", "distances.nds", "in_row_least"),
        _limit("least_edge", "least distance from a pressed edge", "distances.en", "loaded_edge"),
        _limit("full_end", "distance from an end for the full value", "distances.en", "loaded_end"),
        Row(
            "full_spacing",
            "m",
            "distance between bolts for the full value",
            formula=spacing_in_row,
            needs={"bolt": "bolt"},
        ),
    )


def nds_duration(cases: Any, service_class: int) -> Number:
    """Factor of duration and wetness on an allowable value.

    NDS 2018, 2.3.2 and 11.3.3, from memory: 0.9 permanent, else 1; 0.7 in the open.

    Notes
    -----
    The NDS allows more than 1 for shorter loads; that is left out.
    """
    wet = 0.7 if service_class == 3 else 1.0
    return np.array([[0.9 if d == "permanent" else 1.0 for d in shortest_duration(cases)]]) * wet


def duration_of(first: Material, second: Material, cases: Any, service_class: int) -> Number:
    """Factor of duration and dampness of a joint of two materials.

    EN 1995-1-1:2004, 2.3.2.1(2).

    Notes
    -----
    sqrt(k_mod,1 k_mod,2); beside metal that of the wood alone.
    """
    kinds = [each for each in (first, second) if each.family != METAL] or [first]
    one, other = (modification_of(each, cases, service_class) for each in (kinds[0], kinds[-1]))
    return np.sqrt(one * other)


def in_time() -> tuple[Row, ...]:
    """What duration and dampness leave of the strength of the joint."""
    where: dict[str, Any] = {"cases": "design.cases", "service_class": "service_class"}
    return (
        Row(
            "service_class",
            "",
            "service class of EN 1995-1-1: 1 dry, 2 damp under a roof, 3 in the open",
            Count(at_least=1, at_most=3),
            formula=lambda place: place,
            needs={"place": "design.service_class"},
        ),
        Row(
            "modification",
            "1",
            "factor of duration and dampness by EN 1995-1-1",
            Measure(above=0.0, at_most=1.2),
            formula=duration_of,
            needs={"first": "first.material", "second": "second.material", **where},
            because="has no factor for these materials and service class in EN 1995-1-1, table 3.1",
            governs="least",
        ),
        Row(
            "nds_duration",
            "1",
            "factor of duration and wetness by the NDS",
            formula=nds_duration,
            needs=where,
            governs="least",
        ),
    )
