"""The graph of rules: which stands behind which, as a picture in SVG or as text in DOT.

A rule stands in the column of its longest chain: those behind nothing at the left, and to the right
of each what is not judged where it fails. Rules of a kind share a band.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from reviewer.judging.rule import Rule
from reviewer.notation.plain import plain
from reviewer.reporting.drawing import Drawing
from reviewer.reporting.words import STAGE_WORDS, counted

BOX, GAP, MARGIN = (230.0, 34.0), (54.0, 12.0), 16.0
BAND_HEAD = 26.0
LEGEND = 30.0
LINE = "stroke='#404040' stroke-width='1.2'"
LOOKS = {
    "must": "fill='#ffffff' stroke='#000000' stroke-width='2.4'",
    "should": "fill='#ffffff' stroke='#000000' stroke-width='1'",
    "note": "fill='#ffffff' stroke='#000000' stroke-width='1' stroke-dasharray='5 3'",
}
LOOK_WORDS = "a thick frame is must, a thin one should, a dashed one note"

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Layout:
    """Where each rule stands: the upper left corner of its box, by name; and the bands by kind."""

    corners: Mapping[str, Point]
    bands: Sequence[tuple[str, float]]
    width: float
    height: float


def rules_dot(rules: Iterable[Rule]) -> str:
    """The graph in the language of DOT: an edge from each rule to those that stand behind it."""
    known = sorted(rules, key=lambda each: each.name)
    lines = ["digraph rules {", "  rankdir=LR;", "  node [shape=box];"]
    for kind in sorted({_kind(rule) for rule in known}):
        lines.append(f"  subgraph {_quoted(f'cluster_{kind}')} {{")
        lines.append(f"    label={_quoted(kind)};")
        lines += [f"    {_quoted(each.name)};" for each in known if _kind(each) == kind]
        lines.append("  }")
    for rule in known:
        for before in rule.behind:
            lines.append(f"  {_quoted(before)} -> {_quoted(rule.name)};")
    return "\n".join([*lines, "}", ""])


def rules_svg(rules: Iterable[Rule]) -> str:
    """The graph as a picture."""
    known = {rule.name: rule for rule in sorted(rules, key=lambda each: each.name)}
    layout = layout_of(known)
    edges = [(before, rule.name) for rule in known.values() for before in rule.behind]
    told = (
        f"{counted(len(known), 'rule')}, {counted(len(edges), 'line')} between them; {LOOK_WORDS}"
    )
    drawing = Drawing(layout.width, layout.height, "Which rule stands behind which", told)
    drawing.text(
        (MARGIN, MARGIN + 12), f"To the right of each rule what is behind it; {LOOK_WORDS}."
    )
    for kind, top in layout.bands:
        drawing.line((MARGIN, top), (layout.width - MARGIN, top), "stroke='#909090'")
        drawing.text((MARGIN, top + 18), kind.replace("_", " "), look="font-weight='bold'")
    for before, behind in edges:
        _draw_edge(drawing, layout.corners[before], layout.corners[behind])
    for name, corner in layout.corners.items():
        _draw_rule(drawing, known[name], corner)
    return drawing.svg()


def layout_of(rules: Mapping[str, Rule]) -> Layout:
    """Place rules in columns by their longest chain, and in bands by their kind."""
    columns = _columns(rules)
    corners: dict[str, Point] = {}
    bands: list[tuple[str, float]] = []
    top = MARGIN + LEGEND
    for kind in sorted({_kind(rule) for rule in rules.values()}):
        bands.append((kind, top))
        filled: dict[int, int] = {}
        for name in sorted(name for name, rule in rules.items() if _kind(rule) == kind):
            column = columns[name]
            row = filled.get(column, 0)
            filled[column] = row + 1
            x = MARGIN + column * (BOX[0] + GAP[0])
            corners[name] = (x, top + BAND_HEAD + row * (BOX[1] + GAP[1]))
        top += BAND_HEAD + max(filled.values()) * (BOX[1] + GAP[1]) + GAP[1]
    most = max(columns.values(), default=0)
    width = max(2 * MARGIN + BOX[0] + most * (BOX[0] + GAP[0]), 600.0)
    return Layout(corners, bands, width, top + MARGIN)


def _columns(rules: Mapping[str, Rule]) -> dict[str, int]:
    """How many rules stand before each in its longest chain; rules come in no order."""
    found: dict[str, int] = {}
    waiting = dict(rules)
    while waiting:
        ready = [
            name
            for name, rule in waiting.items()
            if all(before in found or before not in rules for before in rule.behind)
        ]
        for name in ready or list(waiting):  # a circle cannot be in force; never wait for one
            before = [found[each] for each in rules[name].behind if each in found]
            found[name] = 1 + max(before, default=-1)
            del waiting[name]
    return found


def _draw_rule(drawing: Drawing, rule: Rule, corner: Point) -> None:
    drawing.box(corner, BOX, LOOKS[rule.level])
    x, y = corner
    drawing.text((x + 8, y + 15), rule.name.partition(".")[2])
    told = ", ".join(filter(None, [STAGE_WORDS[rule.stage], rule.hazard]))
    drawing.text((x + 8, y + 28), told, look="fill='#505050' font-style='italic'")


def _draw_edge(drawing: Drawing, before: Point, behind: Point) -> None:
    """A line from the right side of a box to the left side of another, with a point at its end."""
    start = (before[0] + BOX[0], before[1] + BOX[1] / 2)
    end = (behind[0], behind[1] + BOX[1] / 2)
    middle = end[0] - GAP[0] / 2
    drawing.path([start, (middle, start[1]), (middle, end[1]), end], LINE)
    drawing.path([(end[0] - 7, end[1] - 4), end, (end[0] - 7, end[1] + 4)], LINE)


def _kind(rule: Rule) -> str:
    return rule.name.partition(".")[0]


def _quoted(text: str) -> str:
    """A text as DOT takes it."""
    return '"' + plain(text).replace("\\", "\\\\").replace('"', '\\"') + '"'
