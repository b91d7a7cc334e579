"""From untrusted bytes to text that a YAML parser may see: encoding, characters, directives."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import islice

from reviewer.notation.problem import Place, Problem

MAX_BYTES = 1 << 20
BYTE_ORDER_MARKS = {
    b"\xff\xfe\x00\x00": "UTF-32",
    b"\x00\x00\xfe\xff": "UTF-32",
    b"\xff\xfe": "UTF-16",
    b"\xfe\xff": "UTF-16",
}
BYTE_ORDER_MARK = "\ufeff"
REPLACEMENT = "\ufffd"
# What is outside YAML's printable characters (YAML 1.2.2, 5.1), and the three characters that
# YAML 1.1, and so the parser, takes for line breaks, where YAML 1.2 takes them for text.
UNWELCOME = re.compile(
    "[^\t\n\r\x20-\x7e\xa0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]"
)
PRINTABLE_ASCII = bytes([9, 10, 13, *range(0x20, 0x7F)])
END_OF_LINE = r"(?:\r\n|\n|\r|\Z)"
HEAD = re.compile(rf"(?:(?:%|[ \t]*#)[^\n\r]*{END_OF_LINE}|[ \t]*[\n\r])*+")
DIRECTIVE = re.compile(r"(?<![^\n\r])%")
DOCUMENT_START = re.compile(r"---(?:[ \t]|$)")
VERSION = re.compile(r"%YAML[ \t]+1\.2[ \t]*(?:[ \t]#.*)?")


@dataclass(frozen=True, slots=True)
class Source:
    """Text fit for the parser, with its lines, or with what is wrong with it.

    `is_text` is False where there is nothing to parse. Every character has the place that it has in
    the file: refused ones are replaced by U+FFFD, a directive is turned into a comment.
    """

    path: str
    text: str
    lines: tuple[str, ...]
    problems: tuple[Problem, ...] = ()
    is_text: bool = True

    def problem(
        self, line: int, columns: tuple[int, int], words: tuple[str, str, str, str | None]
    ) -> Problem:
        """Build a problem at columns of a line: what, found, expected and mend are its words."""
        shown = self.lines[line - 1] if 0 < line <= len(self.lines) else None
        return Problem(Place(self.path, line, *columns), *words, shown)

    def rest(self, index: int) -> str:
        """Return a line of the text from a character on."""
        return (self.text[index : index + 1000].splitlines() or [""])[0]

    def place(self, index: int, width: int) -> Place:
        """Return the place of a character of the text, and of those after it on its line."""
        above = (self.text[:index] + "|").splitlines()
        column = len(above[-1])
        return Place(self.path, len(above), column, column + width)


def read_source(source: bytes | str, path: str, most_problems: int) -> Source:
    """Check size, encoding and characters of a file before any of it is parsed.

    Returns at most `most_problems` + 1 problems: the last tells a caller that there are more.
    """
    if _is_too_long(source):
        return _refused(path, _too_long())
    if isinstance(source, str):
        text = source
    else:
        try:
            text = source.decode("utf-8")
        except UnicodeDecodeError as error:
            return _undecodable(source, error, path)
    return _checked(text.removeprefix(BYTE_ORDER_MARK), path, most_problems + 1)


def _is_too_long(source: bytes | str) -> bool:
    """Measure a text in bytes of UTF-8, and do not encode what is too long as it is."""
    if len(source) > MAX_BYTES:
        return True
    if isinstance(source, bytes) or len(source) * 4 <= MAX_BYTES:
        return False
    return len(source.encode("utf-8", "surrogatepass")) > MAX_BYTES


def _too_long() -> tuple[str, str, str, str | None]:
    return (
        "the file is too long to be read",
        "more than 1 MiB",
        "at most 1 MiB (1,048,576 bytes)",
        "divide it into several files",
    )


def _refused(path: str, words: tuple[str, str, str, str | None]) -> Source:
    """A source of which nothing can be shown."""
    return Source(path, "", (), (Problem(Place(path, 1, 1, 1), *words),), is_text=False)


def _undecodable(source: bytes, error: UnicodeDecodeError, path: str) -> Source:
    """Say where the first byte is that is not UTF-8, or which other encoding the file is in."""
    for mark, encoding in BYTE_ORDER_MARKS.items():
        if source.startswith(mark):
            mend = "save the file as UTF-8 in the editor"
            words = (f"the file is in {encoding}", f"the byte order mark of {encoding}")
            return _refused(path, (*words, "a file in UTF-8", mend))
    before = source[: error.start].decode("utf-8").removeprefix(BYTE_ORDER_MARK)
    text = source.decode("utf-8", "replace").removeprefix(BYTE_ORDER_MARK)
    text = UNWELCOME.sub(REPLACEMENT, text)
    broken = Source(path, text, tuple(text.splitlines()))
    place = Source(path, UNWELCOME.sub(REPLACEMENT, before), ()).place(len(before), 1)
    said = (
        "the file is not in UTF-8",
        f"the byte 0x{source[error.start]:02X}",
        "a file in UTF-8",
        "save the file as UTF-8 in the editor",
    )
    problem = broken.problem(place.line, (place.column, place.end_column), said)
    return replace(broken, problems=(problem,), is_text=False)


def _checked(text: str, path: str, most: int) -> Source:
    """Find unwelcome characters and directives, and leave places for them that parse."""
    clean = text
    if not _is_plain_ascii(text):
        clean = UNWELCOME.sub(REPLACEMENT, text)
    source = Source(path, clean, tuple(clean.splitlines()))
    problems = list(islice(_unwelcome(text, source), most)) if clean != text else []
    match = HEAD.match(clean)
    head = match.group() if match else ""
    if "%" in head:
        commented = DIRECTIVE.sub("#", head)
        if commented != head:
            rows = source.lines[: len(head.splitlines())]
            problems += islice(_directives(source, rows), most)
            source = replace(source, text=commented + clean[len(head) :])
    return replace(source, problems=tuple(problems[:most]))


def _is_plain_ascii(text: str) -> bool:
    """Tell quickly that an ordinary file holds nothing unwelcome."""
    return text.isascii() and not text.encode().translate(None, PRINTABLE_ASCII)


def _unwelcome(text: str, source: Source) -> Iterator[Problem]:
    """Report each character that a file must not hold."""
    # The replaced text is walked beside the first one: its line ends are those of YAML 1.2.
    start = 0
    for number, line in enumerate(source.text.splitlines(keepends=True), 1):
        if REPLACEMENT in line:
            for match in UNWELCOME.finditer(text, start, start + len(line)):
                column = match.start() - start + 1
                yield source.problem(number, (column, column + 1), _unwelcome_words(match.group()))
        start += len(line)


def _unwelcome_words(character: str) -> tuple[str, str, str, str]:
    """Say what is wrong with a character."""
    found = f"U+{ord(character):04X}"
    if character in "\x85\u2028\u2029":
        return (
            "a line break that only old YAML knows",
            found,
            "line feeds at the ends of lines",
            "take the character out, or end the line there",
        )
    if character == BYTE_ORDER_MARK:
        return (
            "a byte order mark inside the text",
            found,
            "a byte order mark at the very start of the file, or none",
            "take the character out",
        )
    return (
        "a character that text cannot hold",
        f"the control character {found}" if ord(character) < 0xA0 else found,
        "printable characters, spaces and line ends",
        "take the character out",
    )


def _directives(source: Source, rows: tuple[str, ...]) -> Iterator[Problem]:
    """Report what is wrong with the lines above the first that holds something."""
    for number, row in enumerate(rows, 1):
        if row.startswith("%") and not VERSION.fullmatch(row):
            yield source.problem(number, (1, len(row) + 1), _directive_words(row))
    for row in source.lines[len(rows) : len(rows) + 1]:
        if not DOCUMENT_START.match(row):
            yield source.problem(len(rows) + 1, (1, 2), _NO_START)


_NO_START = (
    "the text does not begin after the directive",
    "no line --- under the line that begins with %",
    "a line --- between the two",
    "take the line that begins with % out, or write --- under it",
)


def _directive_words(line: str) -> tuple[str, str, str, str]:
    """Say what is wrong with a directive."""
    name = line.split()[0]
    if name == "%YAML":
        return (
            "the file asks for another version of YAML",
            line.strip(),
            "%YAML 1.2, or no such line",
            "take the line out",
        )
    return (
        f"the directive {name} is not read here",
        line.strip(),
        "no line that begins with %, except %YAML 1.2",
        "take the line out; a value that begins with % goes in quotes",
    )
