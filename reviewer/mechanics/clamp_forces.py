"""What is left of a clamp's bolt force: scatter, closing the slit, relaxation."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when


@defined(positive="modulus length thickness arm", not_negative="gap")
@valid_when(
    lambda gap, arm: gap <= 0.2 * arm, "the cheek bends further than small deflections allow"
)
def cheek_closing_force(
    modulus: Number, length: Number, thickness: Number, arm: Number, gap: Number
) -> Number:
    """Bolt force that only bends the cheek of a slotted clamp until it grips.

    Gere, Mechanics of Materials, appendix H (cantilever).

    Parameters
    ----------
    modulus : Young's modulus of the hub [Pa]
    length : of the hub along the shaft [m]
    thickness : of the cheek where it bends [m]
    arm : from where the cheek bends to the bolt [m]
    gap : that this cheek closes, half the clearance of the slit if both bend [m]

    Returns
    -------
    force : of all bolts together [N]

    Notes
    -----
    3 E I g / l^3 with I = L h^3 / 12. The shaft's clearance sets the gap. Rough, within a factor of
    two: a cheek is short, and gives way at its root.

    >>> round(cheek_closing_force(70e9, 25e-3, 8e-3, 30e-3, 0.1e-3))
    830
    """
    cube = thickness * thickness * thickness
    return 0.25 * modulus * length * cube * gap / (arm * arm * arm)


@defined(positive="modulus length thickness radius", not_negative="gap")
@valid_when(
    lambda thickness, radius: thickness <= 0.5 * radius, "the ring must be thin for its radius"
)
def split_ring_closing_force(
    modulus: Number, length: Number, thickness: Number, radius: Number, gap: Number
) -> Number:
    """Bolt force that only closes the slit of a ring-shaped clamp until it grips.

    Castigliano on a thin split ring; Timoshenko, Strength of Materials.

    Parameters
    ----------
    modulus : Young's modulus of the ring [Pa]
    length : of the ring along the shaft [m]
    thickness : of the ring's wall [m]
    radius : of the middle of the wall [m]
    gap : by which the slit narrows until the ring grips, pi times the clearance on diameter [m]

    Returns
    -------
    force : across the slit [N]

    Notes
    -----
    E I g / (3 pi R^3) with I = L h^3 / 12.

    >>> round(split_ring_closing_force(70e9, 15e-3, 5e-3, 14e-3, 0.3e-3))
    127
    """
    inertia = length * thickness * thickness * thickness / 12.0
    return modulus * inertia * gap / (3.0 * np.pi * radius * radius * radius)


@defined(not_negative="bolt_force closing_force scatter relaxation")
@valid_when(
    lambda scatter, relaxation: (scatter <= 1) & (relaxation <= 1),
    "scatter and relaxation are shares, up to 1",
)
def remaining_force(
    bolt_force: Number,
    closing_force: Number = 0.0,
    scatter: Number = 0.3,
    relaxation: Number = 0.0,
) -> Number:
    """Bolt force that a clamp still grips with.

    Statics; scatter of torque control as in Shigley, Mechanical Engineering Design, 8-9.

    Parameters
    ----------
    bolt_force : nominal preload of all bolts together [N]
    closing_force : that only closes the slit [N]
    scatter : of tightening to the low side, 0.3 for a torque wrench [1]
    relaxation : share of the grip that is lost with time in wood or plastic [1]

    Returns
    -------
    force : for gripping, not below zero [N]

    Notes
    -----
    (F (1 - s) - F_close)(1 - r).

    >>> remaining_force(10e3, 1e3, 0.3, 0.25)
    4500.0
    """
    gripping = np.maximum(bolt_force * (1.0 - scatter) - closing_force, 0.0)
    return gripping * (1.0 - relaxation)
