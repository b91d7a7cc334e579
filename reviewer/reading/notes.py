"""Notes: words to readers, which may stand in every table and are passed over."""

from reviewer.reading.context import Context, kind_of
from reviewer.reading.tree import Node, Scalar

NOTE = "note"


def read_note(value: Node, key: Scalar, context: Context) -> None:
    """Pass over a note, which may say anything in words."""
    if not isinstance(value, Scalar):
        context.refuse(key.place, "a note is a text", kind_of(value), "a text")
