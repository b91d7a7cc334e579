"""The formats of a check: their names, the endings of their files, and the reports that make them.

What a format needs is loaded when it is asked for.
"""

from reviewer.command.outputs import Report
from reviewer.command.packs import Packs
from reviewer.command.version import version
from reviewer.reporting.sheet import Style

ENDINGS = {
    ".txt": "text",
    ".json": "json",
    ".sarif": "sarif",
    ".sarif.json": "sarif",
    ".md": "markdown",
    ".html": "page",
}
FORMATS = tuple(dict.fromkeys(ENDINGS.values()))


def report_of(
    kind: str, packs: Packs, style: Style, *, everything: bool = False, problems: bool = False
) -> Report:
    """A report of a format, under the rules of some packs.

    `everything` lists all that holds too. `problems` tells the problems of reading in a text, for
    where they are not on standard error.
    """
    if kind == "json":
        from reviewer.reporting.data import JsonReport

        return JsonReport(version())
    if kind == "sarif":
        from reviewer.reporting.sarif import SarifReport

        return SarifReport(version(), everything=everything)
    if kind == "markdown":
        from reviewer.reporting.markdown import MarkdownReport

        return MarkdownReport(version())
    if kind == "page":
        from reviewer.reporting.page.page import PageReport

        return PageReport(version())
    from reviewer.reporting.text import TextReport

    return TextReport(style, packs.questions, everything=everything, problems=problems)
