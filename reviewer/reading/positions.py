"""Positions of the travels in which the load path is reckoned beside those that the file names.

Between two breaks of its courses every part is moved in proportion to the travel. So moments about
the edges of supports, and what an arm or a guide still holds, grow or fall in proportion to it or
turn where two parts change places; they are largest at the ends and at the breaks. What is moved by
a slot, a crank or a turn is not in proportion, but goes one way between two breaks; a position
between them is added for it. Of several travels every combination is taken. The turn of a ring or
a hub is left out: what they carry can stand at any azimuth anyway, which the supports search.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from itertools import pairwise, product

from reviewer.notation.dimension import NUMBER
from reviewer.notation.quantity import Quantity
from reviewer.notation.units import parse_unit
from reviewer.parts.move_rows import MOVES, WAYS
from reviewer.reading.case_count import MOST_CASES, case_count
from reviewer.reading.design import Configuration, Design, GivenValue, Part

POSITION = "position"
MOST = 24  # positions that are added; of more, only those at the ends
BEND = ("slot.turn", "crank.turn", "radius")


def with_positions(design: Design) -> Design:
    """The design with a configuration for each position that matters; itself if nothing moves."""
    places = {name: each for name, each in _places(design.parts).items() if each}
    if not places:
        return design
    found = list(_combinations(design, places))
    if len(found) > MOST:
        found = list(_combinations(design, dict.fromkeys(places, (0.0, 1.0))))
    room = MOST_CASES // max(1, case_count(replace(design, configurations=(Configuration(""),))))
    added = found[: max(0, room - len(design.configurations))]
    return replace(design, configurations=(*design.configurations, *added))


def _combinations(
    design: Design, places: Mapping[str, tuple[float, ...]]
) -> Iterator[Configuration]:
    """A configuration for each combination of positions that the file does not have already."""
    known = {_standing(each, tuple(places)) for each in design.configurations}
    for chosen in product(*places.values()):
        if chosen not in known:
            at = dict(zip(places, chosen, strict=True))
            name = ", ".join(f"{travel} at {place:.3g}" for travel, place in at.items())
            overrides = {
                (travel, POSITION): _given(place, design.parts[travel])
                for travel, place in at.items()
            }
            yield Configuration(name, overrides)


def _standing(configuration: Configuration, travels: tuple[str, ...]) -> tuple[float, ...] | None:
    """Where some travels stand in a configuration that changes nothing else."""
    if any(path != POSITION for _, path in configuration.overrides):
        return None
    found = (configuration.overrides.get((travel, POSITION)) for travel in travels)
    return tuple(float(each.value) if each else 0.0 for each in found)


def _given(place: float, travel: Part) -> GivenValue:
    text = f"{place:.6g}"
    unit = parse_unit("1")
    quantity = Quantity(place, NUMBER, unit, place, place, "normal", text)
    return GivenValue(place, text, travel.place, quantity)


def _places(parts: Mapping[str, Part]) -> dict[str, tuple[float, ...]]:
    """For each travel that leads itself, the positions that matter to what it moves."""
    found: dict[str, set[float]] = {}
    for part in parts.values():
        for way in WAYS:
            own = {
                path.removeprefix(f"{MOVES}{way}."): given.value
                for path, given in part.given.items()
                if path.startswith(f"{MOVES}{way}.")
            }
            if own.get("by") in parts and not (part.kind.turns and way == "turn"):
                leader, breaks = _breaks(str(own["by"]), parts, _own_breaks(way, own))
                found.setdefault(leader, {0.0, 1.0}).update(breaks)
    return {name: tuple(sorted(each)) for name, each in sorted(found.items())}


def _own_breaks(way: str, own: Mapping[str, object]) -> list[float]:
    """The places of its travel at which the course of a move breaks, and what is between them."""
    profile, ramp = own.get("profile"), own.get("ramp")
    places = [0.0, 1.0]
    if isinstance(profile, tuple):
        places += [point[0] for point in profile]
    if isinstance(ramp, tuple):
        start, run = ramp[0][0], ramp[-1][0] - ramp[0][0]
        places += [(point[0] - start) / run for point in ramp]
    if way == "turn" or any(each in own for each in BEND):
        places += [0.25, 0.5, 0.75]
    return sorted(set(places))


def _breaks(name: str, parts: Mapping[str, Part], places: list[float]) -> tuple[str, list[float]]:
    """Places of a travel as places of the one that leads it in the end, with its own breaks."""
    travel = parts[name]
    follows = travel.given.get("follows")
    if follows is None or follows.value not in parts:
        return name, places
    profile = travel.given.get("profile")
    if profile is not None:
        points = [(float(leader), float(own)) for leader, own in profile.value]
    else:
        start, end = (
            float(given.value) if (given := travel.given.get(path)) else usual
            for path, usual in (("from", 0.0), ("to", 1.0))
        )
        points = [(start, 0.0), (end, 1.0)]
    outer = {point[0] for point in points}
    for one, other in pairwise(points):
        rise = other[1] - one[1]
        shares = [(place - one[1]) / rise for place in places] if rise else []
        outer |= {one[0] + share * (other[0] - one[0]) for share in shares if 0 < share < 1}
    return _breaks(str(follows.value), parts, sorted(outer | {0.0, 1.0}))
