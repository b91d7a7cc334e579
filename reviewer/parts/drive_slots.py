"""The slots of a drive plate: where they run, what is left between them, their play."""

from reviewer.parts.allowed import stated
from reviewer.parts.from_stock import of_bearing
from reviewer.parts.row import Choice, Count, Measure, Row, Stock
from reviewer.parts.slot_travel import (
    least_web,
    radial_play,
    steepest_of,
    travel_of_slot,
    turn_of_line,
    turning_play,
)

ENDS = {"inner": "slot.inner", "outer": "slot.outer"}
PLAY = {"slot": "slot.travel", "clearance": "slot.clearance"}


def slot() -> tuple[Row, ...]:
    """The slots and what runs in them."""
    return (
        Row("slots", "", "how many slots, each with its slide", Count(at_most=60)),
        Row("slot.inner", "m", "radius of the follower at the inner end", Measure(above=0.0)),
        Row("slot.outer", "m", "radius of the follower at the outer end", Measure(above=0.0)),
        Row(
            "slot.distance",
            "m",
            "distance of a straight slot's line from the axis",
            Measure(above=0.0),
        ),
        Row(
            "slot.turn",
            "rad",
            "turn of the plate over the length of the slot",
            Measure(above=0.0, example="60 deg"),
            turn_of_line,
            {**ENDS, "distance": "slot.distance"},
        ),
        Row("slot.width", "m", "width of the slot", Measure(above=0.0, example="12 mm")),
        Row(
            "slot.travel",
            "",
            "places of the follower in its slot",
            formula=travel_of_slot,
            needs={**ENDS, "turn": "slot.turn?", "distance": "slot.distance?"},
        ),
        Row(
            "slot.steepest",
            "rad",
            "steepest angle to the circle through the follower",
            formula=steepest_of,
            needs={"slot": "slot.travel"},
        ),
        Row(
            "slot.web",
            "m",
            "least web between neighbouring slots",
            formula=least_web,
            needs={"slot": "slot.travel", "slots": "slots", "width": "slot.width"},
            governs="least",
        ),
        Row(
            "slot.edge",
            "m",
            "web between the slots' outer ends and the rim",
            formula=lambda rim, outer, width: rim - outer - width / 2,
            needs={"rim": "rim.radius", "outer": "slot.outer", "width": "slot.width"},
            governs="least",
        ),
        Row(
            "slot.clearance",
            "m",
            "width of the slot less the follower",
            Measure(at_least=0.0),
            lambda width, diameter: width - diameter,
            {"width": "slot.width", "diameter": "pin.diameter"},
        ),
        Row(
            "slot.radial_play",
            "m",
            "way of a slide to and fro in its slot",
            formula=radial_play,
            needs=PLAY,
            read="at a slide, as a hand pulls it to and fro",
        ),
        Row(
            "slot.turning_play",
            "rad",
            "turn of the plate to and fro in its slots",
            formula=turning_play,
            needs=PLAY,
        ),
        Row(
            "slot.allowed_play",
            "m",
            "way to and fro that a slide may have",
            Measure(above=0.0),
            stated,
            {"limit": "limit.slide_play"},
        ),
        Row(
            "follower",
            "",
            "how the followers move in their slots",
            Choice(("rolls", "slides"), default="slides"),
        ),
        Row(
            "pin.bearing",
            "",
            "bearing on the pin that runs in the slot",
            Stock("bearings", example='"608"'),
        ),
        Row(
            "pin.diameter",
            "m",
            "diameter of what runs in the slot",
            Measure(above=0.0),
            of_bearing("outer", "Outer diameter of the bearing"),
            {"bearing": "pin.bearing"},
        ),
    )
