"""How far a long piece of work is, for whoever wants to show it."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar

Tell = Callable[[str, int, int], None]
"""Takes what is counted, how many are done, and how many there are."""

_TELL: ContextVar[Tell | None] = ContextVar("tell", default=None)


@contextmanager
def telling(tell: Tell | None) -> Iterator[None]:
    """Have a function told how far work is meanwhile, or nobody."""
    before = _TELL.set(tell)
    try:
        yield
    finally:
        _TELL.reset(before)


def under_way(what: str, done: int, total: int) -> None:
    """Tell how far work is; nothing happens where nobody wants to know."""
    tell = _TELL.get()
    if tell is not None:
        tell(what, done, total)
