"""A stop: what ends a movement, and holds it against somebody who leans."""

from functools import reduce

import numpy as np

from reviewer.mechanics.bolt_shear import (
    BRITTLE_SHEAR_FACTOR,
    SHEAR_FACTOR,
    bolt_shear_resistance,
)
from reviewer.mechanics.formula import Number
from reviewer.mechanics.stops import (
    GRAVITY,
    falling_energy,
    moving_energy,
    steady_stop_force,
    turning_energy,
)
from reviewer.parts.allowed import stated
from reviewer.parts.from_stock import LOAD_FACTOR
from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Count, Measure, Row, Stock
from reviewer.parts.skirt import level_push
from reviewer.stock.fasteners import Fastener

NOMINAL_STRENGTH = {  # Pa; EN 1993-1-8, table 3.1; 12.9 and A2-70 by their standards' names
    "4.6": 400e6,
    "5.8": 500e6,
    "8.8": 800e6,
    "10.9": 1000e6,
    "12.9": 1200e6,
    "A2-70": 700e6,
}
TOUGH = ("4.6", "8.8")


def energy_of(
    mass: Number | None,
    speed: Number | None,
    drop: Number | None,
    inertia: Number | None,
    rate: Number | None,
) -> Number | None:
    """Energy of all that moves, turns and falls together.

    Mechanics.

    Notes
    -----
    m v^2 / 2 + J w^2 / 2 + m g h, of those that are known.
    """
    found = []
    if mass is not None and speed is not None:
        found.append(moving_energy(mass, speed))
    if mass is not None and drop is not None:
        found.append(falling_energy(mass, drop))
    if inertia is not None and rate is not None:
        found.append(turning_energy(inertia, rate))
    return reduce(np.add, found) if found else None


def stop_force(
    energy: Number,
    mass: Number | None,
    drop: Number | None,
    stiffness: Number | None,
    gives: Number | None,
    buffer: str,
) -> Number | None:
    """Greatest force on the stop; what falls goes on pressing while the stop gives way.

    Energy: Shigley, Mechanical Engineering Design, 4-17; Gere, Mechanics of Materials, 2.8.

    Notes
    -----
    Of a spring W + sqrt(W^2 + 2 k E), or 2 (E + W s)/s; steady (E + W s)/s; W of what falls.
    """
    weight = 0.0 * energy if drop is None or mass is None else mass * GRAVITY
    if stiffness is not None and buffer == "spring":
        return weight + np.sqrt(weight * weight + 2.0 * stiffness * energy)
    if gives is None:
        return None
    steady = steady_stop_force(energy + weight * gives, gives)
    return steady if buffer == "steady" else 2.0 * steady


def bolts_in_shear(bolt: Fastener, property_class: str, count: int, planes: int) -> Number:
    """Force that the bolts of the stop bear across them.

    EN 1993-1-8, tables 3.1 and 3.4, from memory; loads are unfactored, so the factor is taken here.

    Notes
    -----
    n m alpha_v f_ub A_s / (gamma_M2 gamma_Q), f_ub nominal.
    """
    factor = SHEAR_FACTOR if property_class in TOUGH else BRITTLE_SHEAR_FACTOR
    strength = NOMINAL_STRENGTH[property_class]
    resistance = bolt_shear_resistance(bolt.thread.stress_area, strength, planes, factor)
    return count * resistance / LOAD_FACTOR


def force_by_leaning(push: Number, push_radius: Number | None, radius: Number | None) -> Number:
    """Force on the stop of somebody who leans on what it stops, by the lever of both radii.

    Statics: moments about the axis.

    Notes
    -----
    F r_push / r_stop; without radii what it stops moves straight, and the force is the push.
    """
    if radius is None or push_radius is None:
        return push
    return push * push_radius / radius


STOP = Kind(
    name="stop",
    says="what ends a movement, and holds against somebody who leans",
    rows=(
        *tree(),
        *single(),
        Row(
            "stops.mass",
            "kg",
            "mass of what it stops",
            Measure(at_least=0.0, example="12 kg"),
            formula=lambda force: force / GRAVITY,
            needs={"force": "bears.force"},
        ),
        Row("stops.speed", "m/s", "speed with which that arrives", Measure(at_least=0.0)),
        Row("stops.drop", "m", "height from which that drops", Measure(at_least=0.0)),
        Row("stops.inertia", "kg m^2", "moment of inertia of what turns", Measure(at_least=0.0)),
        Row("stops.rate", "rad/s", "rate of turning with which that arrives", Measure()),
        Row(
            "energy",
            "J",
            "energy of what it stops",
            Measure(at_least=0.0, example="2 J"),
            formula=energy_of,
            needs={
                "mass": "stops.mass?",
                "speed": "stops.speed?",
                "drop": "stops.drop?",
                "inertia": "stops.inertia?",
                "rate": "stops.rate?",
            },
        ),
        Row(
            "allowed_energy",
            "J",
            "energy that may arrive where a hand can be",
            Measure(above=0.0),
            formula=stated,
            needs={"limit": "limit.moving_energy"},
        ),
        Row(
            "buffer",
            "",
            "how it gives way: as a spring, or at a steady force as a damper or crushed wood",
            Choice(("spring", "steady"), default="spring"),
        ),
        Row("stiffness", "N/m", "stiffness of the stop and what carries it", Measure(above=0.0)),
        Row("gives", "m", "how far it gives way", Measure(above=0.0, example="3 mm")),
        Row(
            "force",
            "N",
            "greatest force on it",
            formula=stop_force,
            needs={
                "energy": "energy",
                "mass": "stops.mass?",
                "drop": "stops.drop?",
                "stiffness": "stiffness?",
                "gives": "gives?",
                "buffer": "buffer",
            },
        ),
        Row("bolt", "", "bolt that holds it", Stock("fasteners", example="M8x40")),
        Row(
            "bolt_class",
            "",
            "property class of the bolts",
            Choice(tuple(NOMINAL_STRENGTH), default="8.8"),
        ),
        Row("bolt_count", "", "bolts that hold it", Count(default=1)),
        Row("bolt_planes", "", "planes in which each shears", Count(default=1, at_most=2)),
        Row(
            "strength",
            "N",
            "force that it bears",
            Measure(above=0.0, example="800 N"),
            formula=bolts_in_shear,
            needs={
                "bolt": "bolt",
                "property_class": "bolt_class",
                "count": "bolt_count",
                "planes": "bolt_planes",
            },
            governs="least",
        ),
        Row("radius", "m", "radius of the stop from the axis of what turns", Measure(above=0.0)),
        Row("push_radius", "m", "radius from that axis at which a push acts", Measure(above=0.0)),
        Row(
            "push",
            "N",
            "level force with which somebody leans on what it stops",
            Measure(at_least=0.0),
            formula=level_push,
            needs={"action": "action"},
        ),
        Row(
            "leaning_force",
            "N",
            "force on the stop of somebody who leans",
            formula=force_by_leaning,
            needs={"push": "push", "push_radius": "push_radius?", "radius": "radius?"},
        ),
    ),
)
