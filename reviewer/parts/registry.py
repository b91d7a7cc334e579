"""The kinds of part that a design may use."""

from collections.abc import Mapping

from reviewer.parts.arm import ARM
from reviewer.parts.base import BASE
from reviewer.parts.bolted_joint import BOLTED_JOINT
from reviewer.parts.clamp import CLAMP
from reviewer.parts.constraint import CONSTRAINT
from reviewer.parts.divided_circle import DIVIDED_CIRCLE
from reviewer.parts.drive_plate import DRIVE_PLATE
from reviewer.parts.frame import FRAME
from reviewer.parts.gap import GAP
from reviewer.parts.glued_ring import GLUED_RING
from reviewer.parts.guide import GUIDE
from reviewer.parts.hub import HUB
from reviewer.parts.kind import Kind
from reviewer.parts.lever import LEVER
from reviewer.parts.lining_up import LINING_UP
from reviewer.parts.moves import MOVE, ROTATION
from reviewer.parts.moving_pair import MOVING_PAIR
from reviewer.parts.opening import OPENING
from reviewer.parts.panel import PANEL
from reviewer.parts.ramp import RAMP
from reviewer.parts.register import register
from reviewer.parts.router_cut import ROUTER_CUT
from reviewer.parts.saw_cut import SAW_CUT
from reviewer.parts.seam import SEAM
from reviewer.parts.shaft import SHAFT
from reviewer.parts.skirt import SKIRT
from reviewer.parts.slewing_ring import SLEWING_RING
from reviewer.parts.stop import STOP
from reviewer.parts.top import TOP
from reviewer.parts.travel import TRAVEL
from reviewer.parts.tray import TRAY

KINDS: Mapping[str, Kind] = register(
    (
        ARM,
        BASE,
        BOLTED_JOINT,
        CLAMP,
        CONSTRAINT,
        DIVIDED_CIRCLE,
        DRIVE_PLATE,
        FRAME,
        GAP,
        GLUED_RING,
        GUIDE,
        HUB,
        LEVER,
        MOVE,
        MOVING_PAIR,
        LINING_UP,
        OPENING,
        PANEL,
        RAMP,
        SEAM,
        ROUTER_CUT,
        SAW_CUT,
        ROTATION,
        SHAFT,
        SKIRT,
        SLEWING_RING,
        STOP,
        TOP,
        TRAVEL,
        TRAY,
    )
)
