"""Factors of EN 1995-1-1 for duration of load, service class, creep and material.

`seen` in the comments: the value was read in a reprint; `memory`: as remembered.
"""

from collections.abc import Mapping
from types import MappingProxyType

DURATIONS = ("permanent", "long-term", "medium-term", "short-term", "instantaneous")
"""Classes of load duration, EN 1995-1-1:2004, 2.3.1.2: over 10 years, 6 months to 10 years,
a week to 6 months, under a week, instantaneous."""


def _by_duration(*values: float) -> Mapping[str, float]:
    return MappingProxyType(dict(zip(DURATIONS, values, strict=True)))


_DRY = _by_duration(0.60, 0.70, 0.80, 0.90, 1.10)
_OUTDOORS = _by_duration(0.50, 0.55, 0.65, 0.70, 0.90)
_PARTICLE = _by_duration(0.30, 0.45, 0.65, 0.85, 1.10)
_FIBRE = _by_duration(0.20, 0.40, 0.60, 0.80, 1.10)
_FIBRE_DAMP = _by_duration(0.20, 0.30, 0.45, 0.60, 0.80)
_STRAND = _by_duration(0.40, 0.50, 0.70, 0.90, 1.10)
_STRAND_DAMP = _by_duration(0.30, 0.40, 0.55, 0.70, 0.90)
_PARTICLE_DAMP = _by_duration(0.20, 0.30, 0.45, 0.60, 0.80)

MODIFICATION: Mapping[tuple[str, int], Mapping[str, float]] = MappingProxyType(
    {
        ("solid timber", 1): _DRY,  # seen
        ("solid timber", 2): _DRY,  # seen
        ("solid timber", 3): _OUTDOORS,  # seen
        ("plywood", 1): _DRY,  # seen
        ("plywood", 2): _DRY,  # seen
        ("plywood", 3): _OUTDOORS,  # seen
        ("particleboard", 1): _PARTICLE,  # seen, P4 and P5
        ("particleboard", 2): _PARTICLE_DAMP,  # memory, P5
        ("OSB", 1): _STRAND,  # memory, OSB/3 and OSB/4
        ("OSB", 2): _STRAND_DAMP,  # memory, OSB/3 and OSB/4
        ("MDF", 1): _FIBRE,  # seen
        ("MDF", 2): _FIBRE_DAMP,  # memory, MDF.HLS
    }
)
"""k_mod by material and service class, then by duration: EN 1995-1-1:2004, table 3.1."""

PARTIAL_FACTOR: Mapping[str, float] = MappingProxyType(
    {
        "solid timber": 1.3,  # seen
        "glulam": 1.25,  # seen
        "plywood": 1.2,  # seen
        "OSB": 1.2,  # seen
        "particleboard": 1.3,  # memory
        "MDF": 1.3,  # memory
        "connection": 1.3,  # memory
    }
)
"""gamma_M: EN 1995-1-1:2004, table 2.3."""

DEFORMATION: Mapping[tuple[str, int], float] = MappingProxyType(
    {
        ("solid timber", 1): 0.60,  # seen
        ("solid timber", 2): 0.80,  # seen
        ("solid timber", 3): 2.00,  # seen
        ("plywood", 1): 0.80,  # memory
        ("plywood", 2): 1.00,  # memory
        ("plywood", 3): 2.50,  # memory
        ("OSB", 1): 1.50,  # memory, OSB/3 and OSB/4
        ("OSB", 2): 2.25,  # memory, OSB/3 and OSB/4
        ("particleboard", 1): 2.25,  # memory, P4 and P5
        ("particleboard", 2): 3.00,  # memory, P5
        ("MDF", 1): 2.25,  # memory
        ("MDF", 2): 3.00,  # memory, MDF.HLS
    }
)
"""k_def by material and service class: EN 1995-1-1:2004, table 3.2."""
