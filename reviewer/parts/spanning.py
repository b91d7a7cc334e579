"""Rows of a flat part that spans between what carries it: sag, stress, creep."""

from collections.abc import Mapping
from dataclasses import replace

from reviewer.mechanics.formula import Number
from reviewer.parts.bench_test import BENT, board_span_modulus
from reviewer.parts.groups import same
from reviewer.parts.lasting import creep, strength_in_time
from reviewer.parts.row import Choice, Count, Measure, Row
from reviewer.parts.span_bending import Loaded, Spanned, board_span, load_on, round_span
from reviewer.stock.materials import Material


def poisson_of(material: Material) -> float:
    """Poisson's ratio of the material.

    The stock row's own source.
    """
    return material.poisson


def spanned(
    load: Loaded,
    support: Number | None,
    count: int | None,
    diameter: Number | None,
    opening: Number,
    span: Number | None,
    width: Number | None,
    modulus: Number,
    along: Number,
    thickness: Number,
    poisson: Number,
    patch: Number,
) -> Spanned | None:
    """Sag and stress of a disc on a ring or arms, or of a board on two lines; else nothing."""
    if diameter is not None and support is not None:
        plate = (diameter, opening, modulus, thickness, poisson, patch)
        return round_span(load, support, count, *plate)
    if diameter is None and span is not None and width is not None:
        return board_span(load, span, width, along, thickness)
    return None


def allowed_sag(
    divisor: Number, span: Number | None = None, support: Number | None = None
) -> Number | None:
    """How far a flat part may sag: a part of its span, of a round one twice its supports' radius.

    The limit's own source.
    """
    if span is not None:
        return span / divisor
    return None if support is None else 2 * support / divisor


GRAIN = Row(
    "grain",
    "",
    "how the grain of its face runs to the span",
    Choice(("along", "across"), default="along"),
)
SPANNED = "sag and stress between what carries it"
NOT_CARRIED = "does not lie on a ring within it, on three arms or more, or on two lines"


def on_ring_or_lines(diameter: str, opening: str, width: str) -> tuple[Row, ...]:
    """What carries a disc or a board, and how far it bends in between."""
    spans = {"span": "span?", "support": "supports.radius?"}
    needs = {
        "load": "lies_on",
        "support": "supports.radius?",
        "count": "supports.count?",
        "diameter": diameter,
        "opening": opening,
        "span": "span?",
        "width": width,
        "modulus": "modulus",
        "along": "span_modulus",
        "thickness": "thickness",
        "poisson": "poisson",
        "patch": "patch",
    }
    return (
        Row(
            "supports.radius",
            "m",
            "radius of the ring, or of the places on arms, that carry it",
            Measure(above=0.0),
            formula=same,
            needs={"place": "carrier.support.radius"},
        ),
        Row(
            "supports.count",
            "",
            "how many arms carry it; one stands for a ring",
            Count(at_most=100),
            formula=same,
            needs={"place": "carrier.count"},
        ),
        Row(
            "span",
            "m",
            "distance between the two lines on which a board lies",
            Measure(above=0.0, example="600 mm"),
        ),
        Row(
            "patch",
            "m",
            "radius of the patch on which a single force stands",
            Measure(above=0.0, default="40 mm"),
        ),
        Row(
            "poisson",
            "1",
            "Poisson's ratio",
            Measure(at_least=0.0, below=0.5),
            formula=poisson_of,
            needs={"material": "material"},
        ),
        *spanning(Row("spanned", "", SPANNED, formula=spanned, needs=needs), spans),
    )


def on_lines() -> tuple[Row, ...]:
    """How far a board bends between two lines."""
    needs = {
        "load": "lies_on",
        "span": "span",
        "width": "width",
        "modulus": "span_modulus",
        "thickness": "thickness",
    }
    return spanning(Row("spanned", "", SPANNED, formula=board_span, needs=needs), {"span": "span"})


def spanning(between: Row, spans: Mapping[str, str]) -> tuple[Row, ...]:
    """Sag and stress of a flat part, at once and after years, and how far it may sag."""
    return (
        GRAIN,
        Row(
            "span_modulus",
            "Pa",
            "modulus in bending along the span",
            Measure(above=0.0),
            formula=board_span_modulus,
            needs={"material": "material?", "thickness": "thickness", "grain": "grain", **BENT},
        ),
        Row(
            "single_force",
            "N",
            "greatest single force that stands on it, wherever that is",
            Measure(at_least=0.0),
            built=True,
        ),
        Row(
            "lies_on",
            "",
            "what lies on it evenly, and the force in its middle",
            formula=load_on,
            needs={"action": "action", "single_force": "single_force", "area": "area"},
        ),
        between,
        replace(
            _of_span("sag", "m", "how far its middle sags between what carries it", "sag"),
            read="in its middle, from a straightedge across what carries it",
        ),
        _of_span("bending_stress", "Pa", "bending stress in its middle", "stress"),
        _allowed("allowed_span_sag", "how far its middle may sag", "span_over_sag", spans),
        _allowed(
            "allowed_lasting_sag",
            "how far its middle may sag after years",
            "span_over_lasting_sag",
            spans,
        ),
        *strength_in_time(),
        *creep("sag", "how far its middle sags after years"),
    )


def _of_span(path: str, unit: str, says: str, take: str) -> Row:
    needs = {"solution": "spanned"}
    return Row(path, unit, says, needs=needs, take=take, because=NOT_CARRIED)


def _allowed(path: str, says: str, limit: str, spans: Mapping[str, str]) -> Row:
    needs = {**spans, "divisor": f"limit.{limit}"}
    return Row(path, "m", says, Measure(above=0.0), formula=allowed_sag, needs=needs)
