"""Measurements against predictions: closed forms of a cantilever, calibration, what goes stale."""

from pathlib import Path
from typing import Any

import pytest
from scipy.optimize import brentq

from reviewer import review
from reviewer.judging import measured as judged
from reviewer.judging.reviewed import Review
from reviewer.reporting.data import review_data
from reviewer.reporting.measured_words import settled_in
from reviewer.studying.remedy import with_remedies
from reviewer.studying.staleness import fingerprint

ARM = """\
design: A bracket
revision: {revision}
lengths: mm
service: {service}
parts:
  post: {{kind: base, feet: {{count: 4, circle: 900}}, height: 700, mass: 60 kg}}
  arm:
    kind: arm
    carried_by: post
    section: {{solid: [{width}, {height}]}}
    material: S235
    root: {{radius: 100}}
    reach: 500
    mass: {mass}
loads:
  lamp: {{force: 150 N, on: arm, at: rim}}
  wind: {{force: 20 N, on: arm, at: rim}}
measured:
  - {{{measured}}}
"""
SAG = "quantity: arm.tip_deflection, under: lamp, zero: own weight, by: N, on: 2026-11-20"
WIDTH, HEIGHT, REACH, FORCE = 0.030, 0.020, 0.500, 150.0
E, G = 210e9, 81e9  # EN 1993-1-1, 3.2.6
SCATTER = 0.05  # limit.prediction_scatter


def sag(modulus: float = E, height: float = HEIGHT, force: float = FORCE) -> float:
    """A cantilever of rectangular section with its load at the tip, shear taken in.

    Gere and Goodno, Mechanics of Materials (2009), table G-1 case 4, and Timoshenko's shear
    coefficient of 5/6.
    """
    second_moment = WIDTH * height**3 / 12
    bending = force * REACH**3 / (3 * modulus * second_moment)
    return bending + force * REACH / (5 / 6 * G * WIDTH * height)


def text(measured: str, **more: Any) -> str:
    words = {"revision": "B", "service": "private", "width": "30", "height": "20"}
    words |= {"mass": "0.000001 kg", **more}  # so light that only the load bends it
    return ARM.format(measured=measured, **words)


def only(found: Review) -> judged.Tested:
    assert found.problems == ()
    assert len(found.tests) == 1
    return found.tests[0]


def verdicts(found: Review) -> dict[str, str]:
    rules = ("still_stands", "agrees", "calibrates")
    return {
        each.name.partition(".")[2]: each.verdict
        for each in found.findings
        if each.rule in {f"measurement.{rule}" for rule in rules}
    }


def millimetres(value: float) -> str:
    return f"{1000 * value:.12g} mm"


def test_the_prediction_is_the_closed_form() -> None:
    test = only(review(text(f"{SAG}, value: {millimetres(sag())}")))
    assert test.predicted == pytest.approx(sag(), rel=1e-6)
    assert test.least == test.most == test.predicted
    assert test.allowed == pytest.approx(SCATTER * sag(), rel=1e-6)
    assert test.agrees
    assert test.explanations == ()


@pytest.mark.parametrize(
    ("step", "factor", "service"),
    [
        ("half", 0.5, "private"),
        ("full", 1.0, "private"),
        ("proof", 1.25, "private"),  # limit.proof_load
        ("proof", 1.5, "public"),
        ("proof, factor: 1.1", 1.1, "public"),
    ],
)
def test_the_steps_of_a_load(step: str, factor: float, service: str) -> None:
    test = only(review(text(f"{SAG}, value: 1 mm, step: {step}", service=service)))
    assert test.predicted == pytest.approx(factor * sag(), rel=1e-6)


def test_own_weight_is_in_the_reading_where_the_gauge_was_not_set_to_zero() -> None:
    def predicted(words: str) -> float:
        return only(review(text(f"{words}, value: 1 mm", mass="2.4 kg"))).predicted

    whole = predicted(SAG.replace("zero: own weight", "zero: nothing"))
    bar = predicted("quantity: arm.tip_deflection, by: N, on: 2026-11-20")
    assert bar == predicted(
        "quantity: arm.tip_deflection, under: own weight, by: N, on: 2026-11-20"
    )
    assert 0.02 * sag() < bar < 0.1 * sag()
    assert predicted(SAG) == pytest.approx(whole - bar, rel=1e-12)


def test_several_loads_stand_together() -> None:
    both = SAG.replace("under: lamp", "under: [lamp, wind]")
    test = only(review(text(f"{both}, value: 1 mm")))
    assert test.predicted == pytest.approx(sag(force=FORCE + 20.0), rel=1e-6)


def test_ten_per_cent_too_much_names_modulus_and_thickness_as_the_closed_form_has_them() -> None:
    read = 1.1 * sag()
    found = review(text(f"{SAG}, value: {millimetres(read)}"))
    by_name = {each.name: each for each in only(found).explanations}
    modulus = brentq(lambda value: sag(modulus=value) - read, 0.5 * E, E, xtol=1.0, rtol=1e-14)
    height = brentq(lambda value: sag(height=value) - read, 0.01, HEIGHT, xtol=1e-15, rtol=1e-14)
    assert by_name["arm.modulus"].now == E
    assert by_name["arm.modulus"].needed == pytest.approx(modulus, rel=1e-6)
    assert by_name["arm.section.height"].needed == pytest.approx(height, rel=1e-6)
    assert by_name["arm.section.height"].text == "20"
    assert by_name["arm.modulus"].place is None  # no file gives it
    message = next(each for each in found.findings if each.name == "measured_1.agrees").message
    assert f"arm.modulus of {modulus / 1e6:.0f} MPa in place of 210000 MPa" in message
    assert "arm.section.height of 19.37 mm in place of 20 mm (line 10)" in message


def test_a_value_with_a_wide_tolerance_explains_it_first() -> None:
    """The change over half the tolerance ranks: 0.63 mm of 2 mm comes before 9 % of a modulus."""
    found = review(text(f"{SAG}, value: {millimetres(1.5 * sag())}", height="20 mm ± 2 mm"))
    first = only(found).explanations[0]
    assert first.name == "arm.section.height"
    assert first.strain == pytest.approx((first.now - first.needed) / 0.002, rel=1e-6)


def test_the_band_is_that_of_the_closed_form_at_the_ends_of_the_tolerance() -> None:
    test = only(review(text(f"{SAG}, value: 1.2 mm", height="20 mm ± 0.2 mm")))
    assert test.most == pytest.approx(sag(height=0.0198), rel=1e-6)
    assert test.least == pytest.approx(sag(height=0.0202), rel=1e-6)


@pytest.mark.parametrize("share", [0.999, 1.001])
def test_what_is_allowed_is_band_and_reading_and_scatter(share: float) -> None:
    band = sag(height=0.0198) - sag()
    own = 0.02e-3
    read = sag() + share * (band + own + SCATTER * sag())
    measured = f"{SAG}, value: {millimetres(read)} ± 0.02 mm"
    found = review(text(measured, height="20 mm ± 0.2 mm"))
    assert verdicts(found)["agrees"] == ("pass" if share < 1 else "fail")
    finding = next(each for each in found.findings if each.name == "measured_1.agrees")
    assert finding.utilisation == pytest.approx(share, rel=1e-6)
    assert finding.demand.value == pytest.approx(read - sag(), rel=1e-6)


def test_a_proven_measurement_calibrates_a_modulus_and_the_report_says_so() -> None:
    measured = f"{SAG}, value: {millimetres(sag(modulus=0.9 * E))}"
    found = review(text(f"{measured}, proven: true, calibrates: arm.modulus"))
    test = only(found)
    assert test.calibration is not None
    assert test.calibration.before == E
    assert test.calibration.after == pytest.approx(0.9 * E, rel=1e-6)
    assert test.predicted == pytest.approx(test.read, rel=1e-6)
    assert found.derived.values.at(found.derived.values.plan.slots["arm", "modulus"], 0) == (
        pytest.approx(0.9 * E, rel=1e-6)
    )
    touched = {each.name for each in found.findings if each.calibrated}
    assert "arm.tip_sinks" in touched
    assert "base.stands" not in touched
    told = next(each for each in found.findings if each.name == "arm.tip_sinks").message
    assert told.endswith("arm.modulus of 189000 MPa, as measured_1 calibrates it.")
    assert verdicts(found) == dict.fromkeys(("still_stands", "agrees", "calibrates"), "pass")


def test_a_design_itself_tells_what_is_calibrated() -> None:
    measured = f"{SAG}, value: {millimetres(sag(modulus=0.9 * E))}"
    found = review(text(f"{measured}, proven: true, calibrates: arm.modulus"))
    told = "Calibrated: arm.modulus is 189000 MPa by the test measured_1 (line 19)."
    assert list(settled_in(found.design)) == [told]


def test_what_a_measurement_calibrates_has_its_uncertainty() -> None:
    read = sag(modulus=0.9 * E)
    measured = f"{SAG}, value: {millimetres(read)} ± 0.05 mm, proven: true"
    found = review(text(f"{measured}, calibrates: arm.modulus"))
    band = found.design.parts["arm"].given["modulus"].quantity
    bending = FORCE * REACH**3 / (3 * WIDTH * HEIGHT**3 / 12)
    shear = FORCE * REACH / (5 / 6 * G * WIDTH * HEIGHT)
    assert band.low == pytest.approx(bending / (read + 0.05e-3 - shear), rel=1e-6)
    assert band.high == pytest.approx(bending / (read - 0.05e-3 - shear), rel=1e-6)


@pytest.mark.parametrize(
    ("value", "calibrates", "reason"),
    [
        ("100 mm", "arm.modulus", "no arm.modulus between a tenth and ten times of what it is"),
        ("1.2 mm", "arm.creep", "arm.creep is not known, or is not behind arm.tip_deflection"),
    ],
)
def test_what_cannot_be_calibrated_is_told(value: str, calibrates: str, reason: str) -> None:
    measured = f"{SAG}, value: {value}, proven: true, calibrates: {calibrates}"
    found = review(text(measured))
    assert only(found).why_uncalibrated.startswith(reason)
    assert verdicts(found)["calibrates"] == "fail"


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def written(name: str, content: str) -> Review:
    Path(name).write_text(content, encoding="utf-8")
    return review(name)


RECORDED = f"{SAG}, value: {millimetres(sag())}"
NEXT = "based_on: b.yaml\nrevision: C\nlengths: mm\nparts: {arm: {%s}}\n"


@pytest.mark.parametrize(
    ("change", "told"),
    [
        ("section: {solid: [30, 22]}", ("arm.section.height 20 -> 22",)),
        ("material: C45", ("arm.material S235 -> C45",)),
        ("reach: 500 mm ± 1 mm", ()),  # a tolerance changes no thing
        ("root: {radius: 120}", ("arm.root.radius 100 -> 120",)),
        ("allowed_deflection: 3", ()),
    ],
)
def test_what_is_inherited_was_measured_on_the_file_in_which_it_stands(
    change: str, told: tuple[str, ...], folder: Path
) -> None:
    assert only(written("b.yaml", text(RECORDED))).stale.is_fresh
    found = written("c.yaml", NEXT % change)
    assert only(found).stale.changes == told
    assert verdicts(found)["still_stands"] == ("fail" if told else "pass")
    if told:
        assert verdicts(found)["agrees"] == "open"


def test_a_load_that_was_not_on_makes_nothing_stale(folder: Path) -> None:
    written("b.yaml", text(RECORDED))
    assert only(
        written("c.yaml", "based_on: b.yaml\nloads: {wind: {force: 90 N}}\n")
    ).stale.is_fresh
    lamp = only(written("d.yaml", "based_on: b.yaml\nloads: {lamp: {force: 90 N}}\n"))
    assert lamp.stale.changes == ("lamp.force 150 N -> 90 N",)


def test_a_part_that_was_added_on_it_makes_it_stale(folder: Path) -> None:
    written("b.yaml", text(RECORDED))
    more = "{kind: top, carried_by: arm, material: birch plywood, thickness: 9 mm, diameter: 90 mm}"
    found = only(written("c.yaml", f"based_on: b.yaml\nparts: {{dish: {more}}}\n"))
    assert found.stale.changes == ("dish (added)",)


def test_of_names_the_file_that_was_measured(folder: Path) -> None:
    written("old.yaml", text(RECORDED, height="19", revision="A"))
    measured = f"{RECORDED}, of: old.yaml"
    assert only(written("new.yaml", text(measured))).stale.changes == (
        "arm.section.height 19 -> 20",
    )
    missing = written("lost.yaml", text(f"{RECORDED}, of: gone.yaml"))
    assert only(missing).stale.unknown == "gone.yaml cannot be looked at: there is no such file"
    assert verdicts(missing) == {"still_stands": "open", "agrees": "pass"} | {
        "calibrates": "not applicable"
    }


def test_another_revision_is_looked_for_among_the_files_that_it_is_based_on(folder: Path) -> None:
    written("a.yaml", text(RECORDED, height="19", revision="A"))
    written(
        "b.yaml",
        "based_on: a.yaml\nrevision: B\nparts: {arm: {section: {solid: [30 mm, 20 mm]}}}\n",
    )
    here = f"measured:\n  - {{{RECORDED}, revision: A}}\n"
    found = written("c.yaml", f"based_on: b.yaml\nrevision: C\n{here}")
    assert only(found).stale.changes == ("arm.section.height 19 -> 20 mm",)
    lost = only(written("z.yaml", text(f"{RECORDED}, revision: A")))
    assert lost.stale.unknown.startswith("it was measured on revision A and this is revision B; ")


def test_a_fingerprint_names_the_part_that_changed(folder: Path) -> None:
    found = written("b.yaml", text(RECORDED))
    marks = fingerprint(found.derived, found.tests[0].measured)
    assert set(marks) == {"arm", "lamp"}  # the post below bends nothing of it
    line = ", ".join(f"{name} {mark}" for name, mark in marks.items())
    measured = f'{RECORDED}, fingerprint: "{line}"'
    assert only(written("b.yaml", text(measured))).stale.is_fresh
    changed = only(written("b.yaml", text(measured, height="21")))
    assert changed.stale.changes == ("a value of arm",)
    same = only(written("b.yaml", text(measured, height="2 cm").replace("[30,", "[30 mm,")))
    assert same.stale.is_fresh  # the same size in other words


def test_a_test_that_calibrates_and_is_stale_calibrates_nothing(folder: Path) -> None:
    measured = f"{RECORDED}, proven: true, calibrates: arm.modulus"
    written("b.yaml", text(measured))
    found = written("c.yaml", NEXT % "section: {solid: [30, 22]}")
    assert only(found).calibration is None
    assert "modulus" not in found.design.parts["arm"].given
    told = next(each for each in found.findings if each.name == "measured_1.still_stands").message
    assert told.endswith("arm.section.height 20 -> 22; so it calibrates nothing any more.")


def test_two_measurements_do_not_calibrate_one_value() -> None:
    one = f"test: first, {RECORDED}, proven: true, calibrates: arm.modulus"
    two = f"test: second, {RECORDED}, proven: true, calibrates: arm.modulus"
    found = review(text(f"{one}}}\n  - {{{two}"))
    reasons = {each.measured.name: each.why_uncalibrated for each in found.tests}
    assert reasons == {
        "first": "",
        "second": "another measurement calibrates the same value",
    }


def test_of_many_that_do_not_agree_only_the_first_are_explained() -> None:
    """A file of many wrong readings must not keep anybody waiting."""
    wrong = [f"{SAG}, value: {2 + each / 10} mm" for each in range(12)]
    found = review(text("}\n  - {".join(wrong)))
    searched = [each.explanations is not None for each in found.tests]
    assert searched == [True] * 10 + [False] * 2
    last = next(each for each in found.findings if each.name == "measured_12.agrees")
    assert last.message.endswith("was not searched: settle those before it first.")
    assert review_data(found)["measured"][11]["explained_by"] is None


def test_a_remedy_leaves_what_is_calibrated_as_it_is() -> None:
    """A shorter arm mends the sag, but not where a test settles how long it is."""
    read = f"{SAG}, value: {millimetres(1.5 * sag())}"
    failing = text(read)
    failing = failing.replace("reach: 500", "reach: 500\n    allowed_deflection: 1")
    offered = {}
    for words in ("", ", proven: true, calibrates: arm.reach"):
        found = review(failing.replace(read, read + words))
        told = with_remedies(found, found.rules)
        finding = next(each for each in told.findings if each.name == "arm.tip_sinks")
        assert finding.verdict == "fail"
        offered[words] = {remedy.changes[0].field for remedy in finding.remedies.offered}
    assert "reach" in offered[""]
    assert "reach" not in offered[", proven: true, calibrates: arm.reach"]
