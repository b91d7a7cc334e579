"""The whole message, with its caret, where the values of an expression do not fit together."""

import pytest

from reviewer.judging.compiled import compile_number, judge
from reviewer.judging.dimensions import check_condition
from reviewer.judging.kinds import TEXT, TRUTH, Collection, Names, Texts
from reviewer.judging.language import parse
from reviewer.judging.language_error import LanguageError
from reviewer.notation.dimension import ANGLE, FORCE, LENGTH, MASS, NUMBER, TEMPERATURE

NAMES = Names(
    {
        "plate.thickness": LENGTH,
        "plate.material": TEXT,
        "hold_down.peak_load": FORCE,
        "hold_down.limited_by": Texts(("bearing", "bolt", "track")),
        "tray.mass": MASS,
        "tilt": ANGLE,
        "slope": NUMBER,
        "room": TEMPERATURE,
        "rigid": TRUTH,
        "arms.reach": Collection(LENGTH, "arms"),
        "bolts.edge": Collection(LENGTH, "bolts"),
    }
)


MISFITS = [
    (
        "plate.thicknes <= 18 mm",
        """\
expression:1:1: the name is not known
    found plate.thicknes
    expected the name of a quantity
    mend: write plate.thickness
    plate.thicknes <= 18 mm
    ^^^^^^^^^^^^^^""",
    ),
    (
        "given(plate.thicknes)",
        """\
expression:1:7: the name is not known
    found plate.thicknes
    expected the name of a quantity
    mend: write plate.thickness
    given(plate.thicknes)
          ^^^^^^^^^^^^^^""",
    ),
    (
        "plate.thickness <= hold_down.peak_load",
        """\
expression:1:1: compares a length with a force
    found plate.thickness, a length, and hold_down.peak_load, a force
    expected two values of one dimension
    plate.thickness <= hold_down.peak_load
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^""",
    ),
    (
        "plate.thickness >= 18",
        """\
expression:1:1: compares a length with a plain number
    found plate.thickness, a length, and 18, a plain number
    expected two values of one dimension
    mend: write 18 mm
    plate.thickness >= 18
    ^^^^^^^^^^^^^^^^^^^^^""",
    ),
    (
        "2 * (3 mm + 4 N) < 2 m",
        """\
expression:1:6: adds a force to a length
    found 3 mm, a length, and 4 N, a force
    expected two values of one dimension
    2 * (3 mm + 4 N) < 2 m
         ^^^^^^^^^^""",
    ),
    (
        "plate.thickness - tilt < 2 m",
        """\
expression:1:1: subtracts an angle from a length
    found plate.thickness, a length, and tilt, an angle
    expected two values of one dimension
    plate.thickness - tilt < 2 m
    ^^^^^^^^^^^^^^^^^^^^^^""",
    ),
    (
        "tray.mass <= 30 N",
        """\
expression:1:1: compares a mass with a force
    found tray.mass, a mass, and 30 N, a force
    expected two values of one dimension
    mend: multiply the mass by 9.80665 m/s^2 for its weight
    tray.mass <= 30 N
    ^^^^^^^^^^^^^^^^^""",
    ),
    (
        "tilt < 0.1",
        """\
expression:1:1: compares an angle with a plain number
    found tilt, an angle, and 0.1, a plain number
    expected two values of one dimension
    mend: write 0.1 deg
    tilt < 0.1
    ^^^^^^^^^^""",
    ),
    (
        "slope < tilt",
        """\
expression:1:1: compares a plain number with an angle
    found slope, a plain number, and tilt, an angle
    expected two values of one dimension
    mend: multiply the plain number by (1 rad)
    slope < tilt
    ^^^^^^^^^^^^""",
    ),
    (
        "sin(30) < 1",
        """\
expression:1:5: sin is taken of a plain number
    found 30, a plain number
    expected an angle
    mend: write 30 deg
    sin(30) < 1
        ^^""",
    ),
    (
        "acos(tilt) < tilt",
        """\
expression:1:6: acos is taken of an angle
    found tilt, an angle
    expected a plain number
    mend: divide the angle by (1 rad)
    acos(tilt) < tilt
         ^^^^""",
    ),
    (
        "max(0, plate.thickness, 3 N) < 2 m",
        """\
expression:1:1: compares a length with a force
    found plate.thickness, a length, and 3 N, a force
    expected two values of one dimension
    max(0, plate.thickness, 3 N) < 2 m
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^""",
    ),
    (
        "room < 0",
        """\
expression:1:1: compares a temperature with a plain number
    found room, a temperature, and 0, a plain number
    expected two values of one dimension
    mend: write 0 degC
    room < 0
    ^^^^^^^^""",
    ),
    (
        "room + 5 degC < 300 K",
        """\
expression:1:8: a point on a scale can be compared, but not reckoned with
    found 5 degC
    expected a difference
    mend: write 5 K for a difference, or 278.15 K for the point
    room + 5 degC < 300 K
           ^^^^^^""",
    ),
    (
        "room - 290 K < 5 degC",
        """\
expression:1:16: a point on a scale can be compared, but not reckoned with
    found 5 degC
    expected a difference
    mend: write 5 K for a difference, or 278.15 K for the point
    room - 290 K < 5 degC
                   ^^^^^^""",
    ),
    (
        "arms.reach > 5 mm",
        """\
expression:1:1: the condition has an answer for each of arms
    found arms.reach > 5 mm
    expected one answer
    mend: write every before it, or largest of, least of or sum of before the value
    arms.reach > 5 mm
    ^^^^^^^^^^^^^^^^^""",
    ),
    (
        "every arms.reach > bolts.edge",
        """\
expression:1:7: two collections are joined member by member
    found arms and bolts
    expected values of one collection
    mend: take the largest, the least or the sum of one of them first
    every arms.reach > bolts.edge
          ^^^^^^^^^^^^^^^^^^^^^^^""",
    ),
    (
        "every (arms.reach > 1 m or bolts.edge > 1 m)",
        """\
expression:1:8: two collections are joined member by member
    found arms and bolts
    expected values of one collection
    mend: take the largest, the least or the sum of one of them first
    every (arms.reach > 1 m or bolts.edge > 1 m)
           ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^""",
    ),
    (
        "largest of plate.thickness > 5 mm",
        """\
expression:1:12: 'largest of' is taken of one value
    found plate.thickness
    expected a value of each member of a collection
    mend: leave largest of out, or name the collection in the rule's for
    largest of plate.thickness > 5 mm
               ^^^^^^^^^^^^^^^""",
    ),
    (
        "every rigid",
        """\
expression:1:7: 'every' is taken of one value
    found rigid
    expected a value of each member of a collection
    mend: leave every out, or name the collection in the rule's for
    every rigid
          ^^^^^""",
    ),
    (
        'hold_down.limited_by == "baering"',
        """\
expression:1:25: the text is none that the name can have
    found baering
    expected one of bearing, bolt, track
    mend: write bearing
    hold_down.limited_by == "baering"
                            ^^^^^^^^^""",
    ),
    (
        'hold_down.limited_by in ["bolt", "nut"]',
        """\
expression:1:34: the text is none that the name can have
    found nut
    expected one of bearing, bolt, track
    hold_down.limited_by in ["bolt", "nut"]
                                     ^^^^^""",
    ),
    (
        'plate.material < "beech"',
        """\
expression:1:1: a text is neither more nor less
    found <
    expected == or !=
    mend: write ==
    plate.material < "beech"
    ^^^^^^^^^^^^^^^^^^^^^^^^""",
    ),
    (
        "plate.material == 18 mm",
        """\
expression:1:1: compares a text with a length
    found plate.material == 18 mm
    expected two texts, as in material == "beech"
    plate.material == 18 mm
    ^^^^^^^^^^^^^^^^^^^^^^^""",
    ),
    (
        "tilt in ['a']",
        """\
expression:1:1: looks an angle up in a list of texts
    found tilt, an angle
    expected a text
    tilt in ['a']
    ^^^^""",
    ),
    (
        "rigid and plate.thickness",
        """\
expression:1:11: a length stands where a condition is due
    found plate.thickness
    expected a comparison, or another condition
    mend: compare it with its limit
    rigid and plate.thickness
              ^^^^^^^^^^^^^^^""",
    ),
    (
        "(rigid) + 1 < 2",
        """\
expression:1:2: a condition stands where a number is due
    found rigid
    expected a number
    (rigid) + 1 < 2
     ^^^^^""",
    ),
    (
        "table(plate.thickness, [1 m: 1 N, 1 m: 3 N]) < 5 N",
        """\
expression:1:35: the table's points do not rise
    found 1 m behind 1 m
    expected each point above the one before
    mend: sort the points, and give each once
    table(plate.thickness, [1 m: 1 N, 1 m: 3 N]) < 5 N
                                      ^^^""",
    ),
    (
        "table(plate.thickness, [1 m: 1 N]) < 5 N",
        """\
expression:1:1: the table has one point
    found 1 m
    expected at least two, between which to look up
    table(plate.thickness, [1 m: 1 N]) < 5 N
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^""",
    ),
    (
        "table(plate.thickness, [1 s: 1 N, 2 s: 2 N]) < 5 N",
        """\
expression:1:1: compares a length with a time
    found plate.thickness, a length, and 1 s, a time
    expected two values of one dimension
    table(plate.thickness, [1 s: 1 N, 2 s: 2 N]) < 5 N
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^""",
    ),
]


@pytest.mark.parametrize(("text", "message"), MISFITS, ids=[text for text, _ in MISFITS])
def test_error_of_dimensions(text: str, message: str) -> None:
    with pytest.raises(LanguageError) as caught:
        check_condition(parse(text), NAMES)
    assert caught.value.with_caret(text) == message


def test_error_of_turning_a_comparison_round_in_a_requirement() -> None:
    text = "rigid or not plate.thickness < 18 mm"
    with pytest.raises(LanguageError) as caught:
        judge(parse(text), NAMES)
    expected = """\
expression:1:10: a requirement does not turn a comparison round by not
    found not plate.thickness < 18 mm
    expected the opposite comparison
    mend: write plate.thickness >= 18 mm
    rigid or not plate.thickness < 18 mm
             ^^^^^^^^^^^^^^^^^^^^^^^^^^^"""
    assert caught.value.with_caret(text) == expected


def test_error_of_a_number_that_is_none() -> None:
    with pytest.raises(LanguageError) as caught:
        compile_number(parse("plate.thickness < 18 mm"), NAMES)
    assert caught.value.what == "a condition stands where a number is due"
