"""What is in force for a design: kinds, stock, rules and limits, of packs and of a shop."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from types import MappingProxyType

from reviewer.judging.builtin import builtin_limits, builtin_packs
from reviewer.judging.changes import changed_by
from reviewer.judging.finding import ByShop
from reviewer.judging.limits import Limits
from reviewer.judging.pack import Pack, in_order, limits_of
from reviewer.judging.pack_reader import PackReader
from reviewer.judging.proof import prove_all
from reviewer.judging.rule import Rule
from reviewer.notation.nearest import nearest
from reviewer.notation.problem import Place, Problem, problems_in_order
from reviewer.parts.facts import LIMIT
from reviewer.parts.kind import Kind
from reviewer.parts.registry import KINDS
from reviewer.reading.shop import Shop
from reviewer.reading.shop_stock import Tables

NOWHERE: Mapping[str, Place] = MappingProxyType({})


@dataclass(frozen=True)
class InForce:
    """What a review goes by, and what is wrong with what is left out of it.

    `rules` stand each after those that they are behind. `changes` are what the shop made of rules
    and limits. `packs` are the sound ones, as they state their rules themselves.
    """

    packs: tuple[Pack, ...]
    rules: tuple[Rule, ...]
    limits: Limits
    kinds: Mapping[str, Kind] = field(default_factory=lambda: KINDS)
    tables: Tables = field(default_factory=Tables)
    shop: Shop | None = None
    changes: tuple[ByShop, ...] = ()
    problems: tuple[Problem, ...] = ()

    @property
    def questions(self) -> dict[str, str]:
        """The question of each rule, by its name."""
        return {rule.name: rule.question for rule in self.rules}


def put_in_force(
    packs: Iterable[Pack],
    shop: Shop | None = None,
    *,
    kinds: Mapping[str, Kind] = KINDS,
    tables: Tables | None = None,
    problems: Sequence[Problem] = (),
    places: Mapping[str, Place] = NOWHERE,
    prove: bool = False,
) -> InForce:
    """Put packs and a shop in force together.

    A pack that has problems, or that does not fit with those before it, is left out whole, and with
    `prove` also one that is not ours and whose rules do not show both ways what they say; of a shop
    what is sound counts. `problems` are those found before, which are told with the others;
    `places` are those where the kinds that are not ours are asked for.
    """
    found = list(problems)
    sound, rules = _fitting(tuple(packs), prove, found)
    limits = builtin_limits().beside(limits_of(sound))
    found += _without_limit(kinds, limits, places)
    changes: tuple[ByShop, ...] = ()
    if shop is not None:
        reader = PackReader(shop.path, shop.lines, found)
        rules, limits, changes = changed_by(shop, rules, limits, kinds, reader)
    told = tuple(problems_in_order(found))
    return InForce(sound, rules, limits, kinds, tables or Tables(), shop, changes, told)


@cache
def builtin_in_force() -> InForce:
    """What is in force where there is neither a shop nor a pack of one's own; kept."""
    return put_in_force(builtin_packs())


def _fitting(
    packs: tuple[Pack, ...], prove: bool, found: list[Problem]
) -> tuple[tuple[Pack, ...], tuple[Rule, ...]]:
    """The packs that are sound and fit together, and their rules in order; what not is told."""
    found += (problem for pack in packs for problem in pack.problems)
    sound = tuple(pack for pack in packs if not pack.problems)
    rules, misfits = in_order(sound)
    while wrong := misfits or (_unproved(sound) if prove else ()):
        found += wrong
        at_fault = {problem.place.path for problem in wrong}
        sound = tuple(pack for pack in sound if pack.path not in at_fault)
        rules, misfits = in_order(sound)
    return sound, rules


def _unproved(packs: Sequence[Pack]) -> tuple[Problem, ...]:
    """What is wrong with the proofs of packs that are not ours; of ours a test sees to it."""
    ours = {id(pack) for pack in builtin_packs()}
    limits = builtin_limits().beside(limits_of(packs))
    return prove_all((pack for pack in packs if id(pack) not in ours), limits)


def _without_limit(
    kinds: Mapping[str, Kind], limits: Limits, places: Mapping[str, Place]
) -> Iterator[Problem]:
    """The rows of kinds that need a limit which no pack states; of ours a test sees to it."""
    for name, place in places.items():
        for row in kinds[name].rows:
            for need in row.needs.values():
                limit = need.removesuffix("?").removeprefix(f"{LIMIT}.")
                if not need.startswith(f"{LIMIT}.") or limit in limits.by_name:
                    continue
                near = nearest(limit, limits.by_name)
                what = f"kind {name}, row {row.path}: no pack states the limit that it needs"
                mend = f"write {LIMIT}.{near}" if near else "state it under limits in a pack"
                yield Problem(place, what, need, "a named limit", mend)
