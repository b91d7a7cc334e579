"""reviewer schema: the JSON Schema of a design or of a shop's file, from what both may give."""

import json
from collections.abc import Sequence

from reviewer.command.terminal import say
from reviewer.command.usage import Parser
from reviewer.parts.registry import KINDS
from reviewer.reading.schema import design_schema
from reviewer.reading.shop_schema import shop_schema


def run(arguments: Sequence[str]) -> int:
    """Run the command, and return the exit status. Raises UsageError."""
    parser = Parser(
        "schema",
        "Print the JSON Schema (2020-12) of a design file, so that an editor completes its keys.",
        "reviewer schema > design.schema.json",
    )
    parser.add_argument(
        "--shop", action="store_true", help="the schema of a shop's file, shop.yaml, instead"
    )
    schema = shop_schema() if parser.read(arguments).shop else design_schema(KINDS)
    say(json.dumps(schema, indent=2) + "\n")
    return 0
