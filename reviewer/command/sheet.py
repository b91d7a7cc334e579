"""reviewer sheet: what is cut, set out, assembled, inspected and load-tested, on paper."""

import os
import sys
from argparse import Namespace
from collections.abc import Sequence
from dataclasses import replace

from reviewer.command.inputs import Input
from reviewer.command.outputs import format_of, output_of
from reviewer.command.packs import packs_of
from reviewer.command.reading import read_review
from reviewer.command.ready import Ready
from reviewer.command.status import HOLDS, UNREAD
from reviewer.command.templates import PAPERS, write_templates
from reviewer.command.terminal import complain, say, style_of
from reviewer.command.usage import Parser, UsageError, one_of
from reviewer.notation.plain import plain
from reviewer.notation.problem import render
from reviewer.reporting.sheet import Style
from reviewer.reporting.sheets.making import sheets_of
from reviewer.reporting.sheets.registry import MAKERS
from reviewer.reporting.sheets.sheet import Sheet

FORMATS = ("text", "markdown", "page")
ENDINGS = {".txt": "text", ".md": "markdown", ".html": "page"}


def run(arguments: Sequence[str]) -> int:
    """Run the command, and return the exit status. Raises UsageError.

    A review that fails keeps no sheet back: the sheet says so at its top.
    """
    options = parser().read(arguments)
    if options.file is None:
        raise UsageError("no design is named", "", "the path of a design, or -")
    outputs = [(path, format_of(path, ENDINGS)) for path in dict.fromkeys(options.output)]
    each = Input(options.file)
    in_force = packs_of(options.rules, options.shop).of(each.path, each.folder)
    review = read_review(each, replace(in_force, problems=()), options.on)
    problems = (*in_force.problems, *review.problems)
    for problem in problems:
        complain(render(problem))
    if review.derived is None:
        return UNREAD
    if options.templates is not None:
        whole = write_templates(options.templates, review, options.paper)
        if not outputs:
            return UNREAD if problems or not whole else HOLDS
    makers = [MAKERS[name] for name in dict.fromkeys(options.only or MAKERS)]
    sheets, without = sheets_of(makers, replace(review, problems=problems))
    reasons = [f"{maker.title}: {found.reason}" for maker, found in without]
    if not sheets or options.only:
        for reason in reasons:
            complain(f"there is no such sheet of {plain(each.path)}: {plain(reason, 2000)}")
    if sheets:
        _tell(sheets, reasons, options, outputs)
    return UNREAD if problems or not sheets else HOLDS


def parser() -> Parser:
    """The options of the command."""
    options = Parser(
        "sheet",
        "Sheets for the shop floor, to print and write on.",
        "reviewer sheet bench.yaml --only cutting --output cutting.html",
    )
    options.add_argument("file", metavar="FILE", nargs="?", help="a design, or -")
    options.add_argument(
        "--only", type=one_of(tuple(MAKERS)), action="append", default=[], metavar="SHEET",
        help=f"one sheet in place of all: {' or '.join(MAKERS)}; repeatable",
    )  # fmt: skip
    options.add_argument(
        "--format", type=one_of(FORMATS), default="text", metavar="FORMAT",
        help="text, markdown, or page, which is one HTML file that prints on A4 and Letter",
    )  # fmt: skip
    options.add_argument(
        "--output", action="append", default=[], metavar="FILE",
        help=f"write a file in place of standard output, its format by its ending: "
             f"{' or '.join(ENDINGS)}; repeatable",
    )  # fmt: skip
    options.add_argument(
        "--templates", default=None, metavar="FOLDER",
        help="write templates at full size there, of flat parts and divided circles: SVG, DXF, and "
             "PDF on sheets with register marks; no sheet is printed then",
    )  # fmt: skip
    options.add_argument(
        "--paper", type=one_of(PAPERS), default=PAPERS[0], metavar="PAPER",
        help=f"of the PDF: {' or '.join(PAPERS)}",
    )  # fmt: skip
    options.add_packs()
    options.add_day()
    return options


def _tell(
    sheets: Sequence[Sheet],
    reasons: Sequence[str],
    options: Namespace,
    outputs: Sequence[tuple[str, str]],
) -> None:
    """Print the sheets, or write them into the files that are named."""
    if not outputs:
        say(_told(sheets, reasons, options.format, style_of(sys.stdout, os.environ)))
    for path, kind in outputs:
        text = _told(sheets, reasons, kind, Style())
        output_of(path, lambda text=text: Ready(text)).close()  # type: ignore[misc]


def _told(sheets: Sequence[Sheet], without: Sequence[str], kind: str, style: Style) -> str:
    """The sheets in a format, with the sheets that there are none of."""
    if kind == "page":
        from reviewer.reporting.sheets.page_sheet import page_sheet

        return page_sheet(sheets, without)
    if kind == "markdown":
        from reviewer.reporting.sheets.markdown_sheet import markdown_sheets

        return markdown_sheets(sheets, without)
    from reviewer.reporting.sheets.text_sheet import text_sheets

    return text_sheets(sheets, without, style)
