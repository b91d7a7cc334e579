"""The rows of a part's shape: its outline, where that stands on the part, and its heights."""

from dataclasses import replace
from functools import cache
from math import pi
from typing import Any

import numpy as np

from reviewer.parts.body import KNOWN, Bodies
from reviewer.parts.figures import FIGURE, moving_body
from reviewer.parts.kind import Kind
from reviewer.parts.move_rows import MOVE_ROWS
from reviewer.parts.row import Count, Flag, Measure, Points, Row

ALWAYS = Measure(above=0.0)
TURN = 2 * pi
OUTLINE = "outline."
MEASURES = (
    ("disc.diameter", "diameter of a disc", ALWAYS),
    ("ring.diameter", "outer diameter of a ring", ALWAYS),
    ("ring.hole", "diameter of the hole in a ring", ALWAYS),
    ("sector.inner", "inner radius of a sector", Measure(at_least=0.0, default="0 mm")),
    ("sector.outer", "outer radius of a sector", ALWAYS),
    ("rectangle.length", "length of a rectangle, along its azimuth", ALWAYS),
    ("rectangle.width", "width of a rectangle", ALWAYS),
    ("regular_polygon.diameter", "diameter of the circle through its corners", ALWAYS),
    ("slot.length", "length over all of a slot, along its azimuth", ALWAYS),
    ("slot.width", "width of a slot", ALWAYS),
)
CORNER = (Row("x", "m", "corner, x", Measure()), Row("y", "m", "corner, y", Measure()))
FORMS = tuple(
    f"{OUTLINE}{form}"
    for form in ("disc", "ring", "sector", "rectangle", "regular_polygon", "slot", "polygon")
)
NEEDED = {
    f"{OUTLINE}disc": ("diameter",),
    f"{OUTLINE}ring": ("diameter", "hole"),
    f"{OUTLINE}sector": ("outer", "angle"),
    f"{OUTLINE}rectangle": ("length", "width"),
    f"{OUTLINE}regular_polygon": ("sides", "diameter"),
    f"{OUTLINE}slot": ("length", "width"),
}
SIZES = (
    *("disc_diameter", "ring_diameter", "sector_outer", "rectangle_length", "slot_length"),
    *("regular_polygon_sides", "polygon"),
)
PLACE = (
    Row("outline.at.x", "m", "where its origin stands on the part", Measure(default="0 mm")),
    Row("outline.at.y", "m", "where its origin stands on the part", Measure(default="0 mm")),
    Row("outline.azimuth", "rad", "how far it is turned there", Measure(default="0 deg")),
    Row(
        "outline.standing",
        "",
        "whether it is a side view, its y axis upward, with heights its thickness to the left",
        Flag(),
    ),
)


HEIGHTS = (
    Row("heights.bottom", "m", "level of its lower face above the floor", Measure()),
    Row("heights.top", "m", "level of its upper face above the floor", Measure()),
)


def outline_rows(kind: Kind) -> tuple[Row, ...]:
    """The measures of each outline that a design may give."""
    return (
        *(Row(f"outline.{path}", "m", says, entry) for path, says, entry in MEASURES),
        Row("outline.sector.angle", "rad", "angle of a sector", Measure(above=0.0, below=TURN)),
        Row("outline.regular_polygon.sides", "", "sides", Count(at_least=3, at_most=360)),
        Row(
            "outline.polygon",
            "",
            "corners of a polygon, in order",
            Points(CORNER, at_least=3, at_most=1000, grows=False),
        ),
        *PLACE,
        *HEIGHTS,
    )


class Told:
    """The shape that the design gives; where it gives no outline, the one that the kind knows.

    The heights that it gives hold for both: without them a part stands on its level, and is as
    high as its height or its thickness says.
    """

    def __init__(self, known: Any, bottom: Any, top: Any, level: Any, above: Any) -> None:
        """Take the shape that is known, the heights that are given, and those that follow."""
        self._known, self._heights, self._usual = known, (bottom, top), (level, above)

    def __call__(self, **given: Any) -> Any:
        """The shape over samples and cases; None where there is none."""
        from reviewer.parts.given_outlines import body_of_outline, raised  # heavy

        bottom, top = self._heights
        if all(given[name] is None for name in SIZES):
            if self._known is None or (bottom is None and top is None):
                return self._known
            return Bodies(raised, {"body": self._known, "bottom": bottom, "top": top})
        level, above = self._usual
        bottom = level if bottom is None else bottom
        if top is None and bottom is not None and above is not None:
            top = bottom + above
        heights = {"bottom": _or_unknown(bottom), "top": _or_unknown(top)}
        return Bodies(body_of_outline, {**heights, **given})


def _or_unknown(level: Any) -> Any:
    return np.nan if level is None else level


@cache
def shaped(kind: Kind) -> Kind:
    """A kind with the rows of its shape: what a design may say of it, and the body that follows.

    Only parts on the load path have a shape of their own; other kinds are returned as they are.
    """
    if not kind.carries_load or "level" not in kind.by_path:
        return kind
    own = kind.shape or (moving_body(KNOWN) if FIGURE in kind.by_path else None)
    known = (own,) if own else ()
    rows = (*outline_rows(kind), *known, _body(kind, knows=own is not None), *MOVE_ROWS)
    return replace(kind, rows=(*kind.rows, *rows))


def _body(kind: Kind, *, knows: bool) -> Row:
    """The row with the body of a part."""
    given = [row.path for row in outline_rows(kind) if row.given and row.path.startswith(OUTLINE)]
    needs = {_argument(path): f"{path}?" for path in given}
    first = {"first": "from"} if "from" in kind.by_path else {}
    known = {"known": f"{KNOWN}?"} if knows else {}
    names = [name for name in ("height", "thickness") if name in kind.by_path]
    heights = {"bottom": "heights.bottom?", "top": "heights.top?", "level": "level?"}
    above: dict[str, str] = {name: f"{name}?" for name in names}

    def body(
        bottom: Any, top: Any, level: Any, known: Any = None,
        height: Any = None, thickness: Any = None, **read: Any,
    ) -> Any:  # fmt: skip
        told = Told(known, bottom, top, level, thickness if height is None else height)
        return told(**{"first": 0.0, **read})

    return Row(
        "body",
        "",
        "its shape and place",
        formula=body,
        needs={**needs, **heights, **above, **first, **known, "count": "count"},
    )


def _argument(path: str) -> str:
    """outline.at.x as the name of an argument."""
    return path.removeprefix(OUTLINE).replace(".", "_")
