"""A design file against its JSON Schema, once the walk has found nothing wrong with it."""

from collections.abc import Iterable, Mapping
from typing import Any

from reviewer.notation.problem import Place, Problem
from reviewer.parts.facts import FACTS
from reviewer.parts.kind import Kind
from reviewer.parts.load import LOAD
from reviewer.reading.context import Context, kind_of
from reviewer.reading.scalars import resolve
from reviewer.reading.schema import design_schema
from reviewer.reading.tree import Document, Items, Node, Scalar, Table
from reviewer.reading.words import shown


def validate_skeleton(
    document: Document, kinds: Mapping[str, Kind], facts: Kind = FACTS, load: Kind = LOAD
) -> tuple[Problem, ...]:
    """Hold the tree of a file against the schema; the walk over it comes first and says more.

    Returns one problem, in order of the file the first, or nothing. A validator's own message is
    never shown. jsonschema is imported when this is called and not before.
    """
    if document.root is None:
        return ()
    from jsonschema import Draft202012Validator

    validator = Draft202012Validator(design_schema(kinds, facts, load))
    errors = list(validator.iter_errors(plain_values(document.root)))
    if not errors:
        return ()
    places = [_place(document.root, error.absolute_path) for error in errors]
    (place, node), keys = min(
        zip(places, (list(error.absolute_path) for error in errors), strict=True),
        key=lambda each: each[0][0],
    )
    context = Context(document.path, document.lines)
    name = ".".join(shown(str(key)) for key in keys) or "the file"
    what = f"{name} does not fit the schema of a design"
    context.refuse(place, what, kind_of(node), "what `reviewer schema` describes")
    return tuple(context.problems)


def plain_values(node: Node) -> Any:
    """The tree as plain Python values, scalars as the core schema of YAML 1.2 reads them."""
    if isinstance(node, Table):
        return {key.text: plain_values(value) for key, value in node.entries}
    if isinstance(node, Items):
        return [plain_values(item) for item in node.items]
    return resolve(node)


def _place(root: Node, path: Iterable[str | int]) -> tuple[Place, Node]:
    """Find the place of a path of keys and indices, as near as the tree has it."""
    node, place = root, root.place
    for step in path:
        if isinstance(node, Table) and isinstance(step, str):
            key, below = node.key(step), node.get(step)
            if key is None or below is None:
                break
            node, place = below, below.place if isinstance(below, Scalar) else key.place
        elif isinstance(node, Items) and isinstance(step, int):
            node = node.items[step]
            place = node.place
    return place, node
