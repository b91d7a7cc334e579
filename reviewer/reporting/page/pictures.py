"""The drawings of a sheet: plan and elevation of each position in which something is found.

And the curve of each gap against the travel of which something is found.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from reviewer.judging.reviewed import Review
from reviewer.reporting.drawings.curve import curve_drawing, gaps_with_a_curve
from reviewer.reporting.drawings.elevation import elevation_drawing
from reviewer.reporting.drawings.marks import Mark
from reviewer.reporting.drawings.plan import plan_drawing
from reviewer.reporting.drawings.scene import scene_of

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
        if not scene_of(review, configuration.name).solids:
            return
        for view, draw in VIEWS:
            svg = draw(review, configuration.name, here, f"{mark}-{view}-{place}")
            position = f", {configuration.name}" if configuration.name else ""
            yield Drawn(svg, f"{view.capitalize()}{position}, with the numbers of the list.")
    yield from _curves(review, marks, mark)


def _curves(review: Review, marks: Sequence[Mark], mark: str) -> Iterator[Drawn]:
    found = {each.finding.part for each in marks}
    for place, gap in enumerate(each for each in gaps_with_a_curve(review) if each in found):
        here = [each for each in marks if each.finding.part == gap]
        svg = curve_drawing(review, gap, None, here, f"{mark}-curve-{place}")
        yield Drawn(svg, f"The gap of {gap} over the travel, with the bands that are a hazard.")


def _position(review: Review, mark: Mark) -> int:
    """The position of the case that governs a finding; the first where no case does."""
    assert review.derived is not None
    cases = review.derived.cases
    case = mark.finding.case
    return int(cases.configuration[cases.names.index(case)]) if case in cases.names else 0
