"""Ramps and wedges with sliding friction."""

import numpy as np

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number, valid_when

_MOVES_UP = valid_when(
    lambda angle, friction: np.arctan(friction) + angle < 0.5 * np.pi,
    "ramp and friction together are too steep: it jams",
)


@defined(not_negative="load angle friction")
@_MOVES_UP
def raising_force(load: Number, angle: Number, friction: Number) -> Number:
    """Force along the ground that slides a load up a ramp.

    Meriam and Kraige, Statics, 6/4.

    Parameters
    ----------
    load : across the travel [N]
    angle : of the ramp to the travel [rad]
    friction : sliding friction on the ramp [1]

    Returns
    -------
    force : along the travel [N]

    Notes
    -----
    W tan(a + phi), phi = atan(mu).

    >>> round(raising_force(1.0, np.radians(5.0), 0.10), 4)
    0.1891
    """
    return load * np.tan(angle + np.arctan(friction))


@defined(not_negative="load angle friction")
def lowering_force(load: Number, angle: Number, friction: Number) -> Number:
    """Force along the ground that pulls a load down a ramp.

    Meriam and Kraige, Statics, 6/4.

    Parameters
    ----------
    load : across the travel [N]
    angle : of the ramp to the travel [rad]
    friction : sliding friction on the ramp [1]

    Returns
    -------
    force : below zero where it must be held back [N]

    Notes
    -----
    W tan(phi - a).

    >>> round(lowering_force(1.0, np.radians(15.0), 0.20), 4)
    -0.0645
    """
    return load * np.tan(np.arctan(friction) - angle)


@silent
def self_locking_margin(angle: Number, friction: Number) -> Number:
    """Angle by which a sliding ramp is flatter than it needs to be to stay by itself.

    Meriam and Kraige, Statics, 6/4.

    Parameters
    ----------
    angle : of the ramp to the travel [rad]
    friction : least sliding friction on the ramp [1]

    Returns
    -------
    margin : phi - a, below zero where it slides back [rad]

    Notes
    -----
    Vibration takes friction away: a margin of one degree is none. Rolling never locks, see
    `followers`.

    >>> round(float(np.degrees(self_locking_margin(np.radians(5.0), 0.10))), 1)
    0.7
    """
    return np.arctan(friction) - angle


@defined(positive="angle", not_negative="friction")
@_MOVES_UP
def ramp_efficiency(angle: Number, friction: Number) -> Number:
    """Share of the work that lifts the load on a ramp.

    Meriam and Kraige, Statics, 6/4.

    Parameters
    ----------
    angle : of the ramp to the travel [rad]
    friction : sliding friction on the ramp [1]

    Returns
    -------
    efficiency : at most 0.5 where the ramp locks [1]

    Notes
    -----
    tan(a) / tan(a + phi).

    >>> round(ramp_efficiency(np.radians(10.0), 0.20), 4)
    0.452
    """
    return np.tan(angle) / np.tan(angle + np.arctan(friction))


@defined(not_negative="load angle slope_friction base_friction")
@valid_when(
    lambda angle, slope_friction: np.arctan(slope_friction) + angle < 0.5 * np.pi,
    "wedge and friction together are too steep: it jams",
)
def wedge_force(
    load: Number, angle: Number, slope_friction: Number, base_friction: Number
) -> Number:
    """Force that drives a wedge under a load that is guided without friction.

    Meriam and Kraige, Statics, 6/4.

    Parameters
    ----------
    load : on the wedge [N]
    angle : of the wedge [rad]
    slope_friction : between wedge and load [1]
    base_friction : between wedge and ground [1]

    Returns
    -------
    force : along the ground [N]

    Notes
    -----
    W (mu_base + tan(a + phi)).

    >>> round(wedge_force(1.0, np.radians(5.0), 0.20, 0.20), 4)
    0.4926
    """
    return load * (base_friction + np.tan(angle + np.arctan(slope_friction)))


@defined(not_negative="load angle friction")
@valid_when(
    lambda angle, friction: 2.0 * np.arctan(friction) + angle < 0.5 * np.pi,
    "wedge and friction together are too steep: it jams",
)
def wedge_force_at_wall(load: Number, angle: Number, friction: Number) -> Number:
    """Force that drives a wedge under a load that rubs along a wall, the same friction everywhere.

    Statics; Meriam and Kraige, Statics, 6/5.

    Parameters
    ----------
    load : on the wedge [N]
    angle : of the wedge [rad]
    friction : on all three faces [1]

    Returns
    -------
    force : along the ground [N]

    Notes
    -----
    W tan(a + 2 phi).

    >>> round(wedge_force_at_wall(1500.0, np.radians(10.0), 0.30), 1)
    1418.4
    """
    return load * np.tan(angle + 2.0 * np.arctan(friction))


@defined(not_negative="load angle wedge_friction floor_friction")
@valid_when(
    lambda angle, wedge_friction, floor_friction: (
        (np.arctan(wedge_friction) + np.arctan(floor_friction) < 0.5 * np.pi)
        & (np.arctan(wedge_friction) + angle < 0.5 * np.pi)
    ),
    "wedge and friction together are too steep: it jams",
)
def wedge_force_sideways(
    load: Number, angle: Number, wedge_friction: Number, floor_friction: Number
) -> Number:
    """Downward force on an upright wedge that pushes a standing load along the floor.

    Meriam and Kraige, Statics, sample problem 6/6.

    Parameters
    ----------
    load : weight that stands on the floor [N]
    angle : of the wedge [rad]
    wedge_friction : on both faces of the wedge [1]
    floor_friction : between load and floor [1]

    Returns
    -------
    force : on the wedge, its own weight included [N]

    Notes
    -----
    R = W sin(f2)/cos(f1 + f2), P = R sin(2 f1 + a)/cos(f1 + a), f1 wedge, f2 floor.

    >>> round(wedge_force_sideways(4905.0, np.radians(5.0), 0.30, 0.60))
    2505
    """
    wedge, floor = np.arctan(wedge_friction), np.arctan(floor_friction)
    push = load * np.sin(floor) / np.cos(wedge + floor)
    force: Number = push * np.sin(2.0 * wedge + angle) / np.cos(wedge + angle)
    return force
