"""Rows of a bar: its cross-section and what bending and torsion see of it."""

from typing import Any

from reviewer.mechanics.sections import (
    SectionProperties,
    box_section,
    pipe_section,
    rectangle_section,
    round_section,
)
from reviewer.parts.from_stock import (
    allowed_bending_stress,
    density_of,
    modulus_of,
    shear_modulus_of,
)
from reviewer.parts.row import Measure, Row, Shape, Stock

SHAPES = (
    ("tube", ("section.width", "section.height", "section.wall")),
    ("solid", ("section.width", "section.height")),
    ("pipe", ("section.diameter", "section.wall")),
    ("round", ("section.diameter",)),
)


def section_properties(
    shape: str, width: Any, height: Any, diameter: Any, wall: Any
) -> SectionProperties:
    """Properties of the section that the shape's word and measures describe."""
    if shape == "tube":
        return box_section(width, height, wall)
    if shape == "solid":
        return rectangle_section(width, height)
    if shape == "pipe":
        return pipe_section(diameter, wall)
    return round_section(diameter)


def _measure(name: str, says: str) -> Row:
    return Row(f"section.{name}", "m", says, Measure(above=0.0), only=True)


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
            },
        ),
        _property("area", "m^2", "area of the section"),
        _property("second_moment", "m^4", "second moment of area for a load along the height"),
        _property("section_modulus", "m^3", "section modulus for a load along the height"),
        _property("torsion_constant", "m^4", "torsion constant of the section"),
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
        Row(
            "allowed_stress",
            "Pa",
            "bending stress that its material may carry",
            formula=allowed_bending_stress,
            needs=material,
        ),
    )
