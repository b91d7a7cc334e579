"""Rolling followers on ramps, in dips and over edges; levers and eccentrics that drive them."""

import numpy as np

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number, valid_when


@silent
def slopes_of_profile(travel: Number, height: Number) -> Number:
    """Slopes of a ramp that is given by points.

    Definition.

    Parameters
    ----------
    travel : of the points, growing along the last axis [m]
    height : of the follower at the points, along the last axis [m]

    Returns
    -------
    slope : between neighbouring points, one fewer than points [1]

    Notes
    -----
    Unknown where the travel does not grow. The heights are those of the roller's middle. Raises
    ValueError for a single point.

    >>> slopes_of_profile(np.array([0.0, 1.0, 3.0]), np.array([0.0, 0.5, 0.5])).tolist()
    [0.5, 0.0]
    """
    steps = np.diff(travel, axis=-1)
    slope: Number = np.diff(height, axis=-1) / np.where(steps > 0, steps, np.nan)
    return slope


@defined(not_negative="load rolling_coefficient")
@valid_when(
    lambda slope, rolling_coefficient: np.abs(slope) * rolling_coefficient < 1,
    "the slope is too steep to roll up",
)
def rolling_force(load: Number, slope: Number, rolling_coefficient: Number = 0.0) -> Number:
    """Force along the travel that moves a rolling follower over a slope.

    Statics: the ramp of Meriam and Kraige, Statics, 6/4, with rolling resistance for friction.

    Parameters
    ----------
    load : across the travel [N]
    slope : rise for each travel, below zero downhill [1]
    rolling_coefficient : rolling resistance against load, bearing included [1]

    Returns
    -------
    force : along the travel, below zero where the follower pushes [N]

    Notes
    -----
    W (s + c)/(1 - c s).

    >>> round(rolling_force(400.0, 0.2, 0.01), 2), round(rolling_force(400.0, -0.2, 0.01), 2)
    (84.17, -75.85)
    """
    return load * (slope + rolling_coefficient) / (1.0 - rolling_coefficient * slope)


@defined(not_negative="load rolling_coefficient")
def holding_force(load: Number, slope: Number, rolling_coefficient: Number = 0.0) -> Number:
    """Force along the travel that keeps a rolling follower where it is on a slope.

    Statics: the ramp of Meriam and Kraige, Statics, 6/4, with rolling resistance for friction.

    Parameters
    ----------
    load : across the travel [N]
    slope : rise for each travel, either way [1]
    rolling_coefficient : rolling resistance against load, bearing included [1]

    Returns
    -------
    force : zero only where the slope is flatter than the rolling resistance [N]

    Notes
    -----
    W (|s| - c)/(1 + c |s|). A rolling follower does not lock on a slope: to rest it needs a flat, a
    dip or a stop.

    >>> round(holding_force(400.0, 0.2, 0.01), 2), holding_force(400.0, 0.005, 0.01)
    (75.85, 0.0)
    """
    steepness = np.abs(slope)
    pushing = (steepness - rolling_coefficient) / (1.0 + rolling_coefficient * steepness)
    return load * np.maximum(pushing, 0.0)


@defined(positive="radius", not_negative="load height")
@valid_when(lambda height, radius: height < radius, "the edge is as high as the roller's axle")
def edge_force(load: Number, radius: Number, height: Number) -> Number:
    """Force along the travel that lifts a roller over an edge, or out of a dip with edges.

    Statics: moments about the edge.

    Parameters
    ----------
    load : on the roller across the travel [N]
    radius : of the roller [m]
    height : of the edge over what the roller stands on, or depth of the dip [m]

    Returns
    -------
    force : along the travel, at the axle [N]

    Notes
    -----
    W sqrt(2 r h - h^2)/(r - h): what holds a follower in a dip. An edge is a line contact of small
    radius: its pressure is high.

    >>> round(edge_force(400.0, 14e-3, 1e-3), 1)
    159.9
    """
    return load * np.sqrt(height * (2.0 * radius - height)) / (radius - height)


@defined(positive="radius", not_negative="width")
@valid_when(lambda radius, width: width <= 2.0 * radius, "the roller falls through")
def drop_into_gap(radius: Number, width: Number) -> Number:
    """How far a roller sinks into a gap in its track.

    Geometry of the chord.

    Parameters
    ----------
    radius : of the roller [m]
    width : of the gap along the travel [m]

    Returns
    -------
    drop : of the roller's middle [m]

    Notes
    -----
    r - sqrt(r^2 - w^2/4).

    >>> round(drop_into_gap(14e-3, 6e-3) * 1e3, 3)
    0.325
    """
    half = 0.5 * width
    return half * half / (radius + np.sqrt(radius * radius - half * half))


@defined(positive="radius", not_negative="eccentricity friction pivot_radius pivot_friction")
def eccentric_lock_margin(
    eccentricity: Number,
    radius: Number,
    friction: Number,
    pivot_radius: Number = 0.0,
    pivot_friction: Number = 0.0,
) -> Number:
    """How much eccentricity a round eccentric could have more and still stay by itself.

    Textbooks of jigs and fixtures (friction circle); from memory.

    Parameters
    ----------
    eccentricity : between the middle of the disc and its pivot [m]
    radius : of the disc [m]
    friction : least friction of disc on what it presses [1]
    pivot_radius : of the pivot [m]
    pivot_friction : least friction in the pivot [1]

    Returns
    -------
    margin : mu r + mu_p r_p - e, below zero where it springs back [m]

    Notes
    -----
    In every position of the disc. For small friction.

    >>> round(eccentric_lock_margin(2e-3, 20e-3, 0.12) * 1e3, 2)
    0.4
    """
    return friction * radius + pivot_friction * pivot_radius - eccentricity


@defined(not_negative="eccentricity")
def eccentric_rise(eccentricity: Number, angle: Number) -> Number:
    """Rise of a flat that a round eccentric pushes.

    Geometry.

    Parameters
    ----------
    eccentricity : between the middle of the disc and its pivot [m]
    angle : turned from the lowest position [rad]

    Returns
    -------
    rise : of the flat [m]

    Notes
    -----
    e (1 - cos a).

    >>> round(eccentric_rise(2e-3, np.pi) * 1e3, 6)
    4.0
    """
    return eccentricity * (1.0 - np.cos(angle))


@defined(positive="load_arm hand_arm", not_negative="load friction_torque")
@valid_when(lambda hand_angle: np.abs(hand_angle) < 0.5 * np.pi, "the hand pulls along its lever")
def lever_hand_force(
    load: Number,
    load_arm: Number,
    hand_arm: Number,
    load_angle: Number = 0.0,
    hand_angle: Number = 0.0,
    friction_torque: Number = 0.0,
) -> Number:
    """Force of a hand on a lever that moves a load.

    Statics: moments about the pivot.

    Parameters
    ----------
    load : on the load's arm [N]
    load_arm : from the pivot to the load [m]
    hand_arm : from the pivot to the hand [m]
    load_angle : between the load and the square to its arm [rad]
    hand_angle : between the hand's force and the square to its arm [rad]
    friction_torque : in the pivot and what it drives [N m]

    Returns
    -------
    force : of the hand [N]

    Notes
    -----
    (W a cos(A) + T)/(b cos(B)). Towards the ends of the travel cos(A) makes the load light, and the
    hand's own angle makes the lever heavy.

    >>> round(lever_hand_force(400.0, 0.04, 0.40, np.radians(60.0)), 1)
    20.0
    """
    moment = load * load_arm * np.abs(np.cos(load_angle)) + friction_torque
    return moment / (hand_arm * np.cos(hand_angle))
