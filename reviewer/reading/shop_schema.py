"""The JSON Schema of a shop's file, generated from the rows that it may give."""

from reviewer.parts.kind import Kind
from reviewer.reading.schema import DIALECT, table_schema
from reviewer.reading.schema_entries import NOTE_SCHEMA, Schema
from reviewer.reading.shop_kinds import ALLOWANCES, CUTTER, LIMIT, PRICE, RULE, SHOP, STOCK
from reviewer.reading.shop_stock import REQUIRED

PACK: Schema = {
    "description": "a path, or an installed package",
    "anyOf": [
        {"type": "string", "minLength": 1},
        {
            "type": "object",
            "properties": {"installed": {"type": "string", "minLength": 1}},
            "required": ["installed"],
            "additionalProperties": False,
        },
    ],
}


def shop_schema() -> Schema:
    """The schema of a shop's file; it takes every file that `read_shop` takes."""
    stock = {name: _by_name(kind, REQUIRED[name]) for name, kind in STOCK.items()}
    sections: Schema = {
        "stock": {
            "description": "what the shop has beside the tables",
            "type": "object",
            "properties": {**stock, "note": NOTE_SCHEMA},
            "additionalProperties": False,
        },
        "cutters": _by_name(CUTTER),
        "allowances": {"description": ALLOWANCES.says, **table_schema(ALLOWANCES)},
        "prices": _by_name(PRICE),
        "packs": {"description": "packs of rules to add", "type": "array", "items": PACK},
        "rules": _by_name(RULE, ("by", "why")),
        "limits": _by_name(LIMIT, ("value", "by", "why")),
    }
    return {
        "$schema": DIALECT,
        "title": "shop",
        "description": SHOP.says,
        **table_schema(SHOP, sections),
        "required": ["shop"],
    }


def _by_name(kind: Kind, required: tuple[str, ...] = ()) -> Schema:
    """A table of entries, each under the name that the shop gives it."""
    return {
        "description": f"{kind.says}, by name",
        "type": "object",
        "properties": {"note": {}},
        "additionalProperties": {**table_schema(kind), "required": list(required)},
    }
