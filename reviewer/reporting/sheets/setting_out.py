"""The setting-out sheet: divided circles by tables of chords, and how bolted parts line up."""

from collections.abc import Iterator

from reviewer.judging.reviewed import Review
from reviewer.parts.mark_setting import GROUPS
from reviewer.reporting.sheets.circle import Circle
from reviewer.reporting.sheets.divided_circle import circle_section, group_section
from reviewer.reporting.sheets.lining_table import lining_section
from reviewer.reporting.sheets.making import Maker
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.sheets.sheet import Body, NoSheet, Section


def setting_out_body(review: Review) -> Body | NoSheet:
    """The circles to divide, those that no divided_circle is for too, and the parts to line up."""
    sections = tuple(_sections(Quantities(review)))
    if sections:
        return Body(sections)
    return NoSheet("no part stands on a circle, and no lining_up is among the parts of the design")


def _sections(values: Quantities) -> Iterator[Section]:
    told = [part for part in values.parts if values.kind(part) == "divided_circle"]
    for part in told:
        yield circle_section(Circle(values, part))
    known = {(values.named(part, "of"), values.named(part, "group")) for part in told}
    for part in values.parts:
        for group in GROUPS:
            circle = Circle(values, part, group)
            if circle.is_known and (part, group) not in known:
                yield group_section(circle)
    lined = [part for part in values.parts if values.kind(part) == "lining_up"]
    if lined:
        yield lining_section(values, lined)


SETTING_OUT = Maker("setting_out", "Setting out", setting_out_body)
