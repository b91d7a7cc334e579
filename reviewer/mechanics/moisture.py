"""Wood that moves: equilibrium moisture content, swelling and shrinking, gaps over the seasons."""

from typing import Any

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number, valid_when

_ICE_POINT = 273.15
_FIBRE_SATURATION = 0.30
_COEFFICIENTS = "the coefficients hold between 6 % and 14 % moisture content"


def _within_coefficients(initial: Number, final: Number) -> Any:
    """Whether the linear coefficients hold for both moisture contents."""
    return (initial >= 0.06) & (initial <= 0.14) & (final >= 0.06) & (final <= 0.14)


@valid_when(
    lambda temperature, humidity: (
        (temperature > 255) & (temperature < 344) & (humidity >= 0) & (humidity <= 0.95)
    ),
    "the equation holds from about -18 to 70 degrees Celsius and up to 95 % relative humidity",
)
@silent
def equilibrium_moisture(temperature: Number, humidity: Number) -> Number:
    """Moisture content that wood comes to in air of a temperature and humidity.

    Hailwood and Horrobin; as in Wood Handbook FPL-GTR-282 (2021), ch. 4.

    Parameters
    ----------
    temperature : temperature of the air [K]
    humidity : relative humidity, 0 to 1 [1]

    Returns
    -------
    moisture : mass of water over ovendry mass [1]

    Notes
    -----
    M % = 1800/W [K h/(1 - K h) + (K1 K h + 2 K1 K2 K^2 h^2)/(1 + K1 K h + K1 K2 K^2 h^2)], with
    W, K, K1, K2 quadratic in degrees Celsius.

    >>> round(equilibrium_moisture(293.15, 0.65), 3)
    0.12
    """
    t = temperature - _ICE_POINT
    weight = 349 + 1.29 * t + 0.0135 * t * t
    k = 0.805 + 0.000736 * t - 0.00000273 * t * t
    k1 = 6.27 - 0.00938 * t - 0.000303 * t * t
    k2 = 1.91 + 0.0407 * t - 0.000293 * t * t
    damp = k * humidity
    first, second = k1 * damp, k1 * k2 * damp * damp
    return 18 / weight * (damp / (1 - damp) + (first + 2 * second) / (1 + first + second))


@valid_when(_within_coefficients, _COEFFICIENTS)
@silent
def movement(size: Number, coefficient: Number, initial: Number, final: Number) -> Number:
    """Change of a board's width or thickness between two moisture contents.

    Wood Handbook FPL-GTR-282 (2021), ch. 13, dimensional change coefficient.

    Parameters
    ----------
    size : width or thickness at the first moisture content [m]
    coefficient : strain per per cent of moisture, radial or tangential [1]
    initial : first moisture content, mass of water over ovendry mass [1]
    final : second moisture content [1]

    Returns
    -------
    change : growth, negative where it shrinks [m]

    Notes
    -----
    D C (M2 - M1) with moisture in per cent; also for a panel's thickness with its own coefficient.

    >>> round(movement(12.0, 0.00369, 0.06, 0.12), 4)
    0.2657
    """
    return size * coefficient * 100 * (final - initial)


@valid_when(
    lambda shrinkage: (shrinkage > 0) & (shrinkage < 0.2),
    "total shrinkage must lie between 0 and 20 %",
)
@defined(positive="shrinkage")
def change_coefficient(shrinkage: Number) -> Number:
    """Dimensional change coefficient from the shrinkage from green to ovendry.

    Wood Handbook FPL-GTR-282 (2021), ch. 13: 30 % fibre saturation, size at 10 % moisture.

    Parameters
    ----------
    shrinkage : shrinkage from green to ovendry over the green size [1]

    Returns
    -------
    coefficient : strain per per cent of moisture [1]

    Notes
    -----
    S / (30 - 20 S). Does not hold for the groups of oaks, which have table values of their own.

    >>> round(change_coefficient(0.099), 5)
    0.00353
    """
    return shrinkage / (30 - 20 * shrinkage)


@valid_when(
    lambda shrinkage, initial, final: (
        (shrinkage > 0)
        & (initial >= 0)
        & (final >= 0)
        & (initial <= _FIBRE_SATURATION)
        & (final <= _FIBRE_SATURATION)
    ),
    "both moisture contents must lie between 0 and fibre saturation, 30 %",
)
@defined(positive="shrinkage")
def movement_from_shrinkage(
    size: Number, shrinkage: Number, initial: Number, final: Number
) -> Number:
    """Change of a board's size outside the range of the coefficients, from total shrinkage.

    Wood Handbook FPL-GTR-282 (2021), ch. 13, formula on the green dimension.

    Parameters
    ----------
    size : width or thickness at the first moisture content [m]
    shrinkage : shrinkage from green to ovendry over the green size [1]
    initial : first moisture content, mass of water over ovendry mass [1]
    final : second moisture content [1]

    Returns
    -------
    change : growth, negative where it shrinks [m]

    Notes
    -----
    D (M2 - M1) / (Mf/S - Mf + M1) with fibre saturation Mf = 30 %.

    >>> round(movement_from_shrinkage(232.0, 0.071, 0.08, 0.11), 3)
    1.738
    """
    green = _FIBRE_SATURATION / shrinkage - _FIBRE_SATURATION + initial
    return size * (final - initial) / green


@valid_when(lambda gap: gap >= 0, "the gap must not be negative")
@valid_when(_within_coefficients, _COEFFICIENTS)
@defined(positive="width")
def gap_left(
    gap: Number,
    width: Number,
    coefficient: Number,
    initial: Number,
    final: Number,
    frame_width: Number,
    frame_coefficient: Number,
) -> Number:
    """Gap left beside a board after its moisture has changed, in a frame that moves too.

    Wood Handbook FPL-GTR-282 (2021), ch. 13, on both parts.

    Parameters
    ----------
    gap : gap as built [m]
    width : width of the board across the gap [m]
    coefficient : the board's strain per per cent of moisture [1]
    initial : moisture content as built, mass of water over ovendry mass [1]
    final : moisture content looked at [1]
    frame_width : width of the opening, or of what carries it [m]
    frame_coefficient : the frame's strain per per cent of moisture in that direction [1]

    Returns
    -------
    gap : gap left, negative where the board jams [m]

    Notes
    -----
    g - (D C - D' C') (M2 - M1), moisture in per cent. Both parts take the same moisture.

    >>> round(gap_left(0.003, 0.6, 0.00369, 0.08, 0.11, 0.6, 0.0001) * 1e3, 3)
    -3.462
    """
    growth = movement(width, coefficient, initial, final)
    return gap - growth + movement(frame_width, frame_coefficient, initial, final)
