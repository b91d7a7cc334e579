"""The small design repository in specimens/shop, driven as a CI server would drive it."""

import json
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

REPOSITORY = Path(__file__).parents[2] / "specimens" / "shop"
START = "import sys; from reviewer.command.main import main; sys.exit(main())"
STAND = "designs/carving_stand.yaml"
LIFT = "designs/paint_lift.yaml"

Check = Callable[..., subprocess.CompletedProcess[str]]


@pytest.fixture
def checkout(tmp_path: Path) -> Path:
    """A copy of the repository, as a merge request would change it."""
    copy = tmp_path / "checkout"
    shutil.copytree(REPOSITORY, copy)
    (copy / ".git").mkdir()
    return copy


@pytest.fixture
def check(checkout: Path) -> Check:
    """Run `reviewer check` in the copy, in a process of its own."""

    def run(*words: str) -> subprocess.CompletedProcess[str]:
        command = [sys.executable, "-c", START, "check", *(words or (".",))]
        environment = {**os.environ, "NO_COLOR": "1", "COLUMNS": "80"}
        return subprocess.run(
            command, cwd=checkout, env=environment, capture_output=True, text=True, check=False
        )

    return run


def edit(checkout: Path, name: str, old: str, new: str, count: int = 1) -> None:
    text = (checkout / name).read_text("utf-8")
    assert text.count(old) >= count
    (checkout / name).write_text(text.replace(old, new, count), "utf-8")


def findings(ran: subprocess.CompletedProcess[str]) -> dict[tuple[str, str, str], Any]:
    """The findings of a report in JSON by file, part and rule."""
    return {
        (design["path"], each["part"], each["rule"]): each
        for design in json.loads(ran.stdout)["designs"]
        for each in design["findings"]
    }


def test_as_it_is_nothing_stands_in_the_way(check: Check) -> None:
    ran = check()
    assert (ran.returncode, ran.stderr) == (0, "")
    assert "Hollow Lane carving stand, wide, revision A\n" in ran.stdout
    assert ran.stdout.endswith("\nThree designs reviewed, none of them with something to change.\n")


def test_what_the_shop_changed_stands_in_every_report(check: Check) -> None:
    told = (
        "Rule top.lifted_by_hand: silenced\n"
        "    Maren Holt: a hoist hangs over the bench, and everything is lifted with it.\n"
    )
    assert check().stdout.count(told) == 3
    data = json.loads(check(".", "--format", "json").stdout)
    for design in data["designs"]:
        assert design["shop"]["name"] == "Hollow Lane workshop"
        assert [(each["name"], each["does"], each["by"]) for each in design["shop"]["changes"]] == [
            ("rim_play", "2 mm for public, private, not 3 mm", "Maren Holt"),
            ("top.lifted_by_hand", "silenced", "Maren Holt"),
            (
                "slewing_ring.rollers_close_enough",
                "tightened to 0.9 of its limit",
                "Maren Holt",
            ),
        ]
        silenced = [each for each in design["findings"] if each["silenced"]]
        assert {each["rule"] for each in silenced} == {"top.lifted_by_hand"}


def test_a_rim_that_is_too_thin_in_a_file_that_others_are_based_on(
    check: Check, checkout: Path
) -> None:
    edit(checkout, STAND, "    thickness: 24\n", "    thickness: 18\n")
    ran = check()
    assert ran.returncode == 1
    assert (
        "[ ] Change table.thickness from 18 to 21 (line 28)\n"
        "    The top is 18 mm thick; no rim leaves this shop under 19 mm.\n"
    ) in ran.stdout
    # The wide stand has its thickness from the other file, and the remedy names that.
    assert (
        "[ ] Change table.thickness from 18 to 21 (line 28 of designs/carving_stand.yaml)\n"
    ) in ran.stdout
    found = findings(check(".", "--format", "json"))
    wide = found["designs/carving_stand_wide.yaml", "table", "top.house_rim"]
    assert (wide["verdict"], wide["path"], wide["line"]) == ("fail", STAND, 28)
    assert (wide["demand"]["value"], wide["capacity"]["value"]) == (19.0, 18.0)
    assert wide["remedies"][0]["path"] == STAND


def test_a_rule_on_one_part_one_over_pairs_and_one_over_a_collection(
    check: Check, checkout: Path
) -> None:
    edit(checkout, STAND, "bolt: M8x40}", "bolt: M6x40}")
    edit(checkout, LIFT, "bolt: M8x40", "bolt: M6x40")
    edit(checkout, LIFT, "material: birch plywood", "material: MDF")
    ran = check(".", "--format", "json", "--no-remedies")
    assert ran.returncode == 1
    failing = {
        (*key, *each["with"]): each["message"]
        for key, each in findings(ran).items()
        if each["verdict"] == "fail" and ".house_" in each["rule"]
    }
    bolts = "The hold-downs turn on M6x40; this shop keeps M8 alone."
    assert failing == {
        (STAND, "ring", "slewing_ring.house_hold_downs"): bolts,
        ("designs/carving_stand_wide.yaml", "ring", "slewing_ring.house_hold_downs"): bolts,
        (LIFT, "design", "top.house_birch", "shelf"): (
            "The tops are of MDF; this shop cuts birch plywood alone."
        ),
        (LIFT, "left_clamp", "clamp.house_one_spanner", "right_clamp"): (
            "One clamp closes with M6x40, its neighbour with M8x40."
        ),
    }


def test_a_mistake_in_a_rule_of_the_shop_is_told_at_once(check: Check, checkout: Path) -> None:
    house = "rules/house.yaml"
    edit(checkout, house, "require: thickness >= limit.rim", "require: thickness >= 19 kg")
    ran = check()
    assert ran.returncode == 2
    assert ran.stderr == (
        "rules/house.yaml:15:14: compares a length with a mass\n"
        "    found thickness, a length, and 19 kg, a mass\n"
        "    expected two values of one dimension\n"
        "        require: thickness >= 19 kg\n"
        "                 ^^^^^^^^^^^^^^^^^^\n"
    )
    assert "Reviewed without what is wrong in rules/house.yaml." in ran.stdout


def test_a_stranger_cannot_bring_code_or_reach_outside(check: Check, checkout: Path) -> None:
    secret = checkout.parent / "secret.yaml"
    secret.write_text("- rule: top.secret\n", "utf-8")
    (checkout / "rules" / "evil.py").write_text("raise SystemExit('was here')\n", "utf-8")
    (checkout / "rules" / "linked.yaml").symlink_to(secret)
    edit(checkout, "shop.yaml", "  - rules\n", "  - rules\n  - ../secret.yaml\n  - rules/evil.py\n")
    ran = check()
    assert ran.returncode == 2
    assert ran.stderr == (
        "shop.yaml:31:5: a file of this folder leads out of the folder that is reviewed\n"
        "    found linked.yaml\n"
        "    expected files of the same repository, or of the folder that was asked for\n"
        "      - rules\n"
        "        ^^^^^\n"
        "shop.yaml:32:5: the path leaves the folder that is reviewed\n"
        "    found ../secret.yaml\n"
        "    expected a file of the same repository, or of the folder that was asked for\n"
        "      - ../secret.yaml\n"
        "        ^^^^^^^^^^^^^^\n"
        "shop.yaml:33:5: this names no file of text\n"
        "    found rules/evil.py\n"
        "    expected a file ending .yaml or .yml\n"
        "      - rules/evil.py\n"
        "        ^^^^^^^^^^^^^\n"
    )
    assert "top.secret" not in ran.stdout + ran.stderr
