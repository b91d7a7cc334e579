"""What a sheet is called where its thickness is due: the thickness that it measures, and its band.

`thickness: 3/4 birch ply` says the material too; what is called by its trade size keeps both sizes.
"""

from collections.abc import Mapping

from reviewer.notation.dimension import LENGTH
from reviewer.notation.quantity import Quantity
from reviewer.notation.units import parse_unit
from reviewer.parts.kind import Kind
from reviewer.parts.row import Row
from reviewer.reading.context import Context
from reviewer.reading.design import GivenValue
from reviewer.reading.tree import Scalar
from reviewer.reading.words import shown
from reviewer.stock.table import StockError, UnknownStock

MM = parse_unit("mm")
INCH = parse_unit("in")
UNSOLD = "is sold as"  # how a stock error says that the material is known, and not this thick


def read_sheet_size(row: Row, scalar: Scalar, context: Context) -> GivenValue | str | None:
    """The thickness of the sheet that a text names; nothing where it names none.

    Of a known material that is not sold in this thickness, what is wrong in words.
    """
    if "sheets" not in context.stock:
        return None
    try:
        sheet = context.stock["sheets"](scalar.text)
    except UnknownStock:
        return None
    except StockError as error:
        return str(error).partition("; ")[2] if UNSOLD in str(error) else None
    low, high = (
        sheet.actual if each != each else each  # a row without a band
        for each in (sheet.low, sheet.high)
    )
    unit = INCH if sheet.is_inch else MM
    quantity = Quantity(sheet.actual, LENGTH, unit, low, high, "uniform", scalar.text)
    return GivenValue(sheet.actual, scalar.text, scalar.place, quantity, sheet)


def with_materials(
    kind: Kind, given: Mapping[str, GivenValue], context: Context
) -> dict[str, GivenValue]:
    """The values with the material of each sheet that is named, where the file leaves it out."""
    found = dict(given)
    for path, value in given.items():
        prefix, _, _ = path.rpartition(".")
        beside = f"{prefix}.material" if prefix else "material"
        if value.sheet is None or beside not in kind.by_path:
            continue
        material = context.stock["materials"](value.sheet.material)
        told = given.get(beside)
        if told is None:
            text = value.sheet.material
            found[beside] = GivenValue(material, text, value.place, sheet=value.sheet)
        elif told.value.name != material.name:
            what = f"{path} names a sheet of another material than {beside}"
            expected = f"a sheet of {shown(told.text)}, or no {beside}"
            context.refuse(value.place, what, shown(value.text), expected)
    return found
