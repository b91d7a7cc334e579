"""The forces on all rollers of a ring at once, while the load comes from one direction."""

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.resultant import Overturning
from reviewer.mechanics.supports import solve_supports
from reviewer.parts.ring_bending import ASIDE, load_towards, settled, turned
from reviewer.parts.ring_plate import Entry, Shape
from reviewer.parts.ring_solution import Standing


def forces_towards(
    standing: Standing,
    entry: Entry | None,
    shape: Shape | None,
    rigidity: Number | None,
    direction: Number,
) -> Number:
    """Force on each roller while the load comes from one direction, a last axis of rollers.

    Statics, as in `bend_ring`, or of a rigid plate where its bending is not known.

    Notes
    -----
    Carrying rollers first, then hold-downs, each group from its first roller on.
    """
    total, supports, groups = standing
    towards = np.asarray(direction)[..., None] + ASIDE
    turn = turned(supports, np.cos(towards), np.sin(towards))
    if entry is None or shape is None or rigidity is None:
        forces = solve_supports(turn.supports, *load_towards(total, turn)).forces
    else:
        batch = np.broadcast_shapes(*(np.shape(each) for each in (*total, rigidity)))
        total = Overturning(*(np.broadcast_to(each, batch) for each in total))
        standing = Standing(total, supports, groups)
        forces = settled(turn, standing, entry, shape, rigidity)[0].forces
    return forces[..., 0, :]
