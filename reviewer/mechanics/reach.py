"""How far a hand reaches through an opening, by ISO 13857."""

import numpy as np

from reviewer.mechanics.domain import silent
from reviewer.mechanics.formula import Number, valid_when

# ISO 13857:2019 Table 4 (14 years and up) and Table 5 (3 years and up), mm. Openings up to and
# including; then the safety distance. Where two public copies differ, the stricter one stands:
# adults, square 4 to 6, round 6 to 8 and round 30 to 40. Table 5 is from memory.
_ADULT_OPENINGS = np.array([4, 6, 8, 10, 12, 20, 30, 40, 120]) * 1e-3
_CHILD_OPENINGS = np.array([4, 6, 8, 10, 12, 20, 30, 40, 100]) * 1e-3
_REACH = {
    ("adult", "slot"): (2, 10, 20, 80, 100, 120, 850, 850, 850),
    ("adult", "square"): (2, 10, 15, 25, 80, 120, 120, 200, 850),
    ("adult", "round"): (2, 5, 15, 20, 80, 120, 120, 200, 850),
    ("child", "slot"): (2, 20, 40, 80, 100, 900, 900, 900, 900),
    ("child", "square"): (2, 10, 30, 60, 80, 120, 550, 900, 900),
    ("child", "round"): (2, 10, 20, 60, 80, 120, 120, 900, 900),
}


@silent
@valid_when(
    lambda opening, age: (
        (np.asarray(opening) > 0)
        & (np.asarray(opening) <= (0.120 if age == "adult" else 0.100) + 1e-9)
    ),
    "the table ends at an opening of 120 mm (from 14 years) or 100 mm (from 3 years)",
)
def reach_distance(opening: Number, shape: str, age: str, slot_length: Number = np.inf) -> Number:
    """Distance that a hazard must keep behind an opening.

    ISO 13857:2019, Tables 4 and 5.

    Parameters
    ----------
    opening : side of a square, diameter, or width of a slot [m]
    shape : slot, square or round [1]
    age : adult from 14 years, child from 3 years [1]
    slot_length : length of a slot [m]

    Returns
    -------
    distance : safety distance [m]

    Notes
    -----
    The thumb stops at a short slot: up to 65 mm long adults reach 200 mm through 20 to 30 mm; up to
    40 mm long children 120 mm through 12 to 20 mm. Raises ValueError for another shape or age.

    >>> reach_distance(0.010, "slot", "adult"), reach_distance(0.015, "slot", "child")
    (0.08, 0.9)
    """
    if (age, shape) not in _REACH:
        raise ValueError(
            f"opening {shape} for {age} is not here; known are slot, square and round, "
            "for adult and child"
        )
    ends = _ADULT_OPENINGS if age == "adult" else _CHILD_OPENINGS
    step = np.minimum(np.searchsorted(ends, np.asarray(opening) - 1e-9), len(ends) - 1)
    distance = np.asarray(_REACH[age, shape])[step] * 1e-3
    if shape != "slot":
        return distance
    # The step of the table at which the thumb stops, the length that stops it, and the reach then.
    stopped, length, reach = (6, 0.065, 0.200) if age == "adult" else (5, 0.040, 0.120)
    short = (step == stopped) & (np.asarray(slot_length) <= length + 1e-9)
    return np.where(short, reach, distance)
