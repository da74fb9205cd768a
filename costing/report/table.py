"""What a table is, what is known of one enquiry, and what all tables share."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Callable, NamedTuple

from costing.cost.drivers import Evaluate, FirstOrder, first_order
from costing.cost.price_breaks import break_remarks
from costing.cost.price_remarks import cost_remarks, price_remarks
from costing.cost.quote import EFFLUENT, SECONDS, CostLine, EffluentPrice, Quote, basis_of, quote
from costing.cost.quote import FINISHED_METRE as FINISHED_METRE  # named here with the other bases
from costing.cost.spread import spreads_of
from costing.cost.spread_remarks import spread_remarks
from costing.effluent.discharge import Stream, streams
from costing.ledger.remarks import Remark, remarks
from costing.ledger.whole import Ledger, is_bought, open_ledger
from costing.quantities import InputError
from costing.report.effluent_price import effluent_price
from costing.settings.inputs import Place, with_inputs
from costing.settings.mill import Enquiry, Mill
from costing.settings.mill_costs import MillCosts

# Bases of `Quote.per` that the tables name.
GREY_KG = "kg of grey yarn"
LOOM_STATE_METRE = "m of loom-state cloth"
FINISHED_YARD = "yd of finished cloth"

NOT_USED = (EFFLUENT, "overhead", SECONDS)  # groups of cost that are no thing bought


class Column(NamedTuple):
    """One column of a table.

    Attributes
    ----------
    title, unit : str
        Heading, and the unit under it.
    digits : int or None
        Decimals to show; None for text and for values of mixed kind.
    """

    title: str
    unit: str = ""
    digits: int | None = None


class Table(NamedTuple):
    """A titled table.

    Attributes
    ----------
    key, title, note : str
        Short name, heading, and a line or two under the heading.
    columns : list of Column
        Its columns.
    rows : list of list
        Text, numbers, dates or None.
    """

    key: str
    title: str
    note: str
    columns: list[Column]
    rows: list[list[Any]]


@dataclass(frozen=True)
class Result:
    """All that is known of one enquiry; streams and drivers are worked out when they are first asked for.

    `effluent` is what it pays for its water, None where the effluent charge of the mill's costs counts.
    """

    enquiry: Enquiry
    ledger: Ledger
    quote: Quote
    remarks: list[Remark]
    mill: Mill
    effluent: EffluentPrice | None = None

    @cached_property
    def streams(self) -> list[Stream]:
        """What goes down the drain, stream by stream, and all of it as the last one."""
        return streams(self.ledger, self.mill.materials)

    @cached_property
    def cost_drivers(self) -> FirstOrder:
        """What moves the cost of a metre as it is ordered, by first order: some hundred quotes.

        Raises
        ------
        InputError
            A row of the sheet *How sure* is refused, or the quote at the means of all numbers.
        """
        spreads = spreads_of(self.mill, self.enquiry)
        return first_order(spreads, one_by_one(self.mill, self.enquiry, basis_of(self.enquiry)))


# Makes a table of some enquiries of a mill.
Builder = Callable[[Mill, Sequence[Result]], Table]


def costs_of(mill: Mill) -> MillCosts:
    """The mill's costs.

    Raises
    ------
    InputError
        When the book has none.
    """
    if mill.costs is None:
        raise InputError("mill costs", "the book holds no mill costs")
    return mill.costs


def fine_money(mill: Mill) -> tuple[str, int]:
    """Currency, and decimals: one more than prices are rounded to, since a range is small beside them."""
    costs = costs_of(mill)
    return costs.currency, max(decimals_of(costs.money_rounding), 3) + 1


def work_out(mill: Mill, enquiry: Enquiry, today: datetime.date | None = None) -> Result:
    """Run, price and discharge one enquiry.

    Parameters
    ----------
    mill, enquiry
        The book and one of its enquiries.
    today : date, optional
        From which the age of prices is counted; today where it is left out.

    Raises
    ------
    InputError
        From any setting, step or price that is refused.
    """
    ledger, offer, effluent, said = priced(mill, enquiry)
    notes = [
        *said,
        *remarks(ledger, mill),
        *cost_remarks(mill, enquiry, costs_of(mill)),
        *price_remarks(offer, mill, today or datetime.date.today()),
        *break_remarks(offer, ledger.plan.saleable_mass, mill),
        *spread_remarks(mill, enquiry),
    ]
    return Result(enquiry, ledger, offer, notes, mill, effluent)


def priced(mill: Mill, enquiry: Enquiry) -> tuple[Ledger, Quote, EffluentPrice | None, list[Remark]]:
    """Run and price one enquiry: ledger, quote, what it pays for its water, and what is to be said of that.

    Raises
    ------
    InputError
        From any setting, step or price that is refused.
    """
    ledger = open_ledger(mill, enquiry)
    effluent, said = effluent_price(mill, enquiry, ledger, costs_of(mill))
    return ledger, quote(ledger, mill.materials, costs_of(mill), effluent), effluent, said


def one_by_one(mill: Mill, enquiry: Enquiry, basis: str) -> Evaluate:
    """The cost of an enquiry on a basis with other numbers in some places, one quote after the other.

    `costing.many` does the same for many cases at once, and needs arrays for it.
    """

    def evaluate(cases: Sequence[Mapping[Place, float]]) -> list[float | InputError]:
        found: list[float | InputError] = []
        for case in cases:
            try:
                changed, asked = with_inputs(mill, enquiry, case)
                found.append(priced(changed, asked)[1].cost_on(basis))
            except InputError as error:
                found.append(error)
        return found

    return evaluate


def bought(result: Result) -> dict[str, float]:
    """What an enquiry takes of every bought thing, as delivered, per kilogram of saleable grey yarn."""
    amounts: dict[str, float] = {}
    for line in result.ledger.lines:
        if is_bought(line):
            amounts[line.material] = amounts.get(line.material, 0.0) + line.amount
    return amounts


def active_parts(mill: Mill, amounts: Mapping[str, float]) -> dict[str, float]:
    """What products hold, by what their strength counts: a substance, or the code of one without formula.

    Parameters
    ----------
    mill : Mill
        The mill's book.
    amounts : mapping
        Code -> product as delivered [kg/kg]; what is no product of the list is left out.
    """
    held: dict[str, float] = {}
    for code, amount in amounts.items():
        if code in mill.materials:
            product = mill.materials[code]
            key = product.counted_as or code
            held[key] = held.get(key, 0.0) + amount * product.strength
    return held


def used_lines(result: Result) -> list[CostLine]:
    """Priced lines of what is used; what the drain and the office cost is not used."""
    return [line for line in result.quote.lines if line.group not in NOT_USED]


def used_products(mill: Mill, results: Sequence[Result]) -> Iterator[str]:
    """Codes of the price list that any of the enquiries takes, each once."""
    codes = dict.fromkeys(code for item in results for code in bought(item))
    return (code for code in codes if code in mill.materials)


def decimals_of(step: float) -> int:
    """Decimals that a rounding step needs.

    Examples
    --------
    >>> decimals_of(0.001), decimals_of(5.0)
    (3, 0)
    """
    text = f"{step:.10f}".rstrip("0")
    return len(text.split(".")[1]) if "." in text else 0


def largest_first(
    key: str, title: str, note: str, columns: list[Column], rows: list[list[Any]], summed: Sequence[int]
) -> Table:
    """A table sorted by the first of the columns to be summed, whatever its sign, with a row of sums.

    Parameters
    ----------
    key, title, note, columns, rows
        Of the table.
    summed : sequence of int
        Places of the columns that are summed.
    """
    ordered = sorted(rows, key=lambda row: -abs(row[summed[0]]))
    total: list[Any] = ["sum", *[None] * (len(columns) - 1)]
    for place in summed:
        total[place] = sum((row[place] for row in ordered), 0.0)
    return Table(key, title, note, columns, [*ordered, total])


def capital(text: str) -> str:
    """The same words, with a capital at the start."""
    return text[:1].upper() + text[1:]
