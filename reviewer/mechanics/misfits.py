"""How far measurements may disagree by chance."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number

RARE = 2.326348  # standard normal quantile of 99 %


@defined(positive="freedom")
def misfit_limit(freedom: Number) -> Number:
    """Ratio of what measurements disagree to what was stated, that 99 of 100 do not pass.

    Wilson and Hilferty, The distribution of chi-square, Proc. Nat. Acad. Sci. 17 (1931).

    Parameters
    ----------
    freedom : measurements more than needed [1]

    Returns
    -------
    limit : square root of the sum of squares over the freedom [1]

    Notes
    -----
    (1 - 2/(9 f) + z sqrt(2/(9 f)))^(3/2), z = 2.326; within 1 % of chi-square.

    >>> round(misfit_limit(11.0), 2)
    1.5
    """
    share = 2.0 / (9.0 * freedom)
    cubed = 1.0 - share + RARE * np.sqrt(share)
    return cubed * np.sqrt(cubed)
