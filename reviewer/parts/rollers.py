"""Rows of a group of bearings that run as rollers, evenly spaced on a circle."""

import numpy as np

from reviewer.mechanics.bolt_limits import bolt_bending_stress
from reviewer.mechanics.formula import Number
from reviewer.mechanics.rings import roller_chord, roller_gap
from reviewer.mechanics.rollers import roller_static_capacity
from reviewer.parts.from_stock import YIELD_MARGIN, of_bearing
from reviewer.parts.row import Choice, Count, Measure, Row, Stock
from reviewer.stock.bearings import Bearing
from reviewer.stock.fasteners import Fastener, bolt_strength
from reviewer.stock.table import StockError

WASHER = 2e-3  # m, common practice


def outer_reach(circle: Number, width: Number) -> Number:
    """Radius of the outer face of the rollers: the edge of the track that they need.

    Geometry.

    Notes
    -----
    D/2 + B/2.
    """
    return circle / 2 + width / 2


def inner_reach(circle: Number, width: Number) -> Number:
    """Radius of the inner face of the rollers.

    Geometry.

    Notes
    -----
    D/2 - B/2.
    """
    return circle / 2 - width / 2


def bolt_diameter(bearing: Bearing, bolt: Fastener | None) -> float:
    """Diameter of the bolt that bends: the root of its thread, or a plain shank in the bore.

    ISO 68-1 for the root; geometry.
    """
    return bearing.bore if bolt is None else bolt.thread.root_diameter


def overhang_of(width: Number) -> Number:
    """Length of bolt that bends: half of the bearing and a washer.

    Common practice: a washer of 2 mm between bracket and inner ring.
    """
    return width / 2 + WASHER


def bolt_capacity(diameter: Number, overhang: Number, property_class: str) -> Number:
    """Roller load at which the roller's bolt bends to two thirds of its yield strength.

    Gere and Goodno, Mechanics of Materials (2009), 5.5; the margin of 1.5 is common practice.

    Notes
    -----
    R_p / 1.5 pi d^3 / (32 a).
    """
    try:
        strength = bolt_strength(property_class, float(np.ravel(diameter)[0])).yield_strength
    except StockError:  # no such class at this size
        return np.nan
    return strength / YIELD_MARGIN / bolt_bending_stress(1.0, overhang, diameter)


def rollers(group: str, what: str, *, gap: bool = False) -> tuple[Row, ...]:
    """Bearing, count and circle of one group of rollers, and what follows from them."""
    on_circle = {"circle": f"{group}.circle", "width": f"{group}.width"}
    bearing = {"bearing": f"{group}.bearing"}
    gap_row = Row(
        f"{group}.gap",
        "m",
        f"way before {what} touch",
        Measure(at_least=0.0, default="0 mm", words=(("touching", "0 mm"),), example="0.15 mm"),
    )
    preload_row = Row(
        f"{group}.preload",
        "N",
        f"force with which each of {what} is set against its track",
        Measure(at_least=0.0, default="0 N"),
    )
    return (
        Row(
            f"{group}.bearing",
            "",
            f"bearing of {what}, by standard size",
            Stock("bearings", example='"6001"'),
        ),
        Row(f"{group}.count", "", f"how many of {what}", Count(at_least=1, at_most=200)),
        Row(
            f"{group}.circle",
            "m",
            f"diameter of the circle on which {what} stand",
            Measure(above=0.0, example="460 mm"),
        ),
        Row(f"{group}.from", "rad", f"azimuth of the first of {what}", Measure(default="0 deg")),
        *((gap_row, preload_row) if gap else ()),
        Row(
            f"{group}.outer_diameter",
            "m",
            f"outer diameter of {what}",
            formula=of_bearing("outer", "Outer diameter of the bearing"),
            needs=bearing,
        ),
        Row(
            f"{group}.width",
            "m",
            f"width of {what}",
            formula=of_bearing("width", "Width of the bearing"),
            needs=bearing,
        ),
        Row(
            f"{group}.static_rating",
            "N",
            "basic static load rating of the bearing",
            formula=of_bearing("static_rating", "Basic static load rating C0"),
            needs=bearing,
        ),
        Row(
            f"{group}.balls",
            "1",
            "balls in the bearing",
            formula=of_bearing("balls", "Number of balls"),
            needs=bearing,
        ),
        Row(
            f"{group}.bearing_capacity",
            "N",
            "radial load that the bearing carries as a roller",
            formula=roller_static_capacity,
            needs={"rating": f"{group}.static_rating", "ball_count": f"{group}.balls"},
        ),
        Row(
            f"{group}.bolt",
            "",
            f"bolt on which each of {what} runs; without one, a plain shank that fills the bore",
            Stock("fasteners", example="M10x40"),
        ),
        Row(
            f"{group}.bolt_class",
            "",
            "property class of those bolts",
            Choice(("4.6", "5.8", "8.8", "10.9", "12.9", "A2-70"), default="8.8"),
        ),
        Row(
            f"{group}.bolt_diameter",
            "m",
            "diameter of the bolt where it bends",
            formula=bolt_diameter,
            needs={**bearing, "bolt": f"{group}.bolt?"},
        ),
        Row(
            f"{group}.overhang",
            "m",
            "from the face that holds the bolt to the middle of the bearing",
            Measure(above=0.0, example="6 mm"),
            formula=overhang_of,
            needs={"width": f"{group}.width"},
        ),
        Row(
            f"{group}.bolt_capacity",
            "N",
            "roller load that its bolt carries in bending",
            formula=bolt_capacity,
            needs={
                "diameter": f"{group}.bolt_diameter",
                "overhang": f"{group}.overhang",
                "property_class": f"{group}.bolt_class",
            },
            because="has no such property class at this size",
        ),
        Row(
            f"{group}.spacing",
            "m",
            f"distance between neighbouring {what}",
            formula=roller_chord,
            needs={"circle_diameter": f"{group}.circle", "count": f"{group}.count"},
        ),
        Row(
            f"{group}.clear",
            "m",
            f"room between neighbouring {what}",
            formula=roller_gap,
            needs={
                "circle_diameter": f"{group}.circle",
                "count": f"{group}.count",
                "outer_diameter": f"{group}.outer_diameter",
            },
            governs="least",
        ),
        Row(
            f"{group}.outer_reach",
            "m",
            f"radius of the outer face of {what}",
            formula=outer_reach,
            needs=on_circle,
        ),
        Row(
            f"{group}.inner_reach",
            "m",
            f"radius of the inner face of {what}",
            formula=inner_reach,
            needs=on_circle,
            governs="least",
        ),
    )
