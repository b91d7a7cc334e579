"""What the strict reader refuses, as the whole message that a person reads, by both parsers."""

from ast import literal_eval
from pathlib import Path

import pytest

from reviewer.notation.problem import render
from reviewer.reading.events import Items, Table, read_yaml
from reviewer.reading.parsers import choose_parser, pure_parser

PARSERS = {"chosen": choose_parser(), "pure": pure_parser}


def catalogue():
    """Read blocks of a name, the text as a Python literal, and all that is said of it."""
    text = (Path(__file__).parent / "refusals" / "events.txt").read_text("utf-8")
    for block in text.split("\n\n"):
        name, source, *message = block.strip("\n").split("\n")
        yield name.removeprefix("# "), literal_eval(source.removeprefix("< ")), "\n".join(message)


def said(source, parser="chosen", root=Table):
    document = read_yaml(source, "bench.yaml", root, PARSERS[parser])
    return "\n".join(render(problem) for problem in document.problems)


@pytest.mark.parametrize("parser", sorted(PARSERS))
@pytest.mark.parametrize(
    ("source", "message"), [pytest.param(*rest, id=name) for name, *rest in catalogue()]
)
def test_error_messages(source, message, parser):
    assert said(source, parser) == message


def test_every_refusal_says_what_was_found_what_is_expected_and_how_to_mend_it():
    for name, source, _ in catalogue():
        for problem in read_yaml(source, "bench.yaml").problems:
            assert all((problem.what, problem.found, problem.expected, problem.mend)), name


@pytest.mark.parametrize("parser", sorted(PARSERS))
def test_error_a_table_where_a_list_is_due(parser):
    assert said("rule: a\n", parser, Items) == "\n".join(
        [
            "bench.yaml:1:1: the file is a table",
            "    found a table",
            "    expected a list",
            "    mend: begin each entry with `- ` at the beginning of the line",
            "    rule: a",
            "    ^",
        ]
    )


@pytest.mark.parametrize(
    ("source", "keys"),
    [
        ("a: 1\na: 2\nb: 3\n", ["a", "b"]),
        ("a: *x\nb: [1, *x, 2]\n", ["b"]),
        ("{c: d}: 1\nb: 2\n", ["b"]),
        ("a: !x 1\nb: &y 2\n", ["a", "b"]),
        ("a: 1\nb:\n  c: {d\ne: f", ["a", "b"]),
    ],
)
def test_what_can_be_read_is_in_the_tree(source, keys):
    document = read_yaml(source, "bench.yaml")
    assert document.problems
    assert [key.text for key, _ in document.root.entries] == keys


def test_the_first_of_two_keys_counts():
    assert read_yaml("a: 1\na: 2\n", "x").root.get("a").text == "1"


def test_a_decimal_comma_leaves_the_value_that_was_meant():
    root = read_yaml("a: {d: 18,2 mm ± 0,3 mm, e: 2}\n", "x").root
    assert [(key.text, value.text) for key, value in root.get("a").entries] == [
        ("d", "18.2 mm ± 0.3 mm"),
        ("e", "2"),
    ]


@pytest.mark.parametrize(
    "text",
    [
        "a: {d: x, 5 mm}",  # the value before is no number
        "a: {d: '1', 5 mm}",
        "a: {d: [1], 5 mm}",
        "a: {5 mm}",
        "a: {d: 1,\n 5 mm}",
        "a: {d: 1, 5: }",
        "a: {d: 1, 5 mm: 2}",
        "a: {d: 1, '5 mm'}",
        "a: {d: 1, ? 5 mm}",
        "a: [1,5 mm]",
        "a: 1,5 mm",
    ],
)
def test_no_decimal_comma(text):
    assert said(text) == ""


def test_problems_come_in_order_of_place():
    document = read_yaml("a: {x: 1, x: 2, y: {z: *a}, y: 1}\nb: &c 1\na: 2\n", "x")
    places = [(problem.place.line, problem.place.column) for problem in document.problems]
    assert places == [(1, 11), (1, 24), (1, 29), (2, 4), (3, 1)]
