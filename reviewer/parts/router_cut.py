"""A router cut: a groove, a housing, a rebate, or a circle cut about a pivot."""

from reviewer.mechanics.cutting import passes, pivot_radius
from reviewer.mechanics.formula import Number
from reviewer.parts.cut_wood import takes, wood
from reviewer.parts.cutters import cutter_rows
from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Count, Flag, Measure, Row

KEPT = {"disc": 1.0, "hole": -1.0}


def through(thickness: Number) -> Number:
    """Depth of a cut that goes through."""
    return thickness


def side_of(keeps: str) -> float:
    """On which side of the line the cutter runs: outside for a disc, inside for a hole."""
    return KEPT[keeps]


def _circle() -> tuple[Row, ...]:
    return (
        Row(
            "circle",
            "m",
            "diameter of the edge that is kept, where it is cut about a pivot",
            Measure(above=0.0, example="560 mm"),
        ),
        Row("keeps", "", "what is kept of a circle", Choice(("disc", "hole"), default="disc")),
        Row("side", "1", "on which side of the line the cutter runs", formula=side_of,
            needs={"keeps": "keeps"}),
        Row(
            "pivot.radius",
            "m",
            "from the middle of the pin to the middle of the cutter",
            formula=pivot_radius,
            needs={"diameter": "circle", "cutter": "tool.diameter", "side": "side"},
        ),
        Row("pivot.pin", "m", "diameter of the pin", Measure(above=0.0, example="6 mm")),
        Row(
            "pivot.depth",
            "m",
            "depth of the hole for the pin",
            Measure(above=0.0, example="10 mm"),
        ),
    )  # fmt: skip


def _work() -> tuple[Row, ...]:
    return (
        Row(
            "pass",
            "m",
            "depth of one pass",
            Measure(above=0.0, example="6 mm"),
            formula=lambda diameter, share: diameter * share,
            needs={"diameter": "tool.diameter", "share": "limit.pass_over_diameter"},
        ),
        Row(
            "passes",
            "1",
            "how many passes it takes",
            formula=passes,
            needs={"depth": "depth", "step": "pass"},
        ),
        Row("climbs", "", "whether the cutter is fed with its turn (a climb cut)", Flag()),
        Row("by_hand", "", "whether the router is held in the hand", Flag(default=True)),
        Row("piece", "m", "shortest side of the piece that is held while it is cut",
            Measure(above=0.0, example="200 mm")),
    )  # fmt: skip


ROUTER_CUT = Kind(
    name="router_cut",
    says="a groove, housing or rebate, or a circle about a pivot, cut with a router",
    carries_load=False,
    rows=(
        *wood(),
        Row("count", "", "how many there are", Count(default=1)),
        Row("width", "m", "width of a groove", Measure(above=0.0, example="12 mm")),
        Row(
            "depth",
            "m",
            "depth; through the wood if it is not told",
            Measure(above=0.0, example="6 mm"),
            formula=through,
            needs={"thickness": "wood.high"},
        ),
        Row("corner", "m", "least radius of its inner corners", Measure(at_least=0.0)),
        *cutter_rows(),
        *takes(),
        *_circle(),
        *_work(),
    ),
)
