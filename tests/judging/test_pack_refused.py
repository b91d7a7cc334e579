"""Every refusal of a pack as a whole message: place, found, expected, mend and the line itself.

The catalogue is refusals/pack.txt: a title, the pack in lines that begin with `> `, what is said.
"""

from pathlib import Path

import pytest

CATALOGUE = (Path(__file__).parent / "refusals" / "pack.txt").read_text("utf-8")


def refusals() -> list[object]:
    found = []
    for block in CATALOGUE.rstrip("\n").split("\n\n"):
        title, *lines = block.split("\n")
        text = "".join(f"{line[2:]}\n" for line in lines if line.startswith("> "))
        message = "\n".join(line for line in lines if not line.startswith("> "))
        found.append(pytest.param(text, message, id=title.removeprefix("# ")))
    return found


@pytest.mark.parametrize(("text", "message"), refusals())
def test_a_pack_is_refused(refusal_of, text: str, message: str) -> None:
    assert refusal_of(text) == message


def test_the_rule_that_the_refusals_spoil_is_sound(refusal_of, pack_of) -> None:
    assert refusal_of(pack_of("rule: crate.short\nrequire: length <= 0.5 m")) == ""


def test_two_packs_have_a_rule_of_one_name(refusal_of, pack_of) -> None:
    text = pack_of("rule: crate.short\nrequire: length <= 0.5 m")
    assert refusal_of(text, text) == (
        "pack1.yaml:1:9: two rules have the same name\n"
        "    found crate.short\n"
        "    expected a name of its own\n"
        "    mend: rename one of them; the other is at pack.yaml:1\n"
        "    - rule: crate.short\n"
        "            ^^^^^^^^^^^"
    )


def test_all_problems_of_a_pack_are_told_at_once(refusal_of, pack_of) -> None:
    text = pack_of(
        "rule: crate.short\nrequire: lenght <= 0.5 m",
        "rule: crate.narrow\nrequire: width <= 0.5 kg",
        "rule: crat.flat\nrequire: length <= 1 m",
    )
    heads = [line for line in refusal_of(text).splitlines() if line.startswith("pack.yaml:")]
    assert heads == [
        "pack.yaml:2:12: the name is not known",
        "pack.yaml:10:12: compares a length with a mass",
        "pack.yaml:17:9: there is no such kind of part",
    ]
