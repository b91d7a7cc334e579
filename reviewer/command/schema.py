"""reviewer schema: the JSON Schema of a design or of a shop's file, from what both may give."""

import json
from collections.abc import Sequence

from reviewer.command.inputs import Input, inputs_of
from reviewer.command.terminal import complain, say
from reviewer.command.usage import Parser
from reviewer.notation.problem import Problem, render
from reviewer.parts.registry import KINDS
from reviewer.reading.events import read_yaml
from reviewer.reading.schema import design_schema
from reviewer.reading.shop_schema import shop_schema
from reviewer.reading.skeleton import validate_skeleton

MISFIT = 2


def run(arguments: Sequence[str]) -> int:
    """Run the command, and return the exit status. Raises UsageError."""
    parser = Parser(
        "schema",
        "Print the JSON Schema (2020-12) of a design file, so that an editor completes its keys;"
        " or hold designs against it, as an editor does.",
        "reviewer schema > design.schema.json",
    )
    parser.add_argument("paths", nargs="*", metavar="PATH", help="designs to hold against it")
    parser.add_argument(
        "--shop", action="store_true", help="the schema of a shop's file, shop.yaml, instead"
    )
    options = parser.read(arguments)
    if options.paths:
        return _held(options.paths)
    schema = shop_schema() if options.shop else design_schema(KINDS)
    say(json.dumps(schema, indent=2) + "\n")
    return 0


def _held(paths: Sequence[str]) -> int:
    """Say of each design whether it fits, and return the exit status."""
    status = 0
    for each in inputs_of(paths):
        problems = _misfits(each)
        for problem in problems:
            complain(render(problem))
        if problems:
            status = MISFIT
        else:
            say(f"{each.path} fits the schema\n")
    return status


def _misfits(each: Input) -> tuple[Problem, ...]:
    if each.problem is not None:
        return (each.problem,)
    document = read_yaml(each.read(), each.path)
    return document.problems or validate_skeleton(document, KINDS)
