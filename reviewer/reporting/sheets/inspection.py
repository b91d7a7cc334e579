"""The inspection sheet: what to measure at each stage, between which limits, and by which rule."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from math import ceil, floor, log10, pi, sin

from reviewer.judging.finding import STAGES
from reviewer.judging.reviewed import Review
from reviewer.notation.show import show
from reviewer.notation.units import Unit
from reviewer.reporting.sheets.making import Maker
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.sheets.sheet import BLANK, Block, Body, Column, NoSheet, Section, Table
from reviewer.reporting.words import STAGE_WORDS
from reviewer.studying.inspection import End, Line, inspected

NONE = "-"
CIRCLE, COUNT = ".circle", ".count"
DIGITS = 4
SLACK = 1e-3  # of a step of the last digit, that is no step
HOW = (
    "Each size below may lie between its two limits, all else as the file has it, and every rule"
    " that must or should hold, and holds now, still holds. The rule that fails first past a limit"
    " stands under its number at the end. Limits are found for one size at a time: where several"
    " are near theirs, write into the file what was measured and review it again. What a travel"
    " alone decides is left to a review of it. A tolerance that the file gives is narrower: keep to"
    " it."
)


def inspection_body(review: Review) -> Body | NoSheet:
    """The sizes that rules keep within limits, by the stage at which they are measured."""
    assert review.derived is not None
    lines: Sequence[Line] = inspected(review.derived, review.rules)
    if not lines:
        return NoSheet("no rule keeps a size of the design near to what it is")
    values = Quantities(review)
    lines = sorted(lines, key=lambda line: STAGES.index(line.stage))
    ends = [each for line in lines for each in (line.low, line.high) if each]
    numbers = {name: place for place, name in enumerate(dict.fromkeys(e.name for e in ends), 1)}
    sections = [Section("how to use it", (HOW,))]
    for stage in STAGES:
        some = [line for line in lines if line.stage == stage]
        if some:
            sections.append(Section(STAGE_WORDS[stage], tuple(_stage(values, some, numbers))))
    sections.append(Section("the rules that set the limits", (_rules(review, numbers),)))
    return Body(tuple(sections))


def _stage(
    values: Quantities, lines: Sequence[Line], numbers: Mapping[str, int]
) -> Iterator[Block]:
    """The sizes of one stage, in a table for each unit."""
    for unit in dict.fromkeys(values.unit(line.row.unit) for line in lines):
        some = [line for line in lines if values.unit(line.row.unit) == unit]
        rows = [row for line in some for row in _rows(values, line, numbers)]
        yield Table("", _heads(unit), tuple(rows))
    read = [f"{line.name}: {line.row.read}" for line in lines if line.row.read]
    if read:
        yield f"How it is read. {'. '.join(read)}."


def _heads(unit: Unit) -> tuple[Column, ...]:
    return (
        Column("size"),
        Column("is", unit.symbol, "right"),
        Column("least", "", "right"),
        Column("most", "", "right"),
        Column("by rule", "", "right"),
        Column("measured", "", fill=True),
    )


def _rows(values: Quantities, line: Line, numbers: Mapping[str, int]) -> Iterator[tuple[str, ...]]:
    """A size; a circle of rollers as the chord too that is measured in its place."""
    unit = values.unit(line.row.unit)
    name = f"{line.name} ({_band(line, unit)})" if _band(line, unit) else line.name
    yield _row(name, line.now, line.low, line.high, unit, numbers)
    count = values.choice(line.part, f"{line.path.removesuffix(CIRCLE)}{COUNT}")
    if line.path.endswith(CIRCLE) and isinstance(count, int) and count > 1:
        chord = sin(pi / count)
        low, high = (each and each.times(chord) for each in (line.low, line.high))
        name = f"chord of it, one of {count} to the next"
        yield _row(name, line.now * chord, low, high, unit, numbers)
    if line.path == "hold_down.gap" and line.high is not None:
        room = End(line.high.value - line.now, line.high.name, line.high.stage)
        name = "heights of the carrying rollers, highest less lowest"
        yield _row(name, 0.0, None, room, unit, numbers)


def _band(line: Line, unit: Unit) -> str:
    """The tolerance that the file itself gives; nothing where it gives none."""
    quantity = line.given.quantity if line.given else None
    if quantity is None or quantity.low >= quantity.high:
        return ""
    return f"the file: {_bare(quantity.low, unit)} to {show(quantity.high, unit, DIGITS)}"


def _row(
    name: str,
    now: float,
    low: End | None,
    high: End | None,
    unit: Unit,
    numbers: Mapping[str, int],
) -> tuple[str, ...]:
    by = dict.fromkeys(numbers[each.name] for each in (low, high) if each)
    told = (_inward(low, unit, ceil), _inward(high, unit, floor))
    return name, _bare(now, unit), *told, ", ".join(map(str, by)), BLANK


def _inward(end: End | None, unit: Unit, to_whole: Callable[[float], int]) -> str:
    """A limit to four digits, rounded so that it is never told wider than it is."""
    if end is None:
        return NONE
    number = end.value / unit.factor
    if number == 0.0:
        return _bare(0.0, unit)
    step = 10.0 ** (floor(log10(abs(number))) - DIGITS + 1)
    whole = to_whole(number / step + (SLACK if to_whole is floor else -SLACK))
    return _bare(whole * step * unit.factor, unit)


def _bare(value: float, unit: Unit) -> str:
    return show(value, unit, DIGITS).removesuffix(f" {unit.symbol}")


def _rules(review: Review, numbers: Mapping[str, int]) -> Table:
    questions = {rule.name: rule.question for rule in review.rules}
    asked = {each.name: questions.get(each.rule, "") for each in review.findings}
    rows = tuple((str(number), name, asked.get(name, "")) for name, number in numbers.items())
    return Table("", (Column("rule", "", "right"), Column("name"), Column("asks")), rows)


INSPECTION = Maker("inspection", "Inspection", inspection_body)
