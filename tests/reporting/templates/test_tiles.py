"""PDF read back: every sheet's check bar, and the template that the sheets make when laid together.

Sheets are placed by their register marks alone, as a maker lays them.
"""

import math
import re

import pytest

from reviewer.reporting.templates.as_pdf import as_pdf
from reviewer.reporting.templates.tiles import MARGIN, PAPERS, tiling_of

COUNT, CIRCLE, HOLE = 16, 580.0, 13.5
NEAR = 0.01  # mm
SIZES = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}  # ISO 216; ANSI Y14.1


@pytest.fixture(scope="module", params=list(PAPERS))
def sheets(request, templates, pages_of):
    paper = PAPERS[request.param]
    return request.param, pages_of(as_pdf(templates["lid"], paper))


def centre_of(stroke):
    """Middle and radius of a closed curve, by its end points."""
    points = stroke.points[:-1] if math.dist(stroke.points[0], stroke.points[-1]) < 1e-6 else []
    if not points or not stroke.curved:
        return None
    x = sum(x for x, _ in points) / len(points)
    y = sum(y for _, y in points) / len(points)
    radii = [math.dist((x, y), point) for point in points]
    return (x, y), sum(radii) / len(radii)


def circles(sheet, radius):
    found = [centre_of(each) for each in sheet.strokes]
    return [each[0] for each in found if each and abs(each[1] - radius) < NEAR]


def bar_of(sheet):
    """The longest level line at the height of the check bar, 3 mm over the margin."""
    level = [each.points for each in sheet.strokes
             if not each.curved and all(abs(y - 13.0) < NEAR for _, y in each.points)]  # fmt: skip
    return max(math.dist(points[0], points[-1]) for points in level)


def marks_of(sheet):
    """Register marks by their names: the text that stands beside each small circle."""
    places = circles(sheet, 2.0)
    named = {}
    for text, at in sheet.texts:
        if re.fullmatch(r"[a-z]+\d+", text):
            named[text] = min(places, key=lambda place: math.dist(place, at))
    return named


def full_size(sheets):
    """The pages behind the first, which shows how they lie."""
    return sheets[1][1:]


def test_sheets_are_of_the_size_asked_for(sheets):
    name, pages = sheets
    for each in pages:
        size = sorted(float(side) * 25.4 / 72 for side in each.page.mediabox[2:])
        assert size == pytest.approx(sorted(SIZES[name]), abs=NEAR)


def test_every_sheet_has_a_check_bar_of_100_mm(sheets):
    for each in sheets[1]:
        assert bar_of(each) == pytest.approx(100.0, abs=NEAR)


def test_every_sheet_has_a_name_and_four_register_marks(sheets):
    names = set()
    for each in full_size(sheets):
        words = [text for text, _ in each.texts]
        (name,) = [
            text for text in words if re.fullmatch(r"row \d+, column \d+ of \d+ x \d+", text)
        ]
        names.add(name)
        assert "By hand, revision 2: lid" in words
        assert len(marks_of(each)) == 4
    assert len(names) == len(full_size(sheets)) >= 9


def test_nothing_is_drawn_in_the_margins(sheets):
    """Clipped to the sheet's part of the template, and the foot stays within the margins too."""
    margin = MARGIN * 1e3
    for each in full_size(sheets):
        wide, high = (float(side) * 25.4 / 72 for side in each.page.mediabox[2:])
        for x, y in marks_of(each).values():
            assert margin < x < wide - margin
            assert margin < y < high - margin
    data = full_size(sheets)[0].page.get_contents().get_data().decode("latin-1")
    clip = re.search(r"([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+) re W\* n", data)
    left, below, wide_part, high_part = (float(each) * 25.4 / 72 for each in clip.groups())
    assert left == pytest.approx(margin, abs=NEAR)
    assert left + wide_part == pytest.approx(wide - margin, abs=NEAR)
    assert below > margin
    assert below + high_part == pytest.approx(high - margin, abs=NEAR)


def laid(pages):
    """How far each sheet is moved so that marks of one name coincide, beginning with the first."""
    shifts, waiting = {0: (0.0, 0.0)}, list(range(1, len(pages)))
    marks = [marks_of(each) for each in pages]
    while waiting:
        for number in list(waiting):
            for other, (x, y) in list(shifts.items()):
                shared = marks[number].keys() & marks[other].keys()
                if len(shared) < 2:
                    continue
                moves = [
                    (marks[other][name][0] + x - marks[number][name][0],
                     marks[other][name][1] + y - marks[number][name][1])
                    for name in sorted(shared)
                ]  # fmt: skip
                assert moves[0] == pytest.approx(moves[1], abs=NEAR), "marks do not coincide"
                shifts[number] = moves[0]
                waiting.remove(number)
                break
    return shifts


def together(pages, radius):
    """Middles of all circles of a radius on the sheets laid together; those in overlaps once."""
    found = []
    for number, (x, y) in laid(pages).items():
        for p, q in circles(pages[number], radius):
            place = (p + x, q + y)
            near = [each for each in found if math.dist(each, place) < 1.0]
            assert all(math.dist(each, place) < NEAR for each in near)
            if not near:
                found.append(place)
    return found


def test_sheets_laid_by_their_marks_make_the_template_again(sheets):
    pages = full_size(sheets)
    (middle,) = together(pages, 320.0)
    assert together(pages, CIRCLE / 2) == [pytest.approx(middle, abs=NEAR)]
    holes = together(pages, HOLE / 2)
    assert len(holes) == COUNT
    x, y = middle
    ordered = sorted(holes, key=lambda each: math.atan2(each[1] - y, each[0] - x))
    chords = [math.dist(a, b) for a, b in zip(ordered, ordered[1:] + ordered[:1], strict=True)]
    assert chords == pytest.approx([CIRCLE * math.sin(math.pi / COUNT)] * COUNT, abs=NEAR)
    across = [math.dist(ordered[k], ordered[k + COUNT // 2]) for k in range(COUNT // 2)]
    assert across == pytest.approx([CIRCLE] * (COUNT // 2), abs=NEAR)


def test_curves_stay_on_their_circle(templates):
    """The middle of a cubic curve of 22.5 degrees against the circle."""
    import io

    import pypdf
    from pypdf.generic import ContentStream

    reader = pypdf.PdfReader(io.BytesIO(as_pdf(templates["small"], PAPERS["A4"])))
    at, worst, seen = None, 0.0, 0
    middle = None
    for operands, operator in ContentStream(reader.pages[0].get_contents(), reader).operations:
        numbers = [float(each) for each in operands] if operator in (b"m", b"c") else []
        if operator == b"m":
            at = numbers
            middle = (at[0] - 45 * 72 / 25.4, at[1])  # of the circle of 90 mm, begun on its right
        elif operator == b"c":
            x = (at[0] + 3 * numbers[0] + 3 * numbers[2] + numbers[4]) / 8
            y = (at[1] + 3 * numbers[1] + 3 * numbers[3] + numbers[5]) / 8
            radius = math.dist((x, y), middle) * 25.4 / 72
            ends = [math.dist(each, middle) * 25.4 / 72 for each in (at, numbers[4:])]
            if ends == pytest.approx([45.0, 45.0], abs=1e-3):
                worst, seen = max(worst, abs(radius - 45)), seen + 1
            at = numbers[4:]
    assert seen >= 16
    assert worst < 1e-4


def test_one_sheet_is_enough_for_a_small_one(templates, pages_of):
    pages = pages_of(as_pdf(templates["small"], PAPERS["A4"]))
    assert len(pages) == 1
    assert marks_of(pages[0]) == {}
    assert len(circles(pages[0], 3.0)) == 5


def test_the_first_page_shows_how_the_sheets_lie(sheets):
    words = [text for text, _ in sheets[1][0].texts]
    assert "Print at 100 %: no fitting to the page, no scaling." in words
    assert "1 / 1" in words


def test_sheets_with_nothing_on_them_are_left_out(templates, pages_of):
    """The middle of a ring is empty: a large circle without words or lines through it."""
    from dataclasses import replace

    from reviewer.reporting.templates.template import Layer

    hollow = replace(
        templates["lid"],
        words=(),
        strokes=tuple(each for each in templates["lid"].strokes if each.layer is Layer.OUTLINE),
    )
    tiling = tiling_of(hollow, PAPERS["A4"])
    blank = [each.name for each in tiling.tiles if each.blank]
    assert blank == ["row 2, column 2", "row 2, column 3"]
    pages = pages_of(as_pdf(hollow, PAPERS["A4"]))
    assert len(pages) == 1 + len(tiling.tiles) - len(blank)


def test_the_same_bytes_every_time(templates):
    for template in templates.values():
        assert as_pdf(template, PAPERS["A4"]) == as_pdf(template, PAPERS["A4"])
