"""Reviews as one page: a sheet that needs no script, no network and no other file.

Every text is made plain and escaped by the template itself; only pictures, which make their own
texts safe, are put in as they are. Sections are kept until all designs are known, since a page of
several begins with a list of them.
"""

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from reviewer.judging.reviewed import Review
from reviewer.notation.plain import plain
from reviewer.reporting.limits import shown_ratio
from reviewer.reporting.page.section import Section, section_of
from reviewer.reporting.templating import environment_of
from reviewer.reporting.text import Counted, counted_words
from reviewer.reporting.text_finding import hazard_of, measure, where
from reviewer.reporting.text_shop import WOULD_SAY
from reviewer.reporting.versions import version_words
from reviewer.reporting.words import HOLD_WORDS, STAGE_WORDS, counted, is_to_change, sentence

if TYPE_CHECKING:
    from jinja2 import Environment

TEMPLATES = Path(__file__).parent / "templates"
LONGEST = 4000
Piece = tuple[str, str, str, bool, bool]  # id, name, the section, whether read, whether to change


class PageReport:
    """A page under way."""

    def __init__(self, version: str) -> None:
        """Begin a page of a version of the program."""
        self.version = version
        self.pieces: list[Piece] = []

    def piece(self, review: Review) -> Piece:
        """The section of a design."""
        section = section_of(review)
        template = _environment().get_template("section.html.jinja")
        text = template.render(section=section, version=self.version)
        changing = any(is_to_change(each) for each in review.findings)
        return section.mark, _titled(section), text, review.design is not None, changing

    def put(self, piece: Piece) -> str:
        """Nothing yet: a page begins with the list of its designs."""
        self.pieces.append(piece)
        return ""

    def end(self) -> str:
        """The whole page."""
        from markupsafe import Markup

        found = Counted()
        for _, _, _, read, changing in self.pieces:
            found.add(read=read, changing=changing)
        sections = [(mark, name, Markup(text)) for mark, name, text, _, _ in self.pieces]
        template = _environment().get_template("page.html.jinja")
        return template.render(sections=sections, words=counted_words(found)) + "\n"


def _titled(section: Section) -> str:
    return f"{section.name}, revision {section.revision}" if section.revision else section.name


@cache
def _environment() -> "Environment":
    from markupsafe import Markup

    environment = environment_of(TEMPLATES, finalize=_plain)
    environment.filters.update(
        drawn=Markup,
        sentence=sentence,
        where=where,
        measure=measure,
        hazard=hazard_of,
        ratio=lambda value: shown_ratio(value) if value == value else "",
        counted=counted,
        version=version_words,
        stage=STAGE_WORDS.__getitem__,
        holds=HOLD_WORDS.__getitem__,
        would_say=WOULD_SAY.__getitem__,
    )
    return environment


def _plain(value: Any) -> Any:
    """Every text that a template puts out, made plain; what is markup of our own is left."""
    return plain(value, LONGEST) if type(value) is str else value
