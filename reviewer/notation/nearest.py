"""The known word that was probably meant."""

from collections.abc import Iterable
from difflib import get_close_matches

LONGEST = 60  # a longer word is no slip of the pen, and comparing it costs its square


def nearest(word: str, known: Iterable[str]) -> str | None:
    """Return the known word most like `word`, upper and lower case alike, or None.

    >>> nearest("thicknes", ["diameter", "thickness"]), nearest("Mpa", ["kPa", "MPa"])
    ('thickness', 'MPa')
    >>> nearest("colour", ["diameter", "thickness"]) is None
    True
    """
    if not word or len(word) > LONGEST:
        return None
    choices = sorted(set(known))
    if word in choices:
        return word
    by_folded: dict[str, str] = {}
    for each in choices:
        by_folded.setdefault(each.casefold(), each)
    folded = word.casefold()
    if folded in by_folded:
        return by_folded[folded]
    close = get_close_matches(folded, by_folded, n=1, cutoff=0.6)
    return by_folded[close[0]] if close else None
