"""Shop files written for a test, in a folder of their own."""

import os
import subprocess
import sys
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


START = "import sys; from reviewer.command.main import main; sys.exit(main())"
SHOP = "shop: Cart makers\npacks: [{installed: castors}]\n"
CART = """\
design: Cart
lengths: mm
parts:
  wheels: {kind: castors, rating: 200 N, height: 100, mass: 4 kg}
  deck: {kind: top, carried_by: wheels, material: film faced ply, thickness: 18, length: 900,
         width: 600}
loads:
  tools: {force: 900 N, over: deck}
"""

Run = Callable[..., subprocess.CompletedProcess[str]]


@pytest.fixture
def run(tmp_path: Path) -> Run:
    """Run a command line in a folder with a shop and a cart, with packages of a path installed."""
    (tmp_path / "shop.yaml").write_text(SHOP, "utf-8")
    (tmp_path / "cart.yaml").write_text(CART, "utf-8")

    def run(path: Path | None, *words: str) -> subprocess.CompletedProcess[str]:
        environment = {**os.environ, "NO_COLOR": "1"}
        environment.pop("PYTHONPATH", None)
        if path is not None:
            environment["PYTHONPATH"] = str(path)
        command = [sys.executable, "-c", START, *words]
        return subprocess.run(
            command, cwd=tmp_path, env=environment, capture_output=True, text=True, check=False
        )

    return run
