"""Sums over the contributors of a seam: how far it closes, opens and steps, and by what most."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.tolerances import root_sum_square, worst_case

ACROSS, ALONG = "across", "along"


class Sides(NamedTuple):
    """What the two sides of a seam bring to it, from the parts that they are [m].

    damp, dry: how far both grow towards each other, half of each part. thick_damp, thick_dry: how
    much more one grows in thickness than the other. sag, tilt, play, lag: how far one side sinks or
    rises beside the other. thickness: of each side, how far it may be off. radius: the farther rim.
    """

    damp: Any
    dry: Any
    thick_damp: Any
    thick_dry: Any
    sag: Any
    tilt: Any
    play: Any
    lag: Any
    thickness: tuple[Any, ...]
    radius: Any


class Budget(NamedTuple):
    """A sum at worst and as is likely [m]; its largest contributor and how much that is [m]."""

    worst: Number
    likely: Number
    largest: Any
    most: Number


def turned(error: Number, radius: Number) -> Number:
    """How far a side stands out of place at a radius that is turned by an error.

    Geometry.

    Notes
    -----
    r e, of a small angle.
    """
    return error * radius


def budget(steady: dict[str, Any], scattered: dict[str, tuple[Any, ...]]) -> Budget:
    """What always adds up, and what deviates to either side, each for itself.

    Shigley, Mechanical Engineering Design, 1-13 (worst case and statistical stack).

    Notes
    -----
    worst = sum(s) + sum(|e|); likely = sum(s) + sqrt(sum(e^2)). A contributor that helps counts as
    nothing.
    """
    adds = {name: np.maximum(np.asarray(value, float), 0.0) for name, value in steady.items()}
    members = [np.asarray(each, float) for several in scattered.values() for each in several]
    stacked = np.stack(np.broadcast_arrays(*members, *adds.values()), axis=-1)
    deviations, steps = stacked[..., : len(members)], stacked[..., len(members) :]
    always = np.sum(steps, axis=-1)
    alone = {**adds, **{name: sum(np.abs(e) for e in each) for name, each in scattered.items()}}
    names = np.array(list(alone))
    sizes = np.stack(np.broadcast_arrays(*alone.values()), axis=0)
    first = np.argmax(np.where(np.isnan(sizes), np.inf, sizes), axis=0)
    return Budget(
        always + worst_case(deviations),
        always + root_sum_square(deviations),
        np.atleast_2d(names[first]),
        np.max(sizes, axis=0),
    )


def closing(damp: Number, radial: Number, angular: Number) -> Budget:
    """How far a seam may close: growth of its sides, and errors of each of them.

    Geometry; Shigley, 1-13.
    """
    errors = {"radial error": (radial, radial), "angular error": (angular, angular)}
    return budget({"movement of the wood": damp}, errors)


def opening(dry: Number, radial: Number, angular: Number) -> Budget:
    """How far a seam may open: shrinking of its sides, and errors of each of them.

    Geometry; Shigley, 1-13.
    """
    return closing(-dry, radial, angular)


def stepping(
    sag: Number,
    tilt: Number,
    play: Number,
    lag: Number,
    thickness: Number,
    swelling: Number,
) -> Budget:
    """How far one side may stand above the other.

    Geometry; Shigley, 1-13.

    Notes
    -----
    Sag, tilt, lag and growth always add up; play and thickness deviate each for itself.
    """
    steady = {"sag": sag, "tilt": tilt, "lag of the lift": lag, "movement of the wood": swelling}
    return budget(steady, {"play": (play,), "thickness": (thickness, thickness)})


def thickness_off(sides: Sides) -> Number:
    """How far the thickness of one side may be off, of both the larger.

    The limits that the file gives, else the band of the sheet.
    """
    first, second = sides.thickness
    larger: Number = np.maximum(first, second)
    return larger


def swelling_apart(damp: Number, dry: Number) -> Number:
    """The larger of what the sides grow and shrink apart in thickness.

    Geometry.
    """
    return np.maximum(np.abs(damp), np.abs(dry))
