"""The track of a slewing ring: steel rollers on the face of the plate."""

import numpy as np

from reviewer.mechanics.contact import contact_modulus, line_contact
from reviewer.mechanics.contact_yield import line_shakedown_force, line_yield_force
from reviewer.mechanics.formula import Number
from reviewer.mechanics.resultant import Action
from reviewer.mechanics.track import dent
from reviewer.parts.allowed import stated
from reviewer.parts.from_stock import across_strength_of
from reviewer.parts.row import Measure, Row
from reviewer.stock.materials import Material

STEEL_MODULUS = 206e9  # Pa, bearing steel
STEEL_POISSON = 0.3


def contact_modulus_on(material: Material) -> Number:
    """Effective modulus of a steel roller on the face of the plate.

    Johnson, Contact Mechanics (1985), equation 4.8.

    Notes
    -----
    1/E* = (1 - nu1^2)/E1 + (1 - nu2^2)/E2, with the plate's modulus through its thickness.
    """
    return contact_modulus(STEEL_MODULUS, STEEL_POISSON, material.modulus_through, 0.3)


def contact_pressure(force: Number, length: Number, diameter: Number, modulus: Number) -> Number:
    """Peak Hertz pressure under the busiest roller.

    Johnson, Contact Mechanics (1985), 4.2(c).

    Notes
    -----
    sqrt(F E* / (pi L R)).
    """
    return line_contact(force, length, diameter / 2, modulus).pressure


def first_yield(strength: Number, length: Number, diameter: Number, modulus: Number) -> Number:
    """Roller load at which the track first yields.

    Johnson, Contact Mechanics (1985), 6.2.

    Notes
    -----
    Where p0 = 1.67 Y.
    """
    return line_yield_force(strength, length, diameter / 2, modulus)


def lasting_load(action: Action, count: int) -> Number:
    """Load of a carrying roller under what lies on the ring for good: its mean share.

    EN 1990, table A1.1, psi_2, from memory; statics.
    """
    return action.lasting.force / count


def shakedown(strength: Number, length: Number, diameter: Number, modulus: Number) -> Number:
    """Roller load below which a rut stops growing.

    Johnson, Contact Mechanics (1985), 9.2 (p0 = 4 k); from memory. For metals: wood creeps as well.

    Notes
    -----
    Where p0 = 2 Y.
    """
    return line_shakedown_force(strength, length, diameter / 2, modulus)


def dent_depth(
    force: Number, length: Number, diameter: Number, strength: Number, modulus: Number
) -> Number:
    """Depth of the mark that the busiest roller presses into its track, within a factor of two.

    Tabor, The Hardness of Metals (1951), from memory: constant pressure 3 Y over the chord.
    """
    return dent(force, length, diameter / 2, strength, modulus).depth


def span_over_thickness(spacing: Number, thickness: Number) -> Number:
    """Span of the plate between neighbouring rollers against its thickness.

    Geometry.
    """
    return spacing / thickness


def of_what_it_runs_on(plate: Number, strip: Material | None) -> Number:
    """Effective modulus of a carrying roller on the strip where there is one, else on the plate.

    Johnson, Contact Mechanics (1985), equation 4.8.
    """
    return plate if strip is None else contact_modulus_on(strip)


def strength_of_what_it_runs_on(plate: Number, strip: Material | None) -> Number:
    """Compression strength of the strip where there is one, else of the plate through its face.

    The stock row's own source.
    """
    return plate if strip is None else across_strength_of(strip)


def contact_length(roller: Number, strip: Number | None) -> Number:
    """Length of a carrying roller that touches its track.

    Geometry.

    Notes
    -----
    The least of the widths of roller and strip.
    """
    return roller if strip is None else np.minimum(roller, strip)


CONTACT = {
    "length": "contact.length",
    "diameter": "carry.outer_diameter",
    "modulus": "contact.modulus",
}

TRACK = (
    Row(
        "track.modulus",
        "Pa",
        "effective modulus of a steel roller on the plate's face",
        Measure(above=0.0),
        formula=contact_modulus_on,
        needs={"material": "plate.material"},
    ),
    Row(
        "track.strength",
        "Pa",
        "compression strength of the plate through its face",
        Measure(above=0.0),
        formula=across_strength_of,
        needs={"material": "plate.material"},
    ),
    Row(
        "contact.length",
        "m",
        "length of a carrying roller that touches its track",
        formula=contact_length,
        needs={"roller": "carry.width", "strip": "track.strip.width?"},
    ),
    Row(
        "contact.modulus",
        "Pa",
        "effective modulus of a steel roller on what it runs on",
        formula=of_what_it_runs_on,
        needs={
            "plate": "track.modulus",
            "strip": "track.strip.material?",
        },
    ),
    Row(
        "contact.strength",
        "Pa",
        "compression strength of what the carrying rollers run on",
        formula=strength_of_what_it_runs_on,
        needs={"plate": "track.strength", "strip": "track.strip.material?"},
    ),
    Row(
        "contact.pressure",
        "Pa",
        "peak pressure under the busiest roller",
        formula=contact_pressure,
        needs={"force": "carry.peak_load", **CONTACT},
    ),
    Row(
        "contact.yield_load",
        "N",
        "roller load at which the track first yields",
        formula=first_yield,
        needs={"strength": "contact.strength", **CONTACT},
    ),
    Row(
        "roller.lasting_load",
        "N",
        "load of a carrying roller under what lies on the ring for good",
        formula=lasting_load,
        needs={"action": "action", "count": "carry.count"},
    ),
    Row(
        "contact.shakedown_load",
        "N",
        "roller load below which a rut stops growing, however often it is rolled over",
        formula=shakedown,
        needs={"strength": "contact.strength", **CONTACT},
    ),
    Row(
        "contact.dent",
        "m",
        "depth of the mark under the busiest roller",
        formula=dent_depth,
        needs={"force": "carry.peak_load", "strength": "contact.strength", **CONTACT},
    ),
    Row(
        "contact.allowed_dent",
        "m",
        "depth of mark that a track may have",
        Measure(above=0.0, example="0.1 mm"),
        formula=stated,
        needs={"limit": "limit.dent"},
    ),
    Row(
        "carry.allowed_load",
        "N",
        "load that a carrying roller may take, its bearing or its bolt",
        Measure(above=0.0),
        formula=lambda bearing, bolt: np.minimum(bearing, bolt),
        needs={"bearing": "carry.bearing_capacity", "bolt": "carry.bolt_capacity"},
    ),
    Row(
        "carry.span_ratio",
        "1",
        "span between rollers against the plate's thickness",
        formula=span_over_thickness,
        needs={"spacing": "carry.spacing", "thickness": "plate.thickness"},
    ),
)
