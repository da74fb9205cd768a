"""What the ledger takes for a kilogram of each enquiry, and production that was booked in yarn or cloth."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import NamedTuple

from costing.cost.quote import FINISHED_METRE, bases
from costing.ledger.whole import open_ledger
from costing.purchasing.requirement import from_store_per_kg
from costing.quantities import InputError
from costing.settings.mill import Mill
from costing.settings.records import MadeRecord, MadeRow


class Standard(NamedTuple):
    """What an enquiry takes on a range, in the lot that it asks for.

    Attributes
    ----------
    range, shade : str
        Codes of the range and of the recipe.
    uses : dict
        Product -> taken from the store, as delivered, for a kilogram of saleable grey yarn [kg/kg].
    yarn_per_metre : float
        Saleable grey yarn in a metre of finished cloth [kg/m].
    """

    range: str
    shade: str
    uses: dict[str, float]
    yarn_per_metre: float


class Standards:
    """The standards of a book, each worked out once.

    Parameters
    ----------
    mill : Mill
        The book.
    """

    def __init__(self, mill: Mill) -> None:
        self._mill = mill
        self._found: dict[tuple[str, str], Standard | InputError] = {}

    def of(self, enquiry: str, range_: str = "", where: str = "") -> Standard:
        """The standard of an enquiry, on its own range or another.

        Raises
        ------
        InputError
            The book does not know the enquiry or the range, or the ledger refuses it.
        """
        key = (enquiry, range_)
        if key not in self._found:
            try:
                self._found[key] = self._worked_out(enquiry, range_)
            except InputError as error:
                self._found[key] = error
        found = self._found[key]
        if isinstance(found, InputError):
            why = f"{found.where}: {found.message}" if found.where else found.message
            raise InputError(where, f"{enquiry} has no standard: {why}")
        return found

    def _worked_out(self, code: str, range_: str) -> Standard:
        refused = self._mill.refused.get(("enquiry", code))
        if refused is not None:
            raise refused
        enquiry = self._mill.enquiry(code)
        if range_:
            enquiry = replace(enquiry, range=self._mill.range(range_).code)
        ledger = open_ledger(self._mill, enquiry)
        taken = from_store_per_kg(ledger, self._mill)
        return Standard(enquiry.range, enquiry.recipe, taken, bases(ledger)[FINISHED_METRE])


class Booked(NamedTuple):
    """Production as yarn, and what of it has no standard."""

    made: list[MadeRecord]
    left_out: list[tuple[MadeRow, InputError]]


def made_records(standards: Standards, rows: Iterable[MadeRow]) -> Booked:
    """Production as saleable grey yarn: cloth counts by the yarn in a metre of it.

    A row without a standard is left out of it and told apart.
    """
    made: list[MadeRecord] = []
    left_out: list[tuple[MadeRow, InputError]] = []
    for row in rows:
        try:
            standard = standards.of(row.enquiry, row.range, row.where)
        except InputError as error:
            left_out.append((row, error))
            continue
        amount = row.cloth if row.yarn is None else row.yarn
        assert amount is not None, row
        mass = standard.yarn_per_metre if row.yarn is None else 1.0
        planned = None if row.planned is None else row.planned * mass
        made.append(MadeRecord(row.day, row.enquiry, amount * mass, row.shift, row.range, planned, row.where))
    return Booked(made, left_out)
