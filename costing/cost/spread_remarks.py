"""What a clerk would ask of the sheet *How sure*: a share that looks typed as a fraction."""

from __future__ import annotations

from costing.cost.spread import place_text, row_for, row_names
from costing.ledger.remarks import Remark, located
from costing.quantities import label
from costing.quantities.checking import number_text
from costing.settings.how_sure import GivenSpread
from costing.settings.inputs import inputs_of
from costing.settings.mill import Enquiry, Mill

# Half a per cent is how sure a weighed price may be, and 50 % typed as 0.5 looks the same: judgement.
SMALL_SHARE = 0.01


def spread_remarks(mill: Mill, enquiry: Enquiry) -> list[Remark]:
    """A warning for each row whose share of a number is under one per cent, where the enquiry rests on it.

    Less than the sheet accepts is refused by its reader.

    Parameters
    ----------
    mill, enquiry : Mill, Enquiry
        The book, and an enquiry of it.
    """
    doubtful = [row for row in mill.spreads if _small(row) is not None]
    if not doubtful:
        return []
    told: dict[str, Remark] = {}
    for place in inputs_of(mill, enquiry):
        row = row_for(mill.spreads, place, row_names(enquiry, place))
        if row is None or row not in doubtful or row.where in told:
            continue
        name, share = _small(row) or ("", 0.0)
        text = (
            f"{label(name)} is {number_text(100 * share)} %: did you mean {number_text(1e4 * share)} %? "
            "the unit is already %, so ten per cent is typed as 10, not as 0.1; low and high leave no doubt"
        )
        told[row.where] = Remark("warning", located(place_text(place), row.where), text)
    return list(told.values())


def _small(row: GivenSpread) -> tuple[str, float] | None:
    """The share of a row that is under one per cent, with its name."""
    for name, share in (("give_or_take", row.give_or_take), ("deviation", row.deviation)):
        if share is not None and 0.0 < share < SMALL_SHARE:
            return name, share
    return None
