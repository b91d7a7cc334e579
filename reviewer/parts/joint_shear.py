"""What a bolt through two members bears across itself: yield modes by the NDS and EN 1995-1-1."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.dowel_bearing import en_yield_moment
from reviewer.mechanics.formula import Number
from reviewer.mechanics.spacing import NdsSpacing, nds_geometry_factor
from reviewer.mechanics.steel_to_timber import en_steel_to_timber
from reviewer.mechanics.wood_factors import PARTIAL_FACTOR
from reviewer.mechanics.yield_modes_en import EnSingleShear, en_single_shear
from reviewer.mechanics.yield_modes_nds import NdsSingleShear, nds_single_shear
from reviewer.parts.from_stock import LOAD_FACTOR
from reviewer.parts.joint_members import METAL, embedment_of
from reviewer.stock.fasteners import BoltStrength, Fastener, bolt_strength
from reviewer.stock.materials import Material
from reviewer.stock.table import StockError

MODES = (
    "the second member crushes",
    "the first member crushes",
    "both members crush and the bolt tilts",
    "the bolt bends once and crushes the second member",
    "the bolt bends once and crushes the first member",
    "the bolt bends twice",
)
NDS_FIELDS = (
    *("main_crushes", "side_crushes", "both_crush"),
    *("bends_in_main", "bends_in_side", "bends_twice"),
)
EN_FIELDS = ("b", "a", "c", "e", "d", "f")  # in the order of MODES
WOOD_FIRST, WOOD_SECOND = ("a", "d", "f"), ("b", "e", "f")  # beside a plate of metal


class Across(NamedTuple):
    """What the bolts of a joint bear across them [N], and what limits it."""

    capacity: Number
    limited_by: str


def strength_of(bolt: Fastener, property_class: str) -> BoltStrength | None:
    """Strength of the bolt, or None where there is no such class at its diameter."""
    try:
        return bolt_strength(property_class, bolt.thread.diameter)
    except StockError:
        return None


def bending_yield_of(bolt: Fastener, property_class: str) -> Number:
    """Bending yield strength of the bolt.

    NDS 2018, appendix I, from memory: the mean of yield and tensile strength.
    """
    strength = strength_of(bolt, property_class)
    return np.nan if strength is None else (strength.yield_strength + strength.tensile_strength) / 2


def bearing_diameter(bolt: Fastener, threaded: bool) -> float:
    """Diameter that bears on the wood: the thread's root where the thread lies in it.

    NDS 2018, 12.3.7.
    """
    return bolt.thread.root_diameter if threaded else bolt.thread.diameter


def length_in_second(
    far_end: str, thickness: Number, length: Number, first: Number, washer: float
) -> Number:
    """Length of the bolt in the second member: all of it, or as far as the bolt reaches.

    Geometry.
    """
    if far_end == "nut":
        return thickness
    return np.minimum(thickness, np.maximum(length - first - washer, 0.0))


def nds_modes(
    diameter: Number,
    first: Number,
    second: Number,
    first_bearing: Number,
    second_bearing: Number,
    first_angle: Number,
    second_angle: Number,
    bending_yield: Number,
) -> NdsSingleShear:
    """Allowable values of one bolt, normal duration, dry.

    NDS 2018, 12.3.1.
    """
    turned = np.maximum(first_angle, second_angle)
    bearings = second_bearing, first_bearing
    return nds_single_shear(diameter, second, first, *bearings, bending_yield, turned)


def en_modes(
    bolt: Fastener,
    property_class: str,
    first: Number,
    second: Number,
    first_material: Material,
    second_material: Material,
    first_angle: Number,
    second_angle: Number,
) -> EnSingleShear:
    """Characteristic values of one bolt, without what its pull adds.

    EN 1995-1-1:2004, (8.6), beside steel (8.9) and (8.10), (8.30) to (8.37); from memory.
    """
    diameter, strength = bolt.thread.diameter, strength_of(bolt, property_class)
    moment = en_yield_moment(np.nan if strength is None else strength.tensile_strength, diameter)
    ones = embedment_of(first_material, diameter, first, first_angle)
    others = embedment_of(second_material, diameter, second, second_angle)
    if first_material.family == METAL:
        return _beside_plate(diameter, second, first, others, moment, WOOD_SECOND)
    if second_material.family == METAL:
        return _beside_plate(diameter, first, second, ones, moment, WOOD_FIRST)
    return en_single_shear(diameter, first, second, ones, others, moment)


def _beside_plate(
    diameter: float,
    wood: Number,
    plate: Number,
    embedment: Number,
    moment: Number,
    fields: tuple[str, str, str],
) -> EnSingleShear:
    """The modes of a bolt through a metal plate and wood, under the letters of those in wood."""
    found = en_steel_to_timber(diameter, wood, plate, embedment, moment)
    never = dict.fromkeys(EN_FIELDS, np.inf + 0.0 * np.asarray(found.capacity))
    told = dict(zip(fields, found[:3], strict=True))
    return EnSingleShear(**{**never, **told, "capacity": found.capacity})


def geometry_of(
    distances: NdsSpacing, end: Number | None, spacing: Number | None, count: int
) -> Number:
    """Share of the full value that is left where the end or the next bolt is near.

    NDS 2018, 12.5.1; a distance that is not told is taken as full.
    """
    factor: Number = 1.0
    if end is not None:
        factor = nds_geometry_factor(end, distances.end_full, distances.end_least)
    if spacing is not None and count > 1:
        near = nds_geometry_factor(spacing, distances.in_row_full, distances.in_row_least)
        factor = np.minimum(factor, near)
    return factor


def effective_count(count: int, spacing: Number | None, diameter: float) -> Number:
    """How many bolts in a row along the grain count for.

    EN 1995-1-1:2004, (8.34), from memory; a spacing that is not told is taken as five diameters.

    Notes
    -----
    min(n, n^0.9 (a1 / 13 d)^0.25).
    """
    apart = 5 * diameter if spacing is None else spacing
    fewer = count**0.9 * np.power(apart / (13 * diameter), 0.25)
    return np.where(count > 1, np.minimum(count, fewer), 1.0)


def nds_allowed(
    one: Number, count: int, group: Number, geometry: Number, duration: Number
) -> Number:
    """What the bolts bear across them by the NDS.

    NDS 2018, 11.3.1.
    """
    return count * one * group * geometry * duration


def en_allowed(one: Number, count: Number, modification: Number) -> Number:
    """What the bolts bear across them by EN 1995-1-1, under a load as the design gives it.

    EN 1995-1-1:2004, 2.4.3, gamma_M of connections 1.3 and gamma_Q 1.5.

    Notes
    -----
    n_ef R_k k_mod / (gamma_M gamma_Q).
    """
    return count * one * modification / (PARTIAL_FACTOR["connection"] * LOAD_FACTOR)


def across_of(
    nds: NdsSingleShear, en: EnSingleShear, nds_capacity: Number, en_capacity: Number
) -> Across:
    """The less of the two capacities, and in which way the joint gives way first.

    NDS 2018, 12.3.1, and EN 1995-1-1:2004, (8.6).
    """
    capacity = np.minimum(nds_capacity, en_capacity)
    worst = np.asarray(capacity).reshape(np.shape(capacity) or (1,))[0]
    if np.all(np.isnan(worst)):
        return Across(capacity, "what is not known")
    at = int(np.nanargmin(np.atleast_1d(worst)))
    by_nds = _at(nds_capacity, at) <= _at(en_capacity, at)
    modes = [getattr(nds, each) for each in NDS_FIELDS] if by_nds else []
    modes = modes or [getattr(en, each) for each in EN_FIELDS]
    first = MODES[int(np.argmin([_at(each, at) for each in modes]))]
    return Across(capacity, f"{first}, by {'the NDS' if by_nds else 'EN 1995-1-1'}")


def _at(value: Any, case: int) -> float:
    """A number of the nominal sample in a case."""
    row = np.atleast_2d(np.asarray(value, dtype=float))[0]
    return float(row[min(case, len(row) - 1)])
