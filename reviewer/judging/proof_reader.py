"""Reading a rule's proof: cases in which it holds, fails and rests."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, Any

from reviewer.judging.kinds import Collection, Kind, Names, Texts, Truths
from reviewer.judging.rule import Case, Proof
from reviewer.notation.dimension import Dimension
from reviewer.notation.nearest import nearest
from reviewer.notation.quantity import QuantityError, read_quantity
from reviewer.parts.facts import LIMIT
from reviewer.reading.scalars import resolve
from reviewer.reading.tree import Items, Node, Scalar, Table

if TYPE_CHECKING:
    from reviewer.judging.rule_reader import RuleReader


def read_proof(reader: RuleReader, table: Table, names: Names, *, asks: bool) -> Proof | None:
    """The cases of a proof: holds and fails, of a rule that only asks, asks; and rests.

    Each side is a table of values, or a list of them where one does not show all.
    """
    node = table.get("proof")
    assert node is not None
    sides = ("asks", "rests") if asks else ("holds", "fails", "rests")
    if not isinstance(node, Table):
        expected = f"a table of {', '.join(sides)}"
        reader.refuse(node.place, "a proof is no table", "text", expected)
        return None
    before = len(reader.problems)
    strange = [key for key, _ in node.entries if key.text not in sides]
    for key in strange:
        reader.refuse_key(key, sides, "a proof")
    meant = {nearest(key.text, sides) for key in strange}
    for side in sides[:2]:
        if node.get(side) is None and side not in meant:
            expected = f"{side}: and its values"
            reader.refuse(node.place, f"a proof lacks {side}", "nothing", expected)
    cases = tuple(case for side in sides for case in _side(reader, node, side, names))
    return Proof(cases, node.place) if len(reader.problems) == before else None


def _side(reader: RuleReader, proof: Table, side: str, names: Names) -> Iterator[Case]:
    node, key = proof.get(side), proof.key(side)
    if node is None or key is None:
        return
    items = node.items if isinstance(node, Items) else (node,)
    for item in items:
        if isinstance(item, Table):
            place = key.place if item is node else item.place
            yield Case(side, _values(reader, item, names), place)
    if not items or not all(isinstance(item, Table) for item in items):
        expected = f"{side}: {{NAME: VALUE}}, or a list of such tables"
        reader.refuse(node.place, f"{side} gives no values", "no table", expected)


def _values(reader: RuleReader, table: Table, names: Names) -> Mapping[str, Any]:
    found: dict[str, Any] = {}
    for key, value in table.entries:
        kind = names(key.text)
        if kind is None:
            near = nearest(key.text, names.known())
            reader.refuse(key.place, "a proof gives a quantity that there is not", key.text,
                          "a quantity of the rule's kind", near and f"write {near}")  # fmt: skip
        elif key.text.startswith(f"{LIMIT}."):
            reader.refuse(key.place, "a proof gives a limit, which the packs state", key.text,
                          "the quantities that the limit is for", "take it out")  # fmt: skip
        else:
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
        reader.refuse_quantity(node, error)
        return None
