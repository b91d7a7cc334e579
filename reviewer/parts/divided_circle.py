"""A divided circle: marks to set out evenly, and where they stand by what was measured."""

import numpy as np

from reviewer.mechanics.dividing import chord, chord_tolerance
from reviewer.mechanics.formula import Number
from reviewer.mechanics.misfits import misfit_limit
from reviewer.parts.arm_root import SERIES
from reviewer.parts.kind import Kind
from reviewer.parts.mark_setting import (
    GROUPS,
    error_of_setting,
    hole_of,
    of_group,
    permitted_of,
    setting_asked,
    start_of,
)
from reviewer.parts.marks_measured import count_of, measured_of, network_of, standing_of, suspect_of
from reviewer.parts.row import Choice, Count, Measure, PartName, Points, Row, Stock

MOST_MARKS = 60

CHORDS = Points(
    (Row("chord", "m", "from a mark to the next", Measure(above=0.0, example="113.2 mm")),),
    at_least=3,
    at_most=MOST_MARKS,
    grows=False,
)
DIAGONALS = Points(
    (
        Row("mark", "1", "mark at one end, counted from 1", Measure(at_least=1.0, example="1")),
        Row("mark", "1", "mark at the other end", Measure(at_least=1.0, example="6")),
        Row("length", "m", "length between them", Measure(above=0.0, example="320.4 mm")),
    ),
    at_least=1,
    at_most=400,
    grows=False,
)


def step_of(count: int) -> Number:
    """Angle from a mark to the next.

    Geometry.
    """
    return 2 * np.pi / count


def _took(path: str, unit: str, says: str, take: str, solution: str = "standing") -> Row:
    return Row(path, unit, says, needs={"solution": solution}, take=take)


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
        _took("chord_within", "m", "how much it may differ at worst", "worst", "chord_tolerance"),
        _took("chord_likely", "m", "how much it is likely to differ", "likely", "chord_tolerance"),
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


def _measured() -> tuple[Row, ...]:
    return (
        Row("measured.chords", "", "chords from mark to mark, all the way round", CHORDS),
        Row("measured.diagonals", "", "lengths between any two marks", DIAGONALS),
        Row(
            "measured.within",
            "m",
            "how exactly a length is measured, to each side, 95 times of 100",
            Measure(above=0.0, default="0.3 mm"),
        ),
        Row(
            "measured.scale",
            "1",
            "how exact the rule or tape is, as a share of the length",
            Measure(at_least=0.0, at_most=0.02, default="0.05 %"),
        ),
        Row(
            "scribed.marks_within",
            "m",
            "how near the marks are to the scribed circle, 95 of 100",
            Measure(at_least=0.0, default="0.3 mm"),
        ),
        Row(
            "scribed.radius_within",
            "m",
            "how exactly the radius of the scribed circle is set",
            Measure(at_least=0.0, default="0.5 mm"),
        ),
        Row(
            "measured.count",
            "1",
            "how many lengths were measured",
            formula=count_of,
            needs={"chords": "measured.chords?", "diagonals": "measured.diagonals?"},
        ),
        Row(
            "measured.lengths",
            "",
            "which marks each measured length joins",
            formula=measured_of,
            needs={
                "count": "count",
                "chords": "measured.chords?",
                "diagonals": "measured.diagonals?",
            },
            because="needs as many chords as there are marks, and diagonals between two of them",
        ),
        Row(
            "network",
            "",
            "errors of the marks by least squares",
            formula=network_of,
            needs={
                "circle": "circle",
                "count": "count",
                "measured": "measured.lengths",
                "within": "measured.within",
                "scale": "measured.scale",
                "marks_within": "scribed.marks_within",
                "radius_within": "scribed.radius_within",
            },
        ),
        _took(
            "measured.misfit", "1", "how the lengths disagree with each other", "misfit", "network"
        ),
        _took("measured.freedom", "1", "lengths more than needed", "freedom", "network"),
        Row(
            "measured.misfit_limit",
            "1",
            "how much they may disagree by chance, 99 of 100",
            formula=misfit_limit,
            needs={"freedom": "measured.freedom"},
        ),
        Row(
            "measured.suspect",
            "text",
            "the length that agrees least",
            formula=suspect_of,
            needs={"network": "network", "measured": "measured.lengths"},
        ),
    )


def _standing() -> tuple[Row, ...]:
    worst = "of the mark that stands worst"
    return (
        Row(
            "standing",
            "",
            "where the marks stand",
            formula=standing_of,
            needs={"network": "network", "count": "count", "permitted": "permitted"},
        ),
        _took("worst.error", "m", f"distance from its place {worst}", "error"),
        _took("worst.uncertainty", "m", f"how exactly that is known {worst}", "uncertainty"),
        _took(
            "worst.found_within", "m", "where it may be found and still be in place", "found_within"
        ),
        _took("worst.mark", "1", "the mark that stands worst", "mark"),
        _took("worst.along", "m", f"error along the circle {worst}", "along"),
        _took("worst.towards", "1", "the mark towards which it must move", "towards"),
        _took("worst.across", "m", f"error across the circle {worst}", "across"),
        _took("worst.way", "text", "the way across the circle that it must move", "way"),
        _took("out", "1", "marks that are certainly out of place", "out"),
        _took("out_marks", "text", "which they are", "out_marks"),
        _took("doubtful_marks", "text", "of which measuring does not tell it", "doubtful_marks"),
        _took("doubtful", "1", "marks of which measuring does not tell it", "doubtful"),
    )


DIVIDED_CIRCLE = Kind(
    name="divided_circle",
    says="marks to set out evenly on a circle, and what was measured between them",
    carries_load=False,
    rows=(*_circle(), *_setting(), *_measured(), *_standing()),
)
