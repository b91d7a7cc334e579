"""How a flat part bends between what carries it: a disc on a ring or arms, a board on two lines."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.annular_plates import annular_simple_ring_load, annular_simple_uniform
from reviewer.mechanics.beams import beam_deflection, beam_uniform_deflection
from reviewer.mechanics.formula import Number
from reviewer.mechanics.plates import (
    equivalent_patch_radius,
    plate_rigidity,
    simple_plate_patch_moment,
    simple_plate_uniform_moment,
)
from reviewer.mechanics.point_supported_plates import (
    point_supported_centre_load,
    point_supported_uniform,
)
from reviewer.mechanics.resultant import Action
from reviewer.mechanics.ring_supported_plates import (
    ring_supported_centre_load,
    ring_supported_uniform,
)

FEWEST = 3  # points on which a round plate stands


class Spanned(NamedTuple):
    """Sag [m] in the middle of a flat part, and its greatest bending stress [Pa]."""

    sag: Number
    stress: Number


class Loaded(NamedTuple):
    """What lies on a flat part: evenly [Pa], and a force in the middle [N]."""

    pressure: Number
    force: Number


def load_on(action: Action, single_force: Number, area: Number) -> Loaded:
    """What lies on a flat part: its greatest single force in the middle, all else evenly.

    Statics; where the force does not stand in the middle, an upper bound.
    """
    even = action.weight.force + action.loads.force - single_force
    return Loaded(np.maximum(even, 0.0) / area, single_force)


def round_span(
    load: Loaded,
    support: Number,
    count: int | None,
    diameter: Number,
    opening: Number,
    modulus: Number,
    thickness: Number,
    poisson: Number,
    patch: Number,
) -> Spanned:
    """A round part on a ring of supports, or on at least three arms.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), art. 16, 17 and 71;
    with an opening Young and Budynas, Roark's Formulas (2002), table 11.2 cases 1a and 2a.

    Notes
    -----
    Thin isotropic plate with the mean modulus. With an opening the force lies around its edge, and
    arms are taken as a ring: a lower bound. The stress is that of a plate that ends at its
    supports: an overhang relieves it.
    """
    rigidity = plate_rigidity(modulus, thickness, poisson)
    plate = (diameter / 2, rigidity, poisson)
    if np.any(opening > 0):
        return _annular(load, support, opening / 2, thickness, rigidity, poisson)
    if count is not None and count > 1:
        arms = (support, float(count), *plate)
        sag = point_supported_uniform(load.pressure, *arms)
        sag = sag + point_supported_centre_load(load.force, *arms)
    else:
        sag = ring_supported_uniform(load.pressure, support, *plate).centre
        sag = sag + ring_supported_centre_load(load.force, support, *plate).centre
    reach = equivalent_patch_radius(patch, thickness)
    moment = simple_plate_uniform_moment(load.pressure, support, poisson)
    moment = moment + simple_plate_patch_moment(load.force, reach, support, poisson)
    return Spanned(sag, 6 * moment / (thickness * thickness))


def _annular(
    load: Loaded,
    support: Number,
    hole: Number,
    thickness: Number,
    rigidity: Number,
    poisson: Number,
) -> Spanned:
    even = annular_simple_uniform(load.pressure, hole, support, rigidity, poisson)
    line = load.force / (2 * np.pi * hole)
    edge = annular_simple_ring_load(line, hole, support, rigidity, poisson)
    moment = even.moment + edge.moment
    return Spanned(even.deflection + edge.deflection, 6 * moment / (thickness * thickness))


def board_span(
    load: Loaded, span: Number, width: Number, modulus: Number, thickness: Number
) -> Spanned:
    """A board that lies on two lines: its load evenly, and a force in the middle.

    Gere and Goodno, Mechanics of Materials (2009), table G-2 cases 1 and 4.

    Notes
    -----
    5 q L^4 / (384 E t^3/12) and F L^3 / (48 E I), I of as much width as the span: the force spreads
    at 45 degrees to both sides, common practice.
    """
    cube = thickness * thickness * thickness / 12
    shared = np.minimum(width, span)
    sag = beam_uniform_deflection(load.pressure, span, modulus * cube)
    middle = span / 2
    sag = sag + beam_deflection(load.force, middle, middle, span, modulus * cube * shared)
    moment = load.pressure * span * span / 8 + load.force * span / (4 * shared)
    return Spanned(sag, 6 * moment / (thickness * thickness))
