"""Ball bearings at rest or turning slowly: static rating, safety, pure axial load."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

# ISO 76:2006 Table 1, radial ball bearings: f0 at Dw cos(alpha) / Dpw = 0, 0.01 ... 0.40.
# fmt: off
_STATIC_FACTORS = np.array([
    14.7, 14.9, 15.1, 15.3, 15.5, 15.7, 15.9, 16.1, 16.3, 16.5, 16.4, 16.1, 15.9, 15.6,
    15.4, 15.2, 14.9, 14.7, 14.4, 14.2, 14.0, 13.7, 13.5, 13.2, 13.0, 12.8, 12.5, 12.3,
    12.1, 11.8, 11.6, 11.4, 11.2, 10.9, 10.7, 10.5, 10.3, 10.0, 9.8, 9.6, 9.4,
])
# fmt: on
_RATIOS = np.arange(41) / 100.0


@defined(positive="ball_diameter pitch_diameter")
def ball_ratio(
    ball_diameter: Number, pitch_diameter: Number, contact_angle: Number = 0.0
) -> Number:
    """Ball diameter against pitch diameter, by which the factors of the ratings go.

    ISO 76:2006, 3; ISO 281:2007, 4.

    Parameters
    ----------
    ball_diameter : diameter of a ball [m]
    pitch_diameter : diameter of the circle of ball centres [m]
    contact_angle : nominal contact angle, 0 for deep groove [rad]

    Returns
    -------
    ratio : Dw cos(alpha) / Dpw [1]

    Notes
    -----
    >>> round(ball_ratio(3.969e-3, 15e-3), 4)
    0.2646
    """
    return ball_diameter * np.cos(contact_angle) / pitch_diameter


@valid_when(lambda ratio: (ratio >= 0) & (ratio <= 0.40), "the table ends at a ball ratio of 0.40")
def static_factor(ratio: Number) -> Number:
    """Factor f0 of the static rating of radial ball bearings.

    ISO 76:2006, Table 1.

    Parameters
    ----------
    ratio : Dw cos(alpha) / Dpw [1]

    Returns
    -------
    factor : f0 for newtons and millimetres [1]

    Notes
    -----
    Linear between the table's steps of 0.01.

    >>> static_factor(0.26)
    12.5
    """
    factor = np.interp(ratio, _RATIOS, _STATIC_FACTORS)
    return factor if np.ndim(ratio) else float(factor)


@defined(positive="ball_count ball_diameter pitch_diameter rows")
@valid_when(
    lambda ball_diameter, pitch_diameter, contact_angle: (
        ball_diameter * np.cos(contact_angle) <= 0.40 * pitch_diameter
    ),
    "the table of the factor f0 ends at a ball ratio of 0.40",
)
def static_rating(
    ball_count: Number,
    ball_diameter: Number,
    pitch_diameter: Number,
    contact_angle: Number = 0.0,
    rows: Number = 1.0,
) -> Number:
    """Basic static radial load rating of a radial ball bearing.

    ISO 76:2006, 5.1.

    Parameters
    ----------
    ball_count : balls in a row [1]
    ball_diameter : diameter of a ball [m]
    pitch_diameter : diameter of the circle of ball centres [m]
    contact_angle : nominal contact angle, 0 for deep groove [rad]
    rows : rows of balls [1]

    Returns
    -------
    rating : C0 [N]

    Notes
    -----
    C0 = f0 i Z Dw^2 cos(alpha), Dw in mm. Rings stiffly supported: it does not hold for an outer
    ring that runs on a flat track (see `roller_static_capacity`).

    >>> round(static_rating(7, 3.969e-3, 15e-3))
    1368
    """
    millimetres = ball_diameter * 1e3
    factor = static_factor(ball_ratio(ball_diameter, pitch_diameter, contact_angle))
    return factor * rows * ball_count * millimetres * millimetres * np.cos(contact_angle)


@defined(not_negative="radial axial")
def static_equivalent_load(radial: Number, axial: Number) -> Number:
    """Static equivalent radial load of a deep groove ball bearing.

    ISO 76:2006, 5.2.

    Parameters
    ----------
    radial : radial load [N]
    axial : axial load [N]

    Returns
    -------
    load : P0 [N]

    Notes
    -----
    P0 = 0.6 Fr + 0.5 Fa, not below Fr.

    >>> static_equivalent_load(200.0, 100.0), static_equivalent_load(0.0, 500.0)
    (200.0, 250.0)
    """
    return np.maximum(radial, 0.6 * radial + 0.5 * axial)


@defined(positive="rating load")
def static_safety(rating: Number, load: Number) -> Number:
    """Static safety of a bearing.

    ISO 76:2006, 3 and annex.

    Parameters
    ----------
    rating : basic static load rating C0 [N]
    load : static equivalent load P0 [N]

    Returns
    -------
    safety : s0 [1]

    Notes
    -----
    s0 = C0 / P0. Guide values for balls: quiet 2, ordinary 1, shock 1.5.

    >>> round(static_safety(1370.0, 200.0), 2)
    6.85
    """
    return rating / load


@defined(positive="rating bore")
@valid_when(
    lambda light_series: (np.asarray(light_series) == 0) | (np.asarray(light_series) == 1),
    "a series is light, 1, or is not, 0",
)
def pure_axial_limit(rating: Number, bore: Number, light_series: Number = 0.0) -> Number:
    """Largest axial load of a deep groove ball bearing that carries no radial load.

    General bearing catalogues, common practice.

    Parameters
    ----------
    rating : basic static load rating C0 [N]
    bore : bore of the inner ring [m]
    light_series : 1 for the diameter series 8, 9, 0 and 1, else 0 [1]

    Returns
    -------
    limit : axial load [N]

    Notes
    -----
    0.5 C0; 0.25 C0 with a bore up to 12 mm or in a light series.

    >>> pure_axial_limit(1370.0, 8e-3), pure_axial_limit(6600.0, 20e-3)
    (342.5, 3300.0)
    """
    small = (bore <= 12e-3 + 1e-9) | (np.asarray(light_series) > 0)
    return np.where(small, 0.25, 0.5) * rating
