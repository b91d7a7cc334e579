"""The names that a rule on one kind of part may use, with what each stands for."""

from collections.abc import Iterable

from reviewer.judging.kinds import said
from reviewer.judging.limits import Limits
from reviewer.judging.vocabulary import kind_of_row
from reviewer.notation.dimension import words
from reviewer.parts.facts import FACTS
from reviewer.parts.kind import Kind
from reviewer.parts.row import Row
from reviewer.parts.shop_facts import SHOP_ROWS
from reviewer.reporting.sheet import Sheet, Style

INDENT = 4


def names_text(kind: Kind, limits: Limits, style: Style) -> str:
    """Every name of a kind, then those of the design and the shop, then the named limits."""
    sheet = Sheet(style)
    sheet.put(f"A rule on {kind.name} may use these names ({kind.says}).")
    given = [row for row in kind.rows if row.given is not None]
    derived = [row for row in kind.rows if row.given is None]
    for title, rows, prefix in (
        ("what a design gives", given, ""),
        ("what is derived", derived, ""),
        ("of the design", [row for row in FACTS.rows if row not in SHOP_ROWS], f"{FACTS.name}."),
        ("of the shop", SHOP_ROWS, ""),
    ):
        _put(sheet, title, rows, prefix)
    sheet.heading("named limits")
    for name, dimension in sorted(limits.dimensions().items()):
        sheet.put(f"{name}: {words(dimension)}")
    sheet.gap()
    sheet.put("What carries the part has its own names behind carrier., as in carrier.thickness.")
    return sheet.text()


def _put(sheet: Sheet, title: str, rows: Iterable[Row], prefix: str) -> None:
    seen = [(row, means) for row in rows if (means := kind_of_row(row)) is not None]
    if not seen:
        return
    sheet.heading(title)
    for row, means in seen:
        sheet.put(f"{prefix}{row.path}: {said(means)}", look="strong")
        sheet.put(row.says, INDENT)
