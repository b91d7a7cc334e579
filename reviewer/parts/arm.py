"""An arm: a cantilever that carries at or near its tip; usually several around an axis."""

import numpy as np

from reviewer.mechanics.bending import bending_stiffness_from_test, bending_stress
from reviewer.mechanics.cantilevers import cantilever_couple_deflection, cantilever_deflection
from reviewer.mechanics.formula import Number
from reviewer.mechanics.weight import weight
from reviewer.parts.allowed import share_of
from reviewer.parts.bars import section
from reviewer.parts.from_stock import allowed_bending_stress, density_of, modulus_of
from reviewer.parts.groups import array, tree
from reviewer.parts.kind import Kind
from reviewer.parts.ring_plate import SEAT
from reviewer.parts.row import Measure, Row, Stock


def bar_mass(area: Number, length: Number, density: Number) -> Number:
    """Mass of a bar.

    Geometry.

    Notes
    -----
    A L rho.
    """
    return area * length * density


def bending_stiffness(
    modulus: Number | None,
    second_moment: Number | None,
    force: Number | None,
    at: Number | None,
    sag: Number | None,
) -> Number:
    """Bending stiffness: from a bench test where there is one, else from modulus and section.

    Gere and Goodno, Mechanics of Materials (2009), table G-1 case 4.

    Notes
    -----
    E I, or F a^3 / (3 sag) of the test.
    """
    if force is not None and at is not None and sag is not None:
        return bending_stiffness_from_test(force, at, sag)
    if modulus is None or second_moment is None:
        return np.nan
    return modulus * second_moment


def seat_of_arm(root: Number) -> Number:
    """Length over which an arm is fixed to its carrier: 150 mm, or as far as the axis.

    Common practice: two bolts that far apart.
    """
    return np.minimum(root, SEAT)


def root_moment(moment: Number, force: Number, root: Number) -> Number:
    """Bending moment where the arm leaves its carrier.

    Statics.

    Notes
    -----
    Moment about the axis, less force times the radius of the root.
    """
    return moment - force * root


def tip_deflection(force: Number, moment: Number, reach: Number, stiffness: Number) -> Number:
    """Deflection of the tip under a force that has a given moment about the root.

    Gere and Goodno, Mechanics of Materials (2009), table G-1 cases 5 and 6.

    Notes
    -----
    The forces are put together as one at a = M / F from the root; beyond the tip, as the force at
    the tip and a couple. Shear and the turning of the root's joint are left out: a lower bound.
    """
    loaded = np.abs(force) > 0
    position = np.where(loaded, moment / np.where(loaded, force, 1.0), 0.0)
    near = np.minimum(position, reach)
    couple = np.where(loaded, force * (position - near), moment)
    return cantilever_deflection(force, near, reach, stiffness) + cantilever_couple_deflection(
        couple, reach, stiffness
    )


ARM = Kind(
    name="arm",
    says="a cantilever that carries at or near its tip",
    rows=(
        *tree(several=False),
        *array(bar_mass, {"area": "section.area", "length": "reach", "density": "density"}),
        *section(),
        Row("material", "", "material", Stock("materials", example="6063-T5")),
        Row("density", "kg/m^3", "density", formula=density_of, needs={"material": "material"}),
        Row(
            "modulus",
            "Pa",
            "modulus of elasticity in bending",
            Measure(above=0.0, example="69 GPa"),
            formula=modulus_of,
            needs={"material": "material"},
        ),
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
        Row(
            "bench_test.force",
            "N",
            "force of a bench test on one arm",
            Measure(above=0.0),
            formula=weight,
            needs={"mass": "bench_test.mass"},
        ),
        Row(
            "bench_test.mass",
            "kg",
            "mass hung on one arm in a bench test",
            Measure(above=0.0, example="20 kg"),
        ),
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
        Row(
            "allowed_stress",
            "Pa",
            "bending stress that its material may carry",
            formula=allowed_bending_stress,
            needs={"material": "material"},
        ),
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
            },
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
