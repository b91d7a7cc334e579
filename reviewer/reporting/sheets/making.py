"""Making sheets of a review: each maker's own part, under what every sheet says first."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from reviewer.judging.reviewed import Review
from reviewer.reporting.sheets.sheet import Body, NoSheet, Sheet
from reviewer.reporting.sheets.standing import standing_of


@dataclass(frozen=True, slots=True)
class Maker:
    """A sort of sheet: its name on the command line, its title, and what makes its own part.

    `make` gets a review whose design could be read.
    """

    name: str
    title: str
    make: Callable[[Review], Body | NoSheet]


def sheet_of(maker: Maker, review: Review) -> Sheet | NoSheet:
    """A sheet of a design that was read, or why there is none."""
    design = review.design
    if design is None:
        return NoSheet("the design could not be read")
    body = maker.make(review)
    if isinstance(body, NoSheet):
        return body
    return Sheet(
        name=maker.name,
        title=maker.title,
        design=design.name,
        revision=design.revision,
        path=review.path,
        standing=standing_of(review),
        sections=body.sections,
        cautions=body.cautions,
    )


def sheets_of(
    makers: Iterable[Maker], review: Review
) -> tuple[tuple[Sheet, ...], tuple[tuple[Maker, NoSheet], ...]]:
    """The sheets of a design, and the makers that have none with their reasons."""
    made = [(maker, sheet_of(maker, review)) for maker in makers]
    sheets = tuple(sheet for _, sheet in made if isinstance(sheet, Sheet))
    without = tuple((maker, found) for maker, found in made if isinstance(found, NoSheet))
    return sheets, without
