"""Elastic contact of curved bodies, after Hertz: point and line."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number, valid_when


class PointContact(NamedTuple):
    """A circular contact: its radius, the peak pressure and how near the bodies come."""

    radius: Number
    pressure: Number
    approach: Number


class LineContact(NamedTuple):
    """A strip of contact: half its width, and the peak pressure."""

    half_width: Number
    pressure: Number


@defined(positive="first_modulus second_modulus")
def contact_modulus(
    first_modulus: Number, first_ratio: Number, second_modulus: Number, second_ratio: Number
) -> Number:
    """Effective modulus of two bodies in contact.

    Hertz; as in Johnson, Contact Mechanics (1985), 4.2.

    Parameters
    ----------
    first_modulus : Young's modulus of one body, infinity for a rigid one [Pa]
    first_ratio : its Poisson's ratio [1]
    second_modulus : Young's modulus of the other body [Pa]
    second_ratio : its Poisson's ratio [1]

    Returns
    -------
    modulus : E* [Pa]

    Notes
    -----
    1/E* = (1 - v1^2)/E1 + (1 - v2^2)/E2. Isotropic bodies: for wood take the modulus in the
    direction of the load; the answer is then rough (some 20 %).

    >>> round(contact_modulus(206e9, 0.3, 206e9, 0.3) / 1e9, 1)
    113.2
    """
    first = (1 - first_ratio * first_ratio) / first_modulus
    second = (1 - second_ratio * second_ratio) / second_modulus
    return 1.0 / (first + second)


@silent
@valid_when(
    # That is, 1/R1 + 1/R2 above zero.
    lambda first_radius, second_radius: (
        (first_radius + second_radius) * first_radius * second_radius > 0
    ),
    "the bodies must curve apart from each other",
)
def effective_radius(first_radius: Number, second_radius: Number) -> Number:
    """Effective radius of two curved bodies in contact.

    Hertz; as in Johnson, Contact Mechanics (1985), 4.2.

    Parameters
    ----------
    first_radius : radius of one body, infinity if flat, below zero if hollow [m]
    second_radius : radius of the other body [m]

    Returns
    -------
    radius : R [m]

    Notes
    -----
    1/R = 1/R1 + 1/R2.

    >>> effective_radius(0.01, 0.03), effective_radius(0.01, float("inf"))
    (0.0075, 0.01)
    """
    return 1.0 / (1.0 / first_radius + 1.0 / second_radius)


@defined(positive="radius modulus", not_negative="force")
def point_contact(force: Number, radius: Number, modulus: Number) -> PointContact:
    """Contact of a ball with a flat, or of two balls.

    Hertz; as in Johnson, Contact Mechanics (1985), 4.2(a).

    Parameters
    ----------
    force : load on the contact [N]
    radius : effective radius [m]
    modulus : effective contact modulus E* [Pa]

    Returns
    -------
    radius : radius of the contact circle [m]
    pressure : peak pressure [Pa]
    approach : movement of the bodies towards each other [m]

    Notes
    -----
    a = (3 F R / 4 E*)^(1/3), p0 = 2 a E* / (pi R), approach a^2 / R. For a much below R.

    >>> contact = point_contact(95.95, 5e-3, 112.1e9)
    >>> round(contact.radius * 1e3, 4), round(contact.pressure / 1e6)
    (0.1475, 2105)
    """
    contact_radius = np.cbrt(0.75 * force * radius / modulus)
    pressure = 2.0 * contact_radius * modulus / (np.pi * radius)
    return PointContact(contact_radius, pressure, contact_radius * contact_radius / radius)


@defined(positive="length radius modulus", not_negative="force")
def line_contact(force: Number, length: Number, radius: Number, modulus: Number) -> LineContact:
    """Contact of a cylinder with a flat, or of two parallel cylinders.

    Hertz; as in Johnson, Contact Mechanics (1985), 4.2(c).

    Parameters
    ----------
    force : load on the contact [N]
    length : length of the contact [m]
    radius : effective radius [m]
    modulus : effective contact modulus E* [Pa]

    Returns
    -------
    half_width : half the width of the contact strip [m]
    pressure : peak pressure [Pa]

    Notes
    -----
    b = sqrt(4 F R / (pi L E*)), p0 = sqrt(F E* / (pi L R)). For b much below R; at square ends of
    the cylinder the pressure is higher.

    >>> contact = line_contact(200.0, 0.0064, 0.011, 113.2e9)
    >>> round(contact.half_width * 1e3, 4), round(contact.pressure / 1e6, 1)
    (0.0622, 319.9)
    """
    line_load = force / (np.pi * length)
    half_width = np.sqrt(4.0 * line_load * radius / modulus)
    return LineContact(half_width, np.sqrt(line_load * modulus / radius))
