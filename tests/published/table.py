"""Write README.md: every check value of this folder, how it was seen, and how far off we are.

`python tests/published/table.py` runs each test that has the columns formula, source and seen, and
listens to what it compares. So a row of the table is what the test compared, not a second account.
"""

import importlib.util
import re
from collections import defaultdict
from pathlib import Path
from typing import NamedTuple
from unittest import mock

import numpy as np
import pytest

HERE = Path(__file__).parent
README = HERE / "README.md"
NEEDED = {"formula", "source", "seen"}
# Errors below this are the rounding of the machine, which differs from one to the next.
ROUNDING = 1e-9


class Value(NamedTuple):
    """One check value: errors are relative to it, or absolute where it is zero."""

    file: str
    formula: str
    source: str
    seen: str
    error: float
    tolerance: float


def load(path):
    """A test file as a module; the folders of tests are no packages."""
    spec = importlib.util.spec_from_file_location(f"loaded_{path.parent.name}_{path.stem}", path)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


outside = load(HERE / "outside.py")


def title(module):
    """First sentence of a file's docstring, on one line, without the remark on `seen`."""
    said = " ".join(module.__doc__.split("\n\n")[0].split())
    return said.split(" `seen`")[0].rstrip(".")


def rows_of(test):
    """Arguments of each case of a parametrized test, by name."""
    cases = [{}]
    for mark in getattr(test, "pytestmark", []):
        if mark.name != "parametrize":
            continue
        names = mark.args[0]
        names = re.split(r"\s*,\s*", names) if isinstance(names, str) else names
        cases = [
            case | dict(zip(names, row if len(names) > 1 else (row,), strict=True))
            for case in cases
            for row in mark.args[1]
        ]
    return [case for case in cases if case.keys() >= NEEDED]


class Listening:
    """Stands in for pytest.approx and notes what it is compared with."""

    def __init__(self, compared):
        self.compared, self.approx = compared, pytest.approx

    def __call__(self, expected, rel=None, abs=None):
        return _Compared(self, expected, rel, abs)


class _Compared:
    # numpy would else compare element by element and never ask this object.
    __array_ufunc__ = None
    __hash__ = None

    def __init__(self, listening, expected, rel, abs):
        self.listening, self.expected, self.rel, self.abs = listening, expected, rel, abs

    def __eq__(self, actual):
        found, wanted = np.broadcast_arrays(
            np.asarray(actual, float), np.asarray(self.expected, float)
        )
        scale = np.abs(wanted).max() or 1.0
        for got, want in zip(found.ravel(), wanted.ravel(), strict=True):
            limit = self.listening.approx(float(want), rel=self.rel, abs=self.abs)
            by = abs(want) or scale
            self.listening.compared.append((abs(got - want) / by, limit.tolerance / by))
        return actual == self.listening.approx(self.expected, rel=self.rel, abs=self.abs)


def values_of(path):
    """Every check value of a file; each of them is compared on the way."""
    module = load(path)
    tests = [item for name, item in vars(module).items() if name.startswith("test_")]
    for test in tests:
        for row in rows_of(test):
            compared = []
            with mock.patch.object(pytest, "approx", Listening(compared)):
                test(**row)
            if not compared:
                raise AssertionError(f"{path.name}: {row['source']}: nothing was compared")
            error, tolerance = max((rounded(error), limit) for error, limit in compared)
            yield Value(
                path.name, outside.name_of(row["formula"]), row["source"], row["seen"], error,
                tolerance,
            )  # fmt: skip


def rounded(error):
    """An error to two digits, so that the table is the same on every machine.

    A little is taken off first: one that stands half way, such as 0.0625, must not go up here and
    down there.
    """
    return float(f"{error * (1 - 1e-9):.1e}") if error > ROUNDING else 0.0


def table(values):
    """Lines of one file's table: a row for each formula and way of having been seen."""
    groups = defaultdict(list)
    for value in values:
        groups[value.formula, value.seen].append(value)
    yield "| formula | source | how seen | values | worst error | tolerance there |"
    yield "|---|---|---|---:|---:|---:|"
    for (formula, seen), group in groups.items():
        sources = "; ".join(dict.fromkeys(value.source for value in group)).replace("|", "\\|")
        error, tolerance = max((value.error, value.tolerance) for value in group)
        worst = f"{error:.1e}" if error else f"under {ROUNDING:.0e}"
        yield (f"| `{formula}` | {sources} | {seen} | {len(group)} | {worst} | {tolerance:.1e} |")


HEAD = """\
# Check values from outside

Made by `python tests/published/table.py`; do not edit. Each file holds the values of one source,
or of one small family of sources.

How seen: **print**: read in the source or a faithful copy of its page. **reprint**: read where
somebody else printed it. **memory**: known from memory, not looked up. **computed**: made by a
script apart from the project from the formula named. Errors and tolerances are relative to the
value, or absolute where the value is zero; the tolerance is the one that stood where the worst
error was found.
"""


def text():
    """The whole of README.md."""
    by_file = {path: list(values_of(path)) for path in sorted(HERE.glob("test_*.py"))}
    by_file = {path: values for path, values in by_file.items() if values}
    everything = [value for values in by_file.values() for value in values]
    beyond = [value for value in everything if from_outside(value.seen)]
    formulas = {value.formula for value in everything}
    files = {value.file for value in beyond}
    lines = [
        HEAD,
        f"{len(everything)} values in {len(by_file)} files for {len(formulas)} formulas. "
        f"{len(beyond)} of them, in {len(files)} files, were printed or are known outside the "
        "project; the others are computed apart from it.",
    ]
    for path, values in by_file.items():
        lines += ["", f"## {title(load(path))}", "", f"`{path.name}`", "", *table(values)]
    return "\n".join([*lines, *outside.lines({value.formula for value in everything}), ""])


def from_outside(seen):
    """Whether a value, or the formula behind it, was seen outside and not only computed."""
    return any(word in seen for word in ("print", "memory"))  # reprint too


if __name__ == "__main__":
    README.write_text(text(), encoding="utf-8")
