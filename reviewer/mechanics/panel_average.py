"""A panel with a grain as a plate alike in all directions: for what turns, or bends all ways."""

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when


@valid_when(
    lambda along_modulus, across_modulus, poisson: (
        (poisson >= 0) & (poisson * poisson * across_modulus < along_modulus)
    ),
    "Poisson's ratio must not be negative, and possible for these moduli",
)
@defined(positive="along_modulus across_modulus shear_modulus thickness")
def average_rigidity(
    along_modulus: Number,
    across_modulus: Number,
    shear_modulus: Number,
    poisson: Number,
    thickness: Number,
) -> Number:
    """Bending stiffness of the plate without grain that stands in best for a panel with one.

    Hill (1952), mean of the averages of stiffness and of compliance over all directions; the
    first as in Jones, Mechanics of Composite Materials (1999), 2.6, invariant U1.

    Parameters
    ----------
    along_modulus : bending modulus along the face grain [Pa]
    across_modulus : bending modulus across the face grain [Pa]
    shear_modulus : shear modulus in the panel's plane [Pa]
    poisson : Poisson's ratio for a load along the face grain [1]
    thickness : thickness of the panel [m]

    Returns
    -------
    rigidity : D of a plate alike in all directions [N m]

    Notes
    -----
    (3 D11 + 3 D22 + 2 D12 + 4 D66)/8, and the same of the compliances, inverted; their mean. For a
    disc on rollers that somebody leans on it is within 10 % for birch plywood; softwood sheathing
    sinks up to a quarter more where the grain lies worst.

    >>> round(average_rigidity(10.05e9, 7.45e9, 0.62e9, 0.04, 0.018))
    3028
    """
    inner = 1 - poisson * poisson * across_modulus / along_modulus
    coupling = poisson * across_modulus / inner
    stiff = 3 * (along_modulus + across_modulus) / inner + 2 * coupling + 4 * shear_modulus
    cross = -poisson / along_modulus
    soft = 3 / along_modulus + 3 / across_modulus + 2 * cross + 1 / shear_modulus
    both = 1 / along_modulus + 1 / across_modulus + 6 * cross - 1 / shear_modulus
    yielding = soft / (soft * soft - both * both)
    cube = thickness * thickness * thickness / 12
    return cube * (stiff / 8 + 8 * yielding) / 2
