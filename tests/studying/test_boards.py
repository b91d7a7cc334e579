"""Parts cut from one board share what it is off; remedies and sizes are those of the board."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from math import sqrt

import pytest
from scipy import stats

from reviewer.judging.builtin import builtin_limits
from reviewer.judging.pack import Pack, in_order, read_pack
from reviewer.judging.reviewed import Review
from reviewer.judging.rule import Rule
from reviewer.parts.registry import KINDS
from reviewer.reviewing import review_source
from reviewer.studying.remedy import with_remedies
from reviewer.studying.tolerance import with_scatter

DAY = date(2026, 11, 25)
PILE = """\
- rule: top.pile
  for: {tops: every top}
  question: Does the pile fit under the shelf?
  require: sum of tops.thickness <= 36.3 mm
  level: must
  stage: cutting
  says: The pile is {demand}; {capacity} is there.
  because: It has to go under.
  source: geometry
  proof:
    holds: {tops.thickness: [18 mm, 18 mm]}
    fails: {tops.thickness: [18 mm, 19 mm]}
"""
BOARD = "{material: birch plywood, thickness: 18 mm ± 0.3 mm}"
ONE_BOARD = f"""\
design: Pile
boards: {{oak: {BOARD}}}
parts:
  lower: {{kind: top, board: oak, diameter: 500 mm}}
  upper: {{kind: top, carried_by: lower, board: oak, diameter: 400 mm}}
"""
TWO_BOARDS = ONE_BOARD.replace("{oak: ", f"{{ash: {BOARD}, oak: ").replace(
    "lower, board: oak", "lower, board: ash"
)


@pytest.fixture(scope="session")
def pile() -> Pack:
    pack = read_pack(PILE, "pile.yaml", KINDS, builtin_limits())
    assert pack.problems == ()
    return pack


@pytest.mark.parametrize(
    ("text", "sigma", "part"),
    [
        # Limits at three sigma: twice one deviation, or two that are independent of each other.
        (ONE_BOARD, 2 * 0.1, 1.0),
        (TWO_BOARDS, sqrt(2) * 0.1, 0.5),
    ],
)
def test_what_a_board_is_off_is_shared(pile: Pack, text: str, sigma: float, part: float) -> None:
    review = review_source(text, "pile.yaml", [pile], DAY)
    found = with_scatter(review, in_order([pile])[0]).findings[0].scatter
    assert found is not None
    assert found.corner == pytest.approx(36.6 / 36.3)
    assert found.share == pytest.approx(stats.norm.sf(0.3 / sigma), abs=0.002)
    assert found.band in ("oak.thickness", "ash.thickness")
    assert found.part == pytest.approx(part)


def test_a_rule_may_ask_for_the_study_itself(pile: Pack) -> None:
    """Of its findings alone, so that the others cost nothing."""
    review = review_source(ONE_BOARD, "pile.yaml", None, DAY)
    rules = in_order([pile])[0]
    assert not any(rule.tolerance for rule in rules)
    asking = read_pack(PILE.replace("  proof:", "  tolerance: true\n  proof:"), "pile.yaml", KINDS)
    assert [rule.tolerance for rule in asking.rules] == [True]
    found = with_scatter(review, rules, of=frozenset())
    assert all(each.scatter is None for each in found.findings)


SAGGING = """\
design: Sagging lid
lengths: mm
boards:
  thin: {material: birch plywood, thickness: 6.5}
parts:
  box: {kind: base, feet: {count: 4, circle: 700}, height: 300, mass: 60 kg}
  post: {kind: top, carried_by: box, board: thin, diameter: 200}
  lid: {kind: top, carried_by: post, board: thin, diameter: 620, overhang: 260}
loads:
  pot: {force: 120 N, on: lid, at: rim, all_round: true}
"""


def test_a_remedy_changes_the_board(
    reviewed: Callable[[str], Review], rules: tuple[Rule, ...]
) -> None:
    review = reviewed(SAGGING)
    sags = next(each for each in review.findings if each.name == "lid.edge_sags")
    assert sags.verdict == "fail"
    assert sags.change[0] == "thin.thickness (6.5, line 4)"
    found = next(
        each for each in with_remedies(review, rules).findings if each.name == "lid.edge_sags"
    )
    assert found.remedies is not None
    offered = [change for each in found.remedies.offered for change in each.changes]
    changes = [change for change in offered if change.part == "thin"]
    assert changes
    for change in changes:
        mended = reviewed(SAGGING.replace("thickness: 6.5", f"thickness: {change.new}"))
        again = {each.name: each.verdict for each in mended.findings}
        assert again["lid.edge_sags"] == "pass"


def test_the_same_as_each_on_its_own(reviewed: Callable[[str], Review]) -> None:
    """Without a tolerance a board is only a place where two values stand once."""
    apart = SAGGING.replace("boards:\n  thin: {material: birch plywood, thickness: 6.5}\n", "")
    apart = apart.replace("board: thin", "material: birch plywood, thickness: 6.5")
    one, other = (
        {
            each.name: replace(each, place=None, change=(), slots=())  # type: ignore[arg-type]
            for each in reviewed(text).findings
        }
        for text in (SAGGING, apart)
    )
    assert {name: each.utilisation for name, each in one.items()} == pytest.approx(
        {name: each.utilisation for name, each in other.items()}, nan_ok=True
    )
    assert {name: each.message for name, each in one.items()} == {
        name: each.message for name, each in other.items()
    }
