"""Young and Budynas, Roark's Formulas for Stress and Strain (7th ed., 2002), table 11.2.

`seen` says how each number reached this table.
"""

from functools import wraps

import pytest

from reviewer.mechanics.annular_plates import (
    annular_fixed_ring_load,
    annular_fixed_uniform,
    annular_guided_ring_load,
    annular_guided_uniform,
    annular_simple_ring_load,
    annular_simple_uniform,
)
from reviewer.mechanics.plates import equivalent_patch_radius, simple_plate_patch_moment

HOLES = (0.1, 0.3, 0.5, 0.7, 0.9)  # hole radius / radius, the columns of the table


def table(formula, field, source, seen, printed):
    """One row of the table, to half of its last printed digit."""
    for hole, text in zip(HOLES, printed.split(), strict=True):
        value = float(text)
        half_digit = 0.5 * 10.0 ** -len(text.partition(".")[2])
        yield (
            of(formula, field),
            (1.0, hole, 1.0, 1.0, 0.3),
            value,
            1.02 * half_digit / abs(value),
            source,
            seen,
        )


def of(formula, field):
    """One field of a formula that returns several."""

    @wraps(formula)
    def value(*inputs):
        return getattr(formula(*inputs), field)

    return value


# fmt: off
ROWS = [
    *table(annular_simple_ring_load, "deflection", "case 1a Ky",
     "memory, recomputed from the differential equation", ".0364 .1266 .1933 .1927 .0938"),
    *table(annular_simple_ring_load, "moment", "case 1a K_Mtb",
     "memory, recomputed from the differential equation", ".3374 .6210 .7757 .8814 .9638"),
    *table(annular_guided_ring_load, "deflection", "case 1b Ky",
     "computed from the differential equation", ".0269 .0417 .0252 .0072 .0003"),
    *table(annular_guided_ring_load, "moment", "case 1b K_Mrb",
     "computed from the differential equation", ".2555 .4146 .3944 .2736 .0981"),
    *table(annular_fixed_ring_load, "deflection", "case 1e Ky",
     "computed from the differential equation", ".0143 .0330 .0233 .0070 .0003"),
    *table(annular_fixed_ring_load, "moment", "case 1e K_Mra",
     "computed from the differential equation", "-.0528 -.1687 -.2379 -.2124 -.0911"),
    *table(annular_simple_uniform, "deflection", "case 2a Ky",
     "computed from the differential equation, finite elements 0.05 %",
     ".0687 .0761 .0624 .0324 .0048"),
    *table(annular_simple_uniform, "moment", "case 2a K_Mtb",
     "computed from the differential equation", ".3965 .3272 .2404 .1469 .0497"),
    *table(annular_guided_uniform, "deflection", "case 2b Ky", "reprint, recomputed",
     ".0575 .0314 .0103 .0015 .00002"),
    *table(annular_guided_uniform, "moment", "case 2b K_Mrb", "reprint, recomputed",
     ".3003 .2185 .1223 .0456 .00505"),
    *table(annular_fixed_uniform, "deflection", "case 2e Ky", "reprint, recomputed",
     ".0166 .0132 .0053 .0009 .00001"),
    *table(annular_fixed_uniform, "moment", "case 2e K_Mra", "reprint, recomputed",
     "-.1246 -.1135 -.0800 -.0361 -.00470"),
    *[(simple_plate_patch_moment, (1.0, c, 1.0, 0.3), m, 4e-4, "table 11.2 case 16", "memory") for
     c, m in ((.05, .3895), (.1, .3176), (.2, .2455), (.3, .2029), (.5, .1478))],
    (equivalent_patch_radius, (0.0, 1.0), 0.325, 1e-9, "11.1, c = 0", "print"),
    (equivalent_patch_radius, (0.25, 1.0), 1.1**0.5 - 0.675, 1e-9, "11.1, c = t/4", "print"),
    (equivalent_patch_radius, (1.0, 1.0), 1.0, 1e-9, "11.1, c above t/2", "print"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
