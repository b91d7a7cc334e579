"""The JSON Schema of one field, from its row.

The walk over the file is the judge; the schema helps an editor, and takes all that the walk takes.
"""

import re
from typing import Any

from reviewer.notation.dimension import LENGTH, NUMBER, si_symbol
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
    Text,
)
from reviewer.reading.due import due_in, shape_form, words_of
from reviewer.reading.names import NAME, NAMED

Schema = dict[str, Any]

NOTE_SCHEMA: Schema = {
    "description": "a note to readers; Reviewer passes over it",
    "type": ["string", "number", "boolean", "null"],
}
NAME_PATTERN = f"^{NAME.pattern}$"
ANY_DIGIT = "[0-9]"
DATE_PATTERN = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"
SI_WORDS = {
    "m": "metres (m)",
    "kg": "kilograms (kg)",
    "N": "newtons (N)",
    "rad": "radians (rad)",
    "N/m": "newtons per metre (N/m)",
    "N/m^2": "pascals (Pa)",
    "N m": "newton metres (N m)",
    "kg/m^3": "kilograms per cubic metre (kg/m^3)",
    "K": "kelvins (K)",
    "s": "seconds (s)",
}


def field_schema(row: Row, rows: dict[str, Row]) -> Schema:
    """The schema of a field's value, with what it says and what it takes."""
    return {"description": description(row), **_value(row, rows)}


def description(row: Row) -> str:
    """What an editor shows of a field.

    >>> description(Row("gap", "m", "gap under the plate", Measure(example="0.15 mm")))
    'gap under the plate: a length, such as 0.15 mm; computed in metres (m)'
    """
    text = f"{row.says}: {due_in(row)}"
    if isinstance(row.given, Measure) and row.dimension != NUMBER:
        symbol = si_symbol(row.dimension)
        text += f"; computed in {SI_WORDS.get(symbol, symbol)}"
    return text


def _value(row: Row, rows: dict[str, Row]) -> Schema:
    match row.given:
        case Measure():
            return _measure(row, row.given)
        case Count(default=default, at_least=least, at_most=most):
            return {"type": "integer", "minimum": least, "maximum": most, **_default(default)}
        case Choice(options=options, default=default):
            return {"enum": list(options), **_default(default)}
        case Choices(options=options):
            return _one_or_more({"enum": list(options)})
        case Stock(example=example):
            examples = {"examples": [example.strip('"')]} if example else {}
            return {"type": ["string", "number"], **examples}
        case Flag(default=default):
            return {"type": "boolean", **_default(default)}
        case Date():
            return {"type": "string", "pattern": DATE_PATTERN}
        case PartName(several=several):
            name = {"type": "string", "pattern": NAME_PATTERN}
            return _one_or_more(name) if several else name
        case Shape():
            return _shape(row.given, rows)
        case Points():
            return _points(row.given)
        case Named():
            return _named(row.given)
        case Text(default=default):
            return {"type": ["string", "number", "boolean"], "minLength": 1, **_default(default)}
    raise TypeError(f"{row.path} is not given in a file, so that it has no schema")


def _default(value: object) -> Schema:
    return {} if value is None else {"default": value}


def _one_or_more(item: Schema) -> Schema:
    several = {"type": "array", "items": item, "minItems": 1, "uniqueItems": True}
    return {"anyOf": [item, several]}


def _measure(row: Row, entry: Measure) -> Schema:
    """A text with a digit in it, or a word; a bare number too, where one may be right."""
    bare = row.dimension in (LENGTH, NUMBER)
    words = words_of(entry)
    pattern = ANY_DIGIT
    if words:
        pattern += rf"|^\s*({'|'.join(re.escape(word) for word in words)})\s*$"
    examples = [each for each in (entry.example, *words) if each]
    return {
        "type": ["string", "number"] if bare else "string",
        "pattern": pattern,
        **({"examples": examples} if examples else {}),
        **_default(entry.default),
    }


def _shape(shape: Shape, rows: dict[str, Row]) -> Schema:
    words = [word for word, _ in shape.alternatives]
    return {
        "type": "object",
        "properties": {
            **{word: _listed(word, paths, rows) for word, paths in shape.alternatives},
            "note": NOTE_SCHEMA,
        },
        "additionalProperties": False,
        "oneOf": [{"required": [word]} for word in words],
    }


def _points(entry: Points) -> Schema:
    columns = [field_schema(column, {}) for column in entry.columns]
    point = {
        "type": "array",
        "prefixItems": columns,
        "minItems": len(columns),
        "maxItems": len(columns),
    }
    bounds = {"minItems": entry.at_least, "maxItems": entry.at_most}
    return {"type": "array", "items": columns[0] if len(columns) == 1 else point, **bounds}


def _named(entry: Named) -> Schema:
    """A table of things by name, each a table of its fields."""
    one = {
        "type": "object",
        "properties": {
            **{field.path: field_schema(field, {}) for field in entry.rows},
            "note": NOTE_SCHEMA,
        },
        "additionalProperties": False,
    }
    return {
        "type": "object",
        "properties": {"note": NOTE_SCHEMA},
        "patternProperties": {NAMED: one},
        "additionalProperties": False,
        "minProperties": 1,
    }


def _listed(word: str, paths: tuple[str, ...], rows: dict[str, Row]) -> Schema:
    """The list of measures of one shape; one alone may stand without brackets."""
    measures = [field_schema(rows[path], rows) for path in paths]
    several = {
        "description": shape_form(word, paths),
        "type": "array",
        "prefixItems": measures,
        "minItems": len(measures),
        "maxItems": len(measures),
    }
    return several if len(measures) > 1 else {"anyOf": [measures[0], several]}
