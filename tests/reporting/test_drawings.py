"""Drawings, parsed and measured back: what is where, to scale, and that nothing is cut off."""

import re
from itertools import pairwise
from math import asin, atan2, cos, degrees, hypot, pi, radians, sin
from pathlib import Path
from xml.etree import ElementTree

import pytest

from reviewer import review
from reviewer.judging.reviewed import Review
from reviewer.reporting.drawings.elevation import elevation_drawing
from reviewer.reporting.drawings.marks import Mark, marks_of
from reviewer.reporting.drawings.plan import plan_drawing
from reviewer.reporting.drawings.scene import NoSuchConfiguration
from tests.reporting.picture import Picture

SPECIMENS = Path(__file__).parents[2] / "specimens"
VIEWS = {"plan": plan_drawing, "elevation": elevation_drawing}
DRAWN = [
    ("potting_bench/revision_a.yaml", "closed"),
    ("potting_bench/revision_a.yaml", "open"),
    ("potting_bench/revision_c.yaml", "closed"),
    ("potting_bench/revision_c.yaml", "open"),
    ("stage_turntable.yaml", None),
    ("lift_shelf.yaml", None),
    ("book_stand.yaml", None),
    ("inch_stand.yaml", None),
    ("mechanisms/puppet_stage.yaml", None),
]

DISC = """design: a disc <script>alert("x")</script> & sons
lengths: mm
parts:
  base: {kind: base, feet: {count: 4, circle: 800}, height: 500, mass: 40 kg}
  round: {kind: top, carried_by: base, material: birch plywood, thickness: 18, diameter: 600}
  board: {kind: top, carried_by: round, at: {x: 100, y: 50}, material: birch plywood,
    thickness: 20, length: 200, width: 100}
loads:
  pot: {mass: 2 kg, on: board}
"""


def drawn(path: str, view: str, configuration: str | None = None) -> Picture:
    found = review(SPECIMENS / path)
    return Picture(VIEWS[view](found, configuration, marks_of(found)))


@pytest.mark.parametrize(("path", "configuration"), DRAWN)
@pytest.mark.parametrize("view", VIEWS)
def test_a_drawing_is_whole_and_says_what_it_shows(
    path: str, configuration: str | None, view: str
) -> None:
    picture = drawn(path, view, configuration)
    picture.is_whole()
    assert picture.root.attrib["aria-labelledby"].startswith(f"{view}-title")


@pytest.mark.parametrize("view", VIEWS)
def test_a_drawing_is_the_same_each_time(view: str) -> None:
    path = "potting_bench/revision_c.yaml"
    assert drawn(path, view, "open").text == drawn(path, view, "open").text


def test_the_plan_is_to_scale_by_its_own_bar() -> None:
    picture = Picture(plan_drawing(review(DISC)))
    scale = picture.scale()
    centre = next(
        each for each in picture.circles() if each[2] == pytest.approx(300 * scale, abs=0.02)
    )
    board = next(
        each
        for each in picture.every("polygon")
        if "stroke-width='1.5'" in ElementTree.tostring(each, "unicode").replace('"', "'")
    )
    corners = [tuple(map(float, pair.split(","))) for pair in board.attrib["points"].split()]
    wide = [(x - centre[0]) / scale for x, _ in corners]
    high = [(centre[1] - y) / scale for _, y in corners]
    assert (min(wide), max(wide)) == pytest.approx((0.0, 200.0), abs=0.2)
    assert (min(high), max(high)) == pytest.approx((0.0, 100.0), abs=0.2)


def test_what_lies_under_something_is_dashed() -> None:
    """The disc under the board is seen whole from above, since the board lies within its edge; of
    a board that sticks out over a wider one the covered edge is dashed."""
    text = DISC.replace("thickness: 20, length: 200", "thickness: 20, length: 900")
    picture = Picture(plan_drawing(review(text)))
    scale = picture.scale()
    # the board is 100 wide from y = 0 to 100 and reaches over the disc's edge on both sides: of the
    # edge, two arcs from 0 to asin(100 / 300) are covered
    covered = [_length(run) for run in picture.runs(stroke_dasharray="5 3")]
    assert sum(covered) / scale == pytest.approx(2 * 300 * asin(100 / 300), rel=1e-3)
    seen = [_length(run) for run in picture.runs(stroke_width="1.5")]
    assert sum(seen) / scale == pytest.approx(300 * (2 * pi - 2 * asin(100 / 300)), rel=1e-3)


def _length(run: list[tuple[float, float]]) -> float:
    return sum(hypot(a[0] - b[0], a[1] - b[1]) for a, b in pairwise(run))


def test_the_loads_of_rollers_are_arrows_at_their_azimuths_as_long_as_they_are_large() -> None:
    found = review(SPECIMENS / "stage_turntable.yaml")
    picture = Picture(plan_drawing(found))
    values, cases = found.derived.values, found.derived.cases.names
    peak, case = max(
        (values.at(values.plan.slots["disc", "carry.peak_load"], case), case)
        for case in range(len(cases))
    )
    middle = max(picture.circles(), key=lambda each: each[2])
    heavy = [each for each in picture.every("line") if each.attrib["stroke-width"] == "2.2"]
    vectors = [
        tuple(
            float(each.attrib[a]) - float(each.attrib[b]) for a, b in (("x2", "x1"), ("y1", "y2"))
        )
        for each in heavy
    ]
    for each, (x, y) in zip(heavy, vectors, strict=True):  # each outward from its roller
        out = (float(each.attrib["x1"]) - middle[0], middle[1] - float(each.attrib["y1"]))
        assert x * out[0] + y * out[1] == pytest.approx(hypot(x, y) * hypot(*out), rel=1e-3)
    longest = max(vectors, key=lambda each: hypot(*each))
    assert hypot(*longest) == pytest.approx(44.0, abs=0.02)
    turn = values.at(values.plan.slots["disc", "carry.peak_direction"], case)
    pitch = 360 / 24
    azimuth = degrees(atan2(longest[1], longest[0])) % 360
    assert azimuth % pitch == pytest.approx(0.0, abs=0.1) or azimuth % pitch == pytest.approx(
        pitch, abs=0.1
    )
    assert abs((azimuth - degrees(turn) + 180) % 360 - 180) <= pitch / 2 + 0.1
    # vertical equilibrium: carrying rollers bear the whole axial load, to the length of arrows
    # that are left out because they are under a fiftieth of the longest
    axial = values.at(values.plan.slots["disc", "carry.axial_load"], case)
    total = sum(hypot(*each) for each in vectors) / 44.0 * peak
    assert total == pytest.approx(axial, abs=24 * 0.02 * peak)


def test_the_pinch_point_is_circled_and_numbered_like_its_finding() -> None:
    """Between two trays of the bench: by hand, on the inner edge half way between two of five."""
    found = review(SPECIMENS / "potting_bench/revision_a.yaml")
    finding = next(each for each in found.findings if each.part == "between_trays")
    picture = Picture(plan_drawing(found, "closed", [Mark(7, finding)]))
    scale = picture.scale()
    ring = next(each for each in picture.circles() if each[2] == 13.0)
    middle = next(
        each for each in picture.circles() if each[2] == pytest.approx(320 * scale, abs=0.02)
    )
    x, y = (ring[0] - middle[0]) / scale, (middle[1] - ring[1]) / scale
    gap = 2 * pi / 5 - 545 / (290 + 155)
    expected = 290 * cos(gap / 2)
    assert (x, y) == pytest.approx(
        (expected * cos(radians(36)), expected * sin(radians(36))), abs=0.3
    )
    assert "7" in picture.words()


def test_a_field_that_a_finding_wants_changed_has_a_dimension_line() -> None:
    found = review(SPECIMENS / "potting_bench/revision_a.yaml")
    finding = next(each for each in found.findings if each.name == "base.stands")
    picture = Picture(plan_drawing(found, "open", [Mark(3, finding)]))
    assert "base.feet.circle 640 mm (3)" in picture.words()
    heads = [
        each.attrib for each in picture.every("line") if each.attrib["y1"] == each.attrib["y2"]
    ]
    reach = {
        round(abs(float(each["x1"]) - float(each["x2"])) / picture.scale(), 0) for each in heads
    }
    assert 320 in reach  # from the middle of the dimension line to each of its ends


def test_heights_are_in_the_elevation_and_diameters_in_the_plan() -> None:
    found = review(SPECIMENS / "potting_bench/revision_a.yaml")
    finding = next(each for each in found.findings if each.name == "apron.sags")
    words = [
        [
            word
            for word in Picture(draw(found, "closed", [Mark(1, finding)])).words()
            if "(1)" in word
        ]
        for draw in (plan_drawing, elevation_drawing)
    ]
    assert words == [["apron.thickness 6 mm (1)"], ["apron.height 40 mm (1)"]]


def test_texts_of_a_file_stay_texts() -> None:
    found = review(DISC)
    text = plan_drawing(found)
    assert "<script" not in text
    assert 'a disc <script>alert("x")</script> & sons' in "".join(
        each.text or "" for each in Picture(text).every("title")
    )


def test_ids_begin_with_the_name_of_the_picture() -> None:
    text = plan_drawing(review(DISC), name="Plan, open!")
    ids = re.findall(r"id='([^']*)'", text)
    assert ids == ["plan-open-title", "plan-open-says"]


def test_a_part_that_is_not_drawn_says_why() -> None:
    words = " ".join(drawn("potting_bench/revision_a.yaml", "plan").words())
    assert "Not drawn: lift: azimuth is unknown: the way that it lies" in words


def test_error_no_such_configuration() -> None:
    found: Review = review(SPECIMENS / "potting_bench/revision_c.yaml")
    with pytest.raises(NoSuchConfiguration) as error:
        plan_drawing(found, "opened")
    assert (error.value.name, error.value.known) == ("opened", ("closed", "open"))
