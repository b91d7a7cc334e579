"""The packs that come with the project."""

from functools import cache
from pathlib import Path

from reviewer.judging.limits import Limits
from reviewer.judging.pack import Pack, limits_of, read_packs
from reviewer.parts.registry import KINDS

INSTALLED = Path(__file__).parent.parent / "_rules"
CHECKOUT = Path(__file__).parent.parent.parent / "rules"


def builtin_paths() -> tuple[Path, ...]:
    """The pack files that come with the project, in order of name."""
    folder = INSTALLED if INSTALLED.is_dir() else CHECKOUT
    return tuple(sorted(folder.glob("*.yaml")))


@cache
def builtin_limits() -> Limits:
    """The limits of the packs that come with the project, which rows of kinds refer to too."""
    return limits_of(builtin_packs())


@cache
def builtin_packs() -> tuple[Pack, ...]:
    """The packs that come with the project, read once."""
    sources = [(path.read_bytes(), f"rules/{path.name}") for path in builtin_paths()]
    return read_packs(sources, KINDS, trusted=True)
