"""Reviews designs of moving furniture and shop machines before the wood is cut."""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from reviewer.judging.reviewed import Review
    from reviewer.reviewing import review

__all__ = ["Review", "review"]

_HOMES = {"Review": "reviewer.judging.reviewed", "review": "reviewer.reviewing"}


def __getattr__(name: str) -> Any:
    """Import what is asked for only then, so that one layer can be used by itself."""
    if name in _HOMES:
        return getattr(import_module(_HOMES[name]), name)
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
