"""Ring girders on equal columns: textbook tables of circular beams, and a frame program.

`seen` says how each number reached this table.
"""

from functools import wraps
from math import degrees, pi

import pytest

from reviewer.mechanics.ring_beams import ring_beam

COUNTS = (3, 4, 5, 6, 8, 9, 10, 12)
SUPPORT = (0.3954, 0.2146, 0.1352, 0.0931, 0.0519, 0.0409, 0.0331, 0.023)
MIDDLE = (0.2092, 0.1107, 0.069, 0.0472, 0.0262, 0.0206, 0.0166, 0.0115)
TORQUE = (0.0828, 0.0331, 0.0166, 0.0095, 0.0039, 0.0028, 0.002, 0.0012)
ANGLE = (25.79, 19.2, 15.31, 12.73, 9.53, 8.47, 7.62, 6.35)
SAG = (0.07229, 0.01946, 0.0074, 0.00343, 0.00104, 0.00064, 0.00042, 0.0002)
BOOK = (0.215, 0.110, 0.0330)  # the printed table at four columns
TABLE = "table of circular beams; printed entries are rounded by up to 6 %"
FRAME = "frame program, 0.0003 absolute; K = EI/GJ 1.3"


def row(field, values, half_digit, source, seen):
    """One column of the table, to half of its last digit."""
    frame = 2e-4 if source == FRAME else 0.0  # polygon for a ring
    for count, value in zip(COUNTS, values, strict=True):
        yield (
            of(ring_beam, field),
            (1.0, 1.0, count, 1.0, 1 / 1.3),
            value,
            1.02 * half_digit / value + frame,
            source,
            seen,
        )


@wraps(ring_beam)
def torque_place(count):
    """Where the torque peaks, in degrees from a support."""
    return degrees(ring_beam(1.0, 1.0, count, 1.0, 1.0).torque_angle)


def of(formula, field):
    """One field of a formula that returns several."""

    @wraps(formula)
    def value(*inputs):
        return getattr(formula(*inputs), field)

    return value


# fmt: off
ROWS = [
    *row("support_moment", SUPPORT, 5e-5, TABLE, "print, recomputed"),
    *row("middle_moment", MIDDLE, 5e-5, TABLE, "print, recomputed"),
    *row("peak_torque", TORQUE, 5e-5, TABLE, "print, recomputed"),
    *row("deflection", SAG, 5e-6, FRAME, "computed"),
    *[(torque_place, (count,), place, 0.005 / place, TABLE, "print, recomputed") for count, place
     in zip(COUNTS, ANGLE, strict=True)],
    (of(ring_beam, "support_moment"), (1.0, 1.0, 4, 1.0, 1.0), BOOK[0], 3e-3, TABLE, "print"),
    (of(ring_beam, "middle_moment"), (1.0, 1.0, 4, 1.0, 1.0), BOOK[1], 1e-2, TABLE, "print"),
    (of(ring_beam, "peak_torque"), (1.0, 1.0, 4, 1.0, 1.0), BOOK[2], 5e-3, TABLE, "print"),
    (of(ring_beam, "support_moment"), (2 / pi, 1.0, 4, 1.0, 1.0), 0.137, 4e-3,
     "ring girders of tanks, C = 0.137 on w R^2 2 theta", "memory"),
    (of(ring_beam, "middle_moment"), (2 / pi, 1.0, 4, 1.0, 1.0), 0.070, 8e-3,
     "ring girders of tanks, C = 0.070", "memory"),
    (of(ring_beam, "support_moment"), (3 / pi, 1.0, 6, 1.0, 1.0), 0.089, 6e-3,
     "ring girders of tanks, C = 0.089", "memory"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
