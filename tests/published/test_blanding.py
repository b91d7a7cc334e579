"""Blanding, Exact Constraint: Machine Design Using Kinematic Principles (1999), from memory.

Also Maxwell's coupling of three grooves. `seen` says how each number reached this table.
"""

from functools import wraps

import numpy as np
import pytest

from reviewer.mechanics.constraint import (
    constraint_matrix,
    constraint_state,
    dependent_rows,
    free_motions,
)

UP = (0.0, 0.0, 1.0)


def body(*supports):
    """Constraint matrix of a body on supports given as (position, direction)."""
    return constraint_matrix(
        [place for place, _ in supports],
        [way for _, way in supports],
        [0.0] * len(supports),
        1.0,
    )


def feet(count):
    """A stiff thing on feet that only hold it up."""
    turns = 2 * np.pi * np.arange(count) / count
    return body(*(((np.cos(t), np.sin(t), 0.0), UP) for t in turns))


def grooves():
    """Three balls in three grooves that point at the middle: two contacts each."""
    supports = []
    for t in np.arange(3) * 2 * np.pi / 3:
        place = (np.cos(t), np.sin(t), 0.0)
        side = np.array((-np.sin(t), np.cos(t), 0.0))
        supports += [(place, side + UP), (place, -side + UP)]
    return body(*supports)


def hinges(count):
    """A door on hinges along z, each of which holds x, y; the lowest one holds z as well."""
    supports = [((0.0, 0.0, 0.0), UP)]
    for height in np.linspace(0.0, 1.0, count):
        supports += [((0.0, 0.0, height), (1.0, 0.0, 0.0)), ((0.0, 0.0, height), (0.0, 1.0, 0.0))]
    return body(*supports)


@wraps(constraint_state)
def count(matrix):
    """Rank, freedoms and redundancies."""
    return np.array(constraint_state(matrix)[:3], float)


@wraps(dependent_rows)
def shares(matrix):
    """What each constraint bears of a misfit, of the last one too many."""
    return np.abs(dependent_rows(matrix)[-1])


@wraps(free_motions)
def ways(matrix):
    """How much of each move and turn the free motions have."""
    return np.abs(free_motions(matrix)).sum(axis=0)


# fmt: off
ROWS = [
    (constraint_matrix, ([[0, 2, 0]], [[0, 0, 3]], [0], 1.0), [[0, 0, 1, 2, 0, 0]], 0.0,
     "Pluecker coordinates of a line along z", "memory"),
    (count, (feet(3),), (3, 3, 0), 0.0, "three feet: determinate", "memory"),
    (count, (feet(4),), (3, 3, 1), 0.0, "four feet rock: one too many", "memory"),
    (count, (grooves(),), (6, 0, 0), 0.0, "three grooves: six contacts, no play", "memory"),
    (count, (hinges(1),), (3, 3, 0), 0.0, "a door on one ball joint", "memory"),
    (count, (hinges(2),), (5, 1, 0), 0.0, "a door on two hinges turns", "memory"),
    (count, (hinges(3),), (5, 1, 2), 0.0, "a third hinge must be in line", "memory"),
    (shares, (feet(4),), (1, 1, 1, 1), 1e-12, "four feet: pairs across bear alike", "memory"),
    (shares, (hinges(3),), (0, 0, 1, 0, 2, 0, 1), 1e-12,
     "the middle hinge is off by half of both ends: y1 - 2 y2 + y3", "memory"),
    (ways, (hinges(2),), (0, 0, 0, 0, 0, 1), 1e-12, "a door turns about its hinges", "memory"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(np.array(expected), rel=tolerance, abs=1e-12), (
        source,
        seen,
    )


def test_what_a_door_is_free_to_do_is_named():
    free = constraint_state(hinges(2)).free_share
    assert free == pytest.approx([0, 0, 0, 0, 0, 1], abs=1e-12)


def test_which_hinges_do_each_others_work_is_named():
    share = constraint_state(hinges(3)).redundant_share
    assert share[0] == pytest.approx(0.0, abs=1e-12)
    assert (share[1:] > 0.1).all()


def test_a_key_against_turning_takes_away_the_turn():
    door = np.vstack((hinges(2), constraint_matrix([[5.0, 0, 0]], [[0, 0, 2.0]], [1.0], 1.0)))
    assert constraint_state(door).freedoms == 0


def test_unknown_places_leave_it_unknown():
    assert np.isnan(constraint_state(feet(3) * np.nan).rank)


@pytest.mark.parametrize("unit", [1e-3, 1.0, 1e3])
def test_nothing_hangs_on_the_unit_of_length(unit):
    place = np.array([[0.3, 0, 0], [0, 0.2, 0], [-0.3, 0, 0], [0, -0.2, 0]]) * unit
    found = constraint_state(constraint_matrix(place, [UP] * 4, [0.0] * 4, 0.3 * unit))
    assert found[:3] == (3, 3, 1)
    same = constraint_state(constraint_matrix(place / unit, [UP] * 4, [0.0] * 4, 0.3))
    assert found.redundant_share == pytest.approx(same.redundant_share, abs=1e-12)
    small = constraint_matrix(place, [UP] * 4, [0.0] * 4, 0.3 * unit)
    assert np.abs(small).max() == pytest.approx(1.0)


@pytest.mark.parametrize("factor", [1e-6, 1e6])
def test_rank_does_not_hang_on_the_size_of_all_rows(factor):
    assert constraint_state(feet(4) * factor)[:3] == (3, 3, 1)
