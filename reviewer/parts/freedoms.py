"""What contacts leave free and what they hold more than once, in numbers and in words."""

from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.mechanics.constraint import constraint_state, dependent_rows, free_motions
from reviewer.notation.show import show
from reviewer.notation.units import parse_unit
from reviewer.parts.contacts import AXES, TURNS, Held

NONE = "nothing"
LEFT = 1e-6  # share of a motion below which it is none
LINES = {"x": "level line along x", "y": "level line along y", "z": "upright line"}
Array = NDArray[np.float64]


class Freedoms(NamedTuple):
    """In how many ways it can move, should not, and should but cannot; and which they are."""

    ways: float
    unwanted: float
    blocked: float
    words: str
    blocked_words: str


class Repeats(NamedTuple):
    """What is held more than once, and what of it neither can be set nor gives way."""

    times: float
    forced: float
    words: str


class Setting(NamedTuple):
    """How far the contact that is short of it most has to be set, and can be set [m]."""

    asked: Any
    given: float
    which: str


def freedoms_of(held: Held, free: tuple[str, ...], lengths: str | None) -> Freedoms:
    """What the contacts leave free, beside what shall be free.

    Pellegrino and Calladine (1986), null space of the constraint matrix.
    """
    motions = np.asarray(free_motions(held.matrix))
    found = {
        way: motion for way in (*AXES, *TURNS) if (motion := _motion(motions, way)) is not None
    }
    wanted = [way for way in free if way in found]
    blocked = [way for way in free if way not in found]
    unwanted = len(motions) - len(wanted)
    words = [
        _in_words(way, motion, held.size, lengths)
        for way, motion in found.items()
        if way not in wanted
    ][:unwanted]
    askew = unwanted - len(words)
    words += [f"to move in {askew} more way{'s' if askew > 1 else ''} askew to x, y and z"] * (
        askew > 0
    )
    no_longer = (f"to {'turn' if way in TURNS else 'move along'} {way}" for way in blocked)
    return Freedoms(
        float(len(motions)), float(unwanted), float(len(blocked)), _and(words), _and(no_longer)
    )


def _motion(motions: Array, way: str) -> Array | None:
    """The free move along an axis, or the free turn about a line along it; None if it is held."""
    at = (*AXES, *TURNS).index(way)
    wanted = np.eye(6)[at]
    fixed = motions if way in AXES else motions[:, 3:]
    target = wanted if way in AXES else wanted[3:]
    weights = np.linalg.lstsq(fixed.T, target, rcond=None)[0] if len(motions) else np.zeros(0)
    missed = np.einsum("i,ij->j", weights, fixed) - target
    if np.abs(missed).max() > LEFT:
        return None
    motion: Array = np.einsum("i,ij->j", weights, motions)
    return motion


def _in_words(way: str, motion: Array, size: float, lengths: str | None) -> str:
    if way in AXES:
        return "to move " + ("up and down" if way == "z" else f"along {way}")
    turn, move = motion[3:] / size, motion[:3]
    along = float(np.einsum("i,i", turn, move))
    point = np.cross(turn, move) / np.einsum("i,i", turn, turn)
    unit = parse_unit(lengths or "mm")
    axis = way[-1]
    places = [
        f"{name} {show(round(float(at), 9), unit)}"
        for name, at in zip(AXES, point, strict=True)
        if name != axis
    ]
    advancing = ", and to move along it as it turns," if abs(along) > LEFT else ""
    return f"to turn about the {LINES[axis]}{advancing} through {places[0]} and {places[1]}"


def repeats_of(held: Held) -> Repeats:
    """What the contacts hold more often than once.

    Pellegrino and Calladine (1986), states of self-stress of the constraint matrix.
    """
    soft = [gives or can > 0.0 for gives, can in zip(held.gives, held.adjusts, strict=True)]
    rigid = held.matrix[~np.array(soft)]
    circuits = np.asarray(dependent_rows(held.matrix))
    words = dict.fromkeys(_circuit_in_words(held, circuit) for circuit in circuits)
    forced = constraint_state(rigid).redundancies if len(rigid) else 0.0
    return Repeats(float(len(circuits)), float(forced), "; ".join(words) or NONE)


def _circuit_in_words(held: Held, circuit: Array) -> str:
    rows = [int(index) for index in np.flatnonzero(circuit)]
    names = list(dict.fromkeys(held.names[row] for row in rows))
    ways = {held.ways[row] for row in rows}
    if len(ways) == 1:
        way = ways.pop()
        how = way if way in TURNS else f"along {way}"
        if len(names) <= 2:
            return f"{_and(names)} both hold it {how}"
        return f"{_and(names)} all hold it {how}, where one fewer would do"
    each = (f"{held.names[row]} ({held.ways[row]})" for row in rows)
    return f"of {_and(each)} one is more than needed"


def setting_of(held: Held, made_within: Any) -> Setting:
    """How far what can be set has to be, so that the rest fits as it is made.

    Statics of a state of self-stress: of misfits e_i that it holds apart, sum(s_i e_i) = 0.

    Notes
    -----
    e sum(|s_i|) / |s_k| for the contact k that is set; all are taken to be off by e the worst way.
    """
    order = sorted(range(len(held.names)), key=lambda row: held.adjusts[row] > 0.0)
    worst, which, can = 0.0, NONE, 0.0
    for circuit in np.asarray(dependent_rows(held.matrix[order])):
        shares = {order[at]: abs(share) for at, share in enumerate(circuit) if share}
        able = [row for row in shares if held.adjusts[row]]
        if not able or any(held.gives[row] for row in shares):
            continue
        best = max(able, key=lambda row: held.adjusts[row] * shares[row])
        factor = sum(shares.values()) / shares[best]
        if which == NONE or factor / held.adjusts[best] > worst / can:
            worst, which, can = factor, held.names[best], held.adjusts[best]
    return Setting(worst * made_within, can, which)


def _and(names: Any) -> str:
    """Names as a sentence lists them."""
    known = list(names)
    if len(known) < 2:
        return known[0] if known else NONE
    return f"{', '.join(known[:-1])} and {known[-1]}"
