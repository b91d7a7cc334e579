"""What a design came to, in bytes: data in JSON on one line, and long texts as they are below it.

JSON alone takes long to read where a text is nearly all there is.
"""

import json
from typing import Any

from reviewer.command.done import Done


def body_of(done: Done) -> bytes:
    """What a design came to, in bytes."""
    texts: list[bytes] = []
    pieces = [_told(piece, texts) for piece in done.pieces]
    sizes = [len(text) for text in texts]
    data = [done.path, done.status, pieces, sizes, done.told, done.once]
    return b"\n".join((json.dumps(data).encode(), b"".join(texts)))


def done_of(body: bytes) -> Done | None:
    """What bytes say that a design came to; nothing where they are not of that shape."""
    head, _, rest = body.partition(b"\n")
    try:
        path, status, pieces, sizes, told, once = json.loads(head)
        texts, start = [], 0
        for size in sizes:
            texts.append(rest[start : start + size].decode("utf-8", "surrogatepass"))
            start += size
        words = all(isinstance(each, str) for each in (path, *told, *once))
        if not words or type(status) is not int or start != len(rest):
            return None
        found = tuple(_read(piece, texts) for piece in pieces)
        return Done(path, status, found, tuple(told), tuple(once))
    except (ValueError, TypeError, LookupError, RecursionError):
        return None


def _told(piece: Any, texts: list[bytes]) -> Any:
    """A piece with its texts replaced by their number; a list at most one level deep."""
    if isinstance(piece, str):
        texts.append(piece.encode("utf-8", "surrogatepass"))
        return {"text": len(texts) - 1}
    if isinstance(piece, tuple):
        return [_told(each, texts) for each in piece]
    return {"data": piece}


def _read(piece: Any, texts: list[str]) -> Any:
    if isinstance(piece, list):
        return tuple(_read(each, texts) for each in piece)
    return texts[piece["text"]] if "text" in piece else piece["data"]
