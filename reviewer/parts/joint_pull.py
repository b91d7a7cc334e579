"""What a joint in wood bears along its bolts or screws: washers, threads, inserts, withdrawal."""

from typing import Any

import numpy as np

from reviewer.mechanics.bolt_limits import punching_load
from reviewer.mechanics.formula import Number
from reviewer.mechanics.pull_through import (
    insert_withdrawal_estimate,
    nds_head_pull_through,
    washer_area,
)
from reviewer.mechanics.threads import engagement_needed
from reviewer.mechanics.withdrawal import en_screw_withdrawal, nds_wood_screw_withdrawal
from reviewer.mechanics.wood_factors import PARTIAL_FACTOR
from reviewer.parts.from_stock import LOAD_FACTOR
from reviewer.parts.joint_shear import strength_of
from reviewer.parts.lasting import OF_WOOD, modification_of
from reviewer.parts.root_bolts import bolt_bears, washer_bears
from reviewer.stock.fasteners import Fastener
from reviewer.stock.materials import Material, completed

STEEL = 7850.0  # kg/m^3
SHEAR_OF_TENSILE = 0.6  # common practice, of steel
LEAST_EN_SCREW = 0.006  # EN 1995-1-1/A1, (8.38)


def mass_of_bolts(bolt: Fastener | None, count: int) -> Number:
    """Mass of the shanks; heads and nuts are left out, and so is all that is not told.

    Geometry, of steel.
    """
    if bolt is None or bolt.length != bolt.length:
        return 0.0
    diameter = bolt.thread.diameter
    return STEEL * np.pi / 4 * diameter * diameter * bolt.length * count


def washer_holds(
    material: Material,
    thickness: Number,
    washer: Number,
    hole: Number,
    cases: Any,
    service_class: int,
) -> Number:
    """Pull of one bolt that a member bears under the washer: crushed, or punched through.

    EN 1995-1-1:2004, 8.5.2(2), and statics of shear round the washer, k_mod / (gamma_M gamma_Q).
    """
    crushed = washer_bears(material, washer, hole, cases, service_class)
    if material.family not in OF_WOOD:
        return crushed
    low, _ = material.range_of("shear_strength")
    factor = modification_of(material, cases, service_class) / material.partial_factor
    return np.minimum(crushed, punching_load(washer, thickness, low) * factor / LOAD_FACTOR)


def pull_borne(
    bolt: Fastener,
    property_class: str,
    count: int,
    far_end: str,
    under_head: Number,
    under_nut: Number,
) -> Number:
    """Pull that the bolts bear: their own strength, and the wood under head and nut.

    ISO 898-1, proof load / 1.5 (common practice); EN 1995-1-1:2004, 8.5.2.
    """
    one = np.minimum(bolt_bears(bolt, property_class), under_head)
    if far_end == "nut":
        one = np.minimum(one, under_nut)
    return count * one


def pressed_by(preload: Number, washer: Number, hole: Number) -> Number:
    """Mean pressure of the preload under the washer.

    Statics.

    Notes
    -----
    F / A; a thin washer bends and presses harder round the hole.
    """
    return preload / washer_area(washer, hole)


def least_length(
    far_end: str, bolt: Fastener, first: Number, second: Number, beyond: Number
) -> Number:
    """Length of bolt that goes through both members, two washers and the nut, and some threads.

    Geometry.
    """
    thread = bolt.thread
    whole = first + second + 2 * thread.washer_thickness + thread.nut_height + beyond * thread.pitch
    return whole if far_end == "nut" else whole * np.nan


def engaged(far_end: str, bolt: Fastener, first: Number, second: Number) -> Number:
    """Length of thread in the tapped member: as far as the bolt reaches in it.

    Geometry.
    """
    if far_end != "tapped":
        return first * np.nan
    return np.minimum(second, bolt.length - first - bolt.thread.washer_thickness)


def engagement_asked(bolt: Fastener, property_class: str, tapped: Material) -> Number:
    """Length of thread at which the bolt breaks before what is tapped strips.

    FED-STD-H28/2B, shear areas; from memory.
    """
    strength = strength_of(bolt, property_class)
    if strength is None or tapped.family in OF_WOOD:
        return np.nan
    thread, tensile = bolt.thread, strength.tensile_strength
    return engagement_needed(
        strength.proof * thread.stress_area,
        thread.diameter,
        thread.pitch,
        completed(tapped).shear_strength,
        SHEAR_OF_TENSILE * tensile,
    )


def insert_holds(
    gravity: Number, diameter: Number, depth: Number, count: int, margin: Number
) -> Number:
    """Pull that threaded inserts bear: an estimate, of which half or double is possible.

    Common practice: the wood screw formula of the Wood Handbook on the insert's thread.
    """
    one = insert_withdrawal_estimate(gravity, diameter, depth)
    return count * one / margin


def screws_hold(
    material: Material,
    gravity: Number,
    diameter: Number,
    thread: Number,
    nds_duration: Number,
    modification: Number,
    count: int,
) -> Number:
    """Pull against which the screws' threads hold in the side grain of the second member.

    NDS 2018, (12.2-2); from 6 mm on no more than EN 1995-1-1:2004/A1, (8.38), allows.
    """
    if material.family not in OF_WOOD:
        return np.nan * gravity
    allowed = nds_wood_screw_withdrawal(gravity, diameter, thread) * nds_duration
    low, _ = material.range_of("density")
    margin = PARTIAL_FACTOR["connection"] * LOAD_FACTOR
    by_en = en_screw_withdrawal(low, diameter, thread) * modification / margin
    thick = np.asarray(diameter) >= LEAST_EN_SCREW
    return count * np.where(thick, np.minimum(allowed, by_en), allowed)


def heads_hold(
    gravity: Number, head: Number, thickness: Number, nds_duration: Number, count: int
) -> Number:
    """Pull at which the screws' heads go through the first member.

    NDS 2018, 12.2.5.
    """
    return count * nds_head_pull_through(gravity, head, thickness) * nds_duration
