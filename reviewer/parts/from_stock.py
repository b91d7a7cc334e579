"""What a kind takes from a stock row: the numbers of the material or bearing that was chosen."""

from typing import Any

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.stock.materials import Material, completed
from reviewer.stock.panels import panel_modulus

LOAD_FACTOR = 1.5  # EN 1990: loads stand unfactored in a design, so the factor is taken here
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


def of_bearing(attribute: str, text: str) -> Any:
    """A formula that reads one number of a bearing's stock row."""

    def read(bearing: Any) -> Any:
        return getattr(bearing, attribute)

    read.__doc__ = f"{text}.\n\n    The stock row's own source.\n    "
    return read
