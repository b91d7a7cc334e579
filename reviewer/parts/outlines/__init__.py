"""What the kinds' own measures say of their shape; loaded where shapes are drawn or move."""

from collections.abc import Mapping

from reviewer.parts.figures import Maker
from reviewer.parts.outlines.bars import arm, guide, lever, ramp, shaft, skirt
from reviewer.parts.outlines.flat import board, drive_plate, top, tray
from reviewer.parts.outlines.ring import hub, slewing_ring
from reviewer.parts.outlines.standing import base, frame, opening

MAKERS: Mapping[str, Maker] = {
    "arm": arm,
    "base": base,
    "drive_plate": drive_plate,
    "frame": frame,
    "guide": guide,
    "hub": hub,
    "lever": lever,
    "opening": opening,
    "panel": board,
    "ramp": ramp,
    "shaft": shaft,
    "skirt": skirt,
    "slewing_ring": slewing_ring,
    "top": top,
    "tray": tray,
}
"""Who makes the shape of a kind, by the name under which the kind's row asks for it."""
