"""SVG and DXF read back: the check bar, chords, holes and openings measured in the file."""

import io
import math
import re
import shutil
import subprocess
import xml.etree.ElementTree as ET

import ezdxf
import pypdf
import pytest

from reviewer.geometry.rim import Arc, Line
from reviewer.reporting.templates.as_dxf import as_dxf
from reviewer.reporting.templates.as_pdf import as_pdf
from reviewer.reporting.templates.as_svg import Sheet, as_svg
from reviewer.reporting.templates.making import templates_of
from reviewer.reporting.templates.template import Layer, Template, on
from reviewer.reporting.templates.tiles import PAPERS
from reviewer.reviewing import review_source

COUNT, CIRCLE, HOLE = 16, 580.0, 13.5
CHORD = CIRCLE * math.sin(math.pi / COUNT)
NEAR = 0.01  # mm
SVG = "{http://www.w3.org/2000/svg}"


def groups(text):
    root = ET.fromstring(text)
    return root, {group.get("id"): group for group in root.iter(f"{SVG}g")}


def circles(group, radius):
    return [
        (float(each.get("cx")), float(each.get("cy")))
        for each in group.iter(f"{SVG}circle")
        if abs(float(each.get("r")) - radius) < NEAR
    ]


def chords(places, middle):
    """Distances from each place to the next one round."""
    x, y = middle
    ordered = sorted(places, key=lambda each: math.atan2(each[1] - y, each[0] - x))
    return [math.dist(a, b) for a, b in zip(ordered, ordered[1:] + ordered[:1], strict=True)]


def test_a_millimetre_of_svg_is_one_on_paper(templates):
    """CSS and SVG: with width in mm and a viewBox as wide, one unit is 1 mm."""
    root, _ = groups(as_svg(templates["lid"]))
    _, _, wide, high = (float(each) for each in root.get("viewBox").split())
    assert root.get("width") == f"{wide:g}mm"
    assert root.get("height") == f"{high:g}mm"
    assert 640 < wide < 700


def test_check_bar_and_chords_of_svg(templates):
    _, found = groups(as_svg(templates["lid"]))
    bars = [re.findall(r"-?[\d.]+", each.get("d")) for each in found["check"].iter(f"{SVG}path")]
    lengths = [math.dist((float(a), float(b)), (float(c), float(d))) for a, b, c, d in bars]
    assert max(lengths) == pytest.approx(100.0, abs=NEAR)
    holes = circles(found["holes"], HOLE / 2)
    assert len(holes) == COUNT
    (middle,) = circles(found["outline"], 320.0)
    assert chords(holes, middle) == pytest.approx([CHORD] * COUNT, abs=NEAR)
    assert len(circles(found["circles"], CIRCLE / 2)) == 1
    assert {each.text for each in found["labels"].iter(f"{SVG}text")} >= {"1", "16"}


def test_arcs_of_openings_in_svg_join_their_lines(templates):
    """Each of three openings is four lines and four arcs of 8 mm, end to end."""
    _, found = groups(as_svg(templates["lid"]))
    paths = [each.get("d") for each in found["openings"].iter(f"{SVG}path")]
    assert sum(" A8,8 " in each for each in paths) == 12
    ends = {}
    for path in paths:
        numbers = [float(each) for each in re.findall(r"-?[\d.]+", path)]
        for end in ((numbers[0], numbers[1]), (numbers[-2], numbers[-1])):
            key = (round(end[0], 2), round(end[1], 2))
            ends[key] = ends.get(key, 0) + 1
    assert set(ends.values()) == {2}


def middle_of(path):
    """The middle of an arc by its ends, radius and flags: SVG 1.1, F.6.5.2 and F.6.5.3."""
    numbers = [float(each) for each in re.findall(r"-?[\d.]+", path)]
    x1, y1, radius, _, _, large, sweep, x2, y2 = numbers
    half_x, half_y = (x1 - x2) / 2, (y1 - y2) / 2
    square = half_x**2 + half_y**2
    factor = math.sqrt(max(radius**2 / square - 1, 0.0)) * (1 if large != sweep else -1)
    return (factor * half_y + (x1 + x2) / 2, -factor * half_x + (y1 + y2) / 2)


@pytest.mark.parametrize("edge", [Arc((0.1, 0.2), 0.3, 0.3, 0.3 + sweep) for sweep in
                                  (0.2, 1.5, 3.0, 3.3, 5.0, 6.2)])  # fmt: skip
def test_arcs_of_svg_bulge_the_right_way(edge):
    """Short and long arcs, whose flags would else draw the other part of the circle."""
    frame = (Line((-0.3, -0.2), (0.5, 0.6)),)
    template = Template("arc", "an arc", on(Layer.OUTLINE, (edge, *frame)), ())
    _, found = groups(as_svg(template))
    paths = [each.get("d") for each in found["outline"].iter(f"{SVG}path")]
    assert middle_of(paths[0]) == pytest.approx(Sheet(template).place((0.1, 0.2)), abs=NEAR)


def read_dxf(template):
    return ezdxf.read(io.StringIO(as_dxf(template)))


def test_dxf_is_sound_and_in_millimetres(templates):
    drawing = read_dxf(templates["lid"])
    assert drawing.units == ezdxf.units.MM
    assert not drawing.audit().has_errors
    layers = {each.dxf.name for each in drawing.layers}
    assert layers >= {
        "OUTLINE", "OPENINGS", "HOLES", "CIRCLES", "LINES", "CENTRE", "LABELS", "CHECK"
    }  # fmt: skip


def test_check_bar_and_chords_of_dxf(templates):
    space = read_dxf(templates["lid"]).modelspace()
    bars = space.query('LINE[layer=="CHECK"]')
    lengths = [each.dxf.start.distance(each.dxf.end) for each in bars]
    assert max(lengths) == pytest.approx(100.0, abs=NEAR)
    holes = [each for each in space.query('CIRCLE[layer=="HOLES"]')
             if abs(each.dxf.radius - HOLE / 2) < NEAR]  # fmt: skip
    places = [(each.dxf.center.x, each.dxf.center.y) for each in holes]
    assert chords(places, (0.0, 0.0)) == pytest.approx([CHORD] * COUNT, abs=NEAR)
    (outline,) = space.query('CIRCLE[layer=="OUTLINE"]')
    assert outline.dxf.radius == pytest.approx(320.0, abs=NEAR)
    arcs = space.query('ARC[layer=="OPENINGS"]')
    assert [each.dxf.radius for each in arcs] == pytest.approx([8.0] * 12, abs=NEAR)
    assert len(space.query('LINE[layer=="OPENINGS"]')) == 12
    words = {each.dxf.text for each in space.query("TEXT")}
    assert "By hand, revision 2: lid" in words
    assert "18 mm, birch plywood" in words


HOSTILE = '"a\\n  0\\nENDSEC </svg><script> \\u202e\u6728 (x)) Tj ET %"'


def test_a_hostile_name_breaks_no_file():
    """Line ends, tags, brackets and letters that no font of a PDF has."""
    text = f"design: {HOSTILE}\nparts:\n  m: {{kind: divided_circle, count: 5, circle: 90 mm}}\n"
    (template,) = templates_of(review_source(text, "hand.yaml")).templates
    root = ET.fromstring(as_svg(template))
    assert "script" not in {each.tag.rpartition("}")[2] for each in root.iter()}
    drawing = read_dxf(template)
    assert not drawing.audit().has_errors
    assert len(drawing.modelspace().query("TEXT")) == len(template.words) + 1
    page = pypdf.PdfReader(io.BytesIO(as_pdf(template, PAPERS["A4"]))).pages[0]
    assert "(x)) Tj ET %" in page.extract_text()


@pytest.mark.skipif(shutil.which("chromium") is None, reason="no browser is installed")
def test_a_browser_lays_it_out_at_full_size(templates, tmp_path):
    """96 CSS pixels are an inch: the bar and a chord as the browser measures them."""
    script = """<script>
    const middle = e => { const b = e.getBoundingClientRect();
                          return [b.x + b.width / 2, b.y + b.height / 2]; };
    const bar = document.querySelector('#check path').getBoundingClientRect().width;
    const holes = [...document.querySelectorAll('#holes circle')].map(middle);
    document.body.innerHTML = JSON.stringify([bar, ...holes.flat()]);
    </script>"""
    page = tmp_path / "page.html"
    page.write_text(f"<body>{as_svg(templates['lid'])}{script}", "utf-8")
    ran = subprocess.run(
        ["chromium", "--headless", "--no-sandbox", "--disable-gpu",
         "--disable-background-networking", f"--user-data-dir={tmp_path / 'user'}", "--dump-dom",
         page.as_uri()],
        capture_output=True, text=True, timeout=120, check=True,
    )  # fmt: skip
    numbers = [float(each) * 25.4 / 96 for each in re.findall(r"\d+\.?\d*", ran.stdout)]
    assert numbers[0] == pytest.approx(100.0, abs=NEAR)
    places = list(zip(numbers[1::2], numbers[2::2], strict=True))
    middle = (sum(x for x, _ in places) / COUNT, sum(y for _, y in places) / COUNT)
    assert chords(places, middle) == pytest.approx([CHORD] * COUNT, abs=NEAR)
