"""An arm: a cantilever that carries at or near its tip; usually several around an axis."""

import numpy as np

from reviewer.mechanics.bending import bending_stress
from reviewer.mechanics.formula import Number
from reviewer.parts.allowed import share_of
from reviewer.parts.arm_bending import (
    bending_stiffness,
    root_moment,
    shear_stiffness,
    tip_deflection,
)
from reviewer.parts.arm_root import root
from reviewer.parts.bars import bar_material, section
from reviewer.parts.bench_test import tested_by
from reviewer.parts.figures import figure
from reviewer.parts.groups import array, tree
from reviewer.parts.kind import Kind
from reviewer.parts.lasting import creep
from reviewer.parts.ring_plate import SEAT
from reviewer.parts.row import Measure, Row


def bar_mass(area: Number, length: Number, density: Number) -> Number:
    """Mass of a bar.

    Geometry.

    Notes
    -----
    A L rho.
    """
    return area * length * density


def seat_of_arm(root: Number) -> Number:
    """Length over which an arm is fixed to its carrier: 150 mm, or as far as the axis.

    Common practice: two bolts that far apart.
    """
    return np.minimum(root, SEAT)


SHAPE = (
    *("root.radius", "reach", "from", "count"),
    *("section.width", "section.height", "section.diameter"),
)

ARM = Kind(
    name="arm",
    says="a cantilever that carries at or near its tip",
    rows=(
        *tree(several=False),
        *array(bar_mass, {"area": "section.area", "length": "reach", "density": "density"}),
        *section(),
        figure("arm", *SHAPE),
        *bar_material("6063-T5"),
        Row("reach", "m", "length from root to tip", Measure(above=0.0, example="430 mm")),
        Row(
            "root.radius",
            "m",
            "radius at which it leaves its carrier",
            Measure(at_least=0.0),
            formula=lambda rim: rim,
            needs={"rim": "carrier.rim.radius"},
        ),
        Row(
            "seat",
            "m",
            "length inward from its root over which it is fixed to what carries it",
            Measure(above=0.0, example="150 mm"),
            formula=seat_of_arm,
            needs={"root": "root.radius"},
        ),
        Row(
            "rim.radius",
            "m",
            "radius of its tip",
            formula=lambda root, reach: root + reach,
            needs={"root": "root.radius", "reach": "reach"},
        ),
        Row(
            "centre.radius",
            "m",
            "radius at which its mass stands",
            formula=lambda root, reach: root + reach / 2,
            needs={"root": "root.radius", "reach": "reach"},
        ),
        Row(
            "support.radius",
            "m",
            "radius at which it carries what lies on it",
            Measure(above=0.0),
            formula=lambda tip: tip,
            needs={"tip": "rim.radius"},
        ),
        Row(
            "height",
            "m",
            "height above its carrier",
            Measure(at_least=0.0),
            formula=lambda h: h,
            needs={"h": "section.height"},
        ),
        *tested_by("one arm"),
        Row(
            "bench_test.at",
            "m",
            "distance of the test's load from the root",
            Measure(above=0.0, example="500 mm"),
        ),
        Row(
            "bench_test.sags",
            "m",
            "measured sag under the test's load",
            Measure(above=0.0, example="1.6 mm"),
        ),
        Row(
            "bending_stiffness",
            "N m^2",
            "modulus times second moment of area",
            formula=bending_stiffness,
            needs={
                "modulus": "modulus?",
                "second_moment": "section.second_moment?",
                "force": "bench_test.force?",
                "at": "bench_test.at?",
                "sag": "bench_test.sags?",
            },
        ),
        Row(
            "shear_stiffness",
            "N",
            "shear modulus times the area that bears shear; a bench test has it in its sag",
            formula=shear_stiffness,
            needs={
                "modulus": "shear_modulus?",
                "area": "section.shear_area?",
                "sag": "bench_test.sags?",
            },
        ),
        Row(
            "root_moment",
            "N m",
            "bending moment at the root of the busiest arm",
            formula=root_moment,
            needs={"moment": "member.moment", "force": "member.force", "root": "root.radius"},
        ),
        Row(
            "bending_stress",
            "Pa",
            "bending stress at the root of the busiest arm",
            formula=bending_stress,
            needs={"moment": "root_moment", "section_modulus": "section.section_modulus"},
        ),
        *root(),
        Row(
            "tip_deflection",
            "m",
            "how far the tip of the busiest arm sinks",
            formula=tip_deflection,
            needs={
                "force": "member.force",
                "moment": "root_moment",
                "reach": "reach",
                "stiffness": "bending_stiffness",
                "shear_stiffness": "shear_stiffness?",
                "turning": "root.sinks",
            },
            read="at the tip of the loaded arm, from a straightedge clamped to its root",
        ),
        *creep("tip_deflection", "how far the tip sinks after years"),
        Row(
            "allowed_lasting_sag",
            "m",
            "how far the tip may sink after years",
            Measure(above=0.0),
            formula=share_of,
            needs={"length": "reach", "divisor": "limit.arm_reach_over_lasting_sag"},
        ),
        Row(
            "allowed_deflection",
            "m",
            "how far the tip may sink",
            Measure(above=0.0),
            formula=share_of,
            needs={"length": "reach", "divisor": "limit.arm_reach_over_sag"},
        ),
    ),
)
