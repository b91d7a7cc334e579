"""A slewing ring: a plate of panel that turns on a circle of bearings, held down by others."""

from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.plate import plate_mass
from reviewer.parts.ring_body import PLATE
from reviewer.parts.ring_forces import SOLUTION
from reviewer.parts.ring_hold import HOLD
from reviewer.parts.ring_rim import RIM
from reviewer.parts.ring_side import SIDE
from reviewer.parts.ring_track import TRACK
from reviewer.parts.roller_stiffness import REFERENCE, stiffness
from reviewer.parts.rollers import rollers

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
        REFERENCE,
        *stiffness("carry", "the carrying rollers"),
        *stiffness("hold_down", "the hold-downs"),
        *SIDE,
        *SOLUTION,
        *TRACK,
        *HOLD,
        *RIM,
    ),
)
