"""The pairs of parts that move against each other, as parts that follow from the design's own."""

from collections.abc import Iterator, Mapping
from itertools import combinations_with_replacement

from reviewer.parts.move_rows import MOVES, WAYS
from reviewer.parts.moves import MOVE, ROTATION
from reviewer.parts.moving_pair import MOVING_PAIR
from reviewer.reading.design import Part

LONGEST = 60
ALONE = ("slide", "swing")  # what each of several like parts does in a direction of its own


def with_pairs(parts: Mapping[str, Part]) -> Mapping[str, Part]:
    """The parts, what each does by a travel, and each pair that moves against each other.

    They are named after the parts: trays_slide, trays_and_middle. A design in which nothing moves
    stays as it is.
    """
    if not any(_ways(part) for part in parts.values()):
        return parts
    found = dict(parts)
    for part in parts.values():
        for way in _ways(part):
            kind = MOVE if WAYS[way].unit == "m" else ROTATION
            name = f"{part.name}_{way}"
            found[name] = Part(name, kind, {}, part.place, of=(part.name,))
    shaped = sorted(name for name, part in parts.items() if "motion" in part.kind.by_path)
    for one, other in combinations_with_replacement(shaped, 2):
        mover = _mover(one, other, parts)
        if mover is not None:
            lower, upper = _in_order(one, other, parts)
            name = f"{lower}_and_{upper}"
            found[name] = Part(name, MOVING_PAIR, {}, mover.place, of=(lower, upper))
    return found


def _in_order(one: str, other: str, parts: Mapping[str, Part]) -> tuple[str, str]:
    """What carries the other comes first."""
    return (other, one) if other in path_of(one, parts) else (one, other)


def path_of(name: str, parts: Mapping[str, Part]) -> tuple[str, ...]:
    """A part and what carries it, down to the ground, by the first of what carries each."""
    found = [name]
    while name in parts and parts[name].carried_by and len(found) <= len(parts):
        name = parts[name].carried_by[0]
        found.append(name)
    return tuple(found)


def _ways(part: Part) -> tuple[str, ...]:
    return tuple(way for way in WAYS if f"{MOVES}{way}.by" in part.given)


def _mover(one: str, other: str, parts: Mapping[str, Part]) -> Part | None:
    """The part whose moves take one of two from the other; None where nothing does."""
    if one == other:
        return next(iter(_alone(one, parts)), None)
    mine, theirs = path_of(one, parts), path_of(other, parts)
    for name in dict.fromkeys((*mine, *theirs)):
        both = name in mine and name in theirs
        if name in parts and _ways(parts[name]) and (not both or _moves_alone(parts[name])):
            return parts[name]
    return None


def _alone(name: str, parts: Mapping[str, Part]) -> Iterator[Part]:
    """The parts that move each of several like parts in a direction of its own."""
    given = parts[name].given.get("count")
    if given is None or given.value == 1:
        return
    for each in path_of(name, parts):
        if each in parts and _moves_alone(parts[each]):
            yield parts[each]


def _moves_alone(part: Part) -> bool:
    """Whether each of several like parts goes its own way."""
    several = part.given.get("count")
    about = any(path.startswith(f"{MOVES}turn.about.") for path in part.given)
    ways = _ways(part)
    return several is not None and (any(way in ways for way in ALONE) or ("turn" in ways and about))
