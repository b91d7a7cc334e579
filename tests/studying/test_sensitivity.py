"""What matters, against whole reviews of files in which one value is a little more or less."""

from collections.abc import Callable
from pathlib import Path

import pytest

from reviewer.judging.finding import Finding
from reviewer.judging.influence import Influence
from reviewer.judging.remedies import Change
from reviewer.judging.reviewed import Review
from reviewer.judging.rule import Rule
from reviewer.studying.rewriting import rewritten
from reviewer.studying.sensitivity import is_concerned, with_influences
from reviewer.studying.study import key_of

Reviewed = Callable[[str], Review]
DESIGNS = Path(__file__).parent / "designs"
NAMES = [path.name for path in sorted(DESIGNS.glob("*.yaml"))]
STEP = 0.005
MOST = 5  # influences of a finding that are checked


def finding_of(review: Review, like: Finding) -> Finding:
    return next(each for each in review.findings if key_of(each) == key_of(like))


def moved(text: str, review: Review, influence: Influence, by: float, reviewed: Reviewed) -> Review:
    """The review of the file with one value changed by a part of it."""
    assert review.design is not None
    owners = {**review.design.parts, **review.design.loads}
    values = [owners[influence.part].given.get(influence.field)]
    values += [
        each.overrides.get((influence.part, influence.field))
        for each in review.design.configurations
    ]
    given = next(each for each in values if each and each.place == influence.place)
    assert given.quantity is not None
    unit = given.quantity.unit
    line = text.splitlines()[given.place.line - 1]
    quote = '"' if line[given.place.column - 1] == '"' else ""
    new = f"{given.value * (1 + by) / unit.factor!r} {unit.symbol}"
    change = Change(influence.part, influence.field, given.text, new, given.place, quote)
    return reviewed(rewritten(text, [change]))


@pytest.mark.parametrize("name", NAMES)
def test_influences_are_the_differences_of_whole_reviews(
    name: str, rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    text = (DESIGNS / name).read_text(encoding="utf-8")
    review = with_influences(reviewed(text), rules)
    concerned = [each for each in review.findings if is_concerned(each)]
    assert concerned
    for finding in concerned:
        for influence in (finding.influences or ())[:MOST]:
            more, less = (
                finding_of(moved(text, review, influence, by, reviewed), finding).utilisation
                for by in (STEP, -STEP)
            )
            assert influence.effect == pytest.approx(more - less, rel=1e-6, abs=1e-9)


def elasticities(
    name: str, part: str, rule: str, rules: tuple[Rule, ...], reviewed: Reviewed
) -> dict[str, float]:
    text = (DESIGNS / name).read_text(encoding="utf-8")
    review = with_influences(reviewed(text), rules)
    found = next(each for each in review.findings if each.name == f"{part}.{rule}")
    return {each.field: each.elasticity for each in found.influences or ()}


def test_a_thickness_that_a_cube_root_asks_for(rules: tuple[Rule, ...], reviewed: Reviewed) -> None:
    # t = (F L^3 / (4 E h w))^(1/3), with w = L / 150: t grows with F^(1/3), L^(2/3), h^(-1/3).
    found = elasticities("thin_skirt.yaml", "apron", "thick_enough", rules, reviewed)
    assert found["thickness"] == pytest.approx(-1, rel=1e-3)
    assert found["diameter"] == pytest.approx(2 / 3, rel=1e-3)
    assert found["height"] == pytest.approx(-1 / 3, rel=1e-3)
    assert found["force"] == pytest.approx(1 / 3, rel=1e-3)


def test_the_strongest_comes_first(rules: tuple[Rule, ...], reviewed: Reviewed) -> None:
    text = (DESIGNS / "weak_arm.yaml").read_text(encoding="utf-8")
    for finding in with_influences(reviewed(text), rules).findings:
        sizes = [abs(each.elasticity) for each in finding.influences or ()]
        assert sizes == sorted(sizes, reverse=True)


def test_only_what_fails_or_nearly_does(rules: tuple[Rule, ...], reviewed: Reviewed) -> None:
    text = (DESIGNS / "weak_arm.yaml").read_text(encoding="utf-8")
    for finding in with_influences(reviewed(text), rules).findings:
        near = finding.verdict == "fail" or finding.utilisation > 0.9
        assert (finding.influences is not None) == near
