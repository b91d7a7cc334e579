"""reviewer compare: files and git revisions, as a command line names them."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Git = Callable[..., None]
Run = Callable[..., Any]
HERE = Path(__file__).parent
BENCH = HERE.parents[1] / "specimens" / "potting_bench"
LID = """\
design: Lid
revision: {}
parts:
  lid: {{kind: gap, least: {}, depth: 6 mm, closing_force: 40 N}}
"""
TEXT = """\
old.yaml: Lid, revision A
new.yaml: Lid, revision B
One finding fails that did not.
A step back: lid.wide.

FAILS NOW AND DID NOT ----------------------------------------------------------

lid.wide: pass 0.83 -> fail 1.25
    +0.42: lid.least +0.42

WHAT WAS CHANGED ---------------------------------------------------------------

lid.least 30 mm -> 20 mm

WHAT MOVED MOST ----------------------------------------------------------------

lid.least  30 mm -> 20 mm  -33 %
"""
MARKDOWN = r"""## Lid: old.yaml and new.yaml

One finding fails that did not.

**A step back:** lid.wide

### Fails now and did not

| finding | before | after | because of |
| --- | --- | --- | --- |
| lid.wide | pass 0.83 | fail 1.25 | +0.42: lid.least +0.42 |

### What was changed

- lid.least 30 mm -\> 20 mm

### What moved most

| quantity | before | after | by |
| --- | --- | --- | --- |
| lid.least | 30 mm | 20 mm | -33 % |
"""


def written(folder: Path, name: str, revision: str, least: str) -> None:
    (folder / name).write_text(LID.format(revision, least), encoding="utf-8")


@pytest.fixture
def repository(folder: Path, git: Git) -> Path:
    """A repository with two revisions of a design, and a third that is not committed."""
    git(folder, "init", "--quiet")
    (folder / "drawings").mkdir()
    for revision, least in (("A", "30 mm"), ("B", "20 mm")):
        written(folder / "drawings", "lid.yaml", revision, least)
        git(folder, "add", "drawings")
        git(folder, "commit", "--quiet", "-m", revision)
    written(folder / "drawings", "lid.yaml", "C", "28 mm")
    return folder


def test_a_step_back_as_text(run: Run, folder: Path) -> None:
    written(folder, "old.yaml", "A", "30 mm")
    written(folder, "new.yaml", "B", "20 mm")
    ran = run("compare", "old.yaml", "new.yaml")
    assert (ran.status, ran.err) == (1, "")
    assert ran.out == TEXT


def test_a_step_back_as_markdown_and_data(run: Run, folder: Path) -> None:
    written(folder, "old.yaml", "A", "30 mm")
    written(folder, "new.yaml", "B", "20 mm")
    ran = run("compare", "old.yaml", "new.yaml", "--format", "markdown", "--output", "it.json")
    assert ran.out == MARKDOWN
    told = json.loads((folder / "it.json").read_text(encoding="utf-8"))
    assert told["step_back"] == ["lid.wide"]
    found = next(each for each in told["findings"] if each["rule"] == "gap.wide")
    assert found["turn"] == "fails now"
    assert found["before"] == {"verdict": "pass", "utilisation": pytest.approx(25 / 30)}
    assert found["explained"]["by"] == [{"change": "lid.least", "effect": pytest.approx(5 / 12)}]
    assert told["changed"] == [
        {"name": "lid.least", "from": "30 mm", "to": "20 mm", "line": 4, "note": None}
    ]


def test_the_bench_from_revision_a_to_c(run: Run, folder: Path) -> None:
    # By the house's rules alone: utilisations are 25 mm over the width, and the depth over 60 mm.
    for each in "ac":
        text = (BENCH / f"revision_{each}.yaml").read_text(encoding="utf-8")
        (folder / f"{each}.yaml").write_text(text, encoding="utf-8")
    ran = run("compare", "a.yaml", "c.yaml")
    assert (ran.status, ran.err) == (1, "")
    assert ran.out == (HERE / "bench_a_to_c.txt").read_text(encoding="utf-8")


def test_the_other_way_is_no_step_back(run: Run, folder: Path) -> None:
    written(folder, "old.yaml", "A", "20 mm")
    written(folder, "new.yaml", "B", "30 mm")
    ran = run("compare", "old.yaml", "new.yaml")
    assert ran.status == 0
    assert "One finding is mended." in ran.out


@pytest.mark.parametrize(
    ("old", "new", "status", "told"),
    [
        ("HEAD~1:drawings/lid.yaml", "HEAD:drawings/lid.yaml", 1, "pass 0.83 -> fail 1.25"),
        ("HEAD:drawings/lid.yaml", "drawings/lid.yaml", 0, "fail 1.25 -> pass 0.89"),
        ("drawings/lid.yaml", "HEAD:drawings/lid.yaml", 1, "pass 0.89 -> fail 1.25"),
    ],
)
def test_revisions_in_git(
    run: Run, repository: Path, old: str, new: str, status: int, told: str
) -> None:
    ran = run("compare", old, new)
    assert (ran.status, ran.err) == (status, "")
    assert told in ran.out


@pytest.mark.parametrize(
    ("old", "told"),
    [
        ("HEAD~9:drawings/lid.yaml", "git has no such file"),
        ("HEAD:lid.yaml", "git has no such file"),
        ("--upload-pack=x:drawings/lid.yaml", "there is no such option"),
        ("nowhere.yaml", "this file cannot be read"),
    ],
)
def test_a_revision_that_is_not_there(run: Run, repository: Path, old: str, told: str) -> None:
    ran = run("compare", old, "drawings/lid.yaml")
    assert (ran.status, ran.out) == (2, "")
    assert told in ran.err
    assert "Traceback" not in ran.err


def test_git_runs_nothing_of_the_repository(run: Run, repository: Path, git: Git) -> None:
    # A filter of the repository's own configuration would leave its mark.
    mark = repository / "mark"
    for name in ("filter.x.smudge", "diff.x.textconv"):
        git(repository, "config", name, f"touch {mark}; cat")
    attributes = "*.yaml filter=x diff=x\n"
    (repository / ".gitattributes").write_text(attributes, encoding="utf-8")
    assert run("compare", "HEAD:drawings/lid.yaml", "drawings/lid.yaml").status == 0
    assert not mark.exists()


def test_a_base_is_read_from_the_same_revision(run: Run, repository: Path, git: Git) -> None:
    wide = "design: Wide lid\nbased_on: lid.yaml\nparts:\n  lid: {depth: 5 mm}\n"
    (repository / "drawings" / "wide.yaml").write_text(wide, encoding="utf-8")
    git(repository, "add", "drawings/wide.yaml")
    git(repository, "commit", "--quiet", "-m", "wide")
    ran = run("compare", "HEAD:drawings/wide.yaml", "drawings/wide.yaml")
    assert (ran.status, ran.err) == (0, "")
    assert "lid.least 20 mm -> 28 mm" in ran.out


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("a.yaml", "a comparison needs two designs"),
        ("a.yaml b.yaml c.yaml", "there is one argument too many"),
        ("a.yaml b.yaml --format html", "there is no such choice"),
        ("a.yaml b.yaml --output it.html", "there is no format with this ending"),
    ],
)
def test_a_wrong_command_line(run: Run, folder: Path, words: str, told: str) -> None:
    ran = run("compare", *words.split())
    assert (ran.status, ran.out) == (2, "")
    assert told in ran.err
