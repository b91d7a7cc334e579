"""The tables of a divided circle: to set its marks by, to check them by, and where they stand."""

from math import isnan, pi

import numpy as np

from reviewer.mechanics.dividing import chord, mark_place
from reviewer.parts.marks_measured import WITHIN
from reviewer.reporting.sheets.circle import Circle
from reviewer.reporting.sheets.sheet import BLANK, Column, Table

NEARLY = 1e-9


def table_to_set(circle: Circle) -> Table:
    """For each mark its chord from the nearer of two marks, and its distances from two lines."""
    symbol = circle.unit.symbol
    columns = (
        Column("mark", side="right"),
        Column("angle", "deg", "right"),
        Column("from"),
        *(Column(head, symbol, "right") for head in ("chord", "x", "y")),
        Column("set", fill=True),
    )
    rows = tuple(_to_set(circle, mark) for mark in range(circle.count))
    return Table("To set: x lies along the line of mark 1, y along the other", columns, rows)


def _to_set(circle: Circle, mark: int) -> tuple[str, ...]:
    turned = circle.step * mark
    near = min(turned, 2 * pi - turned)
    beyond = near > pi / 2 + NEARLY
    over = pi - near if beyond else near
    on_line = over < NEARLY
    place = mark_place(circle.diameter, turned)
    return (
        str(mark + 1),
        f"{np.degrees(turned):.3f}".rstrip("0").rstrip("."),
        "line" if on_line else circle.across if beyond else "mark 1",
        "" if on_line else circle.length(float(chord(circle.diameter, over))),
        circle.length(float(place.x)),
        circle.length(float(place.y)),
        BLANK,
    )


def table_to_check(circle: Circle) -> Table:
    """Chords and diagonals with their tolerance, what was measured, and room to write."""
    symbol, worst = circle.unit.symbol, circle.number("chord_within")
    found = circle.found
    columns = (
        Column("from mark to mark"),
        Column("length", symbol, "right"),
        Column("±", symbol, "right"),
        *((Column("measured", symbol, "right"),) if found else ()),
        Column("measured again" if found else "measured", symbol, fill=True),
    )
    within = circle.values.bare(worst, "m", 2)
    rows = []
    for first, second in pairs_of(circle):
        over = circle.step * ((second - first) % circle.count)
        length = circle.length(float(chord(circle.diameter, over)))
        known = found.get((first, second), found.get((second, first), float("nan")))
        told = (circle.length(known),) if found else ()
        rows.append((f"{first + 1} to {second + 1}", length, within, *told, BLANK))
    return Table(
        f"To check: a length that is off by more than {circle.fine(worst)} has a mark that is out; "
        "one within it does not yet prove both right",
        columns,
        tuple(rows),
    )


def pairs_of(circle: Circle) -> list[tuple[int, int]]:
    """Chords all round, and diagonals: those measured, else over a third and right across."""
    count = circle.count
    pairs = [(mark, (mark + 1) % count) for mark in range(count)]
    measured = [pair for pair in circle.found if pair not in pairs]
    third, half = max(2, round(count / 3)), count // 2
    wide = [(mark, (mark + third) % count) for mark in range(count)]
    across = [(mark, mark + half) for mark in range(half)] if circle.has_opposite else []
    once: dict[frozenset[int], tuple[int, int]] = {}
    for pair in [*pairs, *(measured or (*wide, *across))]:
        once.setdefault(frozenset(pair), pair)
    return list(once.values())


def table_of_standing(circle: Circle) -> Table | None:
    """Where the marks stand by what was measured; none where nothing was."""
    standing = circle.values.choice(circle.part, "standing")
    if standing is None or isnan(circle.number("worst.error")):
        return None
    errors = standing.errors
    along, across, error, known = (
        np.asarray(each)[0, 0]
        for each in (errors.tangential, errors.radial, errors.error, errors.uncertainty)
    )
    columns = [
        Column(head, circle.unit.symbol, "right")
        for head in ("along", "across", "off", "known to ±")
    ]
    rows = tuple(
        (
            str(mark + 1),
            *(_small(circle, each[mark], "+") for each in (along, across)),
            _small(circle, error[mark]),
            _small(circle, WITHIN * known[mark]),
        )
        for mark in range(circle.count)
    )
    return Table(
        "Where the marks stand by what was measured: + along is towards the next mark, + across is "
        f"outward; known to ± in 95 of 100. Out of place: {standing.out_marks}. In doubt: "
        f"{standing.doubtful_marks}",
        (Column("mark", side="right"), *columns),
        rows,
    )


def _small(circle: Circle, value: float, sign: str = "") -> str:
    """An error to a hundredth of a millimetre, or what is like it in the file's unit."""
    digits = 2 if circle.unit.symbol == "mm" else 4
    return f"{round(float(value) / circle.unit.factor, digits) + 0.0:{sign}.{digits}f}"
