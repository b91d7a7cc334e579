"""Stress from bending and shear, and what a deflection means to a user."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number

_GRAVITY = 9.80665  # standard acceleration of free fall


@defined(positive="section_modulus")
def bending_stress(moment: Number, section_modulus: Number) -> Number:
    """Stress at the outermost fibre from bending.

    Gere and Goodno, Mechanics of Materials (2009), 5.5.

    Parameters
    ----------
    moment : bending moment [N m]
    section_modulus : section modulus for that direction [m^3]

    Returns
    -------
    stress : normal stress at the outermost fibre [Pa]

    Notes
    -----
    M / W, while the material stays elastic.

    >>> bending_stress(60.0, 4e-6)
    15000000.0
    """
    return moment / section_modulus


@defined(positive="area")
def rectangle_shear_stress(force: Number, area: Number) -> Number:
    """Peak shear stress in a solid rectangle that carries a force across it.

    Gere and Goodno, Mechanics of Materials (2009), 5.8.

    Parameters
    ----------
    force : force across the beam [N]
    area : area of the section [m^2]

    Returns
    -------
    stress : shear stress at the neutral axis [Pa]

    Notes
    -----
    3 V / (2 A).

    >>> rectangle_shear_stress(200.0, 1e-4)
    3000000.0
    """
    return 3 * force / (2 * area)


@defined(positive="area")
def round_shear_stress(force: Number, area: Number) -> Number:
    """Peak shear stress in a round bar that carries a force across it.

    Gere and Goodno, Mechanics of Materials (2009), 5.9.

    Parameters
    ----------
    force : force across the bar [N]
    area : area of the section [m^2]

    Returns
    -------
    stress : shear stress at the neutral axis [Pa]

    Notes
    -----
    4 V / (3 A).

    >>> round(round_shear_stress(150.0, 1e-4))
    2000000
    """
    return 4 * force / (3 * area)


@defined(positive="span deflection")
def span_ratio(span: Number, deflection: Number) -> Number:
    """How many times the deflection goes into the span: 384 is the eye's limit on a shelf.

    Common practice of shelf makers: 1/32 inch per foot, which is span / 384.

    Parameters
    ----------
    span : distance between the supports [m]
    deflection : deflection at the middle [m]

    Returns
    -------
    ratio : span over deflection [1]

    Notes
    -----
    L / delta.

    >>> span_ratio(0.9, 0.0025)
    360.0
    """
    return span / deflection


@defined(positive="deflection")
def natural_frequency(deflection: Number) -> Number:
    """Frequency at which a mass bounces on a spring that sags under its weight.

    Rao, Mechanical Vibrations (2011), 2.2.

    Parameters
    ----------
    deflection : sag under the mass's own weight [m]

    Returns
    -------
    frequency : cycles per second [1/s]

    Notes
    -----
    sqrt(g / delta) / (2 pi); a beam's own mass is left out.

    >>> round(float(natural_frequency(0.001)), 1)
    15.8
    """
    frequency: Number = np.sqrt(_GRAVITY / deflection) / (2 * np.pi)
    return frequency


@defined(positive="length deflection")
def bending_stiffness_from_test(force: Number, length: Number, deflection: Number) -> Number:
    """Bending stiffness from a bench test: a strip held at one end and loaded at the other.

    Gere and Goodno, Mechanics of Materials (2009), table G-1 case 4, solved for E I.

    Parameters
    ----------
    force : force at the free end [N]
    length : free length [m]
    deflection : deflection measured at the free end [m]

    Returns
    -------
    bending_stiffness : E I [N m^2]

    Notes
    -----
    P L^3 / (3 delta); the clamp's own give is counted as the strip's.

    >>> round(bending_stiffness_from_test(196.0, 0.5, 0.0016))
    5104
    """
    return force * length * length * length / (3 * deflection)
