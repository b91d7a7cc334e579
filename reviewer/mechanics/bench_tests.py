"""What a test on the bench tells of a material: moduli from loads and what was read."""

from reviewer.mechanics.formula import Number


def modulus_from_bending_test(
    force: Number, span: Number, width: Number, thickness: Number, deflection: Number
) -> Number:
    """Modulus of a strip that lies on two edges and is loaded in the middle.

    Gere and Goodno, Mechanics of Materials (2009), table G-2 case 4, solved for E.

    Parameters
    ----------
    force : force in the middle [N]
    span : distance between the two edges [m]
    width : width of the strip [m]
    thickness : thickness of the strip [m]
    deflection : how far the middle sinks [m]

    Returns
    -------
    modulus : modulus of elasticity in bending along the strip [Pa]

    Notes
    -----
    F L^3 / (48 I sag) with I = b t^3 / 12. Shear is counted as bending: of wood that is 20 times
    as long as thick about 4 per cent too soft.

    >>> round(modulus_from_bending_test(196.133, 0.8, 0.1, 0.018, 0.0045) / 1e6)
    9566
    """
    lengths = span / thickness
    return force * lengths * lengths * lengths / (4 * width * deflection)


def shear_modulus_from_twist_test(
    torque: Number, length: Number, torsion_constant: Number, angle: Number
) -> Number:
    """Shear modulus of a bar that is held at one end and twisted at the other.

    Gere and Goodno, Mechanics of Materials (2009), 3.3, solved for G.

    Parameters
    ----------
    torque : torque at the free end [N m]
    length : length between the two ends [m]
    torsion_constant : torsion constant J of the section [m^4]
    angle : how far the free end turns [rad]

    Returns
    -------
    shear_modulus : shear modulus G [Pa]

    Notes
    -----
    T L / (J theta).

    >>> round(shear_modulus_from_twist_test(50.0, 0.6, 1.5708e-8, 0.0236) / 1e9, 1)
    80.9
    """
    return torque * length / (torsion_constant * angle)
