"""How much a roller gives way: its track, its bearing and its bolt, one after the other."""

from collections.abc import Mapping
from typing import Any

import numpy as np

from reviewer.mechanics.bolt_limits import bolt_stiffness
from reviewer.mechanics.formula import Number
from reviewer.mechanics.rollers import radial_approach, roller_stiffness
from reviewer.mechanics.strip import decay
from reviewer.mechanics.track import secant_stiffness, track_approach
from reviewer.parts.row import Measure, Row
from reviewer.stock.bearings import Bearing
from reviewer.stock.materials import Material

SETTLED = 2e6  # N/m, per roller on a wooden track where it cannot be derived; common practice
LEAST_LOAD = 10.0  # N, below which no stiffness of a contact is asked for


def reference_load(force: Number, count: int) -> Number:
    """Load of a carrying roller at which its stiffness is taken: its mean share, heaviest case.

    Common practice. The peak would lead back to the stiffness; near it a contact is stiffer.

    Notes
    -----
    W / n, and 10 N at least.
    """
    known = np.where(np.isnan(force), 0.0, force)
    mean: Number = np.maximum(np.max(known, axis=-1, keepdims=True) / count, LEAST_LOAD)
    return mean


def stiffness_of_track(
    load: Number,
    length: Number,
    diameter: Number,
    modulus: Number,
    thickness: Number,
    strip: Material | None = None,
    strip_thickness: Number = np.nan,
    strip_stiffness: Number = np.nan,
    bed: Number = np.nan,
) -> Number:
    """Stiffness of a steel roller on its track, from nothing to the reference load.

    Johnson, Contact Mechanics (1985), equation 4.57; a strip sinks as well, Hetenyi, Beams on
    Elastic Foundation (1946), 2.

    Notes
    -----
    F / approach; with a strip in series with 2 k / lambda. While elastic; wood scatters by a third.
    """
    layer = thickness if strip is None else strip_thickness
    face = secant_stiffness(load, track_approach(load, length, diameter / 2, modulus, layer))
    if strip is None:
        return face
    return 1 / (1 / face + decay(bed, strip_stiffness) / (2 * bed))


def stiffness_of_bearing(load: Number, bearing: Bearing) -> Number:
    """Radial stiffness of the bearing, from nothing to the reference load.

    Palmgren, Ball and Roller Bearing Engineering (1959); from memory.

    Notes
    -----
    F / approach. A bearing whose balls are not in the tables is taken as stiff: of a roller on
    wood, it is a small part.
    """
    if bearing.balls is None or np.isnan(bearing.ball_diameter):
        return np.inf + 0.0 * load
    return secant_stiffness(load, radial_approach(load, bearing.balls, bearing.ball_diameter))


def stiffness_in_series(
    rigid: bool, track: Number | None, bearing: Number | None, bolt: Number | None
) -> Number:
    """Stiffness of a roller: track, bearing and bolt in series.

    Statics; 2 kN/mm, common practice, where the track is not known or the plate is to be rigid.

    Notes
    -----
    1/k = 1/k_track + 1/k_bearing + 1/k_bolt.
    """
    if rigid or track is None or bearing is None or bolt is None:
        return SETTLED
    series = roller_stiffness(track, bearing, bolt)
    return np.where(np.isnan(series), SETTLED, series)


REFERENCE = Row(
    "roller.reference_load",
    "N",
    "load at which the stiffness of the rollers is taken",
    formula=reference_load,
    needs={"force": "bears.force", "count": "carry.count"},
)


FACE = {"length": "{}.width", "modulus": "track.modulus"}
ON_STRIP = {
    "length": "contact.length",
    "modulus": "contact.modulus",
    "strip": "track.strip.material?",
    "strip_thickness": "track.strip.thickness",
    "strip_stiffness": "strip.stiffness",
    "bed": "strip.bed",
}


def stiffness(group: str, what: str, track: Mapping[str, str] = FACE) -> tuple[Row, ...]:
    """Stiffness of one group of rollers and of what it is made up of."""
    load: dict[str, Any] = {"load": "roller.reference_load"}
    return (
        Row(
            f"{group}.track_stiffness",
            "N/m",
            f"stiffness of the plate's face under one of {what}",
            formula=stiffness_of_track,
            needs={
                **load,
                **{key: need.format(group) for key, need in track.items()},
                "diameter": f"{group}.outer_diameter",
                "thickness": "plate.thickness",
            },
            governs="least",
        ),
        Row(
            f"{group}.bearing_stiffness",
            "N/m",
            f"radial stiffness of the bearing of {what}",
            formula=stiffness_of_bearing,
            needs={**load, "bearing": f"{group}.bearing"},
            governs="least",
        ),
        Row(
            f"{group}.bolt_stiffness",
            "N/m",
            f"stiffness of the bolt of one of {what} where the bearing sits",
            formula=bolt_stiffness,
            needs={"overhang": f"{group}.overhang", "diameter": f"{group}.bolt_diameter"},
            governs="least",
        ),
        Row(
            f"{group}.stiffness",
            "N/m",
            f"stiffness of one of {what} on its track",
            Measure(above=0.0, example="2 kN/mm"),
            formula=stiffness_in_series,
            needs={
                "rigid": "plate.rigid",
                "track": f"{group}.track_stiffness?",
                "bearing": f"{group}.bearing_stiffness?",
                "bolt": f"{group}.bolt_stiffness?",
            },
            governs="least",
        ),
    )
