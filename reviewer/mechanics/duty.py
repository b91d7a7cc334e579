"""One steady load in place of a load that changes."""

import numpy as np

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number, valid_when


@silent
@valid_when(
    lambda forces, speeds, shares: np.all(
        np.atleast_1d((forces >= 0) & (speeds >= 0) & (shares >= 0)), axis=-1
    ),
    "loads, speeds and shares must not be below zero",
)
def mean_load(forces: Number, speeds: Number, shares: Number) -> Number:
    """Steady load that wears a bearing as a sequence of loads does.

    ISO 281:2007, 5; general bearing catalogues.

    Parameters
    ----------
    forces : equivalent loads of the steps, steps along the last axis [N]
    speeds : speeds of turning in the steps [rad/s]
    shares : time or share of the time of each step [1]

    Returns
    -------
    load : cubic mean over the steps [N]

    Notes
    -----
    F = (sum n t F^3 / sum n t)^(1/3). No turning at all gives no answer.

    >>> forces, speeds = np.array([3e3, 7e3, 5e3]), np.array([720.0, 1440.0, 900.0])
    >>> round(mean_load(forces, speeds, np.array([0.3, 0.4, 0.3])) / 1e3, 3)
    6.067
    """
    load, speed, share = np.broadcast_arrays(*np.atleast_1d(forces, speeds, shares))
    turns = (speed * share).sum(axis=-1)
    cubes = (speed * share * load * load * load).sum(axis=-1)
    mean: Number = np.cbrt(cubes / np.where(turns > 0, turns, np.nan))
    return mean


@defined(not_negative="least largest")
def mean_load_of_ramp(least: Number, largest: Number) -> Number:
    """Steady load that wears a bearing as a load that climbs steadily does.

    General bearing catalogues, common practice.

    Parameters
    ----------
    least : smallest load [N]
    largest : largest load [N]

    Returns
    -------
    load : mean load [N]

    Notes
    -----
    (Pmin + 2 Pmax) / 3; the exact cubic mean is up to 5 % lower where the load starts from zero.

    >>> mean_load_of_ramp(300.0, 600.0)
    500.0
    """
    return (least + 2 * largest) / 3
