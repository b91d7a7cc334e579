"""The boards of a design, from which several of its parts may be cut."""

from collections.abc import Mapping

from reviewer.parts.board import BOARD, board_path
from reviewer.reading.context import Context, listed, nearest_name, write
from reviewer.reading.design import Part
from reviewer.reading.fields import read_fields
from reviewer.reading.names import named_tables
from reviewer.reading.sheets import with_materials
from reviewer.reading.tree import Table
from reviewer.reading.words import shown

BOARDS = "boards"


def read_boards(root: Table, context: Context) -> dict[str, Part]:
    """Read `boards`: the material and the thickness of each."""
    found = {}
    for name, table in named_tables(root, BOARDS, "board", context):
        given = with_materials(BOARD, read_fields(table, BOARD, context), context)
        found[name.text] = Part(name.text, BOARD, given, name.place)
    return found


def check_boards(parts: Mapping[str, Part], context: Context) -> None:
    """Refuse a part cut from what is no board, and a value that stands on part and board."""
    for part in parts.values():
        for row in part.kind.rows:
            path = board_path(row.path)
            if path is None or path not in part.given or path not in part.kind.by_path:
                continue
            _check_named(part, path, parts, context)
            if row.path in part.given:
                given, board = part.given[row.path], part.given[path].value
                what = f"{part.name} has its {row.path} from the board {board} already"
                mend = f"take {row.path} out, or {path}"
                context.refuse(given.place, what, shown(given.text), "one of the two", mend)


def _check_named(part: Part, path: str, parts: Mapping[str, Part], context: Context) -> None:
    given = part.given[path]
    named = parts.get(given.value)
    if named is None or named.kind is BOARD:
        return
    boards = [each.name for each in parts.values() if each.kind is BOARD]
    expected = f"one of the boards: {listed(boards)}" if boards else "a name under boards:"
    mend = write(nearest_name(given.value, boards))
    if not any(each.place == given.place for each in context.problems):
        context.refuse(given.place, "this is a part and no board", given.text, expected, mend)
