"""How a roller is taken out again: to which side, and what has to come off first."""

from reviewer.parts.assembling import NAMED
from reviewer.parts.row import Choice, Row

GROUPS = ("carry", "hold_down")


def behind(group: str) -> str:
    """The row that counts what stands before a group's rollers."""
    return f"{group}.behind"


def replacing(group: str) -> tuple[Row, ...]:
    """The side to which a group's rollers are taken out, and what stands there."""
    path = behind(group)
    return (
        Row(
            f"{group}.taken_out",
            "",
            "the side to which a worn roller comes out",
            Choice(("above", "below", "side")),
        ),
        Row(path, "1", "how many parts must come off before that", built=True),
        Row(f"{path}{NAMED}", "text", "the parts that must come off before that", built=True),
    )
