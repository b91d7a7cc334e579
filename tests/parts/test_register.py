"""Kinds are checked when they are registered; every refusal as a whole message."""

from collections.abc import Callable
from types import SimpleNamespace
from typing import Any

import pytest

from reviewer.mechanics.contact import line_contact
from reviewer.mechanics.weight import weight
from reviewer.parts.facts import FACTS
from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.load import LOAD
from reviewer.parts.register import KindError, problems_of, register
from reviewer.parts.registry import KINDS
from reviewer.parts.row import Choice, Choices, Count, Measure, Points, Row, Shape, Stock
from reviewer.reading.context import STOCK

DRUM = Row("drum", "m", "diameter of the drum", Measure(above=0.0, example="120 mm"))


def winch(*rows: Row, name: str = "winch", carries_load: bool = False) -> Kind:
    return Kind(name=name, says="a drum that takes up a rope", rows=rows, carries_load=carries_load)


def refusal(kind: Kind, **how: Any) -> str:
    """The message with which a plug-in's kind is refused, without its name."""
    with pytest.raises(KindError) as refused:
        register([kind], **{"plug_in": "hoists", "beside": KINDS, **how})
    lines = str(refused.value).splitlines()
    assert all(line.startswith("hoists, kind winch") for line in lines)
    return "\n".join(line.removeprefix("hoists, kind winch, row ") for line in lines)


def row(unit: str = "m", given: Any = None, **how: Any) -> Row:
    return Row("a", unit, "a quantity", given, **how)


def same(x: Any) -> Any:
    return x


CONTACT = dict.fromkeys(("force", "length", "radius", "modulus"), "drum")

REFUSED: list[tuple[str, tuple[Row, ...], str]] = [
    (
        "two rows of one path",
        (DRUM, DRUM),
        "drum: two rows have this path; take one of them out",
    ),
    (
        "points of what is no measure",
        (Row("a", "", "points", Points((Row("place", "m", "place"),))),),
        "a: its points list place, which is no measure; give it a Measure",
    ),
    (
        "points whose example cannot be read",
        (Row("a", "", "points", Points((Row("place", "m", "place", Measure(example="3 kg")),))),),
        "a: its example '3 kg' cannot be read: a mass stands where a length is due; "
        "write a length, such as 18 mm",
    ),
    (
        "a unit that is not known",
        (row("furlong", Measure()),),
        "a: its unit furlong cannot be read: the unit is not known; write an SI unit, as N m",
    ),
    (
        "a misspelt unit",
        (row("Mpa", Measure()),),
        "a: its unit Mpa cannot be read: the unit is not known; write MPa",
    ),
    (
        "a unit that is not SI",
        (row("mm", Measure()),),
        "a: its unit mm is not SI; write the SI unit, as m or N",
    ),
    (
        "a unit with a zero of its own",
        (row("degC", Measure()),),
        "a: its unit degC is not SI; write the SI unit, as m or N",
    ),
    (
        "a path with a capital",
        (Row("Drum", "m", "diameter", Measure()),),
        "Drum: its path cannot be named in a rule; write small letters, digits, _ and points",
    ),
    (
        "a path in another's scope",
        (Row("carrier.drum", "m", "diameter", Measure()),),
        "carrier.drum: carrier. means what another part or the design has; begin with another word",
    ),
    (
        "a need of no row, near one",
        (DRUM, row(formula=same, needs={"x": "drun"})),
        "a: it needs drun, and the kind has no such row; write drum",
    ),
    (
        "a need of no row at all",
        (DRUM, row(formula=same, needs={"x": "speed_of_sound?"})),
        "a: it needs speed_of_sound?, and the kind has no such row; "
        "declare that row, or need another",
    ),
    (
        "a need of no kind of carrier",
        (DRUM, row(formula=same, needs={"x": "carrier.reech?"})),
        "a: it needs carrier.reech?, and no kind that carries has any such row; "
        "write carrier.reach",
    ),
    (
        "a need that the design does not have",
        (DRUM, row(formula=same, needs={"x": "design.childen"})),
        "a: it needs design.childen, and the design has no such row; write design.children",
    ),
    (
        "a parameter that needs does not give",
        (DRUM, row(formula=lambda drum, rope: drum, needs={"drum": "drum"})),
        "a: its formula takes rope, and needs does not give it; add rope to needs",
    ),
    (
        "a need that the formula does not take",
        (DRUM, row(formula=lambda drum: drum, needs={"drum": "drum", "turns": "drum"})),
        "a: needs gives turns, and its formula does not take it; take turns out of needs",
    ),
    (
        "a misspelt parameter",
        (DRUM, row(formula=lambda diameter: diameter, needs={"diametre": "drum"})),
        "a: its formula takes diameter, and needs does not give it; add diameter to needs\n"
        "a: needs gives diametre, and its formula does not take it; write diameter",
    ),
    (
        "a default of the wrong dimension",
        (row(given=Measure(default="5 kg")),),
        "a: its default '5 kg' cannot be read: a mass stands where a length is due; "
        "write a length, such as 18 mm",
    ),
    (
        "a default without a unit",
        (row(given=Measure(default="5")),),
        "a: its default '5' cannot be read: the number has no unit; write a length, such as 18 mm",
    ),
    (
        "a default at the bound that it must be above",
        (row("N", Measure(default="0 N", above=0.0)),),
        "a: its default '0 N' is out of its bounds; mend one of them",
    ),
    (
        "a default below its least",
        (row(given=Measure(default="1 mm", at_least=0.002)),),
        "a: its default '1 mm' is out of its bounds; mend one of them",
    ),
    (
        "a default above its most",
        (row(given=Measure(default="3 mm", at_most=0.002)),),
        "a: its default '3 mm' is out of its bounds; mend one of them",
    ),
    (
        "a default at the bound that it must be below",
        (row("1", Measure(default="100 %", below=1.0)),),
        "a: its default '100 %' is out of its bounds; mend one of them",
    ),
    (
        "a word whose meaning does not read",
        (row(given=Measure(words=(("touching", "0,1 mm"),))),),
        "a: its word touching '0,1 mm' cannot be read: a comma stands in the number; "
        "write a point as the decimal mark",
    ),
    (
        "an example of the wrong dimension",
        (row("N", Measure(example="18 mm")),),
        "a: its example '18 mm' cannot be read: a length stands where a force is due; "
        "write a force, such as 400 N",
    ),
    (
        "a published range out of its bounds",
        (row(given=Measure(unknown=("0 mm", "2 mm"), above=0.0)),),
        "a: its published range '0 mm' is out of its bounds; mend one of them",
    ),
    (
        "a count out of its bounds",
        (row("", Count(default=2, at_least=3, at_most=9)),),
        "a: its default 2 is out of its bounds; write one from 3 to 9",
    ),
    (
        "a count without a value",
        (row("", Count(at_least=9, at_most=3)),),
        "a: its bounds leave nothing from 9 to 3; mend one",
    ),
    (
        "a choice of no option",
        (row("", Choice(("crush", "shear"), default="sheer")),),
        "a: its default sheer is none of its words; write shear",
    ),
    (
        "choices of which one is no option",
        (row("", Choices(("adults", "children"), default=("adults", "cats"))),),
        "a: its default cats is none of its words; write adults",
    ),
    (
        "a number that is given as a count",
        (row("m", Count()),),
        "a: it is a number with a unit and no measure; give a Measure, or the unit ''",
    ),
    (
        "a measure without a unit",
        (row("", Measure()),),
        "a: a measure has a unit; write its SI unit, or 1",
    ),
    (
        "nothing fills it",
        (row(),),
        "a: nothing fills it; add given, a formula or take",
    ),
    (
        "two things fill it",
        (row(formula=lambda: 0.0, built=True),),
        "a: it is filled in two ways, by formula and built; keep one of them",
    ),
    (
        "no shape fills it",
        (row(given=Measure(), only=True),),
        "a: it has no key of its own and no shape fills it; add it to a shape, or drop only",
    ),
    (
        "a shape fills no row",
        (
            Row("rope", "", "section of the rope", Shape((("round", ("rope.diametre",)),))),
            Row("rope.diameter", "m", "its diameter", Measure()),
        ),
        "rope: its shape round fills rope.diametre, which is no measure of the kind; "
        "write rope.diameter",
    ),
    (
        "take from a number",
        (DRUM, row(needs={"solution": "drum"}, take="x")),
        "a: drum is no object to take x from; give it the unit ''",
    ),
    (
        "take from nothing that is named",
        (DRUM, row(needs={"other": "drum"}, take="x")),
        "a: take reads one object, and needs does not name it; write needs={'solution': ROW}",
    ),
    (
        "take from a row that is not there",
        (DRUM, row(needs={"solution": "rollers"}, take="x")),
        "a: it needs rollers, and the kind has no such row; declare that row, or need another",
    ),
    (
        "rows in a circle",
        (
            row(formula=same, needs={"x": "b"}),
            Row("b", "m", "another", Measure(), formula=same, needs={"x": "a?"}),
        ),
        "a: rows need each other in a circle: a needs b needs a; take one need out",
    ),
    (
        "a formula in other units than the rows",
        (DRUM, row("kg", formula=weight, needs={"mass": "drum"})),
        "a: its formula's mass is in [kg], and drum has m; "
        "mend the docstring, or the unit of drum: it is due a mass\n"
        "a: what its formula returns is in [N], and the row has kg; "
        "mend the docstring, or the unit of the row: it is due a force",
    ),
    (
        "a formula of several values in a row of one",
        (Row("p", "Pa", "pressure", formula=line_contact, needs=CONTACT),),
        "p: it needs drum, and the kind has no such row; declare that row, or need another\n"
        * 4
        + "p: its formula returns half_width, pressure; "
        "compute it in a row of unit '' and take one of them",
    ),
    (
        "a field that the solution does not have",
        (
            Row("force", "N", "force", Measure()),
            Row("modulus", "Pa", "modulus", Measure()),
            DRUM,
            Row(
                "contact",
                "",
                "contact with the track",
                formula=line_contact,
                needs={"force": "force", "length": "drum", "radius": "drum", "modulus": "modulus"},
            ),
            Row("a", "Pa", "pressure", needs={"solution": "contact"}, take="presure"),
            Row("b", "m", "pressure", needs={"solution": "contact"}, take="pressure"),
        ),
        "a: contact has no presure; take pressure\n"
        "b: pressure of contact is in [Pa], and the row has m; "
        "mend the docstring, or the unit of the row: it is due a pressure or stress",
    ),
]


@pytest.mark.parametrize(
    ("rows", "message"), [each[1:] for each in REFUSED], ids=[each[0] for each in REFUSED]
)
def test_a_kind_is_refused_with_row_fault_and_mend(rows: tuple[Row, ...], message: str) -> None:
    assert refusal(winch(*rows)) == message


def test_a_docstring_in_a_unit_that_is_none() -> None:
    def rope_length(diameter: float) -> float:
        """Length of a turn.

        Geometry.

        Parameters
        ----------
        diameter : diameter of the drum,
            without the rope [metre]

        Returns
        -------
        length : one turn [m]
        """
        return 3.0 * diameter

    kind = winch(DRUM, row(formula=rope_length, needs={"diameter": "drum"}))
    assert refusal(kind) == (
        "a: its formula's diameter is in [metre], which is no unit; write the SI unit in brackets"
    )


@pytest.mark.parametrize(
    ("name", "message"),
    [
        ("arm", "kind arm: there is a kind of this name; give it a name of its own"),
        (
            "load",
            "kind load: the name means something else in designs and rules; "
            "give it a name of its own",
        ),
        (
            "design",
            "kind design: the name means something else in designs and rules; "
            "give it a name of its own",
        ),
    ],
)
def test_a_kind_needs_a_name_of_its_own(name: str, message: str) -> None:
    with pytest.raises(KindError) as refused:
        register([winch(DRUM, name=name)], plug_in="hoists", beside=KINDS)
    assert str(refused.value) == f"hoists, {message}"


def test_two_new_kinds_of_one_name() -> None:
    with pytest.raises(KindError) as refused:
        register([winch(DRUM), winch(DRUM)], plug_in="hoists")
    assert str(refused.value) == (
        "hoists, kind winch: there is a kind of this name; give it a name of its own"
    )


def test_a_kind_that_carries_load_has_the_rows_of_the_load_path() -> None:
    with pytest.raises(KindError) as refused:
        register([winch(DRUM, *tree(), carries_load=True)], plug_in="hoists", beside=KINDS)
    assert str(refused.value) == (
        "hoists, kind winch: it carries load and has no row weight, centre.x, centre.y; "
        "add the rows of tree() and of single() or array(), or set carries_load=False"
    )


def test_all_faults_are_told_at_once_and_kept_as_data() -> None:
    with pytest.raises(KindError) as refused:
        register([winch(row(), Row("b", "furlong", "length", Measure()))], plug_in="hoists")
    assert refused.value.plug_in == "hoists"
    assert [(fault.kind, fault.row) for fault in refused.value.faults] == [
        ("winch", "a"),
        ("winch", "b"),
    ]


def test_kinds_stand_beside_those_registered_before() -> None:
    kind = winch(DRUM, *tree(), *single(), carries_load=True)
    together = register([kind], plug_in="hoists", beside=KINDS)
    assert list(together) == [*KINDS, "winch"]
    assert together["winch"] is kind
    with pytest.raises(TypeError):
        together["winch"] = kind  # type: ignore[index]


@pytest.mark.parametrize(
    "formula",
    [
        lambda drum, rope=0.01: drum + rope,
        lambda drum, **rest: drum,
        lambda *all_of_them, **rest: 0.0,
        SimpleNamespace(take=lambda drum: drum).take,
        type("Doubling", (), {"__call__": lambda self, drum: 2 * drum})(),
    ],
    ids=["default", "named rest", "anything", "plain", "callable object"],
)
def test_a_formula_may_be_anything_that_takes_what_needs_gives(
    formula: Callable[..., Any],
) -> None:
    assert register([winch(DRUM, row(formula=formula, needs={"drum": "drum"}))], plug_in="hoists")


@pytest.mark.parametrize("kind", [*KINDS.values(), LOAD, FACTS], ids=lambda kind: kind.name)
def test_the_kinds_that_come_with_reviewer_are_sound(kind: Kind) -> None:
    """Also what they say in words, which is not checked at each start."""
    assert problems_of(kind, KINDS) == ()


@pytest.mark.parametrize(
    ("kind", "row"),
    [
        pytest.param(kind, row, id=f"{kind.name}.{row.path}")
        for kind in KINDS.values()
        for row in kind.rows
        if isinstance(row.given, Stock)
    ],
)
def test_the_example_of_a_stock_row_is_in_the_tables(kind: Kind, row: Row) -> None:
    assert isinstance(row.given, Stock)
    assert STOCK[row.given.table](row.given.example.strip('"'))
