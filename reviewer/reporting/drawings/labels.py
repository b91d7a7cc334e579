"""Names of parts in a column beside a view, each with a thin line to its part."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from reviewer.notation.plain import plain
from reviewer.reporting.drawing import Point
from reviewer.reporting.drawings.canvas import FULL, SMALL, THIN, Canvas, width_of
from reviewer.reporting.drawings.view import View

if TYPE_CHECKING:
    from shapely import Geometry

LINE = 19.0  # from one name to the next
LONGEST = 20
MOST_BALLOONS = 3
APART = 26.0  # between view and names


class Label(NamedTuple):
    """A part in a view: its name, the numbers of what is found of it, and its lines in metres."""

    name: str
    numbers: tuple[int, ...]
    lines: "Geometry"


def put_labels(canvas: Canvas, view: View, labels: Sequence[Label], *, level: bool = False) -> None:
    """Put a column of names right of a view, in the order of where their parts are.

    A thin line goes to the nearest point of each part: nearest to its name, or, where parts lie
    over each other (`level`), nearest to the right.
    """
    if not labels:
        return
    x = max(view.width, canvas.right) + APART
    high = max(view.height, LINE * len(labels))
    ordered = sorted(labels, key=lambda each: (-_middle(each), _size(each), each.name))
    starts: list[Point] = []
    if level:
        found = [
            (_nearest(view, each, (x, view.at(0.0, _middle(each))[1])), each) for each in ordered
        ]
        found.sort(key=lambda one: (round(one[0][1], 3), one[1].name))
        starts, ordered = [start for start, _ in found], [each for _, each in found]
    begins = (view.height - high) / 2
    for place, label in enumerate(ordered):
        y = begins + (place + 0.5) * high / len(ordered)
        end = (x - 4, y)
        start = starts[place] if level else _nearest(view, label, end)
        canvas.line(start, end, THIN)
        canvas.circle(start, 1.8, FULL)
        words = plain(label.name, LONGEST)
        canvas.text((x, y + 4.5), words)
        _put_numbers(canvas, (x + width_of(words), y), label.numbers)


def _put_numbers(canvas: Canvas, after: Point, numbers: Sequence[int]) -> None:
    """Numbers behind a name, each in a circle; of many only the first, and how many more."""
    shown = numbers if len(numbers) <= MOST_BALLOONS else numbers[: MOST_BALLOONS - 1]
    x, y = after[0] + 14, after[1]
    for position, number in enumerate(shown):
        canvas.balloon((x + 20 * position, y), str(number))
    if len(shown) < len(numbers):
        place = (x + 20 * len(shown) - 8, y + 4.5)
        canvas.text(place, f"+{len(numbers) - len(shown)}", size=SMALL)


def many_in_words(labels: Sequence[Label]) -> list[str]:
    """The numbers of each part that has more than stand beside its name."""
    return [
        f"{label.name}: {spans(label.numbers)}."
        for label in labels
        if len(label.numbers) > MOST_BALLOONS
    ]


def spans(numbers: Sequence[int]) -> str:
    """Numbers as a list in which runs of them are told by their ends.

    >>> spans([1, 2, 3, 5, 8, 9])
    '1-3, 5, 8, 9'
    """
    runs: list[list[int]] = []
    for number in numbers:
        if runs and runs[-1][-1] == number - 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    words = [
        [f"{run[0]}-{run[-1]}"] if len(run) > 2 else [str(number) for number in run] for run in runs
    ]
    return ", ".join(each for run in words for each in run)


def _middle(label: Label) -> float:
    _, south, _, north = label.lines.bounds
    return float(round((south + north) / 2, 6))


def _size(label: Label) -> float:
    west, south, east, north = label.lines.bounds
    return float(round((east - west) * (north - south), 9))


def _nearest(view: View, label: Label, end: Point) -> Point:
    """The point of a part's lines that is nearest to its name."""
    from shapely import Point as At
    from shapely.ops import nearest_points

    there = At(end[0] / view.scale + view.west, view.north - end[1] / view.scale)
    found = nearest_points(label.lines, there)[0]
    return view.at(found.x, found.y)
