"""reviewer size: one value over its sizes, two on a map, or a whole design at other sizes."""

import os
import re
import sys
from argparse import Namespace
from collections.abc import Callable, Sequence
from dataclasses import replace

from reviewer.command.inputs import Input
from reviewer.command.outputs import format_of, output_of
from reviewer.command.packs import packs_of
from reviewer.command.progress import Progress
from reviewer.command.reading import read_review
from reviewer.command.ready import Ready
from reviewer.command.status import UNREAD
from reviewer.command.terminal import complain, say, style_of
from reviewer.command.usage import Parser, UsageError, one_of
from reviewer.deriving.derived import Derived
from reviewer.judging.in_force import InForce
from reviewer.notation.problem import render
from reviewer.notation.quantity import QuantityError
from reviewer.reading.shop_stock import Tables
from reviewer.reporting.sheet import Style
from reviewer.studying.given import Given
from reviewer.studying.mapping import Map, mapping
from reviewer.studying.scaling import Scaling, scaling
from reviewer.studying.stops import NoSizes, NoSuchField, field_of, is_sold, stops_of
from reviewer.studying.sweep import Stop, Sweep, sweep

FORMATS = ("text", "json", "svg")
ENDINGS = {".txt": "text", ".json": "json", ".svg": "svg"}
MOST_FIELDS = 2
STEP = 0.1  # of the factors of a scaled design
RANGE = re.compile(r"(\d+(?:\.\d+)?|\.\d+)\.\.(\d+(?:\.\d+)?|\.\d+)", re.ASCII)
LEAST, MOST = 0.1, 10.0
Found = Sweep | Map | Scaling


def run(arguments: Sequence[str]) -> int:
    """Run the command, and return the exit status. Raises UsageError."""
    options = parser().read(arguments)
    if options.file is None or bool(options.fields) == bool(options.scale):
        raise UsageError(
            "a size needs a design, and one or two values or a scale",
            " ".join(filter(None, [options.file, *options.fields])),
            "FILE PART.FIELD, as in bench.yaml ring.plate.thickness, or FILE --scale 0.8..1.6",
        )
    outputs = [(path, format_of(path, ENDINGS)) for path in dict.fromkeys(options.output)]
    factors = _factors(options.scale) if options.scale else ()
    each = Input(options.file)
    in_force = packs_of(options.rules, options.shop).of(each.path, each.folder)
    review = read_review(each, replace(in_force, problems=()))
    for problem in (*in_force.problems, *review.problems):
        complain(render(problem))
    if review.derived is None:
        return UNREAD
    with Progress(sys.stderr, os.environ) as progress:
        progress.lead(f"sizes of {each.path}")
        found = _found(review.derived, in_force, options, factors)
    say(_told(found, options.format, style_of(sys.stdout, os.environ)))
    for path, kind in outputs:
        text = _told(found, kind, Style())
        output_of(path, lambda text=text: Ready(text)).close()  # type: ignore[misc]
    return UNREAD if in_force.problems else 0


def parser() -> Parser:
    """The options of the command."""
    options = Parser(
        "size",
        "Sweep a value of a design over its sizes: how far every rule is used, and what passes.",
        "reviewer size bench.yaml ring.plate.thickness --stock --output thickness.svg",
    )
    options.add_argument("file", metavar="FILE", nargs="?", help="a design, or -")
    options.add_argument(
        "fields", metavar="PART.FIELD", nargs="*", help="a given value; two of them make a map"
    )
    options.add_argument("--from", dest="low", metavar="SIZE", help="the least size of the first")
    options.add_argument("--to", dest="high", metavar="SIZE", help="the largest size of the first")
    options.add_argument("--stock", action="store_true", help="only sizes that are sold")
    options.add_argument(
        "--scale", metavar="A..B", help="the whole design at factors from A to B instead"
    )
    options.add_argument(
        "--format", type=one_of(FORMATS), default="text", metavar="FORMAT",
        help="text, json or svg",
    )  # fmt: skip
    options.add_argument(
        "--output", action="append", default=[], metavar="FILE",
        help=f"write a file too, its format by its ending: {' or '.join(ENDINGS)}; repeatable",
    )  # fmt: skip
    options.add_packs()
    return options


def _factors(text: str) -> tuple[float, ...]:
    """The factors of a scaled design: both ends, tenths between them, and 1."""
    match = RANGE.fullmatch(text)
    low, high = (float(each) for each in match.groups()) if match else (0.0, 0.0)
    if not LEAST <= low < high <= MOST:
        expected = f"two factors from {LEAST:g} to {MOST:g}, such as 0.8..1.6"
        raise UsageError("this is no range of factors", text, expected)
    tenths = range(int(low / STEP) + 1, int(high / STEP) + 1)
    factors = {low, high, *(tenth * STEP for tenth in tenths if low < tenth * STEP < high)}
    if low < 1.0 < high:
        factors.add(1.0)
    return tuple(sorted({round(each, 6) for each in factors}))


def _found(
    derived: Derived, in_force: InForce, options: Namespace, factors: Sequence[float]
) -> Found:
    rules, tables = in_force.rules, in_force.tables
    if factors:
        return scaling(derived, rules, factors, tables)
    if len(options.fields) > MOST_FIELDS:
        what, found = "a map has two values", options.fields[MOST_FIELDS]
        raise UsageError(what, found, "FILE PART.FIELD PART.FIELD")
    given = [_field(derived, name) for name in options.fields]
    first = _stops(derived, given[0], (options.low, options.high), options.stock, tables)
    if len(given) == 1:
        return sweep(derived, rules, given[0], first, between=not options.stock)
    sold = options.stock and is_sold(derived, given[1], tables)
    second = _stops(derived, given[1], (None, None), sold, tables)
    return mapping(derived, rules, (given[0], given[1]), (first, second))


def _field(derived: Derived, name: str) -> Given:
    try:
        return field_of(derived.design, name)
    except NoSuchField as error:
        raise UsageError(
            "the design gives no such value",
            error.name,
            "PART.FIELD, a value that the file gives for a part or a load",
            f"write {error.near}" if error.near else "",
        ) from None


def _stops(
    derived: Derived,
    given: Given,
    ends: tuple[str | None, str | None],
    stock: bool,
    tables: Tables,
) -> tuple[Stop, ...]:
    try:
        return stops_of(derived, given, *ends, stock=stock, tables=tables)
    except NoSizes as error:
        raise UsageError(error.what, error.found, error.expected) from None
    except QuantityError as error:
        raise UsageError(error.what, error.found, error.expected, error.mend or "") from None


def _told(found: Found, kind: str, style: Style) -> str:
    if kind == "json":
        return _json(found)
    if kind == "svg":
        return _svg(found)
    from reviewer.reporting.size_text import map_text, scaling_text, sweep_text

    if isinstance(found, Sweep):
        return sweep_text(found, style)
    return map_text(found, style) if isinstance(found, Map) else scaling_text(found, style)


def _json(found: Found) -> str:
    import json

    from reviewer.reporting.size_data import map_data, scaling_data, sweep_data

    tellers: dict[type, Callable[..., object]] = {
        Sweep: sweep_data,
        Map: map_data,
        Scaling: scaling_data,
    }
    return json.dumps(tellers[type(found)](found), indent=1, allow_nan=False) + "\n"


def _svg(found: Found) -> str:
    from reviewer.reporting.map_drawing import map_drawing
    from reviewer.reporting.size_drawing import sweep_drawing

    if isinstance(found, Sweep):
        return sweep_drawing(found)
    if isinstance(found, Map):
        return map_drawing(found)
    raise UsageError("a scaled design has no picture", "svg", "text or json")
