"""The kinds of part that a design may use."""

from collections.abc import Mapping

from reviewer.parts.arm import ARM
from reviewer.parts.base import BASE
from reviewer.parts.clamp import CLAMP
from reviewer.parts.gap import GAP
from reviewer.parts.kind import Kind
from reviewer.parts.register import register
from reviewer.parts.shaft import SHAFT
from reviewer.parts.skirt import SKIRT
from reviewer.parts.slewing_ring import SLEWING_RING
from reviewer.parts.top import TOP
from reviewer.parts.tray import TRAY

KINDS: Mapping[str, Kind] = register((ARM, BASE, CLAMP, GAP, SHAFT, SKIRT, SLEWING_RING, TOP, TRAY))
