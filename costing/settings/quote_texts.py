"""What a mill says to a customer beside the price: a row of the sheet *Quote texts* each."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class QuoteText:
    """A text of the page for the customer; `enquiry` is the code of the only one that it is for, or ""."""

    kind: str
    text: str
    enquiry: str = ""
    where: str = ""
