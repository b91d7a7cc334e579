"""A divided circle: marks to set out evenly, and where they stand by what was measured."""

import numpy as np

from reviewer.mechanics.dividing import chord, chord_tolerance
from reviewer.mechanics.formula import Number
from reviewer.parts.arm_root import SERIES
from reviewer.parts.kind import Kind
from reviewer.parts.mark_rows import MOST_MARKS, measured, standing, took
from reviewer.parts.mark_setting import (
    GROUPS,
    error_of_setting,
    hole_of,
    of_group,
    permitted_of,
    setting_asked,
    start_of,
)
from reviewer.parts.row import Choice, Count, Measure, PartName, Row, Stock


def step_of(count: int) -> Number:
    """Angle from a mark to the next.

    Geometry.
    """
    return 2 * np.pi / count


def _from_groups(path: str) -> dict[str, str]:
    return {"group": "group?", **{each: f"of.{each}.{path}?" for each in GROUPS}}


def _circle() -> tuple[Row, ...]:
    starts = {each: f"of.{each}.from?" for each in ("carry", "hold_down")}
    return (
        Row("of", "", "the part on which it is marked", PartName()),
        Row("on", "", "the part that is drilled at the marks, for its template", PartName()),
        Row("group", "", "what of that part stands on the circle", Choice(GROUPS)),
        Row(
            "count",
            "",
            "how many marks, evenly spaced",
            Count(at_least=3, at_most=MOST_MARKS),
            of_group,
            _from_groups("count"),
        ),
        Row(
            "circle",
            "m",
            "diameter of the circle of marks",
            Measure(above=0.0, example="580 mm"),
            of_group,
            _from_groups("circle"),
            because="is not given, and the part that it is of does not tell it",
        ),
        Row(
            "from",
            "rad",
            "azimuth of the first mark",
            Measure(example="0 deg"),
            start_of,
            {"group": "group?", **starts},
        ),
        Row("bolt", "", "bolt that goes through each hole", Stock("fasteners", example="M8x40")),
        Row(
            "holes",
            "",
            "series of the clearance holes, ISO 273",
            Choice(SERIES, default="medium"),
        ),
        Row(
            "hole",
            "m",
            "diameter of the hole at each mark",
            Measure(above=0.0, example="9 mm"),
            hole_of,
            {"bolt": "bolt", "series": "holes"},
        ),
        Row(
            "permitted",
            "m",
            "how far a mark may stand from its place, in any direction",
            Measure(above=0.0, example="0.3 mm"),
            permitted_of,
            {"bolt": "bolt?", "hole": "hole?", "limit": "limit.mark_position"},
        ),
        Row(
            "step",
            "rad",
            "angle from a mark to the next",
            formula=step_of,
            needs={"count": "count"},
        ),
        Row(
            "chord",
            "m",
            "from a mark to the next",
            formula=chord,
            needs={"diameter": "circle", "angle": "step"},
        ),
        Row(
            "chord_tolerance",
            "",
            "how much a chord may differ while both marks are in place",
            formula=chord_tolerance,
            needs={"position_error": "permitted"},
        ),
        took("chord_within", "m", "how much it may differ at worst", "worst", "chord_tolerance"),
        took("chord_likely", "m", "how much it is likely to differ", "likely", "chord_tolerance"),
    )


def _setting() -> tuple[Row, ...]:
    return (
        Row(
            "set_by",
            "",
            "each mark by itself, or stepped off from the one before",
            Choice(("direct", "stepped"), default="direct"),
        ),
        Row(
            "set_within",
            "m",
            "how exactly one length is set, to each side",
            Measure(above=0.0, default="0.3 mm"),
        ),
        Row(
            "setting.error",
            "m",
            "how far the mark that is set worst may stand off",
            formula=error_of_setting,
            needs={"method": "set_by", "within": "set_within", "count": "count"},
        ),
        Row(
            "setting.asked",
            "m",
            "how exactly a length must be set so that every mark is in place",
            formula=setting_asked,
            needs={"method": "set_by", "permitted": "permitted", "count": "count"},
            governs="least",
        ),
    )


DIVIDED_CIRCLE = Kind(
    name="divided_circle",
    says="marks to set out evenly on a circle, and what was measured between them",
    carries_load=False,
    rows=(*_circle(), *_setting(), *measured(), *standing()),
)
