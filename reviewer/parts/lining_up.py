"""Lining up: what the holes of bolts leave, whether dowels or a fixture help, what adjusts it."""

from reviewer.mechanics.formula import Number
from reviewer.parts.allowed import stated
from reviewer.parts.arm_root import SERIES
from reviewer.parts.groups import same
from reviewer.parts.kind import Kind
from reviewer.parts.lining import (
    advice_of,
    alike_of,
    bolted_of,
    deviation_of,
    dowelled_of,
    finest_of,
    leverage_of,
    other_hole_of,
    placed_within,
    room_needed_of,
    swing_needed,
)
from reviewer.parts.mark_setting import hole_of
from reviewer.parts.row import Choice, Count, Flag, Measure, PartName, Row, Stock

LEVER = {"spacing": "spacing", "far_end": "far_end"}


def _took(path: str, unit: str, says: str, solution: str, take: str) -> Row:
    return Row(path, unit, says, needs={"solution": solution}, take=take)


def _both(path: str, unit: str, says: str, solution: str) -> tuple[Row, ...]:
    return (
        _took(f"{path}.worst", unit, f"{says}, at worst", solution, "worst"),
        _took(f"{path}.likely", unit, f"{says}, less in 95 of 100", solution, "likely"),
    )


def spacing_of(spacing: Number, bolts: int) -> Number:
    """From the first bolt of a row to the last.

    Geometry.
    """
    return spacing * (bolts - 1)


def far_end_of(reach: Number, edge: Number) -> Number:
    """From the first bolt behind the edge to the tip of an arm.

    Geometry.
    """
    return reach + edge


def _holes() -> tuple[Row, ...]:
    return (
        Row("of", "", "the part that is lined up", PartName()),
        Row(
            "alike",
            "",
            "how many like parts stand beside each other",
            Count(at_most=100),
            lambda count: count or 1,
            {"count": "of.count?"},
        ),
        Row(
            "bolt",
            "",
            "bolts that hold it",
            Stock("fasteners", example="M8x60"),
            same,
            {"place": "of.root.bolt?"},
        ),
        Row(
            "holes",
            "",
            "series of the clearance holes, ISO 273",
            Choice(SERIES),
            lambda told: told or "medium",
            {"told": "of.root.holes?"},
        ),
        Row(
            "hole",
            "m",
            "diameter of the clearance holes",
            Measure(above=0.0, example="9 mm"),
            hole_of,
            {"bolt": "bolt", "series": "holes"},
        ),
        Row(
            "tapped",
            "",
            "whether the holes in one of the two parts are tapped",
            Flag(default=None),
            lambda told: bool(told),
            {"told": "of.root.tapped?"},
        ),
        Row(
            "other_hole",
            "m",
            "diameter of the holes in the other part",
            Measure(above=0.0, example="8.5 mm"),
            other_hole_of,
            {"bolt": "bolt", "hole": "hole", "tapped": "tapped"},
        ),
        Row(
            "spacing",
            "m",
            "between the bolts that are farthest apart",
            Measure(above=0.0, example="80 mm"),
            spacing_of,
            {"spacing": "of.root.spacing", "bolts": "of.root.bolts"},
        ),
        Row(
            "far_end",
            "m",
            "from the nearest bolt to the far end",
            Measure(at_least=0.0, example="340 mm"),
            far_end_of,
            {"reach": "of.reach", "edge": "of.root.edge"},
        ),
        Row(
            "drilled",
            "",
            "each part by itself, or both at once through each other",
            Choice(("apart", "together"), default="together"),
        ),
        Row(
            "drilled_within",
            "m",
            "how far each hole may stand from its place where parts are drilled apart",
            Measure(at_least=0.0, default="0.3 mm"),
        ),
        Row(
            "position",
            "m",
            "how far each of two holes may stand off",
            formula=placed_within,
            needs={"drilled": "drilled", "within": "drilled_within"},
        ),
    )


def _deviations() -> tuple[Row, ...]:
    return (
        Row(
            "bolted",
            "",
            "what the holes leave",
            formula=bolted_of,
            needs={
                "bolt": "bolt",
                "hole": "hole",
                "other_hole": "other_hole",
                "position": "position",
                **LEVER,
            },
        ),
        _took("float", "m", "how far it can stand off across one bolt", "bolted", "float_"),
        _took("turns", "", "the angle by which it can stand out of line", "bolted", "angle"),
        *_both("angle", "rad", "the angle by which the bolts let it stand out of line", "turns"),
        _took("ends", "", "what the bolts leave at the far end", "bolted", "end"),
        *_both("end", "m", "how far the bolts let the far end stand out of line", "ends"),
        Row(
            "dowels.clearance",
            "m",
            "clearance of the dowels in their holes, on diameter",
            Measure(at_least=0.0, example="0.05 mm"),
        ),
        Row(
            "dowels.spacing",
            "m",
            "between the two dowels",
            Measure(above=0.0),
            same,
            {"place": "spacing"},
        ),
        Row(
            "dowelled",
            "",
            "what dowels leave at the far end",
            formula=dowelled_of,
            needs={
                "clearance": "dowels.clearance?",
                "position": "position",
                "spacing": "dowels.spacing",
                "far_end": "far_end",
            },
            because="needs the clearance of the dowels",
        ),
        *_both("with_dowels", "m", "how far dowels let the far end stand out of line", "dowelled"),
        Row(
            "fixture_within",
            "m",
            "how exactly a fixture holds the far end while the bolts are tightened",
            Measure(at_least=0.0, default="0.5 mm"),
        ),
        Row(
            "lined_up_by",
            "",
            "what lines it up",
            Choice(("bolts", "dowels", "fixture"), default="bolts"),
        ),
        Row(
            "lined_up",
            "",
            "how the far end stands as it is lined up",
            formula=deviation_of,
            needs={
                "lined_up_by": "lined_up_by",
                "bolted": "bolted",
                "dowelled": "dowelled?",
                "fixture": "fixture_within",
            },
            because="needs the clearance of the dowels",
        ),
        *_both("deviation", "m", "how far the far end can stand out of line", "lined_up"),
        Row(
            "several",
            "",
            "how far like parts can differ",
            formula=alike_of,
            needs={"deviation": "lined_up", "alike": "alike"},
        ),
        *_both("difference", "m", "how far the far ends of like parts can differ", "several"),
    )


def _allowed() -> tuple[Row, ...]:
    return (
        Row(
            "allowed",
            "m",
            "how far the far end may stand out of line",
            Measure(above=0.0, example="2 mm"),
            stated,
            {"limit": "limit.tip_play"},
        ),
        Row(
            "allowed_difference",
            "m",
            "how far the far ends of like parts may differ",
            Measure(above=0.0, example="3 mm"),
            stated,
            {"limit": "limit.ends_differ"},
        ),
        Row(
            "advice",
            "text",
            "what would line it up",
            formula=advice_of,
            needs={
                "allowed": "allowed",
                "bolted": "bolted",
                "dowelled": "dowelled?",
                "fixture": "fixture_within",
            },
        ),
    )


def _adjusting() -> tuple[Row, ...]:
    return (
        Row("adjust.by", "", "what adjusts it afterwards", Choice(("slot", "shim", "screw"))),
        Row(
            "adjust.range",
            "m",
            "how far the bolt that is moved can be moved, to each side",
            Measure(at_least=0.0, example="2 mm"),
        ),
        Row(
            "adjust.leverage",
            "1",
            "how much farther the far end moves",
            Measure(above=0.0, example="5"),
            leverage_of,
            LEVER,
        ),
        Row(
            "adjust.covers",
            "m",
            "how far the far end can be moved, to each side",
            formula=lambda reach, leverage: reach * leverage,
            needs={"reach": "adjust.range", "leverage": "adjust.leverage"},
            governs="least",
        ),
        Row(
            "adjust.finest",
            "m",
            "the smallest move that can be set",
            Measure(above=0.0, example="0.1 mm"),
            finest_of,
            {"by": "adjust.by", "bolt": "bolt"},
        ),
        Row(
            "adjust.end_finest",
            "m",
            "the smallest move of the far end",
            formula=lambda finest, leverage: finest * leverage,
            needs={"finest": "adjust.finest", "leverage": "adjust.leverage"},
        ),
        Row(
            "adjust.when",
            "",
            "whether it can still be set once all is assembled",
            Choice(("assembled", "apart"), default="assembled"),
        ),
        Row(
            "adjust.apart",
            "1",
            "1 where it can only be set while apart",
            formula=lambda when: 1.0 if when == "apart" else 0.0,
            needs={"when": "adjust.when"},
        ),
        Row(
            "adjust.room",
            "m",
            "free room beside the middle of the bolt, once all is assembled",
            Measure(at_least=0.0, example="20 mm"),
        ),
        Row(
            "adjust.room_needed",
            "m",
            "room that the head of an open spanner takes",
            Measure(above=0.0),
            room_needed_of,
            {"bolt": "bolt"},
        ),
        Row(
            "adjust.swing",
            "rad",
            "angle through which a spanner can swing there",
            Measure(at_least=0.0, example="60 deg"),
        ),
        Row(
            "adjust.swing_needed",
            "rad",
            "swing of a spanner until the next flat comes",
            formula=swing_needed,
        ),
    )


LINING_UP = Kind(
    name="lining_up",
    says="how a bolted part is lined up, and what can be adjusted",
    carries_load=False,
    rows=(*_holes(), *_deviations(), *_allowed(), *_adjusting()),
)
