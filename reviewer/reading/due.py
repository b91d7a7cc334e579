"""What a field takes, in a reader's words: the second line of a message, and editor help."""

from reviewer.notation.dimension import words
from reviewer.notation.refusal import due
from reviewer.notation.show import show
from reviewer.notation.units import Unit
from reviewer.parts.row import (
    Choice,
    Choices,
    Count,
    Date,
    Entry,
    Flag,
    Measure,
    Named,
    PartName,
    Points,
    Row,
    Shape,
    Stock,
    Text,
)
from reviewer.reading.context import article, listed

SUBJECTS = {"materials": "material", "bearings": "bearing", "fasteners": "fastener"}
UNKNOWN = "unknown"


def due_in(row: Row) -> str:
    """Say what stands in a given row.

    >>> due_in(Row("count", "", "how many", Count(at_most=24)))
    'a whole number from 1 to 24'
    >>> due_in(Row("gap", "m", "gap", Measure(words=(("touching", "0 mm"),))))
    'a length, such as 18 mm, or touching'
    """
    entry = row.given
    return _measure(row, entry) if isinstance(entry, Measure) else _static(entry)


def _measure(row: Row, entry: Measure) -> str:
    start = due(row.dimension)
    if entry.example:
        start = f"{words(row.dimension)}, such as {entry.example}"
    if entry.sheet:
        start += ", or what a sheet is called, such as 3/4 birch ply"
    allowed = words_of(entry)
    return f"{start}, or {listed(allowed, 'or')}" if allowed else start


def words_of(entry: Measure) -> tuple[str, ...]:
    """The words that may stand in place of a measure."""
    return (*(word for word, _ in entry.words), *((UNKNOWN,) if entry.unknown else ()))


def _static(entry: Entry | None) -> str:
    match entry:
        case Count():
            return f"a whole number from {entry.at_least} to {entry.at_most}"
        case Choice():
            return listed(entry.options, "or")
        case Choices():
            return f"a list of {listed(entry.options)}, or one of them"
        case Stock():
            example = f", such as {entry.example}" if entry.example else ""
            return f"the name of {article(SUBJECTS[entry.table])}{example}"
        case Flag():
            return "true or false"
        case Date():
            return "a date, year first, such as 2026-11-25"
        case PartName():
            return f"the name of a {entry.of}" + (", or a list of them" if entry.several else "")
        case Shape():
            return listed((shape_form(*each) for each in entry.alternatives), "or")
        case Points():
            names = [column.path for column in entry.columns]
            if len(names) == 1:
                return f"a list of measures: [{names[0]}, {names[0]}, ...]"
            return f"a list of points, each [{', '.join(names)}]"
        case Named():
            fields = ", ".join(f"{field.path}: ..." for field in entry.rows[:3])
            return f"a table of {entry.one}s by name, each {{{fields}}}"
        case Text():
            return "a text"
    return "nothing"


def shape_form(word: str, paths: tuple[str, ...]) -> str:
    """Write one form of a shape.

    >>> shape_form("tube", ("section.width", "section.height", "section.wall"))
    '{tube: [width, height, wall]}'
    """
    return f"{{{word}: [{', '.join(path.rpartition('.')[2] for path in paths)}]}}"


def bounds(entry: Measure, unit: Unit) -> str:
    """Say between which limits a measure lies, in one unit; empty where there are none.

    >>> from reviewer.notation.units import parse_unit
    >>> bounds(Measure(above=0.0, at_most=0.05), parse_unit("mm"))
    'more than 0 mm and at most 50 mm'
    """
    limits = (
        ("more than", entry.above),
        ("at least", entry.at_least),
        ("less than", entry.below),
        ("at most", entry.at_most),
    )
    return " and ".join(f"{word} {show(at, unit)}" for word, at in limits if at is not None)


def is_within(entry: Measure, value: float) -> bool:
    """Whether an SI value lies within the bounds of a measure."""
    return not (
        (entry.above is not None and value <= entry.above)
        or (entry.at_least is not None and value < entry.at_least)
        or (entry.below is not None and value >= entry.below)
        or (entry.at_most is not None and value > entry.at_most)
    )
