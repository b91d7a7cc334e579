"""Section properties by finite elements: sharp-cornered tubes, slit tubes, open profiles.

`seen` says how each number reached this table.
"""

from functools import wraps

import pytest

from reviewer.mechanics.bending import bending_stress
from reviewer.mechanics.cantilevers import cantilever_deflection
from reviewer.mechanics.sections import box_section, pipe_section, round_section
from reviewer.mechanics.shafts import twist
from reviewer.mechanics.thin_sections import thin_open_torsion_constant

MM = 1e-3
BOXES = {
    (40, 40, 2): (73365.3, 112570, 130.1),
    (40, 40, 4): (125952, 197580, 256),
    (80, 40, 2): (131179, 308030, 103.4),
    (40, 20, 2): (14378.7, 34665, 50.2),
}
INERTIA = "second moment, exact"
TORSION = "warping analysis; Bredt is 2 to 6 % low"
SHEAR = "shear area at nu = 0; thin-wall theory is 1 to 6 % low"
ARM = box_section(0.04, 0.04, 0.002)
STIFF, SHEAR_STIFF = 70e9 * ARM.second_moment, 70e9 / 2.66 * ARM.shear_area


def of(formula, field):
    """One field of a formula that returns several."""

    @wraps(formula)
    def value(*inputs):
        return getattr(formula(*inputs), field)

    return value


# fmt: off
ROWS = [
    *[(of(box_section, "second_moment"), tuple(x * MM for x in size), values[0] * MM**4, 1e-5,
     INERTIA, "computed") for size, values in BOXES.items()],
    *[(of(box_section, "torsion_constant"), tuple(x * MM for x in size), values[1] * MM**4, 0.06,
     TORSION, "computed") for size, values in BOXES.items()],
    *[(of(box_section, "shear_area"), tuple(x * MM for x in size), values[2] * MM**2, 0.065, SHEAR,
     "computed") for size, values in BOXES.items()],
    (of(pipe_section, "torsion_constant"), (0.04, 0.002), 86362e-12, 1e-3, "round tube",
     "computed"),
    (of(pipe_section, "torsion_constant"), (0.04, 0.002), 86431e-12, 1e-5, "round tube, exact",
     "computed"),
    (of(round_section, "shear_area"), (1.0,), 0.8571 * 3.14159265 / 4, 1e-4,
     "kappa of a circle at nu = 0", "computed"),
    (of(round_section, "torsion_modulus"), (1.0,), 3.14159265 / 16, 1e-8, "round bar", "computed"),
    (thin_open_torsion_constant, (3.14159265 * 0.038, 0.002), 314.7e-12, 0.015, "slit round tube",
     "computed"),
    (thin_open_torsion_constant, (0.152, 0.002), 406.7e-12, 0.005, "slit box", "computed"),
    (thin_open_torsion_constant, (0.077, 0.003), 682.4e-12, 0.02, "angle 40 x 40 x 3", "computed"),
    (thin_open_torsion_constant, (0.114, 0.003), 1021.7e-12, 0.01, "channel 60 x 30 x 3",
     "computed"),
    (cantilever_deflection, (100.0, 0.6, 0.6, STIFF), 1.4020e-3, 1e-4,
     "arm 40 x 40 x 2, 600 long", "computed"),
    (cantilever_deflection, (100.0, 0.6, 0.6, STIFF, SHEAR_STIFF), 1.4195e-3, 1e-3,
     "the same with shear", "computed"),
    (bending_stress, (60.0, ARM.section_modulus), 16.36e6, 3e-4, "the same", "computed"),
    (twist, (10.0, 0.6, 70e9 / 2.66, 112570e-12), 0.1160 / 57.29578, 6e-4,
     "the same, twisted by 10 N m", "computed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)


@pytest.mark.parametrize("size", BOXES)
def test_the_rough_ones_err_to_the_safe_side(size):
    section = box_section(*(x * MM for x in size))
    assert section.torsion_constant < BOXES[size][1] * MM**4
    assert section.shear_area < BOXES[size][2] * MM**2


@pytest.mark.parametrize(("slender", "found"), [(2, 1.1822), (3, 1.0793), (4, 1.0436), (8, 1.0099)])
def test_shear_of_short_cantilevers(slender, found):
    """Plane stress, nu 0.3, root clamped over its face: Timoshenko is up to 1.1 % high."""
    stiff = 1.0 / 12
    shear = 5 / 6 / 2.6
    ratio = cantilever_deflection(1.0, slender, slender, stiff, shear) / (slender**3 / 3 / stiff)
    assert found <= ratio <= 1.0115 * found
