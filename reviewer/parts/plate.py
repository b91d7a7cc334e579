"""Geometry and overhang of flat parts: tops and trays."""

import numpy as np

from reviewer.mechanics.cantilevers import cantilever_deflection
from reviewer.mechanics.formula import Number


def plate_mass(area: Number, thickness: Number, density: Number) -> Number:
    """Mass of a flat part.

    Geometry.

    Notes
    -----
    A t rho.
    """
    return area * thickness * density


def plan_area(
    diameter: Number | None, length: Number | None, width: Number | None, opening: Number
) -> Number:
    """Area of a disc or a rectangle, less its round opening.

    Geometry.
    """
    hole = np.pi * opening * opening / 4
    if diameter is not None:
        return np.pi * diameter * diameter / 4 - hole
    if length is not None and width is not None:
        return length * width - hole
    return np.nan


def rim_radius(diameter: Number | None, length: Number | None, width: Number | None) -> Number:
    """Radius of the farthest point of the edge: of a rectangle, its corner.

    Geometry.
    """
    if diameter is not None:
        return diameter / 2
    if length is not None and width is not None:
        return np.hypot(length, width) / 2
    return np.nan


def half_radius(
    diameter: Number | None, length: Number | None, width: Number | None, opening: Number
) -> Number:
    """Distance from the middle to the centre of one half of the area.

    Geometry.

    Notes
    -----
    Half a ring: 4 (R^3 - r^3) / (3 pi (R^2 - r^2)); half a rectangle, cut across its length: L / 4.
    """
    if diameter is not None:
        outer, inner = diameter / 2, opening / 2
        cubes = outer * outer * outer - inner * inner * inner
        return 4 * cubes / (3 * np.pi * (outer * outer - inner * inner))
    if length is not None and width is not None:
        return np.maximum(length, width) / 4
    return np.nan


def half_of_array(radius: Number, count: int) -> Number:
    """Distance from the axis to the common centre of one half of several like parts.

    Geometry; each stands at its middle.

    Notes
    -----
    r |sum of e^(2 pi i k/n)| / (n/2) over n/2 neighbours, of an odd number the last one half: of
    those that are half of all in weight, the ones that stand farthest to one side.
    """
    turns = 2 * np.pi * np.arange((count + 1) // 2) / count
    shares = np.ones(len(turns))
    if count % 2:
        shares[-1] = 0.5
    along, across = (np.sum(shares * each(turns)) for each in (np.cos, np.sin))
    return radius * float(np.hypot(along, across) / (count / 2))


def edge_sag(force: Number, overhang: Number, modulus: Number, thickness: Number) -> Number:
    """How far an overhanging edge sinks under a force on it.

    Common practice for the width that shares: the load spreads at 45 degrees to both sides.

    Notes
    -----
    F a^3 / (3 E I) with I = 2 a t^3 / 12.
    """
    inertia = 2 * overhang * thickness * thickness * thickness / 12
    bends = np.abs(overhang) > 0
    sag = cantilever_deflection(
        force, overhang, overhang, np.where(bends, modulus * inertia, np.inf)
    )
    return np.where(bends, sag, 0.0 * (force + overhang))
