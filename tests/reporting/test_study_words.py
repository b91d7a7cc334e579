"""What studies found, in words: shares of samples, what moves a finding, what may fail."""

from collections.abc import Callable
from dataclasses import replace
from math import nan

import pytest

from reviewer.judging.influence import Influence
from reviewer.judging.reviewed import Review
from reviewer.judging.scatter import Scatter
from reviewer.notation.problem import Place
from reviewer.reporting.sheet import Style
from reviewer.reporting.study_words import influence_words, may_fail, percent, scatter_words
from reviewer.reporting.text import TextReport

Reviewed = Callable[..., Review]
LOOSE = Scatter(1.2, True, 0.07075, 0.0, 20_000, "ring.gap", 0.997)


@pytest.mark.parametrize(
    ("share", "told"),
    [
        (0.0, "none"),
        (0.00005, "less than 0.1 %"),
        (0.0005, "0.1 %"),
        (0.125, "12.5 %"),
        (0.9999, "more than 99.9 %"),
        (1.0, "all"),
    ],
)
def test_shares_never_round_to_none_or_all(share: float, told: str) -> None:
    assert percent(share) == told


@pytest.mark.parametrize(
    ("scatter", "told"),
    [
        (
            LOOSE,
            "Within its tolerances it fails at its worst (1.20 of the limit) and fails in 7.1 % "
            "of 20000 samples; ring.gap makes 99.7 % of it.",
        ),
        (
            Scatter(0.9, False, 0.0, 0.0, 100, None, 0.0),
            "Within its tolerances it holds at its worst (0.90 of the limit) and fails in none of "
            "100 samples.",
        ),
        (
            Scatter(nan, None, 0.5, 0.25, 100, None, 0.0),
            "Within its tolerances it cannot be judged at its worst and fails in 50 % of 100 "
            "samples, unknown in 25 %.",
        ),
        (None, ""),
    ],
)
def test_how_a_finding_scatters(scatter: Scatter | None, told: str) -> None:
    assert scatter_words(scatter) == told


def test_what_moves_a_finding_and_what_may_fail(stage: Review, questions: dict[str, str]) -> None:
    place = Place("stage.yaml", 6, 31, 36)
    moved = (
        Influence("curtain", "least", "10 mm", place, -0.025, -1.0),
        Influence("curtain", "most", "40 mm", place, 0.0031, 0.124),
    )
    findings = [
        replace(each, influences=moved, scatter=LOOSE)
        if each.name in ("curtain.wide_enough", "hatch.wide_enough")
        else each
        for each in stage.findings
    ]
    holds = next(each for each in findings if each.name == "hatch.wide_enough")
    assert influence_words(holds) == (
        "One per cent more of each moves it so: curtain.least -1 %, curtain.most +0.12 %."
    )
    assert may_fail(holds)
    text = TextReport(Style(80), questions).add(replace(stage, findings=tuple(findings)))
    words = " ".join(text.split())
    assert words.count("One per cent more of each moves it so") == 2
    assert "WHAT TOLERANCES MAY BREAK" in words
    assert "hatch.wide_enough, 0.83 nominal Within its tolerances it fails" in words


def test_where_nothing_may_fail_the_nearest_is_named(
    stage: Review, questions: dict[str, str]
) -> None:
    tight = Scatter(0.91, False, 0.0, 0.0, 20_000, "hatch.least", 1.0)
    findings = [
        replace(each, scatter=tight) if each.name == "hatch.wide_enough" else each
        for each in stage.findings
    ]
    text = TextReport(Style(80), questions).add(replace(stage, findings=tuple(findings)))
    words = " ".join(text.split())
    assert "WITHIN ITS TOLERANCES" in words
    assert "hatch.wide_enough: 0.83, at its worst 0.91, by hatch.least" in words
