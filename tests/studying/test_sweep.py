"""Sweeps against whole reviews of files with each size in them, and against the cube law."""

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from reviewer.judging.reviewed import Review
from reviewer.judging.rule import Rule
from reviewer.studying.mapping import mapping, thinned
from reviewer.studying.scaling import scaling
from reviewer.studying.stops import NoSizes, NoSuchField, field_of, stops_of
from reviewer.studying.study import FAILS, HELD, NOT_APPLICABLE, OPEN, PASSES, REVIEW, key_of
from reviewer.studying.sweep import Sweep, sweep

Reviewed = Callable[[str], Review]
DESIGNS = Path(__file__).parent / "designs"
NOTHING_SOLD = "there is nothing of this in the stock tables within the range"
VERDICTS = {"pass": (PASSES,), "fail": (FAILS,), "open": (OPEN, HELD), "review": (REVIEW,)}
BENDING_RING = """\
design: Bending ring
parts:
  foot: {kind: base, feet: {count: 6, circle: 900 mm}, height: 100 mm, mass: 200 kg}
  ring:
    kind: slewing_ring
    carried_by: foot
    mass: 0 kg
    plate: {material: MDF, thickness: 15 mm, diameter: 600 mm}
    carry: {bearing: "6201", count: 12, circle: 400 mm, stiffness: 100000 kN/mm}
    hold_down: {bearing: "6201", count: 12, circle: 400 mm, stiffness: 100000 kN/mm}
loads:
  hand: {force: 50 N, on: ring, at: rim, all_round: true}
"""


def text_of(name: str) -> str:
    return (DESIGNS / name).read_text(encoding="utf-8")


def swept(
    text: str, name: str, rules: tuple[Rule, ...], reviewed: Reviewed, stock: bool = False
) -> Sweep:
    derived = reviewed(text).derived
    assert derived is not None
    given = field_of(derived.design, name)
    stops = stops_of(derived, given, None, None, stock=stock)
    return sweep(derived, rules, given, stops, between=not stock)


@pytest.mark.parametrize(
    ("name", "field", "old", "new", "stock"),
    [
        ("weak_arm.yaml", "arm.reach", "reach: 700", "reach: {} mm", False),
        ("thin_skirt.yaml", "apron.thickness", '"6 mm ± 0.3 mm"', "{} mm", True),
        ("thin_skirt.yaml", "apron.supports", "supports: 6", "supports: {}", True),
        ("small_ring.yaml", "ring.carry.circle", "6, circle: 340}", "6, circle: {}}}", False),
        ("late_slide.yaml", "trays.offset", "trays.offset: 190", "trays.offset: {} mm", False),
    ],
)  # fmt: skip
def test_every_size_is_judged_as_a_whole_review_does(
    name: str, field: str, old: str, new: str, stock: bool,
    rules: tuple[Rule, ...], reviewed: Reviewed,
) -> None:  # fmt: skip
    text = text_of(name)
    assert text.count(old) == 1
    found = swept(text, field, rules, reviewed, stock)
    for index in range(0, len(found.stops), max(1, len(found.stops) // 5)):
        size = found.stops[index].size
        written = str(int(size)) if found.given.value.quantity is None else repr(size * 1e3)
        after = reviewed(text.replace(old, new.format(written)))
        judged = {key_of(each): each for each in after.findings}
        for course in found.courses:
            if course.key not in judged and course.rule.scope.is_of_any:  # then it is not told
                assert course.verdict[index] == NOT_APPLICABLE
                continue
            whole = judged[course.key]
            expected = VERDICTS.get(whole.verdict, (NOT_APPLICABLE,))
            assert course.verdict[index] in expected, (course.name, found.stops[index].text)
            if whole.verdict in ("pass", "fail"):
                assert course.utilisation[index] == pytest.approx(
                    whole.utilisation, rel=1e-9, nan_ok=True
                )


@pytest.mark.parametrize("field", ["ring.carry.count", "ring.carry.bearing", "ring.plate.material"])
def test_a_choice_has_nothing_between_its_stops(
    rules: tuple[Rule, ...], reviewed: Reviewed, field: str
) -> None:
    """The ends of what holds lie at stops: there is no count of 5.3, and no half of a bearing."""
    derived = reviewed(text_of("small_ring.yaml")).derived
    assert derived is not None
    given = field_of(derived.design, field)
    found = sweep(derived, rules, given, stops_of(derived, given, None, None, stock=False))
    for span in found.spans:
        assert span.first in found.stops
        assert span.last in found.stops


def test_the_rim_of_a_thin_plate_sinks_with_the_cube_of_its_thickness(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    # Plate theory: the stiffness is E t^3 / (12 (1 - nu^2)); the rollers add next to nothing.
    # One class of MDF, over 12 to 19 mm, so that the modulus is the same throughout.
    derived = reviewed(BENDING_RING).derived
    assert derived is not None
    given = field_of(derived.design, "ring.plate.thickness")
    found = sweep(derived, rules, given, stops_of(derived, given, "13 mm", "18 mm", stock=False))
    sinks = next(each for each in found.courses if each.name == "ring.rim_sinks")
    sizes = np.array([stop.size for stop in found.stops])
    cubes = sinks.utilisation * sizes * sizes * sizes
    assert np.all(np.abs(cubes / cubes[found.now] - 1) < 0.01)


def test_the_ends_of_what_passes_pass_and_a_hair_beyond_does_not(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    text = text_of("late_slide.yaml")
    found = swept(text, "trays.offset", rules, reviewed)
    assert len(found.spans) == 1
    end = found.spans[0].last.size
    # By hand: 200 + offset + half of 300 lies on the arm to 470, as far as the rule allows.
    for size, holds in ((end, True), (end * 1.0005, False)):
        after = reviewed(text.replace("trays.offset: 190", f"trays.offset: {size * 1e3} mm"))
        concerned = {each.key for each in found.concerned}
        verdicts = {each.verdict for each in after.findings if key_of(each) in concerned}
        assert ("fail" not in verdicts) == holds


def test_what_governs_is_used_most(rules: tuple[Rule, ...], reviewed: Reviewed) -> None:
    found = swept(text_of("small_ring.yaml"), "ring.carry.circle", rules, reviewed)
    first = 0
    for index, course in found.takeovers():
        assert index >= first
        first = index
        most = max(
            float(each.utilisation[index])
            for each in found.concerned
            if each.verdict[index] in (PASSES, FAILS)  # what waits for another governs nothing
            and not np.isnan(each.utilisation[index])
        )
        assert course.verdict[index] in (PASSES, FAILS)
        assert course.utilisation[index] == most


def test_stock_is_what_is_sold(rules: tuple[Rule, ...], reviewed: Reviewed) -> None:
    # Birch plywood in millimetres: Handbook of Finnish Plywood, from memory (sheets.tsv).
    found = swept(text_of("thin_skirt.yaml"), "apron.thickness", rules, reviewed, stock=True)
    assert [stop.text for stop in found.stops] == [
        f"{size} mm"
        for size in ("3", "4", "6", "6.5", "9", "12", "15", "18", "21", "24", "27", "30")
    ]
    assert found.stops[found.now].text == "6 mm"


def test_a_map_has_each_pair_as_two_sweeps_do(rules: tuple[Rule, ...], reviewed: Reviewed) -> None:
    text = text_of("weak_arm.yaml")
    derived = reviewed(text).derived
    assert derived is not None
    given = (field_of(derived.design, "arm.reach"), field_of(derived.design, "lamp.force"))
    stops = tuple(stops_of(derived, each, None, None, stock=False) for each in given)
    found = mapping(derived, rules, given, (stops[0], stops[1]))
    row, column = 3, 2
    changed = text.replace("reach: 700", f"reach: {found.down[row].size * 1e3}").replace(
        "200 N", f"{found.across[column].size} N"
    )
    judged = {key_of(each): each for each in reviewed(changed).findings}
    for course in found.concerned:
        if course.verdict[row * len(found.across) + column] in (PASSES, FAILS):
            used = course.utilisation[row * len(found.across) + column]
            assert used == pytest.approx(judged[course.key].utilisation, rel=1e-9)


def test_a_map_keeps_both_ends_and_the_present_size(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    derived = reviewed(text_of("weak_arm.yaml")).derived
    assert derived is not None
    given = field_of(derived.design, "arm.reach")
    stops = stops_of(derived, given, "310 mm", "1200 mm", stock=False)
    assert thinned(stops, given, 2) == (stops[0], stops[-1])
    for most in range(3, 12):
        kept = thinned(stops, given, most)
        assert len(kept) <= most
        assert {stops[0].size, stops[-1].size, 0.7} <= {stop.size for stop in kept}


def test_a_scaled_design_buys_its_sheets_and_bars(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    derived = reviewed(text_of("inch_shaft.yaml")).derived
    assert derived is not None
    found = scaling(derived, rules, (0.8, 1.0, 1.4))
    assert {each.name for each in found.snapped} == {"rod.diameter", "plate.thickness"}
    inch = 0.0254
    at = dict(zip(found.factors, found.points, strict=True))
    assert at[0.8]["plate", "thickness"] == pytest.approx(5 / 8 * inch)  # 0.6 in, of 1/2 and 5/8
    assert at[1.4]["plate", "thickness"] == pytest.approx(1 * inch)  # 1.05 in
    assert at[1.4]["rod", "diameter"] == pytest.approx(3 / 4 * inch)  # 0.7 in, of 5/8 and 3/4
    assert at[1.4]["frame", "height"] == pytest.approx(1.4 * 16.5 * inch)
    whole = derived.values
    assert at[1.0] == {field: whole.at(whole.plan.slots[field[:2]], 0) for field in at[1.0]}


def test_at_its_own_size_a_scaled_design_is_itself(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    review = reviewed(text_of("small_ring.yaml"))
    assert review.derived is not None
    found = scaling(review.derived, rules, (1.0,))
    for course in found.courses:
        whole = next((each for each in review.findings if key_of(each) == course.key), None)
        if whole is None:
            assert course.rule.scope.is_of_any  # where it does not apply, it is not told
        elif whole.verdict in ("pass", "fail"):
            assert course.utilisation[0] == pytest.approx(whole.utilisation, rel=1e-9, nan_ok=True)


def test_a_name_that_is_not_there(reviewed: Reviewed) -> None:
    derived = reviewed(text_of("weak_arm.yaml")).derived
    assert derived is not None
    with pytest.raises(NoSuchField) as told:
        field_of(derived.design, "arm.raech")
    assert told.value.near == "arm.reach"


@pytest.mark.parametrize(
    ("field", "low", "high", "stock", "what"),
    [
        ("arm.reach", "800 mm", "700 mm", False, "the range is empty"),
        ("arm.reach", None, None, True, NOTHING_SOLD),
        ("arm.material", "1 mm", None, False, "a choice has no range"),
        ("post.feet.count", "3.5", None, False, "this is counted"),
        ("post.feet.count", "90", "95", False, NOTHING_SOLD),
    ],
)  # fmt: skip
def test_a_range_that_is_none(
    field: str, low: str | None, high: str | None, stock: bool, what: str, reviewed: Reviewed
) -> None:
    derived = reviewed(text_of("weak_arm.yaml")).derived
    assert derived is not None
    with pytest.raises(NoSizes) as told:
        stops_of(derived, field_of(derived.design, field), low, high, stock=stock)
    assert told.value.what == what
