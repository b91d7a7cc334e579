"""The drawings of a sheet: plan and elevation of each position in which something is found."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from reviewer.judging.reviewed import Review
from reviewer.reporting.drawings.elevation import elevation_drawing
from reviewer.reporting.drawings.labels import spans
from reviewer.reporting.drawings.marks import Mark, pinches_of
from reviewer.reporting.drawings.plan import plan_drawing
from reviewer.reporting.drawings.scene import Scene, scene_of

VIEWS = (("plan", plan_drawing), ("elevation", elevation_drawing))


@dataclass(frozen=True)
class Drawn:
    """A picture with what stands below it."""

    svg: str
    says: str


def drawings_of(review: Review, marks: Sequence[Mark], mark: str) -> Iterator[Drawn]:
    """Each view of each position, with the numbers of what is found there; ids begin with `mark`.

    What is alike in every position is marked in the first.
    """
    assert review.derived is not None
    if not marks:
        return
    for place, configuration in enumerate(review.derived.design.configurations):
        here = [each for each in marks if _position(review, each) == place]
        if place and not here:
            continue
        scene = scene_of(review, configuration.name)
        if not scene.solids:
            return
        for view, draw in VIEWS:
            svg = draw(review, configuration.name, here, f"{mark}-{view}-{place}")
            yield Drawn(svg, _says(scene, view, here))


def _position(review: Review, mark: Mark) -> int:
    """The position of the case that governs a finding; the first where no case does."""
    assert review.derived is not None
    cases = review.derived.cases
    case = mark.finding.case
    return int(cases.configuration[cases.names.index(case)]) if case in cases.names else 0


def _says(scene: Scene, view: str, marks: Sequence[Mark]) -> str:
    """What a picture shows, and what is found of parts that it cannot show."""
    position = f", {scene.configuration}" if scene.configuration else ""
    circled = {each.number for each in pinches_of(scene, marks, plan=view == "plan")}
    beside = [
        each.number for each in marks if each.number not in circled and _no_shape(scene, each)
    ]
    head = f"{view.capitalize()}{position}, with the numbers of the list."
    return f"{head} Of parts without a shape: {spans(beside)}." if beside else head


def _no_shape(scene: Scene, mark: Mark) -> bool:
    parts = (mark.finding.part, *mark.finding.others)
    return all(part not in scene.parts or part in scene.not_drawn for part in parts)
