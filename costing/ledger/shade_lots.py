"""The sets of an order as shade lots: each set is one, and none of them matches another for sure."""

from __future__ import annotations

from typing import NamedTuple

from costing.ledger.plan_running import CLOTH, VESSEL
from costing.ledger.whole import Ledger

SHORT = 0.25  # of the longest set: a last set below that is worth a word


class ShadeLots(NamedTuple):
    """How an order is divided into sets. Lengths are of warp, or of loom-state cloth where that is dyed.

    Attributes
    ----------
    sets, together : float
        Sets or charges of the order, and those that run side by side.
    length, longest : float
        Of a set as planned, all of one length, and of the longest that the range takes [m].
    last : float
        The last set, or each of the last that run side by side, if the others were the longest [m].
    one_would_do : bool
        True where one set would hold the order.
    order_of_one : float
        Order that fills one run of sets exactly, on the basis of the enquiry [m].
    order_of_fewer : float or None
        Longest order that needs one run of sets fewer, on the basis of the enquiry [m]; None where there is
        one run alone.
    """

    sets: float
    together: float
    length: float
    longest: float
    last: float
    one_would_do: bool
    order_of_one: float
    order_of_fewer: float | None

    @property
    def is_short(self) -> bool:
        """True where the last set would be short."""
        return self.order_of_fewer is not None and self.last < SHORT * self.longest


def shade_lots_of(ledger: Ledger) -> ShadeLots:
    """The sets of an order.

    Parameters
    ----------
    ledger : Ledger
        Of an enquiry.
    """
    plan, together = ledger.plan, ledger.enquiry.sets_side_by_side
    longest = _longest(ledger)
    runs = plan.number_of_sets / together
    whole = plan.number_of_sets * plan.set_length
    before = (runs - 1.0) * longest  # what the runs before the last hold, for each set side by side
    one = ledger.enquiry.order_length * longest * together / whole
    return ShadeLots(
        plan.number_of_sets,
        together,
        plan.set_length,
        longest,
        whole / together - before,
        whole <= longest,
        one,
        (runs - 1.0) * one if runs > 1.0 else None,
    )


def _longest(ledger: Ledger) -> float:
    """Longest set; of a vessel what one full charge holds [m]."""
    if ledger.range.yarn_form != VESSEL:
        return ledger.range.set_length_max
    assert ledger.range.charge_mass is not None
    return ledger.range.charge_mass * ledger.plan.warp_length / ledger.plan.saleable_mass


def made_of(ledger: Ledger) -> str:
    """What the lengths of the sets are of."""
    return "loom-state cloth" if ledger.range.yarn_form == CLOTH else "warp"
