"""Limits of size, depth, nodes and problems, held while reading; texts made to break a reader."""

from itertools import pairwise

import pytest

from reviewer.notation.problem import render
from reviewer.reading.events import Items, read_yaml
from reviewer.reading.parsers import choose_parser, pure_parser

MEBIBYTE = 1 << 20
PARSERS = {"chosen": choose_parser(), "pure": pure_parser}
TOO_LONG = """\
bench.yaml:1:1: the file is too long to be read
    found more than 1 MiB
    expected at most 1 MiB (1,048,576 bytes)
    mend: divide it into several files"""
TOO_DEEP = """\
bench.yaml:{line}:{column}: tables and lists stand too deep in one another
    found more than 50 levels
    expected at most 50 levels
    mend: divide the file, or write it flatter; nothing after this place was read"""
TOO_MANY_NODES = """\
bench.yaml:{line}:{column}: the file holds too many values
    found more than 20,000 keys, values, tables and lists
    expected at most 20,000
    mend: divide it into several files; nothing after this place was read"""
TOO_MANY_PROBLEMS = """\
bench.yaml:101:4: too many problems to list
    found more than 100
    expected a file in YAML 1.2
    mend: mend the 100 above first; nothing after this place was read
    b: *a
       ^^"""


@pytest.fixture(params=sorted(PARSERS))
def read(request):
    return lambda source, root=None: read_yaml(source, "bench.yaml", root, PARSERS[request.param])


def words(problem):
    """A rendered problem without the line of the source and its carets."""
    return "\n".join(render(problem).split("\n")[:4])


@pytest.mark.parametrize(
    "source",
    [b"#" * (MEBIBYTE + 1), "#" * (MEBIBYTE + 1), "é" * (MEBIBYTE // 2 + 1), "\ud800" * 400_000],
)
def test_error_too_long(source):
    document = read_yaml(source, "bench.yaml")
    assert [render(problem) for problem in document.problems] == [TOO_LONG]
    assert document.root is None


def test_a_mebibyte_is_read(read):
    document = read("a: b #".ljust(MEBIBYTE, "x"))
    assert document.problems == ()


def test_fifty_levels_are_read(read):
    assert read("[" * 50 + "]" * 50).problems == ()
    assert read("".join(f"{' ' * depth}a:\n" for depth in range(50))).problems == ()


def test_error_too_deep(read):
    flow = read("[" * 51 + "]" * 51).problems
    assert [words(problem) for problem in flow] == [TOO_DEEP.format(line=1, column=51)]
    block = read("".join(f"{' ' * depth}a:\n" for depth in range(52))).problems
    assert [words(problem) for problem in block] == [TOO_DEEP.format(line=51, column=51)]


@pytest.mark.parametrize("opening", ["[", "{", "- ", "? ", "{a: ", "[\n", "{? "])
def test_error_too_deep_in_a_mebibyte_of_one_beginning(read, opening):
    document = read((opening * MEBIBYTE)[:MEBIBYTE])
    assert any(problem.found == "more than 50 levels" for problem in document.problems)
    assert len(document.problems) <= 51


def test_twenty_thousand_nodes_are_read(read):
    document = read("- a\n" * 19_999, Items)
    assert document.problems == ()
    assert len(document.root.items) == 19_999


def test_error_too_many_nodes(read):
    document = read("- a\n" * 20_000, Items)
    assert [words(problem) for problem in document.problems] == [
        TOO_MANY_NODES.format(line=20_000, column=3)
    ]
    assert len(document.root.items) == 19_999


def test_error_too_many_nodes_counts_tables_and_keys(read):
    document = read("- {a: b}\n" * 6_667, Items)  # one list, and a table, a key, a value each
    assert [words(problem) for problem in document.problems] == [
        TOO_MANY_NODES.format(line=6_667, column=4)
    ]


def test_a_hundred_problems_are_told(read):
    assert len(read("- *a\n" * 100).problems) == 100


def test_error_too_many_problems(read):
    document = read("a: *a\n" + "b: *a\n" * 500)
    assert len(document.problems) == 101
    assert render(document.problems[-1]) == TOO_MANY_PROBLEMS


@pytest.mark.parametrize(
    "source",
    [
        "\0" * 500,
        "%A x\n" * 500,
        '- "\\0"\n' * 500,
        "- &a b\n" * 500,
        "a: 1\n" * 500,
        "{" + "a: 1,5," * 500 + "}",
        b"\x01" * 500,
    ],
)
def test_error_too_many_problems_of_every_kind(read, source):
    problems = read(source).problems
    assert len(problems) == 101
    assert problems[-1].what == "too many problems to list"


def test_a_billion_of_something_by_aliases(read):
    """Each list names the one before ten times: ten to the ninth, if aliases were followed."""
    names = "abcdefghi"
    source = "a: &a [x]\n" + "".join(
        f"{name}: &{name} [{', '.join([f'*{before}'] * 10)}]\n" for before, name in pairwise(names)
    )
    problems = read(source).problems
    assert len(problems) == 9 + 80
    assert {problem.found[0] for problem in problems} == {"&", "*"}


def test_an_alias_of_itself(read):
    assert [problem.found for problem in read("a: &a [*a]\n").problems] == ["&a", "*a"]


@pytest.mark.parametrize("character", list("[{\"'#-?:!&*%|>,]}\n\t x\\~@\u2028é"))
def test_one_character_a_hundred_thousand_times(read, character):
    """Every answer is a list of problems of which each can be printed."""
    document = read(character * 100_000)
    assert all(len(render(problem)) < 1500 for problem in document.problems)
    assert len(document.problems) <= 101
