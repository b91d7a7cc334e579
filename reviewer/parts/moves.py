"""What a part does by a travel, as a thing of its own: how far it goes, and against which stops."""

from reviewer.parts.kind import Kind
from reviewer.parts.row import Row


def _kind(name: str, says: str, unit: str) -> Kind:
    """A kind of move whose amounts have a unit."""
    return Kind(
        name=name,
        says=says,
        carries_load=False,
        implied=True,
        of=("part",),
        rows=(
            Row("reach", unit, "how far it goes in all", built=True, governs="least"),
            Row("wanted", unit, "how far it has to go in all", built=True),
            Row("beyond", unit, "how far it is driven on beyond a stop", built=True),
        ),
    )


MOVE = _kind("move", "a slide or a lift of a part by a travel", "m")
ROTATION = _kind("rotation", "a turn or a swing of a part by a travel", "rad")
