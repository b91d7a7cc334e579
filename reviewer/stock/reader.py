"""Reads the tables that come with the project: tab-separated text in trade units.

The first line that is not a comment names the columns, each with its unit: `density [kg/m3]`. A
column without a unit is text; `aliases` is a list with semicolons; `[count]` is a whole number;
`[of modulus]` is a fraction of the row's own modulus. An empty cell is unknown. A comment
`#= WH: text` names a source, which a cell then quotes as `{WH}`.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

from reviewer.stock.table import UNKNOWN, StockError

FOLDER = Path(__file__).parent / "data"

PSI = 6894.757293168361
POUND_FORCE = 4.4482216152605

UNITS = {
    "1": 1.0,
    "per %MC": 1.0,
    "in": 0.0254,
    "kg/m3": 1.0,
    # Specific gravity on oven-dry mass and volume at 12 % moisture: the mass then is 1.12 times.
    "G12": 1120.0,
    "N": 1.0,
    "kN": 1e3,
    "lbf": POUND_FORCE,
    "MPa": 1e6,
    "GPa": 1e9,
    "psi": PSI,
    "1e6 psi": 1e6 * PSI,
}
# Divided, not multiplied: 25 um is then the very number that 25e-6 is.
DIVISORS = {"%": 1e2, "mm": 1e3, "um": 1e6, "mm2": 1e6, "g": 1e3}


def read_records(file: str) -> list[dict[str, Any]]:
    """The rows of one data file as keyword arguments, numbers in SI.

    Raises StockError with file and line for a line that does not fit its heading.
    """
    columns: list[tuple[str, str]] = []
    sources: dict[str, str] = {}
    records = []
    text = (FOLDER / file).read_text(encoding="utf-8")
    for number, line in enumerate(text.split("\n"), start=1):
        if line.startswith("#="):
            key, _, meaning = line[2:].partition(":")
            sources[key.strip()] = meaning.strip()
        elif not line or line.startswith("#"):
            continue
        elif not columns:
            columns = [_heading(cell) for cell in line.split("\t")]
        else:
            try:
                records.append(_record(columns, line.split("\t"), sources))
            except (KeyError, ValueError) as problem:
                raise StockError(f"{file}:{number}: {problem}") from None
    return records


def in_si(number: str, unit: str) -> float:
    """A number as a table writes it, in SI units.

    >>> in_si("25", "um"), in_si("70", "GPa")
    (2.5e-05, 70000000000.0)
    """
    if unit in DIVISORS:
        return float(number) / DIVISORS[unit]
    return float(number) * UNITS[unit]


def _heading(cell: str) -> tuple[str, str]:
    name, bracket, unit = cell.partition(" [")
    return name, unit.removesuffix("]") if bracket else ""


def _record(
    columns: list[tuple[str, str]], cells: list[str], sources: dict[str, str]
) -> dict[str, Any]:
    if len(cells) != len(columns):
        raise ValueError(f"{len(cells)} cells; expected {len(columns)}, one a column")
    record: dict[str, Any] = {}
    for (name, unit), cell in zip(columns, cells, strict=True):
        record[name] = _value(unit, cell, record) if unit else cell
    record["source"] = record["source"].format_map(sources)
    if "aliases" in record:
        record["aliases"] = tuple(each.strip() for each in record["aliases"].split(";") if each)
    return record


def _value(unit: str, cell: str, record: dict[str, Any]) -> float | int | None:
    if unit == "count":
        return int(cell) if cell else None
    if not cell:
        return UNKNOWN
    if unit.startswith("of "):
        return float(cell) * float(record[unit[3:]])
    return in_si(cell, unit)
