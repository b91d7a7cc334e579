"""A shaft that turns levers: torsion, bending, and the lag of what it lifts."""

from reviewer.mechanics.bending import bending_stress
from reviewer.mechanics.formula import Number
from reviewer.mechanics.shafts import lever_lag, torsion_stress, von_mises_stress
from reviewer.parts.allowed import stated
from reviewer.parts.arm import bar_mass
from reviewer.parts.bench_test import TWISTED, bar_shear_modulus, twisted_bar
from reviewer.parts.figures import LIES, figure
from reviewer.parts.from_stock import density_of, modulus_of
from reviewer.parts.groups import same, single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.lasting import strength_in_time
from reviewer.parts.row import Measure, Row, Stock
from reviewer.parts.shaft_fatigue import fatigue
from reviewer.parts.shaft_levers import (
    in_line,
    levers,
    next_size,
    shaft_moment,
    shaft_section,
    shaft_twist,
)


def lifting_torque(force: Number, lever: Number) -> Number:
    """Torque that the levers ask of the shaft when they stand level.

    Statics.

    Notes
    -----
    F a. All of the force may stand over one lever, so its share is not split.
    """
    return force * lever


SHAFT = Kind(
    name="shaft",
    says="a bar that turns and drives levers",
    rows=(
        *tree(),
        LIES,
        figure("shaft", "diameter", "length", "azimuth"),
        *single(bar_mass, {"area": "section.area", "length": "length", "density": "density"}),
        Row("diameter", "m", "outer diameter", Measure(above=0.0, example="20 mm")),
        Row("wall", "m", "wall thickness of a hollow shaft", Measure(above=0.0)),
        Row(
            "length",
            "m",
            "length that twists, from first to last lever",
            Measure(above=0.0, example="600 mm"),
        ),
        Row(
            "span",
            "m",
            "distance between its bearings",
            Measure(above=0.0),
            formula=lambda length: length,
            needs={"length": "length"},
        ),
        Row("material", "", "material", Stock("materials", example="C45")),
        Row("density", "kg/m^3", "density", formula=density_of, needs={"material": "material"}),
        Row(
            "shear_modulus",
            "Pa",
            "shear modulus",
            Measure(above=0.0),
            formula=bar_shear_modulus,
            needs={"material": "material?", **TWISTED},
        ),
        *twisted_bar(),
        Row(
            "modulus",
            "Pa",
            "modulus of elasticity",
            Measure(above=0.0),
            formula=modulus_of,
            needs={"material": "material"},
        ),
        Row(
            "section",
            "",
            "its cross-section",
            formula=shaft_section,
            needs={"diameter": "diameter", "wall": "wall?"},
        ),
        Row(
            "section.area", "m^2", "area of the section", needs={"solution": "section"}, take="area"
        ),
        Row(
            "section.second_moment",
            "m^4",
            "second moment of area",
            needs={"solution": "section"},
            take="second_moment",
        ),
        Row(
            "section.section_modulus",
            "m^3",
            "section modulus",
            needs={"solution": "section"},
            take="section_modulus",
        ),
        Row(
            "section.torsion_constant",
            "m^4",
            "torsion constant",
            needs={"solution": "section"},
            take="torsion_constant",
        ),
        Row(
            "section.torsion_modulus",
            "m^3",
            "torque over the peak shear stress",
            needs={"solution": "section"},
            take="torsion_modulus",
        ),
        Row(
            "bending_stiffness",
            "N m^2",
            "modulus times second moment of area",
            formula=lambda modulus, second_moment: modulus * second_moment,
            needs={"modulus": "modulus", "second_moment": "section.second_moment"},
        ),
        *levers(),
        Row(
            "closes_with",
            "N",
            "force with which what it lifts closes a gap: all of its weight",
            formula=same,
            needs={"place": "bears.force"},
        ),
        Row(
            "torque",
            "N m",
            "torque that it must pass on",
            Measure(at_least=0.0),
            formula=lifting_torque,
            needs={"force": "bears.force", "lever": "lever.length"},
        ),
        Row(
            "bending_moment",
            "N m",
            "bending moment between its bearings",
            Measure(at_least=0.0),
            formula=shaft_moment,
            needs={
                "force": "bears.force",
                "span": "span",
                "length": "length",
                "count": "lever.count",
                "share": "lever.share",
                "at": "lever.at?",
            },
        ),
        *in_line(),
        Row(
            "whole_moment",
            "N m",
            "bending moment of its load and of a bearing out of line together",
            formula=lambda load, misfit: load + misfit,
            needs={"load": "bending_moment", "misfit": "supports.moment"},
        ),
        Row(
            "torsion_stress",
            "Pa",
            "peak shear stress of torsion",
            formula=torsion_stress,
            needs={"torque": "torque", "torsion_modulus": "section.torsion_modulus"},
        ),
        Row(
            "bending_stress",
            "Pa",
            "bending stress",
            formula=bending_stress,
            needs={"moment": "whole_moment", "section_modulus": "section.section_modulus"},
        ),
        Row(
            "combined_stress",
            "Pa",
            "bending and torsion together",
            formula=von_mises_stress,
            needs={"normal_stress": "bending_stress", "shear_stress": "torsion_stress"},
        ),
        *strength_in_time(),
        Row(
            "twist",
            "rad",
            "twist from first to last lever",
            formula=shaft_twist,
            needs={
                "torque": "torque",
                "length": "length",
                "count": "lever.count",
                "share": "lever.share",
                "torsion_constant": "section.torsion_constant",
                "shear_modulus": "shear_modulus",
            },
        ),
        Row(
            "lag",
            "m",
            "how much later the last lever lifts than the first",
            formula=lever_lag,
            needs={"twist": "twist", "lever_length": "lever.length"},
            read="at the first and the last lever, from what carries the shaft; the difference",
        ),
        Row(
            "allowed_lag",
            "m",
            "lag that the lift may have from side to side",
            Measure(above=0.0, example="1 mm"),
            formula=stated,
            needs={"limit": "limit.lag"},
        ),
        *next_size(),
        *fatigue(),
    ),
)
