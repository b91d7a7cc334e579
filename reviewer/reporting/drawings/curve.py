"""A gap against the travel that opens and closes it, with the bands in which it is a hazard."""

from collections.abc import Sequence
from math import isnan
from typing import NamedTuple

from reviewer.judging.reviewed import Review
from reviewer.notation.dimension import LENGTH
from reviewer.notation.plain import plain
from reviewer.notation.preferred import preferred_units
from reviewer.notation.show import show, unit_for
from reviewer.notation.units import Unit
from reviewer.parts.gap_course import Curve, curve_of
from reviewer.parts.gap_hazards import BANDS
from reviewer.reporting.drawing import Point
from reviewer.reporting.drawings.canvas import (
    EDGE,
    HEAVY,
    HIDDEN,
    SMALL,
    THIN,
    Canvas,
    width_of,
    wrapped,
)
from reviewer.reporting.drawings.marks import Mark, numbers_of
from reviewer.reporting.drawings.scene import scene_of
from reviewer.reporting.drawings.view import round_length

WIDTH, HEIGHT = 290.0, 220.0
ROOM = 1.35  # of the highest band: what the gap opens beyond is told, not drawn
TENTH = 0.1


class Band(NamedTuple):
    """Gaps in which a part of the body is caught: its name, from and to [m]."""

    name: str
    lower: float
    upper: float


class NoCurve(Exception):
    """A part is asked for that is no gap whose two sides move against each other."""

    def __init__(self, name: str, known: tuple[str, ...]) -> None:
        """Tell it, and the gaps that have a curve."""
        self.name, self.known = name, known
        super().__init__(f"there is no curve of {name}")


def curve_drawing(
    review: Review,
    part: str,
    configuration: str | None = None,
    marks: Sequence[Mark] = (),
    name: str = "curve",
) -> str:
    """The curve of a gap, or of a pair of parts that move, against the travel, as SVG.

    Travels other than the one that is drawn stand where the least gap is; measures are those of a
    configuration (the first, if none is named). Raises NoCurve and NoSuchConfiguration.
    """
    names = gaps_with_a_curve(review)
    case = scene_of(review, configuration).case
    curve = _curve(review, part, case) if part in names else None
    if curve is None:
        raise NoCurve(part, names)
    return drawn_curve(review, part, curve, marks, name)


def gaps_with_a_curve(review: Review) -> tuple[str, ...]:
    """The gaps whose two sides move against each other: those of the design, then pairs."""
    derived = review.derived
    assert derived is not None, "only what could be read is drawn"
    parts = derived.design.parts
    gaps = [name for name, part in parts.items() if part.kind.name == "gap"]
    pairs = [name for name, part in parts.items() if part.kind.name == "moving_pair"]
    return tuple(name for name in (*gaps, *pairs) if _curve(review, name, 0) is not None)


def _curve(review: Review, part: str, case: int) -> Curve | None:
    derived = review.derived
    assert derived is not None
    slot = derived.values.plan.slot(part, "swept")
    swept = None if slot is None else derived.values.values[slot]
    return None if swept is None else curve_of(swept.meeting.at(0, case))


def drawn_curve(
    review: Review, part: str, course: Curve, marks: Sequence[Mark] = (), name: str = "curve"
) -> str:
    """A curve, as SVG; `part` is the gap that it belongs to.

    The bands are those of the limits that hold for whom the design is reached by, up to the largest
    part of the body that gets into the gap. `marks` number the findings, as in `plan_drawing`.
    """
    derived = review.derived
    assert derived is not None, "only what could be read is drawn"
    unit = unit_for(LENGTH, preferred_units(derived.design.units))
    bands = bands_of(review, part)
    title = f"Gap {plain(part, 60)} over its travel: {plain(derived.design.name, 120)}"
    canvas = Canvas(name, title, _says(course, bands, unit))
    plot = _plot(course, bands)
    for index, band in enumerate(bands):
        _put_band(canvas, plot, band, index, unit)
    _put_axes(canvas, plot, unit, course.by)
    _put_curve(canvas, plot, course, bands)
    _put_least(canvas, plot, course, numbers_of(part, marks), unit)
    lines = wrapped(title, 470.0, 15.0)
    for number, words in enumerate(reversed(lines)):
        canvas.text((-52.0, -24.0 - 20 * number), words, size=15.0, bold=True)
    most = max(course.gap)
    if most > plot.highest:
        canvas.text((WIDTH, -4.0), f"opens to {show(most, unit)}", "end", SMALL)
    if course.copies:
        canvas.text((-52.0, HEIGHT + 58), f"between {course.copies}", size=SMALL)
    return canvas.svg()


def bands_of(review: Review, part: str) -> tuple[Band, ...]:
    """The bands of a gap: of the finger, and of every larger part of the body that gets in."""
    derived = review.derived
    assert derived is not None
    values = derived.values

    def at(path: str, owner: str = part) -> float:
        slot = values.plan.slot(owner, path)
        return float("nan") if slot is None else values.at(slot, 0)

    largest = at("entrant.clears")
    found: list[Band] = []
    for body, lower, upper in BANDS:
        band = Band(body, at(lower, "limit"), at(upper, "limit"))
        if band.upper <= largest or not found or (isnan(largest) and body == "hand"):
            found.append(band)
    return tuple(found)


class _Plot(NamedTuple):
    """The greatest gap that is drawn [m]."""

    highest: float

    def at(self, travel: float, gap: float) -> Point:
        return (travel * WIDTH, HEIGHT * (1 - min(gap, self.highest) / self.highest))


def _plot(course: Curve, bands: Sequence[Band]) -> _Plot:
    highest = ROOM * max(band.upper for band in bands)
    return _Plot(min(max(max(course.gap) * 1.08, bands[0].upper * ROOM), highest))


def _put_band(canvas: Canvas, plot: _Plot, band: Band, index: int, unit: Unit) -> None:
    """A stripe, hatched each in its own width, with what it is beside it."""
    if band.lower >= plot.highest:
        return
    left, top = plot.at(0.0, band.upper)
    right, bottom = plot.at(1.0, band.lower)
    canvas.line((left, top), (right, top), HIDDEN)
    canvas.line((left, bottom), (right, bottom), HIDDEN)
    corners = ((left, top), (right, top), (right, bottom), (left, bottom))
    canvas.hatch(corners, 7.0 + 5.0 * index, f"{THIN} opacity='0.6'")
    words = f"{band.name} {show(band.lower, unit).split(' ')[0]} to {show(band.upper, unit)}"
    canvas.text((right + 8, (top + bottom) / 2 + 4), words, size=SMALL)


def _put_axes(canvas: Canvas, plot: _Plot, unit: Unit, by: str) -> None:
    """Travel along, gap up."""
    canvas.line((0.0, HEIGHT), (WIDTH, HEIGHT), EDGE)
    canvas.line((0.0, 0.0), (0.0, HEIGHT), EDGE)
    for tenths in range(0, 11, 2):
        x = tenths * TENTH * WIDTH
        canvas.line((x, HEIGHT), (x, HEIGHT + 4), EDGE)
        canvas.text((x, HEIGHT + 18), f"{tenths * 10}", "middle", SMALL)
    canvas.text((WIDTH / 2, HEIGHT + 36), f"{plain(by, 30)}, per cent", "middle", SMALL)
    step = round_length(plot.highest / unit.factor / 4) * unit.factor
    count = int(plot.highest / step + 1e-9)
    for number in range(count + 1):
        x, y = plot.at(0.0, number * step)
        canvas.line((x - 4, y), (x, y), EDGE)
        canvas.text((x - 8, y + 4), f"{number * step / unit.factor:g}", "end", SMALL)
    canvas.text((-40.0, HEIGHT / 2), f"gap, {unit.symbol}", "middle", SMALL, turned=True)


def _put_curve(canvas: Canvas, plot: _Plot, course: Curve, bands: Sequence[Band]) -> None:
    """The curve, heavy where it is in the band of a finger."""
    finger = bands[0]
    canvas.run([plot.at(*each) for each in zip(course.travel, course.gap, strict=True)], EDGE)
    heavy: list[list[Point]] = [[]]
    for travel, gap in zip(course.travel, course.gap, strict=True):
        if finger.lower < gap < finger.upper:
            heavy[-1].append(plot.at(travel, gap))
        elif heavy[-1]:
            heavy.append([])
    for run in heavy:
        if len(run) > 1:
            canvas.run(run, HEAVY.replace("2.2", "4"))


def _put_least(
    canvas: Canvas, plot: _Plot, course: Curve, numbers: Sequence[int], unit: Unit
) -> None:
    """Where the gap is least, with its number and how much it is."""
    least = min(course.gap)
    travel = course.travel[course.gap.index(least)]
    x, y = plot.at(travel, least)
    canvas.circle((x, y), 5.0, "stroke='currentColor' stroke-width='2'")
    anchor = "end" if travel > 0.5 else "start"
    side = -1 if travel > 0.5 else 1
    canvas.text((x + side * 10, y - 12), show(least, unit), anchor, SMALL, bold=True)
    beyond = 24 + width_of(show(least, unit), SMALL)
    for position, number in enumerate(numbers):
        canvas.balloon((x + side * (beyond + 20 * position), y - 16), str(number))


def _says(course: Curve, bands: Sequence[Band], unit: Unit) -> str:
    least, most = min(course.gap), max(course.gap)
    at = course.travel[course.gap.index(least)]
    words = [
        f"The gap goes from {show(course.gap[0], unit)} to {show(course.gap[-1], unit)}; it is "
        f"least, {show(least, unit)}, at {100 * at:.0f} per cent of the travel, and at most "
        f"{show(most, unit)}."
    ]
    words += [
        f"A {band.name} is caught from {show(band.lower, unit)} to {show(band.upper, unit)}."
        for band in bands
    ]
    return " ".join(words)
