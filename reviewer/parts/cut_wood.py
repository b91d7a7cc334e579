"""The wood that is cut, the face from which the depth counts, and what goes into a groove."""

from collections.abc import Callable

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.parts.blanks import Measured, measured
from reviewer.parts.row import Choice, Measure, PartName, Row, Stock

NEAR, FAR = "near face", "far face"


def one_that_is(own: Number | None, first: Number | None, second: Number | None) -> Number:
    """The first of several numbers that is there and known."""
    found: Number = np.nan
    for each in (second, first, own):
        if each is not None:
            found = np.where(np.isnan(each), found, each)
    return found


def least_left(wood: Number, depth: Number, drawn: Number, rides_on: str) -> Number:
    """Wood that is left under a cut where the wood is thinnest.

    Geometry; a router's depth counts from the face on which it rides.

    Notes
    -----
    Riding on the near face t_least - d; with the far face on the table t - d, whatever t is.
    """
    return (wood if rides_on == NEAR else drawn) - depth


def spread_of(low: Number, high: Number, rides_on: str) -> Number:
    """How much the floor of a cut may be off parallel to the far face, from thickness alone.

    Geometry.

    Notes
    -----
    Riding on the near face the whole band of the thickness; from the far face nothing.
    """
    return (high - low) if rides_on == NEAR else 0.0 * high


def less(whole: Number, part: Number) -> Number:
    """What is left of one length when another is taken away."""
    return whole - part


def wood() -> tuple[Row, ...]:
    return (
        Row("of", "", "the part that it is cut into", PartName()),
        Row(
            "wood.thickness",
            "m",
            "thickness of the wood as it is drawn",
            Measure(above=0.0, example="18 mm"),
            formula=one_that_is,
            needs={
                "own": "of.plate.thickness?",
                "first": "of.thickness?",
                "second": "of.height?",
            },
        ),
        Row(
            "wood.low",
            "m",
            "thickness of the wood where it is thinnest",
            Measure(above=0.0),
            formula=one_that_is,
            needs={"own": "of.made.low?", "first": "wood.thickness?", "second": "of.height?"},
        ),
        Row(
            "wood.high",
            "m",
            "thickness of the wood where it is thickest",
            Measure(above=0.0),
            formula=one_that_is,
            needs={"own": "of.made.high?", "first": "wood.thickness?", "second": "of.height?"},
        ),
        Row(
            "rides_on",
            "",
            "the face from which the depth counts: that of the cut, or the far one, on a table",
            Choice((NEAR, FAR), default=NEAR),
        ),
        Row(
            "left",
            "m",
            "wood that is left under it where it is thinnest",
            formula=least_left,
            needs={
                "wood": "wood.low",
                "depth": "depth",
                "drawn": "wood.thickness",
                "rides_on": "rides_on",
            },
            governs="least",
        ),
        Row(
            "parallel",
            "m",
            "how far its floor is off parallel to the far face, from the thickness of the wood",
            formula=spread_of,
            needs={"low": "wood.low", "high": "wood.high", "rides_on": "rides_on"},
        ),
        Row(
            "parallel_within",
            "m",
            "how far its floor may be off parallel to the far face",
            Measure(above=0.0, example="0.3 mm"),
        ),
    )


def _of_sheet(which: str) -> Callable[..., Number]:
    def thickness_at_hand(own: Number | None, sheet: Measured | None) -> Number:
        """What the sheet at hand measures, else the band in which it is sold.

        The stock row's own source.
        """
        if own is not None:
            return own
        return np.nan if sheet is None else getattr(sheet, which)

    return thickness_at_hand


def takes() -> tuple[Row, ...]:
    """What goes into a groove: a sheet, which measures other than it is called."""
    needs = {"own": "takes.measured?", "sheet": "takes.sheet?"}
    return (
        Row(
            "takes.material",
            "",
            "material of the sheet that goes into it",
            Stock("materials", example="birch plywood"),
        ),
        Row(
            "takes.thickness",
            "m",
            "what the sheet is called that goes into it",
            Measure(above=0.0, example="12 mm"),
        ),
        Row(
            "takes.sheet",
            "",
            "what that sheet measures",
            formula=measured,
            needs={
                "thickness": "takes.thickness",
                "material": "takes.material",
                "stocked": "shop.sheets",
            },
        ),
        Row(
            "takes.measured",
            "m",
            "what the sheet at hand measures, by the calliper",
            Measure(above=0.0, example="11.7 mm"),
        ),
        *(
            Row(f"takes.{name}", "m", says, formula=_of_sheet(name), needs=needs)
            for name, says in (
                ("low", "least thickness of what goes in"),
                ("high", "greatest thickness of what goes in"),
            )
        ),
        Row(
            "play.least",
            "m",
            "play of the thickest such sheet in it",
            formula=less,
            needs={"whole": "width", "part": "takes.high"},
            governs="least",
        ),
        Row(
            "play.most",
            "m",
            "play of the thinnest such sheet in it",
            formula=less,
            needs={"whole": "width", "part": "takes.low"},
        ),
    )
