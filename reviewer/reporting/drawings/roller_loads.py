"""The loads on the rollers of a ring in one case, as arrows as long as they are large."""

from collections.abc import Sequence
from math import cos, hypot, isnan, pi, sin
from typing import Any, NamedTuple

import numpy as np

from reviewer.judging.finding import Finding
from reviewer.notation.dimension import FORCE
from reviewer.notation.preferred import preferred_units
from reviewer.notation.show import show_like
from reviewer.parts.roller_loads import forces_towards
from reviewer.reporting.drawings.canvas import EDGE, HEAVY, THIN, Canvas
from reviewer.reporting.drawings.scene import Placed, Scene
from reviewer.reporting.drawings.view import View

LONGEST = 44.0  # units of the picture for the largest load
LEAST = 0.02  # of the largest; less is not drawn


class Rollers(NamedTuple):
    """What each roller of a ring bears [N], carrying ones first, in one case.

    `towards` is the azimuth of the load [rad]; places are (x, y) from the axis of the ring, with
    the height of the face that each runs on [m].
    """

    ring: Placed
    case: str
    towards: float
    forces: tuple[float, ...]
    places: tuple[tuple[float, float, float], ...]
    carrying: int

    @property
    def middle(self) -> tuple[float, float]:
        """Where the axis of the ring stands in plan [m]."""
        x, y, _ = self.ring.stance.stays.place((0.0, 0.0, 0.0))
        return x, y

    @property
    def largest(self) -> float:
        """The largest load of all."""
        return max(self.forces, default=0.0)


def rollers_of(scene: Scene, findings: Sequence[Finding] = ()) -> list[Rollers]:
    """The loads of every ring in the configuration that is drawn.

    In the case of the first finding of its rollers' loads that has one there, else in the one in
    which its busiest roller is busiest. A ring that turns over has none.
    """
    rings = (placed for placed in scene.parts.values() if placed.kind == "slewing_ring")
    found = (_rollers(scene, placed, findings) for placed in rings)
    loaded = [each for each in found if each is not None]
    return [each for each in loaded if each.largest > LEAST * largest_of(loaded)]


def _rollers(scene: Scene, ring: Placed, findings: Sequence[Finding]) -> Rollers | None:
    derived = scene.review.derived
    assert derived is not None
    values, cases = derived.values, derived.cases

    def every(path: str) -> Any:
        return values.values[values.plan.slots[ring.name, path]]

    case = _case(scene, ring, findings, every("carry.peak_load"))
    standing, direction = every("standing"), every("carry.peak_direction")
    if case is None or standing is None:
        return None
    stiff = every("plate.rigid")
    entry, shape, rigidity = (None if stiff else every(path) for path in BENDING)
    solved = np.asarray(forces_towards(standing, entry, shape, rigidity, direction))
    forces = np.broadcast_to(solved, (1, len(cases.names), solved.shape[-1]))[0, case]
    if np.isnan(forces).any():
        return None
    places = tuple(_places(ring, standing, case))
    towards = float(np.broadcast_to(direction, (1, len(cases.names)))[0, case])
    number = len(standing.groups[0])
    name = cases.names[case]
    return Rollers(ring, name, towards, tuple(map(float, forces)), places, number)


BENDING = ("plate.entry", "plate.shape", "plate.rigidity")


def _case(scene: Scene, ring: Placed, findings: Sequence[Finding], peaks: Any) -> int | None:
    derived = scene.review.derived
    assert derived is not None
    cases = derived.cases
    index = int(cases.configuration[scene.case])
    here = [k for k in range(len(cases.names)) if cases.configuration[k] == index]
    names = {cases.names[k]: k for k in here}
    for finding in findings:
        loads = {f"{ring.name}.{group}.peak_load" for group in ("carry", "hold_down")}
        if finding.case in names and loads & {each.name for each in finding.numbers}:
            return names[finding.case]
    spread = np.broadcast_to(peaks, (1, len(cases.names)))[0]
    known = [k for k in here if not isnan(spread[k])]
    return max(known, key=lambda k: (round(float(spread[k]), 6), -k), default=None)


def _places(ring: Placed, standing: Any, case: int) -> Any:
    """Where each roller stands, and the face of the plate that it meets."""
    levels = {piece.name: piece.body for piece in ring.drawn.pieces}
    plate = levels.get("plate")
    supports = standing.supports
    x, y = (_last(each, case) for each in (supports.x, supports.y))
    for number in range(len(x)):
        under = number < len(standing.groups[0])
        face = 0.0 if plate is None else plate.bottom if under else plate.top
        yield ring.stance.stays.place((float(x[number]), float(y[number]), face))


def _last(array: Any, case: int) -> Any:
    """The supports of one case."""
    array = np.asarray(array)
    flat = array.reshape(-1, array.shape[-1])
    return flat[case if len(flat) > 1 else 0]


def largest_of(rollers: Sequence[Rollers]) -> float:
    """The largest load that is drawn: all arrows are to one scale."""
    return max((each.largest for each in rollers), default=0.0)


def put_in_plan(canvas: Canvas, view: View, rollers: Rollers, largest: float) -> None:
    """Arrows outward from carrying rollers, inward from hold-downs, and where the load is."""
    for number, (force, (x, y, _)) in enumerate(zip(rollers.forces, rollers.places, strict=True)):
        length = LONGEST * force / largest
        if force < LEAST * largest:
            continue
        radius = hypot(x - rollers.middle[0], y - rollers.middle[1])
        out = ((x - rollers.middle[0]) / radius, (y - rollers.middle[1]) / radius)
        start = view.at(x, y)
        if number < rollers.carrying:
            canvas.arrow(start, (start[0] + length * out[0], start[1] - length * out[1]), HEAVY)
        else:
            _hollow(canvas, start, (start[0] - length * out[0], start[1] + length * out[1]))
    _put_load(canvas, view, rollers)


def _put_load(canvas: Canvas, view: View, rollers: Rollers) -> None:
    """A triangle on the ring's circle, at the azimuth from which the load comes."""
    radius = max(hypot(x - rollers.middle[0], y - rollers.middle[1]) for x, y, _ in rollers.places)
    turn = rollers.towards
    middle = view.at(*rollers.middle)
    reach = radius * view.scale + LONGEST + 8
    tip = (middle[0] + reach * cos(turn), middle[1] - reach * sin(turn))
    corners = [tip]
    for side in (-0.35, 0.35):
        corners.append((tip[0] + 12 * cos(turn + side), tip[1] - 12 * sin(turn + side)))
    canvas.run(corners, EDGE, closed=True)


def put_in_elevation(canvas: Canvas, view: View, rollers: Rollers, largest: float) -> None:
    """Arrows up onto the plate from carrying rollers, down onto it from hold-downs."""
    for number, (force, (x, _, level)) in enumerate(
        zip(rollers.forces, rollers.places, strict=True)
    ):
        length = LONGEST * force / largest
        if force < LEAST * largest:
            continue
        end = view.at(x, level)
        if number < rollers.carrying:
            canvas.arrow((end[0], end[1] + length), end, HEAVY)
        else:
            _hollow(canvas, (end[0], end[1] - length), end)


def _hollow(canvas: Canvas, start: tuple[float, float], end: tuple[float, float]) -> None:
    """A thin arrow with an open head: what holds down."""
    length = hypot(end[0] - start[0], end[1] - start[1])
    x, y = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    canvas.line(start, end, f"{THIN} stroke-dasharray='2 2'")
    foot = (end[0] - 7 * x, end[1] - 7 * y)
    canvas.run([(foot[0] - 3 * y, foot[1] + 3 * x), end, (foot[0] + 3 * y, foot[1] - 3 * x)], THIN)


def words_of(scene: Scene, rollers: Rollers) -> list[str]:
    """What the arrows of a ring are, in words."""
    derived = scene.review.derived
    assert derived is not None
    units = preferred_units(derived.design.units)
    busiest = max(rollers.forces[: rollers.carrying])
    azimuth = rollers.towards * 180 / pi % 360
    words = (
        f"Arrows: loads on the rollers of {rollers.ring.name} under {rollers.case}, the load at "
        f"{azimuth:.0f} deg (triangle); the longest of those that carry is "
        f"{show_like(busiest, FORCE, units)}."
    )
    held = [force for force in rollers.forces[rollers.carrying :] if force > 0]
    if not held:
        return [words]
    return [words, f"Open arrows: hold-downs, up to {show_like(max(held), FORCE, units)}."]
