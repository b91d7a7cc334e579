"""The flexible disc: how far each point of a free round plate moves under a force at another.

A free plate under one force is not at rest, so that its compliance is only known up to movements
of the plate as a rigid body. Here they are fixed by holding the mean and the first harmonic of the
deflection of the outer edge at zero; forces that balance do not feel that.
"""

from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

Array = NDArray[np.float64]

_HARMONICS = 242  # two free points on the edge converge last, as 1/m^3
_BLOCK = 24
_TINY = 1e-100
_DISC = "the hole must be smaller than the plate, and Poisson's ratio between 0 and 0.5"


class _Shape(NamedTuple):
    """A plate of radius one: its hole's radius and Poisson's ratio, kept off what is singular."""

    hole: Any
    poisson: Any


def _is_disc(radius: Any, hole_radius: Any, poisson: Any) -> Any:
    return (hole_radius >= 0) & (hole_radius < radius) & (poisson >= 0) & (poisson <= 0.5)


@valid_when(_is_disc, _DISC)
@defined(positive="radius rigidity")
def disc_deflection(
    at_radius: Number,
    force_radius: Number,
    angle_between: Number,
    radius: Number,
    hole_radius: Number,
    rigidity: Number,
    poisson: Number,
) -> Number:
    """Deflection of a free round plate at one point for a unit force at another: its compliance.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), art. 62 and 71.

    Parameters
    ----------
    at_radius : radius at which the deflection is asked for [m]
    force_radius : radius at which the unit force stands [m]
    angle_between : angle between the two points seen from the centre [rad]
    radius : radius of the plate's free edge [m]
    hole_radius : radius of the hole's free edge, zero for none [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    compliance : deflection along the force per force, rigid movements left open [m/N]

    Notes
    -----
    d^2 ln d/(8 pi D) and harmonics that free both edges. Thin isotropic plate. Scales as a^2/D.
    Points in the hole or beyond the edge give NaN. Error below 2e-5 of the largest value.

    >>> three = [float(disc_deflection(r, 1.0, t, 1.0, 0.0, 1.0, 0.25))
    ...          for r, t in ((0.0, 0.0), (1.0, 0.0), (1.0, 2 * np.pi / 3))]
    >>> centre = float(disc_deflection(0.0, 0.0, 0.0, 1.0, 0.0, 1.0, 0.25))
    >>> round(centre - 2 * three[0] + (three[1] + 2 * three[2]) / 3, 4)
    0.067
    """
    r, rho = np.asarray(at_radius / radius), np.asarray(force_radius / radius)
    shape = _Shape(np.clip(hole_radius / radius, 0, 0.999), np.clip(poisson, 0, 0.5))
    on_plate = _on_plate(r, shape) & _on_plate(rho, shape)
    r, rho = np.maximum(r, _TINY), np.maximum(rho, _TINY)
    square = r * r + rho * rho - 2 * r * rho * np.cos(angle_between)
    square = np.maximum(square, _TINY)
    regular = _mean(r, rho, shape) + _first(r, rho, shape) * np.cos(angle_between)
    regular = regular + _higher(r, rho, np.asarray(angle_between), shape)
    total = (square * np.log(square) / 2 + regular) / (8 * np.pi)
    compliance: Number = np.where(on_plate, total, np.nan) * radius * radius / rigidity
    return compliance


def _on_plate(r: Array, shape: _Shape) -> Any:
    return (r >= shape.hole * (1 - 1e-12)) & (r <= 1 + 1e-12)


def _mean(r: Array, rho: Array, shape: _Shape) -> Array:
    """Harmonic 0 of what frees the edges: A + B r^2 + C ln r; the outer edge stays at zero."""
    nu, hole = shape.poisson, shape.hole * shape.hole
    outer = 3 - rho * rho + nu * (1 + rho * rho)
    inner = (2 + 2 * nu) * (1 + np.log(rho))
    log_part = hole * (inner - outer) / ((1 - nu) * (1 - hole))
    square_part = ((1 - nu) * log_part - outer) / (2 + 2 * nu)
    mean: Array = square_part * (r * r - 1) + log_part * np.log(r) - rho * rho
    return mean


def _first(r: Array, rho: Array, shape: _Shape) -> Array:
    """Harmonic 1 of what frees the edges: A r + B r^3 + C / r; the outer edge stays at zero."""
    nu = shape.poisson
    fourth = shape.hole * shape.hole * shape.hole * shape.hole
    outer = 2 * rho * (1 + nu) + rho * rho * rho * (1 - nu)
    inner = (3 + nu) * fourth / rho
    inverse = (inner - outer * fourth) / ((2 - 2 * nu) * (1 - fourth))
    cube = (outer - (2 - 2 * nu) * inverse) / (6 + 2 * nu)
    linear = rho + rho * rho * rho / 2 - cube - inverse
    first: Array = linear * r + cube * r * r * r + inverse / r
    return first


def _moment(power: Array, m: Array, nu: Any) -> Any:
    """Radial moment of r^power cos(m t) at r = 1, over -D."""
    return power * (power - 1) + nu * (power - m * m)


def _shear(power: Array, m: Array, nu: Any) -> Any:
    """Edge force of r^power cos(m t) at r = 1, over -D: shear and what twist adds to it."""
    return (power * power - m * m) * (power - 2) - (1 - nu) * m * m * (power - 1)


def _higher(r: Array, rho: Array, angle: Array, shape: _Shape) -> Array:
    """Harmonics 2 and up of what frees the edges, summed in blocks to spare memory."""
    r, rho, angle = r[..., None], rho[..., None], angle[..., None]
    hole, nu = shape.hole[..., None], shape.poisson[..., None]
    near = hole / r
    summed: Any = 0.0
    for start in range(2, _HARMONICS, _BLOCK):
        m = np.arange(float(start), start + _BLOCK)
        factors = _freeing(m, rho, hole, nu)
        basis = (r**m, r ** (m + 2), near**m, near ** (m - 2))
        terms: Any = 0.0
        for k in range(4):
            terms = terms + factors[..., k] * basis[k]
        summed = summed + (terms * np.cos(m * angle)).sum(axis=-1)
    higher: Array = summed
    return higher


def _freeing(m: Array, rho: Any, hole: Any, nu: Any) -> Array:
    """Factors of r^m, r^(m+2), (b/r)^m and (b/r)^(m-2) that free both edges of a unit force."""
    powers = (m, m + 2, -m, 2 - m)
    at_edge = (1.0 + 0 * m, 1.0 + 0 * m, hole**m, hole ** (m - 2))
    at_hole = (hole**m, hole ** (m + 2), 1.0 + 0 * m, 1.0 + 0 * m)
    first, second = 1 / (m * (m - 1)), -1 / (m * (m + 1))
    inward = hole / rho
    outer = (first * rho**m, second * rho ** (m + 2))
    inner = (first * rho * rho * inward**m, second * rho * rho * inward ** (m + 2))
    rows, sides = [], []
    for condition in (_moment, _shear):
        value = [condition(power, m, nu) for power in powers]
        rows.append([value[k] * at_edge[k] for k in range(4)])
        rows.append([value[k] * at_hole[k] for k in range(4)])
        sides.append(-value[3] * outer[0] - value[2] * outer[1])
        sides.append(-value[0] * inner[0] - value[1] * inner[1])
    scale = m * m
    flat = np.broadcast_arrays(*(entry / scale for row in rows for entry in row))
    matrix = np.stack(flat, axis=-1).reshape(*flat[0].shape, 4, 4)
    side = np.stack(np.broadcast_arrays(*(entry / scale for entry in sides)), axis=-1)
    factors: Array = np.linalg.solve(matrix, side[..., None])[..., 0]
    return factors


@valid_when(_is_disc, _DISC)
@defined(positive="radius rigidity")
def disc_uniform_deflection(
    at_radius: Number, radius: Number, hole_radius: Number, rigidity: Number, poisson: Number
) -> Number:
    """Deflection of the free round plate under a unit pressure, as from its own weight.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), art. 16 and 17.

    Parameters
    ----------
    at_radius : radius at which the deflection is asked for [m]
    radius : radius of the plate's free edge [m]
    hole_radius : radius of the hole's free edge, zero for none [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    deflection : deflection per pressure, rigid movements fixed as for the disc's forces [m/Pa]

    Notes
    -----
    r^4/64 + A + B r^2 + C ln r - b^2 r^2 ln r/8, free at the hole. Thin isotropic plate.

    >>> round(float(disc_uniform_deflection(0.0, 1.0, 0.0, 1.0, 0.3)), 6)
    0.063702
    """
    r = np.maximum(at_radius / radius, _TINY)
    hole = hole_radius / radius * hole_radius / radius
    log_hole = np.log(np.maximum(hole, _TINY)) / 2
    edge = (3 + poisson) / 16 - hole * (3 + poisson) / 8
    rim = (3 + poisson) * hole / 16 - hole / 8 * (2 * (1 + poisson) * log_hole + 3 + poisson)
    log_part = hole * (rim - edge) / ((1 - poisson) * (1 - hole))
    square_part = ((1 - poisson) * log_part - edge) / (2 + 2 * poisson)
    square = r * r
    shape = (square * square - 1) / 64 + square_part * (square - 1)
    shape = shape + (log_part - hole * square / 8) * np.log(r)
    size = radius * radius
    deflection: Number = shape * size * size / rigidity
    return deflection
