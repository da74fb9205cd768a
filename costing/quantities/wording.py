"""Words and codes as people type them: what counts as the same, and what a refusal lists."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from functools import lru_cache

MOST_LISTED = 8
ALIKE = 0.6
_SIGNS = str.maketrans(
    {
        "_": " ",
        **dict.fromkeys("\u2010\u2011\u2012\u2013\u2212", "-"),  # a program may turn a hyphen into these
        **dict.fromkeys("\u00ad\u200b\u200c\u200d\u2060\ufeff", None),  # and these are not seen at all
    }
)


def folded(text: object) -> str:
    """A text as it is compared: case, blanks of any kind, underscores and the sort of hyphen do not count.

    Examples
    --------
    >>> folded("  Bath_indigo ") == folded("bath\u00a0 indigo")
    True
    """
    return _folded(str(text))


@lru_cache(maxsize=16384)  # the same heads and names are compared for every column of a sheet
def _folded(written: str) -> str:
    plain = written.replace("_", " ") if written.isascii() else written.translate(_SIGNS)
    return " ".join(plain.split()).casefold()


def meant(text: str, words: Collection[str]) -> str | None:
    """The one of these words that a text means: itself, else the only one that is compared as the same.

    Examples
    --------
    >>> meant(" d-1200", ["D-1200", "D-1350"]), meant("D-1", ["D-1200"]), meant("a", ["A", "a "])
    ('D-1200', None, None)
    """
    if text in words:
        return text
    key = folded(text)
    found = [word for word in words if folded(word) == key]
    return found[0] if len(found) == 1 else None


def listed(words: Iterable[str], near: str = "", sign: str = ", ", most: int = MOST_LISTED) -> str:
    """Words for a refusal: each once, those like what was typed first, and not too many.

    Parameters
    ----------
    words : iterable of str
        What is accepted.
    near : str, optional
        What was typed.
    sign : str, optional
        What stands between them.
    most : int, optional
        How many are told; of the others only their number.

    Examples
    --------
    >>> listed(["DARK", "LIGHT", "DARK", "BLACK"], near="blck")
    'BLACK, DARK, LIGHT'
    >>> listed("ABCDEFGHIJ"), listed([])
    ('A, B, C, D, E, F, G, H and 2 more', 'none')
    """
    known = list(dict.fromkeys(words))
    if near and len(known) > 1:
        from difflib import SequenceMatcher  # only a wrong word pays for it

        key = folded(near)
        alike = {word: SequenceMatcher(None, folded(word), key).ratio() for word in known}
        known.sort(key=lambda word: -alike[word] if alike[word] >= ALIKE else 0.0)  # the others as they came
    if not known:
        return "none"
    told = known if len(known) <= most + 1 else known[:most]  # "and 1 more" is no shorter than the one
    more = f" and {len(known) - len(told)} more" if len(told) < len(known) else ""
    return sign.join(told) + more
