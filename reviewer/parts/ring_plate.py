"""The plate of a ring as a body that bends: its rigidity, its shape, and what bends it."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.disc_series import HARMONICS, disc_harmonics
from reviewer.mechanics.formula import Number
from reviewer.mechanics.panel_average import average_rigidity
from reviewer.stock.materials import Material, completed
from reviewer.stock.panels import panel_modulus

POISSON = 0.3  # of the disc alike in all directions that stands in for the panel
SEAT = 0.15  # m, how far an arm is taken to be fixed to the plate; common practice


class Entry(NamedTuple):
    """How loads come into the plate: pairs of radius [m] and force [N].

    `points` stand in the direction of the load, `rings` are spread evenly all round and have no
    resultant. The rest of force and moment enters at the radius `spread`, alike all round. What
    reaches farthest leaves the plate at `outer` and is fixed to it from `inner` on.
    """

    points: tuple[tuple[Any, Any], ...]
    rings: tuple[tuple[Any, Any], ...]
    spread: Any
    outer: Any
    inner: Any


class Shape(NamedTuple):
    """Compliance of a plate of rigidity one between circles, as factors of cosines [m^2].

    `radii` are those of the rollers' circles, of the places where loads enter, and of the two
    from which the rim hangs; `factors[i][j]` (..., harmonics) belongs to a pair of them.
    """

    radii: tuple[Any, ...]
    factors: dict[tuple[int, int], Any]


def plate_rigidity(
    modulus: Number | None, thickness: Number | None, material: Material | None
) -> Number | None:
    """Bending stiffness of the plate, alike in all directions.

    Hill (1952), mean of the averages of stiffness and compliance over all directions.

    Notes
    -----
    Of a plate without grain, or of unknown material, E t^3 / 12(1 - v^2). E is the mean of along
    and across; plywood is soft in twist, so that its plate has about 0.65 of that.
    """
    if modulus is None or thickness is None:
        return None
    plain = modulus * thickness * thickness * thickness / 12 / (1 - POISSON * POISSON)
    if material is None or np.isnan(completed(material).shear_modulus):
        return plain
    along, across = panel_modulus(material, thickness)
    share = np.where(np.isnan(across), 1.0, across / along)
    poisson = POISSON if np.isnan(material.poisson) else material.poisson
    first = 2 * modulus / (1 + share)
    shear = completed(material).shear_modulus
    return average_rigidity(first, share * first, shear, poisson, thickness)


def plate_shape(
    radius: Number,
    opening: Number,
    carry: Number,
    hold: Number | None,
    hold_count: int | None,
    entry: Entry,
) -> Shape:
    """How the plate gives way between the places of its rollers and of its loads.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), art. 62 and 71.

    Notes
    -----
    Of radii alone, so that a sweep of thickness or modulus asks for it once. What stands in the
    opening or beyond the edge is moved to it.
    """
    circles = (carry / 2,) if hold is None or hold_count is None else (carry / 2, hold / 2)
    loads = (*(place for place, _ in entry.points), *(place for place, _ in entry.rings))
    inner = entry.outer - SEAT if entry.inner is None else entry.inner
    radii = tuple(
        np.clip(each, opening, radius)
        for each in (*circles, *loads, entry.spread, entry.outer, inner)
    )
    asked = [*range(len(circles)), len(radii) - 2, len(radii) - 1]
    pairs = [(i, j) for i in asked for j in range(len(radii)) if j not in asked or i <= j]
    places = [
        np.stack(np.broadcast_arrays(*_between(radii[i], radii[j]), opening), axis=-1)
        / np.asarray(radius)[..., None]
        for i, j in pairs
    ]
    factors = _series([each.reshape(-1, 3) for each in places])
    square = np.asarray(radius * radius)[..., None]
    return Shape(
        radii,
        {
            pair: each.reshape(*place.shape[:-1], HARMONICS) * square
            for pair, place, each in zip(pairs, places, factors, strict=True)
        },
    )


def _between(one: Any, other: Any) -> tuple[Any, Any]:
    return np.minimum(one, other), np.maximum(one, other)


def _series(triples: list[Any]) -> list[Any]:
    """Factors of pairs of radii and a hole, each distinct one computed once."""
    ends = np.cumsum([len(each) for each in triples])
    distinct, which = np.unique(np.concatenate(triples), axis=0, return_inverse=True)
    found = np.asarray(disc_harmonics(distinct[:, 0], distinct[:, 1], distinct[:, 2], POISSON))
    return np.split(found[which.ravel()], ends[:-1])
