"""A slewing ring: a plate of panel that turns on a circle of bearings, held down by others."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.contact import contact_modulus, line_contact
from reviewer.mechanics.contact_yield import line_yield_force
from reviewer.mechanics.formula import Number
from reviewer.mechanics.rings import rim_play, stack_height, tilt_from_gaps
from reviewer.mechanics.track import FULL_PLASTIC, dent
from reviewer.parts.allowed import stated
from reviewer.parts.from_stock import across_strength_of, density_of, panel_modulus_mean
from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.plate import plate_mass
from reviewer.parts.ring_solution import solve_ring
from reviewer.parts.rollers import rollers
from reviewer.parts.row import Count, Flag, Measure, Row, Stock
from reviewer.stock.bearings import Bearing
from reviewer.stock.materials import Material

STEEL_MODULUS = 206e9  # Pa, bearing steel
STEEL_POISSON = 0.3


def ring_area(diameter: Number, opening: Number) -> Number:
    """Area of the plate less its opening.

    Geometry.
    """
    return np.pi * (diameter * diameter - opening * opening) / 4


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


def load_of_dent(strength: Number, length: Number, diameter: Number, depth: Number) -> Number:
    """Roller load that presses a mark of a given depth into the track, within a factor of two.

    Tabor, The Hardness of Metals (1951), from memory: constant pressure 3 Y over the chord.

    Notes
    -----
    3 Y L w, w = 2 sqrt(d h - h^2).
    """
    chord = 2 * np.sqrt(diameter * depth - depth * depth)
    return FULL_PLASTIC * strength * length * chord


class Weakest(NamedTuple):
    """The least of several capacities [N], and which it is."""

    load: Number
    name: Any


def weakest(bearing: Number, bolt: Number, track: Number, pull_through: Number | None) -> Weakest:
    """What a roller carries: the least of bearing, bolt, track and what holds it to its carrier.

    Statics; a chain is as strong as its weakest link.
    """
    names = ["bearing", "bolt", "track"]
    capacities = [bearing, bolt, track]
    if pull_through is not None:
        names.append("pull-through")
        capacities.append(pull_through)
    stacked = np.stack(np.broadcast_arrays(*capacities))
    least = np.argmin(stacked, axis=0)  # an unknown one comes first, and stays unknown
    return Weakest(np.min(stacked, axis=0), np.array(names)[least])


def dent_depth(
    force: Number, length: Number, diameter: Number, strength: Number, modulus: Number
) -> Number:
    """Depth of the mark that the busiest roller presses into its track, within a factor of two.

    Tabor, The Hardness of Metals (1951), from memory: constant pressure 3 Y over the chord.
    """
    return dent(force, length, diameter / 2, strength, modulus).depth


def free_rim(tilt: Number, reach: Number, circle: Number, count: int) -> Number:
    """How far the pressed rim moves down freely, until the hold-downs opposite stop the plate.

    Geometry.

    Notes
    -----
    tilt (r - D/2 cos(pi/n)).
    """
    return rim_play(tilt, reach, circle, count).sink


def height_of_stack(diameter: Number, thickness: Number, hold_diameter: Number | None) -> Number:
    """Height from the rollers' lower side to the top of what runs on the plate.

    Geometry.
    """
    return stack_height(diameter, thickness, 0.0 if hold_diameter is None else hold_diameter)


def rim_sink(sink: Number, tilt: Number, reach: Number) -> Number:
    """How far the rim sinks on the rollers' springs, the plate taken as rigid.

    Geometry. A lower bound: the plate's own bending adds to it.

    Notes
    -----
    Sink of the middle plus tilt times the reach.
    """
    return sink + tilt * reach


def span_over_thickness(spacing: Number, thickness: Number) -> Number:
    """Span of the plate between neighbouring rollers against its thickness.

    Geometry.
    """
    return spacing / thickness


def side_circle(diameter: Number, bearing: Bearing, gap: Number) -> Number:
    """Circle on which the axles of the side rollers stand, outside the plate's edge.

    Geometry.

    Notes
    -----
    D + d + 2 gap.
    """
    return diameter + bearing.outer + 2 * gap


SOLVED = {"solution": "rollers"}
TURNS_OVER = (
    "is unknown because the load leaves the circle of the rollers and nothing holds the far side"
    " down: the plate turns over"
)

PLATE = (
    Row("plate.material", "", "material of the plate", Stock("materials", example="birch plywood")),
    Row("plate.thickness", "m", "thickness of the plate", Measure(above=0.0, example="18 mm")),
    Row("plate.diameter", "m", "diameter of the plate", Measure(above=0.0, example="560 mm")),
    Row(
        "plate.opening",
        "m",
        "diameter of the opening in its middle",
        Measure(at_least=0.0, default="0 mm"),
    ),
    Row(
        "plate.rigid",
        "",
        "whether to take the plate as rigid and leave its own bending out",
        Flag(),
    ),
    Row(
        "plate.density",
        "kg/m^3",
        "density of the plate",
        formula=density_of,
        needs={"material": "plate.material"},
    ),
    Row(
        "plate.modulus",
        "Pa",
        "modulus of elasticity of the plate in bending",
        Measure(above=0.0),
        formula=panel_modulus_mean,
        needs={"material": "plate.material", "thickness": "plate.thickness"},
    ),
    Row(
        "plate.area",
        "m^2",
        "area of the plate",
        formula=ring_area,
        needs={"diameter": "plate.diameter", "opening": "plate.opening"},
    ),
    Row(
        "plate.radius",
        "m",
        "radius of the plate",
        formula=lambda diameter: diameter / 2,
        needs={"diameter": "plate.diameter"},
    ),
    Row(
        "plate.opening_radius",
        "m",
        "radius of the opening in the plate",
        formula=lambda diameter: diameter / 2,
        needs={"diameter": "plate.opening"},
    ),
    Row(
        "rim.radius",
        "m",
        "radius of the plate's edge",
        formula=lambda radius: radius,
        needs={"radius": "plate.radius"},
    ),
    Row(
        "half.radius",
        "m",
        "distance of the middle of one half of the plate",
        formula=lambda radius: 4 * radius / (3 * np.pi),
        needs={"radius": "plate.radius"},
    ),
)

SIDE = (
    Row(
        "side.bearing",
        "",
        "bearing of the side rollers, by standard size",
        Stock("bearings", example='"6000"'),
    ),
    Row("side.count", "", "how many side rollers centre the plate", Count(at_least=1, at_most=200)),
    Row(
        "side.gap",
        "m",
        "way before the side rollers touch the edge",
        Measure(at_least=0.0, default="0 mm", words=(("touching", "0 mm"),)),
    ),
    Row(
        "side.circle",
        "m",
        "diameter of the circle of the side rollers' axles",
        formula=side_circle,
        needs={"diameter": "plate.diameter", "bearing": "side.bearing", "gap": "side.gap"},
    ),
)

CONTACT = {"length": "carry.width", "diameter": "carry.outer_diameter", "modulus": "track.modulus"}

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
        needs={"strength": "track.strength", **CONTACT},
    ),
    Row(
        "contact.dent",
        "m",
        "depth of the mark under the busiest roller",
        formula=dent_depth,
        needs={"force": "carry.peak_load", "strength": "track.strength", **CONTACT},
    ),
    Row(
        "contact.allowed_dent",
        "m",
        "depth of mark that a track may have",
        Measure(above=0.0, example="0.1 mm"),
        formula=stated,
        needs={"limit": "limit.dent"},
    ),
)

SOLUTION = (
    Row(
        "rollers",
        "",
        "the forces between plate and rollers, found for the worst direction",
        formula=solve_ring,
        needs={
            "action": "action",
            "x": "place.x",
            "y": "place.y",
            "level": "level",
            **{f"carry_{key}": f"carry.{key}" for key in ("count", "circle", "stiffness", "from")},
            **{
                f"hold_{key}": f"hold_down.{key}?"
                for key in ("count", "circle", "stiffness", "from", "gap", "preload")
            },
        },
    ),
    Row(
        "carry.axial_load",
        "N",
        "vertical force on the ring, own weight included",
        needs=SOLVED,
        take="axial_load",
    ),
    Row("carry.moment", "N m", "overturning moment on the ring", needs=SOLVED, take="moment"),
    Row(
        "carry.peak_load",
        "N",
        "load on the busiest carrying roller",
        needs=SOLVED,
        take="carry_peak",
        because=TURNS_OVER,
    ),
    Row(
        "carry.least_load",
        "N",
        "load on the idlest carrying roller",
        needs=SOLVED,
        take="carry_least",
        governs="least",
        because=TURNS_OVER,
    ),
    Row(
        "carry.peak_direction",
        "rad",
        "azimuth of the load at which the busiest roller is busiest",
        needs=SOLVED,
        take="direction",
        because=TURNS_OVER,
    ),
    Row(
        "hold_down.peak_load",
        "N",
        "load on the busiest hold-down",
        needs=SOLVED,
        take="hold_peak",
        because=TURNS_OVER,
    ),
    Row(
        "uplift.force",
        "N",
        "sum of the forces on the hold-downs",
        needs=SOLVED,
        take="uplift",
        because=TURNS_OVER,
    ),
    Row(
        "sink",
        "m",
        "how far the plate's middle sinks on its rollers",
        needs=SOLVED,
        take="sink",
        because=TURNS_OVER,
    ),
    Row(
        "tilt",
        "rad",
        "how far the plate tilts on its rollers",
        needs=SOLVED,
        take="tilt",
        because=TURNS_OVER,
    ),
    Row(
        "rolling_over.moment",
        "N m",
        "moment that would turn the plate over the rollers",
        needs=SOLVED,
        take="turning_over",
    ),
    Row(
        "rolling_over.restoring_moment",
        "N m",
        "moment of its own weight against that",
        needs=SOLVED,
        take="restoring",
    ),
)

DERIVED = (
    Row(
        "carry.allowed_load",
        "N",
        "load that a carrying roller may take, its bearing or its bolt",
        Measure(above=0.0),
        formula=lambda bearing, bolt: np.minimum(bearing, bolt),
        needs={"bearing": "carry.bearing_capacity", "bolt": "carry.bolt_capacity"},
    ),
    Row(
        "hold_down.pull_through",
        "N",
        "load that pulls a hold-down's fastening out of what carries it",
        Measure(above=0.0, example="900 N"),
    ),
    Row(
        "hold_down.track_capacity",
        "N",
        "hold-down load that presses the allowed mark into the plate",
        formula=load_of_dent,
        needs={
            "strength": "track.strength",
            "length": "hold_down.width",
            "diameter": "hold_down.outer_diameter",
            "depth": "contact.allowed_dent",
        },
    ),
    Row(
        "hold_down.weakest",
        "",
        "what gives way first at a hold-down",
        formula=weakest,
        needs={
            "bearing": "hold_down.bearing_capacity",
            "bolt": "hold_down.bolt_capacity",
            "track": "hold_down.track_capacity",
            "pull_through": "hold_down.pull_through?",
        },
    ),
    Row(
        "hold_down.allowed_load",
        "N",
        "load that a hold-down may take",
        Measure(above=0.0),
        needs={"solution": "hold_down.weakest"},
        take="load",
    ),
    Row(
        "hold_down.limited_by",
        "text",
        "what limits that load",
        needs={"solution": "hold_down.weakest"},
        take="name",
    ),
    Row(
        "carry.span_ratio",
        "1",
        "span between rollers against the plate's thickness",
        formula=span_over_thickness,
        needs={"spacing": "carry.spacing", "thickness": "plate.thickness"},
    ),
    Row(
        "play.tilt",
        "rad",
        "angle that the plate can tilt freely in the gap of its hold-downs",
        formula=tilt_from_gaps,
        needs={
            "gap_up": "hold_down.gap",
            "gap_down": "carry.gap",
            "carry_circle": "carry.circle",
            "carry_count": "carry.count",
            "hold_circle": "hold_down.circle",
            "hold_count": "hold_down.count",
        },
    ),
    Row(
        "play.rim",
        "m",
        "free play down at the farthest rim",
        formula=free_rim,
        needs={
            "tilt": "play.tilt",
            "reach": "reach.radius",
            "circle": "carry.circle",
            "count": "carry.count",
        },
    ),
    Row("carry.gap", "m", "own weight keeps the carrying rollers touching", formula=lambda: 0.0),
    Row(
        "play.allowed",
        "m",
        "free play that the rim may have",
        Measure(above=0.0, example="3 mm"),
        formula=stated,
        needs={"limit": "limit.rim_play"},
    ),
    Row(
        "rim_sink",
        "m",
        "how far the farthest rim sinks on the rollers, plate rigid",
        formula=rim_sink,
        needs={"sink": "sink", "tilt": "tilt", "reach": "reach.radius"},
    ),
    Row(
        "height",
        "m",
        "height from the carrier to the top of the plate",
        Measure(at_least=0.0),
        formula=height_of_stack,
        needs={
            "diameter": "carry.outer_diameter",
            "thickness": "plate.thickness",
            "hold_diameter": "hold_down.outer_diameter?",
        },
    ),
)

SLEWING_RING = Kind(
    name="slewing_ring",
    says="a plate that turns on a circle of bearings",
    turns=True,
    rows=(
        *tree(),
        *single(
            plate_mass,
            {"area": "plate.area", "thickness": "plate.thickness", "density": "plate.density"},
        ),
        *PLATE,
        *rollers("carry", "the carrying rollers"),
        *rollers("hold_down", "the hold-downs", gap=True),
        *SIDE,
        *SOLUTION,
        *TRACK,
        *DERIVED,
    ),
)
