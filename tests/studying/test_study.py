"""Studies along the sample axis are what as many whole reviews say, to the last bit."""

from collections.abc import Callable
from itertools import product

import numpy as np
import pytest

from reviewer.judging.reviewed import Review
from reviewer.judging.rule import Rule
from reviewer.studying.governing import on_cases, study_whole
from reviewer.studying.study import NOT_APPLICABLE, Point, key_of, study, vary

Reviewed = Callable[[str], Review]
DESIGN = """\
design: Arms around a post
lengths: mm
parts:
  post: {{kind: base, feet: {{count: {feet}, circle: 1200}}, height: 700, mass: 80 kg}}
  arms:
    kind: arm
    carried_by: post
    count: 4
    section: {{tube: [40, 40, 2]}}
    material: {material}
    root: {{radius: 60}}
    reach: {reach}
  trays: {{kind: tray, carried_by: arms, count: 4, material: birch plywood, thickness: 15,
    inner: 150, depth: 260, width: 300}}
configurations:
  closed: {{}}
  open: {{arms.support.radius: {radius}, trays.offset: 60}}
loads:
  pots: {{force: 200 N, over: trays}}
  hand: {{force: 150 N, on: trays, at: rim, all_round: true}}
"""
AT_FIRST = {"feet": 5, "material": "6063-T5", "reach": 400, "radius": 430}


def reviewed_at(reviewed: Reviewed, **values: object) -> Review:
    return reviewed(DESIGN.format(**{**AT_FIRST, **values}))


def assert_same(
    found: dict,
    index: int,
    whole: Review,  # type: ignore[type-arg]
) -> None:
    judged = {key_of(each): each for each in whole.findings}
    known = 0
    for key, course in found.items():
        if key not in judged:  # of rules for all parts, those that do not apply are not told
            assert course.rule.scope.is_of_any
            assert course.verdict[index] == NOT_APPLICABLE
        elif judged[key].verdict in ("pass", "fail"):
            known += 1
            assert course.utilisation[index] == pytest.approx(
                judged[key].utilisation, rel=0, abs=0, nan_ok=True
            )
    assert known > 5


@pytest.mark.parametrize(
    ("field", "name", "sizes"),
    [
        (("arms", "reach"), "reach", (0.3, 0.4, 0.55)),
        (("arms", "support.radius", 1), "radius", (0.35, 0.43, 0.44)),
    ],
)
def test_a_number_varied_is_the_file_with_that_number(
    field: tuple[str, str], name: str, sizes: tuple[float, ...],
    rules: tuple[Rule, ...], reviewed: Reviewed,
) -> None:  # fmt: skip
    derived = reviewed_at(reviewed).derived
    assert derived is not None
    found = study(derived, [{field: size} for size in sizes], rules)
    for index, size in enumerate(sizes):
        assert_same(found, index, reviewed_at(reviewed, **{name: f"{size} m"}))


def test_an_override_of_what_a_formula_says_and_what_is_above_it(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    # Closed, the radius follows from the reach; open, it is what the configuration says.
    derived = reviewed_at(reviewed).derived
    assert derived is not None
    pairs = list(product((0.3, 0.45), (0.36, 0.42)))
    points: list[Point] = [
        {("arms", "reach"): reach, ("arms", "support.radius", 1): radius} for reach, radius in pairs
    ]
    found = study(derived, points, rules)
    columns = {field: np.array([point[field] for point in points]) for field in points[0]}
    slot = derived.values.plan.slots["arms", "support.radius"]
    radii = vary(derived, columns, {}).number(slot)
    for index, (reach, radius) in enumerate(pairs):
        whole = reviewed_at(reviewed, reach=f"{reach} m", radius=f"{radius} m")
        assert_same(found, index, whole)
        assert whole.derived is not None
        assert np.array_equal(radii[index], whole.derived.values.number(slot)[0])


def test_choices_and_numbers_together_come_back_in_their_places(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    derived = reviewed_at(reviewed).derived
    assert derived is not None
    steel = reviewed_at(reviewed, material="S235").derived
    assert steel is not None
    metals = {
        "6063-T5": derived.design.parts["arms"].given["material"].value,
        "S235": steel.design.parts["arms"].given["material"].value,
    }
    tried = list(product(metals, (4, 6), (0.35, 0.5)))
    points: list[Point] = [
        {
            ("arms", "material"): metals[metal],
            ("post", "feet.count"): feet,
            ("arms", "reach"): reach,
        }
        for metal, feet, reach in tried
    ]
    found = study(derived, points, rules)
    for index, (metal, feet, reach) in enumerate(tried):
        whole = reviewed_at(reviewed, material=metal, feet=feet, reach=f"{reach} m")
        assert_same(found, index, whole)


def test_on_some_cases_everything_is_as_on_all(rules: tuple[Rule, ...], reviewed: Reviewed) -> None:
    derived = reviewed_at(reviewed).derived
    assert derived is not None
    chosen = [1, 3, 4]
    some = on_cases(derived, chosen)
    assert some.cases.names == tuple(derived.cases.names[each] for each in chosen)
    for slot, value in enumerate(derived.values.values):
        if isinstance(value, np.ndarray) and value.dtype.kind == "f":
            expected = value[:, chosen] if value.shape[1] > 1 else value
            assert np.array_equal(some.values.values[slot], expected, equal_nan=True)


def test_governing_cases_find_what_all_cases_find(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    derived = reviewed_at(reviewed).derived
    assert derived is not None
    points: list[Point] = [{("arms", "reach"): float(size)} for size in np.linspace(0.2, 0.8, 13)]
    few, whole = study_whole(derived, points, rules), study(derived, points, rules)
    for key, course in few.items():
        assert np.array_equal(course.verdict, whole[key].verdict)
        assert course.utilisation == pytest.approx(whole[key].utilisation, rel=1e-9, nan_ok=True)
