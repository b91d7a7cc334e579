"""A sweep as a picture: how far each rule is used against the value, and where it takes over."""

import math
from collections.abc import Sequence

from reviewer.notation.plain import plain
from reviewer.reporting.drawing import Drawing, Point
from reviewer.reporting.size_words import span_words
from reviewer.studying.study import Course
from reviewer.studying.sweep import Sweep

WIDTH, HEIGHT = 760.0, 430.0
LEFT, RIGHT, TOP, BOTTOM = 90.0, 530.0, 62.0, 350.0
MOST_USED = 2.0  # what is used more runs along the upper edge
MOST_LINES = 8
LEAST_USED = 0.2  # rules that stay below this are left out
MOST_LABELS = 9
LABEL_HEIGHT = 15.0
INKS = ("#1b5e8c", "#8a3b12", "#2d6a2f", "#6a2c70", "#7a6200", "#00696b", "#9c1f3c", "#444444")
DASHES = ("", "8 3", "2 3", "10 3 2 3", "5 5", "1 4", "12 4", "4 2 1 2")


def sweep_drawing(sweep: Sweep) -> str:
    """The picture of a sweep, in SVG."""
    shown = drawn_courses(sweep)
    title = f"{sweep.given.name} of {sweep.derived.design.name}"
    says = " ".join([span_words(sweep), *(_course_words(sweep, each) for each in shown)])
    drawing = Drawing(WIDTH, HEIGHT, title, says)
    drawing.text((20, 24), plain(title, 90), look="font-weight='bold'")
    drawing.text((20, 44), plain(span_words(sweep), 110))
    _put_axes(drawing, sweep)
    for index, course in enumerate(shown):
        look = f"stroke='{INKS[index]}' stroke-width='2' stroke-dasharray='{DASHES[index]}'"
        for run in _runs(sweep, course):
            drawing.path(run, look)
    _put_labels(drawing, sweep, shown)
    return drawing.svg()


def drawn_courses(sweep: Sweep) -> list[Course]:
    """The rules that come nearest to their limits or go past them, the most used first."""
    used = [(_most(course), course) for course in sweep.concerned]
    ranked = sorted(used, key=lambda each: (-each[0], each[1].name))
    return [course for most, course in ranked if most >= LEAST_USED][:MOST_LINES]


def _most(course: Course) -> float:
    known = [float(each) for each in course.utilisation if not math.isnan(each)]
    return max(known, default=0.0)


def _x(sweep: Sweep, index: int) -> float:
    """Where a size stands: to scale where it is a number, else evenly spaced."""
    sizes = [stop.size for stop in sweep.stops]
    if len(sizes) == 1:
        return (LEFT + RIGHT) / 2
    if sweep.given.value.quantity is None:
        return LEFT + (RIGHT - LEFT) * index / (len(sizes) - 1)
    return LEFT + (RIGHT - LEFT) * (sizes[index] - sizes[0]) / (sizes[-1] - sizes[0])


def _y(used: float) -> float:
    return BOTTOM - (BOTTOM - TOP) * min(used, MOST_USED) / MOST_USED


def _runs(sweep: Sweep, course: Course) -> list[list[Point]]:
    """The line of a rule, parted where it has no number."""
    runs: list[list[Point]] = [[]]
    for index, used in enumerate(course.utilisation.tolist()):
        if math.isnan(used):
            runs.append([])
        else:
            runs[-1].append((_x(sweep, index), _y(used)))
    return [[*run, (run[0][0] + 2, run[0][1])] if len(run) == 1 else run for run in runs if run]


def _put_axes(drawing: Drawing, sweep: Sweep) -> None:
    """Both axes, the limit, the present value, and where everything holds."""
    for span in sweep.spans:
        ends = [
            _x_of(sweep, stop.size, index) for index, stop in enumerate((span.first, span.last))
        ]
        drawing.box((ends[0], TOP), (max(ends[1] - ends[0], 2), BOTTOM - TOP), "fill='#eef4ea'")
    for tenths in range(0, 21, 5):
        y = _y(tenths / 10)
        drawing.line((LEFT - 4, y), (LEFT, y))
        drawing.text((LEFT - 8, y + 4), f"{tenths / 10:.1f}", "end")
    middle = (TOP + BOTTOM) / 2
    turned = f"transform='rotate(-90 {LEFT - 44:.1f} {middle:.1f})'"
    drawing.text((LEFT - 44, middle), "part of the limit that is used", "middle", turned)
    drawing.line((LEFT, TOP), (LEFT, BOTTOM))
    drawing.line((LEFT, BOTTOM), (RIGHT, BOTTOM))
    drawing.line((LEFT, _y(1)), (RIGHT, _y(1)), "stroke='#000000' stroke-width='1.5'")
    drawing.text((LEFT + 4, _y(1) - 5), "limit")
    stride = max(1, math.ceil(len(sweep.stops) / MOST_LABELS))
    for index in range(0, len(sweep.stops), stride):
        x = _x(sweep, index)
        drawing.line((x, BOTTOM), (x, BOTTOM + 4))
        look = f"transform='rotate(-35 {x:.1f} {BOTTOM + 18:.1f})'"
        drawing.text((x, BOTTOM + 18), plain(sweep.stops[index].text, 24), "end", look)
    if sweep.now < len(sweep.stops):
        x = _x(sweep, sweep.now)
        drawing.line((x, TOP), (x, BOTTOM), "stroke='#000000' stroke-dasharray='3 3'")
        drawing.text((x, TOP - 4), "now", "middle")


def _x_of(sweep: Sweep, size: float, last: int) -> float:
    """Where any size stands, between those of the sweep."""
    sizes = [stop.size for stop in sweep.stops]
    after = next((index for index, each in enumerate(sizes) if each >= size), len(sizes) - 1)
    if after == 0 or sizes[after] == size:
        return _x(sweep, after)
    share = (size - sizes[after - 1]) / (sizes[after] - sizes[after - 1])
    return _x(sweep, after - 1) + share * (_x(sweep, after) - _x(sweep, after - 1))


def _put_labels(drawing: Drawing, sweep: Sweep, shown: Sequence[Course]) -> None:
    """A name at the end of each line, none over another."""
    ends = []
    for index, course in enumerate(shown):
        runs = _runs(sweep, course)
        if runs:
            ends.append((runs[-1][-1][1], index, course))
    below = TOP - LABEL_HEIGHT
    for y, index, course in sorted(ends, key=lambda each: (each[0], each[1])):
        below = max(y + 4, below + LABEL_HEIGHT)
        look = f"stroke='{INKS[index]}' stroke-width='2' stroke-dasharray='{DASHES[index]}'"
        drawing.line((RIGHT + 8, below - 4), (RIGHT + 36, below - 4), look)
        drawing.text((RIGHT + 42, below), plain(course.name, 30), look=f"fill='{INKS[index]}'")


def _course_words(sweep: Sweep, course: Course) -> str:
    first, last = float(course.utilisation[0]), float(course.utilisation[-1])
    return f"{course.name} goes from {first:.2f} to {last:.2f}."
