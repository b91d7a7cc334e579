"""EN 1995-1-1:2004 (Eurocode 5).

`seen` says how each number reached this table.
"""

from functools import wraps

import pytest

from reviewer.mechanics.dowel_bearing import (
    en_board_bolt_embedment,
    en_bolt_embedment,
    en_nail_embedment,
    en_plywood_bolt_embedment,
    en_plywood_nail_embedment,
    en_yield_moment,
)
from reviewer.mechanics.joint_slip import en_bolt_slip_modulus, en_nail_slip_modulus
from reviewer.mechanics.layers import connection_efficiency, slipping_layers_stiffness
from reviewer.mechanics.pull_through import (
    en_head_pull_through,
    washer_area,
    washer_capacity,
    washer_pressure,
)
from reviewer.mechanics.spacing import en_bolt_spacing
from reviewer.mechanics.steel_to_timber import en_steel_to_timber
from reviewer.mechanics.withdrawal import en_screw_withdrawal
from reviewer.mechanics.wood import creep_deflection, design_strength, perpendicular_capacity
from reviewer.mechanics.wood_factors import DEFORMATION, MODIFICATION, PARTIAL_FACTOR
from reviewer.mechanics.yield_modes_en import en_double_shear, en_single_shear

BOLT = (0.012, 0.05, 0.05, 25.256e6, 25.256e6, 76.745)
NAIL = (0.0031, 0.045, 0.045, 20.440e6, 20.440e6, 3.410)
M12 = "eq. (8.6), M12 4.6 in C24 50 + 50 along the grain"
WIRE = "eq. (8.6), nail 3.1 in C24 45 + 45"
K_MOD = MODIFICATION["solid timber", 1]["medium-term"]
GAMMA = PARTIAL_FACTOR["solid timber"]


def of(formula, field):
    """One field of a formula that returns several."""

    @wraps(formula)
    def value(*inputs):
        return getattr(formula(*inputs), field)

    return value


# fmt: off
ROWS = [
    (design_strength, (24e6, K_MOD, GAMMA), 14.769e6, 4e-5,
     "eq. (2.14), C24 in bending, medium term", "reprint"),
    (creep_deflection, (2.391e-3, 0.0, DEFORMATION["solid timber", 1], 0.0), 3.826e-3, 2e-4,
     "2.2.3, oak shelf", "computed"),
    (creep_deflection, (13.587e-3, 0.0, DEFORMATION["MDF", 1], 0.0), 44.16e-3, 2e-4,
     "2.2.3, MDF shelf", "computed"),
    (creep_deflection, (0.0, 10e-3, 0.6, 0.3), 11.8e-3, 1e-9, "eq. (2.4), 1 + psi_2 k_def",
     "memory"),
    (perpendicular_capacity, (2.5e6, 0.1, 0.1, 0.2, 0.2, 1.5), 2.5e6 * 0.1 * 0.16 * 1.5, 1e-9,
     "6.1.5 (A1), 30 mm each side, k_c,90 1.5", "memory"),
    (en_bolt_embedment, (350.0, 0.012, 0.0, 1.35), 25.256e6, 1e-5, "eq. (8.32)",
     "formula memory, computed"),
    (en_nail_embedment, (350.0, 0.0031), 20.440e6, 2e-5, "eq. (8.15)", "formula memory, computed"),
    (en_plywood_bolt_embedment, (630.0, 0.008), 0.11 * 0.92 * 630e6, 1e-9, "eq. (8.36)",
     "formula memory"),
    (en_plywood_nail_embedment, (630.0, 0.001), 0.11 * 630e6, 1e-9, "eq. (8.20) at 1 mm",
     "formula memory"),
    (en_yield_moment, (400e6, 0.012), 76.745, 1e-5, "eq. (8.30), M12 4.6",
     "formula print, computed"),
    (en_yield_moment, (600e6, 0.0031), 3.410, 1.5e-4, "eq. (8.30), nail 3.1",
     "formula print, computed"),
    *[(of(en_single_shear, mode), BOLT, value, 8e-5, M12, "formula print, computed") for mode,
     value in zip("abcdef", (15154, 15154, 6277, 6809, 6809, 7844), strict=True)],
    (of(en_single_shear, "capacity"), BOLT, 6277, 8e-5, M12, "formula print, computed"),
    *[(of(en_single_shear, mode), NAIL, value, 5e-4, WIRE, "formula print, computed") for mode,
     value in zip("abcdef", (2851, 2851, 1181, 1076, 1076, 756.0), strict=True)],
    (of(en_double_shear, "j"), BOLT, 6809, 8e-5, "eq. (8.7), same as (8.6 d)",
     "formula memory, computed"),
    (of(en_double_shear, "k"), BOLT, 7844, 8e-5, "eq. (8.7), same as (8.6 f)",
     "formula memory, computed"),
    (en_board_bolt_embedment, (0.008, 0.018), 25.60e6, 2e-4, "eq. (8.37), OSB 18, d 8",
     "formula memory, computed"),
    *[(of(en_steel_to_timber, field), (0.012, 0.05, plate, 25.256e6, 76.745), value, 8e-5, source,
     "formula memory, computed") for plate, source, values in (
        (0.003, "eq. (8.9), M12 4.6 in C24 50, plate 3", (6061.4, 7844, 7844)),
        (0.012, "eq. (8.10), M12 4.6 in C24 50, plate 12", (15154, 8347.6, 11093)),
     ) for field, value in zip(("crushes", "bends_once", "bends_twice"), values, strict=True)],
    (of(en_steel_to_timber, "capacity"), (0.012, 0.05, 0.003, 25.256e6, 76.745), 6061.4, 8e-5,
     "eq. (8.9), the least", "formula memory, computed"),
    (en_screw_withdrawal, (350.0, 0.008, 0.060), 6355, 8e-5, "eq. (8.38), d 8, l 60",
     "formula print, computed"),
    (en_head_pull_through, (350.0, 0.0062), 330, 2e-3, "8.3.2, d_h 6.2", "formula print, computed"),
    (washer_capacity, (2.5e6, 0.036, 0.012), 6639, 8e-5, "8.5.2, washer 36 on M12 in C24",
     "formula print, computed"),
    (washer_area, (0.036, 0.013), 6639 / 7.5e6, 8e-5, "8.5.2, the same washer",
     "formula print, computed"),
    (washer_pressure, (6639 / 3, 0.036, 0.012, 0.004), 2.5e6, 8e-5, "8.5.2, the same washer",
     "formula print, computed"),
    (en_bolt_slip_modulus, (420.0, 0.012), 4.491e6, 2e-4, "table 7.1, C24, d 12",
     "formula memory, computed"),
    (en_nail_slip_modulus, (420.0, 0.0031), 0.709e6, 1e-3, "table 7.1, C24, d 3.1",
     "formula memory, computed"),
    (of(en_bolt_spacing, "in_row"), (0.012, 0.0), 0.060, 1e-9, "table 8.4, 5 d", "memory"),
    (of(en_bolt_spacing, "between_rows"), (0.012, 0.0), 0.048, 1e-9, "table 8.4, 4 d", "memory"),
    (of(en_bolt_spacing, "loaded_end"), (0.010, 0.0), 0.080, 1e-9, "table 8.4, 80 mm", "memory"),
    (of(en_bolt_spacing, "unloaded_end"), (0.012, 0.0), 0.048, 1e-9, "table 8.4, 4 d", "memory"),
    (of(en_bolt_spacing, "loaded_edge"), (0.012, 1.5707963267948966), 0.048, 1e-9,
     "table 8.4, 4 d", "memory"),
    (of(en_bolt_spacing, "unloaded_edge"), (0.012, 0.0), 0.036, 1e-9, "table 8.4, 3 d", "memory"),
    (connection_efficiency, (9.869604401089358e6, 1e6, 0.1, 1.0),
     1 / (1 + 9.869604401089358**2 / 10), 1e-9, "eq. (B.5)", "formula memory"),
    (slipping_layers_stiffness, (1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 0.0, 0.0, 0.0), 8 / 12,
     1e-9, "eq. (B.1), two layers glued", "formula memory"),
    (slipping_layers_stiffness, (1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 0.5, 1.0, 1.0, 1.0, 0.5),
     3 / 12 + 1.0, 1e-9, "eq. (B.1), three layers half glued", "formula memory"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
