"""How a plan is evaluated for many designs at once: which samples a formula may see together.

A formula never sees an array of choices. It sees together those samples that agree in all choices
it depends on: its own, and, through objects (a ring on its rollers, say), those of all formulas
that make or read the same objects. Numbers are cut and put together again at will; objects never
are, so that whatever is joined by objects has the same groups.
"""

from typing import NamedTuple

from reviewer.deriving.plan import MISSING, Node, Plan


class Recipe(NamedTuple):
    """By slot: the choices on which its groups depend, and whether it makes or reads objects."""

    choices: tuple[frozenset[int], ...]
    joined: tuple[bool, ...]


def recipe_of(plan: Plan) -> Recipe:
    """The recipe of a plan."""
    home = list(range(len(plan.nodes)))

    def root(slot: int) -> int:
        while home[slot] != slot:
            home[slot] = home[home[slot]]
            slot = home[slot]
        return slot

    read = [_read(plan, node) for node in plan.nodes]
    for slot, (objects, _) in enumerate(read):
        for each in objects:
            home[root(slot)] = root(each)
    pooled: dict[int, set[int]] = {}
    for slot, (_, choices) in enumerate(read):
        pooled.setdefault(root(slot), set()).update(choices)
    return Recipe(
        tuple(frozenset(pooled[root(slot)]) for slot in range(len(home))),
        tuple(is_object(node) or bool(read[node.slot][0]) for node in plan.nodes),
    )


def is_choice(node: Node) -> bool:
    """Whether a node is a choice that a design gives or leaves to the default."""
    return not node.row.is_number and (node.given or node.formula is None)


def is_object(node: Node) -> bool:
    """Whether a node is derived and no number: an object, a word, or yes or no."""
    return not node.row.is_number and not is_choice(node)


def _read(plan: Plan, node: Node) -> tuple[list[int], list[int]]:
    """The objects and the choices that a node's formula reads."""
    slots = [] if node.given else [slot for _, slot in node.inputs if slot != MISSING]
    objects = [slot for slot in slots if is_object(plan.nodes[slot])]
    return objects, [slot for slot in slots if is_choice(plan.nodes[slot])]
