"""What rubs on what: the friction of a pair is a range, and each question takes its own end."""

from reviewer.mechanics.formula import Number
from reviewer.parts.row import Choice, Measure, Row
from reviewer.stock.friction import Friction, frictions

PAIRS = tuple(row.name for row in frictions() if row.second)


def _known(pair: Friction) -> list[float]:
    values = (pair.static_low, pair.static_high, pair.kinetic_low, pair.kinetic_high)
    return [value for value in values if value == value]


def least_friction(pair: str) -> Number:
    """Least friction of a pair of surfaces, at rest or sliding: what holds counts on it.

    The stock row's own source.
    """
    return min(_known(friction_of(pair)))


def largest_friction(pair: str) -> Number:
    """Largest friction of a pair of surfaces, at rest or sliding: what moves must overcome it.

    The stock row's own source.
    """
    return max(_known(friction_of(pair)))


def friction_of(pair: str) -> Friction:
    """The row of a pair by its name, as `wood on steel`."""
    return frictions().find(pair)


def rubbing(default: str = "wood on wood") -> tuple[Row, ...]:
    """The pair of surfaces that slide on each other, and both ends of their friction."""
    return (
        Row("rubs", "", "what slides on what", Choice(PAIRS, default=default)),
        Row(
            "friction.least",
            "1",
            "least friction, on which what holds may count",
            Measure(at_least=0.0, at_most=3.0, example="0.2"),
            formula=least_friction,
            needs={"pair": "rubs"},
            governs="least",
        ),
        Row(
            "friction.largest",
            "1",
            "largest friction, which what moves must overcome",
            Measure(at_least=0.0, at_most=3.0, example="0.5"),
            formula=largest_friction,
            needs={"pair": "rubs"},
        ),
    )
