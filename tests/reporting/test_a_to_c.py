"""The potting bench from revision A to C, compared under the rules that come with it."""

from collections.abc import Callable
from pathlib import Path

import pytest

from reviewer.command.main import main

BENCH = Path(__file__).parents[2] / "specimens" / "potting_bench"


@pytest.mark.parametrize(("kind", "ending"), [("text", "txt"), ("markdown", "md")])
def test_the_bench_from_a_to_c(
    held: Callable[[str, str], None],
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    kind: str,
    ending: str,
) -> None:
    """It mends nineteen failures and makes none that must or should hold."""
    monkeypatch.chdir(BENCH)
    status = main(["compare", "revision_a.yaml", "revision_c.yaml", "--format", kind])
    assert status == 0
    held(f"specimens/bench_a_to_c.{ending}", capsys.readouterr().out)
