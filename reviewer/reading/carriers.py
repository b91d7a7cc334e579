"""The load path as a file gives it: who carries whom, down to the floor, without a circle."""

from collections.abc import Mapping, Sequence

from reviewer.reading.context import Context, article, listed
from reviewer.reading.design import GivenValue, Part
from reviewer.reading.words import shown

MOST_NAMED = 8
STANDS = "base"
CARRIED_BY = "carried_by"
AFTER = "after"


def check_carriers(parts: Mapping[str, Part], context: Context) -> None:
    """Refuse carriers that pass no force on, and parts that carry each other in a circle."""
    for part in parts.values():
        for name in part.carried_by:
            check_bears(name, part.given["carried_by"], parts, context)
    remaining = {
        name: tuple(each for each in part.carried_by if each in parts)
        for name, part in parts.items()
    }
    check_after(parts, context)
    _check_roots(parts, context)
    while not context.is_full and (circle := find_circle(remaining)):
        _refuse_circle(circle, parts, context)
        for name in circle:
            remaining[name] = ()


def check_after(parts: Mapping[str, Part], context: Context) -> None:
    """Refuse parts that wait for each other in a circle."""
    given = {name: part.given.get(AFTER) for name, part in parts.items()}
    waiting = {
        name: tuple(each for each in (before.value if before else ()) if each in parts)
        for name, before in given.items()
    }
    circle = find_circle(waiting)
    if circle:
        words = ("parts wait for each other in a circle", "a part waits for itself")
        _tell_circle(circle, parts, context, AFTER, "after", words, "an order of assembly")


def _check_roots(parts: Mapping[str, Part], context: Context) -> None:
    """Refuse parts that hang on nothing, where a base is what stands on the floor."""
    standing = [part for part in parts.values() if part.kind.carries_load and not part.carried_by]
    bases = [part for part in standing if part.kind.name == STANDS]
    if not bases or context.problems or CARRIED_BY in context.lost:
        return
    for part in standing:
        if part not in bases:
            others = listed(each.name for each in parts.values() if each is not part)
            expected = f"carried_by: and one of {others}, since {bases[0].name} stands on the floor"
            mend = f"write carried_by: {bases[0].name}"
            context.refuse(
                part.place, f"{part.name} hangs on nothing", "no carried_by", expected, mend
            )


def check_bears(name: str, given: GivenValue, parts: Mapping[str, Part], context: Context) -> None:
    """Refuse a part that cannot bear anything, where something is put on it."""
    kind = parts[name].kind if name in parts else None
    if kind is not None and not kind.carries_load:
        what = f"{name} is {article(kind.name)}, and carries nothing"
        able = [each.name for each in parts.values() if each.kind.carries_load]
        expected = f"a part that carries load: {listed(able, 'or')}" if able else "a part that does"
        context.refuse(given.place, what, shown(given.text), expected)


def find_circle(carriers: dict[str, tuple[str, ...]]) -> tuple[str, ...]:
    """Find parts of which each is carried by the next and the last by the first.

    `carriers` loses every part that stands soundly. Nothing is found where all do.

    >>> find_circle({"arm": ("ring",), "ring": ("top", "base"), "base": (), "top": ("ring",)})
    ('ring', 'top')
    """
    _drop_what_stands(carriers)
    if not carriers:
        return ()
    order = {name: index for index, name in enumerate(carriers)}
    walked: dict[str, int] = {}
    name = next(iter(carriers))
    while name not in walked:
        walked[name] = len(walked)
        name = next(each for each in carriers[name] if each in carriers)
    circle = tuple(walked)[walked[name] :]
    first = min(range(len(circle)), key=lambda index: order[circle[index]])
    return circle[first:] + circle[:first]


def _drop_what_stands(carriers: dict[str, tuple[str, ...]]) -> None:
    """Take out, from the floor up, every part all of whose carriers are out already."""
    above: dict[str, list[str]] = {}
    waiting: dict[str, int] = {}
    for name, on in carriers.items():
        below = [each for each in on if each in carriers]
        waiting[name] = len(below)
        for each in below:
            above.setdefault(each, []).append(name)
    standing = [name for name, count in waiting.items() if not count]
    while standing:
        name = standing.pop()
        del carriers[name]
        for each in above.get(name, ()):
            waiting[each] -= 1
            if not waiting[each]:
                standing.append(each)


def _refuse_circle(circle: Sequence[str], parts: Mapping[str, Part], context: Context) -> None:
    words = ("parts carry each other in a circle", "a part carries itself")
    _tell_circle(circle, parts, context, CARRIED_BY, "on", words, "carriers that lead to the floor")


def _tell_circle(
    circle: Sequence[str],
    parts: Mapping[str, Part],
    context: Context,
    key: str,
    joint: str,
    words: tuple[str, str],
    expected: str,
) -> None:
    """Refuse a circle of parts; `words` are what several are in, and what one is by itself."""
    steps = [
        f"{name} {joint} {circle[(index + 1) % len(circle)]}" for index, name in enumerate(circle)
    ]
    what = words[0] if len(circle) > 1 else words[1]
    found = ", ".join(steps[:MOST_NAMED]) + (", and so on" if len(steps) > MOST_NAMED else "")
    context.refuse(parts[circle[0]].given[key].place, what, found, expected)
