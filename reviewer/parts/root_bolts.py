"""What an arm's couple asks of the bolts at its root, how far it turns, and the holes' play."""

from typing import Any

import numpy as np

from reviewer.mechanics.cantilevers import root_rotation_deflection
from reviewer.mechanics.formula import Number
from reviewer.mechanics.pull_through import washer_area
from reviewer.mechanics.root_joints import farthest_bolt_tension, washer_joint_stiffness
from reviewer.mechanics.tolerances import float_angle
from reviewer.parts.from_stock import LOAD_FACTOR, YIELD_MARGIN, across_strength_of
from reviewer.parts.lasting import OF_WOOD, modification_of
from reviewer.stock.fasteners import Fastener, bolt_strength
from reviewer.stock.materials import Material
from reviewer.stock.table import StockError

UNDER_WASHER = 3.0  # how much more wood bears under a washer: EN 1995-1-1, 8.5.2(2)


def distances_of(edge: Number, spacing: Number, count: int) -> Any:
    """Distances of a row of bolts from the edge about which the arm turns, along the last axis."""
    along = np.arange(count, dtype=float)
    return np.asarray(edge)[..., None] + np.asarray(spacing)[..., None] * along


def spacing_in_seat(seat: Number, edge: Number, count: int) -> Number:
    """Distance between the bolts of a row that fills the seat of the arm.

    Geometry.
    """
    return (seat - edge) / max(count - 1, 1)


def clearance_hole_of(bolt: Fastener, series: str) -> float:
    """Diameter of the clearance hole.

    ISO 273, in the stock row of the thread.
    """
    hole: float = getattr(bolt.thread, f"hole_{series}")
    return hole


def washer_of(bolt: Fastener) -> float:
    """Outer diameter of the plain washer.

    The stock row's own source.
    """
    return bolt.thread.washer_outer


def bolt_tension(moment: Number, edge: Number, spacing: Number, count: int) -> Number:
    """Tension that the arm's couple puts into the bolt farthest inward.

    Khurmi and Gupta, A Textbook of Machine Design (2005), ch. 11, bracket on a row of bolts.

    Notes
    -----
    M x / sum of x^2, turning about the edge of what carries it.
    """
    return farthest_bolt_tension(np.maximum(moment, 0.0), distances_of(edge, spacing, count))


def bolt_bears(bolt: Fastener, property_class: str) -> Number:
    """Tension that one bolt bears.

    ISO 898-1; the margin of 1.5 is common practice.

    Notes
    -----
    S_p A_s / 1.5.
    """
    thread = bolt.thread
    try:
        proof = bolt_strength(property_class, thread.diameter).proof
    except StockError:  # no such class at this size
        return np.nan
    return proof * thread.stress_area / YIELD_MARGIN


def washer_bears(
    plate: Material, washer: Number, hole: Number, cases: Any, service_class: int
) -> Number:
    """Force of a bolt that the washer of its other end presses on the plate.

    EN 1995-1-1:2004, 8.5.2(2), k_mod / (gamma_M gamma_Q); metal, plastic: yield / 1.5.

    Notes
    -----
    3 f_c,90 on the ring under the washer, f_c,90 at the low end of what is published.
    """
    area = washer_area(washer, hole)
    if plate.family not in OF_WOOD:
        return across_strength_of(plate) / YIELD_MARGIN * area
    low, _ = plate.range_of("compression_across")
    factor = modification_of(plate, cases, service_class) / (plate.partial_factor * LOAD_FACTOR)
    return UNDER_WASHER * low * factor * area


def stiffness_of_root(
    plate: Material | None,
    thickness: Number | None,
    washer: Number,
    hole: Number,
    edge: Number,
    spacing: Number,
    count: int,
) -> Number | None:
    """Stiffness against turning of the bolted root, from the panel under its washers; rough.

    Statics of columns of panel under the washers, within a factor of three.

    Notes
    -----
    E A / t times the sum of x^2.
    """
    if plate is None or thickness is None or plate.modulus_through != plate.modulus_through:
        return None
    area = washer_area(washer, hole)
    if np.all(np.isnan(area)):  # no bolt is told
        return None
    distances = distances_of(edge, spacing, count)
    return washer_joint_stiffness(plate.modulus_through, thickness, area, distances)


def root_play(
    bolt: Fastener, hole: Number, tapped: bool, edge: Number, spacing: Number, count: int
) -> Number:
    """Angle by which the arm can stand out of line in its clearance holes, to each side.

    Geometry.

    Notes
    -----
    (c1 + c2) / s between the outer bolts; a tapped hole has no clearance.
    """
    clearance = hole - bolt.thread.diameter
    other = 0.0 * clearance if tapped else clearance
    return float_angle(clearance, other, spacing * max(count - 1, 1) + 0.0 * edge)


def first_known(plate: Any, panel: Any) -> Any:
    """Of a ring its plate, of a panel itself."""
    return panel if plate is None else plate


def words_for(stiffness: Number | None) -> str:
    """How the joint at the root is taken."""
    if stiffness is None:
        return "rigid, so that this is a lower bound"
    return "turning as its stiffness says, which from bolts and washers is rough, a factor of three"


def sinks_by_turning(moment: Number, stiffness: Number | None, reach: Number) -> Number:
    """How far the tip sinks because the joint at the root turns; not at all where it is rigid.

    Statics.

    Notes
    -----
    M L / k.
    """
    if stiffness is None:
        return 0.0 * moment
    return root_rotation_deflection(moment, stiffness, reach)
