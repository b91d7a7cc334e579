"""A shaft that is loaded again and again: its safety against fatigue."""

import numpy as np

from reviewer.mechanics.endurance import steel_endurance
from reviewer.mechanics.fatigue import fatigue_moments, goodman_safety
from reviewer.mechanics.formula import Number
from reviewer.parts.allowed import stated
from reviewer.parts.row import Choice, Measure, Row
from reviewer.stock.materials import Material

STEELS_FROM = 180e9  # Pa: of the metals in stock only steels are as stiff


def endurance_of(material: Material, diameter: Number) -> Number:
    """Endurance limit of the shaft, where it is of steel.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2011), eq. (6-8) and (6-18).

    Notes
    -----
    k_a k_b 0.814 S/2, machined; other metals have no limit that repeated loads stay under.
    """
    if material.family != "metal" or material.modulus < STEELS_FROM:
        return np.nan
    return steel_endurance(material.tensile_strength, diameter)


def tensile_strength_of(material: Material) -> float:
    """Tensile strength of the material.

    The stock row's own source.
    """
    return material.tensile_strength


def solid_diameter(section_modulus: Number) -> Number:
    """Diameter of the solid bar with the same section modulus.

    Gere and Goodno, Mechanics of Materials (2009), 5.5.

    Notes
    -----
    (32 W / pi)^(1/3).
    """
    return np.cbrt(32 * section_modulus / np.pi)


def fatigue_safety(
    motion: str,
    moment: Number,
    torque: Number,
    diameter: Number,
    bending_notch: Number,
    torsion_notch: Number,
    endurance: Number,
    ultimate: Number,
) -> Number:
    """Factor on the loads until the shaft breaks by fatigue.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2008), eq. (7-6) and (7-7).

    Notes
    -----
    Modified Goodman. Where it swings, moment and torque rise from nothing and fall back; where it
    turns, the moment is reversed and the torque steady.
    """
    half = 1.0 if motion == "turns" else 0.5
    steady = 0.0 if motion == "turns" else 0.5
    combined = fatigue_moments(
        bending_notch,
        torsion_notch,
        half * moment,
        steady * moment,
        steady * torque,
        (1.0 - steady) * torque,
    )
    return goodman_safety(diameter, combined.alternating, combined.mean, endurance, ultimate)


def fatigue() -> tuple[Row, ...]:
    """How often and where a shaft is loaded, and how safe that is."""
    return (
        Row(
            "fatigue.motion",
            "",
            "whether it swings or turns under its load, and is held against fatigue",
            Choice(("none", "swings", "turns"), default="none"),
        ),
        Row(
            "fatigue.bending_notch",
            "1",
            "stress concentration in bending where it is weakest",
            Measure(at_least=1.0, default="2.14"),
        ),
        Row(
            "fatigue.torsion_notch",
            "1",
            "stress concentration in torsion where it is weakest",
            Measure(at_least=1.0, default="3.0"),
        ),
        Row(
            "fatigue.ultimate",
            "Pa",
            "tensile strength",
            Measure(above=0.0),
            tensile_strength_of,
            {"material": "material"},
        ),
        Row(
            "fatigue.endurance",
            "Pa",
            "stress amplitude that it bears for ever",
            Measure(above=0.0),
            endurance_of,
            {"material": "material", "diameter": "diameter"},
            because="has no endurance limit in the tables: it is none of the steels",
        ),
        Row(
            "fatigue.diameter",
            "m",
            "diameter of the solid bar that is as strong",
            formula=solid_diameter,
            needs={"section_modulus": "section.section_modulus"},
        ),
        Row(
            "fatigue.safety",
            "1",
            "factor on the loads until it breaks by fatigue",
            formula=fatigue_safety,
            governs="least",
            needs={
                "motion": "fatigue.motion",
                "moment": "whole_moment",
                "torque": "torque",
                "diameter": "fatigue.diameter",
                "bending_notch": "fatigue.bending_notch",
                "torsion_notch": "fatigue.torsion_notch",
                "endurance": "fatigue.endurance",
                "ultimate": "fatigue.ultimate",
            },
            because="is not loaded",
        ),
        Row(
            "fatigue.least_safety",
            "1",
            "factor that is asked for",
            Measure(above=0.0),
            stated,
            {"limit": "limit.fatigue_safety"},
        ),
    )
