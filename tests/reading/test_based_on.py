"""Designs based on other files: what is merged, where each value is from, what is refused."""

from collections.abc import Callable
from pathlib import Path

import pytest

from reviewer.notation.problem import render
from reviewer.parts.registry import KINDS
from reviewer.reading.design import Design
from reviewer.reading.folder import Folder
from reviewer.reading.read_design import read_design

BASE = """\
design: Stand
revision: A
lengths: mm
parts:
  frame: {kind: base, feet: {count: 4, circle: 800}, height: 600, mass: 30 kg}
  lid:
    kind: top
    carried_by: frame
    material: birch plywood
    thickness: 18
    diameter: 700
loads:
  lean: {force: 200 N, on: lid, at: rim, all_round: true}
concessions:
  - {rule: top.edge_sags, part: lid, by: Ada, why: it is short}
"""

Told = Callable[..., str]
Read = Callable[..., Design]


@pytest.fixture
def files(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[..., Folder]:
    """Write files into an empty folder that is the tree of a repository."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / ".git").mkdir()

    def write(**texts: str) -> Folder:
        for name, text in texts.items():
            path = tmp_path / f"{name.replace('__', '/')}.yaml"
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, "utf-8")
        return Folder(tmp_path.resolve())

    return write


@pytest.fixture
def read(files: Callable[..., Folder]) -> Read:
    """Read wide.yaml, of which nothing may be wrong."""

    def run(**texts: str) -> Design:
        folder = files(**{"base": BASE, **texts})
        design, problems = read_design(texts["wide"], "wide.yaml", KINDS, folder=folder)
        assert problems == ()
        assert design is not None
        return design

    return run


@pytest.fixture
def told(files: Callable[..., Folder]) -> Told:
    """What is told of wide.yaml, which cannot be read."""

    def run(**texts: str) -> str:
        folder = files(**{"base": BASE, **texts})
        design, problems = read_design(texts["wide"], "wide.yaml", KINDS, folder=folder)
        assert design is None
        return "\n".join(render(problem) for problem in problems)

    return run


def values(design: Design, part: str) -> dict[str, tuple[str, str, int]]:
    """The given values of a part: text, file and line of each."""
    return {
        path: (each.text, each.place.path, each.place.line)
        for path, each in design.parts[part].given.items()
    }


def test_what_differs_is_merged_by_key_and_each_value_keeps_its_file(read: Read) -> None:
    design = read(
        wide="based_on: base.yaml\ndesign: Wide stand\nlengths: mm\n"
        "parts:\n  frame: {feet: {circle: 900}}\n  lid: {diameter: 820}\n"
    )
    assert (design.name, design.revision, design.path) == ("Wide stand", "A", "wide.yaml")
    assert values(design, "frame") == {
        "feet.count": ("4", "base.yaml", 5),
        "feet.circle": ("900", "wide.yaml", 5),
        "height": ("600", "base.yaml", 5),
        "mass": ("30 kg", "base.yaml", 5),
    }
    assert values(design, "lid")["diameter"] == ("820", "wide.yaml", 6)
    assert values(design, "lid")["thickness"] == ("18", "base.yaml", 10)
    assert design.lines_of(design.parts["lid"].given["thickness"].place) == tuple(BASE.splitlines())


def test_each_file_has_its_own_unit_of_bare_lengths(read: Read) -> None:
    design = read(wide="based_on: base.yaml\nlengths: in\nparts:\n  lid: {diameter: 32}\n")
    given = design.parts["lid"].given
    assert given["diameter"].value == pytest.approx(32 * 0.0254, rel=1e-12)
    assert given["thickness"].value == pytest.approx(0.018, rel=1e-12)


def test_null_takes_a_key_out(read: Read) -> None:
    design = read(
        wide="based_on: base.yaml\nrevision: null\nconcessions: null\nloads: null\n"
        "parts:\n  lid: {diameter: null, length: 700 mm, width: 500 mm}\n"
    )
    assert (design.revision, design.concessions, dict(design.loads)) == (None, (), {})
    assert set(values(design, "lid")) == {
        *("carried_by", "material", "thickness", "length", "width"),
    }


def test_a_list_and_a_single_value_take_the_place_of_what_was_there(read: Read) -> None:
    design = read(
        wide="based_on: base.yaml\nconcessions: [{rule: a.b, part: lid, by: Bo, why: new}]\n"
    )
    assert [each.rule for each in design.concessions] == ["a.b"]


def test_a_family_of_three_in_folders(read: Read) -> None:
    design = read(
        wide="based_on: more/middle.yaml\nparts:\n  lid: {thickness: 21 mm}\n",
        more__middle="based_on: ../base.yaml\ndesign: Middle\nparts:\n  lid: {diameter: 30 in}\n",
    )
    assert design.name == "Middle"
    given = values(design, "lid")
    assert given["thickness"] == ("21 mm", "wide.yaml", 3)
    assert given["diameter"] == ("30 in", "more/middle.yaml", 4)
    assert given["material"] == ("birch plywood", "base.yaml", 9)


REFUSALS = [
    (
        {"wide": "based_on: bass.yaml\n"},
        """\
wide.yaml:1:11: there is no such file
    found bass.yaml
    expected the path of a file
    mend: write base.yaml
    based_on: bass.yaml
              ^^^^^^^^^""",
    ),
    (
        {"wide": "based_on: ../base.yaml\n"},
        """\
wide.yaml:1:11: the path leaves the folder that is reviewed
    found ../base.yaml
    expected a file of the same repository, or of the folder that was asked for
    based_on: ../base.yaml
              ^^^^^^^^^^^^""",
    ),
    (
        {"wide": "based_on: wide.yaml\n"},
        """\
wide.yaml:1:11: designs are based on each other in a circle
    found wide.yaml on wide.yaml
    expected an end of the chain
    based_on: wide.yaml
              ^^^^^^^^^""",
    ),
    (
        {"wide": "based_on: more/a.yaml\n", "more__a": "note: hm\nbased_on: ../wide.yaml\n"},
        """\
more/a.yaml:2:11: designs are based on each other in a circle
    found wide.yaml on more/a.yaml on wide.yaml
    expected an end of the chain
    based_on: ../wide.yaml
              ^^^^^^^^^^^^""",
    ),
    (
        {"wide": "based_on: base.txt\n"},
        """\
wide.yaml:1:11: this names no file of text
    found base.txt
    expected a file ending .yaml or .yml
    based_on: base.txt
              ^^^^^^^^""",
    ),
    (
        {"wide": "based_on: [base.yaml]\n"},
        """\
wide.yaml:1:11: based_on names one file
    found a list or table
    expected the path of a file
    based_on: [base.yaml]
              ^""",
    ),
    (
        {"wide": "based_on: base.yaml\nparts:\n  lid: {lenght: null}\n"},
        """\
wide.yaml:3:9: there is nothing to take out: the file that this one is based on lacks the key
    found lenght
    expected a key of that file, or a value
      lid: {lenght: null}
            ^^^^^^""",
    ),
    (
        {"wide": "based_on: base.yaml\nparts:\n  lid: {thickness: }\n"},
        """\
wide.yaml:3:9: thickness has no value
    found nothing
    expected a length, such as 18 mm, or what a sheet is called, such as 3/4 birch ply
      lid: {thickness: }
            ^^^^^^^^^""",
    ),
    (
        {"wide": "based_on: base.yaml\nparts:\n  lid: {diameter: 700}\n"},
        """\
wide.yaml:3:19: the number has no unit
    found 700
    expected a length, such as 18 mm
    mend: write 700 mm, if that is its unit, or declare lengths: mm at the top of the file
      lid: {diameter: 700}
                      ^^^""",
    ),
    (
        {
            "wide": "based_on: base.yaml\n",
            "base": BASE.replace("thickness: 18", "thickness: 18 kg"),
        },
        """\
base.yaml:10:16: a mass stands where a length is due
    found 18 kg
    expected a length, such as 18 mm
    mend: write a length with its unit
        thickness: 18 kg
                   ^^^^^""",
    ),
    (
        {"wide": "based_on: base.yaml\n", "base": "design: [\n"},
        """\
base.yaml:1:9: the [ is not closed
    found the end of the file
    expected a ]
    mend: write ] where it ends
    design: [
            ^""",
    ),
]


@pytest.mark.parametrize(
    ("texts", "message"), REFUSALS, ids=[message.partition("\n")[0] for _, message in REFUSALS]
)
def test_refusal(told: Told, texts: dict[str, str], message: str) -> None:
    assert told(**texts) == message


def test_too_long_a_chain(told: Told) -> None:
    chain = {f"b{number}": f"based_on: b{number + 1}.yaml\n" for number in range(1, 9)}
    assert told(wide="based_on: b1.yaml\n", **chain) == (
        "b5.yaml:1:11: designs are based on each other in too long a chain\n"
        "    found more than 5 files\n"
        "    expected at most 5\n"
        "    mend: base it on a file further down\n"
        "    based_on: b6.yaml\n"
        "              ^^^^^^^"
    )


def test_a_link_that_leaves_the_folder(told: Told, tmp_path: Path) -> None:
    outside = tmp_path.parent / f"{tmp_path.name}_outside.yaml"
    outside.write_text("design: secret\n", "utf-8")
    (tmp_path / "link.yaml").symlink_to(outside)
    message = told(wide="based_on: link.yaml\n")
    assert message.startswith("wide.yaml:1:11: the path leaves the folder that is reviewed\n")
    assert "secret" not in message


def test_a_design_that_comes_as_text_is_based_on_no_file() -> None:
    design, problems = read_design("based_on: base.yaml\n", "design.yaml", KINDS)
    assert design is None
    assert render(problems[0]) == (
        "design.yaml:1:11: a design that comes as text cannot be based on a file\n"
        "    found base.yaml\n"
        "    expected a design in a file\n"
        "    mend: save it, and review the file\n"
        "    based_on: base.yaml\n"
        "              ^^^^^^^^^"
    )
