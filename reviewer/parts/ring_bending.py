"""A plate that bends on its rollers, under a load that meets them at every angle."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.disc_series import HARMONICS, cosine_sum
from reviewer.mechanics.formula import Number
from reviewer.mechanics.resultant import Overturning
from reviewer.mechanics.supports import Supports, SupportSolution, solve_supports
from reviewer.parts.ring_plate import Entry, Shape
from reviewer.parts.ring_solution import RingSolution, Standing

EACH_PITCH = 8  # directions of the load that are tried from one carrying roller to the next
MOST = 96  # directions at most
ASIDE = (
    1e-5  # rad, beside a roller: straight over one, its tilt can be anything where two carry all
)

Groups = list[list[int]]


class BentRing(NamedTuple):
    """Forces on the rollers [N], movement of the plate's edge as a whole [m, rad], and the sink of
    the farthest rim in the direction of the load [m]."""

    carry_peak: Number
    carry_least: Number
    direction: Number
    hold_peak: Number
    uplift: Number
    sink: Number
    tilt: Number
    rim_sink: Number


class Turn(NamedTuple):
    """Directions of the load on a last axis, or last but one where rollers follow it.

    `apart` (..., directions, n) is the cosine of the angle between a load and a roller.
    """

    cosine: Any
    sine: Any
    supports: Supports
    apart: Any


class Loading(NamedTuple):
    """Sag of the plate under its load alone [m], as factors of cosines (..., harmonics).

    At each circle of rollers, and at the two places from which the rim hangs.
    """

    circles: tuple[Any, ...]
    hanging: tuple[Any, ...]


def bend_ring(
    standing: Standing,
    entry: Entry,
    shape: Shape,
    rigidity: Number | None,
    reach: Number,
    rigid: bool,
) -> BentRing | None:
    """Roller forces of a plate that bends, on one-way springs, for the worst of many directions.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), for the plate; statics
    of unilateral springs. Rough by 20 to 30 %.

    Notes
    -----
    w = z + a x + b y + sag - sum C f at each roller. The plate is a thin disc alike in all
    directions: plywood is stiffer along its grain than across. Single loads enter at one place in
    the direction tried, through an arm as two forces at the ends of the length over which it is
    fixed; all other force and moment enters all round. Force and moment are the load path's. The
    rim hangs straight from where the arm is fixed. Directions are an eighth of a roller's pitch
    apart, the first on a roller.
    """
    if rigid or rigidity is None:
        return None
    total, supports, groups = standing
    batch = np.broadcast_shapes(
        *(np.shape(each) for each in (*total, rigidity, reach)),
        *(factor.shape[:-1] for factor in shape.factors.values()),
    )
    total = Overturning(*(np.broadcast_to(each, batch) for each in total))
    turn = _turn(supports, groups)
    bent, loading = settled(turn, Standing(total, supports, groups), entry, shape, rigidity)
    places = _hanging(bent, loading, shape, turn, groups, rigidity)
    return _worst(bent, turn, groups)._replace(rim_sink=_farthest(places, shape, reach))


def settled(
    turn: Turn, standing: Standing, entry: Entry, shape: Shape, rigidity: Number
) -> tuple[SupportSolution, Loading]:
    """The plate that bends, on its rollers, for each direction of the load."""
    total, supports, groups = standing
    loading = _loading(total, entry, shape, rigidity)
    bent = solve_supports(
        turn.supports,
        *load_towards(total, turn),
        compliance=(_between(shape, supports, groups) / _wide(rigidity, 2))[..., None, :, :],
        free_sag=_at_rollers(loading.circles, turn, groups),
    )
    return bent, loading


def with_bending(rigid: RingSolution, bent: BentRing | None) -> RingSolution:
    """The rollers' forces with the plate's own bending where it is known, else the rigid ones.

    Statics.
    """
    if bent is None:
        return rigid
    shared = [name for name in BentRing._fields if name in RingSolution._fields]
    return rigid._replace(**{name: getattr(bent, name) for name in shared})


def _wide(value: Any, axes: int) -> Any:
    """Room for axes behind samples and cases."""
    return np.asarray(value)[(..., *[None] * axes)]


def _turn(supports: Supports, groups: Groups) -> Turn:
    """Directions of the load over the part of a turn after which the rollers look the same."""
    alike = int(np.gcd.reduce([len(group) for group in groups]))
    number = min(MOST, EACH_PITCH * len(groups[0]) // alike)
    aside = ASIDE + 2 * np.pi / alike * np.arange(number) / number
    x, y = _azimuths(supports)
    cosine = x[..., :1] * np.cos(aside) - y[..., :1] * np.sin(aside)
    sine = y[..., :1] * np.cos(aside) + x[..., :1] * np.sin(aside)
    return turned(supports, cosine, sine)


def turned(supports: Supports, cosine: Any, sine: Any) -> Turn:
    """The rollers beside a load in directions on a last axis."""
    x, y = _azimuths(supports)
    apart = cosine[..., :, None] * x[..., None, :] + sine[..., :, None] * y[..., None, :]
    lifted = (np.asarray(field) for field in supports)
    beside = Supports(*(each[..., None, :] if each.ndim > 1 else each for each in lifted))
    return Turn(cosine, sine, beside, apart)


def _azimuths(supports: Supports) -> tuple[Any, Any]:
    """Cosine and sine of each roller's azimuth."""
    radius = np.hypot(supports.x, supports.y)
    return supports.x / radius, supports.y / radius


def load_towards(total: Overturning, turn: Turn) -> tuple[Any, Any, Any]:
    """Force and moments in each direction."""
    force, x, y, turning = (_wide(each, 1) for each in total)
    return force, x + turning * turn.cosine, y + turning * turn.sine


def _loading(total: Overturning, entry: Entry, shape: Shape, rigidity: Any) -> Loading:
    """Points in the direction of the load, rings all round, and the rest of force and moment."""
    spread = len(shape.radii) - 3
    first = spread - len(entry.points) - len(entry.rings)
    points = [(first + k, force) for k, (_, force) in enumerate(entry.points)]
    rings = [(first + len(points) + k, force) for k, (_, force) in enumerate(entry.rings)]
    rings.append((spread, total.force - sum(force for _, force in points)))
    moment = total.moment_round - sum(force * shape.radii[k] for k, force in points)
    once = moment / shape.radii[spread]

    def at(place: int) -> Any:
        factors = np.zeros((*np.shape(total.force), HARMONICS))
        for k, force in points:
            factors += _wide(force, 1) * shape.factors[place, k]
        for k, force in rings:
            factors[..., 0] += force * shape.factors[place, k][..., 0]
        factors[..., 1] += once * shape.factors[place, spread][..., 1]
        return factors / _wide(rigidity, 1)

    return Loading(tuple(at(place) for place in range(first)), (at(spread + 1), at(spread + 2)))


def _between(shape: Shape, supports: Supports, groups: Groups) -> Any:
    """Compliance of a plate of rigidity one between any two rollers (..., n, n)."""
    x, y = _azimuths(supports)
    cosine = x[..., :, None] * x[..., None, :] + y[..., :, None] * y[..., None, :]
    rows = []
    for i, one in enumerate(groups):
        factors = [shape.factors[min(i, j), max(i, j)] for j in range(len(groups))]
        rows.append(
            [
                cosine_sum(_wide_before(each), cosine[..., one, :][..., other])
                for each, other in zip(factors, groups, strict=True)
            ]
        )
    return np.concatenate([np.concatenate(row, axis=-1) for row in rows], axis=-2)


def _wide_before(factors: Any) -> Any:
    """Room for axes of directions and rollers before that of the harmonics."""
    return factors[..., None, None, :]


def _at_rollers(circles: tuple[Any, ...], turn: Turn, groups: Groups) -> Any:
    """Series of each circle at its own rollers (..., directions, n)."""
    parts = [
        cosine_sum(_wide_before(factors), turn.apart[..., group])
        for factors, group in zip(circles, groups, strict=True)
    ]
    return np.concatenate(parts, axis=-1)


def _slope(found: SupportSolution, turn: Turn) -> Any:
    """Slope of the plate as a whole in the direction of the load."""
    return found.slope_x * turn.cosine + found.slope_y * turn.sine


def _hanging(
    bent: SupportSolution,
    loading: Loading,
    shape: Shape,
    turn: Turn,
    groups: Groups,
    rigidity: Any,
) -> tuple[Any, Any]:
    """Sink of the two places from which the rim hangs, in the direction of the load."""
    forces = bent.forces * turn.supports.sign
    last = len(shape.radii)
    found = []
    for place, factors in zip((last - 2, last - 1), loading.hanging, strict=True):
        circles = tuple(shape.factors[circle, place] for circle in range(len(groups)))
        lifted = (_at_rollers(circles, turn, groups) * forces).sum(axis=-1) / _wide(rigidity, 1)
        whole = bent.sink + _slope(bent, turn) * _wide(shape.radii[place], 1)
        found.append(whole + _wide(factors.sum(axis=-1), 1) - lifted)
    return found[0], found[1]


def _farthest(places: tuple[Any, Any], shape: Shape, reach: Any) -> Any:
    """Greatest sink of the rim, which goes on straight from two places of the plate."""
    outer, inner = (_wide(shape.radii[k], 1) for k in (-2, -1))
    beyond = np.maximum(_wide(reach, 1) - outer, 0.0)
    apart = np.where(outer > inner, outer - inner, np.inf)
    return np.max(places[0] + (places[0] - places[1]) * beyond / apart, axis=-1)


def _worst(bent: SupportSolution, turn: Turn, groups: Groups) -> BentRing:
    """The greatest and least of all directions; of equal ones the first counts."""
    carry = bent.forces[..., groups[0]]
    each = np.max(carry, axis=-1)
    first = np.argmax(each >= np.max(each, axis=-1, keepdims=True) * (1 - 1e-9), axis=-1)
    azimuth = np.mod(np.arctan2(turn.sine, turn.cosine) - ASIDE / 2, 2 * np.pi) - ASIDE / 2
    azimuth = np.broadcast_to(azimuth, each.shape)
    direction = np.take_along_axis(azimuth, first[..., None], axis=-1)[..., 0]
    hold = bent.forces[..., groups[1]] if len(groups) > 1 else 0.0 * carry
    return BentRing(
        carry_peak=np.max(each, axis=-1),
        carry_least=np.min(carry, axis=(-2, -1)),
        direction=np.where(np.isnan(each).any(axis=-1), np.nan, direction),
        hold_peak=np.max(hold, axis=(-2, -1)),
        uplift=np.max(hold.sum(axis=-1), axis=-1),
        sink=np.max(bent.sink, axis=-1),
        tilt=np.max(np.hypot(bent.slope_x, bent.slope_y), axis=-1),
        rim_sink=np.nan,
    )
