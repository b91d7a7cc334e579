"""What a shop makes of the rules and limits that packs bring, each with who decided it and why."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from typing import NamedTuple, cast

from reviewer.judging.compiled import judge
from reviewer.judging.finding import ByShop, Level
from reviewer.judging.language_error import LanguageError
from reviewer.judging.limit_reader import read_value
from reviewer.judging.limits import Limit, Limits, Stated
from reviewer.judging.pack_reader import PackReader
from reviewer.judging.rule import Rule
from reviewer.judging.ruled import RULED
from reviewer.judging.scaling import scaled
from reviewer.judging.vocabulary import vocabulary
from reviewer.judging.writing import number, write
from reviewer.notation.nearest import nearest
from reviewer.parts.facts import LEVELS
from reviewer.parts.kind import Kind
from reviewer.reading.shop import Entry, Shop
from reviewer.reading.tree import Scalar


class Changed(NamedTuple):
    """Rules and limits as a shop has them, and the changes that it made."""

    rules: tuple[Rule, ...]
    limits: Limits
    changes: tuple[ByShop, ...]


def changed_by(
    shop: Shop,
    rules: Sequence[Rule],
    limits: Limits,
    kinds: Mapping[str, Kind],
    reader: PackReader,
) -> Changed:
    """The rules and limits in a shop; what does not fit goes to the reader's problems."""
    known = dict(limits.by_name)
    changes = []
    for entry in shop.limits:
        change = None if reader.is_full else _limit(entry, known, reader)
        changes += [change] if change else []
    by_name = {rule.name: rule for rule in rules}
    changer = _Changer(kinds, limits, reader)
    for entry in shop.rules:
        rule = by_name.get(entry.name)
        if reader.is_full:
            break
        if rule is None:
            _refuse_name(entry, "rule", by_name, reader)
        elif (found := changer.changed(rule, entry)) is not None:
            by_name[rule.name] = found
            assert found.by_shop is not None
            changes.append(found.by_shop)
    return Changed(tuple(by_name[rule.name] for rule in rules), Limits(known), tuple(changes))


def _refuse_name(entry: Entry, what: str, known: Iterable[str], reader: PackReader) -> None:
    near = nearest(entry.name, known)
    mend = f"write {near}" if near else "see `reviewer rules` for those in force"
    told = f"there is no such {what} in force"
    reader.refuse(entry.place, told, entry.name, f"the name of a {what} in force", mend)


def _limit(entry: Entry, known: dict[str, Limit], reader: PackReader) -> ByShop | None:
    """Change one limit, on some levels or on all."""
    limit = known.get(entry.name)
    if limit is None:
        _refuse_name(entry, "limit", known, reader)
        return None
    given = entry.given["value"]
    value = read_value(Scalar(given.text, False, given.place), limit.dimension, reader)
    if value is None:
        return None
    by, why = entry.text("by"), entry.text("why")
    levels: tuple[str, ...] = entry.given["for"].value if "for" in entry.given else ()
    stated = Stated(value[0], given.text, why, f"the shop's own {entry.name}", given.place, by)
    known[entry.name] = limit.with_stated(stated, levels)
    before = dict.fromkeys(limit.at((each,)).text for each in levels or LEVELS)
    whom = f" for {', '.join(levels)}" if levels else ""
    does = f"{given.text}{whom}, not {' or '.join(before)}"
    return ByShop("limit", entry.name, does, by, why, entry.place)


class _Changer:
    """Changes rules, one after the other."""

    def __init__(self, kinds: Mapping[str, Kind], limits: Limits, reader: PackReader) -> None:
        self.kinds = kinds
        self.limits = limits
        self.reader = reader

    def changed(self, rule: Rule, entry: Entry) -> Rule | None:
        """The rule as the shop has it, or None where the change does not fit."""
        if "silence" in entry.given:
            return replace(rule, by_shop=self._by(entry, rule, "silenced", silences=True))
        does = []
        for word in ("tighten", "loosen"):
            if word in entry.given:
                factor = float(entry.given[word].value)
                found = self._scaled(rule, factor, entry)
                if found is None:
                    return None
                rule = found
                does.append(f"{word}ed to {number(factor)} of its limit")
        if "level" in entry.given:
            level = cast(Level, entry.given["level"].value)
            does.append(f"level {level}, not {rule.level}")
            rule = replace(rule, level=level)
        return replace(rule, by_shop=self._by(entry, rule, ", ".join(does)))

    def _by(self, entry: Entry, rule: Rule, does: str, *, silences: bool = False) -> ByShop:
        by, why = entry.text("by"), entry.text("why")
        return ByShop("rule", rule.name, does, by, why, entry.place, rule.hazard, silences)

    def _scaled(self, rule: Rule, factor: float, entry: Entry) -> Rule | None:
        """The rule with its limits moved, or None where it has none."""
        expected = "silence, level, or a rule with a limit"
        if rule.require is None:
            found = "a question to a person"
            self.reader.refuse(entry.place, f"{rule.name} has no limit", found, expected)
            return None
        expression = scaled(rule.require.expression, factor)
        if expression == rule.require.expression:
            what = f"{rule.name} has no limit that a factor moves"
            self.reader.refuse(entry.place, what, rule.requires, expected)
            return None
        kinds = {**self.kinds, **RULED}
        try:
            require = judge(expression, vocabulary(rule.scope, kinds, self.limits))
        except LanguageError as error:
            self.reader.refuse(entry.place, error.what, error.found, error.expected, error.mend)
            return None
        return replace(rule, require=require, requires=write(expression))
