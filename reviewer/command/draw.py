"""reviewer draw: a design to scale, or the curve of a gap, with what is found of it marked."""

from argparse import Namespace
from collections.abc import Callable, Sequence

from reviewer.command.inputs import Input
from reviewer.command.outputs import format_of, output_of
from reviewer.command.packs import packs_of
from reviewer.command.reading import read_review
from reviewer.command.ready import Ready
from reviewer.command.status import UNREAD
from reviewer.command.terminal import complain, say
from reviewer.command.usage import Parser, UsageError, one_of
from reviewer.judging.reviewed import Review
from reviewer.notation.nearest import nearest
from reviewer.notation.problem import render
from reviewer.reporting.drawings.curve import NoCurve, curve_drawing
from reviewer.reporting.drawings.elevation import elevation_drawing
from reviewer.reporting.drawings.marks import Mark, marks_of
from reviewer.reporting.drawings.plan import plan_drawing
from reviewer.reporting.drawings.scene import NoSuchConfiguration

CURVE = "curve"
VIEWS: dict[str, Callable[[Review, str | None, Sequence[Mark]], str]] = {
    "plan": plan_drawing,
    "elevation": elevation_drawing,
}


def run(arguments: Sequence[str]) -> int:
    """Run the command, and return the exit status. Raises UsageError."""
    options = parser().read(arguments)
    if options.file is None:
        raise UsageError("a drawing needs a design", "", "FILE, as in bench.yaml")
    if (options.view == CURVE) != (options.gap is not None):
        raise UsageError(
            "a curve is drawn of one gap",
            f"--gap {options.gap}" if options.gap else f"--view {options.view}",
            "--view curve and --gap PART together",
        )
    outputs = [(path, format_of(path, {".svg": "svg"})) for path in dict.fromkeys(options.output)]
    each = Input(options.file)
    review = read_review(each, packs_of(options.rules, options.shop).of(each.path, each.folder))
    for problem in review.problems:
        complain(render(problem))
    if review.derived is None:
        return UNREAD
    drawn = _drawn(review, options)
    if not outputs:
        say(drawn)
    for path, _ in outputs:
        output_of(path, lambda: Ready(drawn)).close()
    return 0


def parser() -> Parser:
    """The options of the command."""
    options = Parser(
        "draw",
        "Draw a design to scale in one of its configurations, with what is found of it numbered.",
        "reviewer draw bench.yaml --view elevation --configuration open --output open.svg",
    )
    options.add_argument("file", metavar="FILE", nargs="?", help="a design, or -")
    options.add_argument(
        "--view", type=one_of((*VIEWS, CURVE)), default="plan", metavar="VIEW",
        help="plan, from above (the default), elevation, from the front, or curve, of one gap",
    )  # fmt: skip
    options.add_argument(
        "--configuration", metavar="NAME", help="one of the design's; the first, if none is named"
    )
    options.add_argument(
        "--gap", metavar="PART", help="the gap, or the pair of parts, of which a curve is drawn"
    )
    options.add_argument(
        "--unmarked", action="store_true", help="the design alone, without what is found of it"
    )
    options.add_argument(
        "--output", action="append", default=[], metavar="FILE",
        help="write the drawing to a file that ends in .svg; standard output without; repeatable",
    )  # fmt: skip
    options.add_packs()
    return options


def _drawn(review: Review, options: Namespace) -> str:
    marks = () if options.unmarked else marks_of(review)
    try:
        if options.view == CURVE:
            return curve_drawing(review, options.gap, options.configuration, marks)
        return VIEWS[options.view](review, options.configuration, marks)
    except NoSuchConfiguration as error:
        what, known = "the design has no such configuration", [name for name in error.known if name]
        without = "a design that has configurations"
        found = error.name
    except NoCurve as error:
        what, known = "this is no gap between parts that move", list(error.known)
        without = "a design in which parts move, with travels and moves"
        found = error.name
    near = nearest(found, known)
    expected = f"one of {', '.join(known)}" if known else without
    raise UsageError(what, found, expected, f"write {near}" if near else "")
