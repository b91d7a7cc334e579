"""Rows of a bar: its cross-section and what bending and torsion see of it."""

from typing import Any

import numpy as np

from reviewer.mechanics.sections import (
    SectionProperties,
    box_section,
    pipe_section,
    rectangle_section,
    round_section,
)
from reviewer.mechanics.thin_sections import given_section
from reviewer.parts.from_stock import density_of, modulus_of, shear_modulus_of
from reviewer.parts.lasting import strength_in_time
from reviewer.parts.row import Measure, Row, Shape, Stock

SHAPES = (
    ("tube", ("section.width", "section.height", "section.wall")),
    ("solid", ("section.width", "section.height")),
    ("pipe", ("section.diameter", "section.wall")),
    ("round", ("section.diameter",)),
    (
        "given",
        ("section.given_area", "section.given_second_moment", "section.width", "section.height"),
    ),
)


def section_properties(
    shape: str,
    width: Any,
    height: Any,
    diameter: Any,
    wall: Any,
    area: Any,
    second_moment: Any,
) -> SectionProperties:
    """Properties of the section that the shape's word and measures describe.

    Of a profile whose area and second moment are given, its shear area and torsion stay unknown.
    """
    if shape == "given":
        return given_section(width, height, area, second_moment, np.nan)
    if shape == "tube":
        return box_section(width, height, wall)
    if shape == "solid":
        return rectangle_section(width, height)
    if shape == "pipe":
        return pipe_section(diameter, wall)
    return round_section(diameter)


def _measure(name: str, says: str, unit: str = "m") -> Row:
    return Row(f"section.{name}", unit, says, Measure(above=0.0), only=True)


def _property(name: str, unit: str, says: str) -> Row:
    return Row(f"section.{name}", unit, says, needs={"solution": "section.properties"}, take=name)


def section() -> tuple[Row, ...]:
    """A bar's section, and its properties for a load along its height."""
    return (
        Row(
            "section", "", "cross-section, outer measures first: width, height, wall", Shape(SHAPES)
        ),
        _measure("width", "outer width of the section"),
        _measure("height", "outer height of the section, along the load"),
        _measure("wall", "wall thickness of the section"),
        _measure("diameter", "outer diameter of the section"),
        _measure("given_area", "area of a profile by its catalogue", "m^2"),
        _measure(
            "given_second_moment", "second moment of area of a profile by its catalogue", "m^4"
        ),
        Row(
            "section.properties",
            "",
            "what bending and torsion see of the section",
            formula=section_properties,
            needs={
                "shape": "section",
                "width": "section.width?",
                "height": "section.height?",
                "diameter": "section.diameter?",
                "wall": "section.wall?",
                "area": "section.given_area?",
                "second_moment": "section.given_second_moment?",
            },
        ),
        _property("area", "m^2", "area of the section"),
        _property("second_moment", "m^4", "second moment of area for a load along the height"),
        _property("section_modulus", "m^3", "section modulus for a load along the height"),
        _property("torsion_constant", "m^4", "torsion constant of the section"),
        _property("shear_area", "m^2", "area that bears shear for a load along the height"),
        _property("torsion_modulus", "m^3", "torque over the peak shear stress"),
    )


def bar_material(example: str) -> tuple[Row, ...]:
    """A bar's material, and what follows from it."""
    material = {"material": "material"}
    return (
        Row("material", "", "material", Stock("materials", example=example)),
        Row("density", "kg/m^3", "density", formula=density_of, needs=material),
        Row(
            "modulus",
            "Pa",
            "modulus of elasticity in bending",
            Measure(above=0.0, example="69 GPa"),
            formula=modulus_of,
            needs=material,
        ),
        Row(
            "shear_modulus",
            "Pa",
            "shear modulus",
            Measure(above=0.0),
            formula=shear_modulus_of,
            needs=material,
        ),
        *strength_in_time(),
    )
