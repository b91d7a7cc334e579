"""Installed packages: the example package as it is installed and used, and what is refused."""

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from reviewer.parts.kind import Kind
from reviewer.parts.plug_in import Brought, Fault, PlugInError, brings, brought_by
from reviewer.parts.row import Measure, Row

HERE = Path(__file__).parent
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


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The example package, installed from its folder without a network."""
    target = tmp_path_factory.mktemp("installed")
    offline = ("--no-index", "--no-build-isolation", "--no-deps", "--disable-pip-version-check")
    command = [sys.executable, "-m", "pip", "install", "--quiet", *offline]
    done = subprocess.run(
        [*command, "--target", str(target), str(HERE / "our_castors")],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return target


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


def test_a_kind_a_material_and_a_pack_of_an_installed_package(run: Run, installed: Path) -> None:
    ran = run(installed, "check", "cart.yaml")
    assert (ran.returncode, ran.stderr) == (1, "")
    # By hand: 4 kg and 0.018 x 0.9 x 0.6 m3 of 700 kg/m3 weigh 4 * 39.2 N and 66.7 N; with 900 N
    # that is 1124 N, on three of four castors 375 N each.
    assert (
        "    Under tools the busiest of 4 castors gets 375 N; it may carry 200 N.\n"
    ) in ran.stdout
    assert "cart.yaml:4 wheels.strong_enough\n" in ran.stdout


def test_its_limit_and_its_formula_are_traced(run: Run, installed: Path) -> None:
    ran = run(installed, "trace", "cart.yaml", "wheels.load")
    assert ran.returncode == 0
    assert "    limit.castors_lost = 1\n" in ran.stdout
    assert "Load of the busiest castor, when only some of them touch the floor." in ran.stdout


def test_its_rules_are_proved_with_the_others(run: Run, installed: Path) -> None:
    ran = run(installed, "rules", "--shop", "shop.yaml", "--prove")
    assert (ran.returncode, ran.stderr) == (0, "")
    listed = run(installed, "rules", "--shop", "shop.yaml")
    assert "stated in   castors/castors.yaml:12\n" in listed.stdout


def test_what_is_not_installed_is_refused_before_the_run(run: Run) -> None:
    ran = run(None, "check", "cart.yaml")
    assert ran.returncode == 2
    assert ran.stderr.startswith(
        "shop.yaml:2:21: the installed package castors, entry point: no such package is installed\n"
        "    found none is installed\n"
        "    expected what reviewer.parts.plug_in describes\n"
        "    mend: install the package into the same environment\n"
    )


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


def test_a_mark_leaves_a_function_as_it_is() -> None:
    @brings("kinds")
    def kinds() -> list[Kind]:
        return []

    assert kinds() == []


def test_all_faults_of_a_package_are_told_together() -> None:
    @brings("kinds")
    def first(design: Any) -> list[Any]:
        return [design]

    @brings("jigs")
    def second() -> list[Any]:
        return []

    @brings("packs")
    def third() -> list[Any]:
        return ["rules.yaml"]

    module = SimpleNamespace(first=first, second=second, third=third)
    with pytest.raises(PlugInError) as raised:
        brought_by(module, "ours")
    assert raised.value.faults == (
        Fault("first", "it takes arguments", "design", "take none"),
        Fault(
            "second",
            "it brings what nobody knows",
            "jigs",
            "bring one of kinds, materials, bearings, fasteners, sheets, packs",
        ),
        Fault(
            "third",
            "it returns something else than paths",
            "a str",
            "return paths, as importlib.resources.files gives them",
        ),
    )


def test_what_a_package_brings() -> None:
    crate = Kind("crate", "a crate", (Row("width", "m", "width", Measure()),), carries_load=False)

    @brings("kinds")
    def kinds() -> list[Kind]:
        return [crate]

    @brings("packs")
    def packs() -> list[Path]:
        return [HERE / "our_castors" / "our_castors" / "castors.yaml"]

    found = brought_by(SimpleNamespace(kinds=kinds, packs=packs), "ours")
    assert isinstance(found, Brought)
    assert found.kinds == (crate,)
    ((text, path),) = found.packs
    assert path == "ours/castors.yaml"
    assert text.startswith(b"pack: castors\n")
