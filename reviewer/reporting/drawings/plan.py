"""The plan of a design, from above and to scale."""

from collections.abc import Sequence

from reviewer.judging.reviewed import Review
from reviewer.reporting.drawings.marks import Mark
from reviewer.reporting.drawings.parts_view import parts_view


def plan_drawing(
    review: Review, configuration: str | None = None, marks: Sequence[Mark] = (), name: str = "plan"
) -> str:
    """The plan of a design in a configuration (the first, if none is named), as SVG.

    `marks` number the findings that it shows: dimensions of what they want changed, the pinch
    point circled, the number beside the name of the part. `name` begins the ids of the picture.
    Raises NoSuchConfiguration.
    """
    return parts_view(review, configuration, marks, name, plan=True)
