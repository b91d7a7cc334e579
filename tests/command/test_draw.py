"""reviewer draw: which views there are, where they go, and what is told of a wrong command line."""

from pathlib import Path

import pytest

from tests.command.conftest import Run

TABLE = Path(__file__).parents[2] / "specimens" / "mechanisms" / "turning_corner.yaml"


@pytest.mark.parametrize(
    ("words", "title"),
    [
        ("", "Plan, square: Corncrake market table, revision A"),
        ("--configuration turned", "Plan, turned: Corncrake market table, revision A"),
        ("--view elevation", "Elevation, square: Corncrake market table, revision A"),
        ("--view curve --gap post_and_table", "Gap post_and_table over its travel"),
    ],
)
def test_a_view_goes_to_standard_output(run: Run, words: str, title: str) -> None:
    ran = run("draw", str(TABLE), *words.split())
    assert (ran.status, ran.err) == (0, "")
    assert ran.out.startswith("<svg ")
    assert title in ran.out


def test_a_view_goes_to_a_file(run: Run, folder: Path) -> None:
    ran = run("draw", str(TABLE), "--output", "plan.svg", "--unmarked")
    assert (ran.status, ran.out, ran.err) == (0, "", "")
    text = (folder / "plan.svg").read_text(encoding="utf-8")
    assert text.startswith("<svg ")
    assert "fingers" not in text


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (
            "--configuration acros",
            "reviewer draw: the design has no such configuration\n"
            "    found acros\n"
            "    expected one of square, across, turned, round at 0.25, round at 0.75\n"
            "    mend: write across\n",
        ),
        (
            "--view curve --gap post_and_tabel",
            "reviewer draw: this is no gap between parts that move\n"
            "    found post_and_tabel\n"
            "    expected one of post_and_table, shelf_and_table\n"
            "    mend: write post_and_table\n",
        ),
        (
            "--view curve",
            "reviewer draw: a curve is drawn of one gap\n"
            "    found --view curve\n"
            "    expected --view curve and --gap PART together\n",
        ),
        (
            "--gap post_and_table",
            "reviewer draw: a curve is drawn of one gap\n"
            "    found --gap post_and_table\n"
            "    expected --view curve and --gap PART together\n",
        ),
        (
            "--view plane",
            "reviewer draw: there is no such choice\n"
            "    found plane\n"
            "    expected one of plan, elevation, curve\n"
            "    mend: write plan\n",
        ),
    ],
)
def test_error_wrong_drawing(run: Run, words: str, told: str) -> None:
    ran = run("draw", str(TABLE), *words.split())
    assert (ran.status, ran.out, ran.err) == (2, "", told)
