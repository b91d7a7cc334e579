"""Wood as a material: stiffness and strength off the grain, density, time and moisture."""

import numpy as np

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number, valid_when


@defined(positive="along across")
def hankinson(along: Number, across: Number, angle: Number) -> Number:
    """Strength of wood at an angle to the grain.

    Hankinson; as in Wood Handbook FPL-GTR-282 (2021), ch. 5.

    Parameters
    ----------
    along : strength parallel to the grain [Pa]
    across : strength perpendicular to the grain [Pa]
    angle : angle between load and grain [rad]

    Returns
    -------
    strength : strength at that angle [Pa]

    Notes
    -----
    P Q / (P sin^2 a + Q cos^2 a).

    >>> round(float(hankinson(46.6e6, 7.0e6, np.pi / 4)) / 1e6, 2)
    12.17
    """
    sine, cosine = np.sin(angle), np.cos(angle)
    strength: Number = along * across / (along * sine * sine + across * cosine * cosine)
    return strength


@defined(positive="along across shear_modulus")
def off_axis_modulus(
    along: Number, across: Number, shear_modulus: Number, poisson: Number, angle: Number
) -> Number:
    """Modulus of elasticity of a panel or board cut at an angle to its grain.

    Jones, Mechanics of Composite Materials (1999), 2.6.

    Parameters
    ----------
    along : modulus of elasticity along the face grain [Pa]
    across : modulus of elasticity across the face grain [Pa]
    shear_modulus : shear modulus in the panel's plane [Pa]
    poisson : Poisson's ratio for a load along the grain [1]
    angle : angle between the strip and the face grain [rad]

    Returns
    -------
    modulus : modulus of elasticity along the strip [Pa]

    Notes
    -----
    1/E = c^4/E1 + (1/G - 2 nu/E1) s^2 c^2 + s^4/E2. A strip cut at an angle also twists as it
    bends; that coupling is left free.

    >>> round(float(off_axis_modulus(10e9, 7.5e9, 0.62e9, 0.05, np.pi / 4)) / 1e9, 2)
    2.18
    """
    sine, cosine = np.sin(angle), np.cos(angle)
    both = sine * sine * cosine * cosine
    compliance = cosine * cosine * cosine * cosine / along + sine * sine * sine * sine / across
    compliance = compliance + (1 / shear_modulus - 2 * poisson / along) * both
    modulus: Number = 1 / compliance
    return modulus


@valid_when(
    lambda specific_gravity, moisture: (specific_gravity > 0) & (moisture >= 0) & (moisture <= 0.3),
    "moisture content must lie between 0 and fibre saturation, 30 %",
)
@defined(positive="specific_gravity")
def density(specific_gravity: Number, moisture: Number) -> Number:
    """Density of wood at a moisture content.

    Wood Handbook FPL-GTR-282 (2021), ch. 4.

    Parameters
    ----------
    specific_gravity : ovendry mass over volume at that moisture content, over water's [1]
    moisture : moisture content, mass of water over ovendry mass [1]

    Returns
    -------
    density : mass over volume, water included [kg/m^3]

    Notes
    -----
    1000 G (1 + M).

    >>> round(density(0.63, 0.12))
    706
    """
    return 1000 * specific_gravity * (1 + moisture)


@valid_when(
    lambda modification, partial_factor: (modification > 0) & (partial_factor >= 1),
    "k_mod must be above zero and gamma_M at least one",
)
@defined(positive="modification partial_factor")
def design_strength(characteristic: Number, modification: Number, partial_factor: Number) -> Number:
    """Design strength of wood for its service class and the duration of the load.

    EN 1995-1-1:2004, eq. (2.14).

    Parameters
    ----------
    characteristic : characteristic strength [Pa]
    modification : k_mod for service class and duration of load [1]
    partial_factor : gamma_M of the material [1]

    Returns
    -------
    strength : design strength [Pa]

    Notes
    -----
    k_mod f_k / gamma_M.

    >>> round(design_strength(24e6, 0.8, 1.3) / 1e6, 3)
    14.769
    """
    return modification * characteristic / partial_factor


@valid_when(lambda deformation: deformation >= 0, "k_def must not be negative")
@silent
def creep_deflection(
    permanent: Number, variable: Number, deformation: Number, quasi_permanent: Number
) -> Number:
    """Deflection after years, from the deflections at once.

    EN 1995-1-1:2004, 2.2.3.

    Parameters
    ----------
    permanent : instantaneous deflection under what always lies on it [m]
    variable : instantaneous deflection under what comes and goes [m]
    deformation : k_def of the material and service class [1]
    quasi_permanent : share psi_2 of the variable load that lies there on average [1]

    Returns
    -------
    deflection : final deflection [m]

    Notes
    -----
    u_G (1 + k_def) + u_Q (1 + psi_2 k_def).

    >>> round(creep_deflection(0.002391, 0.0, 0.6, 0.0) * 1e3, 3)
    3.826
    """
    return permanent * (1 + deformation) + variable * (1 + quasi_permanent * deformation)


@defined(positive="strength width contact_length")
def perpendicular_capacity(
    strength: Number,
    width: Number,
    contact_length: Number,
    end_distance: Number,
    other_end_distance: Number,
    bearing_factor: Number = 1.0,
) -> Number:
    """Force that wood bears across its grain under a short contact.

    EN 1995-1-1:2004/A1:2008, 6.1.5.

    Parameters
    ----------
    strength : strength in compression across the grain [Pa]
    width : width of the contact across the grain [m]
    contact_length : length of the contact along the grain [m]
    end_distance : wood along the grain beyond one end of the contact [m]
    other_end_distance : wood along the grain beyond its other end [m]
    bearing_factor : k_c,90 of the arrangement [1]

    Returns
    -------
    force : force that the contact bears [N]

    Notes
    -----
    k_c,90 f_c,90 b l_ef; l_ef adds up to 30 mm at each end, no more than there is wood nor than
    the contact is long.

    >>> round(float(perpendicular_capacity(2.5e6, 0.05, 0.04, 0.1, 0.0)))
    8750
    """
    spread = np.minimum(0.03, contact_length)
    effective = (
        contact_length + np.minimum(spread, end_distance) + np.minimum(spread, other_end_distance)
    )
    force: Number = bearing_factor * strength * width * effective
    return force


@valid_when(
    lambda bearing_length: (bearing_length > 0) & (bearing_length < 0.1524),
    "the factor is for contacts shorter than 6 inches, away from an end",
)
@defined(positive="bearing_length")
def bearing_area_factor(bearing_length: Number) -> Number:
    """Factor on the strength across the grain for a short contact away from the board's end.

    NDS 2018, 3.10.4.

    Parameters
    ----------
    bearing_length : length of the contact along the grain, a washer's diameter [m]

    Returns
    -------
    factor : Cb [1]

    Notes
    -----
    (l + 3/8 in) / l.

    >>> bearing_area_factor(0.0254)
    1.375
    """
    return (bearing_length + 0.375 * 0.0254) / bearing_length
