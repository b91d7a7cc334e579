"""Dimensions of whole expressions."""

import pytest

from reviewer.judging.compiled import compile_condition, judge
from reviewer.judging.dimensions import infer
from reviewer.judging.kinds import TEXT, TRUTH, Collection, Kind, Names, Texts
from reviewer.judging.language import parse
from reviewer.notation.dimension import (
    ANGLE,
    AREA,
    FORCE,
    LENGTH,
    MASS,
    MOMENT,
    NUMBER,
    PRESSURE,
    STIFFNESS,
    TEMPERATURE,
    TIME,
)

NAMES = Names(
    {
        "plate.thickness": LENGTH,
        "plate.material": TEXT,
        "hold_down.peak_load": FORCE,
        "hold_down.limited_by": Texts(("bearing", "bolt", "track")),
        "hold_down.count": NUMBER,
        "tray.mass": MASS,
        "tilt": ANGLE,
        "slope": NUMBER,
        "room": TEMPERATURE,
        "rigid": TRUTH,
        "arms.reach": Collection(LENGTH, "arms"),
        "arms.material": Collection(TEXT, "arms"),
        "arms.glued": Collection(TRUTH, "arms"),
        "bolts.edge": Collection(LENGTH, "bolts"),
    }
)


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("18 mm", LENGTH),
        ("plate.thickness * 2", LENGTH),
        ("plate.thickness^2", AREA),
        ("sqrt(plate.thickness * 3 mm)", LENGTH),
        ("plate.thickness^(1/2) * plate.thickness^0.5", LENGTH),
        ("hold_down.peak_load / plate.thickness", STIFFNESS),
        ("hold_down.peak_load / (2 mm * plate.thickness)", PRESSURE),
        ("hold_down.peak_load * plate.thickness", MOMENT),
        ("plate.thickness^-1 * hold_down.peak_load", STIFFNESS),
        ("tray.mass * 9.80665 m/s^2", FORCE),
        ("sqrt(plate.thickness / 9.80665 m/s^2)", TIME),
        ("-plate.thickness", LENGTH),
        ("abs(-18 mm)", LENGTH),
        ("max(0, plate.thickness, 3 mm)", LENGTH),
        ("min(0, 0)", NUMBER),
        ("plate.thickness + 0", LENGTH),
        ("sin(tilt) + cos(60 deg)", NUMBER),
        ("atan(slope)", ANGLE),
        ("2 * tilt", ANGLE),
        ("tilt * plate.thickness", LENGTH),
        ("tilt / (1 rad)", NUMBER),
        ("slope * (1 rad)", ANGLE),
        ("table(plate.thickness, [0: 5 N, 10 mm: 8 N])", FORCE),
        ("table(plate.thickness, [0 mm: 0, 10 mm: 8 N])", FORCE),
        ("largest of arms.reach", LENGTH),
        ("sum of (arms.reach * 2 m)", AREA),
        ("arms.reach - plate.thickness", Collection(LENGTH, "arms")),
        ("arms.reach > 3 mm", Collection(TRUTH, "arms")),
        ("table(arms.reach, [0 m: 1, 2 m: 2])", Collection(NUMBER, "arms")),
        ("arms.material in ['beech']", Collection(TRUTH, "arms")),
        ("every (arms.reach > 3 mm and arms.material == 'beech')", TRUTH),
        ("every (arms.glued or rigid)", TRUTH),
        ("every given(arms.reach)", TRUTH),
        ("largest of arms.reach < least of bolts.edge", TRUTH),
        ("plate.thickness > 0", TRUTH),
        ("0 <= plate.thickness <= 18 mm", TRUTH),
        ("hold_down.limited_by == 'bolt'", TRUTH),
        ("plate.material == hold_down.limited_by", TRUTH),
        ("rigid and not given(plate.material)", TRUTH),
        ("room > 5 degC", TRUTH),
        ("5 degC <= room <= 300 K", TRUTH),
        ("room - 3 K < 300 K", TRUTH),
        ("'birch'", TEXT),
    ],
)
def test_what_an_expression_is(text: str, kind: Kind) -> None:
    assert infer(parse(text), NAMES) == kind


def test_not_without_a_comparison_may_be_required() -> None:
    assert judge(parse("not rigid and not given(tilt)"), NAMES).names == ("rigid", "tilt")


def test_a_condition_may_turn_a_comparison_round() -> None:
    assert compile_condition(parse("not plate.thickness < 18 mm"), NAMES)


def test_a_requirement_knows_its_terms() -> None:
    text = "0 < plate.thickness <= 18 mm and rigid or every arms.reach >= 2 m"
    requirement = judge(parse(text), NAMES)
    assert requirement.names == ("plate.thickness", "rigid", "arms.reach")
    assert [text[slice(*term.span)] for term in requirement.terms] == [
        "0 < plate.thickness",
        "plate.thickness <= 18 mm",
        "rigid",
        "arms.reach >= 2 m",
    ]
    assert [term.dimension for term in requirement.terms] == [LENGTH, LENGTH, None, LENGTH]
