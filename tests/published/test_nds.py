"""National Design Specification for Wood Construction (NDS 2018) and the AWC's worked examples.

`seen` says how each number reached this table.
"""

from functools import wraps

import pytest

from reviewer.mechanics.dowel_bearing import (
    nds_bearing_across,
    nds_bearing_along,
    nds_small_bearing,
    nds_steel_bearing,
)
from reviewer.mechanics.group_action import nds_group_action, nds_slip_modulus
from reviewer.mechanics.pull_through import nds_head_pull_through
from reviewer.mechanics.spacing import nds_bolt_spacing, nds_geometry_factor, nds_screw_end_distance
from reviewer.mechanics.withdrawal import (
    nds_lag_screw_withdrawal,
    nds_nail_withdrawal,
    nds_wood_screw_withdrawal,
)
from reviewer.mechanics.wood import bearing_area_factor
from reviewer.mechanics.yield_modes_nds import nds_double_shear, nds_single_shear

IN, LB = 0.0254, 4.4482216
PSI = LB / IN**2
RIGHT = 1.5707963267948966
BEARING = [
    # G, along, across at 3/8 in, across at 1/2 in, under 1/4 in, psi
    (0.42, 4704, 2832, 2452, 3364),
    (0.50, 5600, 3646, 3158, 4637),
    (0.55, 6160, 4186, 3626, 5526),
    (0.67, 7504, 5573, 4827, 7945),
]
LAG = [
    # G, diameter in, pounds per inch of thread
    (0.73, 1 / 2, 668),
    (0.67, 1 / 4, 349),
    (0.67, 3 / 8, 473),
    (0.55, 1 / 2, 437),
    (0.50, 1 / 4, 225),
    (0.50, 3 / 8, 305),
    (0.50, 1 / 2, 378),
    (0.50, 5 / 8, 447),
    (0.50, 3 / 4, 513),
    (0.43, 3 / 8, 243),
    (0.42, 1 / 4, 173),
    (0.42, 3 / 8, 235),
    (0.35, 1 / 2, 222),
]
NAILS = [(0.131, 1e5, 97), (0.148, 9e4, 118), (0.162, 9e4, 141), (0.192, 8e4, 170)]
T12A = "table 12A, rounded to 10 lb"


@wraps(nds_single_shear)
def nail(diameter, length, side, gravity, yield_psi):
    """Allowable value of a nail in pounds, inches and psi."""
    bearing = nds_small_bearing(gravity)
    return (
        nds_single_shear(
            diameter * IN, (length - side) * IN, side * IN, bearing, bearing, yield_psi * PSI, 0.0
        ).capacity
        / LB
    )


@wraps(nds_single_shear)
def half_inch_bolt(main, side, gravity, main_across, side_across):
    """Allowable value of a 1/2 in bolt in pounds; a member loaded across its grain or along."""
    strengths = (nds_bearing_along(gravity), nds_bearing_across(gravity, IN / 2))
    angle = RIGHT if main_across or side_across else 0.0
    return (
        nds_single_shear(
            IN / 2,
            main * IN,
            side * IN,
            strengths[main_across],
            strengths[side_across],
            45e3 * PSI,
            angle,
        ).capacity
        / LB
    )


def of(formula, field):
    """One field of a formula that returns several."""

    @wraps(formula)
    def value(*inputs):
        return getattr(formula(*inputs), field)

    return value


# fmt: off
ROWS = [
    *[(nds_bearing_along, (g,), value * PSI, 1e-4, "table 12.3.3 formula", "reprint") for g, value,
     *_ in BEARING],
    *[(nds_bearing_across, (g, 0.375 * IN), value * PSI, 2e-4, "table 12.3.3 formula", "reprint")
     for g, _, value, *_ in BEARING],
    *[(nds_bearing_across, (g, 0.5 * IN), value * PSI, 2e-4, "table 12.3.3 formula", "reprint") for
     g, _, _, value, _ in BEARING],
    *[(nds_small_bearing, (g,), value * PSI, 2e-4, "table 12.3.3 formula", "reprint") for g, *_,
     value in BEARING],
    *[(nds_lag_screw_withdrawal, (g, d * IN, IN), pounds * LB, 0.55 / pounds, "table 12.2A",
     "print") for g, d, pounds in LAG],
    (nds_lag_screw_withdrawal, (0.55, IN / 2, 2.1875 * IN), 955 * LB, 6e-4, "AWC example E2.3",
     "print"),
    (nds_wood_screw_withdrawal, (0.45, 0.190 * IN, IN), 109 * LB, 7e-3, "table 12.2B",
     "print, truncated"),
    (nds_nail_withdrawal, (0.42, 0.131 * IN, 2.395 * IN), 49.5 * LB, 1e-3, "AWC example E2.1a",
     "print"),
    (nds_head_pull_through, (0.50, 0.363 * IN, 0.5 * IN), 98.4 * LB, 6e-4, "12.2.5",
     "formula memory, computed"),
    (nds_head_pull_through, (0.50, 0.4 * IN, 1.0 * IN), 1725 * 3.14159265 * 0.16 * 0.25 * LB,
     1e-6, "12.2.5, thick", "formula memory"),
    (nail, (0.148, 3.0, 0.75, 0.5, 9e4), 105, 5e-3, "AWC nail example, mode IIIs", "print"),
    *[(nail, (d, 30 * d, 1.5, 0.5, fyb), pounds, 5.1e-3, "table 12N", "memory, recomputed") for d,
     fyb, pounds in NAILS],
    (half_inch_bolt, (1.5, 1.5, 0.50, 0, 0), 480, 0.0105, T12A, "memory, recomputed"),
    (half_inch_bolt, (1.5, 1.5, 0.50, 0, 1), 300, 0.017, T12A, "memory, recomputed"),
    (half_inch_bolt, (1.5, 1.5, 0.50, 1, 0), 300, 0.017, T12A, "memory, recomputed"),
    (half_inch_bolt, (1.5, 1.5, 0.50, 1, 1), 220, 0.023, T12A, "memory, recomputed"),
    (half_inch_bolt, (1.5, 1.5, 0.55, 0, 0), 530, 0.0095, T12A, "memory, recomputed"),
    (half_inch_bolt, (1.5, 1.5, 0.55, 0, 1), 330, 0.0155, T12A, "memory, recomputed"),
    (half_inch_bolt, (1.5, 1.5, 0.55, 1, 1), 250, 0.020, T12A, "memory, recomputed"),
    (half_inch_bolt, (3.5, 1.5, 0.50, 0, 0), 610, 0.0085, T12A, "memory, recomputed"),
    (half_inch_bolt, (3.5, 1.5, 0.50, 0, 1), 370, 0.0140, T12A, "memory, recomputed"),
    (half_inch_bolt, (3.5, 1.5, 0.50, 1, 0), 430, 0.0120, T12A, "memory, recomputed"),
    (of(nds_double_shear, "capacity"),
     (IN / 2, 1.5 * IN, 1.5 * IN, 5600 * PSI, 5600 * PSI, 45e3 * PSI, 0.0), 1050 * LB, 5e-3,
     "table 12F, 1/2 in, G 0.50, 1.5 + 1.5 + 1.5", "memory"),
    (bearing_area_factor, (IN,), 1.375, 1e-9, "3.10.4", "memory"),
    (of(nds_bolt_spacing, "end_full"), (0.01, 0.03), 0.07, 1e-9, "table 12.5.1A, softwood 7 D",
     "memory"),
    (of(nds_bolt_spacing, "end_least"), (0.01, 0.03, 5.0), 0.025, 1e-9,
     "table 12.5.1A, hardwood 2.5 D", "memory"),
    (of(nds_bolt_spacing, "in_row_least"), (0.01, 0.03), 0.03, 1e-9, "table 12.5.1B, 3 D",
     "memory"),
    (of(nds_bolt_spacing, "loaded_edge"), (0.01, 0.03), 0.04, 1e-9, "table 12.5.1C, 4 D", "memory"),
    (of(nds_bolt_spacing, "between_rows_across"), (0.01, 0.02), 0.025, 1e-9,
     "table 12.5.1D, l/D 2", "memory"),
    (of(nds_bolt_spacing, "between_rows_across"), (0.01, 0.04), 0.0375, 1e-9,
     "table 12.5.1D, (5 l + 10 D)/8", "memory"),
    (of(nds_bolt_spacing, "between_rows_across"), (0.01, 0.08), 0.05, 1e-9,
     "table 12.5.1D, l/D 6 and more", "memory"),
    (nds_geometry_factor, (3.5, 7.0, 3.5), 0.5, 1e-9, "12.5.1, half of the full end distance",
     "memory"),
    (nds_screw_end_distance, (0.004, 0.0), 0.06, 1e-9, "commentary C12.1.5.7, 15 D", "memory"),
    (nds_screw_end_distance, (0.004, 1.0), 0.04, 1e-9, "commentary C12.1.5.7, 10 D", "memory"),
]
# fmt: on


# As/Am, As in2: factors for 2 to 12 bolts in a row
GROUPS = {
    (0.5, 5): (0.98, 0.92, 0.84, 0.75, 0.68, 0.61, 0.55, 0.50, 0.45, 0.41, 0.38),
    (0.5, 12): (0.99, 0.96, 0.92, 0.87, 0.81, 0.76, 0.70, 0.65, 0.61, 0.57, 0.53),
    (0.5, 20): (0.99, 0.98, 0.95, 0.91, 0.87, 0.83, 0.78, 0.74, 0.70, 0.66, 0.62),
    (0.5, 40): (1.00, 0.99, 0.97, 0.95, 0.93, 0.90, 0.87, 0.84, 0.81, 0.78, 0.75),
    (1.0, 5): (1.00, 0.97, 0.91, 0.85, 0.78, 0.71, 0.64, 0.59, 0.54, 0.49, 0.45),
    (1.0, 12): (1.00, 0.99, 0.96, 0.93, 0.88, 0.84, 0.79, 0.74, 0.70, 0.65, 0.61),
    (1.0, 28): (1.00, 0.99, 0.98, 0.97, 0.94, 0.92, 0.89, 0.86, 0.83, 0.80, 0.77),
    (1.0, 64): (1.00, 1.00, 0.99, 0.98, 0.97, 0.96, 0.95, 0.93, 0.91, 0.90, 0.88),
}


@wraps(nds_group_action)
def in_the_table(count, ratio, side):
    """Factor of bolts of 1 in, 4 in apart, in wood of 1,400,000 psi."""
    stretch = 1.4e6 * PSI * side * IN * IN
    return nds_group_action(count, 4 * IN, nds_slip_modulus(IN), stretch / ratio, stretch)


GROUP_ROWS = [
    (in_the_table, (count, ratio, side), factor, 0.0051 / factor,
     "table 11.3.6A, rounded to 0.01", "memory, recomputed")
    for (ratio, side), factors in GROUPS.items()
    for count, factor in enumerate(factors, start=2)
]  # fmt: skip
STEEL_ROWS = [
    (nds_steel_bearing, (58e3 * PSI,), 87e3 * PSI, 1e-9, "table 12B, A36 plate 1/4 in", "memory"),
    (nds_steel_bearing, (45e3 * PSI, 1.0), 61850 * PSI, 5e-4, "table 12B, A653 GR 33 sheet",
     "memory"),
    (nds_slip_modulus, (IN,), 180e3 * LB / IN, 1e-7, "11.3.6, wood to wood", "memory"),
    (nds_slip_modulus, (IN / 4, 1.0), 270e3 / 8 * LB / IN, 1e-6, "11.3.6, wood to metal",
     "memory"),
]  # fmt: skip
ROWS += GROUP_ROWS + STEEL_ROWS


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
