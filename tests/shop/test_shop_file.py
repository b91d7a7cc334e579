"""A shop's file as it is read, and its schema."""

import re
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from reviewer.judging.builtin import builtin_packs
from reviewer.judging.in_force import put_in_force
from reviewer.reading.events import read_yaml
from reviewer.reading.shop import read_shop
from reviewer.reading.shop_schema import shop_schema
from reviewer.reading.shop_stock import Tables, with_stock
from reviewer.reading.skeleton import plain_values

BY = "by: Ada, why: so"


def test_cutters_and_allowances_are_read_and_kept() -> None:
    shop, problems = read_shop(
        "shop: Ours\nlengths: in\ncutters:\n  long: {diameter: 1/2, cutting_length: 1 1/2}\n"
        "allowances: {kerf: 1/8}\n",
        "shop.yaml",
    )
    assert problems == ()
    (cutter,) = shop.cutters
    assert cutter.given["cutting_length"].value == pytest.approx(0.0381, rel=1e-12)
    assert shop.allowances["kerf"].value == pytest.approx(0.003175, rel=1e-12)


SOUND = [
    "shop: Ours\n",
    "shop: Ours\nnote: nothing else\nlengths: in\nallowances: {kerf: 1/8, note: the blue saw}\n",
    "shop: 7\npacks: [a.yaml, ../b, {installed: castors}]\n",
    f"shop: Ours\nrules:\n  a.b: {{silence: true, {BY}}}\n  c.d: {{loosen: 1.5, {BY}}}\n",
    f"shop: Ours\nlimits:\n  dent: {{value: 0.2 mm, for: [public], {BY}}}\n  note: none\n",
    "shop: Ours\nstock:\n  sheets:\n    x: {material: y, nominal: 2 in, actual: 2 in, source: z}\n",
    "shop: Ours\ncutters:\n  saw: {shape: saw, kerf: 3 mm, angle: 45 deg}\n",
]


@pytest.mark.parametrize("text", SOUND)
def test_the_schema_takes_what_the_reading_takes(text: str) -> None:
    assert read_shop(text, "shop.yaml")[1] == ()
    document = read_yaml(text, "shop.yaml")
    assert document.root is not None
    Draft202012Validator(shop_schema()).validate(plain_values(document.root))


@pytest.mark.parametrize(
    "text",
    [
        "lengths: mm\n",
        "shop: Ours\nrool: {}\n",
        "shop: Ours\nrules: {a.b: {silence: true}}\n",
        "shop: Ours\npacks: [{install: x}]\n",
        "shop: Ours\nallowances: {kerf: thin}\n",
        "shop: Ours\nlimits: {dent: {value: 0.2 mm, for: [everybody], by: a, why: b}}\n",
    ],
)
def test_the_schema_refuses_what_the_reading_refuses(text: str) -> None:
    assert read_shop(text, "shop.yaml")[1]
    document = read_yaml(text, "shop.yaml")
    assert document.root is not None
    assert not Draft202012Validator(shop_schema()).is_valid(plain_values(document.root))


def test_the_schema_is_one() -> None:
    Draft202012Validator.check_schema(shop_schema())


def test_the_shop_file_of_the_readme_is_one() -> None:
    readme = (Path(__file__).parents[2] / "README.md").read_text("utf-8")
    (example,) = re.findall(r"```yaml\n(shop: .*?)```", readme, re.DOTALL)
    shop, problems = read_shop(example, "shop.yaml")
    assert problems == ()
    assert with_stock(Tables(), shop)[1] == ()
    named = put_in_force(builtin_packs(), shop)
    assert (named.problems, len(named.changes)) == ((), 2)
