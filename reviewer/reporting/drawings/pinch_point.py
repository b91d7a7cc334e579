"""Where a pinch is in a drawing: where two parts come nearest over all of their travel.

It is circled there, also where the configuration that is drawn does not show it: a pinch half way
is what neither end shows. Of a gap whose sides do not move by a travel it is where they are nearest
in the configuration.
"""

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, Any

import numpy as np

from reviewer.judging.finding import Finding
from reviewer.reporting.drawings.reference_lines import lines_of
from reviewer.reporting.drawings.scene import Scene, outline_of
from reviewer.reporting.drawings.stance import Pose

if TYPE_CHECKING:
    from shapely import Geometry

Place = tuple[float, float]
Sides = tuple[list["Geometry"], list["Geometry"]]


def pinch_point(scene: Scene, finding: Finding, *, plan: bool) -> tuple[Place, Place] | None:
    """The two places that come nearest [m], of what a finding of a gap is about."""
    return _nearest(*(_swept(scene, finding, plan=plan) or _still(scene, finding, plan=plan)))


def _swept(scene: Scene, finding: Finding, *, plan: bool) -> Sides | None:
    """Both sides where the least gap of their travel is; None where no travel moves them."""
    from reviewer.parts.gap_course import closest_of

    derived = scene.review.derived
    assert derived is not None
    slot = derived.values.plan.slot(finding.part, "swept")
    swept = None if slot is None else derived.values.values[slot]
    meeting = None if swept is None else swept.meeting.at(0, scene.case)
    found = closest_of(meeting)
    if meeting is None or found is None:
        return None
    positions = np.array([found.least.at])
    one, other = (
        [outline_of(body, plan=plan) for body in _placed(meeting, side, copy, positions)]
        for side, copy in zip((meeting.one, meeting.other), found.copies, strict=True)
    )
    return one, other


def _placed(meeting: Any, side: Any, copy: int, positions: Any) -> Iterable[Any]:
    """The bodies of one copy of a part where the travels are."""
    from reviewer.geometry.chain import poses

    found = poses(meeting.stand(side, copy).chain, positions)
    pose = Pose(complex(found.e[0]), complex(found.c[0]), float(found.lifted[0]))
    return map(pose.body, side.bodies)


def _still(scene: Scene, finding: Finding, *, plan: bool) -> Sides:
    """What is drawn of the two sides of a gap; one side against its own neighbours."""
    derived = scene.review.derived
    assert derived is not None
    part = derived.design.parts.get(finding.part)
    slot = derived.values.plan.slot(finding.part, "between")
    named = derived.values.values[slot] if slot is not None else None
    given = (named,) if isinstance(named, str) else tuple(named or finding.others)
    names = tuple(dict.fromkeys(part.of if part is not None and part.of else given))
    shapes = [_shapes(scene, name, plan=plan) for name in names[:2]]
    if len(shapes) == 1:
        return shapes[0][:1], shapes[0][1:]
    return (shapes[0], shapes[1]) if shapes else ([], [])


def _shapes(scene: Scene, name: str, *, plan: bool) -> list["Geometry"]:
    """What is drawn of a part: its bodies, or its lines where it has none."""
    bodies = [solid.plan if plan else solid.side for solid in scene.of(name)]
    if bodies or name not in scene.parts:
        return bodies
    return [line.course for line in lines_of(scene.parts[name], plan=plan)]


def _nearest(one: Sequence["Geometry"], other: Sequence["Geometry"]) -> tuple[Place, Place] | None:
    """The two nearest places of two sides in a view; of several pairs the first."""
    from shapely.ops import nearest_points

    pairs = [(round(a.distance(b), 9), a, b) for a in one for b in other]
    if not pairs:
        return None
    apart, first, second = min(pairs, key=lambda each: each[0])
    if apart == 0.0:  # one lies over the other in this view: where their edges meet, if they do
        first, second = (each.boundary if each.area else each for each in (first, second))
    places = nearest_points(first, second)
    return (places[0].x, places[0].y), (places[1].x, places[1].y)
