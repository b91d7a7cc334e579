"""Shop files written for a test, in a folder of their own."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from reviewer import Review, review
from reviewer.notation.problem import render

BENCH = """\
design: Bench
lengths: mm
parts:
  frame: {kind: base, feet: {count: 4, circle: 800}, height: 600, mass: 30 kg}
  lid: {kind: top, carried_by: frame, material: birch plywood, thickness: 18, diameter: 700}
loads:
  lean: {force: 200 N, on: lid, at: rim, all_round: true}
"""

InShop = Callable[..., Review]


@pytest.fixture
def in_shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> InShop:
    """Review a design in a shop: the text of shop.yaml, the design's, and other files by name."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / ".git").mkdir()

    def run(shop: str, design: str = BENCH, **files: str) -> Review:
        for name, text in {"shop": f"shop: Ours\n{shop}", "bench": design, **files}.items():
            path = tmp_path / f"{name}.yaml"
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, "utf-8")
        return review("bench.yaml")

    return run


@pytest.fixture
def told(in_shop: InShop) -> Callable[..., str]:
    """What is told of the problems of a shop file, and that nothing else is said."""

    def run(shop: str, **files: Any) -> str:
        found = in_shop(shop, **files)
        assert found.findings == ()
        return "\n".join(render(problem) for problem in found.problems)

    return run
