"""Wood Handbook, FPL-GTR-282 (2021), and its edition FPL-GTR-190 (2010).

`seen` says how each number reached this table.
"""

from math import pi

import pytest

from reviewer.mechanics.moisture import (
    change_coefficient,
    equilibrium_moisture,
    movement,
    movement_from_shrinkage,
)
from reviewer.mechanics.withdrawal import (
    lag_screw_withdrawal,
    nail_withdrawal,
    wood_screw_withdrawal,
)
from reviewer.mechanics.wood import density, hankinson

IN, LB = 0.0254, 4.4482216
TABLE_4_2 = {
    # relative humidity %: moisture % at 30, 70 and 130 degrees Fahrenheit
    10: (2.6, 2.5, 2.0),
    20: (4.6, 4.5, 3.7),
    30: (6.3, 6.2, 5.2),
    40: (7.9, 7.7, 6.6),
    50: (9.5, 9.2, 7.9),
    60: (11.3, 11.0, 9.4),
    65: (12.4, 12.0, 10.3),
    70: (13.5, 13.1, 11.3),
    80: (16.5, 16.0, 14.0),
    85: (18.5, 17.9, 15.8),
}
SHRINKAGE = [
    # species, radial and tangential shrinkage %, coefficients per % moisture
    ("sugar maple", 4.8, 9.9, 0.00165, 0.00353),
    ("yellow birch", 7.3, 9.5, 0.00256, 0.00338),
    ("black walnut", 5.5, 7.8, 0.00190, 0.00274),
    ("black cherry", 3.7, 7.1, 0.00126, 0.00248),
    ("white ash", 4.9, 7.8, 0.00169, 0.00274),
    ("American beech", 5.5, 11.9, 0.00190, 0.00431),
]


def celsius(fahrenheit):
    return (fahrenheit - 32) / 1.8 + 273.15


# fmt: off
ROWS = [
    *[(equilibrium_moisture, (celsius(f), rh / 100), m / 100, 0.07 / m, "table 4-2", "reprint") for
     rh, row in TABLE_4_2.items() for f, m in zip((30, 70, 130), row, strict=True)],
    (equilibrium_moisture, (293.15, 0.65), 0.120, 5e-3, "20 C and 65 %: 12 %", "reprint"),
    *[(change_coefficient, (s_r / 100,), c_r, 5.1e-6 / c_r, f"table 13-5 {name}", "reprint") for
     name, s_r, _, c_r, _ in SHRINKAGE],
    *[(change_coefficient, (s_t / 100,), c_t, 5.1e-6 / c_t, f"table 13-5 {name}", "reprint") for
     name, _, s_t, _, c_t in SHRINKAGE],
    (movement, (0.232, 0.00245, 0.08, 0.11), 1.705e-3, 4e-4, "ch. 13 example, white fir",
     "memory, recomputed"),
    (movement_from_shrinkage, (0.232, 0.071, 0.08, 0.11), 1.738e-3, 4e-4,
     "ch. 13 example by the green size", "memory, recomputed"),
    (movement, (12 * IN, 0.00369, 0.06, 0.12), 0.2657 * IN, 3e-4,
     "red oak of 12 in, GTR-190 coefficients", "computed"),
    (movement, (0.6, 0.00369, 0.062, 0.131), 15.28e-3, 4e-4,
     "red oak of 600 mm, 30 to 70 % humidity", "computed"),
    (density, (0.63, 0.12), 706, 9e-3, "ch. 4, northern red oak at 12 %", "memory"),
    (hankinson, (46.6e6, 7.0e6, pi / 4), 12.17e6, 5e-4, "ch. 5, red oak at 45 degrees",
     "formula reprint, computed"),
    (nail_withdrawal, (0.48, 3.33e-3, 38.1e-3), 1096, 5e-4, "eq. 8-1", "memory"),
    (nail_withdrawal, (0.48, 0.131 * IN, 1.5 * IN), 7850 * 0.48**2.5 * 0.131 * 1.5 * LB, 1e-3,
     "eq. 8-1 in pounds", "memory"),
    (wood_screw_withdrawal, (0.63, 4.83e-3, 25.4e-3), 5271, 5e-4, "eq. 8-10", "memory"),
    (wood_screw_withdrawal, (0.63, 0.19 * IN, IN), 15700 * 0.63**2 * 0.19 * LB, 1e-3,
     "eq. 8-10 in pounds", "memory"),
    (lag_screw_withdrawal, (0.48, 9.525e-3, 50.8e-3), 11486, 5e-4, "eq. 8-14", "memory"),
    (lag_screw_withdrawal, (0.48, 0.375 * IN, 2 * IN), 8100 * 0.48**1.5 * 0.375**0.75 * 2 * LB,
     1e-3, "eq. 8-14 in pounds", "memory"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
