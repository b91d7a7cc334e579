"""What is bought by the piece: bearings and bolts by standard size, with where they go."""

from collections.abc import Iterator
from dataclasses import dataclass

from reviewer.parts.row import Count, Stock
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.sheets.sheet import Column, Table

# What counts the bolts or bearings of a field, the first of these that its kind has as a count.
COUNTERS = ("{group}.count", "{path}s", "{path}_count", "followers", "slots")
WHAT = {"bearings": "bearing", "fasteners": "bolt"}


@dataclass(frozen=True, slots=True)
class Bought:
    """A number of like things for one place; `sort` is what they are, `mass` of one [kg]."""

    sort: str
    name: str
    count: int
    part: str
    field: str
    mass: float


def bought_for(values: Quantities) -> Iterator[Bought]:
    """Every bearing and bolt that the design names, in the order of the file."""
    for part in values.parts:
        for row in values.design.parts[part].kind.rows:
            if not isinstance(row.given, Stock) or row.given.table not in WHAT:
                continue
            name = values.named(part, row.path)
            if name:
                mass = getattr(values.choice(part, row.path), "mass", float("nan"))
                yield Bought(
                    WHAT[row.given.table],
                    name,
                    _count(values, part, row.path) * values.count(part),
                    part,
                    row.path,
                    float(mass),
                )


def _count(values: Quantities, part: str, path: str) -> int:
    """How many of a field there are on one part; one where its kind counts none."""
    kind = values.design.parts[part].kind
    group = path.rpartition(".")[0]
    for pattern in COUNTERS:
        counter = pattern.format(group=group, path=path).lstrip(".")
        row = kind.by_path.get(counter)
        if row is not None and isinstance(row.given, Count) and counter != "count":
            found = values.choice(part, counter)
            return found if isinstance(found, int) else 1
    return 1


def hardware_table(bought: list[Bought]) -> Table:
    """Like things together, with where they go."""
    kinds = dict.fromkeys((each.sort, each.name) for each in bought)
    rows = []
    for sort, name in sorted(kinds):
        of_it = [each for each in bought if (each.sort, each.name) == (sort, name)]
        total = sum(each.count for each in of_it)
        places = ", ".join(
            f"{each.count} {each.part} {_place(each.field)}".rstrip() for each in of_it
        )
        rows.append((str(total), sort, name, places))
    return Table(
        "Bearings and bolts by standard size",
        (Column("how many", side="right"), Column("what"), Column("size"), Column("where")),
        tuple(rows),
    )


def _place(field: str) -> str:
    group = field.rpartition(".")[0]
    return group.replace("_", " ")
