"""The potting bench as it was tested: what agrees, what does not, and what a change makes stale."""

from math import pi
from pathlib import Path

import pytest

from reviewer.command.main import main

SPECIMENS = Path(__file__).parents[2] / "specimens"
OF_TESTS = "measurement."
SOUND = {"pass", "not applicable"}
CALIBRATES = "lift.shear_modulus"


def of_tests(found) -> dict[str, str]:
    """The verdict on each measurement, but for what does not apply."""
    assert not found.problems
    return {
        each.name: each.verdict
        for each in found.findings
        if each.rule.startswith(OF_TESTS) and each.verdict != "not applicable"
    }


def others(found) -> dict[str, str]:
    """All that is said of the bench itself and is no pass."""
    return {
        each.name: each.verdict
        for each in found.findings
        if not each.rule.startswith(OF_TESTS) and each.verdict not in SOUND
    }


def test_one_agrees_one_does_not_and_one_calibrates(review_of):
    assert of_tests(review_of("potting_bench/tested")) == {
        "rim_under_a_leaning_sack.still_stands": "pass",
        "rim_under_a_leaning_sack.agrees": "pass",
        "play_at_the_rim.still_stands": "pass",
        "play_at_the_rim.agrees": "fail",
        "lag_of_the_lift.still_stands": "pass",
        "lag_of_the_lift.agrees": "pass",
        "lag_of_the_lift.calibrates": "pass",
    }


def test_the_bench_itself_is_told_the_same_as_before_its_tests(review_of):
    before = others(review_of("potting_bench/revision_c"))
    assert others(review_of("potting_bench/tested")) == before


def test_a_thinner_plate_makes_one_test_stale(review_of):
    found = review_of("potting_bench/revision_d")
    verdicts = of_tests(found)
    assert verdicts.pop("rim_under_a_leaning_sack.still_stands") == "fail"
    assert verdicts.pop("rim_under_a_leaning_sack.agrees") == "open"
    before = of_tests(review_of("potting_bench/tested"))
    assert verdicts.items() <= before.items()
    stale = {each.measured.name: each.stale.changes for each in found.tests}
    assert stale == {
        "rim_under_a_leaning_sack": ("ring.plate.thickness 24 -> 21",),
        "play_at_the_rim": (),
        "lag_of_the_lift": (),
    }


def test_the_gap_that_was_set_wrong_explains_the_play(review_of):
    """Play is in proportion to the gap of the hold-downs, all else as it is."""
    test = review_of("potting_bench/tested").tests[1]
    first = test.explanations[0]
    assert first.name == "ring.hold_down.gap"
    assert first.needed == pytest.approx(0.15e-3 * test.read / test.predicted, rel=1e-6)


def test_the_lag_gives_the_shear_modulus(review_of):
    """T L / (G J) r, Gere and Goodno (2009), 3.3: G is as the lag the other way round."""
    test = review_of("potting_bench/tested").tests[2]
    arm, length, force = 0.060, 0.380, 200.0  # all of the force may stand over the last lever
    polar = pi * 0.020**4 / 32
    lag = force * arm / 81e9 / polar * length * arm  # G of steel, EN 1993-1-1, 3.2.6
    assert test.calibration.name == CALIBRATES
    assert test.calibration.after == pytest.approx(81e9 * lag / test.read, rel=1e-6)


def test_what_stands_on_the_calibrated_value_says_so(review_of):
    found = review_of("potting_bench/tested").findings
    assert {each.name for each in found if each.calibrated} == {"lift.lifts_level"}


@pytest.mark.parametrize("kind", ["text", "markdown", "page", "json"])
def test_every_report_says_what_is_calibrated(kind, capsys, monkeypatch):
    monkeypatch.chdir(SPECIMENS)
    main(["check", "potting_bench/tested.yaml", "--no-remedies", "--format", kind])
    told = " ".join(capsys.readouterr().out.split())
    assert CALIBRATES in told
    assert "alibrate" in told


def test_sheets_and_comparisons_say_it_too(capsys, monkeypatch):
    monkeypatch.chdir(SPECIMENS / "potting_bench")
    for words in (
        ["sheet", "tested.yaml", "--only", "weight"],
        ["compare", "revision_c.yaml", "tested.yaml"],
        ["compare", "revision_c.yaml", "tested.yaml", "--format", "markdown"],
    ):
        main(words)
        told = " ".join(capsys.readouterr().out.split()).replace("\\", "")
        assert f"Calibrated: {CALIBRATES} is 72575 MPa" in told, words


def test_what_matters_and_tolerances_leave_measurements_alone(capsys, monkeypatch):
    monkeypatch.chdir(SPECIMENS)
    words = ["check", "potting_bench/tested.yaml", "--what-matters", "--tolerance"]
    assert main(words) == 0  # what a reading finds should be looked into, and is no must
    assert "play_at_the_rim.agrees" in capsys.readouterr().out
