"""What is wrong in a file, where, and how to mend it; and the one way that it is printed."""

from collections.abc import Iterable
from dataclasses import dataclass
from unicodedata import combining, east_asian_width

from reviewer.notation.plain import ELLIPSIS, plain, visible

WIDTH = 100
INDENT = "    "
TAB = "    "  # printed in place of a tab, so that the carets stand right on any terminal


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A run of characters on one line of a file; lines and columns from 1, in code points."""

    path: str
    line: int
    column: int
    end_column: int  # the column after the last one, as SARIF 2.1.0 counts


@dataclass(frozen=True, slots=True)
class Problem:
    """One error of reading, as data; `render` is the only thing that puts it in words."""

    place: Place
    what: str
    found: str
    expected: str
    mend: str | None = None
    source_line: str | None = None


def on_line(place: Place, own: str) -> str:
    """The line of a place, with its file where that is another than a reader's own.

    >>> on_line(Place("a.yaml", 3, 1, 2), "a.yaml"), on_line(Place("a.yaml", 3, 1, 2), "b.yaml")
    ('line 3', 'line 3 of a.yaml')
    """
    return f"line {place.line}" if place.path == own else f"line {place.line} of {place.path}"


def problems_in_order(problems: Iterable[Problem]) -> list[Problem]:
    """Sort problems by place, then text, each once."""
    return sorted(
        set(problems),
        key=lambda each: (
            *(each.place, each.what, each.found, each.expected),
            *(each.mend or "", each.source_line or ""),
        ),
    )


def render(problem: Problem) -> str:
    """Print a problem: the place as the GNU coding standards have it, then what would be right.

    >>> print(render(Problem(Place("bench.yaml", 3, 12, 17), "the unit is not known",
    ...     "18 mn", "a unit of length", "write 18 mm", "thickness: 18 mn")))
    bench.yaml:3:12: the unit is not known
        found 18 mn
        expected a unit of length
        mend: write 18 mm
        thickness: 18 mn
                   ^^^^^
    """
    place = problem.place
    lines = [f"{plain(place.path)}:{place.line}:{place.column}: {plain(problem.what, 400)}"]
    if problem.found:
        lines.append(f"{INDENT}found {plain(problem.found, 400)}")
    if problem.expected:
        lines.append(f"{INDENT}expected {plain(problem.expected, 400)}")
    if problem.mend:
        lines.append(f"{INDENT}mend: {plain(problem.mend, 400)}")
    if problem.source_line is not None:
        lines += [INDENT + each for each in _pointed_out(problem.source_line, place)]
    return "\n".join(lines)


def _pointed_out(line: str, place: Place) -> tuple[str, str]:
    """Return the part of a line around a place, and the carets that go under it."""
    text = line.rstrip("\r\n")
    first = min(max(place.column - 1, 0), len(text))
    last = min(max(place.end_column - 1, first), len(text))
    before = [_cell(character) for character in text[max(0, first - WIDTH) : first]]
    marked = [_cell(character) for character in text[first : min(last, first + WIDTH)]]
    after = [_cell(character) for character in text[last : last + WIDTH]]
    return _fitted(before, marked, after, text_ends=(first <= WIDTH, last + WIDTH >= len(text)))


def _fitted(
    before: list[str], marked: list[str], after: list[str], *, text_ends: tuple[bool, bool]
) -> tuple[str, str]:
    """Cut three runs of cells to the width: the marked run first, then what is around it."""
    room = WIDTH - len(INDENT) - 2 * len(ELLIPSIS)
    run = _first_cells(marked, room)
    room -= max(_columns(run), 1)
    wanted_after = min(_columns(after), room)
    lead = _first_cells(before[::-1], max(room - wanted_after, room * 2 // 3))[::-1]
    tail = _first_cells(after, room - _columns(lead)) if len(run) == len(marked) else []
    cut_before = len(lead) < len(before) or not text_ends[0]
    cut_after = len(run) + len(tail) < len(marked) + len(after) or not text_ends[1]
    start = (ELLIPSIS if cut_before else "") + "".join(lead)
    end = "".join(tail) + (ELLIPSIS if cut_after else "")
    carets = " " * _columns([start]) + "^" * max(_columns(run), 1)
    return (start + "".join(run) + end).rstrip(), carets


def _first_cells(cells: list[str], room: int) -> list[str]:
    """Return as many cells as fit, in order."""
    kept: list[str] = []
    for cell in cells:
        room -= _columns([cell])
        if room < 0:
            break
        kept.append(cell)
    return kept


def _cell(character: str) -> str:
    return TAB if character == "\t" else visible(character)


def _columns(cells: list[str]) -> int:
    """Count the columns of a terminal that cells take (UAX 11: wide characters take two)."""
    return sum(
        0 if combining(character) else 2 if east_asian_width(character) in "WF" else 1
        for cell in cells
        for character in cell
    )
