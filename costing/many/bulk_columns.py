"""Columns of a table of quotes: codes and words, and numbers in the unit of their heading."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import fields
from typing import TYPE_CHECKING, Any, NamedTuple

import numpy

from costing.book.lye_scale import SCALES
from costing.book.quantity_cell import measured, read_number, unit_of
from costing.many.bulk_jobs import Rows
from costing.many.lanes import Floats
from costing.quantities import CHOICES, QUANTITIES, InputError, Quantity, describe, folded, label
from costing.quantities.units import convert, measure
from costing.settings.mill import Enquiry

if TYPE_CHECKING:
    import pandas

CODES = ("enquiry", "style", "recipe", "range")
WORDS = tuple(field.name for field in fields(Enquiry) if field.name in CHOICES)
_HEADING = re.compile(r"(.*?)\s*\[([^\[\]]*)\]\s*")


class Texts(NamedTuple):
    """A column of codes or words.

    Attributes
    ----------
    known : list of str
        Each once, and "" as the last one.
    numbers : array of int
        Which of them each row has.
    """

    known: list[str]
    numbers: Rows


class Numbers(NamedTuple):
    """A column of numbers.

    Attributes
    ----------
    heading, text : str
        As the table has it, and without its unit.
    item : Quantity
        What the numbers are.
    house : array
        In the house unit; not a number where the cell is empty.
    refused : dict
        Row -> why its number cannot be read in that unit.
    """

    heading: str
    text: str
    item: Quantity
    house: Floats
    refused: dict[int, InputError]


def columns_of(table: pandas.DataFrame, headings: Sequence[str]) -> tuple[dict[str, Texts], list[Numbers]]:
    """Columns of codes and words, by name, and columns of numbers."""
    words: dict[str, Texts] = {}
    numbers: list[Numbers] = []
    seen: dict[str, str] = {}
    for place, heading in enumerate(headings):
        found = _HEADING.fullmatch(heading)
        text, unit = (found[1], found[2]) if found else (heading, "")
        key = folded(text).replace("-", " ")
        if key in seen:
            raise InputError(
                f"column {heading!r}", f"stands beside {seen[key]!r}, which is the same; accepted is one"
            )
        seen[key] = heading
        cells = table.iloc[:, place]
        name = key.replace(" ", "_")
        if not found and (name in CODES or name in WORDS):
            words[name] = _texts(cells, heading)
            continue
        item = QUANTITIES.get(folded(text.rpartition(": ")[2]).replace("-", " ").replace(" ", "_"))
        if item is None:
            raise _unknown(heading)
        numbers.append(_numbers(cells, heading, text, item, unit))
    if not words.keys() & set(CODES):
        raise InputError("heading", f"has no column of codes; accepted is one of: {', '.join(CODES)}")
    return words, numbers


def _unknown(heading: str) -> InputError:
    words = ", ".join(label(name) for name in (*CODES, *WORDS))
    return InputError(
        f"column {heading!r}",
        f"is no number of an enquiry; accepted are {words}, and numbers with their unit, as order length [m] "
        "or indigo dyeing: pick up [L/kg]",
    )


def _texts(cells: pandas.Series[Any], heading: str) -> Texts:
    """The codes of a column, each once; "" for an empty cell."""
    import pandas

    numbers, known = pandas.factorize(cells)  # -1 for an empty cell
    texts = []
    for number, value in enumerate(known.tolist()):
        if isinstance(value, bool):
            row = int(numpy.argmax(numbers == number))
            raise InputError(_cell(heading, row), f"is {str(value).upper()}; accepted is a code of the book")
        whole = isinstance(value, float) and value.is_integer()  # a code of digits comes as a number
        texts.append(str(int(value) if whole else value).strip())
    return Texts([*texts, ""], numbers)


def _cell(heading: str, row: int) -> str:
    """Column and row for a refusal; the heading is row 1, as a spreadsheet program counts."""
    return f"column {heading!r}, row {row + 2}"


def _numbers(cells: pandas.Series[Any], heading: str, text: str, item: Quantity, unit_text: str) -> Numbers:
    """A column of numbers in the house unit."""
    where = f"column {heading!r}"
    if not unit_text.strip() and item.usual:
        raise InputError(
            where, f"the unit is missing; accepted is one behind the name, as {text} [{item.usual}]"
        )
    unit = unit_of(item, unit_text.strip(), where)
    if cells.dtype.kind in "iuf" and not hasattr(cells.dtype, "numpy_dtype"):
        given = cells.to_numpy(dtype=float)
    else:
        empty = cells.isna().to_numpy()
        given = numpy.full(len(cells), numpy.nan)
        for row, value in enumerate(cells.tolist()):
            if not (empty[row] or (isinstance(value, str) and not value.strip())):
                given[row] = read_number(value, text, _cell(heading, row), describe(item))
    if unit not in SCALES and measure(unit)[0] == measure(item.unit)[0]:
        plain: Any = given  # a factor, of an array as of one number
        house: Any = convert(plain, unit, item.unit)
        return Numbers(heading, text, item, house, {})
    # A count that is a length per mass, or a hydrometer: no factor, so every number is read for itself.
    known: dict[float, float | InputError] = {}
    house, refused = numpy.full(len(given), numpy.nan), {}
    for row, number in enumerate(given.tolist()):
        if number != number:
            continue
        if number not in known:
            try:
                known[number] = measured(item, number, unit, called=text).house
            except InputError as error:
                known[number] = error
        read = known[number]
        if isinstance(read, InputError):
            refused[row] = read
        else:
            house[row] = read
    return Numbers(heading, text, item, house, refused)
