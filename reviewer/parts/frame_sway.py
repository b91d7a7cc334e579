"""How a frame on legs sways under a level push, and how it stands on an uneven floor."""

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.racking import (
    brace_racking_stiffness,
    leg_sway_stiffness,
    panel_racking_stiffness,
    portal_sway_stiffness,
)
from reviewer.parts.from_stock import shear_modulus_of
from reviewer.stock.materials import Material


def by_joints(
    count: int,
    height: Number,
    bending_stiffness: Number,
    joint_stiffness: Number,
    span: Number | None,
    apron: Number | None,
) -> Number:
    """Stiffness of legs that stiff joints hold upright, with the aprons between pairs of them.

    Gere and Goodno (2009), table G-1; Kleinlogel (1952), two-hinged portal.

    Notes
    -----
    Of an apron that is not told, legs under a top that stays level: an upper bound. Of an odd
    number of legs the odd one is left out where aprons are told.
    """
    if apron is None or span is None:
        return count * leg_sway_stiffness(height, bending_stiffness, joint_stiffness)
    one = portal_sway_stiffness(height, span, bending_stiffness, apron, joint_stiffness)
    return (count // 2) * one


def by_braces(
    reach: Number, rise: Number, area: Number, modulus: Number, working: int, height: Number
) -> Number:
    """Stiffness that the braces give which work at a time, the legs' joints taken as hinges.

    Gere and Goodno, Mechanics of Materials (2009), 2.2; joints left out: an upper bound.

    Notes
    -----
    A brace that rises less than the leg works on a shorter lever: (rise / height)^2.
    """
    lever = rise / height
    return working * brace_racking_stiffness(reach, rise, modulus * area) * lever * lever


def by_panels(
    material: Material, width: Number, rise: Number, thickness: Number, count: int, height: Number
) -> Number:
    """Stiffness of panels glued or screwed all round into the frame along the push.

    Timoshenko, Strength of Materials, Part I (1955), art. 16; slip left out: an upper bound.

    Notes
    -----
    A panel that is lower than the frame works on a shorter lever: (rise / height)^2.
    """
    shear, lever = shear_modulus_of(material), rise / height
    return count * panel_racking_stiffness(width, rise, shear, thickness) * lever * lever


def held_by(
    how: str, joints: Number | None, braces: Number | None, panels: Number | None
) -> Number:
    """The stiffness of what keeps the frame from swaying; the rest is left out, which is safe."""
    found = {"joints": joints, "braces": braces, "panels": panels}[how]
    return np.nan if found is None else found


def critical_load(stiffness: Number, height: Number) -> Number:
    """Load on top under which a frame on hinged feet falls over sideways.

    Timoshenko and Gere, Theory of Elastic Stability (1961), 2.1: bars with a spring at the top.

    Notes
    -----
    k h.
    """
    return stiffness * height


def sway_under_load(push: Number, stiffness: Number, load: Number, height: Number) -> Number:
    """Sway under the push, with what the load on top adds as it leans over.

    Timoshenko and Gere, Theory of Elastic Stability (1961), 2.1.

    Notes
    -----
    F / (k - P/h); unknown where the load alone makes it fall.
    """
    left = stiffness - load / height
    return np.where(left > 0.0, push / np.where(left > 0.0, left, 1.0), np.nan)


def leg_moment(push: Number, height: Number, count: int, sway: Number, load: Number) -> Number:
    """Bending moment at the top of a leg, all legs taking an equal part.

    Statics.

    Notes
    -----
    (F h + P s) / n; the feet turn freely.
    """
    return (push * height + load * sway) / count


def leg_mass(area: Number, height: Number, density: Number, count: int) -> Number:
    """Mass of the legs; aprons, braces and panels are left out.

    Geometry.
    """
    return count * area * height * density


def rocking_at_top(tilt: Number, height: Number, legs: int) -> Number:
    """How far the top moves sideways as the frame rocks; on three legs it never does.

    Geometry.

    Notes
    -----
    Tilt times height.
    """
    return tilt * height if legs > 3 else 0.0 * tilt


def least_side(length: Number, width: Number) -> Number:
    """The shorter side of the rectangle of feet, over which the rocking turns farthest.

    Geometry; as a square of that side, which is safe.
    """
    return np.minimum(length, width)
