"""Reading a rule's proof: the values under which it holds and those under which it fails."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from reviewer.judging.kinds import Collection, Kind, Names, Texts, Truths
from reviewer.judging.rule import Proof
from reviewer.notation.dimension import Dimension
from reviewer.notation.nearest import nearest
from reviewer.notation.quantity import QuantityError, read_quantity
from reviewer.reading.scalars import resolve
from reviewer.reading.tree import Items, Node, Scalar, Table

if TYPE_CHECKING:
    from reviewer.judging.rule_reader import RuleReader


def read_proof(reader: RuleReader, table: Table, names: Names, *, asks: bool) -> Proof | None:
    """The two sides of a proof: holds and fails, or of a rule that only asks, asks and rests."""
    node = table.get("proof")
    sides = ("rests", "asks") if asks else ("holds", "fails")
    assert node is not None
    if not isinstance(node, Table):
        reader.refuse(
            node.place, "a proof is no table", "text", f"a table of {' and '.join(sides)}"
        )
        return None
    for key, _ in node.entries:
        if key.text not in sides:
            reader.refuse_key(key, sides, "a proof")
    values = [_side(reader, node, side, names) for side in sides]
    if values[0] is None or values[1] is None:
        return None
    return Proof(values[0], values[1], node.place)


def _side(reader: RuleReader, proof: Table, side: str, names: Names) -> Mapping[str, Any] | None:
    node = proof.get(side)
    if not isinstance(node, Table):
        reader.refuse(proof.place, f"a proof lacks {side}", "nothing", f"{side}: and its values")
        return None
    found: dict[str, Any] = {}
    for key, value in node.entries:
        kind = names(key.text)
        if kind is None:
            near = nearest(key.text, names.known())
            reader.refuse(key.place, "a proof gives a quantity that there is not", key.text,
                          "a quantity of the rule's kind", near and f"write {near}")  # fmt: skip
            continue
        found[key.text] = _value(reader, value, kind)
    return found


def _value(reader: RuleReader, node: Node, kind: Kind) -> Any:
    if isinstance(kind, Collection):
        if not isinstance(node, Items):
            reader.refuse(node.place, "a proof gives one value to a collection", "one value",
                          "a list of values, one for each member")  # fmt: skip
            return None
        return [_value(reader, item, kind.of) for item in node.items]
    if not isinstance(node, Scalar):
        reader.refuse(node.place, "a proof gives no value", "a list or table", "a value")
        return None
    if isinstance(kind, Texts):
        return node.text
    if isinstance(kind, Truths):
        value = resolve(node)
        if not isinstance(value, bool):
            reader.refuse(node.place, "this is no truth value", node.text, "true or false")
        return value
    return _number(reader, node, kind)


def _number(reader: RuleReader, node: Scalar, dimension: Dimension) -> float | None:
    try:
        return read_quantity(node.text, expected=dimension).value
    except QuantityError as error:
        reader.refuse(node.place, str(error), error.found, error.expected, error.mend)
        return None
