"""What stands where in one configuration: every part's bodies, placed, as plan and as side view."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import cos, sin
from typing import TYPE_CHECKING, Any, NamedTuple

import numpy as np

from reviewer.geometry.outline import Body, Disc, Ring, footprint, polygon
from reviewer.judging.reviewed import Review
from reviewer.parts.figures import FIGURE, Drawn, Piece, lifted
from reviewer.reporting.drawings.stance import Stance, stance_of

if TYPE_CHECKING:
    from shapely import Geometry

GIVEN = ("outline.", "heights.")
CHORD = 2e-4  # m; what the eye does not see in a drawing of a metre


class NoSuchConfiguration(Exception):
    """A configuration is asked for that the design does not have."""

    def __init__(self, name: str, known: tuple[str, ...]) -> None:
        """Tell it and those that there are."""
        self.name, self.known = name, known
        super().__init__(f"there is no configuration {name}")


class Solid(NamedTuple):
    """One copy of a body in place: in plan (x, y) and seen from the front (x, z), in metres.

    `near` is how far it comes towards somebody in front; `round` is centre and radii of a disc.
    """

    part: str
    piece: str
    plan: "Geometry"
    side: "Geometry"
    bottom: float
    top: float
    near: float
    round: tuple[float, float, tuple[float, ...]] | None


class Placed(NamedTuple):
    """A part where it stands in a configuration, and its shape there.

    Of what is `in_plan` alone, as an opening in a part that is not told, no height is known.
    """

    name: str
    kind: str
    stance: Stance
    drawn: Drawn
    in_plan: bool = False


@dataclass(frozen=True)
class Scene:
    """All parts of a design in one configuration."""

    review: Review
    configuration: str
    case: int
    parts: Mapping[str, Placed]
    solids: tuple[Solid, ...]

    def of(self, part: str) -> list[Solid]:
        """The solids of a part."""
        return [solid for solid in self.solids if solid.part == part]

    @property
    def not_drawn(self) -> dict[str, str]:
        """Parts that have neither a body nor a line, and why."""
        return {
            placed.name: placed.drawn.missing[0]
            for placed in self.parts.values()
            if not placed.drawn.pieces and not placed.drawn.lines and placed.drawn.missing
        }


def scene_of(review: Review, configuration: str | None = None) -> Scene:
    """Place every part; the first configuration if none is named. Raises NoSuchConfiguration."""
    derived = review.derived
    assert derived is not None, "only what could be read is drawn"
    names = tuple(each.name for each in derived.design.configurations)
    name = names[0] if configuration is None else configuration
    if name not in names:
        raise NoSuchConfiguration(name, names)
    cases = derived.cases.configuration == names.index(name)
    case = int(np.flatnonzero(cases)[0])
    parts = {
        placed.name: placed
        for part in derived.design.parts
        if (placed := _placed(review, part, case)) is not None
    }
    parts.update({name: _in_what_it_is(review, parts, name) for name in parts})
    solids = tuple(solid for placed in parts.values() for solid in _solids(placed))
    return Scene(review, name, case, parts, solids)


def _placed(review: Review, part: str, case: int) -> Placed | None:
    derived = review.derived
    assert derived is not None
    values, kind = derived.values, derived.design.parts[part].kind

    def at(path: str) -> Any:
        slot = values.plan.slot(part, path)
        return None if slot is None else values.at(slot, case)

    x, y, level = (at(path) for path in ("place.x", "place.y", "level"))
    shape = at(FIGURE)
    drawn = Drawn() if shape is None else shape.at(0, case)
    if any(path.startswith(GIVEN) for path in derived.design.parts[part].given):
        drawn = _as_given(drawn, at("body"), case, level)
    elif shape is None:
        return None
    if any(each is not None and np.isnan(each) for each in (x, y)):
        x, y, drawn = 0.0, 0.0, Drawn(missing=("where it stands is unknown",))
    if level is not None and np.isnan(level):
        level, drawn = 0.0, Drawn(missing=("the height at which it stands is unknown",))
    place = (x or 0.0, y or 0.0, level or 0.0)
    return Placed(part, kind.name, stance_of(derived, part, case, place), drawn)


def _in_what_it_is(review: Review, parts: Mapping[str, Placed], name: str) -> Placed:
    """An opening on the upper face of the part that it is in; anything else as it is."""
    assert review.design is not None
    placed = parts[name]
    if "level" in review.design.parts[name].kind.by_path:
        return placed
    told = review.design.parts[name].given.get("on")
    within = parts.get(str(told.value)) if told else None
    if within is None:
        return placed._replace(in_plan=True)
    top = max((each.body.top for each in within.drawn.pieces if not each.stays), default=0.0)
    whole = within.stance.whole
    raised = whole._replace(raised=whole.raised + top)
    return placed._replace(stance=Stance(raised, (raised,), raised))


def _as_given(drawn: Drawn, bodies: Any, case: int, level: float | None) -> Drawn:
    """A part with the outline or the heights that the design gives, in place of its own body."""
    told = () if bodies is None else bodies.all(0, case)
    if not told:
        return Drawn(missing=("its outline or its heights are not all told",))
    own = tuple(Piece("outline", lifted(each, -(level or 0.0))) for each in told)
    stays = tuple(piece for piece in drawn.pieces if piece.stays)
    return Drawn((*own, *stays), drawn.lines)


def _solids(placed: Placed) -> Iterator[Solid]:
    for name, body, stays in placed.drawn.pieces:
        for copy in placed.stance.bodies(body, stays=stays):
            plan, side = outline_of(copy, plan=True), outline_of(copy, plan=False)
            _, bottom, _, top = side.bounds
            yield Solid(placed.name, name, plan, side, bottom, top, -plan.bounds[1], _round(copy))


def outline_of(body: Body, *, plan: bool) -> "Geometry":
    """What is seen of a body from above, or from the front."""
    return footprint(body, CHORD) if plan else _side(body)


def _side(body: Body) -> "Geometry":
    """What is seen of a body from the front: along y."""
    from shapely import affinity, box, unary_union

    if not body.standing:
        west, _, east, _ = footprint(body, CHORD).bounds
        return box(west, body.bottom, east, body.top)
    face = polygon(body.outline, CHORD)
    shapes = [
        affinity.affine_transform(
            face, [cos(body.azimuth), 0, 0, 1, body.x - sin(body.azimuth) * across, 0]
        )
        for across in (body.bottom, body.top)
    ]
    joined: Geometry = unary_union(shapes).convex_hull
    return joined


def _round(body: Body) -> tuple[float, float, tuple[float, ...]] | None:
    """Centre and radii of what has only circles for edges."""
    match body.outline:
        case Disc(radius):
            radii: tuple[float, ...] = (radius,)
        case Ring(outer, inner):
            radii = (outer, inner)
        case _:
            return None
    return None if body.standing else (body.x, body.y, radii)
