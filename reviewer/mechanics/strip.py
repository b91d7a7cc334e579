"""A strip on a softer track: a beam on an elastic bed, after Hetenyi."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number


class StripLoad(NamedTuple):
    """A strip under a point load: how far it sinks, pressure under it, moment, where it lifts."""

    deflection: Number
    pressure: Number
    moment: Number
    lift_off: Number


@defined(positive="modulus width thickness")
def layer_bed(modulus: Number, width: Number, thickness: Number) -> Number:
    """Stiffness of a layer under a strip, for each length of strip.

    Hetenyi, Beams on Elastic Foundation (1946), 1 (Winkler's bed).

    Parameters
    ----------
    modulus : of the layer in the direction of the load [Pa]
    width : of the strip [m]
    thickness : of the layer [m]

    Returns
    -------
    bed : force for each length and deflection [N/m^2]

    Notes
    -----
    E b / t. The load spreads beyond the strip: where the layer is thicker than the strip is wide
    the true bed is stiffer, up to several times; then see `half_space_bed`.

    >>> round(layer_bed(600e6, 10e-3, 18e-3) / 1e6)
    333
    """
    return modulus * width / thickness


@defined(positive="modulus width bending_stiffness", not_negative="poisson_ratio")
def half_space_bed(
    modulus: Number, width: Number, bending_stiffness: Number, poisson_ratio: Number = 0.3
) -> Number:
    """Stiffness of a thick track under a strip, for each length of strip.

    Vesic (1961), infinite beam on an isotropic half-space; from memory.

    Parameters
    ----------
    modulus : of the track in the direction of the load [Pa]
    width : of the strip [m]
    bending_stiffness : of the strip, E I [N m^2]
    poisson_ratio : Poisson's ratio of the track [1]

    Returns
    -------
    bed : force for each length and deflection [N/m^2]

    Notes
    -----
    0.65 E/(1 - v^2) (E b^4 / E_s I)^(1/12). For a track thicker than the strip is wide.

    >>> round(half_space_bed(600e6, 10e-3, 4.37, 0.3) / 1e6)
    440
    """
    square = width * width
    flexibility = modulus * square * square / bending_stiffness
    plane = modulus / (1.0 - poisson_ratio * poisson_ratio)
    bed: Number = 0.65 * plane * np.power(flexibility, 1.0 / 12.0)
    return bed


@defined(positive="bed bending_stiffness")
def decay(bed: Number, bending_stiffness: Number) -> Number:
    """How quickly the deflection of a strip dies out along it.

    Hetenyi, Beams on Elastic Foundation (1946), 2.

    Parameters
    ----------
    bed : force for each length and deflection [N/m^2]
    bending_stiffness : of the strip, E I [N m^2]

    Returns
    -------
    decay : lambda, one over a length [1/m]

    Notes
    -----
    (k / 4 E I)^(1/4). Beyond pi/lambda less than 5 % is left.

    >>> round(decay(14e6, 200e9 * 36.9e-6), 4)
    0.8299
    """
    return np.sqrt(np.sqrt(0.25 * bed / bending_stiffness))


@defined(positive="bed width bending_stiffness", not_negative="force")
def strip_under_load(
    force: Number, bed: Number, width: Number, bending_stiffness: Number
) -> StripLoad:
    """Strip far from its ends under a point load.

    Hetenyi, Beams on Elastic Foundation (1946), 2 (infinite beam).

    Parameters
    ----------
    force : load of the roller [N]
    bed : force for each length and deflection [N/m^2]
    width : of the strip [m]
    bending_stiffness : of the strip, E I [N m^2]

    Returns
    -------
    deflection : under the load [m]
    pressure : on the track under the load [Pa]
    moment : in the strip under the load [N m]
    lift_off : from the load to where the strip would rise [m]

    Notes
    -----
    F l/(2 k), F l/(2 b), F/(4 l) and 3 pi/(4 l) with l = lambda. For a strip that reaches pi/l to
    both sides.

    >>> strip = strip_under_load(200.0, 436e6, 10e-3, 4.37)
    >>> round(strip.deflection * 1e3, 4), round(strip.pressure / 1e6, 2), round(strip.moment, 3)
    (0.0162, 0.71, 0.708)
    """
    inverse_length = np.sqrt(np.sqrt(0.25 * bed / bending_stiffness))
    deflection = 0.5 * force * inverse_length / bed
    return StripLoad(
        deflection,
        bed * deflection / width,
        0.25 * force / inverse_length,
        0.75 * np.pi / inverse_length + 0.0 * force,
    )


@defined(positive="bed width bending_stiffness", not_negative="force")
def strip_end_under_load(
    force: Number, bed: Number, width: Number, bending_stiffness: Number
) -> StripLoad:
    """End of a strip, or a butt joint in it, under a point load.

    Hetenyi, Beams on Elastic Foundation (1946), 3 (semi-infinite beam).

    Parameters
    ----------
    force : load of the roller on the end [N]
    bed : force for each length and deflection [N/m^2]
    width : of the strip [m]
    bending_stiffness : of the strip, E I [N m^2]

    Returns
    -------
    deflection : under the load [m]
    pressure : on the track under the load [Pa]
    moment : largest in the strip, pi/(4 lambda) from its end [N m]
    lift_off : from the load to where the strip would rise [m]

    Notes
    -----
    2 F l/k, 2 F l/b, 0.322 F/l and pi/(2 l): four times the deflection within the strip.

    >>> within, end = (f(200.0, 436e6, 10e-3, 4.37) for f in (strip_under_load,
    ...                                                      strip_end_under_load))
    >>> round(end.deflection / within.deflection, 3)
    4.0
    """
    inverse_length = np.sqrt(np.sqrt(0.25 * bed / bending_stiffness))
    deflection = 2.0 * force * inverse_length / bed
    share = np.exp(-0.25 * np.pi) * np.sin(0.25 * np.pi)
    return StripLoad(
        deflection,
        bed * deflection / width,
        share * force / inverse_length,
        0.5 * np.pi / inverse_length + 0.0 * force,
    )


@defined(positive="bed bending_stiffness", not_negative="distance force")
def strip_deflection(
    distance: Number, force: Number, bed: Number, bending_stiffness: Number
) -> Number:
    """Deflection of a strip beside a point load.

    Hetenyi, Beams on Elastic Foundation (1946), 2 (infinite beam).

    Parameters
    ----------
    distance : from the load along the strip [m]
    force : load of the roller [N]
    bed : force for each length and deflection [N/m^2]
    bending_stiffness : of the strip, E I [N m^2]

    Returns
    -------
    deflection : below zero where the strip rises [m]

    Notes
    -----
    F l/(2 k) exp(-l x) (cos l x + sin l x); those of several rollers add up.

    >>> round(strip_deflection(0.0, 170e3, 14e6, 200e9 * 36.9e-6) * 1e3, 2)
    5.04
    """
    inverse_length = np.sqrt(np.sqrt(0.25 * bed / bending_stiffness))
    way = inverse_length * distance
    shape = np.exp(-way) * (np.cos(way) + np.sin(way))
    deflection: Number = 0.5 * force * inverse_length / bed * shape
    return deflection
