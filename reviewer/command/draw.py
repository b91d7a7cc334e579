"""reviewer draw: a design to scale, in plan or elevation, with what is found of it marked."""

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
from reviewer.reporting.drawings.elevation import elevation_drawing
from reviewer.reporting.drawings.marks import Mark, marks_of
from reviewer.reporting.drawings.plan import plan_drawing
from reviewer.reporting.drawings.scene import NoSuchConfiguration

VIEWS: dict[str, Callable[[Review, str | None, Sequence[Mark]], str]] = {
    "plan": plan_drawing,
    "elevation": elevation_drawing,
}


def run(arguments: Sequence[str]) -> int:
    """Run the command, and return the exit status. Raises UsageError."""
    options = parser().read(arguments)
    if options.file is None:
        raise UsageError("a drawing needs a design", "", "FILE, as in bench.yaml")
    outputs = [(path, format_of(path, {".svg": "svg"})) for path in dict.fromkeys(options.output)]
    each = Input(options.file)
    review = read_review(each, packs_of(options.rules, options.shop).of(each.path, each.folder))
    for problem in review.problems:
        complain(render(problem))
    if review.derived is None:
        return UNREAD
    drawn = _drawn(review, options.view, options.configuration, plain=options.unmarked)
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
        "--view", type=one_of(tuple(VIEWS)), default="plan", metavar="VIEW",
        help="plan, from above (the default), or elevation, from the front",
    )  # fmt: skip
    options.add_argument(
        "--configuration", metavar="NAME", help="one of the design's; the first, if none is named"
    )
    options.add_argument(
        "--unmarked", action="store_true", help="the design alone, without what is found of it"
    )
    options.add_argument(
        "--output", action="append", default=[], metavar="FILE",
        help="write the drawing to a file that ends in .svg; standard output without; repeatable",
    )  # fmt: skip
    options.add_argument(
        "--rules", action="append", default=[], metavar="FILE", help="more rules; repeatable"
    )
    options.add_argument(
        "--shop", default=None, metavar="FILE", help="the shop's file, if not the nearest shop.yaml"
    )
    return options


def _drawn(review: Review, view: str, configuration: str | None, *, plain: bool) -> str:
    marks = () if plain else marks_of(review)
    try:
        return VIEWS[view](review, configuration, marks)
    except NoSuchConfiguration as error:
        known = [name for name in error.known if name]
        near = nearest(error.name, known)
        raise UsageError(
            "the design has no such configuration",
            error.name,
            f"one of {', '.join(known)}" if known else "a design that has configurations",
            f"write {near}" if near else "",
        ) from None
