"""The JSON Schema of a design file, generated from the fields that the kinds declare.

JSON Schema 2020-12 in plain keywords, so that editors complete and explain every key.
"""

from collections.abc import Iterable, Mapping

from reviewer.parts.board import BOARD
from reviewer.parts.facts import FACTS
from reviewer.parts.kind import Keys, Kind
from reviewer.parts.load import LOAD
from reviewer.parts.measurement import MEASUREMENT
from reviewer.parts.shape_rows import shaped
from reviewer.parts.travel import TRAVEL
from reviewer.reading.based_on import BASED_ON
from reviewer.reading.boards import BOARDS
from reviewer.reading.measured import REQUIRED as MEASURED_REQUIRED
from reviewer.reading.names import NAME, NAMED
from reviewer.reading.parts import CARRIERS, KIND, SIZES
from reviewer.reading.schema_entries import NOTE_SCHEMA, Schema, field_schema
from reviewer.reading.settings import CONCESSION, LARGEST_FACTOR, OWN_WEIGHT, REQUIRED
from reviewer.reading.travels import TRAVELS

DIALECT = "https://json-schema.org/draft/2020-12/schema"
OVERRIDE = rf"^{NAME.pattern}\."
FACTOR: Schema = {"type": "number", "minimum": 0, "maximum": LARGEST_FACTOR}


def design_schema(kinds: Mapping[str, Kind], facts: Kind = FACTS, load: Kind = LOAD) -> Schema:
    """The schema of a design file whose parts are of these kinds.

    It takes every file that `read_design` takes; what only a reader of the whole file can see (that
    a part exists, that a unit fits) is left to the reading.
    """
    kinds = {name: kind for name, kind in kinds.items() if not kind.implied}
    sections: Schema = {
        BASED_ON: {
            "description": "a design of the same folders; this file says only what differs",
            "type": "string",
            "minLength": 1,
        },
        "parts": {
            **_by_name(_ref("part"), "the parts, by their names"),
            "minProperties": 1,
        },
        BOARDS: _by_name(table_schema(BOARD), "boards from which several parts are cut, by name"),
        TRAVELS: _by_name(table_schema(TRAVEL), "movements from 0 to 1 that drive parts, by name"),
        "configurations": _by_name(_configuration(), "positions of the mechanism, by name"),
        "loads": _by_name(_ref("load"), "the loads, by their names"),
        "combinations": _by_name(_combination(), "loads that act together, by name"),
        "concessions": {
            "description": "failures accepted on purpose",
            "type": "array",
            "items": _ref("concession"),
        },
        "measured": {
            "description": "what was measured on what was built",
            "type": "array",
            "items": _ref("measurement"),
        },
    }
    return {
        "$schema": DIALECT,
        "title": "design",
        "description": facts.says,
        "if": {"required": [BASED_ON]},
        "then": _ref("based"),
        "else": _ref("whole"),
        "$defs": {
            "whole": {**_table(facts.keys, facts, sections), "required": ["design", "parts"]},
            "based": _based(facts, sections),
            "part": _part(kinds.values()),
            **{f"part_{kind.name}": _kind(kind) for kind in kinds.values()},
            "load": _load(load),
            "concession": {**_table(CONCESSION.keys, CONCESSION), "required": list(REQUIRED)},
            "measurement": _measurement(),
        },
    }


def _based(facts: Kind, sections: Schema) -> Schema:
    """A file that says only what differs from another: what it lacks stands in that one."""
    whole = _table(facts.keys, facts, sections)["properties"]
    said = {name: {"description": each.get("description", name)} for name, each in whole.items()}
    of_names = {
        name: _by_name({"type": ["object", "null"]}, said[name]["description"])
        for name in ("parts", BOARDS, TRAVELS, "configurations", "loads", "combinations")
    }
    return {
        "type": "object",
        "properties": {**said, **of_names, BASED_ON: sections[BASED_ON], "note": NOTE_SCHEMA},
        "additionalProperties": False,
    }


def table_schema(kind: Kind, more: Schema | None = None) -> Schema:
    """The schema of a table of a kind's fields, with sections that are read elsewhere."""
    return _table(kind.keys, kind, more)


def _ref(name: str) -> Schema:
    return {"$ref": f"#/$defs/{name}"}


def _by_name(item: Schema, says: str) -> Schema:
    return {
        "description": says,
        "type": "object",
        "properties": {"note": NOTE_SCHEMA},
        "patternProperties": {NAMED: item},
        "additionalProperties": False,
    }


def _table(keys: Keys, kind: Kind, more: Schema | None = None) -> Schema:
    """A table of the keys of one level."""
    properties = {name: _key(each, kind) for name, each in keys.children.items()}
    return {
        "type": "object",
        "properties": {**properties, **(more or {}), "note": NOTE_SCHEMA},
        "additionalProperties": False,
    }


def _key(keys: Keys, kind: Kind) -> Schema:
    """A key: the value of its row, a table of what is below it, or either."""
    if keys.row is None:
        return _table(keys, kind)
    value = field_schema(keys.row, kind.by_path)
    if not keys.children:
        return value
    says = value.pop("description")
    return {"description": says, "anyOf": [value, _table(keys, kind)]}


def _kind(kind: Kind) -> Schema:
    name = {"description": kind.says, "const": kind.name}
    whole = shaped(kind)
    table = _table(whole.keys, whole, {KIND: name})
    return {"description": kind.says, **table, "required": [KIND]}


def _part(kinds: Iterable[Kind]) -> Schema:
    """A part: its kind decides which keys it may have."""
    chosen = sorted(kinds, key=lambda kind: kind.name)
    return {
        "type": "object",
        "properties": {
            KIND: {
                "description": "what the part is",
                "enum": [kind.name for kind in chosen],
            }
        },
        "required": [KIND],
        "allOf": [
            {
                "if": {"properties": {KIND: {"const": kind.name}}, "required": [KIND]},
                "then": _ref(f"part_{kind.name}"),
            }
            for kind in chosen
        ],
    }


def _load(load: Kind) -> Schema:
    pairs = [[{"required": [path]} for path in paths] for paths in (CARRIERS, SIZES)]
    return {
        "description": load.says,
        **_table(load.keys, load),
        "allOf": [{"oneOf": pair} for pair in pairs],
    }


def _configuration() -> Schema:
    position = {"description": "where a travel stands, from 0 to 1", "type": ["string", "number"]}
    value = {
        "description": "a number of a part, as its own field is written",
        "type": ["string", "number"],
    }
    return {
        "type": "object",
        "properties": {"note": NOTE_SCHEMA},
        "patternProperties": {OVERRIDE: value, NAMED: position},
        "additionalProperties": False,
    }


def _measurement() -> Schema:
    """A measurement; the value's dimension is that of the quantity, which only a reader sees."""
    name = {"type": "string", "minLength": 1}
    own = {
        "value": {
            "description": "what was read, with its uncertainty: 1.5 mm ± 0.1 mm",
            "type": ["string", "number"],
        },
        "under": {
            "description": "the loads that stood on it, or one combination",
            "anyOf": [name, {"type": "array", "items": name, "minItems": 1, "uniqueItems": True}],
        },
    }
    table = _table(MEASUREMENT.keys, MEASUREMENT, own)
    return {**table, "required": list(MEASURED_REQUIRED)}


def _combination() -> Schema:
    own_weight = {"description": "factor on own weight", "default": 1, **FACTOR}
    factor = {"description": "factor on this load", **FACTOR}
    return {
        "type": "object",
        "properties": {OWN_WEIGHT: own_weight, "note": NOTE_SCHEMA},
        "patternProperties": {NAMED: factor},
        "additionalProperties": False,
    }
