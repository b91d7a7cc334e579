"""reviewer schema: the JSON Schema of a design or of a shop's file, from what both may give."""

import json
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from reviewer.command.inputs import Input, inputs_of
from reviewer.command.packs import Packs, packs_of
from reviewer.command.terminal import complain, say
from reviewer.command.usage import Parser, one_of
from reviewer.notation.problem import Problem, render
from reviewer.parts.kind import Kind
from reviewer.reading.events import read_yaml
from reviewer.reading.schema import design_schema
from reviewer.reading.shop_schema import shop_schema
from reviewer.reading.skeleton import validate_skeleton
from reviewer.reporting.data_schema import report_schema, trace_schema

MISFIT = 2
FILES: Mapping[str, Callable[[Mapping[str, Kind]], Any]] = {
    "design": design_schema,
    "shop": lambda kinds: shop_schema(),
    "review": lambda kinds: report_schema(),
    "trace": lambda kinds: trace_schema(),
}


def parser() -> Parser:
    """The options of the command."""
    options = Parser(
        "schema",
        "Print the JSON Schema (2020-12) of a design file, so that an editor completes its keys;"
        " or hold designs against it, as an editor does.",
        "reviewer schema > design.schema.json",
    )
    options.add_argument("paths", nargs="*", metavar="PATH", help="designs to hold against it")
    options.add_argument(
        "--of", type=one_of(tuple(FILES)), default="design", metavar="FILE",
        help="what it is of: design or shop, files that you write; review or trace, what the "
        "commands check and trace print with --format json",
    )  # fmt: skip
    options.add_argument(
        "--shop", default=None, metavar="FILE",
        help="a shop's file: kinds of part that it adds are in the schema too",
    )  # fmt: skip
    return options


def run(arguments: Sequence[str]) -> int:
    """Run the command, and return the exit status. Raises UsageError."""
    options = parser().read(arguments)
    packs = packs_of((), options.shop)
    if options.paths:
        return _held(options.paths, packs)
    in_force = packs.of()
    for problem in in_force.problems:
        complain(render(problem))
    say(json.dumps(FILES[options.of](in_force.kinds), indent=2) + "\n")
    return MISFIT if in_force.problems else 0


def _held(paths: Sequence[str], packs: Packs) -> int:
    """Say of each design whether it fits, and return the exit status."""
    status = 0
    for each in inputs_of(paths):
        problems = _misfits(each, packs.of(each.path, each.folder).kinds)
        for problem in problems:
            complain(render(problem))
        if problems:
            status = MISFIT
        else:
            say(f"{each.path} fits the schema\n")
    return status


def _misfits(each: Input, kinds: Mapping[str, Kind]) -> tuple[Problem, ...]:
    if each.problem is not None:
        return (each.problem,)
    document = read_yaml(each.read(), each.path)
    return document.problems or validate_skeleton(document, kinds)
