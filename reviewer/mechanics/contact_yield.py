"""What a contact bears before it leaves a mark, and before rolling deepens the mark."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number

POINT_YIELD = 1.60
"""Peak pressure against yield stress at which a point contact first yields (Tresca)."""

LINE_YIELD = 1.67
"""Peak pressure against yield stress at which a line contact first yields (Tresca)."""

LINE_SHAKEDOWN = 2.0
"""Peak pressure against yield stress up to which rolling stops deepening a rut: 4 k, k = Y / 2."""


@defined(positive="pressure length radius modulus")
def line_force_at_pressure(
    pressure: Number, length: Number, radius: Number, modulus: Number
) -> Number:
    """Load at which a cylinder on a flat reaches a peak pressure.

    Hertz; as in Johnson, Contact Mechanics (1985), 4.2(c), solved for the load.

    Parameters
    ----------
    pressure : peak pressure [Pa]
    length : length of the contact [m]
    radius : effective radius [m]
    modulus : effective contact modulus E* [Pa]

    Returns
    -------
    force : load on the contact [N]

    Notes
    -----
    F = pi L R p0^2 / E*.

    >>> round(line_force_at_pressure(319.8e6, 0.0064, 0.011, 113.2e9))
    200
    """
    return np.pi * length * radius * pressure * pressure / modulus


@defined(positive="yield_stress length radius modulus")
def line_yield_force(
    yield_stress: Number, length: Number, radius: Number, modulus: Number
) -> Number:
    """Load at which a cylinder first leaves a lasting mark in a flat.

    Johnson, Contact Mechanics (1985), 6.2 (p0 = 1.67 Y); from memory.

    Parameters
    ----------
    yield_stress : yield stress of the softer body, for wood its strength across the load [Pa]
    length : length of the contact [m]
    radius : effective radius [m]
    modulus : effective contact modulus E* [Pa]

    Returns
    -------
    force : load on the contact [N]

    Notes
    -----
    F = pi L R (1.67 Y)^2 / E*. Yield begins below the surface (Tresca).

    >>> round(line_yield_force(8e6, 0.008, 0.011, 600e6), 1)
    82.2
    """
    return line_force_at_pressure(LINE_YIELD * yield_stress, length, radius, modulus)


@defined(positive="yield_stress radius modulus")
def point_yield_force(yield_stress: Number, radius: Number, modulus: Number) -> Number:
    """Load at which a ball first leaves a lasting mark in a flat.

    Johnson, Contact Mechanics (1985), 6.2 (p0 = 1.60 Y); from memory.

    Parameters
    ----------
    yield_stress : yield stress of the softer body [Pa]
    radius : effective radius [m]
    modulus : effective contact modulus E* [Pa]

    Returns
    -------
    force : load on the contact [N]

    Notes
    -----
    F = pi^3 R^2 (1.60 Y)^3 / (6 E*^2).

    >>> round(point_yield_force(235e6, 5e-3, 112e9), 2)
    0.55
    """
    pressure = np.pi * POINT_YIELD * yield_stress
    return radius * radius * pressure * pressure * pressure / (6.0 * modulus * modulus)


@defined(positive="half_width", not_negative="depth pressure")
def line_shear(depth: Number, half_width: Number, pressure: Number) -> Number:
    """Shear stress under the middle of a line contact.

    Johnson, Contact Mechanics (1985), 4.2(b).

    Parameters
    ----------
    depth : below the surface [m]
    half_width : half the width of the contact strip [m]
    pressure : peak pressure [Pa]

    Returns
    -------
    shear : largest shear stress in the plane of rolling [Pa]

    Notes
    -----
    tau/p0 = s - s^2 / sqrt(1 + s^2), s = depth / b: largest, 0.300, at s = 0.786.

    >>> round(line_shear(0.786, 1.0, 1.0), 3)
    0.3
    """
    ratio = depth / half_width
    return pressure * (ratio - ratio * ratio / np.sqrt(1.0 + ratio * ratio))


@defined(positive="yield_stress length radius modulus")
def line_shakedown_force(
    yield_stress: Number, length: Number, radius: Number, modulus: Number
) -> Number:
    """Load below which a rut under a cylinder that rolls again and again stops growing.

    Johnson, Contact Mechanics (1985), 9.2 (p0 = 4 k); from memory.

    Parameters
    ----------
    yield_stress : yield stress of the softer body, for wood its strength across the load [Pa]
    length : length of the contact [m]
    radius : effective radius [m]
    modulus : effective contact modulus E* [Pa]

    Returns
    -------
    force : load on the contact [N]

    Notes
    -----
    p0 = 4 k with k = Y/2 (Tresca): 1.43 times the load of first yield. For metals; wood also
    creeps, so that for wood it is a hint.

    >>> round(line_shakedown_force(8e6, 0.008, 0.011, 600e6), 1)
    118.0
    """
    return line_force_at_pressure(LINE_SHAKEDOWN * yield_stress, length, radius, modulus)
