"""reviewer schema: the JSON Schema of a design file, from the fields that the kinds declare."""

import json
from collections.abc import Sequence

from reviewer.command.terminal import say
from reviewer.command.usage import Parser
from reviewer.parts.registry import KINDS
from reviewer.reading.schema import design_schema


def run(arguments: Sequence[str]) -> int:
    """Run the command, and return the exit status. Raises UsageError."""
    Parser(
        "schema",
        "Print the JSON Schema (2020-12) of a design file, so that an editor completes its keys.",
        "reviewer schema > design.schema.json",
    ).read(arguments)
    say(json.dumps(design_schema(KINDS), indent=2) + "\n")
    return 0
