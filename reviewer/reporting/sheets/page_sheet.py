"""Sheets as one self-contained HTML page that prints on A4 and Letter, in black on white.

Nothing is fetched and no script runs. Each sheet begins on a page of its own; its name, revision
and page number stand at the foot of every page. Texts are escaped by the template; the only thing
that is not is the SVG of a figure, which `reporting/drawing.py` makes safe.
"""

from collections.abc import Sequence
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from reviewer.notation.plain import plain
from reviewer.reporting.sheet import LONGEST
from reviewer.reporting.sheets.sheet import BLANK, Sheet
from reviewer.reporting.templating import environment_of
from reviewer.reporting.words import sentence

if TYPE_CHECKING:
    from jinja2 import Template

HERE = Path(__file__).parent
TEMPLATE = "page.html.jinja"


def page_sheet(sheets: Sequence[Sheet], without: Sequence[str] = ()) -> str:
    """Sheets as a page; `without` are the sheets that there are none of, with the reasons."""
    named = sheets[0].named if sheets else ""
    return _template().render(sheets=sheets, without=without, named=named) + "\n"


@cache
def _template() -> "Template":
    from markupsafe import Markup

    environment = environment_of(HERE)
    environment.filters["safe_text"] = lambda text: plain(text, LONGEST)
    environment.filters["drawn"] = Markup
    environment.filters["css_text"] = lambda text: Markup(css_text(text))
    environment.filters["sentence"] = lambda text: sentence(text).rstrip(".")
    environment.tests["blank"] = lambda cell: cell == BLANK
    environment.filters["kind"] = lambda block: type(block).__name__
    return environment.get_template(TEMPLATE)


def css_text(text: str) -> str:
    """A text as a string of CSS, in which nothing can end it: all but letters and digits escaped.

    >>> css_text('a"b')
    '"a\\\\22 b"'
    """
    return '"{}"'.format(
        "".join(
            each if each.isascii() and each.isalnum() else f"\\{ord(each):x} "
            for each in plain(text, 100)
        )
    )
