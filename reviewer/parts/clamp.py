"""A clamp: a split hub that bolts close on a shaft or post."""

import numpy as np

from reviewer.mechanics.bolts import preload, preload_from_torque
from reviewer.mechanics.clamp_forces import remaining_force
from reviewer.mechanics.clamps import clamp_torque, engagement_ratio, mean_pressure
from reviewer.mechanics.formula import Number
from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Count, Measure, Row, Stock
from reviewer.stock.fasteners import Fastener, bolt_strength
from reviewer.stock.table import StockError

CLASSES = ("4.6", "5.8", "8.8", "10.9", "12.9", "A2-70")


def bolt_preload(bolt: Fastener, property_class: str, torque: Number | None) -> Number:
    """Preload of one bolt: from its tightening torque, else 75 % of its proof load.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2011), 8-9 and equation 8-27.

    Notes
    -----
    T / (0.20 d), or 0.75 S_p A_s.
    """
    thread = bolt.thread
    if torque is not None:
        return preload_from_torque(torque, thread.diameter)
    try:
        strength = bolt_strength(property_class, thread.diameter)
    except StockError:  # no such class at this size
        return np.nan
    return preload(thread.stress_area, strength.proof)


def grip_of(bolt_force: Number, count: int, scatter: Number) -> Number:
    """Force that surely presses the two halves together.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2011), 8-9: torque scatters.

    Notes
    -----
    n F (1 - scatter).
    """
    return remaining_force(count * bolt_force, scatter=scatter)


CLAMP = Kind(
    name="clamp",
    says="a split hub that bolts close on a shaft or post",
    rows=(
        *tree(),
        *single(),
        Row(
            "bore",
            "m",
            "diameter of the shaft that it holds",
            Measure(above=0.0, example="20 mm"),
            formula=lambda diameter: diameter,
            needs={"diameter": "carrier.diameter"},
        ),
        Row(
            "length", "m", "length of the shaft that it holds", Measure(above=0.0, example="30 mm")
        ),
        Row("bolt", "", "bolt that closes it", Stock("fasteners", example="M8x40")),
        Row("bolt_class", "", "property class of the bolts", Choice(CLASSES, default="8.8")),
        Row("bolt_count", "", "bolts that close it over this shaft", Count(default=2)),
        Row(
            "tightening",
            "N m",
            "torque to which each bolt is tightened",
            Measure(above=0.0, example="20 N m"),
        ),
        Row(
            "scatter",
            "1",
            "how far tightening misses its aim",
            Measure(default="30 %", at_least=0.0, below=1.0),
        ),
        Row(
            "friction",
            "1",
            "friction between hub and shaft",
            Measure(default="0.15", above=0.0, at_most=1.0),
        ),
        Row(
            "bolt_preload",
            "N",
            "preload of one bolt",
            formula=bolt_preload,
            needs={"bolt": "bolt", "property_class": "bolt_class", "torque": "tightening?"},
            because="has no such property class at this thread",
        ),
        Row(
            "grip",
            "N",
            "force that surely presses the halves together",
            formula=grip_of,
            needs={"bolt_force": "bolt_preload", "count": "bolt_count", "scatter": "scatter"},
        ),
        Row(
            "torque_held",
            "N m",
            "torque that friction holds, contact on two lines",
            formula=clamp_torque,
            needs={"grip": "grip", "diameter": "bore", "friction": "friction"},
        ),
        Row(
            "torque_asked",
            "N m",
            "torque that it must hold",
            Measure(at_least=0.0),
            formula=lambda torque: torque,
            needs={"torque": "carrier.torque"},
        ),
        Row(
            "engagement",
            "1",
            "length held over the shaft's diameter",
            formula=engagement_ratio,
            needs={"length": "length", "diameter": "bore"},
        ),
        Row(
            "pressure",
            "Pa",
            "mean pressure between clamp and shaft",
            formula=mean_pressure,
            needs={"grip": "grip", "diameter": "bore", "length": "length"},
        ),
    ),
)
