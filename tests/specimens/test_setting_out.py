"""The bench's circles, set out as a maker would: the one mark that was set wrong is found."""

from pathlib import Path

import pytest

from reviewer.command.main import main

NAME = "potting_bench/setting_out"


@pytest.fixture(scope="module")
def verdicts(review_of):
    return {each.name: each for each in review_of(NAME).findings}


def test_the_mark_that_was_set_wrong_is_named(verdicts):
    """Mark 7 was set 2.3 mm too far round when the lengths were made up."""
    finding = verdicts["bracket_marks.marks_in_place"]
    assert finding.verdict == "fail"
    assert "Mark 7 stands" in finding.message
    assert "towards mark 6" in finding.message
    assert "Marks out of place: 7, of 16." in finding.message


def test_its_error_is_what_was_put_in(review_of, number_of):
    found = review_of(NAME)
    case = found.derived.cases.names[0]
    along = number_of(found, "bracket_marks", "worst.along", case)
    uncertain = number_of(found, "bracket_marks", "worst.uncertainty", case)
    assert abs(along - 2.3e-3) < uncertain
    assert number_of(found, "bracket_marks", "out", case) == 1


def test_what_was_not_measured_is_not_judged(verdicts):
    assert verdicts["hold_down_marks.marks_in_place"].verdict == "not applicable"
    assert verdicts["hold_down_marks.can_be_set"].verdict == "pass"
    assert verdicts["bracket_marks.lengths_agree"].verdict == "pass"


def test_the_fixture_lines_the_arms_up(verdicts):
    assert verdicts["arm_line.end_in_line"].verdict == "pass"
    assert verdicts["arm_line.alike"].verdict == "pass"


def test_the_error_is_traced_to_what_was_measured(capsys):
    path = Path(__file__).parents[2] / "specimens" / f"{NAME}.yaml"
    assert main(["trace", str(path), "bracket_marks.worst.error"]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "bracket_marks.measured.chords = 16 points" in told
