"""The sheet from which a part is sawn, by its material and thickness."""

from typing import Any

from reviewer.deriving.tree import Built, Tree
from reviewer.reading.design import Part
from reviewer.stock.sheets import Measured, measured

SHEET = "sheet"
SIZES = ("thickness", "width")  # what a sheet's thickness is called, of a plate and of a tongue


def entry(path: str, owner: Part, tree: Tree) -> Built:
    """What sheets measure that are called as the part's thickness is, or measure so.

    Of sheets that measure alike, that one which is called in the unit of the file's own name for
    it; else the one in millimetres.
    """
    prefix = path.removesuffix(SHEET)
    size = next(f"{prefix}{each}" for each in SIZES if f"{prefix}{each}" in owner.kind.by_path)
    part, field = tree.design.source(owner.name, size)
    told = tree.design.parts[part].given.get(field)
    inches = told is not None and told.sheet is not None and told.sheet.is_inch

    def sheet(material: Any, thickness: Any) -> Measured:
        return measured(material, thickness, inches=inches)

    return sheet, {"material": f"{prefix}material", "thickness": size}
