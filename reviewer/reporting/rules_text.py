"""The rules in force, by kind, with their limits and sources."""

from collections.abc import Iterable

from reviewer.judging.rule import Rule
from reviewer.judging.writing import write
from reviewer.reporting.sheet import Sheet, Style
from reviewer.reporting.words import STAGE_WORDS, counted, sentence

INDENT = 4


def rules_text(rules: Iterable[Rule], style: Style) -> str:
    """Every rule: what it asks, what it requires, and where that is from."""
    by_kind: dict[str, list[Rule]] = {}
    for rule in sorted(rules, key=lambda each: each.name):
        by_kind.setdefault(rule.name.partition(".")[0], []).append(rule)
    sheet = Sheet(style)
    for kind, group in by_kind.items():
        sheet.heading(kind.replace("_", " "))
        for rule in group:
            _put(sheet, rule)
    count = sum(len(group) for group in by_kind.values())
    sheet.put(sentence(counted(count, "rule")))
    return sheet.text()


def _put(sheet: Sheet, rule: Rule) -> None:
    sheet.put(rule.name, look="strong")
    hazard = f", hazard: {rule.hazard}" if rule.hazard else ""
    sheet.put(f"{rule.level}, {STAGE_WORDS[rule.stage]}{hazard}", INDENT)
    for lead, text in (
        ("", rule.question),
        ("applies to  ", scope_words(rule)),
        ("when        ", write(rule.when.expression) if rule.when else ""),
        ("requires    ", rule.requires or "the judgement of a person"),
        ("behind      ", ", ".join(rule.behind)),
        ("source      ", rule.source),
        ("stated in   ", f"{rule.place.path}:{rule.place.line}"),
        ("the shop    ", _by_shop(rule)),
    ):
        if text:
            sheet.put(text, INDENT, lead=lead)
    sheet.gap()


def _by_shop(rule: Rule) -> str:
    change = rule.by_shop
    return f"{change.does}, {change.by}: {change.why}" if change else ""


def scope_words(rule: Rule) -> str:
    """The parts that a rule on several ranges over; nothing of a rule on one part."""
    if rule.scope.how == "one":
        return ""
    kinds = " and ".join(f"{binder}: {kind}" for binder, kind in rule.scope.binders)
    how = {"each": "every pair of", "neighbours": "neighbours among", "every": "all parts of"}
    return f"{how[rule.scope.how]} {kinds}"
