"""What every part says of its assembly: what comes before it, its bolts, what stands in for it."""

from typing import Any

from reviewer.parts.row import Choice, Measure, PartName, Row, Text

IN_THE_WAY, TAKEN_OFF = "bolts.in_the_way", "bolts.taken_off"
NAMED = ".named"


def is_due(until: str, revision: Any) -> bool:
    """Whether a revision has been reached: marks in the order of numbers, then of letters.

    >>> is_due("D", "C"), is_due("D", "D"), is_due("9", "10"), is_due("Z", "AA"), is_due("D", None)
    (False, True, True, True, False)
    """
    return revision is not None and _rank(str(revision)) >= _rank(until)


def _rank(mark: str) -> tuple[bool, int, int, str]:
    """Numbers before letters; a longer mark of letters after a shorter one, as columns go."""
    text = mark.strip().upper()
    if text.isascii() and text.isdecimal():
        return (False, int(text[:9]), 0, "")
    return (True, 0, len(text), text)


def told_for_now(until: str, instead: str | None) -> str:
    """Until when a part stands in, and what comes then, in words."""
    return f"until revision {until}" + (f", then {instead}" if instead else "")


def assembling() -> tuple[Row, ...]:
    """Order, bolts and replacement of a part that carries load."""
    return (
        Row("after", "", "parts that are in their places before it", PartName(several=True)),
        Row(
            "bolts.from",
            "",
            "the side from which the bolts go in that hold it to what carries it",
            Choice(("above", "below", "side")),
        ),
        Row(
            "bolts.circle",
            "m",
            "diameter of the circle of those bolts",
            Measure(above=0.0, example="420 mm"),
        ),
        *_covered(IN_THE_WAY, "in the way when its bolts go in"),
        *_covered(TAKEN_OFF, "to be taken off before its bolts can be turned again"),
        Row("for_now.until", "", "the revision in which something better stands here", Text()),
        Row("for_now.replace_with", "", "what is to stand here from then on", Text()),
        Row(
            "for_now.told",
            "text",
            "until when it stands here, and what comes then",
            formula=told_for_now,
            needs={"until": "for_now.until", "instead": "for_now.replace_with?"},
        ),
        Row(
            "for_now.due",
            "truth",
            "whether that revision has been reached",
            formula=is_due,
            needs={"until": "for_now.until", "revision": "design.revision?"},
        ),
    )


def _covered(path: str, says: str) -> tuple[Row, ...]:
    return (
        Row(path, "1", f"how many parts are {says}", built=True),
        Row(f"{path}{NAMED}", "text", f"the parts that are {says}", built=True),
    )
