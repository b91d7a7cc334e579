"""A slewing ring: a plate of panel that turns on a circle of bearings, held down by others."""

from reviewer.parts.figures import figure
from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.plate import plate_mass
from reviewer.parts.replacing import replacing
from reviewer.parts.ring_body import PLATE
from reviewer.parts.ring_damp import DAMP
from reviewer.parts.ring_forces import SOLUTION
from reviewer.parts.ring_hold import HOLD
from reviewer.parts.ring_rim import RIM
from reviewer.parts.ring_side import PATH, SIDE
from reviewer.parts.ring_strip import STRIP
from reviewer.parts.ring_track import TRACK
from reviewer.parts.ring_turning import TURNING
from reviewer.parts.roller_stiffness import ON_STRIP, REFERENCE, stiffness
from reviewer.parts.rollers import rollers

PLATE_MEASURES = ("plate.diameter", "plate.opening", "plate.thickness", "height")
ROLLER_MEASURES = ("circle", "count", "from", "outer_diameter", "width")
SHAPE = (
    *PLATE_MEASURES,
    *(f"carry.{key}" for key in ROLLER_MEASURES),
    *(f"hold_down.{key}" for key in (*ROLLER_MEASURES, "gap")),
    *("side.circle", "side.count", "side.bearing"),
)

SLEWING_RING = Kind(
    name="slewing_ring",
    says="a plate that turns on a circle of bearings",
    turns=True,
    rows=(
        *tree(),
        figure("slewing_ring", *SHAPE),
        *single(
            plate_mass,
            {"area": "plate.area", "thickness": "plate.thickness", "density": "plate.density"},
        ),
        *PLATE,
        *rollers("carry", "the carrying rollers"),
        *replacing("carry"),
        *rollers("hold_down", "the hold-downs", gap=True),
        *replacing("hold_down"),
        REFERENCE,
        *stiffness("carry", "the carrying rollers", ON_STRIP),
        *stiffness("hold_down", "the hold-downs"),
        *SIDE,
        *PATH,
        *SOLUTION,
        *TRACK,
        *HOLD,
        *RIM,
        *STRIP,
        *DAMP,
        *TURNING,
    ),
)
