"""Only what has changed since a revision in git, and what depends on it."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Git = Callable[..., None]
Run = Callable[..., Any]
Write = Callable[..., Path]

OWN = "based_on: base.yaml\ndesign: Own\nparts: {lid: {depth: 30 mm}}\n"


@pytest.fixture
def repository(folder: Path, design: Write, git: Git) -> Path:
    """A repository with a shop's folder and a folder beside it."""
    for name in ("shop/base.yaml", "shop/other.yaml", "beside/far.yaml"):
        design(name)
    (folder / "shop" / "own.yaml").write_text(OWN, "utf-8")
    (folder / "shop" / "shop.yaml").write_text("shop: Ours\n", "utf-8")
    git(folder, "init", "--quiet")
    git(folder, "add", ".")
    git(folder, "commit", "--quiet", "-m", "first")
    git(folder, "tag", "first")
    return folder


def reviewed(ran: Any) -> list[str]:
    return [each["path"] for each in json.loads(ran.out)["designs"]]


def since(run: Run, *words: str, revision: str = "first") -> Any:
    return run("check", *(words or (".",)), "--since", revision, "--format", "json")


def test_nothing_is_reviewed_where_nothing_has_changed(run: Run, repository: Path) -> None:
    ran = since(run)
    assert (ran.status, reviewed(ran)) == (0, [])
    assert ran.err == (
        "reviewer check: four designs left out, of which nothing has changed since first: "
        "beside/far.yaml, shop/base.yaml, shop/other.yaml, shop/own.yaml\n"
    )


@pytest.mark.parametrize("commit", [True, False])
def test_a_design_and_those_based_on_it(
    run: Run, repository: Path, design: Write, git: Git, commit: bool
) -> None:
    design("shop/base.yaml", least="9 mm")
    if commit:
        git(repository, "commit", "--quiet", "-a", "-m", "second")
    ran = since(run)
    assert (ran.status, reviewed(ran)) == (1, ["shop/base.yaml", "shop/own.yaml"])
    assert ran.err == (
        "reviewer check: shop/own.yaml is reviewed because of what it depends on: shop/base.yaml\n"
        "reviewer check: two designs left out, of which nothing has changed since first: "
        "beside/far.yaml, shop/other.yaml\n"
    )


def test_all_of_a_shop_whose_file_has_changed(run: Run, repository: Path) -> None:
    (repository / "shop" / "shop.yaml").write_text("shop: Theirs\n", "utf-8")
    assert reviewed(since(run)) == ["shop/base.yaml", "shop/other.yaml", "shop/own.yaml"]


def test_a_shop_that_has_gone_or_come(run: Run, repository: Path) -> None:
    (repository / "shop" / "shop.yaml").rename(repository / "beside" / "shop.yaml")
    assert len(reviewed(since(run))) == 4


@pytest.mark.parametrize("name", ["two.yaml", "one.yaml"])
def test_a_pack_that_comes_or_changes(run: Run, repository: Path, git: Git, name: str) -> None:
    pack = (Path(__file__).parent / "house.yaml").read_text("utf-8")
    packs = repository / "shop" / "packs"
    packs.mkdir()
    (packs / "one.yaml").write_text(pack.replace("gap.", "gap.one_"), "utf-8")
    (repository / "shop" / "shop.yaml").write_text("shop: Ours\npacks: [packs]\n", "utf-8")
    git(repository, "add", ".")
    git(repository, "commit", "--quiet", "-m", "second")
    assert reviewed(since(run, revision="HEAD")) == []
    (packs / name).write_text(pack.replace("gap.", "gap.two_"), "utf-8")
    assert len(reviewed(since(run, revision="HEAD"))) == 3


def test_a_new_design_and_one_with_other_line_ends(
    run: Run, repository: Path, design: Write
) -> None:
    text = (repository / "shop" / "other.yaml").read_bytes()
    (repository / "shop" / "other.yaml").write_bytes(text.replace(b"\n", b"\r\n"))
    design("beside/new.yaml")
    assert reviewed(since(run)) == ["beside/new.yaml"]


def test_a_design_that_is_a_link(run: Run, repository: Path, design: Write, git: Git) -> None:
    (repository / "linked.yaml").symlink_to("beside/far.yaml")
    git(repository, "add", ".")
    git(repository, "commit", "--quiet", "-m", "second")
    assert reviewed(since(run, revision="HEAD")) == []
    design("beside/far.yaml", least="9 mm")
    assert reviewed(since(run, revision="HEAD")) == ["beside/far.yaml", "linked.yaml"]


def test_standard_input_and_what_is_not_there_are_told(run: Run, repository: Path) -> None:
    text = (repository / "beside" / "far.yaml").read_bytes()
    ran = run("check", "-", "gone.yaml", "--since", "first", "--format", "json", stdin=text)
    assert (ran.status, reviewed(ran)) == (2, ["-", "gone.yaml"])


@pytest.mark.parametrize(
    ("revision", "told"),
    [
        ("absent", "git knows no such revision"),
        ("first:shop", "git knows no such revision"),
        ("--output=x", "an option lacks its value"),
        (" ", "this is no revision"),
    ],
)
def test_a_revision_that_is_none(run: Run, repository: Path, revision: str, told: str) -> None:
    ran = since(run, revision=revision)
    assert (ran.status, ran.out) == (2, "")
    assert ran.err.startswith(f"reviewer check: {told}")
    assert "a revision that git knows" in ran.err or "--since" in ran.err
    assert not (repository / "x").exists()


def test_a_folder_without_git(run: Run, folder: Path, design: Write) -> None:
    design()
    ran = since(run)
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == (
        "reviewer check: this is in no git repository\n"
        "    found lid.yaml\n    expected a file in a git repository\n"
    )


def test_a_machine_without_git(run: Run, repository: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", str(repository))
    ran = since(run)
    assert ran.status == 2
    assert ran.err.startswith("reviewer check: git cannot be asked: No such file or directory\n")


def test_nothing_of_the_repository_runs(
    run: Run, repository: Path, design: Write, git: Git
) -> None:
    """Whatever a repository's own settings can name to be run would leave its mark."""
    mark, script = repository / "mark", repository / "script"
    script.write_text(f"#!/bin/sh\ntouch {mark}\n", "utf-8")
    script.chmod(0o755)
    hooks = repository / ".git" / "hooks"
    hooks.mkdir(exist_ok=True)
    for name in ("post-checkout", "post-index-change", "reference-transaction", "pre-auto-gc"):
        (hooks / name).write_text(script.read_text("utf-8"), "utf-8")
        (hooks / name).chmod(0o755)
    for name in (
        *("core.fsmonitor", "diff.external", "core.pager", "pager.ls-tree", "core.sshCommand"),
        *("filter.x.clean", "filter.x.process", "diff.x.textconv", "diff.x.command"),
        *("core.editor", "core.askPass", "credential.helper", "alias.ls-tree"),
    ):
        git(repository, "config", name, f"!{script}" if name.startswith("alias") else str(script))
    attributes = "*.yaml filter=x diff=x\n"
    (repository / ".gitattributes").write_text(attributes, "utf-8")
    design("shop/other.yaml", least="9 mm")
    assert reviewed(since(run)) == ["shop/other.yaml"]
    assert not mark.exists()
