"""Ten thousand generated expressions and documents: each is read, or refused with words.

The generator has a seed, so that the same ten thousand are read on every run.
"""

import random
from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

from reviewer.deriving.derived import Derived
from reviewer.judging.builtin import builtin_limits, builtin_packs
from reviewer.judging.in_force import InForce, put_in_force
from reviewer.judging.judge import judge
from reviewer.judging.pack import read_pack
from reviewer.judging.proof import prove_all
from reviewer.notation.problem import Problem, render
from reviewer.parts.registry import KINDS
from reviewer.reading.shop import read_shop
from reviewer.reading.shop_stock import Tables, with_stock
from reviewer.reviewing import review_under

ROOT = Path(__file__).parents[2]
RULE = """\
- rule: gap.x
  when: {when}
  require: {require}
  level: must
  stage: cutting
  says: Said {{most}}.
  because: So.
  source: ours
  proof:
    holds: {{most: 8 mm, least: 1 mm, depth: 9 mm, moves: true, acts: crush, design.service: shop}}
    fails: {{most: 80 mm, least: 1 mm, depth: 9 mm, moves: true, acts: crush, design.service: shop}}
"""
DESIGN = """\
design: Bench
lengths: mm
service: private
parts:
  frame: {kind: base, feet: {count: 4, circle: 800}, height: 600, mass: 30 kg}
  lid: {kind: top, carried_by: frame, material: birch plywood, thickness: 18, diameter: 700}
  slit: {kind: gap, least: 4, most: 1/2 in, depth: 3/4 in, acts: shear}
configurations: {closed: {}, open: {slit.most: 30}}
loads:
  lean: {force: 200 N, on: lid, at: rim, all_round: true}
combinations: {full: {lean: 1.5}, light: {own_weight: 0.9, lean: 1}}
concessions:
  - {rule: gap.fingers, part: slit, by: Ada, why: so, until: 2030-01-01}
"""
ATOMS = [
    *("most", "least", "depth", "moves", "acts", "design.service", "limit.dent", "closing_force"),
    *("0", "1", "9 mm", "1/2 in", "3.5", "2 N", "-1", "1e300", "9 mm ± 1 mm", '"crush"', "'x"),
    *("mostt", "carrier.mass", "design.x", "__class__", "true", "null", "5 kg m/s^2", "20 degC"),
]
JOINTS = [
    *(" + ", " - ", " * ", " / ", "^", " < ", " <= ", " >= ", " > ", " == ", " != ", " and "),
    *(" or ", " in ", ", ", " ", ": "),
]
AROUND = [
    *("({})", "not {}", "-{}", "abs({})", "sqrt({})", "sin({})", "max({}, 1 mm)", "given({})"),
    *("every {}", "largest of {}", "sum of {}", "[{}]", "table({}, [0 mm: 0, 9 mm: 1])", "{}^2"),
    *("{}^(1/2)", "({}", "{})"),
]
SPLINTERS = [
    *(
        ":",
        "{",
        "}",
        "[",
        "]",
        ",",
        "- ",
        "\n",
        "  ",
        "'",
        '"',
        "#",
        "&a ",
        "*a",
        "!!str ",
        "|",
        ">",
    ),
    *("\t", "null", "~", "1e999", "0x1F", "012", "on", "<<: ", "? ", "%", "@", "`", "\x00", "\x1b"),
    *(
        "\u202e",
        "é",
        "10 kg",
        "-5 mm",
        "9**9",
        "1,5 mm",
        "unknown",
        "touching",
        "٣ mm",
        "\r",
        "...",
    ),
]


@pytest.fixture(scope="module")
def ours() -> InForce:
    return put_in_force(builtin_packs())


def expression(draw: random.Random, depth: int) -> str:
    """A condition: one of the language, or one that only looks like it."""
    return condition(draw, depth) if draw.random() < 0.6 else debris(draw, depth)


def condition(draw: random.Random, depth: int) -> str:
    """A comparison of lengths, or some of them joined."""
    if depth == 0 or draw.random() < 0.4:
        sign = draw.choice((" < ", " <= ", " >= ", " > ", " == "))
        return f"{length(draw, depth)}{sign}{length(draw, depth)}"
    if draw.random() < 0.1:
        return draw.choice(("moves", "not moves", 'acts == "crush"', "given(depth)"))
    joint = draw.choice((" and ", " or "))
    return f"({condition(draw, depth - 1)}{joint}{condition(draw, depth - 1)})"


def length(draw: random.Random, depth: int) -> str:
    if depth == 0 or draw.random() < 0.3:
        return draw.choice(("most", "least", "depth", "limit.dent", "9 mm", "1/2 in", "0 mm"))
    one, other = length(draw, depth - 1), length(draw, depth - 1)
    forms = ("({} + {})", "({} - {})", "max({}, {})", "sqrt({} * {})", "({} * 2 - {} / 0)")
    return draw.choice(forms).format(one, other)


def debris(draw: random.Random, depth: int) -> str:
    """Pieces of the language, joined without sense."""
    if depth == 0 or draw.random() < 0.25:
        return draw.choice(ATOMS)
    if draw.random() < 0.4:
        return draw.choice(AROUND).format(debris(draw, depth - 1))
    return f"{debris(draw, depth - 1)}{draw.choice(JOINTS)}{debris(draw, depth - 1)}"


def broken(draw: random.Random, text: str) -> str:
    """A text with a few things put in, taken out, doubled or exchanged."""
    for _ in range(draw.randint(1, 4)):
        at = draw.randrange(len(text) + 1)
        until = min(len(text), at + draw.randint(0, 12))
        lines = text.split("\n")
        line = draw.randrange(len(lines))
        change = draw.randrange(5)
        if change == 0:
            text = text[:at] + draw.choice(SPLINTERS) + text[at:]
        elif change == 1:
            text = text[:at] + text[until:]
        elif change == 2:
            text = text[:at] + draw.choice(SPLINTERS) + text[until:]
        elif change == 3:
            text = "\n".join([*lines[: line + 1], *lines[line:]])
        else:
            lines[line] = lines[draw.randrange(len(lines))]
            text = "\n".join(lines)
    return text


def check(problems: tuple[Problem, ...]) -> None:
    """Every problem is told at a place, in words that a terminal can show."""
    for problem in problems:
        told = render(problem)
        assert all(line.isprintable() for line in told.split("\n"))
        assert problem.place.line >= 1
        assert problem.what


@cache
def bench() -> Derived:
    """The bench, with every quantity computed once."""
    found = review_under(put_in_force(builtin_packs()), DESIGN, "bench.yaml")
    assert found.derived is not None
    return found.derived


def read_expression(draw: random.Random, ours: InForce) -> int:
    """Read a rule with two expressions; if it is one, judge a design by it."""
    both = [expression(draw, draw.randint(1, 5)) for _ in range(2)]
    when, require = (f"'{text.replace(chr(39), chr(39) * 2)}'" for text in both)
    pack = read_pack(RULE.format(when=when, require=require), "ours.yaml", KINDS, builtin_limits())
    check(pack.problems)
    if pack.problems:
        return 0
    derived = bench()
    found = judge(derived.design, derived.values, derived.cases, pack.rules)
    assert [(each.rule, each.part) for each in found] == [("gap.x", "slit")]
    check(prove_all([pack], builtin_limits()))
    return 1


def read_design(draw: random.Random, ours: InForce) -> int:
    found = review_under(ours, broken(draw, DESIGN), "bench.yaml")
    check(found.problems)
    assert found.problems or found.derived is not None
    return int(not found.problems)


PACK = (ROOT / "specimens" / "shop" / "rules" / "house.yaml").read_text("utf-8")
SHOP = (ROOT / "specimens" / "shop" / "shop.yaml").read_text("utf-8")


def read_a_pack(draw: random.Random, ours: InForce) -> int:
    pack = read_pack(broken(draw, PACK), "house.yaml", KINDS, builtin_limits())
    check(pack.problems)
    return int(not pack.problems)


def read_a_shop(draw: random.Random, ours: InForce) -> int:
    shop, problems = read_shop(broken(draw, SHOP), "shop.yaml")
    check(problems)
    tables, misfits = with_stock(Tables(), shop)
    check(misfits)
    assert len(tables.materials) >= 1
    check(put_in_force(builtin_packs(), shop).problems)
    return int(not problems)


@pytest.mark.parametrize(
    ("read", "count"),
    [(read_expression, 4000), (read_design, 4000), (read_a_pack, 1500), (read_a_shop, 500)],
)
def test_generated(
    ours: InForce, read: Callable[[random.Random, InForce], int], count: int
) -> None:
    draw = random.Random(20_261_125)
    sound = sum(read(draw, ours) for _ in range(count))
    assert 0.01 * count < sound < 0.8 * count  # neither all refused at the door nor all let in
