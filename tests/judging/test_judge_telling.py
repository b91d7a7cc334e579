"""What a finding says: numbers in the units of the file, what to change, on which line."""

import pytest

RULE = """
rule: crate.holds
question: Does it hold?
require: bears.force <= strength
says: >-
    Under {case} {part} of {wood} bears {demand} of {capacity}, {utilisation} of it;
    {length} long, sealed: {sealed}, {slats} slats.
because: It breaks.
source: statics
hazard: crushing
level: should
stage: loading
change: [strength, width, length]
"""
DESIGN = """
parts:
  box:
    kind: crate
    mass: 0 kg
    length: {length}
    strength: {strength}
    note: made last winter
loads:
  stone: {{force: {force}, on: box}}
"""


@pytest.mark.parametrize(
    ("length", "strength", "force", "message", "source"),
    [
        (
            *("400 mm", "800 N", "1000 N"),
            "Under stone box of birch bears 1000 N of 800 N, 1.25 of it; "
            "400 mm long, sealed: no, 4 slats.",
            "units as they are written",
        ),
        (
            *("16 in", "180 lbf", "225 lbf"),
            "Under stone box of birch bears 225 lbf of 180 lbf, 1.25 of it; "
            "16 in long, sealed: no, 4 slats.",
            "an inch file",
        ),
        (
            *("40 cm", "0.8 kN", "1 kN"),
            "Under stone box of birch bears 1 kN of 0.8 kN, 1.25 of it; "
            "40 cm long, sealed: no, 4 slats.",
            "the unit that the file uses first for like values",
        ),
    ],
)
def test_the_message_in_the_units_of_the_file(
    judge_crates, pack_of, length, strength, force, message: str, source: str
) -> None:
    text = DESIGN.format(length=length, strength=strength, force=force)
    finding = judge_crates(pack_of(RULE), text, lengths="")["box.holds"]
    assert finding.message == message


def design(**given: str) -> str:
    fields = {"length": "400", "strength": "800 N", "force": "1000 N", **given}
    return DESIGN.format(**fields)


def test_what_a_finding_carries(judge_crates, pack_of) -> None:
    finding = judge_crates(pack_of(RULE), design())["box.holds"]
    assert (finding.rule, finding.part, finding.name) == ("crate.holds", "box", "box.holds")
    assert (finding.level, finding.stage, finding.hazard) == ("should", "loading", "crushing")
    assert (finding.because, finding.source) == ("It breaks.", "statics")
    assert finding.requires == "bears.force <= strength"
    assert finding.concession is None


def test_what_to_change_with_its_text_and_line(judge_crates, pack_of) -> None:
    """In the rule's own order; what the file does not give is left out."""
    finding = judge_crates(pack_of(RULE), design())["box.holds"]
    assert finding.change == ("box.strength (800 N, line 9)", "box.length (400, line 8)")
    assert (finding.place.path, finding.place.line, finding.place.column) == ("bench.yaml", 9, 15)


def test_without_a_given_value_the_part_itself_is_the_place(judge_crates, pack_of) -> None:
    rule = RULE.replace("change: [strength, width, length]", "change: [width]")
    finding = judge_crates(pack_of(rule), design())["box.holds"]
    assert finding.change == ()
    assert (finding.place.line, finding.place.column) == (5, 3)


def test_a_configuration_that_sets_the_value_comes_first(judge_crates, pack_of) -> None:
    text = design() + "configurations:\n  dry: {}\n  wet: {box.strength: 500 N}\n"
    finding = judge_crates(pack_of(RULE), text)["box.holds"]
    assert finding.case == "stone, wet"
    assert finding.change == (
        "box.strength (500 N in wet, line 15)",
        "box.strength (800 N, line 9)",
        "box.length (400, line 8)",
    )
    assert finding.place.line == 15


def test_the_numbers_that_matter_most_are_three(judge_crates, pack_of) -> None:
    """Those of the requirement first, then those to change; no more than three."""
    finding = judge_crates(pack_of(RULE), design())["box.holds"]
    assert [(each.name, each.value) for each in finding.numbers] == [
        ("box.bears.force", 1000.0),
        ("box.strength", 800.0),
        ("box.length", 0.4),
    ]


def test_no_case_is_named_where_all_are_alike(judge_crates, pack_of) -> None:
    rule = "rule: crate.short\nrequire: length <= 1 m"
    assert judge_crates(pack_of(rule), design())["box.short"].case is None


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        (design().replace("    strength: 800 N\n", ""), "open"),
        (design(), "not applicable"),
    ],
)
def test_what_is_not_judged_says_its_question(
    judge_crates, pack_of, text: str, verdict: str
) -> None:
    """A message with numbers would read like a verdict."""
    rule = RULE + ("" if verdict == "open" else "when: length > 1 m")
    finding = judge_crates(pack_of(rule), text)["box.holds"]
    assert finding.verdict == verdict
    assert finding.message == "Does it hold?"


def test_texts_of_a_design_cannot_forge_a_report(judge_crates, pack_of) -> None:
    """A part's text is printed plainly, on one line."""
    text = design(strength='"800\\tN"')
    finding = judge_crates(pack_of(RULE), text)["box.holds"]
    assert all(character.isprintable() for each in finding.change for character in each)
