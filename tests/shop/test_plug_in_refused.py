"""Installed packages that are refused before the run: package, definition and mend."""

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

Run = Callable[..., subprocess.CompletedProcess[str]]


def package(folder: Path, code: str, name: str = "castors") -> Path:
    """A package written by hand, as an installer would leave it."""
    information = folder / "brought-1.0.dist-info"
    information.mkdir(parents=True)
    (folder / "brought.py").write_text(code, "utf-8")
    (information / "METADATA").write_text("Metadata-Version: 2.1\nName: brought\nVersion: 1.0\n")
    points = f"[mechanism_reviewer.packs]\n{name} = brought\n"
    (information / "entry_points.txt").write_text(points)
    return folder


HEAD = "from reviewer.parts.plug_in import brings\n"
A_KIND = """\
from reviewer.parts.kind import Kind
from reviewer.parts.row import Measure, Row


def half(width):
    return width / 2


@brings("kinds")
def kinds():
    return [Kind("crate", "a crate", (
        Row("width", "mm", "width", Measure()),
        Row("half", "m", "half of it", formula=half, needs={"width": "widht"}),
    ), carries_load=False)]
"""

FAULTS = [
    (
        "raise OSError('no licence')\n",
        """\
shop.yaml:2:21: the installed package castors, brought: it cannot be imported
    found OSError: no licence
    expected what reviewer.parts.plug_in describes
    mend: mend the package, or take it out of packs""",
    ),
    (
        "x = 1\n",
        """\
shop.yaml:2:21: the installed package castors, brought: it brings nothing
    found no mark
    expected what reviewer.parts.plug_in describes
    mend: mark a function, as @brings("kinds")""",
    ),
    (
        f'{HEAD}@brings("kind")\ndef ours():\n    return []\n',
        """\
shop.yaml:2:21: the installed package castors, ours: it brings what nobody knows
    found kind
    expected what reviewer.parts.plug_in describes
    mend: write @brings("kinds")""",
    ),
    (
        f'{HEAD}@brings("kinds")\ndef ours(design):\n    return []\n',
        """\
shop.yaml:2:21: the installed package castors, ours: it takes arguments
    found design
    expected what reviewer.parts.plug_in describes
    mend: take none""",
    ),
    (
        f'{HEAD}@brings("materials")\ndef ours():\n    return ["plywood"]\n',
        """\
shop.yaml:2:21: the installed package castors, ours: it returns something else than materials
    found a str
    expected what reviewer.parts.plug_in describes
    mend: return Materials""",
    ),
    (
        f'{HEAD}@brings("kinds")\ndef ours():\n    return 1 / 0\n',
        """\
shop.yaml:2:21: the installed package castors, ours: it fails when it is called
    found ZeroDivisionError: division by zero
    expected what reviewer.parts.plug_in describes
    mend: mend the package""",
    ),
    (
        f"{HEAD}{A_KIND}",
        """\
shop.yaml:2:21: the installed package castors, kind crate, row half
    found it needs widht, and the kind has no such row
    expected a kind that fits
    mend: write width
    packs: [{installed: castors}]
                        ^^^^^^^
shop.yaml:2:21: the installed package castors, kind crate, row width
    found its unit mm is not SI
    expected a kind that fits
    mend: write the SI unit, as m or N""",
    ),
    (
        f"{HEAD}{A_KIND}".replace('"mm"', '"m"').replace('"widht"', '"limit.crates"'),
        """\
shop.yaml:2:21: kind crate, row half: no pack states the limit that it needs
    found limit.crates
    expected a named limit
    mend: state it under limits in a pack""",
    ),
]


@pytest.mark.parametrize(("code", "message"), FAULTS, ids=[text for _, text in FAULTS])
def test_a_package_is_refused_before_the_run(
    run: Run, tmp_path: Path, code: str, message: str
) -> None:
    ran = run(package(tmp_path / "site", code), "rules", "--shop", "shop.yaml")
    assert ran.returncode == 2
    assert ran.stderr.startswith(message), ran.stderr
    assert "Traceback" not in ran.stderr


def test_two_packages_of_one_name(run: Run, tmp_path: Path) -> None:
    site = package(tmp_path / "site", f'{HEAD}@brings("kinds")\ndef a():\n    return []\n')
    other = site / "other-1.0.dist-info"
    other.mkdir()
    (other / "METADATA").write_text("Metadata-Version: 2.1\nName: other\nVersion: 1.0\n")
    (other / "entry_points.txt").write_text("[mechanism_reviewer.packs]\ncastors = os.path\n")
    ran = run(site, "rules", "--shop", "shop.yaml")
    assert ran.returncode == 2
    assert ran.stderr.startswith(
        "shop.yaml:2:21: the installed package castors, entry point: two packages have this name\n"
        "    found brought and os.path\n"
        "    expected what reviewer.parts.plug_in describes\n"
        "    mend: take one of the packages out of the environment\n"
    )
