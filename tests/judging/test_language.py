"""What the language of rules reads."""

from math import pi

import pytest

from reviewer.judging.compiled import compile_number
from reviewer.judging.expression import Arithmetic, Name, Quantity, names, walk
from reviewer.judging.kinds import Names
from reviewer.judging.language import parse
from reviewer.judging.writing import write
from reviewer.notation.dimension import LENGTH, NUMBER, PRESSURE

INCH = 0.0254  # NIST SP 811 (2008), appendix B.8, exact
POUND_FORCE = 4.4482216152605  # NIST SP 811 (2008), appendix B.8, exact


@pytest.mark.parametrize(
    ("text", "value", "source"),
    [
        ("18 mm", 0.018, "SI"),
        ("18mm", 0.018, "SI"),
        ("1.5 kN", 1500.0, "SI"),
        ("2.5e3 N", 2500.0, "SI"),
        ("12 %", 0.12, "ISO 80000-1, 6.5.5"),
        ("60 deg", pi / 3, "SI Brochure, table 8"),
        ("3 N/mm^2", 3e6, "SI"),
        ("3 N/mm2", 3e6, "SI"),
        ("3 N/mm²", 3e6, "SI"),
        ("2 kN/mm", 2e6, "SI"),
        ("4 N m", 4.0, "SI"),
        ("680 kg/m^3", 680.0, "SI"),
        ("23 degC", 296.15, "SI Brochure, 2.3.1"),
        ("-5 degC", 268.15, "SI Brochure, 2.3.1"),
        ("0.75 in", 0.75 * INCH, "NIST SP 811"),
        ("3/4 in", 0.75 * INCH, "NIST SP 811"),
        ("1 1/2 in", 1.5 * INCH, "NIST SP 811"),
        ("(3/4 in)", 0.75 * INCH, "NIST SP 811"),
        ("10 lbf", 10 * POUND_FORCE, "NIST SP 811"),
        ("5 lbf in", 5 * POUND_FORCE * INCH, "NIST SP 811"),
    ],
)
def test_a_quantity_has_its_si_value(text: str, value: float, source: str) -> None:
    literal = parse(text)
    assert isinstance(literal, Quantity)
    assert literal.value == pytest.approx(value, rel=1e-15)


@pytest.mark.parametrize("millimetres", [0.1, 0.3, 7, 12.5, 18, 18.3, 1001, 123456.789])
def test_a_decimal_in_millimetres_is_the_nearest_float(millimetres: float) -> None:
    literal = parse(f"{millimetres} mm")
    assert isinstance(literal, Quantity)
    assert literal.value == millimetres / 1000  # IEEE 754: division rounds to the nearest


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("2 + 3 * 4 - 6 / 2", 2 + 3 * 4 - 6 / 2),
        ("2 - 3 - 4", 2 - 3 - 4),
        ("2 - (3 - 4)", 2 - (3 - 4)),
        ("24 / 4 / 3", 24 / 4 / 3),
        ("24 / 4 * 3", 24 / 4 * 3),
        ("-2^2", -(2**2)),
        ("(-2)^2", (-2) ** 2),
        ("2 * -3 * 4", 2 * -3 * 4),
        ("2 - -3", 2 - -3),
        ("--3", 3),
        ("2^-2", 2**-2),
        ("2 * 3^2", 2 * 3**2),
        ("8^(1/3)", 8 ** (1 / 3)),
        ("4^0.5", 4**0.5),
        ("4^(-3/2)", 4 ** (-3 / 2)),
        ("5^0", 1),
        ("max(1, 2, 3) - min(4, 5)", 3 - 4),
        ("abs(-3) + sqrt(16)", 3 + 4),
    ],
)
def test_operators_bind_as_in_python(text: str, value: float) -> None:
    assert compile_number(parse(text), Names())({}.get) == pytest.approx(value, rel=1e-15)


@pytest.mark.parametrize(
    ("text", "grouped"),
    [
        ("a < 1 and b < 2 or c < 3", "(a < 1 and b < 2) or c < 3"),
        ("a < 1 or b < 2 and c < 3", "a < 1 or (b < 2 and c < 3)"),
        ("not a < 1 and b < 2", "(not (a < 1)) and b < 2"),
        ("every a < 1 and b < 2", "(every (a < 1)) and b < 2"),
        ("not every a < 1", "not (every (a < 1))"),
        ("largest of x + 1 < 2", "((largest of x) + 1) < 2"),
        ("largest of x^2 < 2", "((largest of x)^2) < 2"),
        ("a + b < c * d", "(a + b) < (c * d)"),
        ("not m in ['a', 'b']", "not (m in ['a', 'b'])"),
        ("a / 2 mm", "a / (2 mm)"),
        ("a / 2 N/mm", "a / (2 N/mm)"),
        ("5 N/a", "(5 N) / a"),
        ("5 N / m.x", "(5 N) / m.x"),
        ("5 mm * min(a, b)", "(5 mm) * (min(a, b))"),
        ("5 in in ['a']", "(5 in) in ['a']"),
        ("x - 1/2 in", "x - (1/2 in)"),
        ("a\n  <= b\t* c", "a <= (b * c)"),
    ],
)
def test_what_binds_tighter(text: str, grouped: str) -> None:
    assert parse(text) == parse(grouped)


def test_a_unit_ends_where_a_name_begins() -> None:
    tree = parse("100 N/carry.reach")
    assert isinstance(tree, Arithmetic)
    assert tree.right == Name("carry.reach", (0, 0))


@pytest.mark.parametrize("text", ["18 mm", "x", "'birch plywood'", 'material == "beech"'])
def test_texts_and_names_come_back_as_written(text: str) -> None:
    assert parse(write(parse(text))) == parse(text)


def test_names_come_in_order_with_their_places() -> None:
    text = "b.y < max(a, 2 * c.z) and given(b.y)"
    found = names(parse(text))
    assert [name for name, _ in found] == ["b.y", "a", "c.z", "b.y"]
    assert all(text[start:end] == name for name, (start, end) in found)


def test_every_node_knows_its_place() -> None:
    text = "(a + b) * 2 mm^2 < largest of arms.x and not given(c) or m in ['x']"
    pieces = {text[start:end] for start, end in (node.span for node in walk(parse(text)))}
    assert {"(a + b) * 2 mm^2", "a + b", "2 mm^2", "largest of arms.x", "not given(c)"} <= pieces
    assert {"(a + b) * 2 mm^2 < largest of arms.x", "m in ['x']", "'x'", text} <= pieces


def test_dimensions_of_literals() -> None:
    kinds = [node.dimension for node in walk(parse("18 mm + 3 + 2 MPa")) if type(node) is Quantity]
    assert kinds == [LENGTH, NUMBER, PRESSURE]


def test_zero_is_a_number_in_any_spelling() -> None:
    for text in ("0", "0.0", "0e5", "000"):
        literal = parse(text)
        assert isinstance(literal, Quantity)
        assert literal.value == 0
