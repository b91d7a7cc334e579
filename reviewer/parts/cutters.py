"""Which of a shop's cutters takes a cut, and how far it reaches."""

from collections.abc import Iterable
from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.cutting import cutter_reach
from reviewer.mechanics.formula import Number
from reviewer.parts.row import Row, Text
from reviewer.parts.shop_facts import Cutter, Cutters

ROUTER_SHAPES = ("straight", "ball nose", "vee", "rebate", "round over")
SHANKS_HELD = 2.0  # common practice: the collet holds two diameters of a shank or more
UNKNOWN = np.nan


class Chosen(NamedTuple):
    """The cutter for a cut: its name, and its measures [m]; of none all of them unknown."""

    name: str
    diameter: Number
    cutting_length: Number
    length: Number
    shank: Number
    reach: Number


NONE = Chosen("no cutter of the shop", UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN)


def chosen_cutter(
    cutters: Cutters | None,
    wanted: str | None,
    depth: Number,
    width: Number | None,
    corner: Number | None,
    collet: Number,
) -> Chosen | None:
    """The cutter that is named; else of those narrow enough the widest that reaches deep enough.

    Geometry. Where none reaches, the one that reaches deepest. A narrow cutter bends and heats more
    than a wide one.
    """
    if cutters is None:
        return None
    able = [each for each in cutters.all if each.shape in ROUTER_SHAPES]
    if wanted is not None:
        found = next((each for each in able if each.name == wanted), None)
        return NONE if found is None else _as_chosen(found, width, collet)
    fitting = [
        _as_chosen(each, width, collet)
        for each in able
        if each.shape == "straight" and _is_narrow(each, width, corner)
    ]
    return _best(fitting, depth)


def narrowest(cutters: Cutters | None) -> float:
    """Diameter of the narrowest straight cutter of the shop.

    The shop's file.
    """
    found = [each.diameter for each in cutters.all if each.shape == "straight"] if cutters else []
    return min((each for each in found if not np.isnan(each)), default=UNKNOWN)


def _is_narrow(cutter: Cutter, width: Number | None, corner: Number | None) -> bool:
    """Whether a cutter goes into a width, and round its inner corners, at the nominal sample."""
    most = [_first(each) for each in (width, None if corner is None else 2 * corner)]
    return all(np.isnan(each) or cutter.diameter <= each * (1 + 1e-9) for each in most)


def _first(value: Number | None) -> float:
    return UNKNOWN if value is None else float(np.ravel(value)[0])


def _as_chosen(cutter: Cutter, width: Number | None, collet: Number) -> Chosen:
    held = np.where(np.isnan(collet), SHANKS_HELD * cutter.shank, collet)
    at_shank = cutter.diameter if width is None else width
    out = cutter_reach(cutter.cutting_length, cutter.length, cutter.shank, at_shank, held)
    reach = np.where(np.isnan(out), cutter.cutting_length, out)
    return Chosen(
        cutter.name, cutter.diameter, cutter.cutting_length, cutter.length, cutter.shank, reach
    )


def _best(fitting: Iterable[Chosen], depth: Number) -> Chosen:
    """The widest that reaches, or else the one that reaches deepest; ties by name."""
    wanted = _first(depth)

    def order(each: Chosen) -> tuple[Any, ...]:
        reach = _first(each.reach)
        reaches = bool(reach >= wanted * (1 - 1e-9))
        return (not reaches, -each.diameter if reaches else -reach, each.name)

    return min(fitting, key=order, default=NONE)


def cutter_rows() -> tuple[Row, ...]:
    """The cutter of a cut with its measures; needs rows `depth`, `width` and `corner`."""
    solution = {"solution": "tool"}
    return (
        Row("cutter", "", "the cutter of the shop that is meant, if not the widest", Text()),
        Row(
            "tool",
            "",
            "the cutter that takes the cut",
            formula=chosen_cutter,
            needs={
                "cutters": "shop.cutters?",
                "wanted": "cutter?",
                "depth": "depth",
                "width": "width?",
                "corner": "corner?",
                "collet": "shop.collet",
            },
        ),
        Row(
            "narrowest",
            "m",
            "diameter of the narrowest straight cutter of the shop",
            formula=narrowest,
            needs={"cutters": "shop.cutters?"},
            because="is unknown because the shop's file gives no diameter of a straight cutter",
        ),
        Row("tool.name", "text", "the cutter that takes the cut", needs=solution, take="name"),
        Row("tool.diameter", "m", "diameter of that cutter", needs=solution, take="diameter"),
        Row("tool.shank", "m", "shank of that cutter", needs=solution, take="shank"),
        Row(
            "tool.cutting_length",
            "m",
            "length of that cutter's edges",
            needs=solution,
            take="cutting_length",
        ),
        Row(
            "tool.reach",
            "m",
            "how deep that cutter reaches in a cut of this width",
            needs=solution,
            take="reach",
            because="is unknown because no cutter of the shop is called so, or goes in",
        ),
    )
