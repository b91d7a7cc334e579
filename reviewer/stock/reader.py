"""Reads the tables that come with the project: tab-separated text in trade units.

The first line that is not a comment names the columns, each with its unit: `density [kg/m3]`. A
column without a unit is text; `aliases` is a list with semicolons; `[count]` is a whole number;
`[of modulus]` is a fraction of the row's own modulus. An empty cell is unknown. A line that
starts with `# ` is a comment; `#= WH: text` names a source, which a cell then quotes as `{WH}`.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from os.path import dirname, join
from typing import Any

from reviewer.notation.units import exact_factor, parse_unit
from reviewer.stock.table import UNKNOWN, StockError

FOLDER = join(dirname(__file__), "data")  # pathlib would cost 3 ms of a cold start

# Units of wood handbooks beside those of the design file. G12 is specific gravity on oven-dry mass
# and volume at 12 % moisture: the board then weighs 1.12 times that. Movement is per one per cent.
HANDBOOK_UNITS = {
    "G12": Fraction(1120),
    "1e6 psi": 10**6 * exact_factor(parse_unit("psi")),
    "per %MC": Fraction(1),
}


def read_records(file: str) -> list[dict[str, Any]]:
    """The rows of one data file as keyword arguments, numbers in SI.

    Raises StockError with file and line for a line that does not fit its heading.
    """
    columns: list[tuple[str, str]] = []
    sources: dict[str, str] = {}
    records = []
    with open(join(FOLDER, file), encoding="utf-8") as stream:
        text = stream.read()
    for number, line in enumerate(text.split("\n"), start=1):
        if line.startswith("#="):
            key, _, meaning = line[2:].partition(":")
            sources[key.strip()] = meaning.strip()
        elif not line or line.startswith("# "):
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
    factor, divisor = _scale(unit)
    return float(number) * factor / divisor


@cache
def _scale(unit: str) -> tuple[float, float]:
    # Divided where that is exact, so that 25 um is the very number that 25e-6 is.
    exact = HANDBOOK_UNITS.get(unit) or exact_factor(parse_unit(unit))
    if exact.numerator == 1:
        return 1.0, float(exact.denominator)
    return float(exact), 1.0


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
