"""Elastic contact of bodies that curve differently in two planes, after Hertz."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when


class EllipticalContact(NamedTuple):
    """An ellipse of contact: both half widths, the peak pressure and how near the bodies come."""

    first_half_width: Number
    second_half_width: Number
    pressure: Number
    approach: Number


@defined(positive="first_radius second_radius modulus", not_negative="force")
@valid_when(
    lambda first_radius, second_radius: (
        (first_radius <= 1e4 * second_radius) & (second_radius <= 1e4 * first_radius)
    ),
    "the effective radii must not differ by more than 10,000; take a line contact",
)
def elliptical_contact(
    force: Number, first_radius: Number, second_radius: Number, modulus: Number
) -> EllipticalContact:
    """Contact of two bodies, each curved differently in two planes at right angles.

    Hertz; as in Johnson, Contact Mechanics (1985), 4.2, equations 4.25 to 4.28.

    Parameters
    ----------
    force : load on the contact [N]
    first_radius : effective radius in the first plane [m]
    second_radius : effective radius in the second plane [m]
    modulus : effective contact modulus E* [Pa]

    Returns
    -------
    first_half_width : half width of the contact in the first plane [m]
    second_half_width : half width of the contact in the second plane [m]
    pressure : peak pressure [Pa]
    approach : movement of the bodies towards each other [m]

    Notes
    -----
    Exact, with complete elliptic integrals by the arithmetic-geometric mean.

    >>> contact = elliptical_contact(10e3, 10e-3, 20e-3 / 3, 112.2e9)
    >>> round(contact.first_half_width * 1e3, 3), round(contact.second_half_width * 1e3, 3)
    (0.933, 0.712)
    """
    larger = np.maximum(first_radius, second_radius)
    smaller = np.minimum(first_radius, second_radius)
    narrowness, integral, share = _ellipse(larger / smaller)
    half_length = np.cbrt(3.0 * force * larger * integral * share / (np.pi * modulus))
    half_width = half_length * narrowness
    lengthwise = np.asarray(first_radius) >= second_radius
    # Written so that no load gives no pressure: F / (a b) as F / a^3 times a / b.
    pressure = 0.5 * modulus * half_length / (narrowness * larger * integral * share)
    return EllipticalContact(
        np.where(lengthwise, half_length, half_width),
        np.where(lengthwise, half_width, half_length),
        pressure,
        half_length * half_length / (2.0 * larger * share),
    )


def _ellipse(ratio: Number) -> tuple[Number, Number, Number]:
    """Find the ellipse for a ratio of effective radii from one up.

    Returns its short axis over its long one, the elliptic integral K, and (K - E)/(K e^2).
    """
    target = np.log(ratio)
    slope = -target / 1.6
    for _ in range(40):
        integral, share, square = _integrals(np.exp(slope))
        # (E/k'^2 - K)/(K - E), rearranged so that nothing cancels for a circle.
        found = np.log((1.0 - share) / ((1.0 - square) * share))
        slope = np.minimum(slope + (found - target) / 1.6, 0.0)
    integral, share, _ = _integrals(np.exp(slope))
    return np.exp(slope), integral, share


def _integrals(narrowness: Number) -> tuple[Number, Number, Number]:
    """Complete elliptic integral K, (K - E)/(K e^2), and e^2, by the arithmetic-geometric mean."""
    square = np.maximum(1.0 - narrowness * narrowness, 1e-14)
    mean: Number = 1.0
    geometric: Number = np.sqrt(1.0 - square)
    total, weight = 0.5 * square, 1.0
    for _ in range(8):
        half_difference = 0.5 * (mean - geometric)
        mean, geometric = 0.5 * (mean + geometric), np.sqrt(mean * geometric)
        total = total + weight * half_difference * half_difference
        weight = 2.0 * weight
    return 0.5 * np.pi / mean, total / square, square
