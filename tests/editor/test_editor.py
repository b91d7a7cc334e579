"""The schema in an editor: a language server completes, explains and refuses by it.

The server is a package of the npm registry (package.json beside this file). Where it is installed
is told by NODE_PACKAGES, the folder above node_modules; `.ci/run` installs it, and there its
absence is a failure.
"""

import os
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from reviewer.command.main import main
from tests.editor.language_server import Editor

ROOT = Path(__file__).parents[2]
FIRST_LINE = "# yaml-language-server: $schema=design.schema.json\n"
SPECIMENS = sorted((ROOT / "specimens").glob("*.yaml"))


def server() -> list[str] | None:
    """How to start the server, if there is one."""
    folder, node = os.environ.get("NODE_PACKAGES"), shutil.which("node")
    if folder is None or node is None:
        return None
    program = Path(folder, "node_modules", "yaml-language-server", "bin", "yaml-language-server")
    return [node, str(program), "--stdio"] if program.is_file() else None


@pytest.fixture(scope="module")
def editor(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Editor]:
    """An editor in a folder that has the schema as README tells to make it."""
    command = server()
    if command is None and "NODE_PACKAGES" in os.environ:
        pytest.fail("NODE_PACKAGES names a folder without the language server")
    if command is None:
        pytest.skip("no language server for YAML: NODE_PACKAGES does not name a folder with one")
    folder = tmp_path_factory.mktemp("designs")
    schema = folder / "design.schema.json"
    with schema.open("w", encoding="utf-8") as file, pytest.MonkeyPatch.context() as patch:
        patch.setattr("sys.stdout", file)
        assert main(["schema"]) == 0
    editor = Editor(command, folder)
    yield editor
    editor.close()


def lines_of(text: str, part: str) -> tuple[int, int]:
    """Line and column, from 0, of the first place where a part of a text stands."""
    before = text[: text.index(part)]
    return before.count("\n"), len(before) - (before.rfind("\n") + 1)


@pytest.mark.parametrize("path", SPECIMENS, ids=lambda path: path.stem)
def test_a_sound_design_has_no_problem(editor: Editor, path: Path) -> None:
    uri = editor.open(f"sound_{path.name}", FIRST_LINE + path.read_text("utf-8"))
    assert editor.problems(uri) == []


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("height: 80", "heigth: 80", "heigth"),
        ("kind: base", "kind: bass", "slewing_ring"),
        ("count: 5", "count: five", "integer"),
        ("count: 5", "count: 2.5", "integer"),
    ],
)
def test_what_is_wrong_is_marked_where_it_stands(
    editor: Editor, old: str, new: str, message: str
) -> None:
    sound = FIRST_LINE + (ROOT / "specimens" / "first_design.yaml").read_text("utf-8")
    text = sound.replace(old, new, 1)
    found = editor.problems(editor.open(f"{new.replace(': ', '_')}.yaml", text))
    line = lines_of(text, new)[0]
    assert any(each["range"]["start"]["line"] == line for each in found)
    assert any(message in each["message"] for each in found)


def test_every_key_of_a_part_is_offered_with_what_it_means(editor: Editor) -> None:
    text = FIRST_LINE + (
        "design: Lid\nparts:\n  lid:\n    kind: slewing_ring\n    plate:\n      \n"
    )
    uri = editor.open("half_written.yaml", text)
    offered = editor.offered(uri, 6, 6)
    assert {"material", "thickness", "diameter", "opening", "board"} <= set(offered)
    assert "thickness of the plate" in str(offered["thickness"]["documentation"])
    assert "18 mm" in str(offered["thickness"]["documentation"])


def test_kinds_and_words_are_offered(editor: Editor) -> None:
    text = FIRST_LINE + "design: Lid\nservice: \nparts:\n  lid:\n    kind: \n"
    uri = editor.open("words.yaml", text)
    assert {"public", "private", "shop"} <= set(editor.offered(uri, 2, 9))
    assert {"slewing_ring", "arm", "hub", "gap"} <= set(editor.offered(uri, 5, 10))


def test_a_key_explains_itself(editor: Editor) -> None:
    text = FIRST_LINE + (ROOT / "specimens" / "first_design.yaml").read_text("utf-8")
    uri = editor.open("explained.yaml", text)
    line, column = lines_of(text, "thickness: 18")
    assert "thickness of the plate" in editor.explained(uri, line, column + 2)
    line, column = lines_of(text, "all_round")
    assert editor.explained(uri, line, column + 2)
