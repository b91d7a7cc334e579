"""A design file as a whole: every section read, and every problem of the file in one report."""

import re
from collections.abc import Mapping

from reviewer.notation.dimension import LENGTH
from reviewer.notation.problem import Problem, problems_in_order
from reviewer.notation.units import UNITS, Unit, nearest_unit
from reviewer.parts.facts import FACTS
from reviewer.parts.kind import Kind
from reviewer.parts.load import LOAD
from reviewer.reading.based_on import BASED_ON, Family, with_bases
from reviewer.reading.boards import BOARDS, check_boards, read_boards
from reviewer.reading.case_count import check_cases
from reviewer.reading.context import STOCK, Context, Find
from reviewer.reading.design import Design, Part
from reviewer.reading.events import read_yaml
from reviewer.reading.fields import read_fields
from reviewer.reading.folder import Folder
from reviewer.reading.measured import read_measured
from reviewer.reading.measured_on import MeasuredOn
from reviewer.reading.measures import units_in_order
from reviewer.reading.notes import NOTE
from reviewer.reading.pairs import with_pairs
from reviewer.reading.parts import read_loads, read_parts
from reviewer.reading.positions import with_positions
from reviewer.reading.settings import read_combinations, read_concessions, read_configurations
from reviewer.reading.travels import TRAVELS, read_travels
from reviewer.reading.tree import Document, Scalar, Table
from reviewer.reading.words import MAX_PROBLEMS

LENGTHS = "lengths"
LIKE_A_KEY = re.compile(r"([A-Za-z0-9_.]+)[\"']?[ \t]*:")
SECTIONS = frozenset(
    (
        *("parts", "configurations", "loads", "combinations", "concessions", "measured"),
        *(BOARDS, TRAVELS, BASED_ON),
    )
)
Read = tuple[Design | None, tuple[Problem, ...]]


def read_design(
    source: bytes | str,
    path: str,
    kinds: Mapping[str, Kind],
    *,
    facts: Kind = FACTS,
    load: Kind = LOAD,
    stock: Mapping[str, Find] = STOCK,
    folder: Folder | None = None,
) -> Read:
    """Read a design file: the design, or None and everything that is wrong with the file.

    `kinds` are the kinds of part by name, `facts` and `load` the fields of the design itself and
    of a load, `stock` how the name of a material, bearing or fastener is found, `folder` the tree
    of folders in which it may be based on another file. Nothing is raised. Of more than 100
    problems the first 100 are told, then that there are more.
    """
    document = read_yaml(source, path)
    if not isinstance(document.root, Table) or len(document.problems) > MAX_PROBLEMS:
        return None, document.problems
    family = with_bases(document, folder)
    if family.document.root is None:
        return None, tuple(problems_in_order(family.document.problems))
    return read_document(family.document, kinds, facts=facts, load=load, stock=stock, family=family)


def read_document(
    document: Document,
    kinds: Mapping[str, Kind],
    *,
    facts: Kind = FACTS,
    load: Kind = LOAD,
    stock: Mapping[str, Find] = STOCK,
    family: Family | None = None,
) -> Read:
    """Read the tree of a design file, as `read_design` does; its root is a table.

    `family` tells the files that it is merged from.
    """
    root = document.root
    assert isinstance(root, Table)
    context = Context(
        document.path,
        document.lines,
        lengths=declared_lengths(root),
        stock=stock,
        parts=dict.fromkeys((*_names(root, "parts"), *_names(root, BOARDS))),
        travels=dict.fromkeys(_names(root, TRAVELS)),
        lost=_written_keys(document, family),
        problems=list(document.problems),
        families=_families(family),
    )
    design = _assembled(root, kinds, facts, load, context)
    check_cases(root, design, context)
    return (None if context.problems else with_positions(design)), told(context)


def _families(family: Family | None) -> dict[str, tuple[tuple[str, ...], Unit | None]]:
    """Lines and declared unit of each file of a family; nothing of a file that stands alone."""
    if family is None or len(family.documents) < 2:
        return {}
    return {
        each.path: (
            each.lines,
            declared_lengths(each.root) if isinstance(each.root, Table) else None,
        )
        for each in family.documents
    }


def declared_lengths(root: Table) -> Unit | None:
    """The unit of bare numbers, wherever in the file it is declared.

    A misspelt one is reported with the other fields; here the nearest is taken, so that each bare
    number does not become a problem of its own.
    """
    value = root.get(LENGTHS)
    if value is None:
        return None
    text = value.text if isinstance(value, Scalar) else ""
    known = UNITS.get(text)
    if known is not None and known.dimension == LENGTH:
        return known
    return UNITS[nearest_unit(text, LENGTH) or "mm"]


def _names(root: Table, section: str) -> tuple[str, ...]:
    """The names in a section, sound or not: what refers to them is not wrong for that."""
    value = root.get(section)
    entries = value.entries if isinstance(value, Table) else ()
    return tuple(key.text for key, _ in entries if key.text != NOTE)


def _written_keys(document: Document, family: Family | None) -> frozenset[str]:
    """What stands in the text like a key, where the YAML has problems; else nothing."""
    if not document.problems:
        return frozenset()
    files = [document.lines, *(family.lines.values() if family else ())]
    return frozenset(LIKE_A_KEY.findall("\n".join(line for lines in files for line in lines)))


def _assembled(
    root: Table, kinds: Mapping[str, Kind], facts: Kind, load: Kind, context: Context
) -> Design:
    """Read every section, and put the design together."""
    given = read_fields(root, facts, context, SECTIONS)
    _check_present(root, context)
    before = {**read_boards(root, context), **read_travels(root, context)}
    parts = read_parts(root, kinds, context, before)
    check_boards(parts, context)
    loads = read_loads(root, load, parts, context)
    configurations = read_configurations(root, parts, context)
    named = dict.fromkeys(_names(root, "loads"))
    combinations = read_combinations(root, named, context)
    return Design(
        path=context.path,
        facts=Part(facts.name, facts, given, root.place),
        parts=with_pairs(parts),
        loads=loads,
        configurations=configurations,
        combinations=combinations,
        concessions=read_concessions(root, context),
        measured=read_measured(
            root, MeasuredOn(parts, named, configurations, combinations), context
        ),
        lines=tuple(context.lines),
        files={path: (tuple(lines), unit) for path, (lines, unit) in context.families.items()},
        units=units_in_order(context.quantities, context.lengths),
    )


def _check_present(root: Table, context: Context) -> None:
    """Hold a design to a name and one part."""
    if root.get("design") is None and "design" not in context.lost:
        what, expected = "the design has no name", "design: and its name"
        context.refuse(root.place, what, "no key design", expected)
    key = root.key("parts")
    names = _names(root, "parts")
    if key is None and "parts" in context.lost:
        return
    if key is None or (isinstance(root.get("parts"), Table) and not names):
        place, found = (key.place, "an empty table") if key else (root.place, "no key parts")
        expected = "parts: {NAME: {kind: ...}}"
        context.refuse(place, "the design has no parts", found, expected)


def told(context: Context) -> tuple[Problem, ...]:
    """The problems in order of place; what is over the limit becomes one notice."""
    found = problems_in_order(context.problems[:MAX_PROBLEMS])
    for more in context.problems[MAX_PROBLEMS : MAX_PROBLEMS + 1]:
        what, expected = "too many problems to list", "a design that can be read"
        mend = f"mend the {MAX_PROBLEMS} above first"
        found.append(
            Problem(more.place, what, f"more than {MAX_PROBLEMS}", expected, mend, more.source_line)
        )
    return tuple(found)
