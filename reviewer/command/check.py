"""reviewer check: review designs, report what was found, and say by the exit status how it went."""

import os
import sys
from argparse import Namespace
from collections.abc import Iterable, Iterator, Sequence
from contextlib import ExitStack

from reviewer.command.cache_folder import cache_folder
from reviewer.command.desk import Desk
from reviewer.command.done import Done
from reviewer.command.formats import ENDINGS, FORMATS, report_of
from reviewer.command.inputs import Input, inputs_of
from reviewer.command.outputs import Output, format_of, output_of
from reviewer.command.packs import Packs, packs_of
from reviewer.command.progress import Progress
from reviewer.command.status import UNREAD
from reviewer.command.terminal import complain, style_of
from reviewer.command.usage import Parser, UsageError, count, one_of
from reviewer.command.workers import all_done, workers_for
from reviewer.judging.finding import LEVELS
from reviewer.judging.in_force import InForce
from reviewer.notation.problem import render
from reviewer.reporting.sheet import Style
from reviewer.reporting.words import joined


def run(arguments: Sequence[str]) -> int:
    """Run the command, and return the exit status. Raises UsageError."""
    options = parser().read(arguments)
    if not options.paths:
        raise UsageError("no design is named", "", "the path of a file or folder, or -", "")
    if options.watch:
        from reviewer.command.watch import watch

        return watch(options)
    packs = packs_of(options.rules, options.shop)
    told = Told()
    status = told.of(packs.of()) if options.rules or options.shop else 0
    with ExitStack() as unfinished:
        outputs = _outputs(options, packs, unfinished)
        inputs = _inputs(options, packs)
        status = max(status, _reported(options, packs, outputs, inputs, told))
        for output in outputs:
            output.close()
        unfinished.pop_all()
    return status


def parser() -> Parser:
    """The options of the command."""
    options = Parser(
        "check",
        "Review designs: files, folders with designs in them, or - for standard input.",
        "reviewer check bench.yaml --fail-at should --output review.json",
    )
    options.add_argument("paths", metavar="PATH", nargs="*", help="a design, a folder, or -")
    options.add_argument(
        "--format", type=one_of(FORMATS), default="text", metavar="FORMAT",
        help=f"{joined(FORMATS, 'or')}; text where none is named",
    )  # fmt: skip
    options.add_argument(
        "--output", action="append", default=[], metavar="FILE",
        help=f"write a file too, by its ending {joined(list(ENDINGS), 'or')}; repeatable",
    )  # fmt: skip
    options.add_argument(
        "--rules", action="append", default=[], metavar="FILE", help="more rules; repeatable"
    )
    options.add_argument(
        "--shop", default=None, metavar="FILE",
        help="the shop's file; the nearest shop.yaml beside or above a design if left out",
    )  # fmt: skip
    options.add_argument(
        "--fail-at", type=one_of(LEVELS), default="must", metavar="LEVEL",
        help="the level from which a finding makes the exit status 1: must, should or note",
    )  # fmt: skip
    options.add_argument(
        "--allow-open", action="store_true", help="let pass what could not be reviewed"
    )
    options.add_day()
    options.add_argument(
        "--since", default=None, metavar="REVISION",
        help="only what has changed since a revision in git, and what depends on it",
    )  # fmt: skip
    options.add_argument(
        "--watch", action="store_true",
        help="review again on each save, and tell what has changed",
    )  # fmt: skip
    options.add_argument(
        "-j", dest="workers", type=count, default=None, metavar="N",
        help="processes to review in; as many as there are cores from eight designs on, else one",
    )  # fmt: skip
    options.add_argument(
        "--cache", default=None, metavar="FOLDER",
        help="where reviews are kept from one run to the next; off keeps none",
    )  # fmt: skip
    options.add_argument("--all", action="store_true", help="list everything that holds")
    options.add_argument(
        "--no-remedies", action="store_true", help="do not search for changes that mend what fails"
    )
    options.add_argument(
        "--tolerance", action="store_true",
        help="sample the values that have a tolerance: worst corner, and how often it fails",
    )  # fmt: skip
    options.add_argument(
        "--what-matters", action="store_true",
        help="rank the values that move what fails or nearly does",
    )  # fmt: skip
    return options


def _outputs(options: Namespace, packs: Packs, unfinished: ExitStack) -> list[Output]:
    """Standard output and the files; a file that is not finished is taken away again."""
    kinds = [(path, format_of(path, ENDINGS)) for path in dict.fromkeys(options.output)]
    shown = style_of(sys.stdout, os.environ)
    printed = report_of(options.format, packs, shown, everything=options.all)
    outputs = [output_of(None, lambda: printed)]
    for path, kind in kinds:
        report = report_of(kind, packs, Style(), everything=options.all, problems=True)
        output = output_of(path, lambda report=report: report)  # type: ignore[misc]
        unfinished.callback(output.drop)
        outputs.append(output)
    return outputs


def _reported(
    options: Namespace,
    packs: Packs,
    outputs: Sequence[Output],
    inputs: Sequence[Input],
    told: "Told",
) -> int:
    """Report one design after the other, and return the highest status."""
    status = 0
    with Progress(sys.stderr, os.environ) as progress:
        progress.lead(_so_far(0, inputs), now=len(inputs) > 1)
        for number, done in enumerate(_all_done(options, packs, outputs, inputs), 1):
            progress.clear()
            told.once(done.once)
            for text in done.told:
                complain(text)
            for output, piece in zip(outputs, done.pieces, strict=True):
                output.put(piece)
            status = max(status, done.status)
            progress.lead(_so_far(number, inputs), now=number < len(inputs))
    return status


def _so_far(done: int, inputs: Sequence[Input]) -> str:
    """How many designs are reviewed; of one alone what it is called."""
    if len(inputs) < 2:
        return f"reviewing {inputs[0].path}" if inputs else ""
    return f"{done:,} of {len(inputs):,} designs reviewed"


def _inputs(options: Namespace, packs: Packs) -> Sequence[Input]:
    """The designs to review; those that are left out are told on standard error."""
    inputs = list(inputs_of(options.paths))
    if options.since is None:
        return inputs
    from reviewer.command.since import Since

    selection = Since(options.since, packs).select(inputs)
    for text in selection.told(options.since):
        complain(f"reviewer check: {text}")
    return selection.inputs


def _all_done(
    options: Namespace, packs: Packs, outputs: Sequence[Output], inputs: Sequence[Input]
) -> Iterator[Done]:
    """What each design came to, in order: reviewed now, or as it is kept."""
    reports = [output.report for output in outputs]
    folder = cache_folder(options.cache, os.environ)
    if folder is None:
        desk = Desk(options, packs, reports)
        return all_done(desk, inputs, workers_for(options.workers, len(inputs)))
    from reviewer.command.cache import Cache
    from reviewer.command.kept import kept_or_done

    shown = f"{options.format} {style_of(sys.stdout, os.environ)}"
    kinds = [format_of(path, ENDINGS) for path in dict.fromkeys(options.output)]
    cache = Cache(folder, options, [shown, *kinds])
    desk = Desk(options, packs, reports, cache)
    return kept_or_done(desk, cache, inputs, options.workers)


class Told:
    """What is told on standard error; what is wrong with packs and shops is told once."""

    def __init__(self) -> None:
        """Nothing is told yet."""
        self._seen: set[str] = set()

    def once(self, problems: Iterable[str]) -> None:
        """Tell what has not been told yet."""
        for problem in problems:
            if problem not in self._seen:
                complain(problem)
                self._seen.add(problem)

    def of(self, in_force: InForce) -> int:
        """Tell what is wrong with what is in force, and return the exit status that it makes."""
        self.once(render(problem) for problem in in_force.problems)
        return UNREAD if in_force.problems else 0
