"""The load-test sheet of the potting bench, whole; and the record that it leaves to fill in."""

import re
from pathlib import Path

import pytest

from reviewer import review
from reviewer.mechanics.weight import weight
from reviewer.reporting.sheets.load_test import LOAD_TEST
from reviewer.reporting.sheets.making import sheet_of
from reviewer.reporting.sheets.markdown_sheet import markdown_sheet
from reviewer.reporting.sheets.page_sheet import page_sheet
from reviewer.reporting.sheets.sheet import NoSheet, Sheet, Table, Verbatim
from reviewer.reporting.sheets.text_sheet import text_sheet
from reviewer.studying.load_test import load_tests

HERE = Path(__file__).parent
BENCH = Path("specimens") / "potting_bench" / "revision_c.yaml"
CANTILEVER = """\
design: A bracket
lengths: mm
parts:
  post: {kind: base, feet: {count: 4, circle: 900}, height: 700, mass: 60 kg}
  arm:
    kind: arm
    carried_by: post
    section: {solid: [30, 20 ± 0.2]}
    material: S235
    root: {radius: 100}
    reach: 500
    mass: 0.000001 kg
loads:
  lamp: {force: 150 N, on: arm, at: rim}
"""


@pytest.fixture(scope="module")
def sheet() -> Sheet:
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(HERE.parents[2])
        found = sheet_of(LOAD_TEST, review(BENCH))
    assert isinstance(found, Sheet)
    return found


def test_the_sheet_of_the_bench(sheet: Sheet) -> None:
    assert text_sheet(sheet) == (HERE / "expected" / "load_test.txt").read_text("utf-8")


def test_it_fits_eighty_columns(sheet: Sheet) -> None:
    assert max(len(line) for line in text_sheet(sheet).splitlines()) <= 80


def test_every_format_has_every_test(sheet: Sheet) -> None:
    for text in (text_sheet(sheet), markdown_sheet(sheet), page_sheet([sheet])):
        assert len(re.findall(r"test \d: ", text, re.IGNORECASE)) == 6
        assert "fingerprint: &gt;-" in text or "fingerprint: >-" in text


def sag(height: float, force: float) -> float:
    """A cantilever with its load at the tip and shear, as in tests/studying/test_measured.py."""
    bending = force * 0.5**3 / (3 * 210e9 * 0.03 * height**3 / 12)
    return bending + force * 0.5 / (5 / 6 * 81e9 * 0.03 * height)


def test_the_steps_and_bands_are_those_of_the_closed_form() -> None:
    """Half, full and 1.25 times; bands of the tolerance, 5 per cent of formulas, 0.02 mm read."""
    found = review(CANTILEVER)
    (test,) = load_tests(found.derived)
    assert [(step.name, step.factor) for step in test.steps] == [
        ("half", 0.5),
        ("full", 1.0),
        ("proof", 1.25),
    ]
    (reading,) = test.readings
    assert reading.quantity == "arm.tip_deflection"
    for step, expected in zip(test.steps, reading.expected, strict=True):
        force = 150.0 * step.factor
        assert expected.value == pytest.approx(sag(0.020, force), rel=1e-6)
        most = sag(0.0198, force) + 0.05 * sag(0.020, force) + 0.02e-3
        assert expected.most == pytest.approx(most, rel=1e-6)
        least = sag(0.0202, force) - 0.05 * sag(0.020, force) - 0.02e-3
        assert expected.least == pytest.approx(least, rel=1e-6)


def test_the_weights_are_those_of_the_force(sheet: Sheet) -> None:
    tables = [block for section in sheet.sections for block in section.blocks]
    first = next(each for each in tables if isinstance(each, Table) and len(each.columns) == 6)
    newtons, kilograms = re.match(r"half: (\S+) N, (\S+) kg", first.rows[0][0]).groups()
    assert float(newtons) == 300.0  # half of 600 N of soil
    assert float(kilograms) == pytest.approx(300.0 / weight(1.0), abs=0.05)


def filled(sheet: Sheet, reading: str) -> str:
    """The record with every gap filled in."""
    blocks = [block for section in sheet.sections for block in section.blocks]
    text = "\n".join(next(each for each in blocks if isinstance(each, Verbatim)).lines)
    text = text.replace("____-__-__", "2026-11-20").replace("by: ____", "by: Us")
    return text.replace("value: ____ mm ± ____ mm", f"value: {reading} mm ± 0.01 mm")


def test_the_record_is_what_the_design_takes_and_is_fresh(sheet: Sheet, tmp_path: Path) -> None:
    text = (HERE.parents[2] / BENCH).read_text("utf-8")
    whole = tmp_path / "bench.yaml"
    whole.write_text(f"{text}\n{filled(sheet, '0.5')}\n", encoding="utf-8")
    found = review(whole)
    assert found.problems == ()
    assert len(found.tests) == filled(sheet, "0.5").count("quantity:") == 13
    assert all(each.stale.is_fresh for each in found.tests)
    predicted = {(each.measured.quantity, each.measured.under): each for each in found.tests}
    expected = {
        (reading.quantity, test.under): reading.expected[1].value
        for test in load_tests(found.derived)
        for reading in test.readings
    }
    assert predicted.keys() == expected.keys()
    for key, value in expected.items():
        assert predicted[key].predicted == pytest.approx(value, rel=1e-9)


def test_a_thicker_plate_makes_what_is_recorded_stale(sheet: Sheet, tmp_path: Path) -> None:
    text = (HERE.parents[2] / BENCH).read_text("utf-8").replace("thickness: 24", "thickness: 21")
    whole = tmp_path / "bench.yaml"
    whole.write_text(f"{text}\n{filled(sheet, '0.5')}\n", encoding="utf-8")
    stale = {each.measured.quantity for each in review(whole).tests if each.stale.changes}
    assert stale == {"ring.rim_sink", "ring.lift"}


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        (CANTILEVER.partition("loads:")[0], "the design gives no load"),
        (
            CANTILEVER.replace("150 N", "0.1 N"),
            "no load moves anything that a shop can read with a gauge",
        ),
    ],
)
def test_there_is_none_where_there_is_nothing_to_load(text: str, reason: str) -> None:
    found = sheet_of(LOAD_TEST, review(text))
    assert found == NoSheet(reason)
