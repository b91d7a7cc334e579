"""What the strict reader says of YAML that it refuses: what, found, expected, mend."""

from reviewer.notation.plain import plain

Words = tuple[str, str, str, str | None]

MAX_DEPTH = 50
MAX_NODES = 20_000
MAX_PROBLEMS = 100
LONGEST_MEND = 80  # of a line that a message writes out as it should be


def shown(text: str, limit: int = 40) -> str:
    """Cut a piece of the file short enough for a message."""
    return plain(text.strip(), limit)


EMPTY: Words = (
    "the file says nothing",
    "an empty file, or comments alone",
    "keys and their values",
    "write the first key, for example `design: NAME`",
)
SECOND_DOCUMENT: Words = (
    "the file goes on after the end of its document",
    "",
    "one document in a file",
    "put the second document into a file of its own",
)
NO_FIT: Words = (
    "a line that does not fit the lines above it",
    "",
    "`key: value` in line with its neighbours",
    "indent it like the lines that it belongs to",
)
ALIAS: Words = (
    "a value that begins with * stands for another one, and that is not read here",
    "",
    "the value itself",
    "write the value out, or put the text in quotes",
)
ANCHOR: Words = (
    "a value that begins with & is given a name, and that is not read here",
    "",
    "the value alone",
    "take the name out, or put the text in quotes",
)
TAG: Words = (
    "a value that begins with ! is given a type, and that is not read here",
    "",
    "the value alone; what it is follows from its key",
    "take the type out, or put the text in quotes",
)
MERGE: Words = (
    "the key << takes over another table, and that is not read here",
    "<<",
    "the keys themselves",
    "write the keys out",
)
TAB: Words = (
    "a tab where the indentation is",
    "a tab",
    "spaces",
    "put spaces in place of the tab",
)
NULL_KEY: Words = (
    "a key without a name",
    "",
    "a key that is a text",
    "write the key before the colon, or put it in quotes if it is meant as text",
)
NO_KEY: Words = (
    "a value without a key",
    "",
    "`key: value`",
    "write the key before the colon",
)
LONG_KEY: Words = (
    "a key of several lines",
    "",
    "a key on one line",
    "write `key: value` on one line",
)
ESCAPED_CONTROL: Words = (
    "an escape of a character that text cannot hold",
    "",
    r"printable characters, \n and \t",
    "take the escape out",
)
TOO_DEEP: Words = (
    "tables and lists stand too deep in one another",
    f"more than {MAX_DEPTH} levels",
    f"at most {MAX_DEPTH} levels",
    "divide the file, or write it flatter; nothing after this place was read",
)
TOO_MANY_NODES: Words = (
    "the file holds too many values",
    f"more than {MAX_NODES:,} keys, values, tables and lists",
    f"at most {MAX_NODES:,}",
    "divide it into several files; nothing after this place was read",
)
TOO_MANY_PROBLEMS: Words = (
    "too many problems to list",
    f"more than {MAX_PROBLEMS}",
    "a file in YAML 1.2",
    f"mend the {MAX_PROBLEMS} above first; nothing after this place was read",
)


def with_found(words: Words, found: str) -> Words:
    """Fill in what was found."""
    return (words[0], shown(found), words[2], words[3])


def duplicate_key(key: str, line: int, column: int) -> Words:
    """Words for a key that its table has already."""
    return (
        f"the key {shown(key)} stands here twice",
        f"a second {shown(key)}; the first is at line {line}, column {column}",
        "each key once in a table",
        "take one of the two out, or name it otherwise",
    )


def key_of_kind(kind: str) -> Words:
    """Words for a table or a list in the place of a key."""
    return (
        f"a {kind} cannot be a key",
        f"a {kind}",
        "a key that is a text",
        "put the key in quotes if it is meant as text",
    )


def wrong_root(found: str, expected: str) -> Words:
    """Words for a file that is a list, a table or a text where another of them is due."""
    mends = {
        "table": "write `key: value` lines, the keys at the beginning of the line",
        "list": "begin each entry with `- ` at the beginning of the line",
    }
    return (f"the file is a {found}", f"a {found}", f"a {expected}", mends[expected])


def decimal_comma(whole: str, rest: str, written: str) -> Words:
    """Words for a decimal comma, which ends a value inside braces."""
    mend = f"write {shown(whole)}.{shown(rest)}"
    digits = rest[: len(rest) - len(rest.lstrip("0123456789"))]
    if len(digits) == 3:
        mend += f", or {shown(whole)}{shown(rest)} if the comma parts thousands"
    return (
        "the comma ends the value here, it is no decimal sign",
        shown(written),
        "a decimal point",
        mend,
    )
