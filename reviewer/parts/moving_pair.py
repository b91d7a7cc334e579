"""Two parts that move against each other: a kind that follows from the moves of a design."""

from typing import Any

from reviewer.parts.kind import Kind
from reviewer.parts.lazily import Lazily
from reviewer.parts.pair_hazards import hazards
from reviewer.parts.row import Row


def nearest(meeting: Lazily) -> Any:
    """The least clearance of two parts over all travels, and where it is.

    Geometry; exact to 0.01 mm, by bounds on the motion (reviewer/geometry/bounds.py).
    """
    from reviewer.parts.pair_numbers import nearest_of  # only what moves needs it

    return nearest_of(meeting)


def overlap(meeting: Lazily) -> Any:
    """Where in the travel two parts overlap, and their gap at its ends.

    Geometry; no overlap is missed, by bounds on the motion (reviewer/geometry/intervals.py).
    """
    from reviewer.parts.pair_numbers import overlap_of  # only what moves needs it

    return overlap_of(meeting)


def rest(meeting: Lazily) -> Any:
    """How far the middle of what slides keeps inside the edge of what carries it.

    Geometry, over the whole travel as the clearance is: the middle has to stay within the convex
    hull of what carries it, or it tips off.
    """
    from reviewer.parts.pair_numbers import rest_of  # only what moves needs it

    return rest_of(meeting)


def _taken(path: str, unit: str, says: str, take: str, of: str = "nearest", **more: Any) -> Row:
    return Row(path, unit, says, needs={"solution": of}, take=take, **more)


NOT_KNOWN = "needs the outline and the heights of both parts, and how far they move"
MOVING_PAIR = Kind(
    name="moving_pair",
    says="two parts that move against each other",
    carries_load=False,
    implied=True,
    of=("one", "other"),
    rows=(
        Row("touches", "truth", "whether they are meant to touch", built=True),
        Row("known", "truth", "whether the shapes of both are known", built=True),
        Row("meeting", "", "both parts with their bodies and motions", built=True),
        Row(
            "nearest",
            "",
            "how near they come",
            formula=nearest,
            needs={"meeting": "meeting"},
            searches=True,
        ),
        Row("rest", "", "how it rests on it", formula=rest, needs={"meeting": "meeting"}),
        Row("meets", "", "where they overlap", formula=overlap, needs={"meeting": "meeting"}),
        _taken(
            "clearance",
            "m",
            "least clearance over the whole travel",
            "clearance",
            governs="least",
            because=NOT_KNOWN,
        ),
        _taken("travel", "1", "where the travel stands there", "travel", because=NOT_KNOWN),
        _taken("place", "text", "where the travels stand there", "place"),
        _taken("copies", "text", "which of several like parts come nearest", "copies"),
        _taken("overlap.from", "1", "where in the travel they meet", "first", "meets"),
        _taken("overlap.to", "1", "where in the travel they part", "last", "meets"),
        _taken(
            "rest.margin",
            "m",
            "least distance of the second's middle from the edge of what carries it",
            "clearance",
            "rest",
            governs="least",
            because="is only of what slides on what carries it",
        ),
        _taken("rest.place", "text", "where the travels stand there", "place", "rest"),
        _taken(
            "ends", "m", "clearance at the ends of that travel, the lesser", "ends", "meets",
            because=NOT_KNOWN, governs="least",
        ),
        *hazards(),
    ),
)  # fmt: skip
