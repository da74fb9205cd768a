"""The store as tables: what each product is, what stands apart, the mill's ceilings, and the cautions."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from costing.purchasing.store import ApartGroup, Held, grouped
from costing.purchasing.store_safety import NO_CEILING, Ceiling, kept_apart, store_rows
from costing.quantities.checking import number_text
from costing.reference_data import cautions
from costing.report.grounds import cautions_by_material, cautions_table
from costing.report.table import Column, Table
from costing.settings.mill import Mill

MASS = 0  # decimals of a mass
MEETING = "mixing"  # the caution on what must never meet holds for every store
NOT_OVER = "not over"
# Columns for a screen of 80 letters, each with its heading there; files have them all.
ON_SCREEN = {
    "store_products": {
        "Product": "Product",
        "In store": "In store",
        "UN number": "UN number",
        "Proper shipping name": "Proper shipping name",
        "Class": "Class",
        "Subsidiary class": "Sub. class",
        "Packing group": "Pack. group",
    },
    "store_apart": {"Keep": "Keep", "Apart from": "Apart from", "Why": "Why", "Source": "Source"},
    "store_ceilings": {
        "Product": "Product",
        "In store": "In store",
        "Most planned": "Most planned",
        "On": "On",
        "Ceiling": "Ceiling",
        "Result": "Result",
    },
}


def in_short(table: Table) -> Table:
    """A table as it fits a screen."""
    heads = ON_SCREEN[table.key]
    kept = [at for at, column in enumerate(table.columns) if column.title in heads]
    columns = [table.columns[at]._replace(title=heads[table.columns[at].title]) for at in kept]
    note = table.note
    if "Source" not in heads:
        note += _cited(table)
    return table._replace(note=note, columns=columns, rows=[[row[at] for at in kept] for row in table.rows])


def _cited(table: Table) -> str:
    """The sources of a table, for its note; "" where it has none."""
    at = next((place for place, column in enumerate(table.columns) if column.title == "Source"), None)
    named = {} if at is None else dict.fromkeys(row[at] for row in table.rows if row[at])
    return f" Source: {', '.join(named)}." if named else ""


def caution_lines(table: Table) -> list[str]:
    """The cautions as lines of a screen: what each concerns, its products, and what to heed."""
    return [
        f"{concerns.upper()}{codes and f' ({codes})'}: {caution}"
        for concerns, codes, caution, *_ in table.rows
    ]


def store_tables(mill: Mill, held: Sequence[Held], note: str = "") -> list[Table]:
    """All of them, in the order in which they are read.

    Parameters
    ----------
    mill : Mill
        With the price list.
    held : sequence of Held
        What stands in the store.
    note : str, optional
        What is in no plan, in words.
    """
    groups = grouped(kept_apart(item.product for item in held))
    return [
        products_table(held, note),
        apart_table(groups, note),
        ceilings_table(held, note),
        cautions_of_store(mill, held),
        sources_table(mill, held, groups),
    ]


def products_table(held: Sequence[Held], note: str = "") -> Table:
    """What each product is in transport."""
    columns = [
        Column("Product"),
        Column("Description"),
        Column("In store", "kg", MASS),
        Column("UN number"),
        Column("Proper shipping name"),
        Column("Class"),
        Column("Subsidiary class"),
        Column("Packing group"),
        Column("Source"),
        Column("Place in the source"),
        Column("Note"),
        Column("Batches"),
    ]
    rows: list[list[Any]] = [
        [
            item.product.code,
            item.product.description,
            item.now.amount,
            row.un_number,
            row.name,
            row.hazard_class,
            row.subsidiary,
            row.packing_group,
            row.source,
            row.locator,
            row.note,
            ", ".join(item.batches),
        ]
        for item, row in zip(held, store_rows(item.product for item in held))
    ]
    text = (
        "Mass as it is, by the sheet Stock, expired batches in. By the rules of transport of one country and "
        "one year: the supplier's safety data sheet says what holds for what was delivered. No yarns."
    )
    return Table("store_products", "What stands in the store", f"{note}{text}", columns, rows)


def apart_table(groups: Sequence[ApartGroup], note: str = "") -> Table:
    """What must not stand together, a row for each reason."""
    columns = [
        Column("Keep"),
        Column("Apart from"),
        Column("Pairs", "", 0),
        Column("Why"),
        Column("By"),
        Column("Source"),
        Column("Place in the source"),
        Column("Note"),
    ]
    rows: list[list[Any]] = [
        [
            ", ".join(item.first),
            ", ".join(item.second),
            item.pairs,
            item.reason,
            item.kind,
            item.source,
            item.locator,
            item.note,
        ]
        for item in groups
    ]
    text = (
        "Each product of the one side apart from each of the other. What is not here is not thereby allowed: "
        "a product whose class is not known is judged by its chemistry alone, and no building is judged."
    )
    return Table("store_apart", "What must not stand together", f"{note}{text}", columns, rows)


def ceilings_table(held: Sequence[Held], note: str = "") -> Table:
    """What stands there, and would at most, against the ceilings that the mill typed."""
    with_plan = any(item.most is not None for item in held)
    columns = [Column("Product"), Column("In store", "kg", MASS), Column("Over now by", "kg", MASS)]
    if with_plan:
        columns += [Column("Most planned", "kg", MASS), Column("On"), Column("Over then by", "kg", MASS)]
    columns += [Column("Ceiling", "kg", MASS), Column("Result")]
    rows: list[list[Any]] = []
    for item in held:
        row: list[Any] = [item.product.code, *_amounts(item.now)]
        if item.most is not None:
            mass, over = _amounts(item.most)
            row += [mass, item.most_on, over]
        rows.append([*row, item.now.ceiling, _result(item)])
    text = (
        "Ceilings are those of the mill's own licence, typed on the sheet Purchase terms; none is taken for "
        "granted. Masses as they are, not at the listed strength."
    )
    return Table("store_ceilings", "Against the storage ceilings", f"{note}{text}", columns, rows)


def _amounts(found: Ceiling) -> list[float | None]:
    """What stands there, and by how much it is over: no number without a ceiling."""
    return [found.amount, None if found.ceiling is None else found.over]


def _result(item: Held) -> str:
    if item.now.ceiling is None:
        return NO_CEILING
    told = [f"OVER by {_mass(item.now.over)} now"] if item.now.over else []
    if item.most is not None and item.most.over:
        told.append(f"OVER by {_mass(item.most.over)} as planned")
    return "; ".join(told) or NOT_OVER


def _mass(mass: float) -> str:
    return f"{number_text(round(mass, 3))} kg"


def cautions_of_store(mill: Mill, held: Sequence[Held]) -> Table:
    """Usual cautions for what stands there, and to whom they defer."""
    note = "Usual cautions only, for what stands in the store. This is not a safety data sheet."
    return cautions_table(_cautions(mill, held), "store_cautions", "Usual cautions", note)


def _cautions(mill: Mill, held: Sequence[Held]) -> Mapping[str, Sequence[str]]:
    found = cautions_by_material(mill, (item.product.code for item in held))
    return {**found, "general": [], MEETING: []}  # these hold for all of them


def sources_table(mill: Mill, held: Sequence[Held], groups: Sequence[ApartGroup]) -> Table:
    """Every source behind number and class of transport, what stands apart, and the cautions."""
    from costing.reference_data.source_list import (
        sources,  # its reader wants a younger Python than a cell has
    )

    uses: dict[str, dict[str, None]] = {}
    for row in store_rows(item.product for item in held):
        if row.source:
            uses.setdefault(row.source, {})["number and class of transport"] = None
    for group in groups:
        uses.setdefault(group.source, {})["what must not stand together"] = None
    for key in _cautions(mill, held):
        if key in cautions():
            uses.setdefault(cautions()[key].source, {})[f"caution: {cautions()[key].name}"] = None
    columns = [Column("Source"), Column("Title"), Column("Authors"), Column("Year"), Column("Opened")]
    columns += [Column("Where"), Column("Used for")]
    rows: list[list[Any]] = []
    for key, used in sorted(uses.items()):
        entry = sources()[key]
        opened = "yes" if entry.opened else "no" if entry.is_publication else ""
        rows.append([key, entry.title, entry.authors, entry.year, opened, entry.where, ", ".join(used)])
    note = "Opened: no means that the text was not read; what it says is from memory and to be verified."
    return Table("store_sources", "Sources", note, columns, rows)


def store_line(held: Sequence[Held]) -> str:
    """What the buyer should look at in the store, in one line; "" where there is nothing."""
    over = [item.product.code for item in held if item.now.over or (item.most is not None and item.most.over)]
    pairs = {(pair.first, pair.second) for pair in kept_apart(item.product for item in held)}
    told = [f"over the storage ceiling: {', '.join(over)}"] if over else []
    if pairs:
        told.append(f"{len(pairs)} pair{'s'[: len(pairs) > 1]} of products must not stand together")
    return f"{'; '.join(told)}: costing store --planned" if told else ""
