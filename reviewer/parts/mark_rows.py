"""Rows of what was measured between the marks of a divided circle, and where they stand by it."""

from reviewer.mechanics.misfits import misfit_limit
from reviewer.parts.marks_measured import (
    count_of,
    measured_of,
    network_of,
    standing_of,
    suspect_of,
)
from reviewer.parts.row import Measure, Points, Row

MOST_MARKS = 60
UNSETTLED = "is not settled by the lengths that were measured: measure between more of the marks"

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


def took(
    path: str, unit: str, says: str, take: str, solution: str = "standing", because: str = ""
) -> Row:
    """A row that is one field of a solution."""
    return Row(path, unit, says, needs={"solution": solution}, take=take, because=because)


def _settled(path: str, unit: str, says: str, take: str, solution: str = "standing") -> Row:
    return took(path, unit, says, take, solution, UNSETTLED)


def measured() -> tuple[Row, ...]:
    """The lengths, how exact they are, and how well they agree."""
    return (
        Row("measured.chords", "", "chords from mark to mark, all the way round", CHORDS),
        Row("measured.diagonals", "", "lengths between any two marks", DIAGONALS),
        Row(
            "measured.within",
            "m",
            "how exactly a length is measured, to each side, 95 times of 100",
            Measure(at_least=1e-6, default="0.3 mm"),
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
            searches=True,
        ),
        _settled(
            "measured.misfit", "1", "how the lengths disagree with each other", "misfit", "network"
        ),
        took("measured.freedom", "1", "lengths more than needed", "freedom", "network"),
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


def standing() -> tuple[Row, ...]:
    """Where the marks stand, and the worst of them."""
    worst = "of the mark that stands worst"
    return (
        Row(
            "standing",
            "",
            "where the marks stand",
            formula=standing_of,
            needs={"network": "network", "count": "count", "permitted": "permitted"},
        ),
        _settled("worst.error", "m", f"distance from its place {worst}", "error"),
        _settled("worst.uncertainty", "m", f"how exactly that is known {worst}", "uncertainty"),
        _settled(
            "worst.found_within", "m", "where it may be found and still be in place", "found_within"
        ),
        _settled("worst.mark", "1", "the mark that stands worst", "mark"),
        _settled("worst.along", "m", f"error along the circle {worst}", "along"),
        _settled("worst.towards", "1", "the mark towards which it must move", "towards"),
        _settled("worst.across", "m", f"error across the circle {worst}", "across"),
        _settled("worst.way", "text", "the way across the circle that it must move", "way"),
        _settled("out", "1", "marks that are certainly out of place", "out"),
        _settled("out_marks", "text", "which they are", "out_marks"),
        _settled("doubtful_marks", "text", "of which measuring does not tell it", "doubtful_marks"),
        _settled("doubtful", "1", "marks of which measuring does not tell it", "doubtful"),
    )
