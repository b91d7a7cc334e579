"""What stands around a view: its title, the scale, what the lines mean, what is not drawn."""

from collections.abc import Sequence
from functools import cached_property

from reviewer.notation.plain import plain
from reviewer.reading.design import Design
from reviewer.reporting.drawings.canvas import AXIS, EDGE, HIDDEN, SMALL, Canvas, wrapped
from reviewer.reporting.drawings.dimensions import put_scale
from reviewer.reporting.drawings.marks import Mark
from reviewer.reporting.drawings.scene import Scene
from reviewer.reporting.drawings.view import View

LEAST_WIDTH = 470.0
LINE = 18.0


class Legend:
    """The words of a view."""

    def __init__(self, scene: Scene, view: str, marks: Sequence[Mark]) -> None:
        """Take what is drawn, from where, and what is marked in it."""
        self.scene, self.view, self.marks = scene, view, marks

    @cached_property
    def design(self) -> Design:
        """The design that is drawn."""
        derived = self.scene.review.derived
        assert derived is not None
        return derived.design

    @property
    def title(self) -> str:
        """View, configuration, design and revision."""
        where = f", {self.scene.configuration}" if self.scene.configuration else ""
        revision = f", revision {self.design.revision}" if self.design.revision else ""
        return f"{self.view}{where}: {plain(self.design.name, 120)}{plain(revision, 40)}"

    @property
    def says(self) -> str:
        """What is drawn, in words."""
        drawn = [name for name in self.scene.parts if name not in self.scene.not_drawn]
        words = [f"{self.view} to scale of {', '.join(drawn) or 'no part'}."]
        words += [f"Number {mark.number}: {mark.finding.message}" for mark in self.marks]
        return " ".join([*words, *self.not_drawn])

    @property
    def not_drawn(self) -> list[str]:
        """The parts that have no shape, and why; those that have none by nature are left out."""
        return [f"Not drawn: {name}: {why}." for name, why in self.scene.not_drawn.items()]


def put_heading(canvas: Canvas, legend: Legend) -> None:
    """The title over all that is drawn."""
    lines = wrapped(legend.title, max(canvas.right - canvas.left, LEAST_WIDTH), 15.0)
    left, top = canvas.left, canvas.top - 10
    for number, words in enumerate(reversed(lines)):
        canvas.text((left, top - 20 * number), words, size=15.0, bold=True)


def put_legend(
    canvas: Canvas, view: View, legend: Legend, words: Sequence[str], below: float
) -> None:
    """The scale, the meaning of the lines, and some words under all that is drawn."""
    left = canvas.left
    y = max(below, canvas.bottom) + 22
    put_scale(canvas, view, legend.design, (left, y))
    y += 26
    x = left
    for look, meaning in ((EDGE, "seen"), (HIDDEN, "hidden"), (AXIS, "circle or line, no edge")):
        canvas.line((x, y - 4), (x + 30, y - 4), look)
        canvas.text((x + 36, y), meaning, size=SMALL)
        x += 52 + len(meaning) * 7.3
    wide = max(canvas.right - left, LEAST_WIDTH)
    for each in [*words, *legend.not_drawn]:
        for number, line in enumerate(wrapped(each, wide, SMALL)):
            y += LINE if number == 0 else 16.0
            canvas.text((left, y), line, size=SMALL)
