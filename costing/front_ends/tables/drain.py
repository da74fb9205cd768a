"""Tables of what goes down the drain, stream by stream."""

from __future__ import annotations

from collections.abc import Sequence

from costing.effluent.factors import PARAMETERS
from costing.front_ends.tables.table import FINISHED_METRE, Column, Result, Table, capital

DISCHARGE_NOTE = (
    "Estimate from recipe and range, before any treatment; not a measurement of compliance. A COD test reads "
    "between the organic part alone and both parts. Alkalinity is the strong-ion difference."
)


def discharge_loads(results: Sequence[Result]) -> Table:
    """Flow and loads by stream."""
    columns = [Column("Enquiry"), Column("Stream"), Column("Flow", "L/kg", 3)]
    columns += [Column(capital(name), "g/kg", 3) for name in PARAMETERS]
    columns += [
        Column("Alkalinity", "mmol/kg", 1),
        Column("COD, both", "g per m of finished cloth", 3),
        Column("COD, both", "kg for the order", 1),
        Column("Flow", "m3 for the order", 1),
    ]
    rows = []
    for item in results:
        per, mass = item.quote.per[FINISHED_METRE], item.ledger.plan.saleable_mass
        for stream in item.streams:
            demand = stream.loads["COD, both"]
            rows.append(
                [
                    item.enquiry.code,
                    stream.name,
                    stream.flow,
                    *[1000.0 * stream.loads[name] for name in PARAMETERS],
                    1000.0 * stream.alkalinity,
                    1000.0 * demand * per,
                    demand * mass,
                    stream.flow * mass / 1000.0,
                ]
            )
    return Table("discharge_loads", "Discharge, loads", DISCHARGE_NOTE, columns, rows)


def discharge_concentrations(results: Sequence[Result]) -> Table:
    """Concentrations by stream, as it leaves, before any treatment."""
    columns = [Column("Enquiry"), Column("Stream"), Column("Flow", "L/kg", 3)]
    columns += [Column(capital(name), "mg/L", 0) for name in PARAMETERS]
    columns += [Column("Alkalinity", "mmol/L", 1)]
    rows = []
    for item in results:
        for stream in item.streams:
            rows.append(
                [
                    item.enquiry.code,
                    stream.name,
                    stream.flow,
                    *[1e6 * stream.concentration(name) for name in PARAMETERS],
                    1000.0 * stream.alkalinity_concentration,
                ]
            )
    return Table("discharge_concentrations", "Discharge, concentrations", DISCHARGE_NOTE, columns, rows)
