"""Every formula once, by name; and every function that a cell can call, which are a few more."""

from __future__ import annotations

from functools import cache
from types import ModuleType

from costing.formulas import (
    book_functions,
    functions,
    group_acidity,
    group_cloth,
    group_discharge,
    group_limits,
    group_liquor,
    group_lye,
    group_money,
    group_orders,
    group_reduction,
    group_sets,
    group_size,
    group_steam,
    group_sulfur_dye,
    group_treatment,
    group_water,
    group_yarn,
    limit_functions,
)
from costing.formulas.cell_formula import cell_formula
from costing.formulas.cell_function import CellFunction
from costing.formulas.formula import PREFIX, Formula
from costing.quantities import InputError

GROUPS: tuple[ModuleType, ...] = (
    group_yarn,
    group_cloth,
    group_sets,
    group_liquor,
    group_lye,
    group_reduction,
    group_sulfur_dye,
    group_steam,
    group_size,
    group_money,
    group_orders,
    group_discharge,
    group_acidity,
    group_water,
    group_treatment,
    group_limits,
)

FORMULAS: dict[str, Formula] = {formula.name: formula for group in GROUPS for formula in group.FORMULAS}

# Functions that need nothing but their arguments, and those that ask a mill's book.
LOOK_UPS: dict[str, CellFunction] = {
    function.name: function for function in (*functions.FUNCTIONS, *limit_functions.FUNCTIONS)
}
OF_BOOK: dict[str, CellFunction] = {function.name: function for function in book_functions.FUNCTIONS}

OTHERS: dict[str, CellFunction] = {**OF_BOOK, **LOOK_UPS}


@cache
def cell_functions() -> dict[str, CellFunction]:
    """Every function that a cell can call, by name: the equations by group, then the others.

    Examples
    --------
    >>> cell_functions()["WARP_DELIVERED_FROM_PURE"].gives, cell_functions()["WARP_MOLAR_MASS"].gives
    ('delivered mass [kg]', 'molar mass [g/mol]')
    """
    equations = {
        formula.name: cell_formula(formula, group.TITLE) for group in GROUPS for formula in group.FORMULAS
    }
    return {**equations, **OTHERS}


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
    >>> find("warp_mass_per_metre").name
    'WARP_WARP_MASS_PER_METRE'
    """
    wanted = name.strip().upper()
    for full in (wanted, PREFIX + wanted):
        if full in FORMULAS:
            return FORMULAS[full]
    import difflib  # only a wrong name pays for it

    full = wanted if wanted.startswith(PREFIX) else PREFIX + wanted
    near = difflib.get_close_matches(full, FORMULAS, n=3, cutoff=0.5)
    hint = f"; near are: {', '.join(near)}" if near else ""
    raise InputError("formulas", f"{name!r} is not a formula{hint}; `costing list` shows all")
