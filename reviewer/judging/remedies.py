"""What mends a failed finding: changes of given values that were tried, and what each comes to."""

from dataclasses import dataclass

from reviewer.notation.problem import Place


@dataclass(frozen=True, slots=True)
class Change:
    """One given value of the file and what to write in its place.

    `old` is the text as it is and `new` the one that mends it; `place` is where it stands, with
    the `quote` around it, if any.
    """

    part: str
    field: str
    old: str
    new: str
    place: Place
    quote: str = ""


@dataclass(frozen=True, slots=True)
class Remedy:
    """One or two changes made together, and how far the limit is used after them.

    `breaks` names what would fail then and does not now, or could not be judged any more: empty
    of a remedy that is offered. `limit` tells at which value the rule just holds, before it is
    brought to what can be bought; empty where the change is a choice.
    """

    changes: tuple[Change, ...]
    utilisation: float
    breaks: tuple[str, ...] = ()
    limit: str = ""


@dataclass(frozen=True, slots=True)
class Remedies:
    """Of one failed finding: what mends it, the smallest change first; what was found wanting.

    `why` says why nothing is offered, and is empty where something is.
    """

    offered: tuple[Remedy, ...]
    rejected: tuple[Remedy, ...] = ()
    why: str = ""
