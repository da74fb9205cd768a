"""What stands on each sheet of the book, as its reader needs it.

The builder of a fresh book takes its rows and columns from here and from the same sheet files, so the two
cannot drift apart.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from functools import lru_cache

from costing.book import buyer_columns, drain_columns, order_columns, price_columns
from costing.book.sheet_table import BESIDE, SHEETS, WORDS
from costing.effluent.stages import treatment_steps
from costing.quantities import CHOICES, label
from costing.reference_data import cautions, substances
from costing.reference_data.discharge_limits import BASES, DIRECTIONS, POINTS, STATISTICS
from costing.reference_data.permit_parameters import SUPPLIER, permit_parameters
from costing.settings.mill import Range
from costing.settings.steps import STEP_KINDS

_COLUMNS = {
    **order_columns.COLUMNS,
    **price_columns.COLUMNS,
    **drain_columns.COLUMNS,
    **buyer_columns.COLUMNS,
}
GENERAL = "general"
MOST_STEPS = 99
# Units that the sheet Permit offers; any other of the unit table that fits the kind will do.
LIMIT_UNITS = ("mg/L", "kg/t", "kg/day", "°C", "1/m", "mS/cm", "L/kg", "m3/day")

# Roles of substances that no product of a price list is made of.
NOT_BOUGHT = ("gas", "fibre matter", "water")

QUANTITY, UNIT, MEANING, LOW, TYPICAL, HIGH, SOURCE = (
    "Quantity",
    "Unit",
    "Meaning",
    "Low",
    "Typical",
    "High",
    "Source",
)

# What a range says of the whole machine.
RANGE_ROWS = tuple(item.name for item in fields(Range) if item.name not in ("code", "description"))


@dataclass(frozen=True)
class Column:
    """One column of a table with a row for each thing; a `late` one may be lacking in an older book."""

    head: str
    name: str
    kind: str
    meaning: str
    needed: bool = False
    quantity: str = ""
    list: str = ""
    of: str = ""
    late: bool = False


@dataclass(frozen=True)
class Table:
    """A table with heads above and a row for each thing."""

    name: str
    heading: str
    columns: tuple[Column, ...]


@dataclass(frozen=True)
class ColumnSheet:
    """A sheet with quantities down and a column for each style, recipe or range.

    `parts` holds the rows that the sheet files name, part by part; other rows follow from the settings.
    """

    kind: str
    part_head: str
    parts: Mapping[str, tuple[str, ...]]


@lru_cache(maxsize=16)
def column_sheet(name: str) -> ColumnSheet:
    """The sheet ``styles``, ``recipes`` or ``ranges``.

    Examples
    --------
    >>> column_sheet("recipes").part_head
    'Step'
    """
    found = SHEETS[name]
    parts = {part["name"]: tuple(part["rows"]) for part in found.get("part", ())}
    return ColumnSheet(found["kind"], found["part_head"], parts)


@lru_cache(maxsize=16)
def tables_of(name: str) -> tuple[Table, ...]:
    """The tables of the sheet ``routes``, ``materials``, ``offers``, ``mill_costs`` or ``enquiries``.

    Examples
    --------
    >>> [table.name for table in tables_of("mill_costs")]
    ['costs', 'currencies']
    """
    return tuple(
        Table(
            table["name"],
            table["heading"],
            tuple(Column(*column) for column in _COLUMNS[f"{name}.{table['name']}"]),
        )
        for table in {**SHEETS, **BESIDE}[name]["table"]
    )


def sheet_names() -> tuple[str, ...]:
    """Names of the sheets on which a quote may rest."""
    return tuple(found["sheet"] for found in SHEETS.values())


LATE_SHEETS = ("Offers", "Calibrations")  # that a formula of an older book does not hand over: the last ones


def beside_names() -> tuple[str, ...]:
    """Names of the sheets on which no quote rests: what the buyer plans with."""
    return tuple(found["sheet"] for found in BESIDE.values())


@lru_cache(maxsize=1)
def substance_names() -> dict[str, str]:
    """Name that the drop-down list shows -> key, for every substance a product may hold.

    Examples
    --------
    >>> substance_names()["indigo"]
    'indigo'
    """
    return {item.name: key for key, item in substances().items() if item.role not in NOT_BOUGHT}


def word_lists(words: Mapping[str, list[str]] = WORDS) -> dict[str, list[str]]:
    """The lists of the sheet Lists by their defined name.

    Parameters
    ----------
    words : mapping, optional
        The lists of the sheet files.
    """
    return {
        **{name: list(accepted) for name, accepted in CHOICES.items()},
        "step_kinds": list(STEP_KINDS),
        "substance_names": list(substance_names()),
        "caution_keys": list(cautions()),
        "treatment_steps": list(treatment_steps()),
        "limit_parameters": [item.name for item in permit_parameters()],
        "limit_directions": list(DIRECTIONS),
        "limit_units": list(LIMIT_UNITS),
        "limit_kinds": list(BASES),
        "limit_statistics": list(STATISTICS),
        "limit_places": list(POINTS),
        "supplier_parameters": [item.name for item in permit_parameters() if item.kind == SUPPLIER],
        **{name: list(items) for name, items in words.items()},
    }


@lru_cache(maxsize=32)
def accepted_words(name: str) -> tuple[str, ...]:
    """The words of one list.

    Examples
    --------
    >>> accepted_words("remainders")
    ('water', 'inert')
    """
    return tuple(word_lists()[name])


def row_text(name: str) -> str:
    """What stands in the column Quantity for a field."""
    return label(name)
