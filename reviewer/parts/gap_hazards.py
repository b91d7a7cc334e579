"""What part of the body gets into a gap, and the gap that does not crush it."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.reach import reach_distance
from reviewer.parts.row import Choice, Measure, Row

PARTS = ("none", "finger", "hand", "foot", "arm", "leg", "head", "body")
NONE, FINGER, HAND, FOOT, ARM, LEG, HEAD, BODY = range(len(PARTS))
LIMITS = (
    *("fingers_enter", "fingers_clear", "hand_enters", "hand_depth", "hand_clears"),
    *("foot_enters", "foot_level", "arm_enters", "arm_depth", "arm_clears"),
    *("leg_enters", "leg_level", "leg_clears", "head_enters", "head_depth", "head_clears"),
    *("body_enters", "body_depth", "body_clears"),
)

BANDS = (
    ("finger", "fingers_enter", "fingers_clear"),
    ("hand", "hand_enters", "hand_clears"),
    ("arm", "arm_enters", "arm_clears"),
    ("leg", "leg_enters", "leg_clears"),
    ("head", "head_enters", "head_clears"),
    ("body", "body_enters", "body_clears"),
)
"""Parts of the body by size, with the limits between which a gap that closes catches them."""


class Entrant(NamedTuple):
    """The largest part of the body that gets in, and the least gap that does not crush it [m]."""

    name: Any
    clears: Number


def entrant_of(
    most: Number, depth: Number | None, level: Number | None, largest: str | None, **limits: Number
) -> Entrant:
    """The largest part of the body that gets into a gap as it opens, and the gap that it needs.

    ISO 13854:2017, 4.2, 4.3 and Table 1: of several parts that get in the largest counts. What
    opening, depth and height let each of them in is common practice.

    Notes
    -----
    A level that is not told keeps nobody out; a foot or a leg only gets in where it is low.
    """
    deep = np.nan if depth is None else depth
    low = 0.0 if level is None else level
    lets_in = {
        FINGER: most > limits["fingers_enter"],
        HAND: _both(most > limits["hand_enters"], deep, limits["hand_depth"]),
        FOOT: _both(
            (most > limits["foot_enters"]) & (low < limits["foot_level"]),
            deep,
            limits["hand_depth"],
        ),
        ARM: _both(most > limits["arm_enters"], deep, limits["arm_depth"]),
        LEG: _both(
            (most > limits["leg_enters"]) & (low < limits["leg_level"]), deep, limits["arm_depth"]
        ),
        HEAD: _both(most > limits["head_enters"], deep, limits["head_depth"]),
        BODY: _both(most > limits["body_enters"], deep, limits["body_depth"]),
    }
    rank = np.where(np.isnan(most), np.nan, 0.0)
    for part, enters in lets_in.items():
        rank = np.where(np.isnan(enters), np.nan, np.where(enters > 0, part, rank))
    if largest is not None:
        rank = np.minimum(rank, PARTS.index(largest))
    return _entrant(rank, limits)


def _both(wide: Any, deep: Number, needed: Number) -> Any:
    """Wide and deep enough: 1 or 0; of a wide one whose depth is not told, unknown."""
    known = np.where(np.isnan(deep), np.nan, np.greater(deep, needed))
    return np.where(wide, known, 0.0)


def _entrant(rank: Any, limits: dict[str, Number]) -> Entrant:
    """The name of a part of the body and its least gap."""
    clears = {
        FINGER: limits["fingers_clear"],
        HAND: limits["hand_clears"],
        FOOT: limits["arm_clears"],
        ARM: limits["arm_clears"],
        LEG: limits["leg_clears"],
        HEAD: limits["head_clears"],
        BODY: limits["body_clears"],
    }
    gap = np.where(np.isnan(rank), np.nan, 0.0)
    for part, least in clears.items():
        gap = np.where(rank == part, least, gap)
    known = np.where(np.isnan(rank), NONE, rank).astype(int)
    return Entrant(np.array(PARTS)[known], gap)


def reach_through(
    width: Number, shape: str, length: Number | None, children: bool | None
) -> Number:
    """How far somebody reaches through the opening in front of a gap.

    ISO 13857:2019, Tables 4 and 5; of an opening wider than they go an arm reaches to the shoulder.

    Notes
    -----
    Whoever a design does not keep away reaches: where children do, by the table for 3 years and up.
    """
    age = "child" if children else "adult"
    known = reach_distance(width, shape, age, np.inf if length is None else length)
    shoulder = 0.9 if children else 0.85
    return np.where(np.isnan(known) & ~np.isnan(width), shoulder, known)


def reached_of(
    level: Number | None,
    highest: Number,
    distance: Number | None = None,
    reach: Number | None = None,
) -> Number:
    """Whether a hand reaches a gap: 1, or 0 where it is too high or too far behind an opening.

    ISO 13857:2019, 4.2.1.2 (over 2.5 m), from memory; 4.2.4 and its tables for openings.

    Notes
    -----
    What is not told keeps nobody away.
    """
    high = False if level is None else np.asarray(level) >= highest
    far = False if distance is None or reach is None else np.asarray(distance) >= reach
    return np.where(high | far, 0.0, 1.0)


def reach_rows() -> tuple[Row, ...]:
    """Where the gap is, and the opening through which alone it is reached."""
    through = Measure(above=0.0)
    return (
        Row(
            "level",
            "m",
            "height above the floor: that of the higher of its two sides, if it is not told",
            Measure(at_least=0.0, example="800 mm"),
            built=True,
        ),
        Row(
            "through.width", "m", "width of the opening through which alone it is reached", through
        ),
        Row(
            "through.shape",
            "",
            "that opening's shape",
            Choice(("slot", "square", "round"), default="slot"),
        ),
        Row("through.length", "m", "length of a slot that is that opening", through),
        Row("through.distance", "m", "how far behind that opening the gap is", through),
        Row(
            "through.reach",
            "m",
            "how far somebody reaches through that opening",
            formula=reach_through,
            needs={
                "width": "through.width",
                "shape": "through.shape",
                "length": "through.length?",
                "children": "design.children?",
            },
        ),
        Row(
            "reached",
            "1",
            "whether a hand reaches it: 1 or 0",
            formula=reached_of,
            needs={
                "level": "level?",
                "highest": "limit.reached_level",
                "distance": "through.distance?",
                "reach": "through.reach?",
            },
        ),
    )


def entrant_rows() -> tuple[Row, ...]:
    """The largest part of the body that gets in, and the gap that it needs."""
    return (
        Row(
            "largest_part",
            "",
            "largest part of the body that gets in, where what is around keeps larger ones out",
            Choice(PARTS[1:]),
        ),
        Row(
            "entrant",
            "",
            "the largest part of the body that gets in",
            formula=entrant_of,
            needs={
                "most": "most",
                "depth": "depth?",
                "level": "level?",
                "largest": "largest_part?",
                **{name: f"limit.{name}" for name in LIMITS},
            },
        ),
        Row(
            "entrant.name",
            "text",
            "the largest part of the body that gets in",
            needs={"solution": "entrant"},
            take="name",
        ),
        Row(
            "entrant.clears",
            "m",
            "least gap that does not crush that part of the body",
            needs={"solution": "entrant"},
            take="clears",
        ),
    )
