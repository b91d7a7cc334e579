"""Guides that jam, by statics textbooks. `seen` says how each number reached this table."""

import pytest

from reviewer.mechanics.guides import largest_offset, share_of_push

INCH = 0.0254
BY_SCRIPT = "two-point contact, by script"

ROWS = [
    (
        largest_offset,
        (6 * INCH, 0.25),
        12 * INCH,
        1e-9,
        "Beer and Johnston, bracket on a pipe: holds from 12 in on",
        "print",
    ),
    (largest_offset, (1.0, 0.25), 2.0, 1e-9, "trade's 2:1 rule of linear bearings", "print"),
    *[
        (largest_offset, (1.0, friction), offset, 5e-3, BY_SCRIPT, "computed")
        for friction, offset in [
            (0.10, 5.0),
            (0.15, 3.33),
            (0.20, 2.5),
            (0.30, 1.67),
            (0.40, 1.25),
            (0.50, 1.0),
        ]
    ],
    (share_of_push, (12 * INCH, 6 * INCH, 0.25), 0.0, 1e-12, "Beer and Johnston, limit", "print"),
]


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=0, abs=tolerance), (source, seen)
