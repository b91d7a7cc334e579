"""The catalogue of refusals: the whole message of each, and where it points."""

import pickle

import pytest

from reviewer.notation.dimension import ANGLE, FORCE, LENGTH, MASS, MOMENT, NUMBER, PRESSURE
from reviewer.notation.quantity import QuantityError, read_quantity
from reviewer.notation.units import UNITS

UNITS_LISTED = "expected a unit such as mm, in, kg, N, lbf, MPa, deg"
LENGTHS_LISTED = "expected a unit such as mm, um, cm, m, km, in, ft, yd"
ONE_NUMBER = "expected digits with at most one point, or one fraction"
POINT = "expected a point as the decimal mark"
TOLERANCE = "expected a tolerance such as ± 0.3 mm or +0.2/-0.5 mm"
DUE = "expected a number with its unit, such as 18 mm"
DECLARE = "or declare lengths: mm at the top of the file"

REFUSED = [
    # text, the part pointed at, message
    # a bare number where nothing is declared
    (
        "18",
        "18",
        f"the number has no unit: found 18, {DUE}; write 18 mm, if that is its unit, {DECLARE}",
    ),
    (
        *("18 ± 0.3", "18"),
        f"the number has no unit: found 18, {DUE}; write 18 mm, if that is its unit, {DECLARE}",
    ),
    (
        *("18 ± 0.3 mm", "18 ± 0.3 mm"),
        "the value and its tolerance do not both have a unit: found 18 ± 0.3 mm, expected a unit "
        "after each, or one after brackets around both; write (18 ± 0.3) mm",
    ),
    (
        *("18 mm ± 0.3", "18 mm ± 0.3"),
        "the value and its tolerance do not both have a unit: found 18 mm ± 0.3, expected a unit "
        "after each, or one after brackets around both; write 18 mm ± 0.3 mm",
    ),
    (
        *("18 mm +0.2 mm/-0.5", "18 mm +0.2 mm/-0.5"),
        "the value and its tolerance do not both have a unit: found 18 mm +0.2 mm/-0.5, expected "
        "a unit after each, or one after brackets around both; write 18 mm +0.2 mm/-0.5 mm",
    ),
    # unknown units
    ("18 mn", "mn", f"the unit is not known: found mn, {UNITS_LISTED}"),
    ("9 Mpa", "Mpa", f"the unit is not known: found Mpa, {UNITS_LISTED}; write 9 MPa"),
    ("18 inches", "inches", f"the unit is not known: found inches, {UNITS_LISTED}; write 18 in"),
    ("18inches", "inches", f"the unit is not known: found inches, {UNITS_LISTED}; write 18 in"),
    ("20 lbs", "lbs", f"the unit is not known: found lbs, {UNITS_LISTED}; write 20 lb"),
    ("60°", "°", f"the unit is not known: found °, {UNITS_LISTED}; write 60 deg"),
    ("23 °C", "°C", f"the unit is not known: found °C, {UNITS_LISTED}; write 23 degC"),
    ("15 µm", "µm", f"the unit is not known: found µm, {UNITS_LISTED}; write 15 um"),
    ("12 Nm", "Nm", f"the unit is not known: found Nm, {UNITS_LISTED}; write 12 N m"),
    ("5 N/Mm", "Mm", f"the unit is not known: found Mm, {UNITS_LISTED}; write 5 N/mm"),
    ("18 mm thick", "thick", f"the unit is not known: found thick, {UNITS_LISTED}"),
    ("18 mm ± 3 mn", "mn", f"the unit is not known: found mn, {UNITS_LISTED}"),
    (
        *("5 N/mm m", "N/mm m"),
        "a product after / can be read in two ways; write / before each unit divided by: "
        f"found N/mm m, {UNITS_LISTED}",
    ),
    (
        *("5 W/m/degC", "degC"),
        "the unit has a zero of its own and cannot be multiplied or divided: found degC, "
        f"{UNITS_LISTED}; write 5 W/m/K",
    ),
    ("5 m^9", "m^9", f"a power must be from 1 to 6, or from -1 to -6: found m^9, {UNITS_LISTED}"),
    # the trap
    (
        *("3 mil", "mil"),
        "mil may be a thousandth of an inch or a millimetre: found mil, expected in or mm; "
        "write 0.003 in or 3 mm",
    ),
    (
        *("2.5 mils", "mils"),
        "mil may be a thousandth of an inch or a millimetre: found mils, expected in or mm; "
        "write 0.0025 in or 2.5 mm",
    ),
    ("3 thou", "thou", "the unit is not known: found thou, expected in or mm; write 0.003 in"),
    # decimal commas
    ("1,5 mm", "1,5", f"a comma stands in the number: found 1,5, {POINT}; write 1.5 mm"),
    (
        *("18 mm ± 0,3 mm", "0,3"),
        f"a comma stands in the number: found 0,3, {POINT}; write 18 mm ± 0.3 mm",
    ),
    (
        *("1,250 mm", "1,250"),
        f"a comma stands in the number: found 1,250, {POINT}; write 1250 mm or 1.250 mm",
    ),
    (
        *("1,250,000 N", "1,250,000"),
        f"a comma stands in the number: found 1,250,000, {POINT}; write 1250000 N",
    ),
    ("1.000,5 mm", "1.000,5", f"a comma stands in the number: found 1.000,5, {POINT}"),
    # spaces between digits
    (
        *("1 000 mm", "1 000"),
        "spaces stand between digits: found 1 000, expected digits without spaces; write 1000 mm",
    ),
    (
        *("1 250 000 N", "1 250 000"),
        "spaces stand between digits: found 1 250 000, expected digits without spaces; "
        "write 1250000 N",
    ),
    (
        *("1 2 mm", "1 2 mm"),
        "spaces stand between digits: found 1 2 mm, expected digits without spaces",
    ),
    # numbers that are none
    (
        "",
        "",
        f"the quantity is empty: found nothing, {DUE}; write the quantity, or leave the key out",
    ),
    (
        *(" \t ", " \t "),
        f"the quantity is empty: found nothing, {DUE}; write the quantity, or leave the key out",
    ),
    ("mm", "mm", f"a number is missing here: found mm, {DUE}"),
    ("18 mm ±", "", f"a number is missing here: found nothing, {DUE}"),
    ("--3 mm", "-3 mm", f"a number is missing here: found -3 mm, {DUE}"),
    ("M8x40", "M8x40", f"a number is missing here: found M8x40, {DUE}"),
    (
        *(".inf", ".inf"),
        f"the number is not finite: found .inf, {DUE}; write the number, or leave the key out",
    ),
    (
        *("-Infinity mm", "Infinity"),
        f"the number is not finite: found Infinity, {DUE}; write the number, or leave the key out",
    ),
    (
        *("NaN mm", "NaN"),
        f"the number is not finite: found NaN, {DUE}; write the number, or leave the key out",
    ),
    (
        *("1" * 41 + " mm", "1" * 41),
        f"the number is too long: found {'1' * 41}, expected at most 40 characters; round it",
    ),
    (
        *("1e999 mm", "1e999"),
        "the number is too large or too small: found 1e999, expected an exponent from -100 to 100",
    ),
    (
        *("1e100 GPa^6 GPa^6 GPa^6 GPa^6", "1e100 GPa^6 GPa^6 GPa^6 GPa^6"),
        "the number is too large or too small: found 1e100 GPa^6 GPa^6 GPa^6 GPa^6, expected a "
        "number that a computer holds",
    ),
    (
        *("x" * 201, "x" * 201),
        f"the text is too long for a quantity: found {'x' * 39}…, expected at most 200 characters; "
        "put what is no quantity in note:",
    ),
    (
        "1.2.3 mm",
        "1.2.3 mm",
        f"the number is not written as one number: found 1.2.3 mm, {ONE_NUMBER}",
    ),
    (
        "1_000 mm",
        "1_000 mm",
        f"the number is not written as one number: found 1_000 mm, {ONE_NUMBER}",
    ),
    (
        "1.5/2 in",
        "1.5/2 in",
        f"the number is not written as one number: found 1.5/2 in, {ONE_NUMBER}",
    ),
    (
        "3/4/5 in",
        "3/4/5 in",
        f"the number is not written as one number: found 3/4/5 in, {ONE_NUMBER}",
    ),
    # fractions
    (
        *("1/0 in", "1/0"),
        "the fraction divides by zero: found 1/0, expected a fraction such as 3/4; "
        "write another number than 0 after the /",
    ),
    (
        *("1 1/0 in", "1 1/0"),
        "the fraction divides by zero: found 1 1/0, expected a fraction such as 3/4; "
        "write another number than 0 after the /",
    ),
    (
        *("1 3/2 in", "1 3/2"),
        "the fraction after a whole number is not less than one: found 1 3/2, expected a whole "
        "number and a fraction, such as 1 1/2",
    ),
    (
        *("1.5 1/2 in", "1.5 1/2"),
        "a fraction stands after a number that is not whole: found 1.5 1/2, expected a whole "
        "number, then a fraction",
    ),
    # digits and characters of other kinds
    (
        *("१८ mm", "१"),
        "a digit is not one of 0 to 9: found १, expected the digits 0 to 9; write 18 mm",
    ),
    (
        *("3½ in", "½"),
        "a digit is not one of 0 to 9: found ½, expected the digits 0 to 9; write 3 1/2 in",
    ),
    ("5² mm", "²", "a digit is not one of 0 to 9: found ², expected the digits 0 to 9"),
    (
        *("18 \x1b[2Jmm", "\x1b"),
        r"a character does not print: found \x1b, expected letters, digits and marks; take it out",
    ),
    (
        *("18 \u202emm", "\u202e"),
        r"a character does not print: found \u202e, "
        "expected letters, digits and marks; take it out",
    ),
    # tolerances
    (
        *("18 mm ± -0.3 mm", "± -0.3 mm"),
        f"the tolerance is negative: found ± -0.3 mm, {TOLERANCE}; write ± 0.3 mm",
    ),
    (
        *("18 mm +/- -0.3 mm", "+/- -0.3 mm"),
        f"the tolerance is negative: found +/- -0.3 mm, {TOLERANCE}; write ± 0.3 mm",
    ),
    (
        *("18 mm ± +0.3 mm", "± +0.3 mm"),
        f"a sign follows ±: found ± +0.3 mm, {TOLERANCE}; write ± 0.3 mm",
    ),
    (
        *("18 mm -0.5/+0.2 mm", "-0.5/+0.2 mm"),
        f"the lower limit stands before the upper: found -0.5/+0.2 mm, {TOLERANCE}; "
        "write +0.2/-0.5 mm",
    ),
    (
        *("18 mm -0.5 mm", "-0.5 mm"),
        f"the upper limit of the tolerance is missing: found -0.5 mm, {TOLERANCE}; "
        "write +0/-0.5 mm",
    ),
    (
        *("18 mm +0.2 -0.5 mm", "+0.2 -0.5 mm"),
        f"no / stands between the limits: found +0.2 -0.5 mm, {TOLERANCE}; write +0.2/-0.5 mm",
    ),
    (
        *("18 mm +0.2 mm", "+0.2 mm"),
        f"the lower limit of the tolerance is missing: found +0.2 mm, {TOLERANCE}; "
        "write /-0 after the upper limit",
    ),
    (
        *("18 mm +0.5/+0.2 mm", "+0.5/+0.2 mm"),
        f"both limits lie above the value: found +0.5/+0.2 mm, {TOLERANCE}; "
        "write a value between its limits",
    ),
    (
        *("18 mm +-0.3 mm", "+-0.3 mm"),
        f"two signs stand together: found +-0.3 mm, {TOLERANCE}; write ± or +/- for both ways",
    ),
    (
        *("18 mm ± 0.3 kg", "0.3 kg"),
        "the value is a length, its tolerance a mass: found 0.3 kg, expected a length, as the "
        "value is; write the tolerance in mm",
    ),
    (
        *("2 kN/mm ± 30 %", "30 %"),
        "the value is a stiffness or line load, its tolerance a plain number: found 30 %, "
        "expected a stiffness or line load, as the value is; write the tolerance in kN/mm",
    ),
    (
        *("18 mm uniform", " uniform"),
        "uniform says how a tolerance is spread: found uniform, expected a tolerance; "
        "write 18 mm ± its limit uniform, or drop the word",
    ),
    # brackets
    *(
        (
            *(text, text),
            f"brackets hold a value and its tolerance, and their unit follows: found {text}, "
            "expected one unit, after the brackets; write it as (18 ± 0.3) mm, or without brackets",
        )
        for text in ("(18) mm", "(18 mm ± 0.3 mm)", "(18 ± 0.3", "(18 ± 0.3 mm) mm")
    ),
    # more than one number and unit
    (
        *("5 ft 6 kg", "5 ft 6 kg"),
        "ft and kg do not make one quantity: found 5 ft 6 kg, expected one number and unit, or "
        "feet and inches; write one number with one unit",
    ),
    (
        *("6 in 5 ft", "6 in 5 ft"),
        "in and ft do not make one quantity: found 6 in 5 ft, expected one number and unit, or "
        "feet and inches; write one number with one unit",
    ),
    (
        *("1'000 mm", "1'000 mm"),
        "ft and mm do not make one quantity: found 1'000 mm, expected one number and unit, or "
        "feet and inches; write one number with one unit",
    ),
    (
        *("5 ft 6", "5 ft 6"),
        "the second number has no unit: found 5 ft 6, expected a unit after each number; "
        "write 5 ft 6 in",
    ),
    (
        *("18 mm 5", "18 mm 5"),
        "the second number has no unit: found 18 mm 5, expected a unit after each number; "
        "write one number with one unit",
    ),
    (
        *("5 ft 14 in", "5 ft 14 in"),
        "the two parts do not fit each other; together they are 74 in: found 5 ft 14 in, expected "
        "whole ft, then less than one ft; write 74 in",
    ),
    (
        *("5.5 ft 6 in", "5.5 ft 6 in"),
        "the two parts do not fit each other; together they are 72 in: found 5.5 ft 6 in, "
        "expected whole ft, then less than one ft; write 72 in",
    ),
    (
        *("5' 6''", "''"),
        "two marks of feet stand together: found '', expected one mark, ' or \"; "
        'write " for inches',
    ),
    # text that follows
    (
        *("18 mm; 20 mm", "; 20 mm"),
        "text follows the quantity: found ; 20 mm, expected nothing after the unit, but a "
        "tolerance; write 18 mm alone",
    ),
    (
        *("18 mm ± 1 mm ± 2 mm", "± 2 mm"),
        "text follows the quantity: found ± 2 mm, expected nothing after the unit, but a "
        "tolerance; write 18 mm ± 1 mm alone",
    ),
    (
        *("9**9**9 mm", "**9**9 mm"),
        "text follows the quantity: found **9**9 mm, expected nothing after the unit, but a "
        "tolerance; write 9 alone",
    ),
    (
        *("-300 degC", "-300 degC"),
        "the temperature is below absolute zero: found -300 degC, expected at least 0 K; "
        "write a higher temperature, or a narrower tolerance",
    ),
]


@pytest.mark.parametrize(("text", "part", "message"), REFUSED)
def test_error_of_a_quantity(text, part, message):
    with pytest.raises(QuantityError) as caught:
        read_quantity(text)
    error = caught.value
    assert str(error) == message
    assert text[slice(*error.span)] == part
    assert str(pickle.loads(pickle.dumps(error))) == message


DECLARED = [
    # text, dimension that is due, part pointed at, message
    (
        *("18", FORCE, "18"),
        "the number has no unit: found 18, expected a force, such as 400 N; "
        "write 18 N, if that is its unit",
    ),
    (
        *("60", ANGLE, "60"),
        "the number has no unit: found 60, expected an angle, such as 60 deg; "
        "write 60 deg, if that is its unit",
    ),
    (
        *("18 ± 0.3 in", LENGTH, "18 ± 0.3 in"),
        "the value and its tolerance do not both have a unit: found 18 ± 0.3 in, expected a unit "
        "after each, or one after brackets around both; write (18 ± 0.3) in",
    ),
    (
        *("3/4 in ± 1", LENGTH, "3/4 in ± 1"),
        "the value and its tolerance do not both have a unit: found 3/4 in ± 1, expected a unit "
        "after each, or one after brackets around both; write 3/4 in ± 1 in",
    ),
    (
        *("20 kg", LENGTH, "20 kg"),
        "a mass stands where a length is due: found 20 kg, expected a length, such as 18 mm; "
        "write a length with its unit",
    ),
    (
        *("20 kg", FORCE, "20 kg"),
        "a mass stands where a force is due: found 20 kg, expected a force, such as 400 N; "
        "write 20 kgf",
    ),
    (
        *("90 lb ± 5 lb", FORCE, "90 lb"),
        "a mass stands where a force is due: found 90 lb, expected a force, such as 400 N; "
        "write 90 lbf",
    ),
    (
        *("90 lbf", MASS, "90 lbf"),
        "a force stands where a mass is due: found 90 lbf, expected a mass, such as 20 kg; "
        "write 90 lb",
    ),
    (
        *("60 deg", NUMBER, "60 deg"),
        "an angle stands where a plain number is due: found 60 deg, expected a plain number, such "
        "as 0.3 or 30 %; write the number without a unit, or with %",
    ),
    (
        *("12 %", ANGLE, "12 %"),
        "a plain number stands where an angle is due: found 12 %, expected an angle, such as "
        "60 deg; write an angle with its unit",
    ),
    (
        *("400 N", PRESSURE * LENGTH * LENGTH * LENGTH * LENGTH, "400 N"),
        "a force stands where a quantity in N m^2 is due: found 400 N, expected a quantity in "
        "N m^2, such as 1 N m^2; write a quantity in N m^2 with its unit",
    ),
    (
        *("", FORCE, ""),
        "the quantity is empty: found nothing, expected a force, such as 400 N; write the "
        "quantity, or leave the key out",
    ),
    ("18 mn", LENGTH, "mn", f"the unit is not known: found mn, {LENGTHS_LISTED}"),
    (
        *("18 milimetres", LENGTH, "milimetres"),
        f"the unit is not known: found milimetres, {LENGTHS_LISTED}; write 18 mm",
    ),
    (
        *("90 lbs", FORCE, "lbs"),
        "the unit is not known: found lbs, expected a unit such as N, daN, kN, kgf, ozf, lbf, kip; "
        "write 90 lbf",
    ),
    (
        *("12 Nm", MOMENT, "Nm"),
        "the unit is not known: found Nm, expected a unit such as N m, J, kJ; write 12 N m",
    ),
]


@pytest.mark.parametrize(("text", "expected", "part", "message"), DECLARED)
def test_error_where_a_dimension_is_due_and_lengths_are_declared(text, expected, part, message):
    with pytest.raises(QuantityError) as caught:
        read_quantity(text, expected=expected, lengths=UNITS["mm"])
    assert str(caught.value) == message
    assert text[slice(*caught.value.span)] == part


def test_without_a_declaration_a_bare_length_may_be_declared():
    with pytest.raises(QuantityError) as caught:
        read_quantity("18", expected=LENGTH)
    assert str(caught.value) == (
        "the number has no unit: found 18, expected a length, such as 18 mm; write 18 mm, if that "
        "is its unit, or declare lengths: mm at the top of the file"
    )


def test_the_parts_of_an_error():
    with pytest.raises(QuantityError) as caught:
        read_quantity("1,5 mm")
    error = caught.value
    assert isinstance(error, ValueError)
    assert error.what == "a comma stands in the number"
    assert error.found == "1,5"
    assert error.expected == "a point as the decimal mark"
    assert error.mend == "write 1.5 mm"
    assert error.span == (0, 3)


@pytest.mark.parametrize(
    "text",
    [
        *("9 Mpa", "18 inches", "60°", "12 Nm", "1,5 mm", "1 000 mm", "१८ mm", "3½ in", "5 ft 6"),
        *("5ft6", "5 ft 14 in", "18 ± 0.3 mm", "18 mm ± 0.3", "5 W/m/degC"),
    ],
)
def test_what_a_mend_proposes_can_be_read(text):
    with pytest.raises(QuantityError) as caught:
        read_quantity(text)
    read_quantity(caught.value.mend.removeprefix("write "))
