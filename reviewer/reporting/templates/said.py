"""What a template says of itself: design and part, what it is made of, what the review comes to."""

from typing import NamedTuple

from reviewer.judging.reviewed import Review
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.templates.template import Words, width_of
from reviewer.reporting.words import is_to_change, joined

THICKNESSES = ("plate.thickness", "thickness")
MATERIALS = ("plate.material", "material")
LETTERS, LEADING, BESIDE = 0.004, 0.0075, 0.006  # m
SCALE = "full size, 1 : 1; this face up"


class Said(NamedTuple):
    """What every template of a design says: its name, and what the review comes to."""

    design: str
    notes: tuple[str, ...]

    def title(self, part: str) -> str:
        """The design with the part."""
        return f"{self.design}: {part.replace('_', ' ')}"

    def words(
        self, part: str, made_of: str, place: tuple[float, float], room: float
    ) -> tuple[Words, ...]:
        """Lines below a place; beside the line through it, where so much room lets them."""
        x, y = place
        lines = [self.title(part), *([made_of] if made_of else []), SCALE, *self.notes]
        placed = []
        for number, text in enumerate(lines, 2):
            below = y - number * LEADING
            words = Words((x + BESIDE, below), text, LETTERS, from_left=True)
            wide = 2 * (BESIDE + width_of(words)) > room
            placed.append(Words((x, below), text, LETTERS) if wide else words)
        return tuple(placed)


def said_of(review: Review) -> Said:
    """What all templates of a design that was read say."""
    design = review.design
    assert design is not None
    revision = f", revision {design.revision}" if design.revision else ""
    fails = any(is_to_change(each) and each.level != "note" for each in review.findings)
    accepted = [each.name for each in review.findings if each.concession is not None]
    notes = ["THE REVIEW FAILS: do not cut before it holds"] if fails else []
    if accepted:
        notes.append(f"accepted on purpose: {joined(accepted)}")
    return Said(f"{design.name}{revision}", tuple(notes))


def made_of(values: Quantities, part: str) -> str:
    """How many pieces, how thick and of what, as far as it is told."""
    thick = next((told for path in THICKNESSES if (told := values.told(part, path))), "")
    material = next((told for path in MATERIALS if (told := values.named(part, path))), "")
    many = f"{values.count(part)} pieces" if values.count(part) > 1 else ""
    return ", ".join(each for each in (many, thick, material) if each)
