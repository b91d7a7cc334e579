"""What only the whole of a part's outline can show: one form, all its measures, an inside."""

from collections.abc import Iterator

from reviewer.parts.shape_rows import FORMS, NEEDED, OUTLINE
from reviewer.reading.context import Context, listed
from reviewer.reading.design import GivenValue, Part


def check_outline(part: Part, context: Context) -> None:
    """Refuse an outline of two forms, one that lacks a measure, and one that is none."""
    forms = list(dict.fromkeys(_forms(part)))
    if not forms:
        return
    first = next(given for path, given in part.given.items() if path.startswith(forms[0]))
    short = [form.removeprefix(OUTLINE) for form in forms]
    if len(forms) > 1:
        second = next(given for path, given in part.given.items() if path.startswith(forms[1]))
        what = f"the outline of {part.name} has {len(forms)} forms"
        expected = f"one of {listed((each.removeprefix(OUTLINE) for each in FORMS), 'or')}"
        context.refuse(second.place, what, listed(short), expected)
        return
    needed = NEEDED.get(forms[0], ())
    missing = [name for name in needed if f"{forms[0]}.{name}" not in part.given]
    if missing:
        if not any(name in context.lost for name in missing):
            what = f"the outline of {part.name} lacks a measure"
            found, expected = f"no {listed(missing, 'or')}", f"{short[0]}: with {listed(needed)}"
            context.refuse(first.place, what, found, expected)
        return
    _check_inside(part, forms[0], first, context)


def _forms(part: Part) -> Iterator[str]:
    """The forms of which a part gives a measure."""
    for path in part.given:
        yield from (form for form in FORMS if path == form or path.startswith(f"{form}."))


def _check_inside(part: Part, form: str, first: GivenValue, context: Context) -> None:
    """Refuse holes larger than what they are in, and polygons that cross themselves."""
    for inner, outer in (
        ("ring.hole", "ring.diameter"),
        ("sector.inner", "sector.outer"),
        ("slot.width", "slot.length"),
    ):
        small, large = (part.given.get(f"{OUTLINE}{each}") for each in (inner, outer))
        if small and large and small.value >= large.value:
            what = f"the outline of {part.name} has nothing inside"
            expected = f"{inner.rpartition('.')[2]} less than {outer.rpartition('.')[2]}"
            context.refuse(small.place, what, small.text, expected)
    if form == f"{OUTLINE}polygon":
        from reviewer.geometry.outline import Polygon, crosses_itself

        if crosses_itself(Polygon(first.value)):
            what = f"the sides of the outline of {part.name} cross or touch"
            context.refuse(first.place, what, first.text, "corners in order round the outline")
