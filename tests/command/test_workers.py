"""Several processes: the same output in the same order, and a process that ends is a fault."""

import json
import os
import signal
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from reviewer.command.workers import FROM, workers_for
from reviewer.reading.read_design import read_design

Run = Callable[..., Any]
Write = Callable[..., Path]


@pytest.fixture
def many(design: Write, folder: Path) -> list[str]:
    """Designs that hold, fail, cannot be read and cannot be found, by name."""
    names = [f"d{number:02}.yaml" for number in range(20)]
    for number, name in enumerate(names):
        design(name, least=("30 mm", "9 mm", "9 mn")[number % 3])
    (folder / names[4]).unlink()
    return names


@pytest.mark.parametrize("form", ["text", "json"])
def test_the_output_is_the_same_as_with_one_process(
    run: Run, many: list[str], folder: Path, form: str
) -> None:
    one = run("check", *many, "--format", form, "-j", "1", "--output", "one.txt")
    three = run("check", *many, "--format", form, "-j", "3", "--output", "three.txt")
    assert one.status == 2
    assert "d04.yaml:1:1: there is no such file" in one.err
    assert three == one
    assert (folder / "three.txt").read_bytes() == (folder / "one.txt").read_bytes()


def test_standard_input_is_read_by_whom_it_belongs_to(run: Run, many: list[str]) -> None:
    text = Path(many[0]).read_bytes()
    one = run("check", "-", *many, "-j", "1", stdin=text)
    assert run("check", "-", *many, "-j", "2", stdin=text) == one


def test_a_problem_of_a_pack_is_told_once(run: Run, many: list[str], folder: Path) -> None:
    (folder / "shop.yaml").write_text("shop: Ours\npacks: [absent]\n", "utf-8")
    one, two = (run("check", *many, "-j", number) for number in "12")
    assert two == one
    assert two.err.count("shop.yaml:2:") == 1


@pytest.mark.parametrize(
    ("end", "how"), [(lambda: os.kill(os.getpid(), signal.SIGKILL), "SIGKILL"),
                     (lambda: os._exit(7), "exit status 7")]
)  # fmt: skip
def test_a_process_that_ends_costs_one_design(
    run: Run, many: list[str], monkeypatch: pytest.MonkeyPatch, end: Callable[[], None], how: str
) -> None:
    ours = os.getpid()

    def review(source: bytes, path: str, *more: Any, **others: Any) -> Any:
        if path in (many[6], many[9]) and os.getpid() != ours:
            end()
        return read_design(source, path, *more, **others)

    whole = run("check", *many, "--format", "json", "-j", "2")
    monkeypatch.setattr("reviewer.reviewing.read_design", review)
    ran = run("check", *many, "--format", "json", "-j", "2")
    assert ran.status == 3
    ended = f"Ended: the process that reviewed it ended ({how})"
    assert [ran.err.count(f"while reviewing {name}: {ended}") for name in many[5:11]] == [
        0, 1, 0, 0, 1, 0,
    ]  # fmt: skip
    before, after = (json.loads(each.out)["designs"] for each in (whole, ran))
    differing = [number for number in range(20) if before[number] != after[number]]
    assert differing == [6, 9]


@pytest.mark.parametrize(
    ("asked", "designs", "found"),
    [(None, FROM - 1, {1}), (3, 100, {3}), (3, 2, {2}), (None, 100, set(range(1, 9)))],
)
def test_how_many_processes(asked: int | None, designs: int, found: set[int]) -> None:
    assert workers_for(asked, designs) in found


@pytest.mark.parametrize("text", ["0", "-1", "two", "99999"])
def test_a_number_of_processes_that_is_none(run: Run, text: str) -> None:
    ran = run("check", "lid.yaml", "-j", text)
    assert (ran.status, ran.out) == (2, "")
