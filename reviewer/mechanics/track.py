"""A steel roller on a track of wood: how far it sinks in, what mark stays, what rolling costs."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.contact import line_contact
from reviewer.mechanics.contact_yield import line_yield_force
from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

FULL_PLASTIC = 3.0
"""Mean pressure of a fully plastic indentation against yield stress (Tabor)."""


class Dent(NamedTuple):
    """The mark of a cylinder: its width along the track and its depth."""

    width: Number
    depth: Number


class BedContact(NamedTuple):
    """A cylinder on a thin layer: half the contact's width, peak pressure, how far it sinks."""

    half_width: Number
    pressure: Number
    approach: Number


@defined(positive="length radius yield_stress modulus constraint", not_negative="force")
@valid_when(
    lambda force, length, radius, yield_stress, constraint: (
        force < 2.0 * constraint * yield_stress * length * radius
    ),
    "the roller sinks in up to its axle",
)
def dent(
    force: Number,
    length: Number,
    radius: Number,
    yield_stress: Number,
    modulus: Number,
    constraint: Number = FULL_PLASTIC,
) -> Dent:
    """Mark that a cylinder leaves in a softer flat.

    Tabor, The Hardness of Metals (1951): constant pressure of 3 Y over the chord; from memory.

    Parameters
    ----------
    force : load on the contact [N]
    length : length of the contact [m]
    radius : radius of the cylinder [m]
    yield_stress : yield stress of the flat, for wood its strength across the load [Pa]
    modulus : effective contact modulus E* [Pa]
    constraint : mean pressure of the dent against yield stress [1]

    Returns
    -------
    width : chord of the dent [m]
    depth : depth of the dent [m]

    Notes
    -----
    Nothing up to first yield (p0 = 1.67 Y); above it F = 3 Y L w, depth R - sqrt(R^2 - w^2/4).
    Rough: within a factor of two. The constraint grows from 1.3 at first yield to 3; with 1.3 the
    depth is five times as large, most of which springs back.

    >>> mark = dent(400.0, 0.008, 0.011, 8e6, 600e6)
    >>> round(mark.width * 1e3, 2), round(mark.depth * 1e3, 3)
    (2.08, 0.049)
    """
    yields = force > line_yield_force(yield_stress, length, radius, modulus)
    width = np.where(yields, force / (constraint * yield_stress * length), 0.0 * force)
    half = 0.5 * width
    # R - sqrt(R^2 - h^2) without the cancellation.
    return Dent(width, half * half / (radius + np.sqrt(radius * radius - half * half)))


@defined(positive="length radius modulus thickness", not_negative="force")
@valid_when(
    lambda force, length, radius, modulus, thickness: (
        (16.0 * force * radius <= np.pi * length * modulus * thickness * thickness)
        & (16.0 * force * radius <= np.pi * modulus * length * length * length)
    ),
    "the contact is wider than the track is thick, or than the roller is long",
)
def track_approach(
    force: Number,
    length: Number,
    radius: Number,
    modulus: Number,
    thickness: Number,
    poisson_ratio: Number = 0.3,
) -> Number:
    """How far a cylinder presses itself into a thick track on a stiff ground, while elastic.

    Johnson, Contact Mechanics (1985), equation 4.57, and the finite strip on a half-space.

    Parameters
    ----------
    force : load on the contact [N]
    length : length of the contact [m]
    radius : radius of the cylinder [m]
    modulus : effective contact modulus E* [Pa]
    thickness : thickness of the track [m]
    poisson_ratio : Poisson's ratio of the track [1]

    Returns
    -------
    approach : movement of the axle towards the ground [m]

    Notes
    -----
    The less of two upper bounds, F/(pi E* L) times (2 ln(2 t/b) - v/(1-v)), load that spreads
    along the track alone, and times (2 ln(2 L/b) + 1), a track without end. Up to a fifth high for
    an isotropic track; the scatter of wood's modulus is larger.

    >>> round(track_approach(200.0, 0.0064, 0.011, 650e6, 0.018) * 1e3, 4)
    0.0994
    """
    half_width = line_contact(force, length, radius, modulus).half_width
    # No load, no approach: the logarithm of an infinite ratio is kept finite.
    narrow = np.maximum(half_width, 1e-12 * length)
    deep = 2.0 * np.log(2.0 * thickness / narrow) - poisson_ratio / (1.0 - poisson_ratio)
    broad = 2.0 * np.log(2.0 * length / narrow) + 1.0
    return force / (np.pi * modulus * length) * np.minimum(deep, broad)


@defined(positive="length radius modulus thickness", not_negative="force")
def bed_contact(
    force: Number, length: Number, radius: Number, modulus: Number, thickness: Number
) -> BedContact:
    """Contact of a cylinder with a thin soft layer on a stiff ground.

    Johnson, Contact Mechanics (1985), 4.3 (elastic foundation).

    Parameters
    ----------
    force : load on the contact [N]
    length : length of the contact [m]
    radius : radius of the cylinder [m]
    modulus : modulus of the layer in the direction of the load [Pa]
    thickness : thickness of the layer [m]

    Returns
    -------
    half_width : half the width of the contact strip [m]
    pressure : peak pressure [Pa]
    approach : how far the cylinder sinks in [m]

    Notes
    -----
    Each point of the layer is a spring E/t of its own: a^3 = 3 F R t / (2 E L), sinks a^2 / (2 R).
    For a contact wider than the layer is thick; otherwise too soft.

    >>> contact = bed_contact(200.0, 0.01, 0.011, 20e6, 1e-3)
    >>> round(contact.half_width * 1e3, 2), round(contact.approach * 1e3, 3)
    (2.55, 0.295)
    """
    half_width = np.cbrt(1.5 * force * radius * thickness / (modulus * length))
    approach = half_width * half_width / (2.0 * radius)
    return BedContact(half_width, modulus * approach / thickness, approach)


@defined(positive="force approach")
def secant_stiffness(force: Number, approach: Number) -> Number:
    """Stiffness of a spring that is not straight, from the origin to a load.

    Definition.

    Parameters
    ----------
    force : load at which the stiffness is taken [N]
    approach : movement under that load [m]

    Returns
    -------
    stiffness : secant through the origin [N/m]

    Notes
    -----
    A contact is softer below that load and stiffer above it.

    >>> round(secant_stiffness(200.0, 0.0994e-3) / 1e6, 2)
    2.01
    """
    return force / approach


@defined(positive="radius", not_negative="half_width loss")
def rolling_coefficient(half_width: Number, radius: Number, loss: Number) -> Number:
    """Resistance of a cylinder that rolls on an elastic track, against its load.

    Johnson, Contact Mechanics (1985), 9.4 (hysteresis loss).

    Parameters
    ----------
    half_width : half the width of the contact strip [m]
    radius : radius of the cylinder [m]
    loss : share of the elastic work that is lost, some 0.02 steel and 0.1 to 0.3 wood [1]

    Returns
    -------
    coefficient : force in the direction of rolling against load [1]

    Notes
    -----
    2 b / (3 pi R) times the loss. The loss of wood is not well known: within a factor of three.

    >>> round(rolling_coefficient(0.82e-3, 0.011, 0.2), 4)
    0.0032
    """
    return loss * 2.0 * half_width / (3.0 * np.pi * radius)


@defined(positive="length radius pressure", not_negative="force")
def rut_resistance(force: Number, length: Number, radius: Number, pressure: Number) -> Number:
    """Resistance of a cylinder that presses a fresh rut while it rolls.

    Statics: constant pressure over the front half of the contact.

    Parameters
    ----------
    force : load on the contact [N]
    length : length of the contact [m]
    radius : radius of the cylinder [m]
    pressure : mean pressure of the dent, 3 Y at most [Pa]

    Returns
    -------
    resistance : force in the direction of rolling [N]

    Notes
    -----
    H = F^2 / (2 p L R). On the first pass; later passes cost little more than the elastic loss.

    >>> round(rut_resistance(400.0, 0.008, 0.011, 24e6), 1)
    37.9
    """
    return force * force / (2.0 * pressure * length * radius)
