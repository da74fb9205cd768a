"""Names by which a reader asks for what is used and for what drains; the same in a cell and on a screen."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from costing.quantities import folded
from costing.reference_data import meaning_of, spelled, substances
from costing.settings.material import Material

RANKS = 4  # a code goes before a group of cost, that before a role, that before a substance
Called = tuple[list[str], ...]


def names_of(code: str, group: str, product: Material | None) -> Called:
    """Names of what is used: by code, by group of cost, by role, by substance.

    Parameters
    ----------
    code, group : str
        The material or utility, and its group of cost.
    product : Material or None
        Of the price list, where it is on it.
    """
    if product is None:
        return [code], [group], [], []
    of_substance: list[str] = []
    for key in dict.fromkeys(filter(None, (product.substance, product.counted_as))):
        name = substances()[key].name
        of_substance += [key, name, name.split(" (")[0]]
    return [code], [group], [product.role] if product.role else [], of_substance


def codes_called(word: str, called: Iterable[tuple[str, Called]], where: str = "") -> tuple[list[str], bool]:
    """The materials or utilities that a word means, and whether it is a code of them.

    Parameters
    ----------
    word : str
        A whole name, in any case, or a word of the trade.
    called : iterable
        Code, and its names as `names_of` has them.
    where : str, optional
        For the error text.

    Raises
    ------
    InputError
        A word of the trade with more than one meaning, that is no name.
    """
    items = list(called)
    tries: tuple[Callable[[], str], ...] = (lambda: word, lambda: meaning_of(word, "the material", where))
    for asked in tries:
        wanted = spelled(asked())
        for rank in range(RANKS):
            found = [code for code, names in items if wanted and wanted in map(spelled, names[rank])]
            if found:
                return list(dict.fromkeys(found)), rank == 0
    return [], False


def parameter_called(word: str, known: Iterable[str]) -> str | None:
    """The parameter of the drain that a word means; the beginning of one name is that name.

    Examples
    --------
    >>> from costing.effluent.factors import PARAMETERS
    >>> parameter_called("cod", PARAMETERS), parameter_called("Sulphur", PARAMETERS)
    ('COD, both', 'sulfur, all forms')
    >>> parameter_called("hydros", PARAMETERS), parameter_called("sulfate", PARAMETERS)
    ('hydrosulfite', 'sulfate')
    """
    names = {spelled(name): name for name in known}
    names["cod"] = "COD, both"
    wanted = spelled(word)
    if wanted in names:
        return names[wanted]
    begun = [name for name in names if wanted and name.startswith((f"{wanted} ", f"{wanted},"))]
    if len(begun) == 1:
        return names[begun[0]]
    salt = folded(meaning_of(word, "the parameter")).replace("sodium ", "")
    return names.get(salt)
