"""Cases: a combination of loads in a configuration, as one table of factors."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from reviewer.reading.design import Combination, Design, Part

MEDIUM_TERM = "medium-term"  # of a load that does not tell
LIGHT = 0.9  # EN 1990, table A1.2(A): own weight where it helps


@dataclass(frozen=True)
class Cases:
    """All cases of a design; every array has one entry a case.

    `names` tells combination and configuration; `configuration` is an index into the design's;
    `own_weight` and `factors[load]` multiply forces; `on_half` is true where a distributed load
    stands on one half of its area only; `durations` tells of each load how long it lasts.
    """

    names: tuple[str, ...]
    configuration: NDArray[np.intp]
    own_weight: NDArray[np.float64]
    factors: dict[str, NDArray[np.float64]]
    on_half: NDArray[np.bool_]
    durations: dict[str, str]


def default_combinations(loads: tuple[str, ...]) -> tuple[Combination, ...]:
    """The combinations of a design that names none.

    Own weight alone; each load by itself, once with the full own weight and once with 0.9 of it,
    since weight may be what holds the thing down (EN 1990); and all loads together, both ways.
    """
    found = [Combination("own weight", 1.0, {})]
    for load in loads:
        found.append(Combination(load, 1.0, {load: 1.0}))
        found.append(Combination(f"{load}, 0.9 of own weight", LIGHT, {load: 1.0}))
    if len(loads) > 1:
        found.append(Combination("all loads", 1.0, dict.fromkeys(loads, 1.0)))
        light = Combination("all loads, 0.9 of own weight", LIGHT, dict.fromkeys(loads, 1.0))
        found.append(light)
    return tuple(found)


def cases_of(design: Design) -> Cases:
    """Every combination in every configuration; distributed loads whole and on one half.

    In order of name, so that of cases that tie the same one governs wherever the file has it.
    """
    loads = tuple(sorted(design.loads))
    spread = {name for name in loads if "over" in design.loads[name].given}
    given = sorted(design.combinations or (), key=lambda each: each.name)
    combinations = given or default_combinations(loads)
    rows = list(_rows(design, combinations, spread))
    return Cases(
        names=tuple(name for name, *_ in rows),
        configuration=np.array([index for _, index, *_ in rows]),
        own_weight=np.array([combination.own_weight for _, _, combination, _ in rows]),
        factors={
            load: np.array([combination.factors.get(load, 0.0) for _, _, combination, _ in rows])
            for load in loads
        },
        on_half=np.array([half for *_, half in rows]),
        durations={load: _duration(design.loads[load]) for load in loads},
    )


def _duration(load: Part) -> str:
    given = load.given.get("duration")
    return MEDIUM_TERM if given is None else str(given.value)


def _rows(
    design: Design, combinations: Sequence[Combination], spread: set[str]
) -> Iterator[tuple[str, int, Combination, bool]]:
    in_order = sorted(enumerate(design.configurations), key=lambda each: each[1].name)
    for index, configuration in in_order:
        where = f", {configuration.name}" if configuration.name else ""
        for combination in combinations:
            yield f"{combination.name}{where}", index, combination, False
            if any(combination.factors.get(load) for load in spread):
                yield f"{combination.name} on one half{where}", index, combination, True
