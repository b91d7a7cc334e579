"""What is left of a clamp's bolts to grip with, and how hard it presses what it grips."""

import numpy as np

from reviewer.mechanics.bolts import preload, preload_from_torque
from reviewer.mechanics.clamp_forces import cheek_closing_force, remaining_force
from reviewer.mechanics.clamps import COSINE, LINE, UNIFORM, clamp_torque, mean_pressure
from reviewer.mechanics.formula import Number
from reviewer.parts.from_stock import YIELD_MARGIN, across_strength_of
from reviewer.stock.fasteners import Fastener, bolt_strength
from reviewer.stock.materials import Material
from reviewer.stock.table import StockError

FITS = {"line": LINE, "cosine": COSINE, "uniform": UNIFORM}
PEAK = {"line": COSINE, "cosine": COSINE, "uniform": 1.0}  # largest pressure over the mean
LOST = {"wood": 0.6, "plywood": 0.6, "panel": 0.6, "plastic": 2 / 3, "metal": 0.0}
OF_WOOD = ("wood", "plywood", "panel")


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


def bolt_proof_load(bolt: Fastener, property_class: str) -> Number:
    """Load that one bolt bears without stretching for good.

    ISO 898-1:2013, tables 4 and 5.

    Notes
    -----
    S_p A_s.
    """
    thread = bolt.thread
    try:
        strength = bolt_strength(property_class, thread.diameter)
    except StockError:  # no such class at this size
        return np.nan
    return thread.stress_area * strength.proof


def tightest(preload: Number, scatter: Number) -> Number:
    """Preload of one bolt when tightening misses its aim upwards.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2011), 8-9: torque scatters.

    Notes
    -----
    F (1 + scatter).
    """
    return preload * (1 + scatter)


def closing_force(
    modulus: Number | None,
    length: Number,
    thickness: Number | None,
    arm: Number | None,
    gap: Number | None,
) -> Number:
    """Force of the bolts that only bends the cheeks until they grip; none where no gap is told.

    Gere, Mechanics of Materials, appendix H (cantilever); rough, within a factor of two.

    Notes
    -----
    3 E I g / l^3 with I = L h^3 / 12, both cheeks bending by half of the gap.
    """
    if gap is None:
        return 0.0 * length
    if modulus is None or thickness is None or arm is None:
        return np.nan
    return cheek_closing_force(modulus, length, thickness, arm, gap / 2)


def lost_with_time(material: Material | None) -> Number:
    """Share of the grip that is lost with time: none of metal.

    Wood: stress-laminated decks, Ritter, Timber Bridges (1990), ch. 9, from memory.
    Plastic: a lasting load needs a third of the modulus, common practice.
    """
    return 0.0 if material is None else LOST[material.family]


def grip_of(
    bolt_force: Number,
    count: int,
    scatter: Number,
    closing: Number,
    relaxation: Number,
    ratio: Number,
) -> Number:
    """Force that surely presses the two halves together, after years.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2011), 8-9: torque scatters.

    Notes
    -----
    (n F (1 - scatter) - F_close)(1 - r), times the lever of a hub that is slotted on one side.
    """
    return ratio * remaining_force(count * bolt_force, closing, scatter, relaxation)


def lever_of_hub(bolts: Number | None, shaft: Number | None) -> Number:
    """How many times the bolts' force a hub grips with: of two halves once.

    Statics: moments about the whole side of a hub that is slotted on one side.

    Notes
    -----
    l_bolts / l_shaft, both from the middle of the whole side.
    """
    if bolts is None and shaft is None:
        return 1.0
    return np.nan if bolts is None or shaft is None else bolts / shaft


def torque_held(grip: Number, diameter: Number, friction: Number, fit: str) -> Number:
    """Torque that friction holds, by how the hub lies on the shaft.

    Statics; Coulomb friction.

    Notes
    -----
    k mu F d: k = 1 on two lines, 4/pi run in, pi/2 thin and bored to size.
    """
    return clamp_torque(grip, diameter, friction, FITS[fit])


def greatest_pressure(
    bolt_force: Number,
    count: int,
    scatter: Number,
    ratio: Number,
    diameter: Number,
    length: Number,
    fit: str,
) -> Number:
    """Greatest pressure on what is gripped, when the bolts are drawn as tight as they may be.

    Statics: the grip over the projected area; Shigley, Mechanical Engineering Design, 16-3.

    Notes
    -----
    n F (1 + scatter) / (d L), times 4/pi for a pressure as the cosine. Contact on two lines is
    pressed out to that in wood and plastic.
    """
    most = ratio * count * bolt_force * (1 + scatter)
    return PEAK[fit] * mean_pressure(most, diameter, length)


def softer_bears(hub: Material | None, shaft: Material | None) -> Number:
    """Pressure that the softer of hub and shaft bears.

    Wood and plywood: strength across the grain, published low end; others: yield / 1.5, common
    practice.
    """
    bears = [_bears(each) for each in (hub, shaft) if each is not None]
    return np.minimum(bears[0], bears[-1]) if bears else np.nan


def _bears(material: Material) -> float:
    if material.family in OF_WOOD:
        low, _ = material.range_of("compression_across")
        return low
    return across_strength_of(material) / YIELD_MARGIN
