"""Threads that strip: the areas that shear, and the length of thread that a load needs."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when


class ThreadAreas(NamedTuple):
    """Areas that shear off when a thread strips: of the nut's thread and of the bolt's."""

    internal: Number
    external: Number


@defined(positive="diameter pitch engagement")
@valid_when(lambda diameter, pitch: pitch < 0.5 * diameter, "the pitch is too coarse for a bolt")
def thread_shear_areas(diameter: Number, pitch: Number, engagement: Number) -> ThreadAreas:
    """Areas along which a metric thread strips.

    FED-STD-H28/2B, shear areas, at basic sizes; from memory.

    Parameters
    ----------
    diameter : nominal diameter [m]
    pitch : pitch of the thread [m]
    engagement : length of thread in thread [m]

    Returns
    -------
    internal : of the nut's thread, at the bolt's major diameter [m^2]
    external : of the bolt's thread, at the nut's minor diameter [m^2]

    Notes
    -----
    0.875 pi d L and 0.75 pi D1 L, D1 = d - 1.0825 P. Tolerances take off another 10 to 20 %.

    >>> areas = thread_shear_areas(8e-3, 1.25e-3, 8e-3)
    >>> round(areas.internal * 1e6, 1), round(areas.external * 1e6, 1)
    (175.9, 125.3)
    """
    minor = diameter - 1.0825 * pitch
    around = np.pi * engagement
    return ThreadAreas(0.875 * around * diameter, 0.75 * around * minor)


@defined(positive="diameter pitch internal_shear external_shear", not_negative="force")
@valid_when(lambda diameter, pitch: pitch < 0.5 * diameter, "the pitch is too coarse for a bolt")
def engagement_needed(
    force: Number, diameter: Number, pitch: Number, internal_shear: Number, external_shear: Number
) -> Number:
    """Length of thread in thread that a load needs.

    FED-STD-H28/2B, shear areas, at basic sizes; from memory.

    Parameters
    ----------
    force : load on the bolt [N]
    diameter : nominal diameter [m]
    pitch : pitch of the thread [m]
    internal_shear : shear strength of what is tapped [Pa]
    external_shear : shear strength of the bolt [Pa]

    Returns
    -------
    length : of engagement, for whichever thread strips first [m]

    Notes
    -----
    No safety in it.

    >>> round(engagement_needed(15.92e3, 8e-3, 1.25e-3, 100e6, 480e6) * 1e3, 2)
    7.24
    """
    internal, external = thread_shear_areas(diameter, pitch, 1.0)
    return np.maximum(force / (internal * internal_shear), force / (external * external_shear))
