"""README.md is what the script makes; there are values enough; no formula goes unchecked."""

import importlib.util
from pathlib import Path

import pytest

HERE = Path(__file__).parent


def load(name):
    """A helper beside this file; the folders of tests are no packages."""
    spec = importlib.util.spec_from_file_location(f"published_{name}", HERE / f"{name}.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


table = load("table")
outside = table.outside
WORDS = ("print", "memory", "computed")


@pytest.fixture(scope="module")
def values():
    return [value for path in sorted(HERE.glob("test_*.py")) for value in table.values_of(path)]


def test_readme_is_what_the_script_makes():
    assert table.README.read_text(encoding="utf-8") == table.text(), (
        "run: python tests/published/table.py"
    )


def test_at_least_80_values_of_at_least_20_sources_outside(values):
    beyond = [value for value in values if table.from_outside(value.seen)]
    assert len(beyond) >= 80
    assert len({value.file for value in beyond}) >= 20


def test_every_value_says_how_it_was_seen_and_where(values):
    assert all(any(word in value.seen for word in WORDS) for value in values)
    assert all(value.source for value in values)


def test_no_value_is_off_by_more_than_its_tolerance(values):
    assert [
        value for value in values if value.error > 1.05 * value.tolerance + table.ROUNDING
    ] == []


def test_every_file_with_rows_of_values_is_in_the_table(values):
    """A file whose cases lost a column would leave the table and nobody would see it."""
    held = {path.name for path in HERE.glob("test_*.py") if hasattr(table.load(path), "ROWS")}
    assert held == {value.file for value in values}


def test_every_formula_is_checked_from_outside():
    assert len(outside.formulas()) > 250
    assert outside.unchecked() == [], "these formulas have no check from outside the project"


def test_files_that_check_by_hand_are_there():
    assert all((outside.TESTS / "mechanics" / name).is_file() for name in outside.BY_HAND)


def test_what_only_walks_over_all_formulas_counts_for_nothing(tmp_path):
    names = tmp_path / "test_names.py"
    names.write_text(
        "from reviewer.mechanics.beams import beam_moment, beam_deflection\n"
        "from reviewer.mechanics.supports import worst_direction\n"
        "def test_it():\n    assert beam_moment(1.0) and worst_direction\n"
    )
    assert outside.used_in(names) == {"beams.beam_moment", "worst_direction.worst_direction"}


def test_listening_notes_the_error_and_still_judges():
    compared = []
    listening = table.Listening(compared)
    assert listening(100.0, rel=0.02) == 101.0
    assert listening(100.0, rel=0.02) != 103.0
    assert listening((0.0, 2.0), abs=0.1) == (0.0, 2.0)
    assert compared[0] == pytest.approx((0.01, 0.02))
    assert compared[1] == pytest.approx((0.03, 0.02))
    assert compared[2:] == [pytest.approx((0.0, 0.05)), pytest.approx((0.0, 0.05))]
