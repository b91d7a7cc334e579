"""Energy method behind the panel disc: functions of the radius times cosines or sines.

Everything is for an outer radius of one. A function is f(r) cos(m t) or f(r) sin(m t); the mirror
symmetry of the panel keeps the two families apart.
"""

from typing import Any, NamedTuple

import numpy as np
from numpy.polynomial import chebyshev
from numpy.typing import NDArray

Array = NDArray[np.float64]

_HARMONICS = 17  # 0 to 16 times the angle
_RADIAL = 12  # functions of the radius for each
_ANGLES = 96
_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(40)


class PanelRigidity(NamedTuple):
    """Rigidities of a panel per width: bending along and across, coupling, and twisting."""

    along: Any
    across: Any
    coupling: Any
    twisting: Any


class Family(NamedTuple):
    """One family of functions on a plate with a hole of the given radius."""

    hole: Any
    sine: bool
    kept: NDArray[np.int64]  # which functions are not movements of a rigid body


def family(hole: Any, sine: bool) -> Family:
    """Functions of one symmetry, without those that move the plate as a rigid body."""
    harmonic, radial = np.divmod(np.arange(_HARMONICS * _RADIAL), _RADIAL)
    rigid = (harmonic == 0) if sine else (harmonic == 0) & (radial == 0)
    # With a hole, the second of the functions of harmonic 1 has r itself in it.
    rigid = rigid | ((harmonic == 1) & (radial == (1 if hole > 0 else 0)))
    return Family(hole, sine, np.flatnonzero(~rigid))


def at_points(chosen: Family, r: Array, angle: Array) -> Array:
    """Value of each function at each point, shape (functions, points)."""
    radial = _radial(chosen.hole, r)[0]
    around = _around(chosen.sine, angle)[0]
    values: Array = (radial * around[:, None, :]).reshape(-1, len(r))[chosen.kept]
    return values


def stiffness(chosen: Family, panel: PanelRigidity) -> Array:
    """Twice the strain energy of each pair of functions, shape (functions, functions)."""
    r = _places(chosen.hole)
    value, slope, bend = _radial(chosen.hole, r)
    m = np.arange(float(_HARMONICS))[:, None, None]
    curvatures = (bend, slope / r - m * m * value / (r * r), slope / r - value / (r * r))
    turns = 2 * np.pi * np.arange(_ANGLES) / _ANGLES
    plain, turned = _around(chosen.sine, turns)
    around = (plain, plain, turned)
    area = r * _WEIGHTS * (1 - chosen.hole) / 2
    polar, step = _polar(panel, turns), 2 * np.pi / _ANGLES
    total: Any = 0.0
    for one in range(3):
        for other in range(3):
            angular = np.einsum("ma,na,a->mn", around[one], around[other], polar[one][other] * step)
            weighted = (curvatures[other] * area).reshape(-1, len(r))
            radial = np.einsum("ik,jk->ij", curvatures[one].reshape(-1, len(r)), weighted)
            pairs = radial.reshape(_HARMONICS, _RADIAL, _HARMONICS, _RADIAL)
            total = total + pairs * angular[:, None, :, None]
    square = total.reshape(_HARMONICS * _RADIAL, -1)
    energy: Array = square[np.ix_(chosen.kept, chosen.kept)]
    return energy


def even_load(chosen: Family) -> Array:
    """Work of a unit pressure on each function."""
    r = _places(chosen.hole)
    work = np.zeros((_HARMONICS, _RADIAL))
    area = r * _WEIGHTS * np.pi * (1 - chosen.hole)
    if not chosen.sine:
        work[0] = np.einsum("jk,k->j", _radial(chosen.hole, r)[0][0], area)
    kept: Array = work.reshape(-1)[chosen.kept]
    return kept


def alike(panel: PanelRigidity) -> Any:
    """Rigidity of the plate, alike in all directions, that gives as much under a point force.

    The mean of 1/D over all directions, as the Fourier form of the point force's answer has it.
    """
    turns = np.pi * (np.arange(180) + 0.5) / 180
    along, across = np.cos(turns) * np.cos(turns), np.sin(turns) * np.sin(turns)
    mixed = 2 * (panel.coupling + 2 * panel.twisting)
    each = panel.along * along * along + mixed * along * across + panel.across * across * across
    return 1 / np.mean(1 / each)


def _places(hole: Any) -> Array:
    places: Array = hole + (1 - hole) * (_NODES + 1) / 2
    return places


def _radial(hole: Any, r: Array) -> tuple[Array, Array, Array]:
    """Functions of the radius and their two derivatives, (harmonics, radial functions, points).

    Chebyshev's polynomials between the edges; without a hole r^m times those of r^2, which keeps
    the middle smooth.
    """
    identity = np.eye(_RADIAL)
    first, second = chebyshev.chebder(identity), chebyshev.chebder(identity, 2)
    solid = not hole > 0
    place = 2 * r * r - 1 if solid else (2 * r - 1 - hole) / (1 - hole)
    g, dg, ddg = (chebyshev.chebval(place, c) for c in (identity, first, second))
    m = np.arange(float(_HARMONICS))[:, None, None]
    if solid:
        safe = np.maximum(r, 1e-30)
        power = safe**m
        inner, steep = m / safe, 4 * r
        return (
            power * g,
            power * (inner * g + steep * dg),
            power
            * (
                m * (m - 1) / (safe * safe) * g
                + 2 * inner * steep * dg
                + steep * steep * ddg
                + 4 * dg
            ),
        )
    rate, every = 2 / (1 - hole), np.ones_like(m)
    return every * g, every * rate * dg, every * rate * rate * ddg


def _around(sine: bool, angle: Array) -> tuple[Array, Array]:
    """The cosines or sines, and their derivatives by the angle, (harmonics, points)."""
    m = np.arange(float(_HARMONICS))[:, None]
    turned = m * angle
    if sine:
        return np.sin(turned), m * np.cos(turned)
    return np.cos(turned), -m * np.sin(turned)


def _polar(panel: PanelRigidity, angle: Array) -> list[list[Any]]:
    """Rigidities that join the curvatures along r, along t and the twist, at each angle."""
    c, s = np.cos(angle), np.sin(angle)
    x, y = (c * c, s * s, -2 * s * c), (s * s, c * c, 2 * s * c)
    xy = (s * c, -s * c, c * c - s * s)
    return [
        [
            panel.along * x[i] * x[j]
            + panel.across * y[i] * y[j]
            + panel.coupling * (x[i] * y[j] + y[i] * x[j])
            + 4 * panel.twisting * xy[i] * xy[j]
            for j in range(3)
        ]
        for i in range(3)
    ]
