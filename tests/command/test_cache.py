"""Reviews that are kept: the same bytes as without, as long as nothing that counts has changed."""

import json
import multiprocessing
import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from reviewer.command.cache_folder import cache_folder

Run = Callable[..., Any]
Write = Callable[..., Path]
OUTPUTS = ("--output", "o.json", "--output", "o.sarif", "--output", "o.md", "--output", "o.txt")
FORMATS = ("text", "json", "sarif", "markdown")
CONCEDED = (
    "concessions:\n  - {rule: gap.wide, part: lid, by: Ada Marsh, why: a trial, "
    "until: 2026-06-30}\n"
)


@pytest.fixture
def kept(folder: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder in which reviews are kept."""
    monkeypatch.setenv("REVIEWER_CACHE", str(folder / "kept"))
    return folder / "kept"


@pytest.fixture
def reviewed(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The designs that are read from now on, by path: those that are not kept."""
    from reviewer.reading.read_design import read_design

    found: list[str] = []

    def read(source: bytes, path: str, *more: Any, **others: Any) -> Any:
        found.append(path)
        return read_design(source, path, *more, **others)

    monkeypatch.setattr("reviewer.reviewing.read_design", read)
    return found


def entries(kept: Path) -> list[Path]:
    return sorted(path for path in kept.rglob("*") if path.is_file())


@pytest.mark.parametrize("form", FORMATS)
def test_what_is_kept_is_told_in_the_same_bytes(
    run: Run, design: Write, folder: Path, kept: Path, reviewed: list[str], form: str
) -> None:
    design("a.yaml")
    design("b.yaml", least="9 mm")
    design("c.yaml", least="9 mm", more=CONCEDED)
    words = ("check", ".", "--format", form, "--on", "2026-05-01", *OUTPUTS)
    plainly = run(*words, "--cache", "off")
    without = [(folder / name).read_bytes() for name in OUTPUTS[1::2]]
    assert not kept.exists()
    for count in (3, 0):
        reviewed.clear()
        assert run(*words) == plainly
        assert len(reviewed) == count
        assert [(folder / name).read_bytes() for name in OUTPUTS[1::2]] == without


def test_only_what_changed_is_reviewed_again(
    run: Run, design: Write, kept: Path, reviewed: list[str]
) -> None:
    for name in ("a.yaml", "b.yaml", "c.yaml"):
        design(name)
    first = run("check", ".")
    design("b.yaml", least="9 mm")
    reviewed.clear()
    second = run("check", ".")
    assert reviewed == ["b.yaml"]
    assert second != first
    assert run("check", ".", "--cache", "off") == second


@pytest.mark.parametrize(
    "change",
    [
        lambda folder: (folder / "base.yaml").write_text(
            (folder / "base.yaml").read_text("utf-8").replace("30 mm", "9 mm"), "utf-8"
        ),
        lambda folder: (folder / "shop.yaml").write_text("shop: Ours\n", "utf-8"),
        lambda folder: (folder / "below" / "shop.yaml").write_text("shop: Ours\n", "utf-8"),
    ],
    ids=["its base", "a shop above it", "a shop beside it"],
)
def test_a_review_is_made_again_when_a_file_that_it_depends_on_changes(
    run: Run,
    design: Write,
    folder: Path,
    kept: Path,
    reviewed: list[str],
    change: Callable[[Path], None],
) -> None:
    (folder / ".git").mkdir()
    design("base.yaml")
    (folder / "below").mkdir()
    (folder / "below" / "own.yaml").write_text("based_on: ../base.yaml\ndesign: Own\n", "utf-8")
    run("check", "below", "--format", "json")
    reviewed.clear()
    run("check", "below", "--format", "json")
    assert reviewed == []
    change(folder)
    ran = run("check", "below", "--format", "json")
    assert reviewed == ["below/own.yaml"]
    assert run("check", "below", "--format", "json", "--cache", "off") == ran


def test_packs_of_a_shop_and_new_ones_beside_them_are_looked_at(
    run: Run, design: Write, folder: Path, kept: Path, reviewed: list[str]
) -> None:
    design()
    (folder / "packs").mkdir()
    pack = (Path(__file__).parent / "house.yaml").read_text("utf-8").replace("gap.", "gap.LIMIT_")
    (folder / "packs" / "one.yaml").write_text(pack.replace("LIMIT", "one"), "utf-8")
    (folder / "shop.yaml").write_text("shop: Ours\npacks: [packs]\n", "utf-8")
    for after, again in (
        (None, 0),
        (("one.yaml", "other"), 1),
        (("two.yaml", "two"), 1),
        (None, 0),
    ):
        if reviewed == []:
            run("check", "lid.yaml")
        if after:
            (folder / "packs" / after[0]).write_text(pack.replace("LIMIT", after[1]), "utf-8")
        reviewed.clear()
        run("check", "lid.yaml")
        assert len(reviewed) == again, after


def test_a_date_counts_where_there_is_a_concession(
    run: Run, design: Write, kept: Path, reviewed: list[str]
) -> None:
    design("plain.yaml")
    design("conceded.yaml", least="9 mm", more=CONCEDED)
    before = run("check", ".", "--on", "2026-06-30")
    reviewed.clear()
    after = run("check", ".", "--on", "2026-07-01")
    assert reviewed == ["conceded.yaml"]
    assert (before.status, after.status) == (0, 1)


@pytest.mark.parametrize(
    "more", [("--all",), ("--fail-at", "note"), ("--allow-open",), ("--format", "json")]
)
def test_another_option_is_another_review(
    run: Run, design: Write, kept: Path, reviewed: list[str], more: tuple[str, ...]
) -> None:
    design(least="")
    run("check", ".")
    ran = run("check", ".", *more)
    assert len(reviewed) == 2
    assert run("check", ".", *more, "--cache", "off") == ran


def test_a_design_with_problems_is_not_kept(run: Run, design: Write, kept: Path) -> None:
    design(least="9 mn")
    first = run("check", ".")
    assert first.status == 2
    assert run("check", ".") == first
    assert entries(kept) == []


@pytest.mark.parametrize(
    "damage",
    [
        b"",
        b"\x80\x04\x95cos\nsystem\n",
        b"[" * 100_000,
        b"{}\n[]",
        b'{"format": 1}\n["other"]',
        "half",
        "a digit",
        "a folder",
    ],
)
def test_an_entry_that_is_damaged_or_foreign_is_passed_over_and_written_again(
    run: Run, design: Write, kept: Path, reviewed: list[str], damage: bytes | str
) -> None:
    design(least="9 mm")
    first = run("check", ".")
    (entry,) = entries(kept)
    sound = entry.read_bytes()
    if damage == "half":
        entry.write_bytes(sound[: len(sound) // 2])
    elif damage == "a digit":
        entry.write_bytes(sound.replace(b"9 mm", b"8 mm"))
    elif damage == "a folder":
        entry.unlink()
        entry.mkdir()
    else:
        assert isinstance(damage, bytes)
        entry.write_bytes(damage)
    assert run("check", ".") == first
    assert len(reviewed) == 2
    if damage != "a folder":
        assert entry.read_bytes() == sound
        assert entries(kept) == [entry]


def test_an_entry_of_another_shape_under_a_sound_head_is_passed_over(
    run: Run, design: Write, kept: Path, reviewed: list[str]
) -> None:
    design(least="9 mm")
    first = run("check", ".")
    (entry,) = entries(kept)
    from reviewer.reading.noted import digest

    head = json.loads(entry.read_bytes().partition(b"\n")[0])
    for body in (
        b"[]",
        b'["x", "0", [], [], [], []]\n',
        b"[1, 2, 3, 4, 5, 6]",
        b"null",
        b'["x", 0, [{"text": 3}], [], [], []]\n',
        b'["x", 0, [], [9], [], []]\n1',
    ):
        entry.write_bytes(json.dumps({**head, "body": digest(body)}).encode() + b"\n" + body)
        assert run("check", ".") == first


def test_a_folder_that_cannot_be_written_is_no_problem(
    run: Run, design: Write, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    design()
    (folder / "a_file").write_text("", "utf-8")
    monkeypatch.setenv("REVIEWER_CACHE", str(folder / "a_file"))
    ran = run("check", "lid.yaml")
    assert (ran.status, ran.err) == (0, "")


def test_what_is_kept_has_a_bound(
    run: Run, design: Write, kept: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    names = [f"d{number}.yaml" for number in range(12)]
    for name in names:
        design(name)
    one = len(run("check", names[0], "--format", "json").out)
    monkeypatch.setattr(
        "reviewer.command.cache.Cache._place", lambda _, key: kept / "aa" / key.name
    )
    monkeypatch.setattr("reviewer.command.cache.SHELF_BYTES", 4 * one)
    run("check", *names, "--format", "json")
    stays = entries(kept / "aa")
    assert 1 <= len(stays) <= 4
    assert sum(each.stat().st_size for each in stays) <= 4 * one


def _check(names: list[str]) -> None:
    from reviewer.command.main import main

    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
    os._exit(main(["check", *names]))


def test_runs_at_the_same_time_share_it(run: Run, design: Write, kept: Path) -> None:
    names = [f"d{number}.yaml" for number in range(8)]
    for name in names:
        design(name, least="9 mm")
    plainly = run("check", *names, "--cache", "off")
    context = multiprocessing.get_context("fork")
    runs = [context.Process(target=_check, args=(names,)) for _ in range(3)]
    for each in runs:
        each.start()
    for each in runs:
        each.join(120)
    assert [each.exitcode for each in runs] == [1, 1, 1]
    assert len(entries(kept)) == len(names)
    assert run("check", *names) == plainly


def test_what_a_killed_run_left_half_written_is_no_entry(
    run: Run, design: Write, kept: Path, reviewed: list[str]
) -> None:
    design()
    run("check", ".")
    (entry,) = entries(kept)
    os.rename(entry, entry.with_name(".half"))
    run("check", ".")
    assert len(reviewed) == 2


@pytest.mark.parametrize(
    ("option", "environment", "found"),
    [
        ("own", {}, Path("own")),
        (None, {"REVIEWER_CACHE": "there"}, Path("there")),
        ("own", {"REVIEWER_CACHE": "off"}, Path("own")),
        ("off", {"REVIEWER_CACHE": "there"}, None),
        (None, {"REVIEWER_CACHE": "off", "HOME": "/h"}, None),
        (None, {"XDG_CACHE_HOME": "/x", "HOME": "/h"}, Path("/x/reviewer")),
        # the specification has relative paths ignored
        (None, {"XDG_CACHE_HOME": "x", "HOME": "/h"}, Path("/h/.cache/reviewer")),
        (None, {"HOME": "/h"}, Path("/h/.cache/reviewer")),
        (None, {}, None),
    ],
)
def test_where_reviews_are_kept(
    option: str | None, environment: dict[str, str], found: Path | None
) -> None:
    """XDG Base Directory Specification: $XDG_CACHE_HOME, or $HOME/.cache; relative is invalid."""
    assert cache_folder(option, environment) == found
