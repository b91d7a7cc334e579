"""The layers hold: a module imports only from its own layer and from those before it."""

import ast
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent / "reviewer"
LAYERS = (
    *("notation", "mechanics", "geometry", "stock", "parts", "reading", "deriving", "judging"),
    *("studying", "reviewing", "reviewing_many", "reporting", "command"),
)
MODULES = [path.relative_to(ROOT) for path in sorted(ROOT.rglob("*.py")) if path.stem != "__init__"]
MECHANICS = [path for path in MODULES if path.parts[0] == "mechanics"]
LOSE_THE_UNKNOWN = {"fmax", "fmin", "nanmax", "nanmin", "nansum", "nanmean", "nan_to_num"}
DIFFER_IN_BATCHES = {"dot", "matmul", "inner", "vdot", "tensordot"}
COUNTS = ("BLOCK", "shape", "step")  # of whole numbers: how many there are, never a quantity


def parsed(path: Path) -> Iterator[ast.AST]:
    return ast.walk(ast.parse((ROOT / path).read_text("utf-8")))


def imported(path: Path) -> Iterator[str]:
    """The full name of each module that a file imports."""
    for node in parsed(path):
        if isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}:{node.lineno}: write the import in full"
            yield node.module or ""
        elif isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)


@pytest.mark.parametrize("path", MODULES, ids=str)
def test_a_module_imports_from_layers_before_its_own(path: Path) -> None:
    layer = path.parts[0].removesuffix(".py")
    allowed = {f"reviewer.{each}" for each in LAYERS[: LAYERS.index(layer) + 1]}
    ours = {name for name in imported(path) if name.partition(".")[0] == "reviewer"}
    assert {".".join(name.split(".")[:2]) for name in ours} <= allowed


@pytest.mark.parametrize("path", MECHANICS, ids=str)
def test_mechanics_stands_apart(path: Path) -> None:
    allowed = {"reviewer", "numpy", *sys.stdlib_module_names}
    assert {name.partition(".")[0] for name in imported(path)} <= allowed
    ours = [name for name in imported(path) if name.startswith("reviewer")]
    assert all(f"{name}.".startswith("reviewer.mechanics.") for name in ours)


@pytest.mark.parametrize("path", MECHANICS, ids=str)
def test_mechanics_lets_the_unknown_through_and_batches_to_the_bit(path: Path) -> None:
    for node in parsed(path):
        text = ast.unparse(node) if isinstance(node, ast.expr) else ""
        if isinstance(node, ast.Attribute):
            assert node.attr not in LOSE_THE_UNKNOWN | DIFFER_IN_BATCHES, text
        elif isinstance(node, ast.BinOp):
            assert not isinstance(node.op, ast.MatMult), text
        elif isinstance(node, ast.Call) and ast.unparse(node.func) in ("max", "min"):
            assert any(word in text for word in COUNTS), text
