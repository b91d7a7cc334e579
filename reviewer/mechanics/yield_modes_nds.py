"""Yield modes of bolts, screws and nails across a wood joint, by the NDS."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number

_INCH = 0.0254


class NdsSingleShear(NamedTuple):
    """Allowable lateral value of each yield mode in single shear, and the least."""

    main_crushes: Number
    side_crushes: Number
    both_crush: Number
    bends_in_main: Number
    bends_in_side: Number
    bends_twice: Number
    capacity: Number


class NdsDoubleShear(NamedTuple):
    """Allowable lateral value of each yield mode in double shear, and the least."""

    main_crushes: Number
    side_crushes: Number
    bends_in_side: Number
    bends_twice: Number
    capacity: Number


class _Modes(NamedTuple):
    """The six modes of one shear plane, each over its reduction term."""

    main: Any
    side: Any
    both: Any
    bends_main: Any
    bends_side: Any
    bends_twice: Any


def _reductions(diameter: Any, angle: Any) -> tuple[Any, Any, Any]:
    """Reduction terms of modes I, II and III to IV, NDS table 12.3.1B."""
    inches = diameter / _INCH
    small = np.where(inches <= 0.17, 2.2, 10 * inches + 0.5)
    turned = 1 + 0.25 * angle / (np.pi / 2)
    thin = inches < 0.25
    first, second, third = (np.where(thin, small, factor * turned) for factor in (4.0, 3.6, 3.2))
    return first, second, third


def _modes(d: Any, main: Any, side: Any, fem: Any, fes: Any, fyb: Any, angle: Any) -> _Modes:
    re, rt = fem / fes, main / side
    first, second, third = _reductions(d, angle)
    square = re + 2 * re * re * (1 + rt + rt * rt) + rt * rt * re * re * re
    k1 = (np.sqrt(square) - re * (1 + rt)) / (1 + re)
    slender = 2 * fyb * d * d / (3 * fem)
    k2 = np.sqrt(2 * (1 + re) + slender * (1 + 2 * re) / (main * main)) - 1
    k3 = np.sqrt(2 * (1 + re) / re + slender * (2 + re) / (side * side)) - 1
    return _Modes(
        d * main * fem / first,
        d * side * fes / first,
        k1 * d * side * fes / second,
        k2 * d * main * fem / ((1 + 2 * re) * third),
        k3 * d * side * fem / ((2 + re) * third),
        d * d / third * np.sqrt(2 * fem * fyb / (3 * (1 + re))),
    )


def _least(*values: Any) -> Any:
    least = values[0]
    for value in values[1:]:
        least = np.minimum(least, value)
    return least


@defined(
    positive="diameter main_length side_length main_bearing side_bearing bending_yield",
    not_negative="angle",
)
def nds_single_shear(
    diameter: Number,
    main_length: Number,
    side_length: Number,
    main_bearing: Number,
    side_bearing: Number,
    bending_yield: Number,
    angle: Number,
) -> NdsSingleShear:
    """Allowable lateral value of one bolt, screw or nail through two members.

    NDS 2018, 12.3.1, table 12.3.1A and 12.3.1B.

    Parameters
    ----------
    diameter : diameter of the fastener [m]
    main_length : length of the fastener in the main member [m]
    side_length : length of the fastener in the side member [m]
    main_bearing : dowel bearing strength of the main member [Pa]
    side_bearing : dowel bearing strength of the side member [Pa]
    bending_yield : bending yield strength of the fastener [Pa]
    angle : largest angle between load and grain in either member [rad]

    Returns
    -------
    main_crushes : mode Im [N]
    side_crushes : mode Is [N]
    both_crush : mode II [N]
    bends_in_main : mode IIIm [N]
    bends_in_side : mode IIIs [N]
    bends_twice : mode IV [N]
    capacity : least of them, before the NDS's adjustment factors [N]

    Notes
    -----
    European yield model with the NDS's reduction terms. Edge, end and spacing must be full.

    >>> psi, inch = 6894.757293168, 0.0254
    >>> bolt = nds_single_shear(inch / 2, 1.5 * inch, 1.5 * inch, 5600 * psi, 5600 * psi,
    ...                         45000 * psi, 0.0)
    >>> round(bolt.capacity / 4.4482216)
    483
    """
    modes = _modes(
        diameter, main_length, side_length, main_bearing, side_bearing, bending_yield, angle
    )
    return NdsSingleShear(*modes, _least(*modes))


@defined(
    positive="diameter main_length side_length main_bearing side_bearing bending_yield",
    not_negative="angle",
)
def nds_double_shear(
    diameter: Number,
    main_length: Number,
    side_length: Number,
    main_bearing: Number,
    side_bearing: Number,
    bending_yield: Number,
    angle: Number,
) -> NdsDoubleShear:
    """Allowable lateral value of one bolt through a member between two alike side members.

    NDS 2018, 12.3.1, table 12.3.1A and 12.3.1B.

    Parameters
    ----------
    diameter : diameter of the fastener [m]
    main_length : length of the fastener in the middle member [m]
    side_length : length of the fastener in each side member [m]
    main_bearing : dowel bearing strength of the middle member [Pa]
    side_bearing : dowel bearing strength of the side members [Pa]
    bending_yield : bending yield strength of the fastener [Pa]
    angle : largest angle between load and grain in any member [rad]

    Returns
    -------
    main_crushes : mode Im [N]
    side_crushes : mode Is [N]
    bends_in_side : mode IIIs [N]
    bends_twice : mode IV [N]
    capacity : least of them, before the NDS's adjustment factors [N]

    Notes
    -----
    Twice the single-shear value of modes Is, IIIs and IV; mode Im once.

    >>> psi, inch = 6894.757293168, 0.0254
    >>> bolt = nds_double_shear(inch / 2, 1.5 * inch, 1.5 * inch, 5600 * psi, 5600 * psi,
    ...                         45000 * psi, 0.0)
    >>> round(bolt.capacity / 4.4482216)
    1050
    """
    modes = _modes(
        diameter, main_length, side_length, main_bearing, side_bearing, bending_yield, angle
    )
    four = (modes.main, 2 * modes.side, 2 * modes.bends_side, 2 * modes.bends_twice)
    return NdsDoubleShear(*four, _least(*four))
