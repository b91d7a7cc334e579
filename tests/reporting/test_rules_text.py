"""The rules in force, listed."""

from reviewer.judging.pack import Pack
from reviewer.reporting.rules_text import rules_text
from reviewer.reporting.sheet import Style

BASE = f"""\
BASE {"-" * 75}

base.heavy_enough
    must, before cutting, hazard: tipping
    Is the base heavy enough to stand still?
    requires    mass >= 10 kg
    source      the house
    stated in   house.yaml:83

"""


def test_rules_are_listed_by_kind(house: Pack) -> None:
    text = rules_text(house.rules, Style())
    assert text.startswith(BASE + f"GAP {'-' * 76}\n\ngap.guarded\n")
    assert (
        "gap.light_enough\n"
        "    should, when loading\n"
        "    Does it close lightly enough?\n"
        "    requires    closing_force <= 150 N\n"
        "    behind      gap.wide_enough\n"
        "    source      the house\n"
    ) in text
    assert "    when        must_close\n    requires    the judgement of a person\n" in text
    assert text.endswith("\nSeven rules.\n")
