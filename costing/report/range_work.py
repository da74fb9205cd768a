"""Tables of what the range takes: key figures, use of materials, and every posting."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from costing.ledger.lot import RANGE_TIME
from costing.process.postings import POWER
from costing.quantities.units import convert
from costing.report.table import (
    FINISHED_METRE,
    Column,
    Result,
    Table,
    active_parts,
    bought,
    costs_of,
    used_lines,
)
from costing.settings.mill import Mill


def key_figures(mill: Mill, results: Sequence[Result]) -> Table:
    """What a dyer, an engineer and an officer look at first, one row for each enquiry."""
    columns = [
        Column("Enquiry"),
        Column("Description"),
        Column("Finished cloth", "oz/yd2", 2),
        Column("Grey warp", "g per m of finished cloth", 1),
        Column("Indigo", "g/kg, as 100 %", 2),
        Column("Hydrosulfite", "g/kg, as 100 %", 2),
        Column("Hydrosulfite over indigo", "kg/kg, as 100 %", 2),
        Column("Caustic", "g/kg, as 100 %", 2),
        Column("Water", "L/kg", 1),
        Column("Steam", "kg/kg", 2),
        Column("Power", "kWh/kg", 3),
        Column("Range time", "h per t", 2),
        Column("To drain", "L/kg", 1),
        Column("COD, organic", "g/kg", 1),
        Column("COD, inorganic sulfur", "g/kg", 1),
    ]
    rows: list[list[Any]] = []
    for item in results:
        amounts = bought(item)
        pure = active_parts(mill, amounts)
        indigo, reductant = pure.get("indigo", 0.0), pure.get("sodium_hydrosulfite", 0.0)
        drain = item.streams[-1]
        rows.append(
            [
                item.enquiry.code,
                item.enquiry.description,
                convert(item.ledger.fabric.finished_areal_mass, "kg/m2", "oz/yd2"),
                1000.0 * item.quote.per[FINISHED_METRE],
                1000.0 * indigo,
                1000.0 * reductant,
                reductant / indigo if indigo > 0.0 else None,
                1000.0 * pure.get("sodium_hydroxide", 0.0),
                amounts.get("water", 0.0),
                amounts.get("steam", 0.0),
                amounts.get(POWER, 0.0),
                1000.0 * amounts.get(RANGE_TIME, 0.0),
                drain.flow,
                1000.0 * drain.loads["COD, organic"],
                1000.0 * drain.loads["COD, inorganic sulfur"],
            ]
        )
    note = (
        "Bought per kg of saleable grey warp yarn, with fills, stoppages, leaders and off-shade metres. "
        "Reduced dye counts as indigo. Discharge is an estimate."
    )
    return Table("key_figures", "Key figures", note, columns, rows)


def use(mill: Mill, results: Sequence[Result]) -> Table:
    """What each enquiry takes of every bought thing, as delivered."""
    columns = [
        Column("Enquiry"),
        Column("Material"),
        Column("Description"),
        Column("Group"),
        Column("Per kg of grey yarn", "as delivered", 4),
        Column("Active part", "per kg of grey yarn", 4),
        Column("Per m of finished cloth", "as delivered", 4),
        Column("Unit of these"),
        Column("For the order", "as delivered", 1),
        Column("Unit of the order"),
        Column("Cost", f"{costs_of(mill).currency} per m of finished cloth", 4),
    ]
    rows: list[list[Any]] = []
    for item in results:
        per = item.quote.per[FINISHED_METRE]
        costs = item.quote.by("material")
        amounts: dict[str, float] = {}
        about: dict[str, tuple[str, str]] = {}
        for line in used_lines(item):
            amounts[line.material] = amounts.get(line.material, 0.0) + line.amount
            about[line.material] = line.group, line.unit
        for code, amount in amounts.items():
            product = mill.materials.get(code)
            group, unit = about[code]
            if product is None:
                small, scale, active = unit, 1.0, None
            else:
                small, scale, active = "g", 1000.0, 1000.0 * amount * product.strength
            rows.append(
                [
                    item.enquiry.code,
                    code,
                    product.description if product else "",
                    group,
                    amount * scale,
                    active,
                    amount * scale * per,
                    small,
                    amount * item.ledger.plan.saleable_mass,
                    unit,
                    costs[(code,)] * per,
                ]
            )
    note = (
        "Active part = as delivered times strength. Fills, stoppages, leaders and off-shade metres are in; "
        "what is handed to the next lot is off."
    )
    return Table("use", "Use of materials", note, columns, rows)


def ledger_lines(results: Sequence[Result]) -> Table:
    """Every posting."""
    columns = [
        Column("Enquiry"),
        Column("Step"),
        Column("Material"),
        Column("Substance"),
        Column("Cause"),
        Column("Amount", "kg, kWh or h per kg of grey yarn", 8),
        Column("From"),
        Column("To"),
    ]
    rows = [
        [
            item.enquiry.code,
            line.step,
            line.material,
            line.substance.replace("_", " "),
            line.cause,
            line.amount,
            line.source,
            line.destination,
        ]
        for item in results
        for line in item.ledger.lines
    ]
    note = "Double entry: every amount leaves one account and enters another; per kg of saleable grey yarn."
    return Table("ledger", "Ledger", note, columns, rows)
