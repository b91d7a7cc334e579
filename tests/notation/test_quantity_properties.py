"""Random forms against exact fractions, and random texts that may only be read or refused."""

import sys
from fractions import Fraction

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from reviewer.notation.dimension import FORCE, LENGTH, NUMBER
from reviewer.notation.quantity import QuantityError, read_quantity
from reviewer.notation.units import UNITS, UnknownUnit, parse_unit

FIXED = settings(derandomize=True, deadline=None, max_examples=400)

# Exact by definition (SI Brochure, 9th edition; NIST SP 811, appendix B.8).
FACTORS = {
    "mm": Fraction(1, 1000),
    "cm": Fraction(1, 100),
    "m": Fraction(1),
    "in": Fraction(254, 10000),
    "ft": Fraction(3048, 10000),
    "N": Fraction(1),
    "kN": Fraction(1000),
    "kg": Fraction(1),
    "lb": Fraction(45359237, 10**8),
    "lbf": Fraction(45359237, 10**8) * Fraction(980665, 10**5),
    "GPa": Fraction(10**9),
    "kg/m3": Fraction(1),
    "N/mm": Fraction(1000),
    "%": Fraction(1, 100),
}
WHOLE = st.integers(min_value=0, max_value=9999)


@st.composite
def numbers(draw):
    """A number without sign as text, and its value."""
    whole = draw(WHOLE)
    below = draw(st.integers(min_value=2, max_value=128))
    above = draw(st.integers(min_value=1, max_value=below - 1))
    decimals = draw(st.text("0123456789", min_size=1, max_size=12))
    power = draw(st.integers(min_value=-9, max_value=9))
    join = draw(st.sampled_from([" ", "-"]))
    return draw(
        st.sampled_from(
            [
                (f"{whole}", Fraction(whole)),
                (f"{whole}.{decimals}", Fraction(f"{whole}.{decimals}")),
                (f".{decimals}", Fraction(f"0.{decimals}")),
                (f"{whole}e{power}", whole * Fraction(10) ** power),
                (f"{whole}.{decimals}E{power:+d}", Fraction(f"{whole}.{decimals}e{power}")),
                (f"{above}/{below}", Fraction(above, below)),
                (f"{whole}{join}{above}/{below}", whole + Fraction(above, below)),
            ]
        )
    )


SIGNS = st.sampled_from([("", 1), ("+", 1), ("-", -1), ("\u2212", -1)])
GAPS = st.sampled_from(["", " ", "  ", "\u00a0"])
SYMBOLS = st.sampled_from(sorted(FACTORS))


@FIXED
@given(SIGNS, numbers(), GAPS, SYMBOLS)
def test_amounts(sign, number, gap, symbol):
    quantity = read_quantity(f"{sign[0]}{number[0]}{gap}{symbol}")
    assert quantity.value == float(sign[1] * number[1] * FACTORS[symbol])


@FIXED
@given(SIGNS, numbers(), numbers(), numbers(), SYMBOLS, st.sampled_from(["", " uniform"]))
def test_tolerances(sign, number, above, below, symbol, spread):
    factor, value = FACTORS[symbol], sign[1] * number[1]
    nominal = sign[0] + number[0]
    for text, more, less in [
        (f"{nominal} {symbol} ± {above[0]} {symbol}{spread}", above[1], above[1]),
        (f"({nominal} +/- {above[0]}) {symbol}{spread}", above[1], above[1]),
        (f"{nominal} {symbol} +{above[0]}/-{below[0]} {symbol}{spread}", above[1], below[1]),
    ]:
        quantity = read_quantity(text)
        assert quantity.low == float((value - less) * factor)
        assert quantity.value == float(value * factor)
        assert quantity.high == float((value + more) * factor)
        assert quantity.low <= quantity.value <= quantity.high
        assert quantity.spread == (spread.strip() or "normal")


@FIXED
@given(SIGNS, WHOLE, st.integers(0, 11), st.integers(1, 15))
def test_feet_and_inches(sign, feet, inches, sixteenths):
    exact = sign[1] * (12 * feet + inches + Fraction(sixteenths, 16)) * FACTORS["in"]
    for form in ("{}{} ft {} {}/16 in", "{}{}'-{} {}/16\"", "{}{}\u2032 {}-{}/16\u2033"):
        assert read_quantity(form.format(sign[0], feet, inches, sixteenths)).value == float(exact)


@FIXED
@given(SIGNS, numbers(), st.sampled_from(["mm", "in", "m"]))
def test_bare_lengths(sign, number, symbol):
    quantity = read_quantity(sign[0] + number[0], expected=LENGTH, lengths=UNITS[symbol])
    assert quantity.value == float(sign[1] * number[1] * FACTORS[symbol])


PIECES = st.lists(
    st.sampled_from(
        [
            *("1", "0", "12", ".", ",", "/", " ", "-", "+", "±", "+/-", "(", ")", "'", '"', "e9"),
            *("mm", "in", "ft", "kg", "N", "m", "%", "degC", "^", "*", "·", "³", "uniform", "mil"),
            *("\u2032", "\u2212", "½", "\x1b", "\ud800", "\u0663", "inf", "nan", "°", "_", "\n"),
        ]
    ),
    max_size=14,
).map("".join)


@settings(FIXED, max_examples=3000)
@given(
    PIECES | st.text(max_size=60) | st.text(st.characters(), max_size=250),
    st.sampled_from([None, LENGTH, FORCE, NUMBER]),
    st.sampled_from([None, UNITS["mm"], UNITS["in"]]),
)
@example("1e-100 mm^6 mm^6 mm^6 mm^6", None, None)
@example("-0 mm", None, None)
def test_any_text_is_read_or_refused(text, expected, lengths):
    try:
        answer = read_quantity(text, expected=expected, lengths=lengths)
    except QuantityError as error:
        answer = error
    if isinstance(answer, QuantityError):
        start, end = answer.span
        assert 0 <= start <= end <= len(text)
        assert all((answer.what, answer.found, answer.expected))
        assert str(answer).isprintable()
    else:
        assert answer.low <= answer.value <= answer.high < float("inf")
        assert expected in (None, answer.dimension)


@FIXED
@given(PIECES | st.text(max_size=70))
def test_any_text_is_a_unit_or_refused(text):
    try:
        answer = parse_unit(text)
    except UnknownUnit as error:
        answer = error
    if isinstance(answer, UnknownUnit):
        assert 0 <= answer.span[0] <= answer.span[1] <= len(text)
    else:
        assert parse_unit(answer.symbol) == answer


HOSTILE = [
    "9" * 10**6,
    "9" * 200,
    "1e" + "9" * 198,
    "1/" * 100,
    "1 " * 100,
    "(" * 200,
    "±" * 200,
    "+/-" * 66,
    "5 " + "m " * 99,
    "5 " + "m/" * 99,
    "5 " + "m^9" * 66,
    "5 m^" + "9" * 190,
    "5 " + "x" * 190,
    "1," * 100,
    "1'" * 100,
    "5 mm " + " " * 190 + "x",
    "1 mm -" + "0" * 90 + "/" + " " * 90,
    "\ud800" * 200,
    "½" * 200,
]


@pytest.mark.parametrize("text", HOSTILE, ids=lambda text: text[:8].encode("unicode_escape"))
def test_the_work_on_a_hostile_text_is_bounded(text):
    """Count lines of Python, not time: the same on every machine."""
    lines = 0

    def count(frame, event, argument):
        nonlocal lines
        lines += event == "line"
        return count

    before = sys.gettrace()
    sys.settrace(count)
    try:
        read_quantity(text)
    except QuantityError:
        pass
    finally:
        sys.settrace(before)
    assert lines < 20_000
