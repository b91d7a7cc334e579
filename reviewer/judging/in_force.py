"""What is in force for a design: kinds, stock, rules and limits, of packs and of a shop."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from reviewer.judging.builtin import builtin_limits
from reviewer.judging.changes import changed_by
from reviewer.judging.finding import ByShop
from reviewer.judging.limits import Limits
from reviewer.judging.pack import Pack, in_order, limits_of
from reviewer.judging.pack_reader import PackReader
from reviewer.judging.rule import Rule
from reviewer.notation.nearest import nearest
from reviewer.notation.problem import Place, Problem, problems_in_order
from reviewer.parts.facts import LIMIT
from reviewer.parts.kind import Kind
from reviewer.parts.registry import KINDS
from reviewer.reading.shop import Shop
from reviewer.reading.shop_stock import Tables


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
) -> InForce:
    """Put packs and a shop in force together.

    A pack that has problems, or that does not fit with those before it, is left out whole; of a
    shop what is sound counts. `problems` are those found before, which are told with the others.
    """
    packs = tuple(packs)
    found = [*problems, *(problem for pack in packs for problem in pack.problems)]
    sound = [pack for pack in packs if not pack.problems]
    rules, misfits = in_order(sound)
    while misfits:
        found += misfits
        at_fault = {problem.place.path for problem in misfits}
        sound = [pack for pack in sound if pack.path not in at_fault]
        rules, misfits = in_order(sound)
    limits = builtin_limits().beside(limits_of(sound))
    found += _without_limit(kinds, limits)
    changes: tuple[ByShop, ...] = ()
    if shop is not None:
        reader = PackReader(shop.path, shop.lines, found)
        rules, limits, changes = changed_by(shop, rules, limits, kinds, reader)
    return InForce(
        tuple(sound),
        rules,
        limits,
        kinds,
        tables or Tables(),
        shop,
        changes,
        tuple(problems_in_order(found)),
    )


def _without_limit(kinds: Mapping[str, Kind], limits: Limits) -> Iterable[Problem]:
    """The rows of kinds that need a limit which no pack states; of ours a test sees to it."""
    known = limits.dimensions()
    for kind in kinds.values():
        if KINDS.get(kind.name) is kind:
            continue
        for row in kind.rows:
            for need in (each.removesuffix("?") for each in row.needs.values()):
                if need.startswith(f"{LIMIT}.") and need not in known:
                    near = nearest(need, known)
                    what = f"kind {kind.name}, row {row.path}: no pack states the limit it needs"
                    mend = f"write {near}" if near else "state it under limits in a pack"
                    place = Place(kind.name, 1, 1, 2)
                    yield Problem(place, what, need, "a named limit", mend)
