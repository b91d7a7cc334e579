"""The rows of how a part moves: what it does by which travel, how far, and between which limits."""

from typing import NamedTuple

from reviewer.parts.row import Measure, PartName, Points, Row

MOVES = "moves."
OF_TRAVEL = Row("travel", "1", "place of the travel", Measure(at_least=0.0, at_most=1.0))


class Way(NamedTuple):
    """A way to move: its unit, what its whole amount is called, and what else may tell that."""

    unit: str
    amount: str
    others: tuple[str, ...]
    does: str


WAYS = {
    "turn": Way("rad", "angle", ("profile",), "turns about an upright axis"),
    "slide": Way("m", "distance", ("profile", "slot", "crank"), "slides level"),
    "lift": Way("m", "height", ("profile", "ramp"), "rises"),
    "swing": Way("rad", "angle", ("profile",), "swings upward about a level axis"),
}


def _common(name: str, way: Way) -> tuple[Row, ...]:
    """What every way to move has."""
    path, unit = f"{MOVES}{name}", way.unit
    amount = Row("amount", unit, f"how far it {way.does} there", Measure())
    return (
        Row(f"{path}.by", "", "the travel that drives it", PartName(of="travel")),
        Row(f"{path}.{way.amount}", unit, f"how far it {way.does}, at the end", Measure()),
        Row(
            f"{path}.profile",
            "",
            f"how far it {way.does} at places of the travel, straight in between",
            Points((OF_TRAVEL, amount)),
        ),
        Row(f"{path}.wanted", unit, "how far it has to go in all", Measure(above=0.0)),
        Row(f"{path}.least", unit, "the stop at its lower end", Measure()),
        Row(f"{path}.most", unit, "the stop at its upper end", Measure()),
    )


def _own() -> tuple[Row, ...]:
    """What only some ways to move have."""
    length, angle = Measure(above=0.0), Measure()
    slot, crank = f"{MOVES}slide.slot", f"{MOVES}slide.crank"
    ramp = Points((Row("run", "m", "run", Measure()), Row("height", "m", "height", Measure())))
    return (
        Row(f"{MOVES}turn.about.x", "m", "pivot, from the part's place", Measure()),
        Row(f"{MOVES}turn.about.y", "m", "pivot, from the part's place", Measure()),
        Row(
            f"{MOVES}slide.azimuth",
            "rad",
            "which way it slides; of several around an axis, from outward",
            Measure(default="0 deg"),
        ),
        Row(
            f"{MOVES}slide.radius",
            "m",
            "radius of the arc that it slides along, its middle to the left",
            length,
        ),
        Row(f"{slot}.inner", "m", "radius of a straight slot in a turning plate", length),
        Row(f"{slot}.outer", "m", "radius at its other end", length),
        Row(f"{slot}.turn", "rad", "turn of the plate from one end to the other", angle),
        Row(f"{crank}.radius", "m", "radius of a crank that moves it", length),
        Row(f"{crank}.turn", "rad", "how far the crank turns", angle),
        Row(f"{crank}.from", "rad", "where it begins, from its inner dead point", angle),
        Row(f"{MOVES}lift.ramp", "", "profile of a ramp that lifts it, run and height", ramp),
        Row(f"{MOVES}swing.about.out", "m", "level axis, outward from its place", Measure()),
        Row(f"{MOVES}swing.about.height", "m", "level axis, above the floor", Measure()),
    )


TOUCHES = Row(
    "touches",
    "",
    "parts that it is meant to touch, beside those that carry it",
    PartName(several=True),
)
GIVEN = (*(row for name, way in WAYS.items() for row in _common(name, way)), *_own(), TOUCHES)
NOW = tuple(
    Row(f"{MOVES}{name}.now", way.unit, f"how far it {way.does} in a configuration", built=True)
    for name, way in WAYS.items()
)
REACH = tuple(
    Row(
        f"{MOVES}{name}.reach",
        way.unit,
        f"how far it {way.does} in all, over the whole travel",
        built=True,
    )
    for name, way in WAYS.items()
)
BEYOND = tuple(
    Row(f"{MOVES}{name}.beyond", way.unit, "how far it is driven on beyond a stop", built=True)
    for name, way in WAYS.items()
)
MOTION = Row("motion", "", "how it stands and moves on what carries it", built=True)
MOVE_ROWS = (*GIVEN, MOTION, *NOW, *REACH, *BEYOND)
