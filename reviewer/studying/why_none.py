"""Why no remedy is offered for a finding."""

import math
from collections.abc import Sequence

from reviewer.studying.axis import Axis
from reviewer.studying.given import not_given
from reviewer.studying.search import Search, Target


def why_none(search: Search, target: Target, own: Sequence[Axis], *, breaking: bool) -> str:
    """Why nothing is offered: what was tried and how near it came, and what the file leaves out.

    `breaking` tells whether something was found that mends the target and breaks others.
    """
    names = ", ".join(dict.fromkeys(axis.given.name for axis in own))
    least, unknown = search.least(target), search.unknown_because(target)
    if not own:
        words = (
            "the file gives none of the values that the rule would have changed as a single number"
        )
    elif unknown:
        words = f"in some cases it cannot be judged at all, since {unknown}"
    elif breaking:
        words = f"what mends it of {names}, one or two of them changed, breaks something else"
    elif least <= 1.0:
        words = f"what mends it of {names} in one case leaves it failing or unknown in another"
    else:
        reached = "" if math.isnan(least) else f"; the nearest comes to {least:.2f} of the limit"
        words = (
            f"no change of one or two of {names}, from a quarter to four times, mends it{reached}"
        )
    left_out = not_given(search.derived, target.rule, target.key)
    if left_out:
        words += f"; {', '.join(left_out)} might, but the file does not give it"
    return words
