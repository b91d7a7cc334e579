"""How an arm bends, shears and turns at its root under what it carries."""

import numpy as np

from reviewer.mechanics.bending import bending_stiffness_from_test
from reviewer.mechanics.cantilevers import cantilever_couple_deflection, cantilever_deflection
from reviewer.mechanics.formula import Number


def bending_stiffness(
    modulus: Number | None,
    second_moment: Number | None,
    force: Number | None,
    at: Number | None,
    sag: Number | None,
) -> Number:
    """Bending stiffness: from a bench test where there is one, else from modulus and section.

    Gere and Goodno, Mechanics of Materials (2009), table G-1 case 4.

    Notes
    -----
    E I, or F a^3 / (3 sag) of the test.
    """
    if force is not None and at is not None and sag is not None:
        return bending_stiffness_from_test(force, at, sag)
    if modulus is None or second_moment is None:
        return np.nan
    return modulus * second_moment


def root_moment(moment: Number, force: Number, root: Number) -> Number:
    """Bending moment where the arm leaves its carrier.

    Statics.

    Notes
    -----
    Moment about the axis, less force times the radius of the root.
    """
    return moment - force * root


def shear_stiffness(
    modulus: Number | None, area: Number | None, sag: Number | None
) -> Number | None:
    """Stiffness of the arm against shear, where its section and material tell it.

    Timoshenko; as in Gere and Goodno, Mechanics of Materials (2009), 9.

    Notes
    -----
    kappa G A; without it shear is left out, which in slender arms is a few per cent.
    """
    if modulus is None or area is None or sag is not None:
        return None
    found = modulus * area
    return None if np.all(np.isnan(found)) else found


def tip_deflection(
    force: Number,
    moment: Number,
    reach: Number,
    stiffness: Number,
    shear_stiffness: Number | None,
    turning: Number,
) -> Number:
    """Deflection of the tip under a force that has a given moment about the root.

    Gere and Goodno, Mechanics of Materials (2009), table G-1 cases 5 and 6.

    Notes
    -----
    The forces are put together as one at a = M / F from the root; beyond the tip, as the force at
    the tip and a couple. Shear F a / (kappa G A) and the turning of the root's joint are added
    where they are known.
    """
    loaded = np.abs(force) > 0
    position = np.where(loaded, moment / np.where(loaded, force, 1.0), 0.0)
    near = np.minimum(position, reach)
    couple = np.where(loaded, force * (position - near), moment)
    shear = np.inf if shear_stiffness is None else shear_stiffness
    bent = cantilever_deflection(force, near, reach, stiffness, shear)
    return bent + cantilever_couple_deflection(couple, reach, stiffness) + turning
