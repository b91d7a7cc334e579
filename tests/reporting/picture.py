"""A drawing read back from its text, for the tests that measure it."""

import re
from collections.abc import Iterator
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"


class Picture:
    """A drawing, read back from its text."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.root = ElementTree.fromstring(text)
        self.box = tuple(float(each) for each in self.root.attrib["viewBox"].split())

    def every(self, element: str) -> Iterator[ElementTree.Element]:
        return self.root.iter(f"{SVG}{element}")

    def words(self) -> list[str]:
        return [each.text or "" for each in self.every("text")]

    def circles(self) -> list[tuple[float, float, float]]:
        return [
            tuple(float(each.attrib[key]) for key in ("cx", "cy", "r"))  # type: ignore[misc]
            for each in self.every("circle")
        ]

    def runs(self, element: str = "polyline", **look: str) -> list[list[tuple[float, float]]]:
        """The points of each line through points that has a look."""
        wanted = {name.replace("_", "-"): value for name, value in look.items()}
        return [
            [tuple(map(float, pair.split(","))) for pair in each.attrib["points"].split()]  # type: ignore[misc]
            for each in self.every(element)
            if wanted.items() <= each.attrib.items()
        ]

    def scale(self) -> float:
        """Units for each millimetre, by the bar that says so."""
        bar = next(each for each in self.every("rect") if each.attrib["height"] == "5")
        length = next(each for each in self.words() if re.fullmatch(r"\d+ mm", each))
        return 2 * float(bar.attrib["width"]) / float(length.split()[0])

    def places(self) -> Iterator[tuple[float, float]]:
        """Every place that the picture names, turned texts left out."""
        for each in self.root.iter():
            got = each.attrib
            if each.tag in (f"{SVG}polyline", f"{SVG}polygon"):
                for pair in got["points"].split():
                    x, y = pair.split(",")
                    yield float(x), float(y)
            elif each.tag == f"{SVG}circle":
                x, y, r = (float(got[key]) for key in ("cx", "cy", "r"))
                yield from ((x - r, y - r), (x + r, y + r))
            elif each.tag == f"{SVG}line":
                yield float(got["x1"]), float(got["y1"])
                yield float(got["x2"]), float(got["y2"])
            elif each.tag == f"{SVG}text" and "transform" not in got:
                x, size = float(got["x"]), float(got["font-size"])
                wide = len(each.text or "") * size * 0.5
                before = {"start": 0.0, "middle": 0.5, "end": 1.0}[got["text-anchor"]] * wide
                yield from ((x - before, float(got["y"])), (x - before + wide, float(got["y"])))

    def is_whole(self) -> None:
        """Nothing is cut off, and who does not see it is told what it shows."""
        left, top, width, height = self.box
        for x, y in self.places():
            assert left <= x <= left + width, (x, y)
            assert top <= y <= top + height, (x, y)
        root = self.root
        ids = [each.attrib["id"] for each in root.iter() if "id" in each.attrib]
        assert root.attrib["role"] == "img"
        assert root.attrib["aria-labelledby"].split() == ids
        assert [each.rsplit("-", 1)[1] for each in ids] == ["title", "says"]
        assert all(each.text for each in root.iter() if "id" in each.attrib)
        drawn = ("line", "polyline", "polygon", "circle", "rect", "text")
        allowed = {f"{SVG}{name}" for name in ("svg", "title", "desc", *drawn)}
        assert {each.tag for each in root.iter()} <= allowed
        assert re.search(r"#[0-9a-f]{3}|rgb|url|href|on[a-z]+=", self.text) is None
        assert re.search(r"'-?(nan|inf)|[ ,](nan|inf)[ ,']", self.text) is None
