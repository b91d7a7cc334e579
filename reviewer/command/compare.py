"""reviewer compare: two files, or two revisions in git: what got better, and what got worse."""

import os
import sys
from argparse import Namespace
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path

from reviewer.command.inputs import Input
from reviewer.command.outputs import format_of, output_of
from reviewer.command.packs import Packs, packs_of
from reviewer.command.reading import read_review
from reviewer.command.ready import Ready
from reviewer.command.revision import RevisionFolder, blob, split_revision
from reviewer.command.status import FAILS, HOLDS, UNREAD
from reviewer.command.terminal import complain, say, style_of
from reviewer.command.usage import Parser, UsageError, one_of
from reviewer.judging.finding import LEVELS
from reviewer.judging.in_force import InForce
from reviewer.judging.reviewed import Review
from reviewer.notation.problem import Place, Problem, render
from reviewer.reading.folder import Refused
from reviewer.reporting.sheet import Style
from reviewer.reviewing import review_under
from reviewer.studying.compare import Comparison, compare

FORMATS = ("text", "json", "markdown")
ENDINGS = {".txt": "text", ".json": "json", ".md": "markdown"}


def run(arguments: Sequence[str]) -> int:
    """Run the command, and return the exit status. Raises UsageError."""
    options = parser().read(arguments)
    if options.new is None:
        raise UsageError(
            "a comparison needs two designs",
            options.old or "",
            "OLD NEW, each a file or REVISION:path, as in HEAD~1:bench.yaml bench.yaml",
        )
    outputs = [(path, format_of(path, ENDINGS)) for path in dict.fromkeys(options.output)]
    in_force = _in_force(options.new, packs_of(options.rules, options.shop))
    reviews = [_review(each, in_force, options.on) for each in (options.old, options.new)]
    problems = [*in_force.problems, *(problem for each in reviews for problem in each.problems)]
    for problem in dict.fromkeys(problems):
        complain(render(problem))
    old, new = reviews
    if old.derived is None or new.derived is None:
        return UNREAD
    found = compare(old, new, in_force.rules)
    say(_told(found, options, options.format, style_of(sys.stdout, os.environ)))
    for path, kind in outputs:
        text = _told(found, options, kind, Style())
        output_of(path, lambda text=text: Ready(text)).close()  # type: ignore[misc]
    status = FAILS if found.regressions(options.fail_at) else HOLDS
    return UNREAD if in_force.problems else status


def parser() -> Parser:
    """The options of the command."""
    options = Parser(
        "compare",
        "Compare two designs: what fails now, what is mended, what moved, and because of what.",
        "reviewer compare HEAD~1:bench.yaml bench.yaml --format markdown",
    )
    options.add_argument("old", metavar="OLD", nargs="?", help="a design, or REVISION:path in git")
    options.add_argument("new", metavar="NEW", nargs="?", help="a design, or REVISION:path in git")
    options.add_argument(
        "--format", type=one_of(FORMATS), default="text", metavar="FORMAT",
        help="text, json or markdown",
    )  # fmt: skip
    options.add_argument(
        "--output", action="append", default=[], metavar="FILE",
        help=f"write a file too, its format by its ending: {' or '.join(ENDINGS)}; repeatable",
    )  # fmt: skip
    options.add_argument(
        "--fail-at", type=one_of(LEVELS), default="must", metavar="LEVEL",
        help="the level from which a step back makes the exit status 1: must, should or note",
    )  # fmt: skip
    options.add_packs()
    options.add_day()
    return options


def _in_force(argument: str, packs: Packs) -> InForce:
    """What both designs are judged by: what is in force for the new one."""
    named = split_revision(argument)
    each = Input(named[1] if named else argument)
    return packs.of(each.path, each.folder)


def _review(argument: str, in_force: InForce, on: date | None) -> Review:
    """The review of a file, or of one that a revision has."""
    sound = replace(in_force, problems=())
    named = split_revision(argument)
    if named is None:
        return read_review(Input(argument), sound, on)
    revision, path = named
    folder = RevisionFolder(Path.cwd(), revision)
    try:
        source = blob(revision, path, folder.root)
    except Refused as refused:
        return Review(argument, (Problem(Place(argument, 1, 1, 2), *refused.words),))
    return review_under(sound, source, path, folder, on)


def _told(found: Comparison, options: Namespace, kind: str, style: Style) -> str:
    names, level = (options.old, options.new), options.fail_at
    if kind == "json":
        import json

        from reviewer.reporting.compare_data import comparison_data

        return json.dumps(comparison_data(found, names, level), indent=1, allow_nan=False) + "\n"
    if kind == "markdown":
        from reviewer.reporting.compare_markdown import comparison_markdown

        return comparison_markdown(found, names, level)
    from reviewer.reporting.compare_text import comparison_text

    return comparison_text(found, names, level, style)
