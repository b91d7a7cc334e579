"""What a review went by: the packs of rules and the shop's file, each with a mark of its text.

A mark is the start of the SHA-256 of the text with its lines ended by line feeds, so that it is the
same wherever the file lies and whatever ends its lines there.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from hashlib import sha256

from reviewer.judging.builtin import builtin_packs
from reviewer.judging.reviewed import Review

DIGITS = 12  # hexadecimal; two texts in 16 million would have to be tried to meet by chance


@dataclass(frozen=True, slots=True)
class Version:
    """A file that a review went by, and the mark of its text; `path` is None of our own packs."""

    name: str
    path: str | None
    mark: str


def versions(review: Review) -> tuple[Version, ...]:
    """The rules that come with the project as one, then the packs of others, then the shop."""
    ours = {id(pack) for pack in builtin_packs()}
    own = tuple(pack.lines for pack in review.packs if id(pack) in ours)
    found = []
    if own:
        found.append(Version("the rules that come with it", None, _mark_of_all(own)))
    found += [
        Version(f"the rules of {pack.path}", pack.path, mark_of(pack.lines))
        for pack in review.packs
        if id(pack) not in ours
    ]
    if review.shop is not None:
        found.append(Version(review.shop.name, review.shop.path, mark_of(review.shop.lines)))
    return tuple(found)


@lru_cache(maxsize=8)
def _mark_of_all(texts: tuple[tuple[str, ...], ...]) -> str:
    """The mark of several texts one after the other: of ours, for each of many designs the same."""
    return mark_of([line for lines in texts for line in lines])


def version_words(version: Version) -> str:
    """A version as a reader reads it.

    >>> version_words(Version("Hollow Lane", "shop.yaml", "0123456789ab"))
    'Hollow Lane (shop.yaml), text 0123456789ab'
    """
    where = "" if version.path is None or version.path in version.name else f" ({version.path})"
    return f"{version.name}{where}, text {version.mark}"


def mark_of(lines: Sequence[str]) -> str:
    """The mark of a text that is given by its lines.

    >>> mark_of(["a", "b"])  # printf 'a\\nb\\n' | sha256sum
    '911169ddaaf1'
    """
    text = "".join(f"{line}\n" for line in lines)
    return sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:DIGITS]
