"""Sections known by their catalogue's figures, and thin open sections in torsion."""

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when
from reviewer.mechanics.sections import SectionProperties

_UNKNOWN = float("nan")


@defined(positive="width height")
def given_section(
    width: Number,
    height: Number,
    area: Number,
    second_moment: Number,
    lateral_second_moment: Number,
    torsion_constant: Number = _UNKNOWN,
    torsion_modulus: Number = _UNKNOWN,
    shear_area: Number = _UNKNOWN,
    lateral_shear_area: Number = _UNKNOWN,
) -> SectionProperties:
    """Section properties of a symmetric profile from its catalogue's figures.

    Gere and Goodno, Mechanics of Materials (2009), 5.5.

    Parameters
    ----------
    width : outer side across the load [m]
    height : outer side along the load [m]
    area : area of the section [m^2]
    second_moment : second moment of area for a load along the height [m^4]
    lateral_second_moment : second moment of area for a load along the width [m^4]
    torsion_constant : J in twist = T L / (G J) [m^4]
    torsion_modulus : T / (peak shear stress) [m^3]
    shear_area : kappa A for a load along the height [m^2]
    lateral_shear_area : kappa A for a load along the width [m^2]

    Returns
    -------
    area : as given [m^2]
    second_moment : as given [m^4]
    lateral_second_moment : as given [m^4]
    section_modulus : second moment / half of the height [m^3]
    lateral_section_modulus : lateral second moment / half of the width [m^3]
    torsion_constant : as given [m^4]
    torsion_modulus : as given [m^3]
    shear_area : as given [m^2]
    lateral_shear_area : as given [m^2]

    Notes
    -----
    W = I / (h/2), for a section whose neutral axis is at half of its height. What a catalogue
    leaves out stays unknown.

    >>> section = given_section(0.04, 0.04, 3e-4, 7.2e-8, 7.2e-8)
    >>> round(float(section.section_modulus) * 1e9)
    3600
    """
    return SectionProperties(
        area,
        second_moment,
        lateral_second_moment,
        2 * second_moment / height,
        2 * lateral_second_moment / width,
        torsion_constant,
        torsion_modulus,
        shear_area,
        lateral_shear_area,
    )


@valid_when(
    lambda length, thickness: length >= 4 * thickness,
    "the wall must be at least four times as long as thick",
)
@defined(positive="length thickness")
def thin_open_torsion_constant(length: Number, thickness: Number) -> Number:
    """Torsion constant of a thin wall that does not close: a slit tube, an angle, a channel.

    Saint-Venant; as in Timoshenko and Goodier, Theory of Elasticity (1970), art. 110.

    Parameters
    ----------
    length : developed length of the middle line of the wall [m]
    thickness : thickness of the wall [m]

    Returns
    -------
    torsion_constant : J in twist = T L / (G J) [m^4]

    Notes
    -----
    J = s t^3/3; the peak shear stress is T t / J. One slit makes a tube hundreds of times softer.

    >>> round(float(thin_open_torsion_constant(0.152, 0.002)) * 1e12, 1)
    405.3
    """
    return length * thickness * thickness * thickness / 3


@defined(positive="length thickness")
def thin_open_torsion_modulus(length: Number, thickness: Number) -> Number:
    """Torque per peak shear stress of a thin wall that does not close.

    Saint-Venant; as in Timoshenko and Goodier, Theory of Elasticity (1970), art. 110.

    Parameters
    ----------
    length : developed length of the middle line of the wall [m]
    thickness : thickness of the wall [m]

    Returns
    -------
    torsion_modulus : T / (peak shear stress) [m^3]

    Notes
    -----
    T / tau = s t^2/3, away from inner corners.

    >>> round(float(thin_open_torsion_modulus(0.152, 0.002)) * 1e9, 1)
    202.7
    """
    return length * thickness * thickness / 3
