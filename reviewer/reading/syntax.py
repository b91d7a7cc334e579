"""Errors of YAML's grammar in plain words: the parser says what and where, this says it anew."""

import re
from collections.abc import Callable
from dataclasses import replace
from typing import Any

from reviewer.notation.problem import Place, Problem
from reviewer.reading import words
from reviewer.reading.source import Source
from reviewer.reading.stop import Stop
from reviewer.reading.words import Words, shown, with_found

COMMENT = re.compile(r"[ \t]#")
# Text that quotes alone do not mend: both quotes in it, a backslash, or a key that is quoted.
CANNOT_QUOTE = re.compile(r"""'.*"|".*'|\\|^["'].*:[ \t]""")


def stop_at(source: Source, error: Any, opened: Place | None, closed: Place | None) -> Stop:
    """Read place and complaint out of a parser's error, which may lack any of them.

    `opened` is the bracket that was open, `closed` the place of what ended just before in a bracket
    or a quote.
    """
    mark = getattr(error, "problem_mark", None)
    begun = getattr(error, "context_mark", None) or mark
    end = len(source.text)
    told = f"{getattr(error, 'context', None)}; {getattr(error, 'problem', None)}"
    return Stop(
        source, told, min(mark.index, end) if mark else end, begun.index if begun else end,
        opened, closed,
    )  # fmt: skip


def syntax_problem(stop: Stop) -> Problem:
    """Put an error of the parser in words."""
    if stop.rest.startswith("\t") and "quoted scalar" not in stop.told:
        return stop.here(words.TAB)
    for pattern, explain in EXPLANATIONS:
        if pattern.search(stop.told):
            return explain(stop)
    return stop.here(("this is no YAML 1.2", stop.found, "keys and their values", None))


def _unfinished_quote(stop: Stop) -> Problem:
    quote = stop.begun[0]
    other = "'" if quote == '"' else '"'
    if stop.before_begun.endswith(quote):
        said = "a quote inside a quoted text ends it"
        expected = f"nothing after the {quote} that ends the text"
    else:
        said = "a quoted text does not end"
        expected = f"a second {quote} that ends it"
    mend = f"write {quote} where the text ends; a text that holds {quote} goes between two {other}"
    return stop.where_begun((said, shown(stop.begun), expected, mend))


def _document_mark(stop: Stop) -> Problem:
    said = "the document ends inside a quoted text"
    mend = "end the text before this line, or indent the line"
    return stop.here((said, stop.found, "the quote that ends the text", mend), 3)


def _escape(stop: Stop) -> Problem:
    """An escape that YAML lacks: the two parsers mark different characters of it."""
    index = stop.text.rfind("\\", 0, stop.index + 1)
    found = stop.text[index : index + 2]
    if found[1:] in ("x", "u", "U"):
        return _no_character(stop)
    said = ("an escape that YAML does not know", found)
    expected = r"\\ for a backslash, \" for a quote, \n for a new line"
    mend = "put the text between two ', where a backslash is only a backslash"
    return stop.problem(index, 2, (*said, expected, mend))


def _no_character(stop: Stop) -> Problem:
    said = ("an escape that is no character", shown(stop.begun))
    expected = r"\x, \u or \U with the 2, 4 or 8 hexadecimal digits of a character"
    mend = "write the character itself, or put the text between two '"
    return stop.where_begun((*said, expected, mend), len(stop.begun.rstrip()))


def _second_colon(stop: Stop) -> Problem:
    """Either two keys on one line, or a line that goes on with the value above it."""
    row = shown(stop.row)
    if re.search(r":[ \t]", stop.before):
        said = ("a second colon on one line", row, "one `key: value` on a line")
        mend = "put the value in quotes if the colon belongs to it"
        return stop.here((*said, mend))
    width = len(stop.before.lstrip(" "))
    said = ("a key where the value above it goes on", row, "a key in line with its neighbours")
    mend = (
        "indent it like its neighbours; if it belongs under the line above, "
        "end that line with a colon"
    )
    return stop.problem(stop.index - width, width, (*said, mend))


def _no_colon(stop: Stop) -> Problem:
    said = ("a line that is neither key nor list entry", shown(stop.begun))
    expected = "`key: value`"
    mend = "write a colon and a space after the key, or indent a text that goes on from above"
    if stop.begun.startswith("-"):
        expected, mend = "`- value`", "write a space after the dash"
    return stop.where_begun((*said, expected, mend), len(stop.begun.rstrip()))


def _cannot_begin(stop: Stop) -> Problem:
    said = (f"a value cannot begin with {stop.rest[:1]}", stop.found, "a text")
    return stop.here((*said, "put the text in quotes"))


def _property(said: Words) -> Callable[[Stop], Problem]:
    """An anchor, alias or tag that is not even well formed is refused like one that is."""

    def explain(stop: Stop) -> Problem:
        name = stop.name_at(stop.begun_at)
        return stop.where_begun(with_found(said, name), max(1, len(name)))

    return explain


def _block(stop: Stop) -> Problem:
    """Neither the next entry of a block nor its end."""
    if stop.closed is not None:
        return _text_after(stop, stop.closed)
    if stop.rest.startswith((":", "&", "!")):
        refused = {":": words.NO_KEY, "&": words.ANCHOR, "!": words.TAG}[stop.rest[0]]
        name = stop.name_at(stop.index)
        return stop.here(with_found(refused, name or stop.rest), max(1, len(name)))
    said, _, expected, mend = words.NO_FIT
    if "collection" in stop.told:
        expected = "`- value` in line with its neighbours"
    return stop.here((said, stop.found, expected, mend))


def _text_after(stop: Stop, began: Place) -> Problem:
    """Text behind a bracket or a quote that closed: the whole was meant as text."""
    row = stop.source.lines[began.line - 1]
    whole = COMMENT.split(row[began.column - 1 :])[0].rstrip()
    said, expected = {
        "{": ("a value that begins with { is a table, not a text", "nothing after the table's }"),
        "[": ("a value that begins with [ is a list, not a text", "nothing after the list's ]"),
    }.get(whole[0], ("text after the quote that ends a text", "nothing after the quote"))
    mend = "put all of the text in quotes"
    one_line = stop.source.place(stop.index, 1).line == began.line
    if one_line and len(whole) <= words.LONGEST_MEND and not CANNOT_QUOTE.search(whole):
        quote = "'" if '"' in whole else '"'
        mend = f"put the text in quotes: {quote}{whole}{quote}"
    place = (began.line, (began.column, began.column + len(whole)))
    return stop.source.problem(*place, (said, shown(whole), expected, mend))


def _flow(stop: Stop) -> Problem:
    """Inside brackets something else than an entry, a comma or the closing bracket."""
    if stop.opened is None:
        return _cannot_begin(stop)
    place = stop.opened
    bracket = stop.source.lines[place.line - 1][place.column - 1]
    closing = "}" if bracket == "{" else "]"
    if stop.at_end:
        said = (f"the {bracket} is not closed", "the end of the file", f"a {closing}")
        columns = (place.column, place.end_column)
        mend = f"write {closing} where it ends"
        return stop.source.problem(place.line, columns, (*said, mend))
    if stop.rest[:1] == ",":
        said = ("a comma with nothing before it", stop.found, "a value between two commas")
        return stop.here((*said, "take one comma out"))
    if stop.rest[:1] == ":" and stop.before.rstrip(" \t")[-1:] in ("{", "[", ","):
        return stop.here(with_found(words.NO_KEY, stop.rest))
    opened = f"the {bracket} of line {place.line}, column {place.column}"
    said = (f"{opened} is not closed before this", stop.found, f"a comma or {closing}")
    mend = f"write {closing} where it ends, or a comma between two entries"
    return stop.here((*said, mend))


def _colon_in_flow(stop: Stop) -> Problem:
    said = ("a colon and no space after it", stop.found, "`key: value`")
    return stop.here((*said, "write a space after the colon, or put the text in quotes"))


def _dash(stop: Stop) -> Problem:
    said = ("a list entry cannot begin here", stop.found)
    mend = "write each entry on a line of its own under the key, or the list as [a, b]"
    return stop.here((*said, "`- ` at the beginning of a line", mend))


def _block_text(stop: Stop) -> Problem:
    said = ("the line above a block of text says too much", stop.found)
    expected = "| or >, with - or + and one digit at most"
    return stop.here((*said, expected, "begin the text on the next line, indented"))


EXPLANATIONS: tuple[tuple[re.Pattern[str], Callable[[Stop], Problem]], ...] = tuple(
    (re.compile(pattern), explain)
    for pattern, explain in (
        ("maximum nesting depth", lambda stop: stop.here(words.TOO_DEEP)),
        ("quoted scalar; found unexpected end of stream", _unfinished_quote),
        ("quoted scalar; found unexpected document", _document_mark),
        ("invalid Unicode character", _no_character),
        ("quoted scalar; .*(unknown escape|hexdecimal|hexadecimal)", _escape),
        ("mapping values are not allowed", _second_colon),
        ("could not find expected ':'", _no_colon),
        ("cannot start any token|mapping keys are not allowed", _cannot_begin),
        ("scanning an alias", _property(words.ALIAS)),
        ("scanning an anchor", _property(words.ANCHOR)),
        ("scanning a tag|parsing a tag|undefined tag handle", _property(words.TAG)),
        ("unexpected ':'", _colon_in_flow),
        ("scanning a block scalar", _block_text),
        ("sequence entries are not allowed", _dash),
        ("parsing a flow|node content", _flow),
        ("scanning a directive", lambda stop: _flow(replace(stop, index=stop.begun_at))),
        ("parsing a block|document start", _block),
    )
)
