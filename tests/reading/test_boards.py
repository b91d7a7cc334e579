"""Boards from which parts are cut: read, and refused with a mend."""

import pytest

from reviewer.notation.problem import render
from reviewer.parts.registry import KINDS
from reviewer.reading.read_design import read_design

DESIGN = """\
design: Stand
lengths: mm
boards:
  a: {material: birch plywood, thickness: 18.3 ± 0.3}
parts:
  frame: {kind: base, feet: {count: 4, circle: 800}, height: 600, mass: 30 kg}
  lid: {kind: top, carried_by: frame, board: a, diameter: 700}
"""


def told(text: str) -> str:
    design, problems = read_design(text, "stand.yaml", KINDS)
    assert (design is None) == bool(problems)
    return "\n".join(render(each) for each in problems)


def test_a_board_gives_material_and_thickness() -> None:
    design, problems = read_design(DESIGN, "stand.yaml", KINDS)
    assert problems == ()
    assert design is not None
    assert design.has_bands
    assert design.source("lid", "thickness") == ("a", "thickness")
    assert design.source("lid", "diameter") == ("lid", "diameter")


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        (
            "board: a",
            "board: ab",
            "stand.yaml:7:46: no part has this name\n"
            "    found ab\n"
            "    expected the name of a part\n"
            "    mend: write a\n"
            "      lid: {kind: top, carried_by: frame, board: ab, diameter: 700}\n"
            "                                                 ^^",
        ),
        (
            "board: a",
            "board: frame",
            "stand.yaml:7:46: this is a part and no board\n"
            "    found frame\n"
            "    expected one of the boards: a\n"
            "      lid: {kind: top, carried_by: frame, board: frame, diameter: 700}\n"
            "                                                 ^^^^^",
        ),
        (
            "board: a",
            "board: a, thickness: 18",
            "stand.yaml:7:60: lid has its thickness from the board a already\n"
            "    found 18\n"
            "    expected one of the two\n"
            "    mend: take thickness out, or board\n"
            "      lid: {kind: top, carried_by: frame, board: a, thickness: 18, diameter: 700}\n"
            "                                                               ^^",
        ),
        (
            "  a: {",
            "  lid: {",
            "stand.yaml:7:3: a part cannot have the name of a board\n"
            "    found lid\n"
            "    expected a name of its own\n"
            "    mend: the board is on line 4\n"
            "      lid: {kind: top, carried_by: frame, board: lid, diameter: 700}\n"
            "      ^^^",
        ),
        (
            "carried_by: frame",
            "carried_by: a",
            "stand.yaml:7:32: a is a board, and carries nothing\n"
            "    found a\n"
            "    expected a part that carries load: frame or lid\n"
            "      lid: {kind: top, carried_by: a, board: a, diameter: 700}\n"
            "                                   ^",
        ),
    ],
)
def test_refusal(old: str, new: str, message: str) -> None:
    text = DESIGN.replace(old, new)
    assert text != DESIGN
    if "lid: {mat" in text:
        text = text.replace("board: a", "board: lid")
    assert told(text) == message
