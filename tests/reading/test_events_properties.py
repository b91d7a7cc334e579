"""Reading against PyYAML's own emitter and composer, on structures and texts made at random."""

import pytest
import yaml
from hypothesis import example, given, settings
from hypothesis import strategies as st

from reviewer.notation.problem import render
from reviewer.reading.events import Items, Scalar, Table, read_yaml
from reviewer.reading.parsers import choose_parser, pure_parser

CHARACTERS = st.characters(
    exclude_categories=["Cs", "Cn", "Co"], exclude_characters="\x85\u2028\u2029\ufeff"
).filter(lambda character: character >= " " and not "\x7f" <= character <= "\x9f")
TEXTS = st.text(CHARACTERS | st.sampled_from("\n\t"), max_size=12)
KEYS = st.text(CHARACTERS, min_size=1, max_size=8)
TREES = st.recursive(
    TEXTS,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(KEYS, inner, max_size=4),
    max_leaves=12,
)
PIECES = [
    *("a", "b: ", "key", "1", "5 mm", ": ", ":", " ", "\n", "\n  ", "\n    ", "- ", "-", "{", "}"),
    *("[", "]", ", ", ",", '"', "'", "#", " # c", "\t", "|\n", ">", "|-", "\n---\n", "...", "%"),
    *("&y ", "*z ", "<<", "\\n", "\\", "é", "😀", "\r\n", "~", "null", "@", "`", "=", ".", "|2\n"),
    *("\\x41", "\\u00e9", "%YAML 1.2\n", "--- ", "\x85", "\x00", "\x1b", "\ufeff", "\r", "\u2028"),
]
SCRAPS = st.lists(st.sampled_from(PIECES), max_size=16).map("".join)
# Where the two parsers go on differently after what both refuse: tags, and ? inside brackets.
HARD_SCRAPS = st.lists(st.sampled_from([*PIECES, "!x ", "!", "!<", "? ", "?"]), max_size=16).map(
    "".join
)


def texts_of(node):
    """The tree as nested lists and dicts of its texts."""
    if isinstance(node, Scalar):
        return node.text
    if isinstance(node, Items):
        return [texts_of(each) for each in node.items]
    return {key.text: texts_of(value) for key, value in node.entries}


@settings(max_examples=150, deadline=None)
@given(st.dictionaries(KEYS, TREES, max_size=5), st.sampled_from([True, False, None]))
def test_what_pyyaml_writes_comes_back(tree, flow):
    text = yaml.safe_dump(tree, default_flow_style=flow, allow_unicode=True, sort_keys=False)
    document = read_yaml(text, "x")
    assert document.problems == ()
    assert texts_of(document.root) == tree


def composed(node):
    """What PyYAML composes, in the shape of our tree: text, whether it is plain, line, column."""
    mark = node.start_mark
    at = (mark.line + 1, mark.column + 1)
    if isinstance(node, yaml.ScalarNode):
        return (node.value, bool(node.style), *at) if node.value or node.style else ("", False)
    if isinstance(node, yaml.SequenceNode):
        return ([composed(each) for each in node.value], *at)
    return ([(composed(key), composed(value)) for key, value in node.value], *at)


def marked(node):
    """Our tree in the same shape; an absent text has no mark of its own in PyYAML."""
    at = (node.place.line, node.place.column)
    if isinstance(node, Scalar):
        return (node.text, node.quoted, *at) if node.text or node.quoted else ("", False)
    if isinstance(node, Items):
        return ([marked(each) for each in node.items], *at)
    return ([(marked(key), marked(value)) for key, value in node.entries], *at)


@pytest.mark.skipif(not yaml.__with_libyaml__, reason="libyaml is the reference")
@settings(max_examples=300, deadline=None)
@given(SCRAPS)
def test_accepted_texts_are_what_pyyaml_composes(text):
    document = read_yaml(text, "x", None)
    if not document.problems and "%" not in text:
        source = text.removeprefix("\ufeff")
        assert marked(document.root) == composed(yaml.compose(source, yaml.CSafeLoader))


@settings(max_examples=300, deadline=None)
@given(st.binary(max_size=60) | st.text(max_size=60) | SCRAPS | HARD_SCRAPS)
@example(b"\xef\xbb\xbf\xff")
@example("\ufeff\ufeff")
@example('"\\U00110000')
@example("%\n%YAML\n% \n---")
@pytest.mark.parametrize("parser", [choose_parser(), pure_parser])
def test_nothing_raises_and_every_problem_can_be_printed(parser, source):
    document = read_yaml(source, "x", parser_of=parser)
    assert document.root is not None or document.problems
    for problem in document.problems:
        assert render(problem).startswith(f"x:{problem.place.line}:{problem.place.column}: ")
        assert 1 <= problem.place.line <= max(1, len(document.lines))
        assert 1 <= problem.place.column <= problem.place.end_column
        assert problem.place.column <= len((problem.source_line or "") + "|")
        assert problem.what
        assert problem.found


@settings(max_examples=400, deadline=None)
@given(SCRAPS)
@example("|2\n|2\n\t")
@example("[\n%")
@example("{? }")
@example("-\n[")
def test_both_parsers_give_the_same_trees_and_refusals(text):
    chosen, pure = read_yaml(text, "x", None), read_yaml(text, "x", None, pure_parser)
    assert chosen.problems == pure.problems
    if not chosen.problems:
        assert chosen.root == pure.root


@settings(max_examples=200, deadline=None)
@given(HARD_SCRAPS)
def test_both_parsers_accept_the_same_texts(text):
    chosen, pure = read_yaml(text, "x", None), read_yaml(text, "x", None, pure_parser)
    assert bool(chosen.problems) == bool(pure.problems)
    if not chosen.problems:
        assert chosen.root == pure.root


@settings(max_examples=100, deadline=None)
@given(st.dictionaries(KEYS, TREES, min_size=1, max_size=4))
def test_places_point_at_what_was_read(tree):
    """Plain and simply quoted texts stand in the file at the place that they name."""
    text = yaml.safe_dump(tree, allow_unicode=True, width=10_000)
    document = read_yaml(text, "x")
    for scalar in scalars(document.root):
        place = scalar.place
        written = document.lines[place.line - 1][place.column - 1 : place.end_column - 1]
        if not scalar.quoted:
            assert written == scalar.text
        elif written[0] == "'" and "''" not in scalar.text and "\n" not in scalar.text:
            assert written == "'" + scalar.text.replace("'", "''") + "'"


def scalars(node):
    if isinstance(node, Scalar):
        yield node
    elif isinstance(node, Table):
        for key, value in node.entries:
            yield key
            yield from scalars(value)
    else:
        for each in node.items:
            yield from scalars(each)
