"""How long loads last: what wood may carry meanwhile, and how it creeps."""

from typing import Any

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.resultant import Action
from reviewer.mechanics.wood import creep_deflection
from reviewer.mechanics.wood_factors import DEFORMATION, DURATIONS, MODIFICATION
from reviewer.parts.from_stock import LOAD_FACTOR, YIELD_MARGIN
from reviewer.parts.groups import same
from reviewer.parts.row import Count, Measure, Row
from reviewer.stock.materials import Material

OF_WOOD = ("wood", "plywood", "panel")
CREEP_OF_PLASTIC = 2.0  # a lasting load needs a third of the modulus: three times the deflection


def shortest_duration(cases: Any) -> list[str]:
    """The class of the shortest load in each case, which is the one that counts.

    EN 1995-1-1:2004, 3.1.3(2); own weight alone is permanent.
    """
    order = np.zeros(len(cases.names), dtype=int)
    for load, factors in cases.factors.items():
        place = DURATIONS.index(cases.durations[load])
        order = np.maximum(order, np.where(factors != 0.0, place, 0))
    return [DURATIONS[place] for place in order]


def modification_of(material: Material, cases: Any, service_class: int) -> Number:
    """Factor of duration and dampness on the strength of wood, in each case; of others one.

    EN 1995-1-1:2004, table 3.1.
    """
    if material.family not in OF_WOOD:
        return 1.0
    factors = MODIFICATION.get((material.duration_class, service_class))
    if factors is None:
        return np.nan
    return np.array([[factors[each] for each in shortest_duration(cases)]])


def allowed_stress(material: Material, modification: Number) -> Number:
    """Bending stress that a service load may cause, for as long as it lasts.

    Wood: EN 1995-1-1, f_k k_mod / (gamma_M gamma_Q). Metal, plastic: yield / 1.5, common practice.

    Notes
    -----
    gamma_Q = 1.5; of a mean, its lower 5 % is f_k.
    """
    if material.family not in OF_WOOD:
        return material.yield_strength / YIELD_MARGIN * modification
    low, _ = material.range_of("bending_strength")
    return low * modification / (material.partial_factor * LOAD_FACTOR)


def deformation_of(material: Material, service_class: int) -> Number:
    """Growth of a deflection over the years under a load that stays, over the deflection at once.

    EN 1995-1-1:2004, table 3.2; plastic: a third of the modulus, common practice; metal none.
    """
    if material.family == "metal":
        return 0.0
    if material.family == "plastic":
        return CREEP_OF_PLASTIC
    return DEFORMATION.get((material.duration_class, service_class), np.nan)


def lasting_share(action: Action) -> Number:
    """Share of all that it bears that lies there for good, its own weight with it.

    EN 1990, table A1.1, psi_2, from memory.
    """
    total = action.total.force
    loaded = np.not_equal(total, 0.0)
    share: Number = np.where(loaded, action.lasting.force / np.where(loaded, total, 1.0), 1.0)
    return np.clip(share, 0.0, 1.0)


def after_years(at_once: Number, share: Number, deformation: Number) -> Number:
    """Deflection after years.

    EN 1995-1-1:2004, 2.2.3.

    Notes
    -----
    w (1 + k_def s), s the share of the load that lies there for good.
    """
    return creep_deflection(share * at_once, (1.0 - share) * at_once, deformation, 0.0)


def strength_in_time() -> tuple[Row, ...]:
    """Dampness and duration, and the stress that the material may carry for as long."""
    material = {"material": "material"}
    return (
        Row(
            "service_class",
            "",
            "service class of EN 1995-1-1: 1 dry, 2 damp under a roof, 3 in the open",
            Count(at_least=1, at_most=3),
            formula=same,
            needs={"place": "design.service_class"},
        ),
        Row(
            "modification",
            "1",
            "factor of duration and dampness on the strength of wood",
            Measure(above=0.0, at_most=1.2),
            formula=modification_of,
            needs={**material, "cases": "design.cases", "service_class": "service_class"},
            because="has no factor for this material and service class in EN 1995-1-1, table 3.1",
            governs="least",
        ),
        Row(
            "allowed_stress",
            "Pa",
            "bending stress that its material may carry",
            formula=allowed_stress,
            needs={**material, "modification": "modification"},
            governs="least",
        ),
    )


def creep(deflection: str, says: str) -> tuple[Row, ...]:
    """What a deflection becomes over the years."""
    return (
        Row(
            "lasting_share",
            "1",
            "share of all that it bears that lies there for good",
            Measure(at_least=0.0, at_most=1.0),
            formula=lasting_share,
            needs={"action": "action"},
        ),
        Row(
            "creep",
            "1",
            "growth of a deflection over the years under a load that stays",
            Measure(at_least=0.0),
            formula=deformation_of,
            needs={"material": "material", "service_class": "service_class"},
            because="has no factor for this material and service class in EN 1995-1-1, table 3.2",
        ),
        Row(
            "lasting_sag",
            "m",
            says,
            formula=after_years,
            needs={"at_once": deflection, "share": "lasting_share", "deformation": "creep"},
        ),
    )
