"""What two parts that move against each other can do to whoever reaches between them."""

from reviewer.mechanics.formula import Number
from reviewer.parts.gap_course import swept
from reviewer.parts.gap_hazards import reached_of
from reviewer.parts.row import Row

NOT_KNOWN = "needs the outline and the heights of both parts, and how far they move"


def closes(least: Number, most: Number) -> Number:
    """By how much the gap opens and closes.

    Definition.
    """
    return most - least


def hazards() -> tuple[Row, ...]:
    """How the gap between the two goes, where it is, and whether a gap of the design tells it."""
    return (
        Row(
            "declared",
            "truth",
            "whether the design gives a gap between the two, with what is told of it",
            built=True,
        ),
        Row("level", "m", "height above the floor of the higher of the two", built=True),
        Row(
            "reached",
            "1",
            "whether a hand reaches it: 1 or 0",
            formula=reached_of,
            needs={"level": "level?", "highest": "limit.reached_level"},
        ),
        Row(
            "swept",
            "",
            "how the gap between them goes over the travel",
            formula=swept,
            needs={
                "meeting": "meeting",
                "touches": "touches",
                "clear": "limit.fingers_clear",
            },
            searches=True,
        ),
        Row(
            "gap.most",
            "m",
            "largest gap of the two on that travel, where it closes so far that a finger is caught",
            needs={"solution": "swept"},
            take="most",
            because=NOT_KNOWN,
        ),
        Row(
            "gap.passes",
            "1",
            "whether one edge passes over the other: 1 or 0",
            needs={"solution": "swept"},
            take="passes",
            because=NOT_KNOWN,
        ),
        Row(
            "gap.closes",
            "m",
            "by how much the gap between the two opens and closes, where a finger could be caught",
            formula=closes,
            needs={"least": "clearance", "most": "gap.most"},
            because=NOT_KNOWN,
        ),
    )
