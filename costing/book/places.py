"""Put the sheet and cell of the book on a refusal that was raised below it, where no sheet is known."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from costing.quantities import InputError, label
from costing.settings.mill import Enquiry, Mill


@contextmanager
def placed(mill: Mill, enquiry: Enquiry, path: Path | None = None) -> Iterator[None]:
    """Re-raise an `InputError` of a quote with file, sheet and cell.

    Parameters
    ----------
    mill : Mill
        The book that was read.
    enquiry : Enquiry
        The one that is worked out.
    path : Path, optional
        The book's file, to be named in front.

    Raises
    ------
    InputError
        The same refusal, at the cell of the quantity that its text begins with.
    """
    try:
        yield
    except InputError as error:
        file = f"{path.name}, " if path else ""
        raise error.at(lambda one: file + _place(mill, enquiry, one)) from error


def _place(mill: Mill, enquiry: Enquiry, error: InputError) -> str:
    if "!" in error.where:
        return error.where
    kind, _, code = error.where.partition(" ")
    if (kind, code) in mill.places:
        return f"{mill.places[kind, code]}, {error.where}"
    step = error.where
    for owner, steps in ((enquiry.recipe, mill.recipe_steps), (enquiry.range, mill.range_steps)):
        entries = steps.get((owner, step), {})
        for name in sorted(entries, key=len, reverse=True):
            if error.message.startswith(label(name)):
                return f"{entries[name].where}, {step}"
    recipe = mill.places.get(("recipe", enquiry.recipe), "")
    return f"{recipe}, {error.where}" if recipe else error.where
