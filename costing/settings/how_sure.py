"""What a mill says of how sure its numbers are: a row of the sheet *How sure* each."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Optional


@dataclass(frozen=True)
class GivenSpread:
    """How far a number may be from what the book says; one of three ways is filled.

    `code` is the name of a step, material, style, range, enquiry or currency; "" for all of the kind. `low`
    and `high` are its ends in the house unit; `give_or_take` is how far the ends are from the number, and
    `deviation` its standard deviation, both as a share of the number.
    """

    kind: str
    code: str
    name: str
    low: Optional[float] = None  # noqa: UP045 read by an older Python
    high: Optional[float] = None  # noqa: UP045
    give_or_take: Optional[float] = None  # noqa: UP045
    deviation: Optional[float] = None  # noqa: UP045
    moves_with: str = ""
    where: str = ""
