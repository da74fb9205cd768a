"""What the register keeps of a quote: its inputs and its result as texts, and what it is looked for by."""

from __future__ import annotations

import datetime
import hashlib
import json
from typing import Any, NamedTuple

import costing
from costing.cost.quote import FINISHED_METRE, ORDERED, CostLine, Quote
from costing.ledger.remarks import Remark
from costing.quantities import InputError
from costing.quantities.units import convert
from costing.reference_data import fingerprint
from costing.report.table import GREY_KG, Result, costs_of
from costing.settings.mill import Mill
from costing.settings.snapshot import Document, from_text, snapshot_of, to_text

RESULT = "result of a quote"
FORMAT = 1
LONGEST = 2000  # letters of a free text


class Head(NamedTuple):
    """What a quote is looked for by, and what it came to.

    Attributes
    ----------
    code, revision
        The quote, and which revision of it; 0 where it is not saved yet.
    saved_at : str
        Date and time in UTC, ISO 8601.
    saved_by, customer, note : str
        Free texts.
    description, style, recipe, range : str
        Of the enquiry.
    ordered, ordered_unit, length_basis
        Length ordered, in its unit, and what it counts.
    currency : str
        The mill's money.
    basis : str
        Of cost and price: a metre of what is ordered.
    cost, price : float
        On that basis, not rounded.
    price_per_kg : float
        Per kilogram of grey yarn, without weft.
    rounding : float
        Step to which the mill rounds money.
    price_date : str
        Day whose prices count, ISO 8601.
    version, tables : str
        Of the program, and the mark of its reference tables.
    """

    code: str
    revision: int
    saved_at: str
    saved_by: str
    customer: str
    note: str
    description: str
    style: str
    recipe: str
    range: str
    ordered: float
    ordered_unit: str
    length_basis: str
    currency: str
    basis: str
    cost: float
    price: float
    price_per_kg: float
    rounding: float
    price_date: str
    version: str
    tables: str


class Kept(NamedTuple):
    """A quote as the register keeps it: head, snapshot of its inputs and result, both as JSON."""

    head: Head
    snapshot: str
    result: str

    @property
    def name(self) -> str:
        """Code and revision, as people read it."""
        return f"{self.head.code} revision {self.head.revision}"

    @property
    def document(self) -> Document:
        """The snapshot."""
        return from_text(self.snapshot, self.name)

    def seal(self) -> str:
        """A mark over all that is kept: one other letter, another mark."""
        whole = json.dumps([list(self.head), self.snapshot, self.result], ensure_ascii=False)
        return hashlib.sha256(whole.encode()).hexdigest()


def kept(mill: Mill, result: Result, saved_by: str = "", customer: str = "", note: str = "") -> Kept:
    """A quote to be saved; the register gives it its revision and its time.

    Parameters
    ----------
    mill : Mill
        The mill's book.
    result : Result
        Of an enquiry of it.
    saved_by, customer, note : str, optional
        Free texts.

    Raises
    ------
    InputError
        A text is too long.
    """
    for option, text in (("--by", saved_by), ("--customer", customer), ("--note", note)):
        if len(text) > LONGEST or "\x00" in text:
            raise InputError(option, f"has {len(text)} letters; accepted are up to {LONGEST}, none of them 0")
    enquiry, costs, quote = result.enquiry, costs_of(mill), result.quote
    basis = ORDERED.get(enquiry.length_basis, FINISHED_METRE)
    head = Head(
        enquiry.code,
        0,
        "",
        saved_by.strip(),
        customer.strip(),
        note.strip(),
        enquiry.description,
        enquiry.style,
        enquiry.recipe,
        enquiry.range,
        float(
            convert(enquiry.order_length, "m", enquiry.order_unit)
        ),  # a whole number would come back otherwise than it is sealed
        enquiry.order_unit,
        enquiry.length_basis,
        costs.currency,
        basis,
        float(quote.cost_on(basis)),
        float(quote.price_on(basis)),
        float(quote.price_on(GREY_KG)),
        float(costs.money_rounding),
        costs.day.isoformat(),
        costing.__version__,
        fingerprint(),
    )
    return Kept(head, to_text(snapshot_of(mill, enquiry)), result_text(result))


def result_text(result: Result) -> str:
    """A quote and its remarks as JSON; each number with all its digits."""
    document = {
        "result": RESULT,
        "format": FORMAT,
        "quote": result.quote._asdict(),
        "remarks": [list(remark) for remark in result.remarks],
    }
    return json.dumps(document, ensure_ascii=False, allow_nan=False, separators=(",", ":"))


def quote_of(item: Kept) -> tuple[Quote, list[Remark]]:
    """The quote as it was saved, with its remarks.

    Raises
    ------
    InputError
        It is of a newer format, or no result.
    """
    document: Any = from_text(item.result, item.name)
    if document.get("result") != RESULT or document.get("format") != FORMAT:
        raise InputError(
            item.name,
            f"has a result of the format {document.get('format')!r}; accepted is {FORMAT}: a newer one needs "
            "a newer version of this program",
        )
    try:
        found = document["quote"]
        lines = [CostLine(*line) for line in found["lines"]]
        quote = Quote(**{**found, "lines": lines, "not_priced": tuple(found["not_priced"])})
        return quote, [Remark(*remark) for remark in document["remarks"]]
    except (KeyError, TypeError) as error:
        raise InputError(
            item.name, f"has a result that is not whole: {error}; accepted is a {RESULT}"
        ) from error


def local_time(saved_at: str) -> str:
    """A time of the register on the clock of this computer, to the minute."""
    return datetime.datetime.fromisoformat(saved_at).astimezone().strftime("%Y-%m-%d %H:%M")
