"""The sections of a design file: tables whose keys are names that the writer chooses."""

import re
from collections.abc import Iterator

from reviewer.reading.context import Context, article, kind_of, write
from reviewer.reading.notes import NOTE, read_note
from reviewer.reading.tree import Scalar, Table
from reviewer.reading.words import shown

LONGEST_NAME = 60
NAME = re.compile(r"[a-z][a-z0-9_]{0,59}", re.ASCII)
STRANGE = re.compile(r"[^a-z0-9]+", re.ASCII)
# Words that stand for something else where a part is named, and those that YAML reads as values.
RESERVED = frozenset(
    (
        *("design", "loads", "cases", "carrier", "carried", "load", "shop", "limit"),
        *("own_weight", NOTE, "true", "false", "null"),
    )
)
NAMED = f"^(?!(?:{'|'.join(sorted(RESERVED))})$){NAME.pattern}$"  # as JSON Schema writes it


def named_tables(
    root: Table, section: str, one: str, context: Context
) -> Iterator[tuple[Scalar, Table]]:
    """Go through a section: each soundly named table, with its name as it stands in the file.

    `one` is what a reader calls one of them: "part", "load".
    """
    value = root.get(section)
    key = root.key(section)
    if value is None or key is None:
        return
    if not isinstance(value, Table):
        what = f"{section} is a table of {one}s by name"
        context.refuse(key.place, what, kind_of(value), f"{section}: {{NAME: {{...}}}}")
        return
    for name, node in value.entries:
        if context.is_full:
            return
        if name.text == NOTE and isinstance(node, Scalar):
            read_note(node, name, context)
        elif check_name(name, one, context):
            if isinstance(node, Table):
                yield name, node
            else:
                what = f"{article(one)} is a table of its fields"
                context.refuse(name.place, what, kind_of(node), f"{name.text}: {{...}}")


def check_name(name: Scalar, one: str, context: Context) -> bool:
    """Refuse a name that rules and formulas could not use."""
    if NAME.fullmatch(name.text) and name.text not in RESERVED:
        return True
    mend: str | None
    expected = f"small letters, digits and _, a letter first, at most {LONGEST_NAME} of them"
    if name.text in RESERVED:
        what, mend = f"{article(one)} cannot be called {name.text}", None
        expected = "a name that does not mean something else already"
    else:
        what, mend = f"this cannot be the name of {article(one)}", write(_sound(name.text))
    context.refuse(name.place, what, shown(name.text), expected, mend)
    return False


def _sound(text: str) -> str | None:
    """The nearest sound name, if the text holds one."""
    near = STRANGE.sub("_", text[: 2 * LONGEST_NAME].casefold()).strip("_")[:LONGEST_NAME]
    return near if NAME.fullmatch(near) and near not in RESERVED else None
