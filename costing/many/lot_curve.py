"""What a metre costs against the length of the order, and the shortest order that is worth a lot."""

from __future__ import annotations

from typing import NamedTuple

import numpy

from costing.cost.quote import basis_of
from costing.ledger.shade_lots import shade_lots_of
from costing.ledger.whole import open_ledger
from costing.many.lanes import Floats
from costing.many.quotes import COST, PRICE, many_quotes, ordered
from costing.quantities import InputError
from costing.quantities.checking import LIMITS, shown
from costing.quantities.table import quantity
from costing.settings.inputs import ENQUIRY, Place
from costing.settings.mill import Enquiry, Mill

LENGTH = Place(ENQUIRY, "", "order_length")
POINTS = 240
TOLERANCE = 0.05  # of the cost: a lot is economic where its metre costs no more than this above the reference


class LotCurve(NamedTuple):
    """Cost and price of a metre for many lengths of the order.

    Attributes
    ----------
    lengths : array
        Ordered, in what the enquiry counts [m].
    costs, prices : array
        Of a metre; not a number where the order is refused [money/m].
    sets : array
        Dye sets, or charges, that the order is divided into; each run of the range takes those side by side.
    reference : float
        Length that fills the longest set, or one charge, exactly: what the others are measured against [m].
    reference_cost : float
        Of a metre of it [money/m].
    least : float or None
        From this length on no order costs more than `tolerance` above the reference; None where the longest
        asked still does [m].
    tolerance : float
        [fraction]
    refused : tuple of (float, InputError)
        Lengths that cannot be run, each with why.
    """

    lengths: Floats
    costs: Floats
    prices: Floats
    sets: Floats
    reference: float
    reference_cost: float
    least: float | None
    tolerance: float
    refused: tuple[tuple[float, InputError], ...]

    def surcharge(self) -> Floats:
        """What must be added to a metre so that the order bears its own lot [money/m]."""
        return numpy.maximum(self.costs - self.reference_cost, 0.0)

    def cost_at(self, length: float) -> float:
        """Cost of a metre of the point that is nearest to a length [money/m]."""
        return float(self.costs[int(numpy.argmin(abs(self.lengths - length)))])


def lot_curve(
    mill: Mill,
    enquiry: Enquiry,
    shortest: float | None = None,
    longest: float | None = None,
    tolerance: float = TOLERANCE,
    points: int = POINTS,
) -> LotCurve:
    """Quote an enquiry for many lengths.

    Parameters
    ----------
    mill, enquiry : Mill, Enquiry
        The mill's book, with costs, and an enquiry of it.
    shortest, longest : float, optional
        Ends of the curve; from a fiftieth of a full set to three of them, or to the order itself [m].
    tolerance : float, optional
        By how much an economic lot may be dearer than the reference [fraction].
    points : int, optional
        How many lengths, beside those at which a set is just full.

    Returns
    -------
    LotCurve
        The shortest length first.

    Raises
    ------
    InputError
        The enquiry is refused, or the lengths are not in their order.
    """
    full = full_set(mill, enquiry)
    low = shortest if shortest is not None else min(full / 50.0, enquiry.order_length)
    high = longest if longest is not None else max(3.0 * full, enquiry.order_length)
    item = quantity("order_length")
    least, most = LIMITS["order_length"]
    low, high = max(low, least), min(high, most)
    if not low < high:
        raise InputError(
            "",
            f"the curve would run from {shown(item, low)} to {shown(item, high)}; accepted is a longer end",
        )
    steps = numpy.geomspace(low, high, points)
    # The saw's teeth: just full, and just too long for one set less.
    whole = numpy.arange(1.0, min(numpy.floor(high / full), 200.0) + 1.0) * full
    teeth = numpy.concatenate([whole * (1.0 - 1e-9), whole * (1.0 + 1e-3), [enquiry.order_length]])
    lengths = numpy.unique(numpy.concatenate([steps, teeth[(teeth >= low) & (teeth <= high)]]))
    outcome = many_quotes(mill, enquiry, {LENGTH: lengths}, ordered(basis_of(enquiry)))
    if len(outcome.refused) == len(lengths):
        raise next(iter(outcome.refused.values()))
    costs = outcome.values[COST]
    reference = many_quotes(
        mill, enquiry, {LENGTH: numpy.array([full * (1.0 - 1e-9)])}, ordered(basis_of(enquiry))
    )
    if reference.refused:
        raise reference.refused[0]
    reference_cost = float(reference.values[COST][0])
    too_dear = numpy.flatnonzero(~(costs <= reference_cost * (1.0 + tolerance)))
    first = 0 if not too_dear.size else int(too_dear[-1]) + 1
    return LotCurve(
        lengths,
        costs,
        outcome.values[PRICE],
        numpy.maximum(numpy.ceil(lengths / full - 1e-6), 1.0) * enquiry.sets_side_by_side,
        full,
        reference_cost,
        float(lengths[first]) if first < len(lengths) else None,
        tolerance,
        tuple((float(lengths[case]), error) for case, error in sorted(outcome.refused.items())),
    )


def full_set(mill: Mill, enquiry: Enquiry) -> float:
    """Length of an order that fills one run of sets of the range, or one charge of a vessel, exactly [m].

    Side by side run as many sets as the enquiry says.
    """
    return shade_lots_of(open_ledger(mill, enquiry)).order_of_one


class Sharing(NamedTuple):
    """An order that shares its sets with other orders of the same shade.

    Attributes
    ----------
    others : float
        Length of the other orders [m].
    alone, shared : float
        Cost of a metre alone, and in one lot with them [money/m].
    """

    others: float
    alone: float
    shared: float


def sharing(mill: Mill, enquiry: Enquiry, others: float) -> Sharing:
    """What a metre costs where the order runs in one lot with others of its shade.

    All of them are taken to be of the same style: what differs between styles is not shared here.

    Parameters
    ----------
    mill, enquiry : Mill, Enquiry
        The mill's book, with costs, and an enquiry of it.
    others : float
        Length of the other orders, in what the enquiry counts [m].

    Raises
    ------
    InputError
        Either lot is refused.
    """
    lengths = numpy.array([enquiry.order_length, enquiry.order_length + others])
    outcome = many_quotes(mill, enquiry, {LENGTH: lengths}, ordered(basis_of(enquiry)))
    for error in outcome.refused.values():
        raise error
    alone, shared = outcome.values[COST]
    return Sharing(others, float(alone), float(shared))
