"""What a permit counts in another way than a ledger: chemical forms, and colour as light taken up."""

from __future__ import annotations

from typing import Any

from costing.process.chemistry import atoms, molar_mass, molar_mass_of_formula
from costing.quantities import InputError

AS = "as "
# Near 610 nm, in organic solvents: from memory, to be verified; 22 000 L/mol/cm.
INDIGO_ABSORPTION = 2.2e6  # L/mol/m
COLOUR_FACTOR = 5.0  # by which a colour worked out from the dye may be more or less: judgement


def form_factor(wanted: str, own: str) -> tuple[float, str]:
    """From a mass counted in one form to that in another one, and the form that the result has.

    Parameters
    ----------
    wanted, own : str
        Form of the limit and of the estimate, such as ``as SO3``; a form that names no formula changes
        nothing.

    Raises
    ------
    InputError
        A form that does not hold the element which is counted.

    Examples
    --------
    >>> factor, form = form_factor("as SO2", "as SO3")
    >>> round(factor, 4), form
    (0.8002, 'as SO2')
    >>> form_factor("filtered", "as S")
    (1.0, 'as S')
    """
    if not (wanted.startswith(AS) and own.startswith(AS)) or wanted == own:
        return 1.0, own
    given, target = own[len(AS) :], wanted[len(AS) :]
    counted = next(iter(atoms(given)))
    try:
        times = atoms(given)[counted] / atoms(target)[counted]
    except (KeyError, ValueError):
        raise InputError(
            "form", f"the limit counts {wanted}, which is no formula that holds {counted}; accepted is {own}"
        ) from None
    return times * molar_mass_of_formula(target) / molar_mass_of_formula(given), wanted


def colour_of_dissolved_indigo(concentration: Any, absorption: Any = INDIGO_ABSORPTION) -> Any:
    """Light taken up near 620 nm if dissolved indigo took it up as in an organic solvent.

    A screening figure: in water most indigo is particles, which a filter holds back before colour is read.

    Parameters
    ----------
    concentration : float
        Of the indigo that passes a filter [kg/L].
    absorption : float, optional
        Molar [L/mol/m].

    Returns
    -------
    float
        Spectral absorption coefficient [1/m].

    Examples
    --------
    3 1/m is about 0.36 mg/L:

    >>> round(colour_of_dissolved_indigo(0.36e-6), 1)
    3.0
    """
    return absorption * concentration / molar_mass("indigo")
