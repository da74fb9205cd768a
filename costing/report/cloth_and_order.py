"""Tables of the plan: the cloth that a style gives, and what the range runs for an order of it."""

from __future__ import annotations

from collections.abc import Sequence

from costing.ledger.plan import beams_of, sublots_of
from costing.quantities.units import convert
from costing.report.table import FINISHED_METRE, LOOM_STATE_METRE, Column, Result, Table


def cloth_plan(results: Sequence[Result]) -> Table:
    """Ends, counts, widths and masses of the cloth of each enquiry."""
    columns = [
        Column("Enquiry"),
        Column("Style"),
        Column("Ends", "", 0),
        Column("Warp", "tex", 1),
        Column("Warp", "Ne", 2),
        Column("Loom-state cloth", "g/m2", 0),
        Column("Finished cloth", "g/m2", 0),
        Column("Finished cloth", "oz/yd2", 2),
        Column("Width in the reed", "cm", 1),
        Column("Loom-state width", "cm", 1),
        Column("Finished width", "cm", 1),
        Column("Grey warp", "g per m of loom-state cloth", 1),
        Column("Weft", "g per m of loom-state cloth", 1),
        Column("Grey warp", "g per m of finished cloth", 1),
        Column("Weft", "g per m of finished cloth", 1),
    ]
    rows = []
    for item in results:
        cloth, plan = item.ledger.fabric, item.ledger.plan
        rows.append(
            [
                item.enquiry.code,
                item.enquiry.style,
                cloth.ends,
                1e6 * cloth.linear_density,
                convert(cloth.linear_density, "kg/m", "Ne"),
                1000.0 * cloth.loom_state_areal_mass,
                1000.0 * cloth.finished_areal_mass,
                convert(cloth.finished_areal_mass, "kg/m2", "oz/yd2"),
                100.0 * cloth.reed_width,
                100.0 * cloth.cloth_width,
                100.0 * cloth.finished_width,
                1000.0 * item.quote.per[LOOM_STATE_METRE],
                1000.0 * cloth.weft_per_metre,
                1000.0 * item.quote.per[FINISHED_METRE],
                1000.0 * cloth.weft_per_metre * plan.loom_state_length / plan.finished_length,
            ]
        )
    note = "Yarn per metre is what is bought, with the waste of weaving in it."
    return Table("cloth_plan", "Cloth", note, columns, rows)


def order_plan(results: Sequence[Result]) -> Table:
    """Ropes, beams, sets, lengths, masses and hours of each enquiry."""
    columns = [
        Column("Enquiry"),
        Column("Finished cloth", "m", 0),
        Column("Ropes of a set", "", 0),
        Column("Ends per rope", "", 1),
        Column("Section beams of a run", "", 0),
        Column("Subsets of a run", "", 0),
        Column("Ends of a subset", "", 0),
        Column("Sets", "", 0),
        Column("Warp sold of a set", "m", 0),
        Column("Sub-lots of a set", "from the top of the tub"),
        Column("Range runs", "m", 0),
        Column("Saleable grey yarn", "kg", 0),
        Column("Dyed grey yarn", "kg", 0),
        Column("Throughput at speed", "kg/h", 0),
        Column("Running", "h", 1),
        Column("Changeover", "h", 1),
        Column("Stoppages", "h", 1),
    ]
    rows = []
    for item in results:
        plan = item.ledger.plan
        beams = beams_of(plan, item.ledger.fabric, item.enquiry)
        sublots = sublots_of(plan, item.ledger.range)
        rows.append(
            [
                item.enquiry.code,
                plan.finished_length,
                plan.ropes,
                plan.ends_per_rope,
                float(beams.section_beams),
                float(beams.subsets),
                beams.ends_per_subset,
                plan.number_of_sets,
                plan.set_length,
                ", ".join(f"{part.letter} {part.position} {part.length:.0f} m" for part in sublots),
                plan.run_length,
                plan.saleable_mass,
                plan.grey_mass_dyed,
                plan.around.throughput,
                plan.run_hours,
                plan.changeover_hours,
                plan.stoppage_hours,
            ]
        )
    note = "What the range runs for the order; leaders and off-shade metres are in what it runs and dyes."
    return Table("order_plan", "Order", note, columns, rows)
