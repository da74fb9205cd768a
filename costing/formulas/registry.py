"""Every formula once, by name."""

from __future__ import annotations

from types import ModuleType

from costing.formulas import (
    group_cloth,
    group_discharge,
    group_liquor,
    group_money,
    group_reduction,
    group_sets,
    group_steam,
    group_yarn,
)
from costing.formulas.formula import Formula
from costing.quantities import InputError

GROUPS: tuple[ModuleType, ...] = (
    group_yarn,
    group_cloth,
    group_sets,
    group_liquor,
    group_reduction,
    group_steam,
    group_money,
    group_discharge,
)

FORMULAS: dict[str, Formula] = {formula.name: formula for group in GROUPS for formula in group.FORMULAS}


def find(name: str) -> Formula:
    """Find a formula by its name, in any case, with or without the prefix.

    Raises
    ------
    InputError
        When there is none, with the nearest names.

    Examples
    --------
    >>> find("delivered_from_pure").name
    'WARP_DELIVERED_FROM_PURE'
    """
    import difflib  # only a wrong name pays for it

    wanted = name.strip().upper()
    wanted = wanted if wanted.startswith("WARP_") else f"WARP_{wanted}"
    if wanted in FORMULAS:
        return FORMULAS[wanted]
    near = difflib.get_close_matches(wanted, FORMULAS, n=3, cutoff=0.5)
    hint = f"; near are: {', '.join(near)}" if near else ""
    raise InputError("formulas", f"{name!r} is not a formula{hint}; `costing list` shows all")
