"""The page in a real browser: what it shows, asks for and runs, how it prints, who can read it.

These tests need Chromium, Node.js, and the packages of package.json in a folder that NODE_PACKAGES
names. Where that is not set, they are skipped; where it is, as in CI, they fail if any is missing.
Set REVIEWER_PICTURES to a folder to keep the screenshots and the printed pages; look at them when
you change the page.
"""

import json
import os
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from reviewer.judging.reviewed import Review
from reviewer.reporting.page.page import PageReport
from reviewer.reviewing import review, review_source
from reviewer.studying.remedy import with_remedies

HERE = Path(__file__).parent
SPECIMENS = HERE.parent.parent / "specimens"
SCRIPT = "<script>window.reached=1</script>"
IMAGE = '"><img src=x onerror=window.reached=1>'
LOOKED_AT = "several"  # in every view, and printed
PAGES = {LOOKED_AT: 4, "bench": 2, "hostile": 1, "unread": 1}  # each with its number of views
Seen = dict[str, Any]


def lacking() -> str:
    """What is missing to look at a page, or nothing."""
    tools = os.environ.get("NODE_PACKAGES", "")
    if not tools:
        return "NODE_PACKAGES names no folder with the packages of tests/browser"
    if not shutil.which("node"):
        return "there is no Node.js"
    if not shutil.which("chromium"):
        return "there is no Chromium"
    if not (Path(tools) / "node_modules" / "axe-core").is_dir():
        return "axe-core is not in the folder that NODE_PACKAGES names"
    return ""


def page_of(*reviews: Review) -> str:
    report = PageReport("1.2.3")
    return "".join(report.put(report.piece(each)) for each in reviews) + report.end()


def reviewed(text: str, path: str) -> Review:
    found = review_source(text, path)
    return with_remedies(found, found.rules)


def hostile(folder: Path) -> Review:
    """A script or an image in every text that a design, its shop and a pack of it can give."""
    script, image = (json.dumps(each) for each in (SCRIPT, IMAGE))
    (folder / "rules").mkdir()
    (folder / "rules" / "house.yaml").write_text(f"""\
- rule: gap.house
  question: {script}
  require: least >= 500 mm
  level: must
  stage: cutting
  hazard: {image}
  says: {script}
  because: {image}
  source: {script}
  proof: {{holds: {{least: 501 mm}}, fails: {{least: 1 mm}}}}
""")
    (folder / "shop.yaml").write_text(f"""\
shop: {script}
packs: [rules]
stock: {{materials: {{our ply: {{like: birch plywood, density: 600 kg/m^3, source: {image}}}}}}}
limits: {{rim_play: {{value: 2 mm, by: {script}, why: {image}}}}}
rules:
  gap.hands: {{silence: true, by: {image}, why: {script}}}
""")
    path = folder / "hostile.yaml"
    path.write_text(f"""\
design: {script}
revision: {image}
note: {script}
parts:
  foot:
    kind: base
    note: {image}
    fixed: {script}
    for_now: {{until: {script}, replace_with: {image}}}
    feet: {{count: 3, circle: 300 mm, note: {script}}}
    height: 900 mm
    mass: 3 kg
  lid: {{kind: gap, note: {script}, least: 9 mm, most: 40 mm, depth: 90 mm, closing_force: 400 N}}
  seam: {{kind: gap, must_close: true, guard: soft edges, note: {script}, least: 0 mm, most: 40 mm}}
  board: {{kind: top, carried_by: foot, material: our ply, thickness: 9 mm, diameter: 900 mm}}
loads:
  lean: {{force: 500 N, on: board, at: rim, note: {image}}}
concessions:
  - {{rule: gap.fingers, part: lid, by: {script}, why: {image}}}
  - {{rule: base.stands, part: foot, by: {image}, why: {script}, until: 2020-01-01}}
measured:
  - {{test: sack, quantity: board.mass, value: 4 kg, by: {script}, on: 2026-01-01, note: {image}}}
""")
    found = review(path)
    assert found.problems == ()
    assert any(each.concession for each in found.findings)
    assert any(each.is_silenced for each in found.findings)
    return with_remedies(found, found.rules)


def unread() -> Review:
    """A script or an image where a design is wrong, so that it is quoted back."""
    text = f"design: Lid\n{SCRIPT!r}: 1\nparts:\n  lid: {{kind: {SCRIPT!r}, note: {IMAGE!r}}}\n"
    found = review_source(text, "wrong.yaml")
    assert found.design is None
    return found


def several() -> tuple[Review, ...]:
    """A design of a shop, one of which much is not reviewed, and one that cannot be read."""
    names = ("shop/designs/carving_stand.yaml", "mechanisms/puppet_stage_first.yaml")
    return (*(review(SPECIMENS / name) for name in names), unread())


@pytest.fixture(scope="session")
def seen(tmp_path_factory: pytest.TempPathFactory) -> Seen:
    """What a browser saw of each page."""
    reason = lacking()
    if reason and os.environ.get("NODE_PACKAGES"):
        pytest.fail(reason)
    if reason:
        pytest.skip(reason)
    folder = Path(os.environ.get("REVIEWER_PICTURES") or tmp_path_factory.mktemp("pictures"))
    bench = (SPECIMENS / "potting_bench" / "revision_c.yaml").read_text("utf-8")
    texts = {
        "bench": page_of(reviewed(bench, "bench.yaml")),
        "several": page_of(*several()),
        "hostile": page_of(hostile(tmp_path_factory.mktemp("hostile"))),
        "unread": page_of(unread()),
    }
    for name, text in texts.items():
        (folder / f"{name}.html").write_text(text, "utf-8")
    asked = {
        "chromium": shutil.which("chromium"),
        "tools": os.environ["NODE_PACKAGES"],
        "pages": {
            name: {
                "html": str(folder / f"{name}.html"),
                "pictures": str(folder),
                "views": views,
            }
            for name, views in PAGES.items()
        },
    }
    ran = subprocess.run(
        ["node", str(HERE / "look.mjs")],
        input=json.dumps(asked), capture_output=True, text=True, timeout=900, check=False,
    )  # fmt: skip
    assert ran.returncode == 0, ran.stderr
    return {**json.loads(ran.stdout), "folder": folder}


@pytest.mark.parametrize("name", PAGES)
def test_nothing_goes_wrong_and_nothing_is_fetched(seen: Seen, name: str) -> None:
    assert seen[name]["console"] == []
    own = (seen["folder"] / f"{name}.html").as_uri()
    assert set(seen[name]["requests"]) == {own}


@pytest.mark.parametrize("name", PAGES)
def test_axe_finds_no_fault(seen: Seen, name: str) -> None:
    """WCAG 2.1 A and AA and good practice, by axe-core 4.14, light and dark, wide and narrow."""
    for view in seen[name]["views"]:
        assert view["faults"] == [], (view["width"], view["colorScheme"])


@pytest.mark.parametrize("name", PAGES)
def test_nothing_is_wider_than_the_window(seen: Seen, name: str) -> None:
    for view in seen[name]["views"]:
        assert view["scrolled"] <= view["width"]


@pytest.mark.parametrize("name", PAGES)
def test_no_text_becomes_anything_else(seen: Seen, name: str) -> None:
    for view in seen[name]["views"]:
        found = [view[key] for key in ("scripts", "images", "frames", "handlers", "reached")]
        assert found == [0, 0, 0, 0, False]


def test_hostile_texts_are_read_as_they_are(seen: Seen) -> None:
    text = seen["hostile"]["views"][0]["text"]
    assert text.count(SCRIPT) >= 10
    assert text.count(IMAGE) >= 10
    text = seen["unread"]["views"][0]["text"]
    assert text.count(SCRIPT) >= 3
    assert IMAGE in text


def test_the_keyboard_skips_to_the_sheet_and_shows_where_it_is(seen: Seen) -> None:
    for name in ("bench", "several"):
        keyboard = seen[name]["views"][0]["keyboard"]
        assert keyboard["first"]["name"] == "skip"
        assert keyboard["then"] == "#sheet"
        for place in ("first", "next"):
            assert keyboard[place]["outlineStyle"] == "solid"
            assert float(keyboard[place]["outlineWidth"].removesuffix("px")) >= 2


@pytest.mark.parametrize(("paper", "width"), [("A4", 595), ("Letter", 612)])
def test_it_prints_on_paper(seen: Seen, paper: str, width: float) -> None:
    """ISO 216 A4 is 210 mm wide, Letter (ANSI Y14.1) 8.5 in, a point 1/72 in."""
    pages = PdfReader(seen["folder"] / f"{LOOKED_AT}-{paper}.pdf").pages
    assert abs(float(pages[0].mediabox.width) - width) < 1.5
    assert f"page 1 of {len(pages)}" in pages[0].extract_text()
    assert "wrong.yaml" in pages[-1].extract_text()


def test_all_of_it_prints(seen: Seen) -> None:
    headings = seen[LOOKED_AT]["views"][0]["printed"]
    for heading in ("What to do, in order", "Where it is", "Each in full", "Changed by the shop",
                    "Not reviewed, and why", "What holds", "Cautions",
                    "Where each number comes from", "What is wrong with the file"):  # fmt: skip
        assert heading in headings
