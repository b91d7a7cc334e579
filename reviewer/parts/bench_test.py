"""Rows of a bench test that stands in for a modulus: what was hung where, and what was read."""

import numpy as np

from reviewer.mechanics.bench_tests import modulus_from_bending_test, shear_modulus_from_twist_test
from reviewer.mechanics.formula import Number
from reviewer.mechanics.weight import weight
from reviewer.parts.from_stock import panel_modulus_mean, shear_modulus_of
from reviewer.parts.row import Measure, Row
from reviewer.stock.materials import Material
from reviewer.stock.panels import panel_modulus

BENT = {
    "force": "bench_test.force?",
    "span": "bench_test.span?",
    "width": "bench_test.width?",
    "sag": "bench_test.sags?",
}
TWISTED = {
    "force": "bench_test.force?",
    "at": "bench_test.at?",
    "length": "bench_test.length?",
    "angle": "bench_test.twists?",
    "torsion_constant": "section.torsion_constant?",
}


def tested_by(of: str) -> tuple[Row, Row]:
    """The load of a bench test on something: a force, or a mass that is hung on it."""
    return (
        Row(
            "bench_test.force",
            "N",
            f"force of a bench test on {of}",
            Measure(above=0.0),
            formula=weight,
            needs={"mass": "bench_test.mass"},
        ),
        Row(
            "bench_test.mass",
            "kg",
            f"mass hung on {of} in a bench test",
            Measure(above=0.0, example="20 kg"),
        ),
    )


def bent_strip() -> tuple[Row, ...]:
    """A bench test on a strip of a board, cut as the part bends, that lies on two edges."""
    return (
        *tested_by("a strip of the board, in its middle"),
        _told("span", "distance between the two edges on which the strip lies", "800 mm"),
        _told("width", "width of the strip", "100 mm"),
        _told("sags", "how far its middle sank under the test's load", "4.5 mm"),
    )


def twisted_bar() -> tuple[Row, ...]:
    """A bench test on a piece of the bar, held at one end and twisted at the other."""
    return (
        *tested_by("a lever at the end of a piece of the bar"),
        _told("at", "distance of the test's load from the axis of the bar", "250 mm"),
        _told("length", "length of the piece between what holds it and the lever", "600 mm"),
        Row(
            "bench_test.twists",
            "rad",
            "how far the lever turned",
            Measure(above=0.0, below=0.5, example="1.3 deg"),
        ),
    )


def _told(name: str, says: str, example: str) -> Row:
    return Row(f"bench_test.{name}", "m", says, Measure(above=0.0, example=example))


def modulus_of_strip(
    force: Number | None,
    span: Number | None,
    width: Number | None,
    thickness: Number,
    sag: Number | None,
) -> Number | None:
    """Modulus from a bench test; None where the test is not told in full.

    Gere and Goodno, Mechanics of Materials (2009), table G-2 case 4.
    """
    if force is None or span is None or width is None or sag is None:
        return None
    return modulus_from_bending_test(force, span, width, thickness, sag)


def board_modulus(
    material: Material | None,
    thickness: Number,
    force: Number | None,
    span: Number | None,
    width: Number | None,
    sag: Number | None,
) -> Number:
    """Modulus in bending of a board: from a bench test where there is one, else of its material.

    Gere and Goodno, Mechanics of Materials (2009), table G-2 case 4; else the stock row's own
    source.

    Notes
    -----
    F L^3 / (48 I sag) of the test; else the mean of along and across the grain.
    """
    tested = modulus_of_strip(force, span, width, thickness, sag)
    if tested is not None:
        return tested
    return np.nan if material is None else panel_modulus_mean(material, thickness)


def board_span_modulus(
    material: Material | None,
    thickness: Number,
    grain: str,
    force: Number | None,
    span: Number | None,
    width: Number | None,
    sag: Number | None,
) -> Number:
    """Modulus in bending along the span: from a bench test where there is one, else by the grain.

    Gere and Goodno, Mechanics of Materials (2009), table G-2 case 4; else the stock row's own
    source.

    Notes
    -----
    F L^3 / (48 I sag) of the test; else that of the face grain, along or across the span.
    """
    tested = modulus_of_strip(force, span, width, thickness, sag)
    if tested is not None:
        return tested
    if material is None:
        return np.nan
    along, across = panel_modulus(material, thickness)
    return along if grain == "along" else across


def bar_shear_modulus(
    material: Material | None,
    force: Number | None,
    at: Number | None,
    length: Number | None,
    angle: Number | None,
    torsion_constant: Number | None,
) -> Number:
    """Shear modulus of a bar: from a bench test where there is one, else of its material.

    Gere and Goodno, Mechanics of Materials (2009), 3.3; else the stock row's own source.

    Notes
    -----
    F a L / (J theta) of the test.
    """
    if force is None or at is None or length is None or angle is None or torsion_constant is None:
        return np.nan if material is None else shear_modulus_of(material)
    return shear_modulus_from_twist_test(force * at, length, torsion_constant, angle)
