"""How far past its limit something is, as a drawn tape: the limit in the same place on each."""

from math import isnan

from reviewer.judging.finding import Finding
from reviewer.reporting.drawings.canvas import HEAVY, THIN, Canvas
from reviewer.reporting.limits import VAST, shown_ratio

LENGTH, HIGH = 300.0, 34.0
LIMIT = 120.0  # where the limit is
MOST = 2.3  # times the limit that the tape is long; past it the end is torn off
TOP, BOTTOM = 8.0, 22.0
LINE = "stroke='currentColor' stroke-width='1.2'"


def tape_svg(finding: Finding, name: str) -> str:
    """The tape of a fail; empty where it has no utilisation."""
    ratio = finding.utilisation
    if isnan(ratio):
        return ""
    words = "over 100" if ratio > VAST else shown_ratio(ratio)
    canvas = Canvas(name, f"{words} times the limit", "The limit is the line across.")
    end = LIMIT * min(ratio, MOST)
    canvas.line((0.0, BOTTOM), (LENGTH, BOTTOM), LINE)
    for tick in range(11):
        x = LIMIT * tick / 5 if tick else 0.5
        canvas.line((x, BOTTOM), (x, BOTTOM - (7 if tick % 5 == 0 else 4)), THIN)
    past = [(LIMIT, TOP), (end, TOP), (end, BOTTOM), (LIMIT, BOTTOM)]
    canvas.run([(0.5, TOP), (end, TOP), (end, BOTTOM), (0.5, BOTTOM)], LINE, closed=True)
    if end - LIMIT > 0.5:
        canvas.hatch(past, 5.0)
    if ratio > MOST:
        tear = [(end - 9, TOP - 3), (end - 14, (TOP + BOTTOM) / 2), (end - 6, (TOP + BOTTOM) / 2),
                (end - 11, BOTTOM + 3)]  # fmt: skip
        canvas.run(tear, "stroke='var(--paper, Canvas)' stroke-width='5'")
        canvas.run(tear, LINE)
    canvas.line((LIMIT, 1.0), (LIMIT, BOTTOM + 5), HEAVY)
    canvas.text((LIMIT, HIGH), "limit", "middle", 11.0)
    return canvas.svg()
