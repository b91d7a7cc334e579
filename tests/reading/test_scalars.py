"""What a plain scalar means, against the YAML 1.2.2 specification and not against YAML 1.1."""

from math import inf, isinf, isnan, nan

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from reviewer.notation.problem import Place
from reviewer.reading.scalars import is_null, resolve
from reviewer.reading.tree import Scalar

HERE = Place("bench.yaml", 1, 1, 2)
EXAMPLE = "YAML 1.2.2 (2021), example 10.9, core tag resolution [seen]"
TABLE = "YAML 1.2.2 (2021), 10.3.2, table of regular expressions [memory]"
OLD = "text or decimal in YAML 1.2.2, 10.3.2; a boolean, octal or sexagesimal in YAML 1.1 [memory]"


def same(found, expected):
    """Equal in type too, and not-a-number equal to itself."""
    if isinstance(expected, float) and isnan(expected):
        return isinstance(found, float) and isnan(found)
    return type(found) is type(expected) and found == expected


@pytest.mark.parametrize(
    ("text", "expected", "source"),
    [
        ("null", None, EXAMPLE),
        ("", None, EXAMPLE),
        ("true", True, EXAMPLE),
        ("True", True, EXAMPLE),
        ("false", False, EXAMPLE),
        ("FALSE", False, EXAMPLE),
        ("0", 0, EXAMPLE),
        ("0o7", 7, EXAMPLE),
        ("0x3A", 58, EXAMPLE),
        ("-19", -19, EXAMPLE),
        ("0.", 0.0, EXAMPLE),
        ("-0.0", -0.0, EXAMPLE),
        (".5", 0.5, EXAMPLE),
        ("+12e03", 12000.0, EXAMPLE),
        ("-2E+05", -200000.0, EXAMPLE),
        (".inf", inf, EXAMPLE),
        ("-.Inf", -inf, EXAMPLE),
        ("+.INF", inf, EXAMPLE),
        (".NAN", nan, EXAMPLE),
        ("~", None, TABLE),
        ("Null", None, TABLE),
        ("NULL", None, TABLE),
        ("TRUE", True, TABLE),
        ("False", False, TABLE),
        ("+12", 12, TABLE),
        ("-0", 0, TABLE),
        (".nan", nan, TABLE),
        (".NaN", nan, TABLE),
        ("nUll", "nUll", TABLE),
        ("tRUE", "tRUE", TABLE),
        ("0X1F", "0X1F", TABLE),
        ("0o8", "0o8", TABLE),
        ("-0x1", "-0x1", TABLE),
        (".", ".", TABLE),
        ("1e", "1e", TABLE),
        ("e3", "e3", TABLE),
        (".Nan", ".Nan", TABLE),
        ("inf", "inf", TABLE),
        ("1 ", "1 ", TABLE),
        ("1\n", "1\n", TABLE),
        ("١٢", "١٢", TABLE),  # Arabic-Indic digits: only ASCII digits count
        ("on", "on", OLD),
        ("off", "off", OLD),
        ("yes", "yes", OLD),
        ("no", "no", OLD),
        ("Y", "Y", OLD),
        ("012", 12, OLD),
        ("-012", -12, OLD),
        ("1:30", "1:30", OLD),
        ("1_000", "1_000", OLD),
        ("0b11", "0b11", OLD),
        ("2026-03-02", "2026-03-02", OLD),
        ("<<", "<<", OLD),
        ("=", "=", OLD),
    ],
)
def test_core_schema(text, expected, source):
    assert same(resolve(Scalar(text, False, HERE)), expected), source


@pytest.mark.parametrize("text", ["null", "", "~", "true", "12", "0x1F", "1.5", ".inf"])
def test_quoted_text_is_text(text):
    assert resolve(Scalar(text, True, HERE)) == text
    assert not is_null(Scalar(text, True, HERE))


@pytest.mark.parametrize(("text", "null"), [("", True), ("~", True), ("nil", False), ("0", False)])
def test_null(text, null):
    assert is_null(Scalar(text, False, HERE)) is null


@pytest.mark.parametrize("text", ["9" * 5000, "-" + "9" * 400, "0x" + "f" * 5000, "0o" + "7" * 400])
def test_an_integer_beyond_every_float_is_an_infinity(text):
    value = resolve(Scalar(text, False, HERE))
    assert isinstance(value, float)
    assert isinf(value)
    assert (value < 0) == text.startswith("-")


@pytest.mark.parametrize("text", ["9" * 308, "0x" + "f" * 255, "0o" + "7" * 341])
def test_the_longest_integers_are_integers_that_a_float_holds(text):
    value = resolve(Scalar(text, False, HERE))
    assert isinstance(value, int)
    assert not isinf(float(value))


def test_leading_zeros_do_not_make_a_number_long():
    assert resolve(Scalar("0" * 400 + "7", False, HERE)) == 7


@given(st.text(max_size=12))
def test_any_text_has_a_value(text):
    resolve(Scalar(text, False, HERE))


@given(st.integers(-(10**30), 10**30))
def test_integers_as_python_writes_them(number):
    assert same(resolve(Scalar(str(number), False, HERE)), number)


@given(st.floats(allow_nan=False, allow_infinity=False))
def test_floats_as_pyyaml_writes_them(number):
    text = yaml.safe_dump(number).split("\n")[0]
    assert same(resolve(Scalar(text, False, HERE)), number)
