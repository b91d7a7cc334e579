"""A plate as it is cut and as it swells, against the rollers that it runs past."""

import numpy as np

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number


@silent
def gap_after_swelling(gap: Number, thickness: Number, strain: Number) -> Number:
    """Gap that is left between the rollers and a plate that has swollen.

    Geometry.

    Parameters
    ----------
    gap : as assembled [m]
    thickness : of the plate as assembled [m]
    strain : swelling across the thickness, below zero for shrinking [1]

    Returns
    -------
    gap : below zero where the rollers are now forced apart [m]

    Notes
    -----
    >>> round(gap_after_swelling(0.15e-3, 18e-3, 0.012) * 1e3, 3)
    -0.066
    """
    return gap - thickness * strain


@defined(not_negative="eccentricity form_deviation")
def run_out(eccentricity: Number, form_deviation: Number = 0.0) -> Number:
    """Run-out of an edge that was machined about another centre than it turns about.

    ISO 1101 (circular run-out), geometry.

    Parameters
    ----------
    eccentricity : between the two centres [m]
    form_deviation : roundness of the edge itself [m]

    Returns
    -------
    run_out : what an indicator shows in one turn, at most [m]

    Notes
    -----
    2 e + form.

    >>> run_out(0.1e-3, 0.05e-3) * 1e3
    0.25
    """
    return 2.0 * eccentricity + form_deviation


@defined(not_negative="gap run_out_of_edge")
def side_gap_left(gap: Number, run_out_of_edge: Number) -> Number:
    """Least gap at a side roller while an edge with run-out turns past it.

    Geometry.

    Parameters
    ----------
    gap : mean gap [m]
    run_out_of_edge : what an indicator shows in one turn [m]

    Returns
    -------
    gap : below zero where the edge presses the roller [m]

    Notes
    -----
    >>> round(side_gap_left(0.05e-3, 0.25e-3) * 1e3, 3)
    -0.075
    """
    return gap - 0.5 * run_out_of_edge


@defined(
    positive="feature_radius circle_radius", not_negative="feature_half_width roller_half_width"
)
def path_clearance(
    feature_radius: Number,
    feature_half_width: Number,
    circle_radius: Number,
    roller_half_width: Number,
) -> Number:
    """Clearance between the path of a roller and an opening or a bolt head in the plate.

    Geometry.

    Parameters
    ----------
    feature_radius : from the axis to the middle of the feature [m]
    feature_half_width : half of its size along the radius [m]
    circle_radius : of the circle that the rollers run on [m]
    roller_half_width : half the width of a roller [m]

    Returns
    -------
    clearance : below zero where the roller runs over it [m]

    Notes
    -----
    >>> round(path_clearance(0.20, 7e-3, 0.23, 4e-3) * 1e3, 1)
    19.0
    """
    apart = np.abs(feature_radius - circle_radius)
    return apart - feature_half_width - roller_half_width
