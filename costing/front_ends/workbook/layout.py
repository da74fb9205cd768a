"""What the builder draws on each sheet of a fresh book, from the sheet files and the settings.

Rows, columns and lists are those of `costing.book.layout`, by which the book is read.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import MISSING, dataclass, field, fields
from functools import lru_cache
from typing import Any

from costing.book import layout
from costing.book.layout import GENERAL, RANGE_ROWS, Column
from costing.front_ends.workbook.build_sheet_table import SHOWN
from costing.front_ends.workbook.template_files import sheet_file
from costing.quantities import CHOICES, QUANTITIES, shown
from costing.reference_data import Default, defaults
from costing.settings.building import default_key
from costing.settings.discharge_point import DischargePoint
from costing.settings.dye_class import GLUCOSE, default_groups
from costing.settings.mill import Range
from costing.settings.product_fields import PRODUCT_FIELDS
from costing.settings.steps import STEP_KINDS
from costing.settings.style import Style

# How a unit is written on a sheet, where people know it by a sign that is not plain letters.
READ_AS = {"degC": "°C"}


@dataclass(frozen=True)
class Row:
    """One row of a sheet that has a column for each style, recipe or range."""

    part: str
    name: str
    unit: str
    meaning: str
    typical: Default | None
    by_class: tuple[Default, ...]
    needed: bool
    list_name: str

    @property
    def is_number(self) -> bool:
        """True for a quantity, False for a word or a code."""
        return self.name in QUANTITIES

    @property
    def defaults(self) -> tuple[Default, ...]:
        """Every typical value that an empty cell may take: that of the step, those of dye classes."""
        return (*filter(None, (self.typical,)), *self.by_class)


@dataclass(frozen=True)
class Demo:
    """One invented column: its values by part and name."""

    code: str
    description: str
    values: Mapping[tuple[str, str], Any]


@dataclass(frozen=True)
class ColumnSheet:
    """A sheet with quantities down and a column for each style, recipe or range."""

    sheet: str
    title: str
    intro: tuple[str, ...]
    kind: str
    part_head: str
    width: float
    spare: int
    rows: tuple[Row, ...]
    demos: tuple[Demo, ...]


@dataclass(frozen=True)
class DrawnColumn(Column):
    """One column of a table, with its width on the sheet."""

    width: float = 0.0


@dataclass(frozen=True)
class DrawnTable:
    """A table with heads above, spare rows, and its invented rows."""

    name: str
    heading: str
    spare: int
    columns: tuple[DrawnColumn, ...]
    demos: tuple[Mapping[str, Any], ...] = field(default=())


@dataclass(frozen=True)
class TableSheet:
    """A sheet with one table, or with two, one above the other."""

    sheet: str
    title: str
    intro: tuple[str, ...]
    tables: tuple[DrawnTable, ...]


def typical_of(groups: tuple[str, ...], name: str) -> Default | None:
    """The row of the table of defaults for a setting, from the first group that has one.

    Examples
    --------
    >>> typical_of(Range.GROUPS, "water_temperature").value
    20.0
    """
    key = default_key(groups, name)
    return defaults()[key] if key else None


def meaning_of(name: str) -> str:
    """One line of help for a field."""
    words: Mapping[str, str] = sheet_file("words")["meaning"]
    return words[name] if name in words else QUANTITIES[name].help


def list_of(name: str) -> str:
    """The defined name whose list a field chooses from; "" for a free one.

    Examples
    --------
    >>> list_of("rinse_feed"), list_of("indigo_product")
    ('rinse_feed', 'material_codes')
    """
    if name in CHOICES:
        return name
    if name in PRODUCT_FIELDS or name in ("warp_yarn", "weft_yarn"):
        return "material_codes"
    return "route_codes" if name == "route" else ""


def by_dye_class(groups: tuple[str, ...], name: str) -> dict[str, Default]:
    """Dye class, or glucose as reductant -> the row of the table of defaults that it has for a setting.

    Examples
    --------
    >>> list(by_dye_class(("dye box",), "dye_fixation"))
    ['sulfur', 'vat', 'reactive', 'direct']
    """
    found = {}
    for dye_class in (*word_lists()["dye_classes"], GLUCOSE):
        for kind in groups:
            row = typical_of(default_groups(kind, dye_class)[:1], name)
            if row is not None:
                found[dye_class] = row
    return found


def _row(part: str, name: str, groups: tuple[str, ...], units: Mapping[str, str], needed: bool) -> Row:
    usual = QUANTITIES[name].usual if name in QUANTITIES else ""
    unit = units.get(name, READ_AS.get(usual, usual))
    typical, classes, meaning = typical_of(groups, name), by_dye_class(groups, name), meaning_of(name)
    if classes:
        told = (f"{dye_class} {shown(QUANTITIES[name], row.value)}" for dye_class, row in classes.items())
        meaning += f"; typical by dye class{' and reductant' * (GLUCOSE in classes)}: {', '.join(told)}"
    by_class = tuple(classes.values())
    wanted = needed and typical is None and not by_class
    return Row(part, name, unit, meaning, typical, by_class, wanted, list_of(name))


def _needed_fields(kind: type) -> set[str]:
    return {item.name for item in fields(kind) if item.default is MISSING}


def style_rows(units: Mapping[str, str]) -> Iterator[Row]:
    """Rows of the sheet Styles, part by part."""
    needed = _needed_fields(Style)
    for part in sheet_file("styles")["part"]:
        for name in part["rows"]:
            yield _row(part["name"], name, Style.GROUPS, units, name in needed)


def demo_steps() -> dict[str, str]:
    """Step -> kind, over all routes of the template, route by route in the order of their steps."""
    demo = sheet_file("routes")["demo"]
    order = {route["code"]: place for place, route in enumerate(demo["routes"])}
    rows = sorted(demo["steps"], key=lambda row: (order[row["route"]], row["number"]))
    return {row["step"]: row["kind"] for row in rows}


def recipe_rows(units: Mapping[str, str]) -> Iterator[Row]:
    """Rows of the sheet Recipes: the route, then what a recipe says of each step."""
    yield _row(GENERAL, "route", (), units, True)
    for step, kind_name in demo_steps().items():
        kind = STEP_KINDS[kind_name]
        needed = _needed_fields(kind)
        for name in kind.RECIPE:
            yield _row(step, name, (kind_name,), units, name in needed)


def range_rows(units: Mapping[str, str]) -> Iterator[Row]:
    """Rows of the sheet Ranges: the whole machine, then what it says of each step."""
    needed = _needed_fields(Range)
    for name in RANGE_ROWS:
        yield _row(GENERAL, name, Range.GROUPS, units, name in needed)
    for step, kind_name in demo_steps().items():
        kind = STEP_KINDS[kind_name]
        needed = _needed_fields(kind)
        for name in kind.RANGE:
            yield _row(step, name, (kind_name,), units, name in needed)


def point_rows(units: Mapping[str, str]) -> Iterator[Row]:
    """Rows of the sheet Discharge points, part by part."""
    for part in sheet_file("discharge_points")["part"]:
        for name in part["rows"]:
            yield _row(part["name"], name, DischargePoint.GROUPS, units, True)


ROWS = {
    "styles": style_rows,
    "recipes": recipe_rows,
    "ranges": range_rows,
    "discharge_points": point_rows,
}


@lru_cache(maxsize=16)
def column_sheet(name: str) -> ColumnSheet:
    """The sheet ``styles``, ``recipes`` or ``ranges``."""
    text = sheet_file(name)
    rows = tuple(ROWS[name](text["units"]))
    part_of = {row.name: row.part for row in rows}
    demos = []
    for demo in text["demo"]:
        given = demo["values"]
        if name in ("styles", "discharge_points"):
            values = {(part_of[key], key): value for key, value in given.items()}
        else:
            values = {(part, key): value for part, items in given.items() for key, value in items.items()}
        demos.append(Demo(demo["code"], demo["description"], values))
    return ColumnSheet(
        text["sheet"],
        text["title"],
        tuple(text["intro"]),
        text["kind"],
        text["part_head"],
        text["width"],
        text["spare"],
        rows,
        tuple(demos),
    )


@lru_cache(maxsize=16)
def table_sheet(name: str) -> TableSheet:
    """The sheet ``routes``, ``materials``, ``mill_costs`` or ``enquiries``."""
    text = sheet_file(name)
    tables = tuple(
        DrawnTable(
            table["name"],
            table["heading"],
            table["spare"],
            tuple(DrawnColumn(**column) for column in table["column"]),
            tuple(_with_usual(row, table["column"]) for row in text["demo"][table["name"]]),
        )
        for table in text["table"]
    )
    return TableSheet(text["sheet"], text["title"], tuple(text["intro"]), tables)


def _with_usual(row: Mapping[str, Any], columns: Sequence[Mapping[str, Any]]) -> Mapping[str, Any]:
    """A row of a table with what is usual for it, where the table of defaults knows."""
    found = dict(row)
    for column in columns:
        if column["kind"] == SHOWN:
            name = column["quantity"]
            keys = (f"seconds.{name}.{row['code']}", f"seconds.{name}")
            item = next((defaults()[key] for key in keys if key in defaults()), None)
            found[column["name"]] = "no end" if item is None else _usual(item)
    return found


def _usual(item: Default) -> str:
    typical, low, high = (shown(QUANTITIES[item.quantity], end) for end in (item.value, item.low, item.high))
    return f"{typical} ({low} to {high})"


def word_lists() -> dict[str, list[str]]:
    """The lists of the sheet Lists by their defined name."""
    return layout.word_lists(sheet_file("words")["lists"])
