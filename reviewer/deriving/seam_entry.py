"""What the parts on both sides of a seam bring to it: growth, sag, and how they are carried.

What carries both sides moves both alike and makes no step. So only what carries one of them alone
counts: a ring that tilts, a lift that comes late.
"""

from typing import Any

import numpy as np

from reviewer.deriving.tree import Built, Needs, Tree
from reviewer.parts.seam_sums import ALONG, Sides
from reviewer.reading.design import Design, Part

PATH = "sides"
SEAM = "seam"
GROWTH = ("movement.damp", "movement.dry", "swelling.damp", "swelling.dry")
SAGS = {
    "tray": ("side.sag", "edge_sag"),
    "top": ("edge_sag",),
    "panel": ("sag",),
    "skirt": ("sag",),
}
SOLID = "movement.solid"
TIP = "tip_deflection"
BELOW = {"tilt": "rim_sink", "play": "play.rim", "lag": "lag"}
RIM = "rim.radius"


def entry(owner: Part, tree: Tree) -> Built:
    """What both sides bring to a seam; of one part named alone, its neighbour is one like it."""
    names = owner.given["between"].value if "between" in owner.given else ()
    if not names:
        return _nothing, {"between": "between"}
    known = [tree.design.parts[name] for name in names]
    sides = known if len(known) > 1 else known * 2
    needs: Needs = {"meets": "meets"}
    for index, side in enumerate(sides):
        for path in (*GROWTH, SOLID, *_sags(side), RIM):
            if path in side.kind.by_path:
                needs[f"{path}_{index}".replace(".", "_")] = (side.name, path)
        needs[f"sheet_{index}"] = (side.name, "sheet?")
        for arm in _carriers(side, tree, TIP):
            needs[f"tip_{index}"] = (arm, TIP)
    for key, path in BELOW.items():
        for index, name in enumerate(_alone(sides, tree, path)):
            needs[f"{key}_{index}"] = (name, path)
    told = [thickness_off(side, tree.design) for side in sides]

    def both(**found: Any) -> Sides:
        """Half of each side's growth, of solid wood none along its grain; the greater sag.

        Geometry.
        """
        return _both(found, told)

    return both, needs


def _nothing(between: Any) -> None:
    """A seam of which no side is named."""


def _sags(side: Part) -> tuple[str, ...]:
    return SAGS.get(side.kind.name, ())


def _both(found: dict[str, Any], told: list[float | None]) -> Sides:
    grown = {path: [_of(found, path, index) for index in (0, 1)] for path in GROWTH}
    still = [found["meets"] == ALONG and _of(found, SOLID, index) for index in (0, 1)]
    damp, dry = (
        sum(0.0 if held else each for held, each in zip(still, grown[path], strict=True)) / 2
        for path in GROWTH[:2]
    )
    thick_damp, thick_dry = (np.abs(grown[path][0] - grown[path][1]) for path in GROWTH[2:])
    below = {
        key: sum(value for name, value in found.items() if name.startswith(f"{key}_"))
        for key in BELOW
    }
    return Sides(
        damp,
        dry,
        thick_damp,
        thick_dry,
        np.maximum(*(_sag(found, index) for index in (0, 1))),
        below["tilt"],
        below["play"],
        below["lag"],
        tuple(_off(found.get(f"sheet_{at}"), error) for at, error in enumerate(told)),
        np.maximum(*(_of(found, RIM, index) for index in (0, 1))),
    )


def _of(found: dict[str, Any], path: str, index: int) -> Any:
    return found.get(f"{path}_{index}".replace(".", "_"), 0.0)


def _sag(found: dict[str, Any], index: int) -> Any:
    """How far one side sinks: its own edge, and the tip of the arm that carries it."""
    edges = [_of(found, path, index) for path in ("side.sag", "edge_sag", "sag")]
    return np.maximum(np.maximum(edges[0], edges[1]), edges[2]) + found.get(f"tip_{index}", 0.0)


def _off(sheet: Any, told: float | None) -> Any:
    """How far a thickness may be off: by the file's own limits, else by the sheet's band."""
    if told is not None:
        return told
    return np.nan if sheet is None else (sheet.high - sheet.low) / 2


def bands(design: Design) -> tuple[tuple[float | None, ...], ...]:
    """What a file says of thicknesses that the plan of its seams holds: part of its structure."""
    return tuple(
        tuple(thickness_off(design.parts[each], design) for each in part.given["between"].value)
        for _, part in sorted(design.parts.items())
        if part.kind.name == SEAM and "between" in part.given
    )


def thickness_off(side: Part, design: Design) -> float | None:
    """Half of the band that the file gives to the thickness of a side, if it gives one."""
    part, path = design.source(side.name, "thickness")
    given = design.parts[part].given.get(path)
    band = given.quantity if given is not None else None
    return (band.high - band.low) / 2 if band is not None and band.high > band.low else None


def _carriers(side: Part, tree: Tree, path: str) -> list[str]:
    """What carries a side at once and has a quantity."""
    parts = tree.design.parts
    return [name for name in side.carried_by if path in parts[name].kind.by_path]


def _alone(sides: list[Part], tree: Tree, path: str) -> list[str]:
    """What carries one of the sides, at once or farther down, and not the other."""
    below = [tree.below(side.name) | {side.name} for side in sides]
    parts = tree.design.parts
    apart = sorted(below[0] ^ below[1])
    return [name for name in apart if name in parts and path in parts[name].kind.by_path]
