"""How a frame or base goes through a doorway: on its side, if that is narrower."""

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.parts.row import Row


def least_side(
    height: Number, circle: Number | None, length: Number | None, width: Number | None
) -> Number:
    """The least side of what is carried in one piece; its feet reach as far as it does.

    Geometry.
    """
    least = height
    for side in (circle, length, width):
        if side is not None:
            least = np.minimum(least, side)
    return least


CARRIED = Row(
    "doorway.least",
    "m",
    "least side of it as it is carried in one piece",
    formula=least_side,
    needs={
        "height": "height",
        "circle": "feet.circle?",
        "length": "feet.length?",
        "width": "feet.width?",
    },
)
