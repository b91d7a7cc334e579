"""How far a joint in wood gives before it is loaded in earnest: slip of its fasteners."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number

_MM = 1e-3


@defined(positive="density diameter")
def en_bolt_slip_modulus(density: Number, diameter: Number) -> Number:
    """Slip modulus of one shear plane of a bolt, dowel or screw in a bored hole.

    EN 1995-1-1:2004, table 7.1.

    Parameters
    ----------
    density : mean density; of two woods the geometric mean [kg/m^3]
    diameter : diameter of the fastener [m]

    Returns
    -------
    slip_modulus : force per slip in service [N/m]

    Notes
    -----
    rho^1.5 d / 23 N/mm, d in mm; the clearance of a bolt's hole comes on top.

    >>> round(en_bolt_slip_modulus(420.0, 0.012) / 1e3)
    4491
    """
    slip_modulus: Number = np.power(density, 1.5) * (diameter / _MM) / 23 / _MM
    return slip_modulus


@defined(positive="density diameter")
def en_nail_slip_modulus(density: Number, diameter: Number) -> Number:
    """Slip modulus of one shear plane of a nail driven without a hole.

    EN 1995-1-1:2004, table 7.1.

    Parameters
    ----------
    density : mean density; of two woods the geometric mean [kg/m^3]
    diameter : diameter of the nail [m]

    Returns
    -------
    slip_modulus : force per slip in service [N/m]

    Notes
    -----
    rho^1.5 d^0.8 / 30 N/mm, d in mm.

    >>> round(en_nail_slip_modulus(420.0, 0.0031) / 1e3)
    709
    """
    slip_modulus: Number = np.power(density, 1.5) * np.power(diameter / _MM, 0.8) / 30 / _MM
    return slip_modulus
