"""Cases: combinations of loads in configurations."""

import pytest

G = 9.80665  # m/s2, ISO 80000-3:2019, 3-9.2

BENCH = """
parts:
  base: {kind: base, feet: {count: 4, circle: 1600}, height: 600, mass: 30 kg}
  box: {kind: top, carried_by: base, mass: 0 kg, diameter: 1000}
loads:
  soil: {force: 600 N, over: box}
  lean: {force: 400 N, on: box, at: {radius: 300}, all_round: true}
"""
WEIGHT = 30 * G


def test_default_combinations(answers) -> None:
    """EN 1990, table A1.2(A): 0.9 of own weight where it helps; no helping load beside a load."""
    found = answers(BENCH)
    assert {name: found("base.bears.force", name) for name in found.cases} == pytest.approx(
        {
            "own weight": WEIGHT,
            "lean": WEIGHT + 400,
            "lean, 0.9 of own weight": 0.9 * WEIGHT + 400,
            "soil": WEIGHT + 600,
            "soil on one half": WEIGHT + 300,
            "soil, 0.9 of own weight": 0.9 * WEIGHT + 600,
            "soil, 0.9 of own weight on one half": 0.9 * WEIGHT + 300,
            "all loads": WEIGHT + 1000,
            "all loads on one half": WEIGHT + 700,
            "all loads, 0.9 of own weight": 0.9 * WEIGHT + 1000,
            "all loads, 0.9 of own weight on one half": 0.9 * WEIGHT + 700,
        },
        rel=1e-12,
    )


def test_one_load_has_no_case_of_all_loads(answers) -> None:
    assert answers(BENCH.partition("  lean")[0]).cases == (
        "own weight",
        "soil",
        "soil on one half",
        "soil, 0.9 of own weight",
        "soil, 0.9 of own weight on one half",
    )


def test_no_load_at_all(answers) -> None:
    assert answers(BENCH.partition("loads:")[0]).cases == ("own weight",)


def test_explicit_combinations_stand_alone(answers) -> None:
    """Factors on weight and loads; a load that is not named does not act; weight counts once."""
    found = answers(
        BENCH
        + """
combinations:
  tipping: {own_weight: 0.9, lean: 1.5}
  strength: {own_weight: 1.35, soil: 1.5, lean: 0.5}
  plain: {soil: 1}
  nothing: {own_weight: 0}
"""
    )
    assert {name: found("base.bears.force", name) for name in found.cases} == pytest.approx(
        {
            "tipping": 0.9 * WEIGHT + 1.5 * 400,
            "strength": 1.35 * WEIGHT + 1.5 * 600 + 0.5 * 400,
            "strength on one half": 1.35 * WEIGHT + 1.5 * 300 + 0.5 * 400,
            "plain": WEIGHT + 600,
            "plain on one half": WEIGHT + 300,
            "nothing": 0.0,
        },
        rel=1e-12,
    )
    assert found("base.tipping.restoring_moment", "tipping") == pytest.approx(
        0.9 * WEIGHT * 0.8 * 0.5**0.5, rel=1e-9
    )


def test_a_factor_scales_moments_too(answers) -> None:
    """Four feet on a circle of radius R: W/4 (1 + 2 e/R)."""
    found = answers(BENCH + "combinations: {leaning: {own_weight: 0, lean: 1.5}}")
    assert found("base.feet.peak_load", "leaning") == pytest.approx(
        1.5 * 400 / 4 * (1 + 2 * 0.3 / 0.8), rel=1e-9
    )


SLIDING = """
parts:
  base: {kind: base, feet: {count: 4, circle: 2400}, height: 600, mass: 0 kg}
  trays:
    {kind: tray, carried_by: base, count: 4, mass: 2 kg, inner: 300, depth: 200, width: 100}
loads:
  lean: {force: 100 N, on: trays, at: rim, all_round: true}
configurations:
  closed: {}
  half: {trays.offset: 100}
  open: {trays.offset: 250, trays.mass: 3 kg}
"""


@pytest.mark.parametrize(
    ("configuration", "offset", "mass"),
    [("closed", 0.0, 2.0), ("half", 0.1, 2.0), ("open", 0.25, 3.0)],
)
def test_configurations_change_what_they_name_and_nothing_else(
    answers, configuration: str, offset: float, mass: float
) -> None:
    found = answers(SLIDING)
    case = f"lean, {configuration}"
    assert found("trays.rim.radius", case) == pytest.approx(0.5 + offset, rel=1e-12)
    assert found("base.bears.force", case) == pytest.approx(4 * mass * G + 100, rel=1e-12)
    weight = 4 * mass * G / 4
    assert found("base.feet.peak_load", case) == pytest.approx(
        weight + 100 / 4 * (1 + 2 * (0.5 + offset) / 1.2), rel=1e-9
    )


def test_a_configuration_may_give_what_the_part_leaves_out(answers) -> None:
    found = answers(
        "parts: {slot: {kind: gap}}\nconfigurations: {closed: {slot.width: 4}, open: {}}"
    )
    assert found("slot.most", "own weight, closed") == pytest.approx(0.004, rel=1e-12)
    assert found("slot.most", "own weight, open") != found("slot.most", "own weight, open")  # NaN


def test_a_configuration_overrules_a_formula(answers) -> None:
    """The level of the box follows from its carrier, unless a configuration says otherwise."""
    found = answers(
        BENCH.partition("loads:")[0] + "configurations: {low: {}, high: {box.level: 900}}"
    )
    assert found("box.level", "own weight, low") == pytest.approx(0.6, rel=1e-12)
    assert found("box.level", "own weight, high") == pytest.approx(0.9, rel=1e-12)


def test_every_combination_in_every_configuration(answers) -> None:
    found = answers(SLIDING)
    combinations = ("own weight", "lean", "lean, 0.9 of own weight")
    assert found.cases == tuple(
        f"{combination}, {where}"
        for where in ("closed", "half", "open")
        for combination in combinations
    )
