"""A list of points in a file: what is read, and the whole message of all that is refused."""

import pytest

from reviewer.notation.problem import render
from reviewer.notation.units import UNITS
from reviewer.parts.kind import Kind
from reviewer.parts.row import Measure, Points, Row
from reviewer.reading.context import Context
from reviewer.reading.events import read_yaml
from reviewer.reading.fields import read_fields
from reviewer.reading.tree import Table

CAM = Kind(
    name="cam",
    says="a disc that lifts by its edge",
    carries_load=False,
    rows=(
        Row(
            "profile",
            "",
            "points of its edge",
            Points(
                (
                    Row("turn", "rad", "how far it has turned", Measure(at_least=0.0)),
                    Row("height", "m", "how high it lifts", Measure()),
                ),
                at_most=4,
            ),
        ),
    ),
)


def read(text: str, lengths: str | None = None, kind: Kind = CAM):
    document = read_yaml(text, "cam.yaml")
    assert isinstance(document.root, Table)
    context = Context("cam.yaml", document.lines)
    context.lengths = UNITS[lengths] if lengths else None
    given = read_fields(document.root, kind, context)
    return given, "\n".join(render(each) for each in context.problems)


def test_points_are_read_in_si():
    """1 in = 25.4 mm (NIST SP 811, B.8); 180 deg = pi."""
    given, said = read("profile: [[0 deg, 0 mm], [90 deg, 1 in], [180 deg, -3 mm]]")
    assert said == ""
    assert given["profile"].value == (
        (0.0, 0.0),
        pytest.approx((1.5707963267948966, 0.0254)),
        pytest.approx((3.141592653589793, -0.003)),
    )
    assert given["profile"].text == "3 points"


CHORDS = Row("chord", "m", "from mark to mark", Measure(above=0.0))
RING = Kind(
    "ring",
    "a ring",
    (Row("chords", "", "chords all round", Points((CHORDS,), at_most=3, grows=False)),),
)


def test_points_of_one_measure_stand_without_brackets_of_their_own():
    given, said = read("chords: [12 mm, 1 in, 12]", "mm", RING)
    assert said == ""
    assert given["chords"].value == ((0.012,), (pytest.approx(0.0254),), (0.012,))


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("chords: 12 mm", "expected a list of measures: [chord, chord, ...]"),
        ("chords: [12 mm, -3 mm]", "chord is out of its bounds"),
        ("chords: [12 mm, {a: 3}]", "a point of chords lists one measure"),
        ("chords: [12 mm, 1 mm, 2 mm, 3 mm]", "chords has the wrong number of points"),
    ],
)
def test_refusal_of_points_of_one_measure(text, found):
    _, said = read(text, "mm", RING)
    assert found in said


def test_bare_lengths_are_in_the_declared_unit():
    given, said = read("profile: [[0 deg, 0], [90 deg, 12]]", "mm")
    assert said == ""
    assert given["profile"].value[1][1] == pytest.approx(0.012)


REFUSED = [
    (
        "profile: 3 mm",
        "cam.yaml:1:10: profile is a list of points\n"
        "    found 3 mm\n"
        "    expected a list of points, each [turn, height]\n"
        "    profile: 3 mm\n"
        "             ^^^^",
    ),
    (
        "profile:",
        "cam.yaml:1:1: profile has no value\n"
        "    found nothing\n"
        "    expected a list of points, each [turn, height]\n"
        "    profile:\n"
        "    ^^^^^^^",
    ),
    (
        "profile: {turn: 3 deg}",
        "cam.yaml:1:1: profile is a list of points\n"
        "    found a table\n"
        "    expected a list of points, each [turn, height]\n"
        "    profile: {turn: 3 deg}\n"
        "    ^^^^^^^",
    ),
    (
        "profile: [[0 deg, 0 mm]]",
        "cam.yaml:1:10: profile has the wrong number of points\n"
        "    found 1\n"
        "    expected from 2 to 4 points\n"
        "    profile: [[0 deg, 0 mm]]\n"
        "             ^",
    ),
    (
        "profile: [[0 deg, 0 mm], 4 mm]",
        "cam.yaml:1:26: a point of profile lists 2 measures\n"
        "    found 4 mm\n"
        "    expected [turn, height]\n"
        "    profile: [[0 deg, 0 mm], 4 mm]\n"
        "                             ^^^^",
    ),
    (
        "profile: [[0 deg, 0 mm], [3 deg]]",
        "cam.yaml:1:26: a point of profile lists 2 measures\n"
        "    found one measure\n"
        "    expected [turn, height]\n"
        "    profile: [[0 deg, 0 mm], [3 deg]]\n"
        "                             ^",
    ),
    (
        "profile: [[0 deg, 0 mm], [3 deg, [4 mm]]]",
        "cam.yaml:1:34: height is one measure\n"
        "    found a list\n"
        "    expected a length, such as 18 mm\n"
        "    profile: [[0 deg, 0 mm], [3 deg, [4 mm]]]\n"
        "                                     ^",
    ),
    (
        "profile: [[0 deg, 0 mm], [3 deg, 4 kg]]",
        "cam.yaml:1:34: a mass stands where a length is due\n"
        "    found 4 kg\n"
        "    expected a length, such as 18 mm\n"
        "    mend: write a length with its unit\n"
        "    profile: [[0 deg, 0 mm], [3 deg, 4 kg]]\n"
        "                                     ^^^^",
    ),
    (
        "profile: [[-1 deg, 0 mm], [3 deg, 4 mm]]",
        "cam.yaml:1:12: turn is out of its bounds\n"
        "    found -1 deg\n"
        "    expected at least 0 deg\n"
        "    profile: [[-1 deg, 0 mm], [3 deg, 4 mm]]\n"
        "               ^^^^^^",
    ),
    (
        "profile: [[0 deg, 0 mm], [9 deg, 4 mm], [9 deg, 6 mm]]",
        "cam.yaml:1:42: the turn does not grow from point to point\n"
        "    found 9 deg\n"
        "    expected a turn beyond that of the point before\n"
        "    profile: [[0 deg, 0 mm], [9 deg, 4 mm], [9 deg, 6 mm]]\n"
        "                                             ^^^^^",
    ),
]


@pytest.mark.parametrize(("text", "message"), REFUSED, ids=[each for each, _ in REFUSED])
def test_refusal(text: str, message: str):
    given, said = read(text)
    assert said == message
    assert not given
