"""What hot liquors dissolve of grey cotton."""

from __future__ import annotations

from costing.process.chemistry import molar_mass
from costing.process.postings import GREY, PROCESS, Book
from costing.quantities import InputError

COTTON = "cotton"
ACID = "galacturonic_acid"  # stands for the pectic acids of the fibre
EXTRACT = "cotton_extract"  # the rest of the organic matter that a box dissolves
DISSOLVED = "dissolved by the scour"
NEUTRALISED = "neutralised by the yarn's acids"
NEUTRALISATION = {
    ACID: -1.0,
    "sodium_hydroxide": -1.0,
    "sodium_galacturonate": 1.0,
    "water": 1.0,
}


def post_dissolved(book: Book, weight_loss: float, ash_share: float, acid: float) -> None:
    """Post what dissolves for what it is: the entry of the yarn posted all of its dry matter as cotton.

    Parameters
    ----------
    book : Book
        Takes the lines.
    weight_loss : float
        Dry matter that dissolves [kg/kg].
    ash_share : float
        Mineral part of it [fraction].
    acid : float
        Pectic acid in the rest of it [kg/kg].
    """
    organic = weight_loss * (1.0 - ash_share)
    book.move(COTTON, DISSOLVED, weight_loss, PROCESS, GREY)
    book.move(ACID, DISSOLVED, acid, GREY, PROCESS)
    book.move(EXTRACT, DISSOLVED, organic - acid, GREY, PROCESS)
    book.move("cotton_ash", DISSOLVED, weight_loss - organic, GREY, PROCESS)


def acid_of(step_name: str, weight_loss: float, ash_share: float, caustic_neutralised: float) -> float:
    """Pectic acid that the caustic neutralised by a step stands for.

    Parameters
    ----------
    step_name : str
        Step, for the error text.
    weight_loss : float
        Dry matter that dissolves [kg/kg].
    ash_share : float
        Mineral part of it [fraction].
    caustic_neutralised : float
        Caustic (NaOH 100 %) that the acids of the rest take [kg/kg].

    Returns
    -------
    float
        Per mass of grey yarn [kg/kg].

    Raises
    ------
    InputError
        More caustic neutralised than the dissolved matter can neutralise.
    """
    organic = weight_loss * (1.0 - ash_share)
    acid = caustic_neutralised * molar_mass(ACID) / molar_mass("sodium_hydroxide")
    if acid > organic:
        raise InputError(
            step_name,
            f"caustic neutralised is {1000 * caustic_neutralised:g} g/kg, more than the acids of a "
            f"weight loss of {100 * weight_loss:g} % can take; accepted is up to "
            f"{1000 * organic * molar_mass('sodium_hydroxide') / molar_mass(ACID):.3g} g/kg",
        )
    return acid
