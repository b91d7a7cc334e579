"""Untrusted text made safe to print on a terminal."""

_LINE_ENDS = "\n\r\u0085\u2028\u2029"
ELLIPSIS = "…"


def visible(character: str) -> str:
    r"""Return a character as it may be printed: itself, a space, or its escape.

    Escaped is everything that prints nothing or steers the terminal: control and format characters
    (the bidirectional controls among them), lone surrogates, code points without a character.

    >>> visible("\x1b"), visible("\u202e"), visible("\t"), visible("é")
    ('\\x1b', '\\u202e', ' ', 'é')
    """
    if character.isprintable():
        return character
    if character == "\t" or character in _LINE_ENDS or (character.isspace() and character > "\x7f"):
        return " "
    code = ord(character)
    if code < 0x100:
        return f"\\x{code:02x}"
    return f"\\u{code:04x}" if code < 0x10000 else f"\\U{code:08x}"


def plain(text: str, limit: int = 200) -> str:
    r"""Return text fit for one line of a terminal, at most `limit` characters of it.

    >>> plain("18\x1b[2J mm\r\nnext"), plain("abcdef", limit=4)
    ('18\\x1b[2J mm next', 'abc…')
    """
    if len(text) <= limit and text.isprintable():
        return text
    head = text[: limit + 2].replace("\r\n", "\n")
    pieces = [visible(character) for character in head]
    if len(text) <= limit + 2 and sum(map(len, pieces)) <= limit:
        return "".join(pieces)
    kept: list[str] = []
    room = limit - len(ELLIPSIS)
    for piece in pieces:
        if len(piece) > room:
            break
        kept.append(piece)
        room -= len(piece)
    return "".join(kept) + ELLIPSIS
