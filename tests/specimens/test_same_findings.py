"""What changes no review: the order of keys, and the unit in which a length is written."""

import re
from math import isnan
from random import Random

import pytest
import yaml

from reviewer import review

SPECIMENS = (
    *("potting_bench/revision_a", "potting_bench/revision_c", "stage_turntable"),
    *("book_stand", "lift_shelf", "inch_stand", "first_design"),
)


def shuffled(text: str, seed: int) -> str:
    """The same file with the keys of every table in another order, every value as it is written.

    The nodes are shuffled, not the values: a quantity stays the text that it is, and quoted texts
    stay quoted.
    """
    draw = Random(seed)

    def shuffle(node: yaml.Node) -> None:
        if isinstance(node, yaml.MappingNode):
            draw.shuffle(node.value)
            for _, value in node.value:
                shuffle(value)
        elif isinstance(node, yaml.SequenceNode):
            for value in node.value:
                shuffle(value)

    root = yaml.compose(text, Loader=yaml.SafeLoader)
    shuffle(root)
    return yaml.serialize(root, allow_unicode=True, width=10_000)


def by_name(found) -> dict[tuple[str, tuple[str, ...]], tuple]:
    """Verdict, case and utilisation of every finding, by its name and the other parts it is on."""
    assert not found.problems
    return {
        (each.name, each.others): (each.verdict, each.case, each.utilisation)
        for each in found.findings
    }


def assert_same(one, other, tolerance: float) -> None:
    """Hold two reviews against each other."""
    left, right = by_name(one), by_name(other)
    assert left.keys() == right.keys()
    for name, (verdict, case, used) in left.items():
        same = right[name]
        assert same[:2] == (verdict, case), name
        assert same[2] == pytest.approx(used, rel=tolerance, nan_ok=isnan(used)), name


@pytest.mark.parametrize("seed", [1, 2, 3])
@pytest.mark.parametrize("name", SPECIMENS)
def test_the_order_of_keys_changes_nothing(name, seed, text_of, review_of):
    assert_same(review_of(name), review(shuffled(text_of(name), seed)), 1e-12)


def test_shuffling_moves_keys_and_keeps_texts(text_of):
    text = shuffled(text_of("inch_stand"), 1)
    assert "2'-1 1/2\"" in text
    assert 'bearing: "6001"' in text
    keys, as_written = (list(yaml.safe_load(each)) for each in (text, text_of("inch_stand")))
    assert sorted(keys) == sorted(as_written)
    assert keys != as_written


# Bare numbers of first_design.yaml are millimetres; each becomes the same length in another unit.
LENGTH = re.compile(r"(circle|height|thickness|diameter|gap|radius): ([0-9.]+)")
UNITS = {
    "mm": lambda mm: f"{mm:g} mm",
    "cm": lambda mm: f"{mm / 10:g} cm",
    "m": lambda mm: f"{mm / 1000:g} m",
    "in": lambda mm: f"{mm / 25.4:.15g} in",
}


@pytest.mark.parametrize("unit", UNITS)
def test_the_unit_of_a_length_changes_nothing(unit, text_of, review_of):
    text, count = LENGTH.subn(
        lambda match: f"{match[1]}: {UNITS[unit](float(match[2]))}",
        text_of("first_design").replace("lengths: mm\n", ""),
    )
    assert count == 9
    assert_same(review_of("first_design"), review(text), 1e-9)


def test_bare_numbers_in_a_declared_unit_are_that_unit(text_of, review_of):
    text = LENGTH.sub(
        lambda match: f"{match[1]}: {float(match[2]) / 10:g}",
        text_of("first_design").replace("lengths: mm", "lengths: cm"),
    )
    assert_same(review_of("first_design"), review(text), 1e-9)
