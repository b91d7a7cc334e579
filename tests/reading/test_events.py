"""The marked tree: texts, quotes, places, lines; the C parser and the pure one alike."""

import pytest
import yaml

from reviewer.notation.problem import Place
from reviewer.reading.events import Items, Scalar, Table, read_yaml
from reviewer.reading.parsers import PureParser, choose_parser, pure_parser

PARSERS = {"chosen": choose_parser(), "pure": pure_parser}


@pytest.fixture(params=sorted(PARSERS))
def read(request):
    def reading(source, root=Table):
        document = read_yaml(source, "bench.yaml", root, PARSERS[request.param])
        assert document.problems == ()
        return document

    return reading


def bare(node):
    """The tree without its places; a quoted text in a list of its own."""
    if isinstance(node, Scalar):
        return [node.text] if node.quoted else node.text
    if isinstance(node, Items):
        return tuple(bare(each) for each in node.items)
    return {key.text: bare(value) for key, value in node.entries}


@pytest.mark.parametrize(
    ("text", "tree"),
    [
        ("a: 18 mm\n", {"a": "18 mm"}),
        ("lengths: in\nreached_by: [adults, children]", None),
        ('bearing: "6001"', {"bearing": ["6001"]}),
        ("on: 2026-03-02\nno: yes\n", {"on": "2026-03-02", "no": "yes"}),
        ("a: 012\nb: 1:30\nc: 1_000", {"a": "012", "b": "1:30", "c": "1_000"}),
        ("a:\nb: ~\nc: ''", {"a": "", "b": "~", "c": [""]}),
        ("open: {trays.offset: 210}\nclosed: {}\nnone: []", None),
        ("a: 5'-6 1/2\"\nb: 3/4 in", {"a": "5'-6 1/2\"", "b": "3/4 in"}),
        ("a: 18 mm ± 0.3 mm # about\n", {"a": "18 mm ± 0.3 mm"}),
        ("a: two\n   lines\n", {"a": "two lines"}),
        (
            "a: |\n  two\n  lines\nb: >-\n  one\n  line\n",
            {"a": ["two\nlines\n"], "b": ["one line"]},
        ),
        ("a:\n- x\n-\n- {b: c}\n", {"a": ("x", "", {"b": "c"})}),
        ("a: {b, c}", {"a": {"b": "", "c": ""}}),
        ("a: \"{case} lifts\"\nb: 'it''s'", {"a": ["{case} lifts"], "b": ["it's"]}),
        ('a: "\\u00b1\\n\\t\\\\"', {"a": ["±\n\t\\"]}),
        ("%YAML 1.2\n---\na: b\n...\n", {"a": "b"}),
        ("# first\n\n%YAML 1.2 # a comment\n--- # begins\na: b", {"a": "b"}),
        ("---\na: b\n", {"a": "b"}),
        ("\ufeffa: b", {"a": "b"}),
        ("a: b\r\nc: d\r\n", {"a": "b", "c": "d"}),
        ("a:\tb\t# a tab where YAML lets it separate\nc: [d,\te]\n", {"a": "b", "c": ("d", "e")}),
        ("? a\n: b", {"a": "b"}),
        ("é: 😀", {"é": "😀"}),
        ("true: 1\n12: 2\n", {"true": "1", "12": "2"}),
        ('"<<": 1\n"~": 2', {"<<": "1", "~": "2"}),
        ("a: !important".replace("!", "'!") + "'", {"a": ["!important"]}),
        ("a: x!y&z*w", {"a": "x!y&z*w"}),
        ("a: [30, 30, 2]\nb: {c: 1, 5: x}", {"a": ("30", "30", "2"), "b": {"c": "1", "5": "x"}}),
    ],
)
def test_texts_are_read_as_they_stand(read, text, tree):
    found = bare(read(text).root)
    if tree is None:  # all plain: then PyYAML's own loader of plain strings is the check
        tree = as_tuples(yaml.load(text, yaml.BaseLoader))
    assert found == tree


def as_tuples(value):
    if isinstance(value, list):
        return tuple(as_tuples(each) for each in value)
    if isinstance(value, dict):
        return {key: as_tuples(each) for key, each in value.items()}
    return value


def test_bytes_and_text_are_read_alike(read):
    assert read("é: ±\n".encode()).root == read("é: ±\n").root


def test_a_byte_order_mark_moves_no_column(read):
    marked, bare_text = read(b"\xef\xbb\xbfa: b"), read(b"a: b")
    assert marked.root == bare_text.root
    assert marked.lines == bare_text.lines == ("a: b",)


def test_places_count_code_points_from_one(read):
    root = read("# 😀\né: {😀b: 18 mm, c: 'x'}\n").root
    inner = root.get("é")
    assert root.key("é").place == Place("bench.yaml", 2, 1, 2)
    assert inner.place == Place("bench.yaml", 2, 4, 5)
    assert inner.key("😀b").place == Place("bench.yaml", 2, 5, 7)
    assert inner.get("😀b").place == Place("bench.yaml", 2, 9, 14)
    assert inner.get("c").place == Place("bench.yaml", 2, 19, 22)


def test_a_text_of_several_lines_has_the_place_of_its_first(read):
    root = read("a: one\n  two\nb: |  \n  x\nc: 'd\n\n  e'\n").root
    assert root.get("a").place == Place("bench.yaml", 1, 4, 7)
    assert root.get("b").place == Place("bench.yaml", 3, 4, 5)
    assert root.get("c").place == Place("bench.yaml", 5, 4, 6)


def test_an_absent_value_has_the_place_of_its_key(read):
    root = read("a:\n\n# nothing\nb: {c: , d}\n").root
    assert root.get("a") == Scalar("", False, Place("bench.yaml", 1, 1, 2))
    assert root.get("b").get("c") == Scalar("", False, Place("bench.yaml", 4, 5, 6))
    assert root.get("b").get("d") == Scalar("", False, Place("bench.yaml", 4, 10, 11))


def test_an_absent_entry_has_the_place_of_its_dash(read):
    items = read("a:\n  -\n\n  - b\n").root.get("a").items
    assert items[0] == Scalar("", False, Place("bench.yaml", 2, 3, 4))


def test_a_table_begins_at_its_first_key(read):
    root = read("parts:\n  arm:\n    kind: arm\n  list:\n    - x\n").root
    assert root.get("parts").place == Place("bench.yaml", 2, 3, 4)
    assert root.get("parts").get("arm").place == Place("bench.yaml", 3, 5, 6)
    assert root.get("parts").get("list").place == Place("bench.yaml", 5, 5, 6)


def test_keys_are_found_by_their_text(read):
    root = read("a: 1\nb: 2\n").root
    assert root.get("b").text == "2"
    assert root.key("b").text == "b"
    assert root.get("c") is None
    assert root.key("c") is None


@pytest.mark.parametrize("text", ["a: b\nc: d", "a: b\r\nc: d\r\n", "a: b\rc: d\r"])
def test_lines_come_without_their_ends(read, text):
    assert read(text).lines == ("a: b", "c: d")


def test_a_list_is_read_where_one_is_due(read):
    assert bare(read("- rule: a\n- rule: b\n", Items).root) == ({"rule": "a"}, {"rule": "b"})


def test_any_root_is_read_where_none_is_due(read):
    assert bare(read("- a", None).root) == ("a",)
    assert bare(read("'a'", None).root) == ["a"]


def test_nodes_are_values(read):
    """The tree is built past the slow constructor, and is of the frozen classes all the same."""
    scalar = read("a: b").root.get("a")
    assert type(scalar) is Scalar
    assert type(scalar.place) is Place
    assert scalar == Scalar("b", False, Place("bench.yaml", 1, 4, 5))
    assert hash(scalar) == hash(Scalar("b", False, Place("bench.yaml", 1, 4, 5)))
    with pytest.raises(AttributeError):
        scalar.text = "c"
    with pytest.raises(AttributeError):
        scalar.place.line = 2


def test_the_parser_is_chosen_by_what_pyyaml_was_built_with():
    assert choose_parser(with_libyaml=False) is pure_parser
    assert isinstance(pure_parser("a: b"), PureParser)
    if yaml.__with_libyaml__:
        assert issubclass(yaml.CSafeLoader, choose_parser())
