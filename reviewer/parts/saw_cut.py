"""A saw cut: how high the blade must stand at its tilt, and the piece that is held."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.cutting import blade_height
from reviewer.mechanics.formula import Number
from reviewer.parts.cut_wood import one_that_is
from reviewer.parts.kind import Kind
from reviewer.parts.row import Count, Measure, PartName, Row, Text
from reviewer.parts.shop_facts import Cutters

SAW = "saw"


class Blade(NamedTuple):
    """The saw for a cut: its name, the depth that it cuts square to its table and its kerf [m]."""

    name: str
    depth: Number
    kerf: Number


def chosen_saw(cutters: Cutters | None, wanted: str | None) -> Blade | None:
    """The saw that is named, else the one that cuts deepest.

    The shop's file.
    """
    if cutters is None:
        return None
    saws = [each for each in cutters.all if each.shape == SAW and wanted in (None, each.name)]
    deepest = max(saws, key=lambda each: (not np.isnan(each.depth), each.depth), default=None)
    if deepest is None:
        return Blade("no saw of the shop", np.nan, np.nan)
    return Blade(deepest.name, deepest.depth, deepest.kerf)


def wanted_height(thickness: Number, tilt: Number, above: Number) -> Number:
    """How far the blade must stand out, measured along it, with its teeth above the wood.

    Geometry; how far teeth stand above the wood is common practice.
    """
    return blade_height(thickness, tilt) + above


def kerf_of(kerf: Any, own: Any) -> Any:
    """The saw's own kerf, else what the shop allows for one."""
    return np.where(np.isnan(own), kerf, own)


SAW_CUT = Kind(
    name="saw_cut",
    says="a cut with the saw, square or at an angle",
    carries_load=False,
    rows=(
        Row("of", "", "the part that is cut", PartName()),
        Row("count", "", "how many there are", Count(default=1)),
        Row(
            "thickness",
            "m",
            "thickness of the wood where it is cut",
            Measure(above=0.0, example="45 mm"),
            formula=one_that_is,
            needs={
                "own": "of.plate.thickness?",
                "first": "of.thickness?",
                "second": "of.board.thickness?",
            },
        ),
        Row("tilt", "rad", "tilt of the blade from square", Measure(at_least=0.0, default="0 deg")),
        Row(
            "mitre",
            "rad",
            "angle of the cut in plan, from square",
            Measure(at_least=0.0, default="0 deg"),
        ),
        Row(
            "piece",
            "m",
            "length of the piece that is held while it is cut",
            Measure(above=0.0, example="300 mm"),
        ),
        Row("saw", "", "the saw of the shop that is meant, if not the deepest", Text()),
        Row(
            "tool",
            "",
            "the saw",
            formula=chosen_saw,
            needs={"cutters": "shop.cutters?", "wanted": "saw?"},
        ),
        Row("tool.name", "text", "the saw", needs={"solution": "tool"}, take="name"),
        Row(
            "tool.depth",
            "m",
            "how deep that saw cuts, square to its table",
            needs={"solution": "tool"},
            take="depth",
            because="is unknown because the shop has no saw of known depth",
        ),
        Row("tool.kerf", "m", "kerf of that saw", needs={"solution": "tool"}, take="kerf"),
        Row(
            "kerf",
            "m",
            "what the cut takes away",
            formula=kerf_of,
            needs={"kerf": "shop.kerf", "own": "tool.kerf"},
        ),
        Row(
            "height",
            "m",
            "how far the blade must stand out, measured along it",
            formula=wanted_height,
            needs={"thickness": "thickness", "tilt": "tilt", "above": "limit.teeth_above_wood"},
        ),
    ),
)
