"""A board from which several parts are cut, so that they share its thickness and what it is off."""

from reviewer.parts.kind import Kind
from reviewer.parts.row import Measure, PartName, Row, Stock, Text

NAME = "board"
SHARED = ("material", "thickness")  # what a part has from its board

BOARD = Kind(
    name=NAME,
    says="a board from which parts are cut",
    carries_load=False,
    rows=(
        Row("material", "", "material", Stock("materials", example="birch plywood")),
        Row(
            "thickness",
            "m",
            "thickness",
            Measure(above=0.0, example="18.3 mm ± 0.3 mm", sheet=True),
        ),
        Row("fixed", "", "fields that a remedy must leave as they are", Text()),
    ),
)


def board_row(prefix: str = "") -> Row:
    """The field that names the board, beside the material and the thickness of a part."""
    says = "the board that it is cut from, for its material and thickness"
    return Row(f"{prefix}{NAME}", "", says, PartName())


def board_path(path: str) -> str | None:
    """The field that would name the board of a material or a thickness.

    >>> board_path("plate.thickness"), board_path("thickness"), board_path("plate.diameter")
    ('plate.board', 'board', None)
    """
    prefix, _, name = path.rpartition(".")
    return f"{prefix}.{NAME}".lstrip(".") if name in SHARED else None
