"""What a shop has and allows reaches quantities and rules under `shop.`."""

from pathlib import Path

import pytest

from reviewer.deriving.structure import structure_of
from reviewer.judging.shop_packs import in_force_for
from reviewer.judging.shop_ways import with_shop
from reviewer.parts.registry import KINDS
from reviewer.reading.folder import Folder
from reviewer.reading.read_design import read_design
from reviewer.reviewing import review_under

SHOP = "shop: Hill\nlengths: mm\ncutters: {one: {diameter: 6}}\nallowances: {kerf: %s}\n"
DESIGN = """design: D
lengths: mm
parts:
  top: {kind: top, material: birch plywood, thickness: 18, diameter: 500}
  cut: {kind: saw_cut, of: top}
"""


def in_force(folder: Path, kerf: str = "3.2"):
    return in_force_for(SHOP % kerf, str(folder / "shop.yaml"), Folder(folder))


@pytest.mark.parametrize(("kerf", "expected"), [("3.2", 0.0032), ("1/8 in", 0.003175)])
def test_allowances_reach_a_kind(tmp_path: Path, kerf: str, expected: float) -> None:
    found = review_under(in_force(tmp_path, kerf), DESIGN, "d.yaml")
    values = found.derived.values
    assert values.at(values.plan.slot("cut", "kerf"), 0) == pytest.approx(expected)
    assert values.at(values.plan.slot("shop", "kerf"), 0) == pytest.approx(expected)
    assert values.plan.nodes[values.plan.slot("shop", "kerf")].name == "shop.kerf"


def test_a_rule_of_the_shop_may_name_what_the_shop_says(tmp_path: Path) -> None:
    rule = """- rule: saw_cut.thin_kerf
  question: Is the kerf thin?
  require: shop.kerf <= 3 mm
  level: note
  stage: cutting
  says: The kerf is {shop.kerf}.
  because: So.
  source: us
  proof: {holds: {shop.kerf: 2.9 mm}, fails: {shop.kerf: 3.1 mm}}
"""
    shop = SHOP % "3.2"
    found = in_force_for(
        shop, str(tmp_path / "shop.yaml"), Folder(tmp_path), more=[(rule, "thin.yaml")]
    )
    assert found.problems == ()
    findings = review_under(found, DESIGN, "d.yaml").findings
    (thin,) = [each for each in findings if each.rule == "saw_cut.thin_kerf"]
    assert (thin.verdict, thin.message) == ("fail", "The kerf is 3.2 mm.")


def test_designs_of_one_shop_share_a_plan_and_those_of_another_do_not(tmp_path: Path) -> None:
    ours, theirs = in_force(tmp_path), in_force(tmp_path, "2")

    def structure(under):
        design, _ = read_design(DESIGN, "d.yaml", KINDS)
        assert design is not None
        return structure_of(with_shop(design, under.shop, under.tables))

    assert structure(ours) is structure(ours)
    assert structure(ours) is not structure(theirs)
