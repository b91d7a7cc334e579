"""What only the tree of parts can give of motion; what stands still costs nothing."""

from reviewer.deriving.tree import Built, Tree
from reviewer.parts.move_rows import MOVES, WAYS
from reviewer.reading.design import Part

OF_ANY = ("slid", "lifted", "moved.x", "moved.y")  # rows of every part, moving or not
OF_TRAVELS = ("lead", "now", "motion", "reach", "wanted", "beyond")
OF_PAIRS = ("meeting", "touches", "known", "unseen", "room.swept")
MAKES = frozenset((*OF_ANY, *OF_TRAVELS, *OF_PAIRS))


def makes(path: str) -> bool:
    """Whether a built row is one of motion."""
    return path in MAKES or path.startswith(MOVES)


def built(path: str, owner: Part, tree: Tree) -> Built:
    """The formula and the needs of a row of motion."""
    if path in OF_ANY and not moves_on(owner.name, tree):
        return (lambda: 0.0), {}
    if path in OF_PAIRS:
        from reviewer.deriving import meetings  # heavy: only where something moves

        return meetings.built(path, owner, tree)
    from reviewer.deriving import motions  # heavy: only where something moves

    return motions.built(path, owner, tree)


def named(owner: Part, path: str) -> str | None:
    given = owner.given.get(path)
    return None if given is None else str(given.value)


def path_to(name: str, tree: Tree) -> tuple[str, ...]:
    """The parts from the ground to one, by the first of what carries each."""
    found = [name]
    while carriers := tree.design.parts[found[-1]].carried_by:
        found.append(carriers[0])
    return tuple(reversed(found))


def moves_on(name: str, tree: Tree) -> bool:
    """Whether a part, or anything that carries it, moves."""
    parts = (tree.design.parts[each] for each in path_to(name, tree))
    return any(named(part, f"{MOVES}{way}.by") for part in parts for way in WAYS)
