"""A constraint: the contacts that hold a body, and what they leave free or hold twice."""

from reviewer.parts.contacts import AXES, CONTACTS, TURNS, held_by
from reviewer.parts.freedoms import freedoms_of, repeats_of, setting_of
from reviewer.parts.kind import Kind
from reviewer.parts.row import Choices, Measure, PartName, Row


def _took(path: str, unit: str, says: str, solution: str, take: str) -> Row:
    return Row(path, unit, says, needs={"solution": solution}, take=take)


CONSTRAINT = Kind(
    name="constraint",
    says="the contacts that hold a body in its place",
    carries_load=False,
    rows=(
        Row("of", "", "the part that is held", PartName()),
        Row("contacts", "", "where and along what it is held", CONTACTS),
        Row(
            "free",
            "",
            "along or about what it shall be free to move",
            Choices((*AXES, *TURNS), default=()),
        ),
        Row(
            "made_within",
            "m",
            "how far each contact may be from where it is drawn",
            Measure(at_least=0.0, example="0.3 mm"),
        ),
        Row(
            "held",
            "",
            "constraint matrix: a row for each direction in which a contact holds",
            formula=held_by,
            needs={"contacts": "contacts"},
            because="has a contact that says neither what it holds nor its azimuth",
        ),
        Row(
            "freedoms",
            "",
            "what the contacts leave free",
            formula=freedoms_of,
            needs={"held": "held", "free": "free", "lengths": "design.lengths?"},
        ),
        _took("free_ways", "1", "in how many ways it can still move", "freedoms", "ways"),
        _took("unwanted", "1", "ways in which it moves and shall not", "freedoms", "unwanted"),
        _took("blocked", "1", "ways in which it shall move and cannot", "freedoms", "blocked"),
        _took("moves", "text", "how it moves and shall not", "freedoms", "words"),
        _took("cannot", "text", "how it shall move and cannot", "freedoms", "blocked_words"),
        Row(
            "repeats",
            "",
            "what is held more than once",
            formula=repeats_of,
            needs={"held": "held"},
        ),
        _took("repeated", "1", "how often more than needed it is held", "repeats", "times"),
        _took(
            "forced",
            "1",
            "how often, without what can be set or gives way",
            "repeats",
            "forced",
        ),
        _took("holds_twice", "text", "which contacts do each other's work", "repeats", "words"),
        Row(
            "setting",
            "",
            "how far what can be set has to be",
            formula=setting_of,
            needs={"held": "held", "made_within": "made_within"},
        ),
        _took("setting.asked", "m", "how far the contact has to be set", "setting", "asked"),
        _took("setting.given", "m", "how far that contact can be set", "setting", "given"),
        _took("setting.which", "text", "the contact that can be set least", "setting", "which"),
        Row(
            "unreached",
            "1",
            "contacts that can be set, but not once all is assembled",
            formula=lambda held: float(len(held.unreached)),
            needs={"held": "held"},
        ),
        Row(
            "unreached_names",
            "text",
            "which they are",
            formula=lambda held: ", ".join(held.unreached) or "none",
            needs={"held": "held"},
        ),
    ),
)
