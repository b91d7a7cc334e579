"""The JSON Schema of the reports in JSON (2020-12): what a program may rely on."""

from typing import Any

from reviewer.judging.finding import LEVELS, STAGES
from reviewer.reporting.words import VERDICTS

Schema = dict[str, Any]

DIALECT = "https://json-schema.org/draft/2020-12/schema"
TEXT: Schema = {"type": "string"}
TEXT_OR_NULL: Schema = {"type": ["string", "null"]}
NUMBER_OR_NULL: Schema = {"type": ["number", "null"]}
FROM_ONE: Schema = {"type": "integer", "minimum": 1}
NUMBER: Schema = {"type": "number"}
SHARE: Schema = {"type": "number", "minimum": 0, "maximum": 1}
INFLUENCE: Schema = {
    "part": TEXT,
    "field": TEXT,
    "value": TEXT,
    "line": FROM_ONE,
    "column": FROM_ONE,
    "effect": {**NUMBER, "description": "change of the utilisation by one per cent more"},
    "elasticity": {**NUMBER, "description": "the same as per cent of it"},
}
TOLERANCE: Schema = {
    "corner": {**NUMBER_OR_NULL, "description": "utilisation at the worst corner"},
    "corner_fails": {"type": ["boolean", "null"]},
    "fails": {**SHARE, "description": "share of the samples that fail"},
    "unknown": {**SHARE, "description": "share that cannot be judged"},
    "samples": FROM_ONE,
    "band": {**TEXT_OR_NULL, "description": "the value that contributes most"},
    "part": {**SHARE, "description": "its part of the variance"},
}
TEXT_REVIEWED_UNDER: Schema = {
    "name": TEXT,
    "path": {**TEXT_OR_NULL, "description": "null: the rules that come with the program"},
    "mark": {**TEXT, "description": "start of the SHA-256 of its lines, each with a line feed"},
}
CHANGE: Schema = {
    "part": TEXT,
    "field": TEXT,
    "from": TEXT,
    "to": TEXT,
    "path": TEXT,
    "line": FROM_ONE,
    "column": FROM_ONE,
}


def report_schema() -> Schema:
    """The schema of what `--format json` prints."""
    return {
        "$schema": DIALECT,
        "title": "reviews of designs, format 1",
        **_table({"format": {"const": 1}, "designs": _list(_ref("design"))}),
        "$defs": {
            "design": _table(
                {
                    "path": TEXT,
                    "design": TEXT_OR_NULL,
                    "revision": TEXT_OR_NULL,
                    "findings": _list(_ref("finding")),
                    "problems": _list(_ref("problem")),
                    "shop": _or_null(_ref("shop")),
                    "cautions": _list(TEXT),
                    "reviewed_under": _table(
                        {"reviewer": TEXT_OR_NULL, "texts": _list(_table(TEXT_REVIEWED_UNDER))}
                    ),
                    "measured": _list(_ref("measurement")),
                }
            ),
            "measurement": _measurement(),
            "finding": _finding(),
            "side": {
                **_table({"value": NUMBER_OR_NULL, "unit": TEXT}),
                "description": "a value in its unit; null where it is not known",
            },
            "remedy": _remedy({}),
            "rejected": _remedy({"breaks": _list(TEXT)}),
            "change": _table(CHANGE),
            "influence": _table(INFLUENCE),
            "tolerance": _table(TOLERANCE),
            "shop": _table({"name": TEXT, "path": TEXT, "changes": _list(_ref("by_shop"))}),
            "by_shop": _table(
                {
                    "subject": {"enum": ["rule", "limit"]},
                    **dict.fromkeys(("name", "does", "by", "why", "path"), TEXT),
                    "line": FROM_ONE,
                }
            ),
            "concession": _table({"by": TEXT, "why": TEXT, "until": TEXT_OR_NULL}),
            "problem": _table(
                {
                    "path": TEXT,
                    "line": FROM_ONE,
                    "column": FROM_ONE,
                    "what": TEXT,
                    "found": TEXT,
                    "expected": TEXT,
                    "mend": TEXT_OR_NULL,
                }
            ),
        },
    }


def trace_schema() -> Schema:
    """The schema of what `reviewer trace --format json` prints."""
    step: Schema = {
        "name": TEXT,
        "says": TEXT,
        "value": {"type": ["number", "string", "boolean", "null"]},
        "unit": TEXT_OR_NULL,
        "case": TEXT_OR_NULL,
        "formula": TEXT_OR_NULL,
        "source": TEXT_OR_NULL,
        "path": TEXT_OR_NULL,
        "line": {"type": ["integer", "null"], "minimum": 1},
        "calibrated_by": TEXT_OR_NULL,
        "open_because": _or_null(_list(TEXT)),
        "inputs": _list({"anyOf": [_ref("step"), _ref("again")]}),
    }
    return {
        "$schema": DIALECT,
        "title": "the chain of numbers behind a quantity or a finding",
        "$ref": "#/$defs/step",
        "$defs": {
            "step": _table(step),
            "again": _table({"name": TEXT, "see": {"const": "above"}}),
        },
    }


def _finding() -> Schema:
    return _table(
        {
            "rule": TEXT,
            "part": TEXT,
            "with": _list(TEXT),
            "verdict": {"enum": list(VERDICTS)},
            "level": {"enum": list(LEVELS)},
            "stage": {"enum": list(STAGES)},
            "hazard": TEXT_OR_NULL,
            "utilisation": {
                **NUMBER_OR_NULL,
                "minimum": 0,
                "description": "demand over capacity; null where it has no number",
            },
            "demand": _or_null(_ref("side")),
            "capacity": _or_null(_ref("side")),
            "case": TEXT_OR_NULL,
            "path": TEXT,
            "line": FROM_ONE,
            "column": FROM_ONE,
            "message": TEXT,
            "calibrated": {
                **_list(TEXT),
                "description": "values that a measurement settles, and that it stands on",
            },
            "remedies": {
                **_or_null(_list(_ref("remedy"))),
                "description": "what mends it, the smallest change first; null: not searched",
            },
            "rejected": {
                **_or_null(_list(_ref("rejected"))),
                "description": "what mends it and breaks other findings; null: not searched",
            },
            "no_remedy": {**TEXT_OR_NULL, "description": "why nothing is offered"},
            "influences": {
                **_or_null(_list(_ref("influence"))),
                "description": "what moves it, the strongest first; null: not computed",
            },
            "tolerance": {
                **_or_null(_ref("tolerance")),
                "description": "null: not sampled, or no tolerance touches it",
            },
            "open_because": _or_null(_list(TEXT)),
            "silenced": {**_or_null(_ref("by_shop")), "description": "the rule counts for nothing"},
            "concession": _or_null(_ref("concession")),
        }
    )


def _measurement() -> Schema:
    """A measurement against its prediction, in one unit."""
    change = {"value": TEXT, "from": NUMBER_OR_NULL, "to": NUMBER_OR_NULL, "unit": TEXT}
    return _table(
        {
            **dict.fromkeys(("test", "quantity", "loading", "by", "on"), TEXT),
            "proven": {"type": "boolean"},
            **dict.fromkeys(
                ("read", "predicted", "least", "most", "allowed_difference"), NUMBER_OR_NULL
            ),
            "unit": TEXT,
            "agrees": {"type": ["boolean", "null"]},
            "changed": {**_list(TEXT), "description": "what has changed behind it since"},
            "unknown": {**TEXT_OR_NULL, "description": "why nobody can tell what has changed"},
            "explained_by": {
                **_or_null(_list(_table({**change, "line": {"type": ["integer", "null"]}}))),
                "description": "null: not searched",
            },
            "calibrates": _or_null(_table(change)),
            "path": TEXT,
            "line": FROM_ONE,
        }
    )


def _remedy(more: Schema) -> Schema:
    return _table(
        {
            **CHANGE,
            "utilisation": {**NUMBER_OR_NULL, "description": "after the change"},
            "limit": {**TEXT_OR_NULL, "description": "at which the rule just holds"},
            "also": {**_list(_ref("change")), "description": "changes made with it"},
            **more,
        }
    )


def _table(properties: Schema) -> Schema:
    return {
        "type": "object",
        "properties": properties,
        "required": list(properties),
        "additionalProperties": False,
    }


def _list(items: Schema) -> Schema:
    return {"type": "array", "items": items}


def _or_null(schema: Schema) -> Schema:
    return {"anyOf": [schema, {"type": "null"}]}


def _ref(name: str) -> Schema:
    return {"$ref": f"#/$defs/{name}"}
