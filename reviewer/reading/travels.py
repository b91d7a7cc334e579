"""The travels of a design, what follows what, and what the moves of a part need."""

from collections.abc import Mapping

from reviewer.parts.move_rows import MOVES, WAYS
from reviewer.parts.travel import TRAVEL
from reviewer.reading.carriers import find_circle
from reviewer.reading.context import Context, listed
from reviewer.reading.design import GivenValue, Part
from reviewer.reading.fields import read_fields
from reviewer.reading.names import named_tables
from reviewer.reading.tree import Table

TRAVELS = "travels"
OF_A_FOLLOWER = ("from", "to", "profile")
LEADERS = ("follows", "after")


def read_travels(root: Table, context: Context) -> dict[str, Part]:
    """Read `travels`: what each follows, and where."""
    found = {}
    for name, table in named_tables(root, TRAVELS, "travel", context):
        given = read_fields(table, TRAVEL, context)
        found[name.text] = Part(name.text, TRAVEL, given, name.place)
        _check_leader(found[name.text], context)
    _check_order(found, context)
    return found


def _check_leader(travel: Part, context: Context) -> None:
    """Refuse two leaders, places on a leader where there is none, and a travel of no length."""
    follows, after = (travel.given.get(each) for each in LEADERS)
    if follows and after:
        what = f"{travel.name} follows one travel and comes after one"
        context.refuse(after.place, what, after.text, "follows: or after:, not both")
    told = [travel.given[each] for each in OF_A_FOLLOWER if each in travel.given]
    if told and not follows:
        what = f"{travel.name} follows no travel"
        context.refuse(told[0].place, what, told[0].text, "follows: and the name of a travel")
    start, end = (travel.given.get(each) for each in ("from", "to"))
    if (start.value if start else 0.0) >= (end.value if end else 1.0):
        last = end or start
        assert last is not None
        what = f"{travel.name} ends where it begins, or before"
        context.refuse(last.place, what, last.text, "to: a place beyond from:")


def _check_order(travels: Mapping[str, Part], context: Context) -> None:
    """Refuse travels that lead each other in a circle, and two that come after the same one."""
    leaders = {
        name: tuple(str(part.given[each].value) for each in LEADERS if each in part.given)
        for name, part in travels.items()
    }
    followed: dict[str, Part] = {}
    for part in travels.values():
        after = part.given.get("after")
        if after is not None and after.value in followed:
            other = followed[after.value].name
            what, expected = f"{other} comes after {after.value} already", f"after: {other}"
            context.refuse(after.place, what, after.text, expected)
        elif after is not None:
            followed[after.value] = part
    known = {name: tuple(each for each in of if each in travels) for name, of in leaders.items()}
    circle = find_circle(known)
    if circle:
        first = travels[circle[0]]
        given = next(first.given[each] for each in LEADERS if each in first.given)
        what = "travels lead each other in a circle" if len(circle) > 1 else "a travel leads itself"
        context.refuse(given.place, what, listed(circle), "a travel that none leads, at their head")


def check_moves(part: Part, context: Context) -> None:
    """Refuse a move without a travel, without an amount, or with two."""
    for name, way in WAYS.items():
        prefix = f"{MOVES}{name}."
        own = {
            path.removeprefix(prefix): given
            for path, given in part.given.items()
            if path.startswith(prefix)
        }
        if own:
            _check_move(part, name, own, (way.amount, *way.others), context)


def _check_move(
    part: Part, name: str, own: Mapping[str, GivenValue], ways: tuple[str, ...], context: Context
) -> None:
    first = next(iter(own.values()))
    if "by" not in own and "by" not in context.lost:
        what = f"the {name} of {part.name} is driven by no travel"
        context.refuse(first.place, what, "no by", "by: and the name of a travel")
    told = list(dict.fromkeys(path.partition(".")[0] for path in own))
    amounts = [each for each in told if each in ways]
    expected = f"one of {listed(ways, 'or')}"
    if len(amounts) > 1:
        second = next(given for path, given in own.items() if path.startswith(amounts[1]))
        what = f"the {name} of {part.name} is told in two ways"
        context.refuse(second.place, what, listed(amounts), expected)
    elif not amounts and not context.lost:
        what = f"how far is the {name} of {part.name}?"
        context.refuse(first.place, what, f"no {listed(ways, 'or')}", expected)
    _check_whole(part, name, own, context)


def _check_whole(part: Part, name: str, own: Mapping[str, GivenValue], context: Context) -> None:
    """Refuse a slot or a crank that lacks a measure, and stops in the wrong order."""
    for group, measures in (("slot", ("inner", "outer", "turn")), ("crank", ("radius", "turn"))):
        given = [path for path in own if path.startswith(f"{group}.")]
        missing = [each for each in measures if f"{group}.{each}" not in own]
        if given and missing:
            what = f"the {group} of {part.name} lacks a measure"
            expected = f"{group}: with {listed(measures)}"
            context.refuse(own[given[0]].place, what, f"no {listed(missing, 'or')}", expected)
    least, most = own.get("least"), own.get("most")
    if least and most and least.value >= most.value:
        what = f"the stops of the {name} of {part.name} leave no way"
        context.refuse(most.place, what, most.text, "most: beyond least:")
