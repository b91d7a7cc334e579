"""reviewer trace: the chain of numbers behind one quantity or one finding of a design."""

import os
import sys
from collections.abc import Sequence
from dataclasses import replace

from reviewer.command.inputs import Input
from reviewer.command.packs import packs_of
from reviewer.command.reading import read_review
from reviewer.command.status import UNREAD
from reviewer.command.terminal import complain, say, style_of
from reviewer.command.usage import Parser, UsageError, one_of
from reviewer.notation.problem import render
from reviewer.reporting.sheet import Style
from reviewer.studying.trace import NoSuchQuantity, Step, trace, trace_part

FORMATS = ("text", "json")


def run(arguments: Sequence[str]) -> int:
    """Run the command, and return the exit status. Raises UsageError."""
    options = parser().read(arguments)
    if options.name is None:
        raise UsageError(
            "a trace needs a design and a name",
            options.file or "",
            "FILE PART.NAME, as in bench.yaml ring.carry.peak_load",
        )
    each = Input(options.file)
    in_force = packs_of(options.rules, options.shop).of(each.path, each.folder)
    found = read_review(each, replace(in_force, problems=()))
    for problem in (*in_force.problems, *found.problems):
        complain(render(problem))
    if found.derived is None:
        return UNREAD
    style = style_of(sys.stdout, os.environ)
    part = trace_part(found, options.name)
    if part is not None:
        say(_of_part(part, found.path, options.format, style))
        return UNREAD if in_force.problems else 0
    try:
        step = trace(found, options.name)
    except NoSuchQuantity as error:
        raise UsageError(
            "the design has no such quantity and no such rule",
            error.name,
            "PART.NAME, the name of a quantity of a part or of a rule on it",
            f"write {error.near}" if error.near else "",
        ) from None
    say(_told(step, found.path, options.format, style))
    return UNREAD if in_force.problems else 0


def parser() -> Parser:
    """The options of the command."""
    options = Parser(
        "trace",
        "Follow a quantity, or a rule on a part, back to the lines of the file.",
        "reviewer trace bench.yaml ring.carry.peak_load",
    )
    options.add_argument("file", metavar="FILE", nargs="?", help="a design, or -")
    options.add_argument(
        "name",
        metavar="PART.NAME",
        nargs="?",
        help="a quantity, or a rule on a part; a part alone lists what it has",
    )
    options.add_argument(
        "--format", type=one_of(FORMATS), default="text", metavar="FORMAT", help="text or json"
    )
    options.add_packs()
    return options


def _of_part(part: Step, path: str, kind: str, style: Style) -> str:
    if kind == "json":
        return _told(part, path, kind, style)
    from reviewer.reporting.trace_text import part_text

    return part_text(part, path, style)


def _told(step: Step, path: str, kind: str, style: Style) -> str:
    if kind == "json":
        import json

        from reviewer.reporting.trace_data import trace_data

        return json.dumps(trace_data(step), indent=2, allow_nan=False) + "\n"
    from reviewer.reporting.trace_text import trace_text

    return trace_text(step, path, style)
