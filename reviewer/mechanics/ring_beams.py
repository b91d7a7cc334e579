"""Whole rings: a ring beam on equal supports, and a thin ring under radial forces."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

_COUNT = "there must be at least two"


class RingBeam(NamedTuple):
    """What a ring on equally spaced supports does under an even load."""

    support_moment: Number
    middle_moment: Number
    peak_torque: Number
    torque_angle: Number
    deflection: Number


class RingSqueeze(NamedTuple):
    """What a thin ring does under equal radial forces."""

    deflection: Number
    load_moment: Number
    middle_moment: Number


@valid_when(lambda count: count >= 2, _COUNT)
@defined(positive="radius count bending_stiffness torsional_stiffness")
def ring_beam(
    line_load: Number,
    radius: Number,
    count: Number,
    bending_stiffness: Number,
    torsional_stiffness: Number,
) -> RingBeam:
    """Ring on equally spaced supports under an even load square to its plane.

    Circular ring girder by statics and Castigliano; as in textbooks on circular beams.

    Parameters
    ----------
    line_load : load per length of ring [N/m]
    radius : radius of the ring's axis [m]
    count : number of supports [1]
    bending_stiffness : E I for bending out of the ring's plane [N m^2]
    torsional_stiffness : G J [N m^2]

    Returns
    -------
    support_moment : hogging moment over a support [N m]
    middle_moment : sagging moment half way between supports [N m]
    peak_torque : largest torque [N m]
    torque_angle : where it is, from a support [rad]
    deflection : sag half way between supports, relative to them [m]

    Notes
    -----
    With t = pi/n: w R^2 (1 - t cot t), w R^2 (t/sin t - 1), torque w R^2 (u - t sin u/sin t) at
    cos u = sin t / t from the middle.

    >>> beam = ring_beam(1.0, 1.0, 6, 1.0, 1 / 1.3)
    >>> round(float(beam.support_moment), 4), round(float(beam.deflection), 5)
    (0.0931, 0.00343)
    """
    half = np.pi / count
    sine, cosine = np.sin(half), np.cos(half)
    steep = half / sine
    peak_at = np.arccos(sine / half)
    moment = line_load * radius * radius
    sag = _ring_sag(half, bending_stiffness / torsional_stiffness)
    return RingBeam(
        moment * (1 - steep * cosine),
        moment * (steep - 1),
        moment * (steep * np.sin(peak_at) - peak_at),
        half - peak_at,
        sag * moment * radius * radius / bending_stiffness,
    )


def _ring_sag(half: Number, ratio: Number) -> Number:
    """Sag of the ring beam over w R^4 / (E I), by a unit load at every middle."""
    sine, cosine = np.sin(half), np.cos(half)
    u, v = half / sine, (1 - cosine) / sine
    cos_cos, sin_sin = (half + sine * cosine) / 2, (half - sine * cosine) / 2
    sin_cos = sine * sine / 2
    bending = u * v * cos_cos - u * sin_cos - v * sine + (1 - cosine)
    torsion = u * v * sin_sin - u * (1 - cosine) + u * sin_cos
    torsion = torsion - v * (sine - half * cosine) + half * half / 2
    torsion = torsion - (cosine + half * sine - 1)
    sag: Number = bending + ratio * torsion
    return sag


@valid_when(lambda count: count >= 2, _COUNT)
@defined(positive="radius count bending_stiffness")
def ring_squeeze(
    force: Number, radius: Number, count: Number, bending_stiffness: Number
) -> RingSqueeze:
    """Thin ring under equal, equally spaced radial forces in its plane.

    Young and Budynas, Roark's Formulas for Stress and Strain (2002), table 9.2 case 7.

    Parameters
    ----------
    force : each radial force, outwards [N]
    radius : radius of the ring's axis [m]
    count : number of forces [1]
    bending_stiffness : E I for bending in the ring's plane [N m^2]

    Returns
    -------
    deflection : radial movement of the ring at each force, along the force [m]
    load_moment : bending moment under each force [N m]
    middle_moment : bending moment half way between forces, of the other sign [N m]

    Notes
    -----
    W R^3/(2 E I) [(t + s c)/(2 s^2) - 1/t], t = pi/n; W R/2 (1/t - cot t); W R/2 (1/s - 1/t).
    Bending only; thin ring.

    >>> squeeze = ring_squeeze(1.0, 1.0, 2, 1.0)
    >>> round(float(squeeze.deflection), 5), round(float(squeeze.load_moment), 4)
    (0.07439, 0.3183)
    """
    half = np.pi / count
    sine, cosine = np.sin(half), np.cos(half)
    shape = (half + sine * cosine) / (2 * sine * sine) - 1 / half
    return RingSqueeze(
        force * radius * radius * radius / (2 * bending_stiffness) * shape,
        force * radius / 2 * (1 / half - cosine / sine),
        force * radius / 2 * (1 / sine - 1 / half),
    )


@defined(positive="radius bending_stiffness")
def ring_pull_widening(force: Number, radius: Number, bending_stiffness: Number) -> Number:
    """How much a thin ring pulled or pressed at two opposite points changes across the load.

    Timoshenko, Strength of Materials, Part I (1955), art. 80.

    Parameters
    ----------
    force : each of the two opposite forces [N]
    radius : radius of the ring's axis [m]
    bending_stiffness : E I for bending in the ring's plane [N m^2]

    Returns
    -------
    widening : change of the diameter square to the load, of the other sense [m]

    Notes
    -----
    (2/pi - 1/2) W R^3 / (E I); along the load it is (pi/4 - 2/pi) W R^3 / (E I).

    >>> round(ring_pull_widening(1.0, 1.0, 1.0), 5)
    0.13662
    """
    return (2 / np.pi - 0.5) * force * radius * radius * radius / bending_stiffness
