"""The catalogue of rules in Markdown, made from the packs: what each asks, requires and is from."""

import re
from collections.abc import Iterable, Iterator

from reviewer.judging.in_force import InForce
from reviewer.judging.limits import Limit, Stated
from reviewer.judging.rule import Rule
from reviewer.judging.writing import write
from reviewer.notation.plain import plain
from reviewer.reporting.rules_text import scope_words
from reviewer.reporting.words import STAGE_WORDS, counted

LONGEST = 1000
MARKS = re.compile(r"([\\`*{}\[\]<>|#~&!]|(?<![A-Za-z0-9])_|_(?![A-Za-z0-9]))")
HEAD = """\
# The rules

Made from the packs by `reviewer rules --format markdown`; do not edit it by hand. A rule is named
by its kind and its own name. Its level is *must*, *should* or *note* (RFC 2119), its stage is when
it can still be mended cheaply. What stands behind a rule is not judged where that rule fails. A
rule without a requirement asks a person. Numbers that are custom or policy, and not physics, are
named limits: they stand at the end, each with whom it is for, why, and where it is from.
"""


def catalogue(in_force: InForce) -> str:
    """The whole catalogue of what is in force, each rule and limit by name."""
    rules = sorted(in_force.rules, key=lambda each: each.name)
    by_kind: dict[str, list[Rule]] = {}
    for rule in rules:
        by_kind.setdefault(rule.name.partition(".")[0], []).append(rule)
    lines = [HEAD, f"{counted(len(rules), 'rule')} in force.".capitalize(), ""]
    for kind, group in by_kind.items():
        lines += [f"## {escaped(kind.replace('_', ' '))}", ""]
        for rule in group:
            lines += [*_rule(rule), ""]
    lines += [
        "## limits",
        "",
        *_limits(limit for _, limit in sorted(in_force.limits.by_name.items())),
    ]
    return "\n".join(lines) + "\n"


def escaped(text: str) -> str:
    """A text of a pack so that Markdown shows it as it is.

    >>> escaped("a <b> | *c*")
    'a \\\\<b\\\\> \\\\| \\\\*c\\\\*'
    """
    return MARKS.sub(r"\\\1", plain(text, LONGEST))


def code(text: str) -> str:
    """A text as code, with a fence that is longer than any in it."""
    clean = plain(text, LONGEST).replace("|", "\\|")
    fence = "`" * (1 + max((len(run) for run in re.findall("`+", clean)), default=0))
    return f"{fence}{clean}{fence}"


def _rule(rule: Rule) -> Iterator[str]:
    yield f"### {escaped(rule.name)}"
    yield ""
    if rule.question:
        yield f"{escaped(rule.question)}"
        yield ""
    hazard = f", hazard: {escaped(rule.hazard)}" if rule.hazard else ""
    yield f"- **{rule.level}**, {STAGE_WORDS[rule.stage]}{hazard}"
    scope = scope_words(rule)
    if scope:
        yield f"- of {escaped(scope)}"
    if rule.when is not None:
        yield f"- when {code(write(rule.when.expression))}"
    yield f"- requires {code(rule.requires)}" if rule.requires else "- asks a person"
    if rule.behind:
        yield f"- behind {', '.join(escaped(name) for name in rule.behind)}"
    if rule.by_shop:
        change = rule.by_shop
        yield f"- {escaped(f'{change.does} by the shop, {change.by}: {change.why}')}"
    yield f"- because: {escaped(rule.because)}"
    yield f"- source: {escaped(rule.source)}"


def _limits(limits: Iterable[Limit]) -> Iterator[str]:
    yield "| limit | for | value | why | source |"
    yield "| --- | --- | --- | --- | --- |"
    for limit in limits:
        name = f"**{escaped(limit.name)}**: {escaped(limit.says)}"
        yield _stated(name, "all" if not limit.levels else "all others", limit.general)
        for level, stated in limit.levels.items():
            yield _stated("", level, stated)


def _stated(name: str, level: str, stated: Stated) -> str:
    by = f" ({stated.by})" if stated.by else ""
    cells = (
        name,
        level,
        *(escaped(each) for each in (stated.text, stated.why, stated.source + by)),
    )
    return f"| {' | '.join(cells)} |"
