"""What rules may be for beside the kinds of part: the design, a measurement, any part at all."""

from collections.abc import Mapping
from types import MappingProxyType

from reviewer.parts.any_part import ANY
from reviewer.parts.facts import FACTS
from reviewer.parts.kind import Kind
from reviewer.parts.measurement import MEASUREMENT

RULED: Mapping[str, Kind] = MappingProxyType(
    {kind.name: kind for kind in (FACTS, MEASUREMENT, ANY)}
)
