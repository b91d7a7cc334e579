"""The generated JSON Schema: sound by its metaschema, and never stricter than the reading."""

import json
from collections.abc import Iterator, Mapping
from math import inf
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from reviewer.notation.problem import render
from reviewer.notation.show import show, unit_for
from reviewer.parts.kind import Keys, Kind
from reviewer.parts.row import (
    Choice,
    Choices,
    Count,
    Date,
    Flag,
    Measure,
    Named,
    PartName,
    Points,
    Row,
    Shape,
    Stock,
)
from reviewer.reading.due import is_within
from reviewer.reading.events import read_yaml
from reviewer.reading.measures import MOST
from reviewer.reading.read_design import read_design
from reviewer.reading.schema import design_schema
from reviewer.reading.skeleton import plain_values, validate_skeleton

IN_STOCK = {"materials": "birch plywood", "bearings": "6001", "fasteners": "M8x40"}
SI_NUMBERS = (0.0, 0.0005, 0.02, 0.3, 1.0, 290.0, 5e3, 2e9)
# Keywords of the 2020-12 vocabularies that editors know; all else would be silently without effect.
PLAIN = {
    *("$schema", "$defs", "$ref", "title", "description", "default", "examples", "type", "enum"),
    *("const", "pattern", "minLength", "minimum", "maximum", "properties", "patternProperties"),
    *("additionalProperties", "required", "minProperties", "items", "prefixItems", "minItems"),
    *("maxItems", "uniqueItems", "allOf", "anyOf", "oneOf", "if", "then", "else"),
}
LINES = """\
design: Potting bench
lengths: mm
parts:
  base: {kind: wheel, offset: 2 in}
  ring: {kind: wheel, carried_by: base, plate: {thickness: 18}}
loads:
  lean: {force: 500 N, on: ring}
"""


@pytest.fixture(scope="module", params=["small", "registry"])
def review(request, kinds, facts, load) -> tuple[Any, ...]:
    """Reading and schema of the tests' own kinds, and of those that come with Reviewer."""
    if request.param == "registry":
        from reviewer.parts.registry import KINDS

        written = {name: kind for name, kind in KINDS.items() if not kind.implied}
        schema = design_schema(KINDS)
        return (
            written,
            lambda text: read_design(text, "d.yaml", KINDS),
            Draft202012Validator(schema),
        )
    schema = design_schema(kinds, facts, load)
    return (
        kinds,
        lambda text: read_design(text, "d.yaml", kinds, facts=facts, load=load),
        Draft202012Validator(schema),
    )


def below(schema: Any) -> Iterator[dict[str, Any]]:
    """A schema and all schemas in it."""
    if isinstance(schema, list):
        for each in schema:
            yield from below(each)
    elif isinstance(schema, dict):
        yield schema
        for keyword, value in schema.items():
            if keyword in ("properties", "patternProperties", "$defs"):
                yield from below(list(value.values()))
            elif keyword not in ("default", "examples", "enum", "const"):
                yield from below(value)


def test_schema_is_sound_and_plain(review):
    _, _, validator = review
    Draft202012Validator.check_schema(validator.schema)
    assert {key for each in below(validator.schema) for key in each} <= PLAIN


def test_every_table_is_closed_and_takes_a_note(review):
    _, _, validator = review
    tables = [each for each in below(validator.schema) if "additionalProperties" in each]
    assert len(tables) > 5
    assert all(each["additionalProperties"] is False for each in tables)
    assert all("note" in each["properties"] for each in tables)


def test_every_field_is_explained(review):
    kinds, _, validator = review
    for kind in kinds.values():
        table = validator.schema["$defs"][f"part_{kind.name}"]
        for row in kind.given_rows():
            if not row.only:
                *groups, key = row.path.split(".")
                level = table
                for group in groups:
                    at = level["properties"][group]
                    level = at["anyOf"][1] if "anyOf" in at else at
                assert level["properties"][key]["description"].startswith(row.says)


def test_schema_of_a_measure_and_of_a_count(kinds, facts, load):
    rollers = design_schema(kinds, facts, load)["$defs"]["part_wheel"]["properties"]["rollers"]
    assert rollers["properties"]["gap"] == {
        "description": "gap under a roller: a length, such as 18 mm, or touching or unknown; "
        "computed in metres (m)",
        "type": ["string", "number"],
        "pattern": r"[0-9]|^\s*(touching|unknown)\s*$",
        "examples": ["touching", "unknown"],
        "default": "0.1 mm",
    }
    assert rollers["properties"]["count"] == {
        "description": "how many rollers: a whole number from 3 to 24",
        "type": "integer",
        "minimum": 3,
        "maximum": 24,
        "default": 8,
    }


def test_schema_of_words_and_of_part_names(kinds, facts, load):
    wheel = design_schema(kinds, facts, load)["$defs"]["part_wheel"]["properties"]
    one = {"enum": ["adults", "children"]}
    assert wheel["users"]["anyOf"] == [
        one,
        {"type": "array", "items": one, "minItems": 1, "uniqueItems": True},
    ]
    assert wheel["beside"] == {
        "description": "its neighbour: the name of a part",
        "type": "string",
        "pattern": "^[a-z][a-z0-9_]{0,59}$",
    }
    assert wheel["kind"] == {"description": "a plate that turns on rollers", "const": "wheel"}


def given_texts(row: Row) -> Iterator[str]:
    """The texts that a row itself declares as readable, as they stand in a file."""
    entry = row.given
    for text in (getattr(entry, "example", None), getattr(entry, "default", None)):
        if isinstance(text, str) and text:
            yield text
    if isinstance(entry, Measure):
        yield from entry.unknown or ()
        yield from (meaning for _, meaning in entry.words)


def test_examples_and_defaults_can_be_read(review):
    kinds, read, _ = review
    for kind in kinds.values():
        for row in kind.given_rows():
            *groups, key = row.path.split(".")
            for text in () if row.only else given_texts(row):
                value = f"{key}: {text}"
                for group in reversed(groups):
                    value = f"{group}: {{{value}}}"
                file = f"design: Bench\nparts: {{one: {{kind: {kind.name}, {value}}}}}"
                _, problems = read(file)
                assert problems == (), f"{kind.name}.{row.path}: {text}"


# ------------------------------------------------------------------ walk and schema held together


def values(row: Row, rows: Mapping[str, Row], parts: list[str]) -> st.SearchStrategy[Any]:
    """Values that a field takes, as plain data."""
    match row.given:
        case Measure():
            return st.sampled_from(list(measures(row, row.given)))
        case Count():
            return st.integers(row.given.at_least, row.given.at_most)
        case Choice():
            return st.sampled_from(row.given.options)
        case Choices():
            return st.lists(st.sampled_from(row.given.options), min_size=1, unique=True)
        case Stock():
            return st.just(IN_STOCK[row.given.table])
        case Flag():
            return st.booleans()
        case Date():
            return st.dates().map(lambda day: day.isoformat())
        case PartName():
            several = st.lists(st.sampled_from(parts), min_size=1, unique=True)
            return several if row.given.several else st.sampled_from(parts)
        case Shape():
            shapes = row.given.alternatives
            return st.one_of([shape(word, paths, rows) for word, paths in shapes])
        case Points():
            return points(row.given, rows)
        case Named():
            fields = {each.path: values(each, rows, parts) for each in row.given.rows}
            one = st.fixed_dictionaries({}, optional={**fields, "note": st.just("tried")})
            return st.dictionaries(st.sampled_from(["left", "right_2"]), one, min_size=1)
    return st.sampled_from(["a text", "yes", 12, True, "1:30"])


def points(entry: Points, rows: Mapping[str, Row]) -> st.SearchStrategy[Any]:
    """Points whose first measure grows, in its own unit."""
    unit = unit_for(entry.columns[0].dimension, {})
    more = st.tuples(*(values(column, rows, []) for column in entry.columns[1:]))
    several = st.lists(more, min_size=entry.at_least, max_size=min(entry.at_most, 4))
    return several.map(
        lambda found: [[show(0.01 * at, unit), *each] for at, each in enumerate(found, start=1)]
    )


def shape(word: str, paths: tuple[str, ...], rows: Mapping[str, Row]) -> st.SearchStrategy[Any]:
    listed = st.tuples(*(values(rows[path], rows, []) for path in paths))
    return listed.map(lambda measures: {word: list(measures)})


def measures(row: Row, entry: Measure) -> Iterator[Any]:
    """Texts of a measure within its bounds, and bare numbers where the file declares lengths."""
    unit = unit_for(row.dimension, {})
    for value in SI_NUMBERS:
        largest, _ = MOST.get(row.dimension, (inf, ""))
        if is_within(entry, value) and value <= largest:
            yield show(value, unit)
            if unit.symbol in ("mm", "1"):
                yield value / unit.factor
    yield from (word for word, _ in entry.words)
    if entry.unknown:
        yield "unknown"


@st.composite
def tables(draw: Any, keys: Keys, rows: Mapping[str, Row], parts: list[str]) -> dict[str, Any]:
    """A table of some of the keys of one level."""
    known = sorted(keys.children.keys() - {"board"})  # a name under boards, and no part
    chosen = draw(st.lists(st.sampled_from(known), unique=True, max_size=6))
    table: dict[str, Any] = {"note": "tried"} if draw(st.booleans()) else {}
    for name in chosen:
        child = keys.children[name]
        if child.row is None or (child.children and draw(st.booleans())):
            table[name] = draw(tables(child, rows, parts))
        else:
            table[name] = draw(values(child.row, rows, parts))
    return table


@st.composite
def designs(draw: Any, kinds: Mapping[str, Kind]) -> dict[str, Any]:
    """A design that can be read: parts that stand on those before them, loads, combinations."""
    bearing = [kind for kind in sorted(kinds) if kinds[kind].carries_load]
    parts: dict[str, Any] = {"first": {"kind": bearing[0]}}
    for name in draw(st.lists(st.sampled_from(["arm", "top", "seam", "x_1"]), unique=True)):
        kind = draw(st.sampled_from(sorted(kinds) if name == "seam" else bearing))
        on = [each for each in parts if kinds[parts[each]["kind"]].carries_load]
        parts[name] = draw(tables(kinds[kind].keys, kinds[kind].by_path, on))
        parts[name]["kind"] = kind
        if kinds[kind].carries_load and "carried_by" in kinds[kind].by_path:
            parts[name].setdefault("carried_by", "first")  # only the first stands on the floor
    force = draw(st.sampled_from([{"force": "90 lbf"}, {"mass": "20 kg"}]))
    where = draw(st.sampled_from([{"on": "first"}, {"over": "first", "at": "rim"}]))
    return {
        "design": "Bench",
        "lengths": "mm",
        "parts": parts,
        "loads": {"lean": {**force, **where}},
        "combinations": {"worst": {"own_weight": 0.9, "lean": 1.5}},
        "configurations": {"closed": {}},
        "concessions": [{"rule": "a.b", "part": "first", "by": "us", "why": "tried"}],
    }


def slots(node: Any) -> Iterator[tuple[Any, Any]]:
    """Every place of plain data that holds a value: its table or list, and its key."""
    for key, value in list(node.items() if isinstance(node, dict) else enumerate(node)):
        yield node, key
        if isinstance(value, dict | list):
            yield from slots(value)


def both(review: tuple[Any, ...], design: Any) -> tuple[bool, bool]:
    """Whether the reading takes a design, and whether the schema does."""
    _, read, validator = review
    text = json.dumps(design, ensure_ascii=False)
    found, problems = read(text)
    assert (found is None) == bool(problems)
    return found is not None, validator.is_valid(plain_values(read_yaml(text, "d.yaml").root))


common = settings(deadline=None, max_examples=60, suppress_health_check=list(HealthCheck))


@common
@given(data=st.data())
def test_schema_takes_what_the_reading_takes(review, data):
    kinds, read, _ = review
    design = data.draw(designs(kinds))
    _, problems = read(json.dumps(design, ensure_ascii=False))
    assert not problems, "\n".join(map(render, problems))
    assert both(review, design) == (True, True)


@common
@given(data=st.data())
def test_neither_takes_an_unknown_key(review, data):
    design = data.draw(designs(review[0]))
    tables_there = [design, *(node[key] for node, key in slots(design))]
    closed = [each for each in tables_there if isinstance(each, dict)]
    data.draw(st.sampled_from(closed))["Zzz"] = 1
    assert both(review, design) == (False, False)


@common
@given(data=st.data())
def test_neither_takes_a_value_of_the_wrong_shape(review, data):
    design = data.draw(designs(review[0]))
    node, key = data.draw(st.sampled_from(list(slots(design))))
    node[key] = [[1]] if isinstance(node[key], dict) or key == "note" else {"Zzz": 1}
    assert both(review, design) == (False, False)


@common
@given(data=st.data())
def test_neither_takes_a_part_without_its_kind(review, data):
    design = data.draw(designs(review[0]))
    part = data.draw(st.sampled_from(sorted(design["parts"])))
    del design["parts"][part]["kind"]
    assert both(review, design) == (False, False)


scalars = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(-3, 40),
    st.floats(-1, 1, allow_nan=False),
    st.sampled_from(["18 mm", "3 kg", "0.2", "rim", "unknown", "touching", "first", "x", "", " "]),
)
anything = st.recursive(
    scalars,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.just("note"), inner),
    max_leaves=4,
)


@common
@given(data=st.data())
def test_what_the_schema_refuses_the_reading_refuses(review, data):
    design = data.draw(designs(review[0]))
    node, key = data.draw(st.sampled_from(list(slots(design))))
    node[key] = data.draw(anything)
    taken_by_reading, taken_by_schema = both(review, design)
    assert taken_by_schema or not taken_by_reading


# ----------------------------------------------------------------------------- validating a file


def test_a_sound_file_fits(kinds, facts, load):
    assert validate_skeleton(read_yaml(LINES, "bench.yaml"), kinds, facts, load) == ()


def test_an_empty_file_is_left_to_the_reading(kinds, facts, load):
    assert validate_skeleton(read_yaml("", "bench.yaml"), kinds, facts, load) == ()


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        (
            "thickness: 18",
            "thickness: {a: 1}",
            "bench.yaml:5:49: parts.ring.plate.thickness does not fit the schema of a design\n"
            "    found a table\n"
            "    expected what `reviewer schema` describes\n"
            "      ring: {kind: wheel, carried_by: base, plate: {thickness: {a: 1}}}\n"
            "                                                    ^^^^^^^^^",
        ),
        (
            "500 N",
            "heavy",
            "bench.yaml:7:17: loads.lean.force does not fit the schema of a design\n"
            "    found heavy\n"
            "    expected what `reviewer schema` describes\n"
            "      lean: {force: heavy, on: ring}\n"
            "                    ^^^^^",
        ),
        (
            "design: Potting bench\n",
            "",
            "bench.yaml:1:1: the file does not fit the schema of a design\n"
            "    found a table\n"
            "    expected what `reviewer schema` describes\n"
            "    lengths: mm\n"
            "    ^",
        ),
    ],
)
def test_what_the_schema_finds_is_told_in_our_words(kinds, facts, load, old, new, message):
    document = read_yaml(LINES.replace(old, new), "bench.yaml")
    problems = validate_skeleton(document, kinds, facts, load)
    assert [render(problem) for problem in problems] == [message]
