"""What a kind takes from a stock row: the numbers of the material or bearing that was chosen."""

from typing import Any

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.stock.materials import Material, completed
from reviewer.stock.panels import panel_modulus

LOAD_FACTOR = 1.5  # EN 1990: loads stand unfactored in a design, so the factor is taken here
MEDIUM_TERM = 0.80  # k_mod of EN 1995-1-1, table 3.1: solid timber and plywood, medium term, dry
YIELD_MARGIN = 1.5  # common practice


def density_of(material: Material) -> float:
    """Density of the material.

    The stock row's own source.
    """
    return material.density


def modulus_of(material: Material) -> float:
    """Modulus of elasticity in bending, along the grain where there is one.

    The stock row's own source.
    """
    return material.modulus


def shear_modulus_of(material: Material) -> float:
    """Shear modulus; of a metal or plastic E / 2(1 + nu).

    The stock row's own source.
    """
    return completed(material).shear_modulus


def panel_modulus_along(material: Material, thickness: Number) -> Number:
    """Modulus in bending of a panel of this thickness, along the grain of its face.

    The stock row's own source.
    """
    return panel_modulus(material, thickness).along


def panel_modulus_mean(material: Material, thickness: Number) -> Number:
    """Modulus in bending of a disc of panel, the mean of along and across its face grain.

    Common practice: a disc bends in every direction at once.
    """
    along, across = panel_modulus(material, thickness)
    return np.where(np.isnan(across), along, (along + across) / 2)


def across_strength_of(material: Material) -> float:
    """Compression strength through the face or across the grain, under a roller or washer.

    The stock row's own source.
    """
    return completed(material).compression_across


def allowed_bending_stress(material: Material) -> float:
    """Bending stress that a lasting service load may cause.

    Wood: EN 1995-1-1, f_k k_mod / (gamma_M gamma_Q). Metal, plastic: yield / 1.5, common practice.

    Notes
    -----
    k_mod = 0.80 (medium term, dry), gamma_Q = 1.5; of a mean, its lower 5 % is f_k.
    """
    if material.family in ("metal", "plastic"):
        return material.yield_strength / YIELD_MARGIN
    low, _ = material.range_of("bending_strength")
    return low * MEDIUM_TERM / (material.partial_factor * LOAD_FACTOR)


def of_bearing(attribute: str, text: str) -> Any:
    """A formula that reads one number of a bearing's stock row."""

    def read(bearing: Any) -> Any:
        return getattr(bearing, attribute)

    read.__doc__ = f"{text}.\n\n    The stock row's own source.\n    "
    return read
