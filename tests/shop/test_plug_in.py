"""Installed packages: the example package as it is installed and used, and what is refused."""

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


def test_its_kind_stands_in_the_schema_for_an_editor(run: Run, installed: Path) -> None:
    """With the shop named, and of itself where a design of that shop is held against it."""
    ran = run(installed, "schema", "--shop", "shop.yaml")
    assert ran.returncode == 0
    assert '"const": "castors"' in ran.stdout
    assert '"const": "castors"' not in run(installed, "schema").stdout
    ran = run(installed, "schema", "cart.yaml")
    assert (ran.returncode, ran.stdout) == (0, "cart.yaml fits the schema\n")


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
