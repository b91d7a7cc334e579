"""Every built-in rule and limit beside what is on record: a rule that is lost or weakened is told.

The record is kept by hand. Whoever means to change a rule changes its line in record.tsv too.
"""

from pathlib import Path

from reviewer.judging.builtin import builtin_limits, builtin_packs
from reviewer.judging.writing import write

RECORD = Path(__file__).with_name("record.tsv")


def in_force() -> list[str]:
    """A line for each rule and each value of a limit, in order of name."""
    rules = [
        (
            rule.name,
            rule.level,
            rule.stage,
            rule.hazard or "-",
            " ".join(rule.behind) or "-",
            write(rule.when.expression) if rule.when else "always",
            rule.requires or "asks a person",
        )
        for pack in builtin_packs()
        for rule in pack.rules
    ]
    limits = [
        (f"limit.{limit.name}", level, stated.text)
        for limit in builtin_limits().by_name.values()
        for level, stated in {"all": limit.general, **limit.levels}.items()
    ]
    return sorted("\t".join(cells) for cells in (*rules, *limits))


def test_every_rule_and_limit_is_as_it_is_on_record() -> None:
    recorded = RECORD.read_text("utf-8").splitlines()
    found = in_force()
    lost = sorted(set(recorded) - set(found))
    new = sorted(set(found) - set(recorded))
    assert (lost, new) == ([], []), "\n".join(
        ["lost or changed:", *lost, "new or changed, to be put on record:", *new]
    )
    assert recorded == found
