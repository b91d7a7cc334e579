"""Curved skirts between supports: bending with torsion of arcs loaded out of their plane."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

_ARC = "the arc must be between 0.02 rad and a whole circle"


class ArcResponse(NamedTuple):
    """What an arc fixed at both ends does under a load out of its plane."""

    deflection: Number
    middle_moment: Number
    end_moment: Number
    end_torque: Number


class _Integrals(NamedTuple):
    """Integrals over the half arc, from 0 at its middle to its end."""

    cos_cos: Number
    sin_sin: Number
    sin_cos: Number
    sin_rest: Number  # sin (1 - cos)
    rest_rest: Number  # (1 - cos)^2
    angle_sin: Number
    angle_rest: Number  # angle (1 - cos)


def _integrals(half: Number) -> _Integrals:
    sine, cosine = np.sin(half), np.cos(half)
    sin_cos = sine * sine / 2
    return _Integrals(
        (half + sine * cosine) / 2,
        (half - sine * cosine) / 2,
        sin_cos,
        1 - cosine - sin_cos,
        1.5 * half - 2 * sine + sine * cosine / 2,
        sine - half * cosine,
        half * half / 2 - (cosine + half * sine - 1),
    )


@valid_when(lambda angle: (angle > 0.02) & (angle < 2 * np.pi), _ARC)
@defined(positive="radius bending_stiffness torsional_stiffness")
def arc_uniform(
    line_load: Number,
    radius: Number,
    angle: Number,
    bending_stiffness: Number,
    torsional_stiffness: Number,
) -> ArcResponse:
    """Arc fixed at both ends under an even load square to its plane.

    Castigliano; middle moment as in Bergman's closed form for fixed circular arc bow girders.

    Parameters
    ----------
    line_load : load per length of arc [N/m]
    radius : radius of the arc's axis [m]
    angle : whole angle of the arc [rad]
    bending_stiffness : E I for bending out of the arc's plane [N m^2]
    torsional_stiffness : G J [N m^2]

    Returns
    -------
    deflection : deflection at the middle [m]
    middle_moment : bending moment at the middle, sagging [N m]
    end_moment : bending moment at the ends, negative where hogging [N m]
    end_torque : torque at the ends [N m]

    Notes
    -----
    M = M0 cos t - w R^2 (1 - cos t), T = M0 sin t - w R^2 (t - sin t) from the middle, M0 from no
    turn of the middle. Thin strip, R well above its depth; free warping.

    >>> round(float(arc_uniform(1.0, 1.0, np.pi / 2, 1.0, 1 / 1.3).deflection), 5)
    0.01876
    """
    half = angle / 2
    ratio = bending_stiffness / torsional_stiffness
    over = _integrals(half)
    middle = (np.sin(half) - over.cos_cos + ratio * (over.angle_sin - over.sin_sin)) / (
        over.cos_cos + ratio * over.sin_sin
    )
    sag = over.sin_rest - middle * over.sin_cos
    sag = sag + ratio * (over.angle_rest - (1 + middle) * over.sin_rest)
    moment = line_load * radius * radius
    return ArcResponse(
        sag * moment * radius * radius / bending_stiffness,
        middle * moment,
        ((middle + 1) * np.cos(half) - 1) * moment,
        ((middle + 1) * np.sin(half) - half) * moment,
    )


@valid_when(lambda angle: (angle > 0.02) & (angle < 2 * np.pi), _ARC)
@defined(positive="radius bending_stiffness torsional_stiffness")
def arc_middle_load(
    force: Number,
    radius: Number,
    angle: Number,
    bending_stiffness: Number,
    torsional_stiffness: Number,
) -> ArcResponse:
    """Arc fixed at both ends under a force at its middle, square to its plane.

    Castigliano; as in Young and Budynas, Roark's Formulas for Stress and Strain (2002), 9.5.

    Parameters
    ----------
    force : force at the middle of the arc [N]
    radius : radius of the arc's axis [m]
    angle : whole angle of the arc [rad]
    bending_stiffness : E I for bending out of the arc's plane [N m^2]
    torsional_stiffness : G J [N m^2]

    Returns
    -------
    deflection : deflection at the middle [m]
    middle_moment : bending moment at the middle, sagging [N m]
    end_moment : bending moment at the ends, negative where hogging [N m]
    end_torque : torque at the ends [N m]

    Notes
    -----
    M = M0 cos t - P R/2 sin t, T = M0 sin t - P R/2 (1 - cos t) from the middle, M0 from no turn
    of the middle. Thin strip, R well above its depth; free warping.

    >>> round(float(arc_middle_load(1.0, 1.0, np.pi, 1.0, 1 / 1.3).deflection), 4)
    0.2582
    """
    half = angle / 2
    ratio = bending_stiffness / torsional_stiffness
    over = _integrals(half)
    middle = (over.sin_cos + ratio * over.sin_rest) / (2 * (over.cos_cos + ratio * over.sin_sin))
    sag = over.sin_sin / 2 - middle * over.sin_cos
    sag = sag + ratio * (over.rest_rest / 2 - middle * over.sin_rest)
    moment = force * radius
    return ArcResponse(
        sag * moment * radius * radius / bending_stiffness,
        middle * moment,
        (middle * np.cos(half) - np.sin(half) / 2) * moment,
        (middle * np.sin(half) - (1 - np.cos(half)) / 2) * moment,
    )


@valid_when(lambda angle: (angle > 0.02) & (angle < 2 * np.pi), _ARC)
@defined(positive="radius bending_stiffness torsional_stiffness")
def arc_cantilever_deflection(
    force: Number,
    radius: Number,
    angle: Number,
    bending_stiffness: Number,
    torsional_stiffness: Number,
) -> Number:
    """Deflection of the free end of an arc held at the other, under a force square to its plane.

    Castigliano; as in Young and Budynas, Roark's Formulas for Stress and Strain (2002), 9.5.

    Parameters
    ----------
    force : force at the free end [N]
    radius : radius of the arc's axis [m]
    angle : angle of the arc [rad]
    bending_stiffness : E I for bending out of the arc's plane [N m^2]
    torsional_stiffness : G J [N m^2]

    Returns
    -------
    deflection : deflection of the free end [m]

    Notes
    -----
    P R^3 (integral of sin^2 / (E I) + integral of (1 - cos)^2 / (G J)).

    >>> round(float(arc_cantilever_deflection(1.0, 1.0, np.pi / 2, 1.0, 1 / 1.3)), 4)
    1.2485
    """
    over = _integrals(angle)
    compliance = over.sin_sin / bending_stiffness + over.rest_rest / torsional_stiffness
    return force * radius * radius * radius * compliance
