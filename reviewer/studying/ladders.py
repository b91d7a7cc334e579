"""What can be bought in place of a choice or a size that comes from stock."""

from collections.abc import Iterator
from typing import NamedTuple

from reviewer.notation.units import parse_unit
from reviewer.parts.row import Choice, Count, Measure, Stock
from reviewer.reading.design import Part
from reviewer.reading.shop_stock import Tables
from reviewer.stock.fasteners import Fastener
from reviewer.stock.materials import Material
from reviewer.stock.sections import Section, diameters, inch_sections, sections, sections_of
from reviewer.stock.sheets import measured_like, sheets_of, thicknesses
from reviewer.studying.given import Given

PROJECT = Tables()  # the stock that comes with the project
SPAN = 4.0  # how many times smaller or larger than it is a value is tried
MOST_COUNTED = 60
LOOSE = 5e-4  # m, of a bolt in the bore of its bearing
NEARLY = 1e-6
INCHES = (parse_unit("in"), parse_unit("ft"))
INCH_BARS = tuple(eighths / 8 * 0.0254 for eighths in range(1, 17))  # m, common practice
BOUGHT_DIAMETERS = {("shaft", "diameter"): "round bar"}
SHAPES = {
    "tube": ("square tube", "rectangular tube"),
    "solid": ("square bar", "flat bar"),
    "pipe": ("round tube",),
    "round": ("round bar",),
}


class Rung(NamedTuple):
    """One thing that can be had: values by path of the part, and a size to put it in order by."""

    values: dict[str, object]
    size: float


def rungs_of(given: Given, tables: Tables = PROJECT) -> tuple[Rung, ...]:
    """What a value may become where it comes off a ladder of some stock; else nothing."""
    return tuple(sorted(_rungs(given, tables), key=lambda rung: rung.size))


def _rungs(given: Given, tables: Tables) -> Iterator[Rung]:
    entry, path, owner = given.row.given, given.field[1], given.owner
    if isinstance(entry, Count):
        yield from _counts(path, int(given.value.value), entry)
    elif isinstance(entry, Choice):
        for index, option in enumerate(entry.options):
            yield Rung({path: option}, float(index + 1))
    elif isinstance(entry, Stock):
        yield from _STOCK[entry.table](given, owner, tables)
    elif isinstance(entry, Measure):
        for size in _sizes(given, tables):
            yield Rung({path: size}, size)


def _counts(path: str, now: int, entry: Count) -> Iterator[Rung]:
    least = max(entry.at_least, int(now / SPAN))
    most = min(entry.at_most, int(now * SPAN), now + MOST_COUNTED)
    for count in range(least, most + 1):
        yield Rung({path: count}, float(count))


def _sizes(given: Given, tables: Tables) -> tuple[float, ...]:
    """The sizes that are sold: a panel's thicknesses, a shaft's diameters."""
    quantity, owner, path = given.value.quantity, given.owner, given.field[1]
    inches = quantity is not None and quantity.unit in INCHES
    shape = BOUGHT_DIAMETERS.get((owner.kind.name, path))
    if shape:
        return INCH_BARS if inches else diameters(shape)
    prefix, _, name = path.rpartition(".")
    material = owner.given.get(f"{prefix}.material" if prefix else "material")
    if given.value.sheet is not None and material is not None:
        return measured_like(given.value.sheet, sheets_of(material.value, tables.sheets))
    if name != "thickness" or material is None:
        return ()
    return thicknesses(material.value, inches=inches, table=tables.sheets)


def _bearings(given: Given, owner: Part, tables: Tables) -> Iterator[Rung]:
    """Bearings, with the bolt that fits their bore where the part names one beside them."""
    path = given.field[1]
    bolt_path = f"{path.rpartition('.')[0]}.bolt"
    bolt = owner.given.get(bolt_path)
    for row in tables.bearings:
        values: dict[str, object] = {path: row}
        if bolt is not None and row is not given.value.value:
            fitting = _bolt_in(row.bore, bolt.value, tables)
            if fitting is None:
                continue
            if fitting != bolt.value:
                values[bolt_path] = fitting
        if row.static_rating == row.static_rating:
            yield Rung(values, row.static_rating)


def _bolt_in(bore: float, bolt: Fastener, tables: Tables) -> Fastener | None:
    """The bolt itself where it fits a bore, else the thickest of its kind that does."""
    if bore - LOOSE <= bolt.thread.diameter <= bore + NEARLY:
        return bolt
    fitting = [
        thread
        for thread in tables.fasteners
        if thread.series == bolt.thread.series and bore - LOOSE <= thread.diameter <= bore + NEARLY
    ]
    if not fitting:
        return None
    thickest = max(fitting, key=lambda thread: thread.diameter)
    return Fastener(thickest, bolt.length, bolt.property_class)


def _bolts(given: Given, owner: Part, tables: Tables) -> Iterator[Rung]:
    """The same bolt with a thicker thread, no thicker than the bearing that it goes through.

    A thinner one presses harder at the same torque, until it breaks: that is no remedy.
    """
    bolt: Fastener = given.value.value
    bearing = owner.given.get(f"{given.field[1].rpartition('.')[0]}.bearing")
    for thread in tables.fasteners:
        through = bearing is None or thread.diameter <= bearing.value.bore + NEARLY
        thicker = thread.diameter >= bolt.thread.diameter
        if thread.series == bolt.thread.series and through and thicker:
            other = Fastener(thread, bolt.length, bolt.property_class)
            yield Rung({given.field[1]: other}, thread.diameter)


def _materials(given: Given, owner: Part, tables: Tables) -> Iterator[Rung]:
    """Materials of the same family, panels and plywood as one, that are sold in the thickness."""
    now: Material = given.value.value
    prefix = given.field[1].rpartition(".")[0]
    thickness = owner.given.get(f"{prefix}.thickness" if prefix else "thickness")
    for index, row in enumerate(tables.materials):
        sold = thickness is None or any(
            min(abs(size - thickness.value) for size in (each.nominal, each.actual)) < NEARLY
            for each in sheets_of(row, tables.sheets)
        )
        if row == now or (sold and _family(row) == _family(now)):
            yield Rung({given.field[1]: row}, float(index + 1))


def _family(row: Material) -> str:
    return "panel" if row.family == "plywood" else row.family


_STOCK = {"bearings": _bearings, "fasteners": _bolts, "materials": _materials}


def sections_like(given: Given, word: str, paths: tuple[str, ...]) -> tuple[Rung, ...]:
    """Tubes and bars of one shape, as values of the shape's list; the size is the area [m2].

    A rectangular one stands upright or lies flat.
    """
    material = given.owner.given.get("material")
    quantity = given.value.quantity
    inches = quantity is not None and quantity.unit in INCHES
    if material is None or material.value.family != "metal":
        return ()  # wood is sawn to size
    table = inch_sections() if inches else sections()
    rungs = [
        Rung(dict(zip(paths, sides, strict=True)), row.width * row.height - _hollow(row))
        for shape in SHAPES.get(word, ())
        for row in sections_of(shape, table)
        for sides in _lists(word, row)
    ]
    return tuple(sorted(rungs, key=lambda rung: rung.size))


def _hollow(row: Section) -> float:
    """Area of the hollow; a round one is compared with round ones alone."""
    if row.wall != row.wall:
        return 0.0
    return (row.width - 2 * row.wall) * (row.height - 2 * row.wall)


def _lists(word: str, row: Section) -> set[tuple[float, ...]]:
    if word == "round":
        return {(row.width,)}
    if word == "pipe":
        return {(row.width, row.wall)}
    wall = (row.wall,) if word == "tube" else ()
    return {(row.width, row.height, *wall), (row.height, row.width, *wall)}
