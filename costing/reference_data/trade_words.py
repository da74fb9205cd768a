"""Words of the trade for what is bought: each means a substance, a role or a utility, or more than one."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType

from costing.quantities import InputError, folded, label
from costing.reference_data.materials_and_cautions import materials, read_substances
from costing.reference_data.table_files import cited, folder, rows

WORDS = ("trade_words.csv", ("word", "means", "source", "locator", "note"))
BETWEEN = " / "
# What a word may mean beside a substance: a role of the price list, or what is bought without being on it.
ROLES = ("dye", "reductant", "alkali", "oxidant", "acid", "wetting agent", "sequestrant")
UTILITIES = ("water", "steam", "power")


def spelled(word: str) -> str:
    """A word as the table has it: as it is compared, and with the f of sulfur.

    Examples
    --------
    >>> spelled("Hydrosulphite")
    'hydrosulfite'
    """
    return folded(word).replace("sulph", "sulf")


def read_trade_words(place: Path) -> Mapping[str, tuple[str, ...]]:
    """Read the words of a folder.

    Raises
    ------
    InputError
        A word that means nothing known, or that is not spelled as it is compared.
    """
    known = (*read_substances(place), *ROLES, *UTILITIES)
    name, columns = WORDS
    found: dict[str, tuple[str, ...]] = {}
    for row in rows(name, columns, place):
        word, meanings = row.text("word"), tuple(row.text("means").split(BETWEEN))
        if word != spelled(word):
            raise InputError(row.where, f"word is {word!r}; accepted is {spelled(word)!r}")
        for meaning in meanings:
            if meaning not in known:
                raise InputError(
                    row.where, f"means is {meaning!r}; accepted is a substance, a role or a utility"
                )
        cited(row, place)
        found[word] = meanings
    return MappingProxyType(found)


@lru_cache
def trade_words() -> Mapping[str, tuple[str, ...]]:
    """Every word with what it may mean.

    Examples
    --------
    >>> trade_words()["hydros"], trade_words()["soda"]
    (('sodium_hydrosulfite',), ('sodium_hydroxide', 'sodium_carbonate'))
    """
    return read_trade_words(folder())


def meaning_of(word: str, what: str, where: str = "") -> str:
    """The one thing that a word means: the key of a substance, a role, a utility; "" for no trade word.

    Parameters
    ----------
    word : str
        As it was typed.
    what, where : str
        The thing and its place, for the error text.

    Raises
    ------
    InputError
        A word with more than one meaning.

    Examples
    --------
    >>> meaning_of("Sodium Hydrosulphite", "what"), meaning_of("dithionite", "what")
    ('', 'sodium_hydrosulfite')
    """
    meanings = trade_words().get(spelled(word), ("",))
    if len(meanings) > 1:
        raise InputError(
            where,
            f"{what} is {word!r}, which may be more than one thing; accepted is one of: "
            f"{', '.join(map(label, meanings))}",
        )
    return meanings[0]


def cautions_of(meaning: str) -> list[str]:
    """Keys of the cautions for the usual forms of a substance, or of a role.

    Examples
    --------
    >>> cautions_of("sodium_hydroxide")
    ['caustic']
    >>> cautions_of("")
    []
    """
    forms = [form for form in materials().values() if meaning and meaning in (form.substance, form.role)]
    return list(dict.fromkeys(form.caution for form in forms))
