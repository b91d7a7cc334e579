"""Whole reports on specimens in every format, held against recorded ones.

`REVIEWER_RECORD=1 python -m pytest tests/reporting` writes them again, after a change of rules,
kinds or words; read the difference before you commit it. Pictures have tests of their own.
"""

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from reviewer.command.outputs import Report
from reviewer.judging.reviewed import Review
from reviewer.reporting.data import JsonReport
from reviewer.reporting.markdown import MarkdownReport
from reviewer.reporting.page.page import PageReport
from reviewer.reporting.sarif import SarifReport
from reviewer.reporting.sheet import Style
from reviewer.reporting.text import TextReport
from reviewer.reviewing import review_source

VERSION = "1.2.3"
HERE = Path(__file__).parent
FORMATS: dict[str, Callable[[Review], Report]] = {
    "txt": lambda found: TextReport(
        Style(80), {rule.name: rule.question for rule in found.rules}, problems=True
    ),
    "json": lambda found: JsonReport(VERSION),
    "sarif": lambda found: SarifReport(VERSION, HERE),
    "md": lambda found: MarkdownReport(VERSION),
    "html": lambda found: PageReport(VERSION),
}


@pytest.fixture(scope="session")
def broken() -> Review:
    """A file with mistakes of several kinds."""
    return review_source((HERE / "broken.yaml").read_text("utf-8"), "broken.yaml")


# Of the first revision of the bench the others are a megabyte and more, which nobody reads.
REPORTS = [(name, ending) for name in ("bench_c", "shop", "broken") for ending in FORMATS]


@pytest.mark.parametrize(("name", "ending"), [("bench", "txt"), ("bench", "md"), *REPORTS])
def test_a_whole_report(
    request: pytest.FixtureRequest, held: Callable[[str, str], None], name: str, ending: str
) -> None:
    found: Review = request.getfixturevalue(name)
    report = FORMATS[ending](found)
    text = report.put(report.piece(found)) + report.end()
    if ending == "html":
        text = re.sub(r"<style>.*?</style>", "<style></style>", text, flags=re.DOTALL)
        text = re.sub(r"<svg.*?</svg>", "<svg></svg>", text, flags=re.DOTALL)
    held(f"specimens/{name}.{ending}", text)
