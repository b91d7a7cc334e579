"""The way to a failed finding as a picture: a line with a stop for each number, one below another.

What can be changed stands at the top, then what it goes into, then the rule, then what is held
back until it is mended. It is as narrow as a telephone, so that it need not shrink on one.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from reviewer.judging.finding import Finding
from reviewer.notation.plain import plain
from reviewer.reporting.drawing import Point
from reviewer.reporting.drawings.canvas import FULL, Canvas
from reviewer.reporting.trace_text import shown
from reviewer.reporting.words import counted
from reviewer.studying.route import Route

WIDTH = 340.0
ROW = 34.0
LANE = 13.0  # between two lines that run side by side
MOST_LANES = 6
LINE = "stroke='currentColor' stroke-width='1.6'"
MOST_HELD = 8
GIVEN, RECKONED, RULE, HELD, BEFORE = "given", "reckoned", "rule", "held", "before"
LETTERS = 46  # of the smaller size that fit beside the line


@dataclass(frozen=True)
class Stop:
    """A stop: what it is, its name, and what is told below the name."""

    kind: str
    name: str
    told: str


def route_svg(route: Route, finding: Finding, name: str) -> str:
    """The picture; `name` begins the ids in it. Empty where no number leads to the finding."""
    stops = list(_stops(route, finding))
    places = {stop.name: place for place, stop in enumerate(stops)}
    edges = [(places[a], places[b]) for a, b in _edges(route, finding) if a in places]
    if len(stops) < 2:
        return ""
    canvas = Canvas(name, f"The way to {finding.name}", _says(stops))
    lanes = _lanes(edges)
    left = 12.0 + LANE * (1 + max(lanes.values(), default=0))
    for (start, end), lane in lanes.items():
        _put_edge(canvas, (left, _y(start)), (left, _y(end)), left - lane * LANE)
    for place, stop in enumerate(stops):
        _put_stop(canvas, stop, (left, _y(place)))
    more = len(route.held) - MOST_HELD
    if more > 0:
        canvas.text((left + 16, _y(len(stops)) - 8), f"and {counted(more, 'more')[:40]}", size=11.0)
    canvas.reach((0.0, 0.0), (WIDTH, 0.0))
    return canvas.svg()


def _says(stops: Sequence[Stop]) -> str:
    """The picture in words, what waits first: the names of its stops."""
    told = (
        (HELD, "Held back until it is mended"),
        (GIVEN, "Given in the file"),
        (RECKONED, "Reckoned from that"),
        (BEFORE, "Judged before it"),
    )
    named = ((words, [each.name for each in stops if each.kind == kind]) for kind, words in told)
    return ". ".join(f"{words}: {', '.join(names)}" for words, names in named if names) + "."


def _stops(route: Route, finding: Finding) -> Iterator[Stop]:
    for step in route.steps:
        where = f"line {step.line}" if step.line is not None else step.says
        yield Stop(RECKONED if step.line is None else GIVEN, step.name, f"{shown(step)}, {where}")
    for each in route.before:
        yield Stop(BEFORE, each.name, "holds" if each.verdict == "pass" else each.verdict)
    yield Stop(RULE, finding.name, "fails here")
    for _, each in route.held[:MOST_HELD]:
        yield Stop(HELD, each.name, "not reviewed until then")


def _edges(route: Route, finding: Finding) -> Iterator[tuple[str, str]]:
    yield from route.edges
    yield from ((name, finding.name) for name in route.decisive)
    yield from ((each.name, finding.name) for each in route.before)
    yield from ((name, each.name) for name, each in route.held[:MOST_HELD])


def _lanes(edges: list[tuple[int, int]]) -> Mapping[tuple[int, int], int]:
    """For each line the lane that it runs in: none next to its end, else the nearest free one.

    Lines to one end run in one lane where they can.
    """
    found: dict[tuple[int, int], int] = {}
    for start, end in sorted(dict.fromkeys(edges), key=lambda each: (each[1] - each[0], each)):
        if end - start == 1:
            found[start, end] = 0
            continue
        taken = {
            lane for (a, b), lane in found.items() if lane and b != end and a < end and start < b
        }
        free = next(lane for lane in range(1, len(edges) + 2) if lane not in taken)
        found[start, end] = min(free, MOST_LANES)
    return found


def _y(place: int) -> float:
    return 18.0 + ROW * place


def _put_edge(canvas: Canvas, start: Point, end: Point, x: float) -> None:
    look = LINE
    if x == start[0]:
        canvas.line((start[0], start[1] + 6), (end[0], end[1] - 6), look)
        return
    corner = min(8.0, start[0] - x)
    canvas.run(
        [(start[0] - 6, start[1] + 2), (x + corner, start[1] + 2), (x, start[1] + 2 + corner),
         (x, end[1] - 2 - corner), (x + corner, end[1] - 2), (end[0] - 6, end[1] - 2)],
        look,
    )  # fmt: skip


def _put_stop(canvas: Canvas, stop: Stop, place: Point) -> None:
    x, y = place
    if stop.kind == RULE:
        canvas.box((x - 7, y - 7), (14, 14), FULL)
    elif stop.kind == HELD:
        canvas.circle(place, 5.5, f"{LINE} stroke-dasharray='3 2'")
    else:
        filled = stop.kind == RECKONED
        canvas.circle(place, 4.2 if filled else 5.5, FULL if filled else LINE)
    bold = stop.kind in (RULE, GIVEN)
    canvas.text((x + 15, y - 1), plain(stop.name, LETTERS), size=13.0, bold=bold)
    canvas.text((x + 15, y + 12), plain(stop.told, LETTERS), size=11.0)
