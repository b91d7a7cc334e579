"""What a design came to, as plain data that can go to another process, or be kept."""

from dataclasses import dataclass, field
from typing import Any

from reviewer.reading.noted import Noted


@dataclass(frozen=True, slots=True)
class Done:
    """What a design came to: its piece of each report, what is told of it, and the exit status.

    `once` are problems of packs and shops, which are told once however many designs have them.
    `read` is what was read for it beside itself; `is_dated` tells that it depends on the day.
    """

    path: str
    status: int
    pieces: tuple[Any, ...]
    told: tuple[str, ...] = ()
    once: tuple[str, ...] = ()
    read: Noted = field(default_factory=dict)
    is_dated: bool = False
