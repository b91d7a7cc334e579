"""Cross-sections of bars: what bending, shear and torsion see of them."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

_ODD_FIFTH_POWERS = 31 / 32 * 1.0369277551433699  # sum of 1/n^5 over odd n, by zeta(5)
_ODD_TERMS = (1, 3, 5, 7)  # the next term of either series is below 1e-12


class SectionProperties(NamedTuple):
    """A section's properties; `lateral` ones belong to a load along the width."""

    area: Number
    second_moment: Number
    lateral_second_moment: Number
    section_modulus: Number
    lateral_section_modulus: Number
    torsion_constant: Number
    torsion_modulus: Number
    shear_area: Number
    lateral_shear_area: Number


class RectangleTorsion(NamedTuple):
    """Torsion of a solid rectangle."""

    torsion_constant: Number
    torsion_modulus: Number


@defined(positive="width height")
def rectangle_torsion(width: Number, height: Number) -> RectangleTorsion:
    """Torsion constant of a solid rectangle and the modulus of its peak shear stress.

    Timoshenko and Goodier, Theory of Elasticity (1970), art. 109.

    Parameters
    ----------
    width : side of the rectangle [m]
    height : other side of the rectangle [m]

    Returns
    -------
    torsion_constant : J in twist = T L / (G J) [m^4]
    torsion_modulus : T / (peak shear stress), which is at the middle of the long side [m^3]

    Notes
    -----
    With long side a and short side b, J = a b^3/3 [1 - 192 b/(pi^5 a) sum tanh(n pi a/2b)/n^5],
    peak = G theta b [1 - 8/pi^2 sum 1/(n^2 cosh(n pi a/2b))], n odd. Free warping.

    >>> square = rectangle_torsion(1.0, 1.0)
    >>> round(float(square.torsion_constant), 4), round(float(square.torsion_modulus), 4)
    (0.1406, 0.2082)
    """
    long = np.maximum(width, height)
    short = np.minimum(width, height)
    fifth: Number = _ODD_FIFTH_POWERS
    stress_series: Number = 0.0
    for n in _ODD_TERMS:
        decay = np.exp(-n * np.pi * long / (2 * short))
        fifth = fifth - 2 * decay * decay / (1 + decay * decay) / n**5
        stress_series = stress_series + 2 * decay / (1 + decay * decay) / n**2
    constant = long * short * short * short / 3 * (1 - 192 / np.pi**5 * short / long * fifth)
    peak = short * (1 - 8 / np.pi**2 * stress_series)
    return RectangleTorsion(constant, constant / peak)


@defined(positive="width height")
def rectangle_section(width: Number, height: Number) -> SectionProperties:
    """Section properties of a solid rectangle, loaded along its height.

    Gere and Goodno, Mechanics of Materials (2009), app. D; shear area Timoshenko's 5/6 A.

    Parameters
    ----------
    width : side across the load [m]
    height : side along the load [m]

    Returns
    -------
    area : area of the section [m^2]
    second_moment : second moment of area for a load along the height [m^4]
    lateral_second_moment : second moment of area for a load along the width [m^4]
    section_modulus : section modulus for a load along the height [m^3]
    lateral_section_modulus : section modulus for a load along the width [m^3]
    torsion_constant : J in twist = T L / (G J) [m^4]
    torsion_modulus : T / (peak shear stress) [m^3]
    shear_area : kappa A for a load along the height [m^2]
    lateral_shear_area : kappa A for a load along the width [m^2]

    Notes
    -----
    I = w h^3/12, W = w h^2/6. The lateral shear area is up to 6 % high on a 2:1 rectangle.

    >>> section = rectangle_section(0.02, 0.06)
    >>> round(float(section.second_moment) * 1e12), round(float(section.section_modulus) * 1e9)
    (360000, 12000)
    """
    area = width * height
    torsion = rectangle_torsion(width, height)
    return SectionProperties(
        area,
        area * height * height / 12,
        area * width * width / 12,
        area * height / 6,
        area * width / 6,
        torsion.torsion_constant,
        torsion.torsion_modulus,
        area * 5 / 6,
        area * 5 / 6,
    )


@valid_when(
    lambda width, height, wall: (2 * wall < width) & (2 * wall < height) & (wall > 0),
    "the wall must be thinner than half of either side",
)
@defined(positive="width height wall")
def box_section(width: Number, height: Number, wall: Number) -> SectionProperties:
    """Section properties of a rectangular tube of even wall, loaded along its height.

    Bredt; as in Gere and Goodno, Mechanics of Materials (2009), 3.10; shear area by energy.

    Parameters
    ----------
    width : outer side across the load [m]
    height : outer side along the load [m]
    wall : thickness of the wall [m]

    Returns
    -------
    area : area of the section [m^2]
    second_moment : second moment of area for a load along the height [m^4]
    lateral_second_moment : second moment of area for a load along the width [m^4]
    section_modulus : section modulus for a load along the height [m^3]
    lateral_section_modulus : section modulus for a load along the width [m^3]
    torsion_constant : J in twist = T L / (G J) [m^4]
    torsion_modulus : T / (shear stress in the wall) [m^3]
    shear_area : kappa A for a load along the height [m^2]
    lateral_shear_area : kappa A for a load along the width [m^2]

    Notes
    -----
    J = 4 Am^2 t/s, torsion modulus 2 Am t, on the middle line of the wall. On sharp-cornered tubes
    J and the shear areas are 2 to 6 % low, which is on the safe side of stiffness.

    >>> section = box_section(0.04, 0.04, 0.002)
    >>> round(float(section.second_moment) * 1e12, 1), round(float(section.torsion_constant) * 1e12)
    (73365.3, 109744)
    """
    inner_width, inner_height = width - 2 * wall, height - 2 * wall
    area = width * height - inner_width * inner_height
    along = width * height * height * height / 12
    along = along - inner_width * inner_height * inner_height * inner_height / 12
    across = height * width * width * width / 12
    across = across - inner_height * inner_width * inner_width * inner_width / 12
    middle_width, middle_height = width - wall, height - wall
    enclosed = middle_width * middle_height
    return SectionProperties(
        area,
        along,
        across,
        2 * along / height,
        2 * across / width,
        2 * enclosed * enclosed * wall / (middle_width + middle_height),
        2 * enclosed * wall,
        _box_shear_area(middle_width, middle_height, wall),
        _box_shear_area(middle_height, middle_width, wall),
    )


def _box_shear_area(width: Number, height: Number, wall: Number) -> Number:
    """Shear area I^2 / integral of (Q/t)^2 dA over the middle line of a rectangular tube."""
    second_moment = height * height * (height / 6 + width / 2)
    flanges = height * height * width * width * width / 24
    square = height * height
    corner = width * height / 4 + square / 8
    webs = 2 * height * (corner * corner - corner * square / 12 + square * square / 320)
    return wall * second_moment * second_moment / (flanges + webs)


@valid_when(
    lambda outer_diameter, wall: (wall > 0) & (2 * wall <= outer_diameter),
    "the wall must be above zero and at most half of the diameter",
)
@defined(positive="outer_diameter wall")
def pipe_section(outer_diameter: Number, wall: Number) -> SectionProperties:
    """Section properties of a round tube; of a round bar where the wall is half of the diameter.

    Gere and Goodno, Mechanics of Materials (2009), 3.3; shear area Cowper (1966) at nu = 0.

    Parameters
    ----------
    outer_diameter : outer diameter [m]
    wall : thickness of the wall [m]

    Returns
    -------
    area : area of the section [m^2]
    second_moment : second moment of area [m^4]
    lateral_second_moment : the same [m^4]
    section_modulus : section modulus [m^3]
    lateral_section_modulus : the same [m^3]
    torsion_constant : polar second moment of area [m^4]
    torsion_modulus : T / (peak shear stress) [m^3]
    shear_area : kappa A [m^2]
    lateral_shear_area : the same [m^2]

    Notes
    -----
    I = pi/64 (D^4 - d^4), J = 2 I; kappa = 6 (1 + m^2)^2 / (7 (1 + m^2)^2 + 20 m^2), m = d/D.

    >>> round(float(pipe_section(0.04, 0.002).torsion_constant) * 1e12)
    86431
    """
    bore = outer_diameter - 2 * wall
    area = np.pi / 4 * (outer_diameter * outer_diameter - bore * bore)
    second_moment = area / 16 * (outer_diameter * outer_diameter + bore * bore)
    modulus = 2 * second_moment / outer_diameter
    ratio = bore / outer_diameter * bore / outer_diameter
    both = (1 + ratio) * (1 + ratio)
    shear_area = area * 6 * both / (7 * both + 20 * ratio)
    return SectionProperties(
        area,
        second_moment,
        second_moment,
        modulus,
        modulus,
        2 * second_moment,
        2 * modulus,
        shear_area,
        shear_area,
    )


@defined(positive="diameter")
def round_section(diameter: Number) -> SectionProperties:
    """Section properties of a round bar.

    Gere and Goodno, Mechanics of Materials (2009), 3.3; shear area Cowper (1966) at nu = 0.

    Parameters
    ----------
    diameter : diameter of the bar [m]

    Returns
    -------
    area : area of the section [m^2]
    second_moment : second moment of area [m^4]
    lateral_second_moment : the same [m^4]
    section_modulus : section modulus [m^3]
    lateral_section_modulus : the same [m^3]
    torsion_constant : polar second moment of area [m^4]
    torsion_modulus : T / (peak shear stress) [m^3]
    shear_area : kappa A, 6/7 of the area [m^2]
    lateral_shear_area : the same [m^2]

    Notes
    -----
    I = pi d^4/64, W = pi d^3/32, J = 2 I.

    >>> round(float(round_section(0.02).section_modulus) * 1e9, 1)
    785.4
    """
    return pipe_section(diameter, diameter / 2)
