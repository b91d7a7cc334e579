"""Weight of a mass."""

from reviewer.mechanics.formula import Number

STANDARD_GRAVITY = 9.80665  # m/s2


def weight(mass: Number, count: Number = 1.0) -> Number:
    """Weight of one or several like masses under standard gravity.

    ISO 80000-3:2019, 3-9.2.

    Parameters
    ----------
    mass : of one [kg]
    count : how many there are [1]

    Returns
    -------
    weight : of all [N]

    Notes
    -----
    n m g, g = 9.80665 m/s2.

    >>> round(weight(20.0), 3)
    196.133
    """
    return count * mass * STANDARD_GRAVITY
