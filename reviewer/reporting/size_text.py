"""Sweeps, maps and scaled designs as tables that a person reads."""

import math
from collections.abc import Sequence

from reviewer.notation.show import show
from reviewer.reporting.limits import shown_ratio
from reviewer.reporting.measured_words import settled_in
from reviewer.reporting.sheet import Sheet, Style, columns
from reviewer.reporting.size_words import HELD_WORDS, span_words
from reviewer.reporting.words import joined
from reviewer.studying.given import Given
from reviewer.studying.mapping import Map, thinned
from reviewer.studying.rewriting import unit_of
from reviewer.studying.scaling import Scaling
from reviewer.studying.study import FAILS, Course
from reviewer.studying.sweep import STANDING, Sweep

LEAST_COLUMN = 7
MOST_RULES = 20
MOST_TAKEOVERS = 6
FAILS_MARK = "*"
GONE = 99.99  # a larger utilisation says no more than that
LETTERS = "abcdefghijklmnopqrstuvwxyz"


def sweep_text(sweep: Sweep, style: Style) -> str:
    """One value over its sizes: where all holds, what governs, and a table of every rule."""
    sheet = Sheet(style)
    given, design = sweep.given, sweep.derived.design
    sheet.put(f"{given.name} of {design.name}", look="strong")
    sheet.put(f"{given.value.place.path}:{given.value.place.line}, now {given.value.text}")
    for words in settled_in(design):
        sheet.put(words)
    sheet.put(span_words(sweep), look="strong")
    takeovers = sweep.takeovers()
    for index, course in takeovers[:MOST_TAKEOVERS]:
        sheet.put(f"From {sweep.stops[index].text} on {course.name} governs.")
    if len(takeovers) > MOST_TAKEOVERS:
        sheet.put("Further on they take turns.")
    _put_standing(sheet, sweep.standing)
    ranked = sorted(sweep.concerned, key=lambda each: (-_most(each), each.name))
    if ranked:
        sheet.gap()
        _put_table(sheet, sweep, ranked[:MOST_RULES])
    if len(ranked) > MOST_RULES:
        sheet.put(f"and {len(ranked) - MOST_RULES} more rules, used less")
    return sheet.text()


def _put_standing(sheet: Sheet, standing: Sequence[Course]) -> None:
    if standing:
        sheet.put(f"At every size {joined([each.name for each in standing])} does not hold.")


def _most(course: Course) -> float:
    return max((each for each in course.utilisation.tolist() if not math.isnan(each)), default=0.0)


def _put_table(sheet: Sheet, sweep: Sweep, ranked: Sequence[Course]) -> None:
    """A row a rule, a column a size: how far each is used, with a mark where it fails."""
    lead = max(columns(each.name) for each in ranked) + 2
    widest = max(LEAST_COLUMN, *(columns(stop.text) + 1 for stop in sweep.stops))
    room = max(2, (sheet.style.width - lead) // widest)
    stops = thinned(sweep.stops, sweep.given, room)
    numbers = [sweep.stops.index(stop) for stop in stops]
    sheet.lines.append(" " * lead + "".join(f"{stop.text:>{widest}}" for stop in stops))
    if sweep.now in numbers:
        cells = ["now" if index == sweep.now else "" for index in numbers]
        sheet.lines.append(" " * lead + "".join(f"{cell:>{widest}}" for cell in cells).rstrip())
    for course in ranked:
        cells = [cell(course, index) for index in numbers]
        row = f"{course.name:<{lead}}" + "".join(f"{text:>{widest}}" for text in cells)
        sheet.lines.append(row.rstrip())
    sheet.gap()
    sheet.put(f"The part of the limit that is used; {FAILS_MARK} fails, open cannot be judged, "
              "held waits for another rule.")  # fmt: skip


def cell(course: Course, index: int) -> str:
    """How far a rule is used at one sample, in a few characters."""
    used, verdict = float(course.utilisation[index]), int(course.verdict[index])
    mark = FAILS_MARK if verdict == FAILS else ""
    if HELD_WORDS[verdict]:
        return HELD_WORDS[verdict]
    if math.isnan(used):
        return mark or "-"
    return ("over 99" if used > GONE else shown_ratio(used)[:6]) + mark


def scaling_text(scaling: Scaling, style: Style) -> str:
    """A design over factors on its lengths: what governs, and what fails."""
    sheet = Sheet(style)
    sheet.put(f"{scaling.derived.design.name} at other sizes", look="strong")
    sheet.put(scaling.derived.design.path)
    concerned = scaling.concerned
    for index, factor in enumerate(scaling.factors):
        sheet.gap()
        course = scaling.governing(index)
        governs = f"{course.name} governs at {cell(course, index)}" if course else "nothing governs"
        sheet.put(f"{factor:g} times: {governs}", look="strong")
        failing = [each.name for each in concerned if each.verdict[index] == FAILS]
        unknown = [each.name for each in concerned if each.verdict[index] in STANDING[1:]]
        sheet.put(f"fails: {joined(failing)}" if failing else "nothing fails", 4)
        if unknown:
            sheet.put(f"not judged: {joined(unknown)}", 4)
        bought = [
            f"{given.name} {_size(given, scaling.points[index][given.field])}"
            for given in scaling.snapped
        ]
        if bought:
            sheet.put(f"bought: {', '.join(bought)}", 4)
    if scaling.kept:
        sheet.gap()
        sheet.put(f"Left as they are: {joined(scaling.kept)}; and every count, bearing and bolt, "
                  "mass and force.")  # fmt: skip
    return sheet.text()


def _size(given: Given, value: float) -> str:
    assert given.value.quantity is not None
    return show(value, unit_of(given.value.quantity))


def map_text(found: Map, style: Style) -> str:
    """Two values: how far the rule that governs is used at each pair of sizes, and which it is."""
    sheet = Sheet(style)
    first, second = found.given
    sheet.put(f"{first.name} and {second.name} of {found.derived.design.name}", look="strong")
    _put_standing(sheet, found.standing)
    sheet.gap()
    governing = {
        (row, column): found.governing(row, column)
        for row in range(len(found.down))
        for column in range(len(found.across))
    }
    names = list(dict.fromkeys(each.name for each in governing.values() if each is not None))
    letters = dict(zip(names, LETTERS, strict=False))
    lead = max(columns(stop.text) for stop in found.down) + 2
    widest = max(10, *(columns(stop.text) + 2 for stop in found.across))
    room = max(2, (style.width - lead) // widest)
    shown = thinned(found.across, second, room)
    sheet.lines.append(" " * lead + "".join(f"{stop.text:>{widest}}" for stop in shown))
    for row, stop in enumerate(found.down):
        cells = [_map_cell(found, row, found.across.index(each), letters) for each in shown]
        sheet.lines.append(f"{stop.text:<{lead}}" + "".join(f"{c:>{widest}}" for c in cells))
    sheet.gap()
    sheet.put(f"Down {first.name}, across {second.name}; {FAILS_MARK} something fails. It governs:")
    for name, letter in letters.items():
        sheet.put(name, lead=f"{letter}  ")
    return sheet.text()


def _map_cell(found: Map, row: int, column: int, letters: dict[str, str]) -> str:
    """How far the rule that governs is used, a mark where something fails, and which rule it is."""
    course = found.governing(row, column)
    mark = "" if found.passes(row, column) else FAILS_MARK
    if course is None:
        return f"-{mark}"
    used = float(course.utilisation[row * len(found.across) + column])
    text = "over 99" if used > GONE else f"{used:.2f}"
    return f"{text}{mark}{letters.get(course.name, '?')}"
