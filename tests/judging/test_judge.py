"""Verdicts: what holds, what fails, what nobody can know, and which case governs."""

import math

import pytest

# 300 N stand on the crate, or 500, or both; its own weight is nothing.
LOADED = """
parts:
  box: {{kind: crate, mass: 0 kg, length: 400, width: 300, strength: {strength}}}
loads:
  a: {{force: 300 N, on: box}}
  b: {{force: 500 N, on: box}}
"""


def loaded(strength: str = "900 N") -> str:
    return LOADED.format(strength=strength)


HOLDS = "rule: crate.holds\nrequire: bears.force <= strength"


@pytest.mark.parametrize(
    ("strength", "verdict", "utilisation", "source"),
    [
        ("1000 N", "pass", 0.8, "800 / 1000"),
        ("800 N", "pass", 1.0, "met exactly is met"),
        ("400 N", "fail", 2.0, "800 / 400"),
        ("799.9999995 N", "pass", 1.0, "1 + 1e-9 is met: within the tolerance"),
        ("799.999998 N", "fail", 1.0, "over 1 + 1e-9"),
    ],
)
def test_the_largest_utilisation_governs(
    judge_crates, pack_of, strength: str, verdict: str, utilisation: float, source: str
) -> None:
    finding = judge_crates(pack_of(HOLDS), loaded(strength))["box.holds"]
    assert finding.verdict == verdict
    assert finding.case == "all loads"
    assert finding.utilisation == pytest.approx(utilisation, rel=1e-8)
    assert finding.demand is not None
    assert finding.capacity is not None
    assert finding.demand.value == pytest.approx(800, rel=1e-12)


@pytest.mark.parametrize(
    ("require", "demand", "capacity", "utilisation"),
    [
        ("bears.force <= strength", 800, 1600, 0.5),
        ("strength >= bears.force", 800, 1600, 0.5),
        ("length >= 0.1 m", 0.1, 0.4, 0.25),
        ("length <= 0.5 m", 0.4, 0.5, 0.8),
        ("length <= 0.5 m and width <= 0.4 m", 0.4, 0.5, 0.8),
        ("length <= 0.8 m and width <= 0.4 m", 0.3, 0.4, 0.75),
        ("length <= 0.5 m or width <= 0.4 m", 0.3, 0.4, 0.75),
        ("0.3 m <= width <= 0.4 m", 0.3, 0.3, 1.0),
        ("0.1 m <= width <= 0.4 m", 0.3, 0.4, 0.75),
        ("area <= 0.24 m^2", 0.12, 0.24, 0.5),
        ("slats <= 8", 4, 8, 0.5),
    ],
)
def test_demand_over_capacity(
    judge_crates, pack_of, require: str, demand: float, capacity: float, utilisation: float
) -> None:
    """`and` takes the largest utilisation, `or` the least, a range both of its ends."""
    rule = f"rule: crate.holds\nrequire: {require}"
    finding = judge_crates(pack_of(rule), loaded("1600 N"))["box.holds"]
    assert finding.verdict == "pass"
    assert finding.demand is not None
    assert finding.capacity is not None
    assert finding.demand.value == pytest.approx(demand, rel=1e-12)
    assert finding.capacity.value == pytest.approx(capacity, rel=1e-12)
    assert finding.utilisation == pytest.approx(utilisation, rel=1e-12)


@pytest.mark.parametrize(
    ("require", "verdict"),
    [
        ("length <= 0.3 m or width <= 0.4 m", "pass"),
        ("length <= 0.3 m or width <= 0.2 m", "fail"),
        ("length <= 0.3 m and width <= 0.4 m", "fail"),
        ("0.35 m <= width <= 0.4 m", "fail"),
        ('wood in ["birch"]', "pass"),
        ('wood in ["oak"]', "fail"),
        ("not sealed", "pass"),
        ("sealed", "fail"),
    ],
)
def test_conditions_join(judge_crates, pack_of, require: str, verdict: str) -> None:
    rule = f"rule: crate.holds\nrequire: {require}"
    assert judge_crates(pack_of(rule), loaded())["box.holds"].verdict == verdict


def test_a_condition_without_numbers_has_no_utilisation(judge_crates, pack_of) -> None:
    rule = 'rule: crate.holds\nrequire: wood in ["oak"]\nsays: it is of {wood}'
    finding = judge_crates(pack_of(rule), loaded())["box.holds"]
    assert math.isnan(finding.utilisation)
    assert (finding.demand, finding.capacity) == (None, None)
    assert finding.message == "it is of birch"


def test_of_cases_that_tie_the_first_by_name_governs(judge_crates, pack_of) -> None:
    """Reordered keys change nothing: the loads a and c are equal."""
    text = loaded() + "  c: {{force: 500 N, on: box}}\n".replace("{{", "{").replace("}}", "}")
    combinations = "combinations: {{{}}}\n"
    one, two = "x: {own_weight: 1, b: 1}", "w: {own_weight: 1, c: 1}"
    for pair in (f"{one}, {two}", f"{two}, {one}"):
        found = judge_crates(pack_of(HOLDS), text + combinations.format(pair))
        assert found["box.holds"].case == "w"


def test_a_fail_in_one_case_outweighs_an_unknown_in_another(judge_crates, pack_of) -> None:
    """The strength is known in one configuration only, and does not suffice there."""
    text = """
parts: {box: {kind: crate, mass: 0 kg}}
loads: {a: {force: 300 N, on: box}}
configurations: {dry: {box.strength: 200 N}, wet: {}}
"""
    finding = judge_crates(pack_of(HOLDS), text)["box.holds"]
    assert finding.verdict == "fail"
    assert finding.case == "a, dry"


def test_an_unknown_in_one_case_outweighs_a_pass_in_another(judge_crates, pack_of) -> None:
    text = """
parts: {box: {kind: crate, mass: 0 kg}}
configurations: {dry: {box.strength: 900 N}, wet: {}}
"""
    finding = judge_crates(pack_of(HOLDS), text)["box.holds"]
    assert finding.verdict == "open"
    assert finding.open_because == ("box.strength is not given: load that breaks it",)


def test_open_names_every_missing_field(judge_crates, pack_of) -> None:
    rule = "rule: crate.holds\nrequire: area <= 1 m^2 and bears.force <= strength"
    finding = judge_crates(pack_of(rule), "parts: {box: {kind: crate}}")["box.holds"]
    assert finding.verdict == "open"
    assert finding.open_because == (
        "box.length is not given: its length",
        "box.mass is not given: mass",
        "box.strength is not given: load that breaks it",
        "box.width is not given: its width",
    )
    assert math.isnan(finding.utilisation)
    assert (finding.demand, finding.capacity, finding.case) == (None, None, None)


def test_open_names_what_is_missing_on_the_part_above(judge_crates, pack_of) -> None:
    text = """
parts:
  box: {kind: crate, mass: 3 kg, strength: 900 N}
  cover: {kind: lid, carried_by: box}
"""
    finding = judge_crates(pack_of(HOLDS), text)["box.holds"]
    assert finding.verdict == "open"
    assert finding.open_because == ("cover.mass is not given: mass",)


def test_what_does_not_matter_may_be_unknown(judge_crates, pack_of) -> None:
    """One side of `or` that holds decides, whatever the other."""
    rule = "rule: crate.holds\nrequire: length <= 1 m or bears.force <= strength"
    text = "parts: {box: {kind: crate, length: 400}}"
    assert judge_crates(pack_of(rule), text)["box.holds"].verdict == "pass"


@pytest.mark.parametrize(
    ("when", "verdict"),
    [
        ("length > 0.5 m", "not applicable"),
        ("length > 0.3 m", "fail"),
        ("strength > 5 N", "open"),
        ("length > 0.5 m and strength > 5 N", "not applicable"),
        ("given(strength)", "not applicable"),
        ("not given(strength)", "fail"),
        ("given(length) and length > 0.3 m", "fail"),
    ],
)
def test_when_a_rule_applies(judge_crates, pack_of, when: str, verdict: str) -> None:
    rule = f"rule: crate.long\nwhen: {when}\nrequire: length <= 0.2 m\nquestion: Is it short?"
    finding = judge_crates(pack_of(rule), "parts: {box: {kind: crate, length: 400}}")["box.long"]
    assert finding.verdict == verdict
    reasons = ("box.strength is not given: load that breaks it",)
    assert finding.open_because == (reasons if verdict == "open" else ())


def test_only_the_cases_count_in_which_a_rule_applies(judge_crates, pack_of) -> None:
    rule = "rule: crate.holds\nwhen: bears.force < 600 N\nrequire: bears.force <= strength"
    finding = judge_crates(pack_of(rule), loaded("600 N"))["box.holds"]
    assert finding.verdict == "pass"
    assert finding.utilisation == pytest.approx(500 / 600, rel=1e-12)
    assert finding.case == "b"


def test_a_question_is_for_a_person(judge_crates, pack_of) -> None:
    rule = """
    rule: crate.lifted
    when: bears.force > 400 N
    says: Two lift {bears.force} under {case}.
    """
    finding = judge_crates(pack_of(rule), loaded())["box.lifted"]
    assert finding.verdict == "review"
    assert math.isnan(finding.utilisation)
    assert finding.message == "Two lift 800 N under all loads."
    light = judge_crates(pack_of(rule.replace("400 N", "4000 N")), loaded())["box.lifted"]
    assert light.verdict == "not applicable"


def test_a_rule_for_a_kind_that_a_design_does_not_have_says_nothing(judge_crates, pack_of) -> None:
    rule = "rule: lid.short\nrequire: length <= 1 m"
    assert judge_crates(pack_of(rule), loaded()) == {}


def test_each_part_of_a_kind_is_judged_in_order_of_name(judge_crates, pack_of) -> None:
    text = """
parts:
  b: {kind: crate, length: 400}
  a: {kind: crate, length: 600}
  c: {kind: lid, length: 900}
"""
    found = judge_crates(pack_of("rule: crate.short\nrequire: length <= 0.5 m"), text)
    assert {name: each.verdict for name, each in found.items()} == {
        "a.short": "fail",
        "b.short": "pass",
    }
    assert list(found) == ["a.short", "b.short"]


def test_a_rule_may_look_at_what_carries_the_part_and_at_the_design(judge_crates, pack_of) -> None:
    rule = """
    rule: lid.fits
    when: design.service == "public"
    require: length <= carrier.length
    """
    text = """
service: public
parts:
  box: {kind: crate, length: 400}
  cover: {kind: lid, carried_by: box, length: 500}
"""
    found = judge_crates(pack_of(rule), text)
    assert found["cover.fits"].verdict == "fail"
    assert found["cover.fits"].utilisation == pytest.approx(500 / 400, rel=1e-12)
    private = judge_crates(pack_of(rule), text.replace("public", "private"))
    assert private["cover.fits"].verdict == "not applicable"


def test_a_rule_of_the_design_itself(judge_crates, pack_of) -> None:
    rule = """
    rule: design.public
    require: design.service == "public"
    proof: {holds: {design.service: public}, fails: {design.service: private}}
    """
    found = judge_crates(pack_of(rule), "parts: {box: {kind: crate}}")
    assert found["design.public"].verdict == "fail"


def test_a_part_that_nothing_carries_leaves_carrier_unknown(judge_crates, pack_of) -> None:
    rule = "rule: lid.fits\nrequire: length <= carrier.length"
    finding = judge_crates(pack_of(rule), "parts: {cover: {kind: lid, length: 500}}")["cover.fits"]
    assert finding.verdict == "open"
    assert finding.open_because == (
        "cover.fits needs a part that carries cover, which the design does not have",
    )
