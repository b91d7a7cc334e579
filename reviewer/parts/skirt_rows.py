"""A skirt's layers and grain, the next thickness in stock, and what stands on its edge."""

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.resultant import Action
from reviewer.parts.row import Choice, Count, Measure, Row
from reviewer.parts.skirt_bending import (
    next_stock_thickness,
    on_edge,
    skirt_stress,
    twisting_stiffness,
    upright_stiffness,
)


def load_down(action: Action) -> Number:
    """Vertical force of the loads that stand on it.

    Statics.
    """
    return action.loads.force


def layers() -> tuple[Row, ...]:
    """How many layers it has, how they are bonded, and how their grain runs."""
    return (
        Row("layers.count", "", "layers side by side", Count(default=1, at_most=50)),
        Row(
            "layers.bonded",
            "",
            "how they are bonded",
            Choice(("glued", "loose", "screwed"), default="glued"),
        ),
        Row(
            "layers.thickness",
            "m",
            "thickness of one layer",
            formula=lambda thickness, count: thickness / count,
            needs={"thickness": "thickness", "count": "layers.count"},
        ),
        Row(
            "layers.slip_modulus",
            "N/m",
            "slip modulus of one screw, over all rows across its height",
            Measure(above=0.0, example="2 kN/mm"),
        ),
        Row("layers.spacing", "m", "spacing of the screws along it", Measure(above=0.0)),
        Row(
            "grain_angle",
            "rad",
            "angle between its length and the grain of its face",
            Measure(default="0 deg", at_least=0.0, at_most=np.pi / 2 + 1e-9),
        ),
    )


def next_size() -> tuple[Row, ...]:
    """What the next thickness in stock would buy."""
    return (
        Row(
            "next_thickness",
            "m",
            "next thickness in stock, with as many layers",
            formula=next_stock_thickness,
            needs={
                "material": "material",
                "layer": "layers.thickness",
                "count": "layers.count",
                "lengths": "design.lengths?",
            },
            because="has none thicker in stock",
        ),
        Row(
            "next_thickness_wave",
            "m",
            "how far a push bends it with that thickness",
            formula=lambda wave, now, then: wave * now * now * now / (then * then * then),
            needs={"wave": "wave", "now": "thickness", "then": "next_thickness"},
        ),
    )


def on_edge_rows() -> tuple[Row, ...]:
    """A load on its edge, and the stress of it and of a push together."""
    return (
        Row(
            "load_down",
            "N",
            "load that stands on its edge",
            formula=load_down,
            needs={"action": "action"},
        ),
        Row(
            "upright_stiffness",
            "N m^2",
            "bending stiffness against a load on its edge",
            formula=upright_stiffness,
            needs={"modulus": "modulus", "height": "height", "thickness": "thickness"},
        ),
        Row(
            "twisting_stiffness",
            "N m^2",
            "stiffness against twisting",
            formula=twisting_stiffness,
            needs={
                "shear_modulus": "shear_modulus",
                "height": "height",
                "thickness": "thickness",
                "count": "layers.count",
                "bonded": "layers.bonded",
            },
        ),
        Row(
            "on_edge",
            "",
            "what a load on its edge does midway between supports",
            formula=on_edge,
            needs={
                "force": "load_down",
                "span": "span",
                "diameter": "diameter?",
                "bending": "upright_stiffness",
                "twisting": "twisting_stiffness",
                "ends": "ends",
            },
        ),
        Row(
            "sag",
            "m",
            "how far a load on its edge bends it down between supports",
            needs={"solution": "on_edge"},
            take="sag",
            read="midway between two supports, from a straightedge across both",
        ),
        Row(
            "upright_moment",
            "N m",
            "bending moment of a load on its edge",
            needs={"solution": "on_edge"},
            take="moment",
        ),
        Row(
            "bending_stress",
            "Pa",
            "bending stress of a push and a load on its edge together",
            formula=skirt_stress,
            needs={
                "push": "push",
                "span": "span",
                "upright_moment": "upright_moment",
                "height": "height",
                "thickness": "thickness",
                "count": "layers.count",
                "bonded": "layers.bonded",
                "ends": "ends",
            },
        ),
    )
