"""What a dump does to a collecting point: while it runs in, and at most behind the pit."""

from __future__ import annotations

from typing import Any

from costing.effluent.arriving import DAY, Arriving, together
from costing.effluent.removal import peak_behind_tank
from costing.effluent.speciation import speciation
from costing.quantities.units import convert
from costing.report.drain import ESTIMATE
from costing.report.drain_point import IN_SHORT, PointResult
from costing.report.table import Column, Table


def peaks_table(found: PointResult) -> Table:
    """Every stream that comes at once: how much, how often, how strong, also behind the pit."""
    point = found.point
    columns = [
        Column("Enquiry"),
        Column("Dump"),
        Column("Volume of one", "m3", 2),
        Column("One every", "days", 1),
        Column("Flow while it lasts", "times the mean", 1),
        Column("pH of the dump", "", 1),
    ]
    for title in IN_SHORT.values():
        columns += [
            Column(f"{title}: dump", "mg/L", 0),
            Column(f"{title}: where it enters", "mg/L", 0),
            *([Column(f"{title}: behind the pit, at most", "mg/L", 0)] if point.pit_volume else []),
        ]
    rows: list[list[Any]] = []
    steady = together([stream for stream in found.streams if not stream.dumps])
    whole = found.places[0].stream
    for stream in found.streams:
        if stream.dumps > 0.0 and stream.volume > 0.0:
            volume = stream.volume / stream.dumps
            flow = volume / point.dump_time + steady.volume / DAY
            row: list[Any] = [stream.enquiry or None, stream.name, convert(volume, "L", "m3")]
            row += [1.0 / stream.dumps, flow / (whole.volume / DAY), speciation(stream.water).acidity]
            for name in IN_SHORT:
                row += _concentrations(found, stream, steady, name, flow)
            rows.append(row)
    rows.sort(key=lambda row: -(row[4] or 0.0))
    minutes = convert(point.dump_time, "h", "min")
    note = (
        f"A dump runs in within {minutes:g} min, with all that runs all day beside it; largest flow first. "
        "Behind the pit: on top of the mean of all streams, in a pit that is full and well mixed, nothing "
        f"oxidised on the way: an upper figure. {ESTIMATE}"
    )
    return Table("point_peaks", f"Dumps to {point.code}", note, columns, rows)


def _concentrations(
    found: PointResult, stream: Arriving, steady: Arriving, parameter: str, flow: float
) -> list[float]:
    """Of the dump, where it enters, and at most behind the pit where there is one [mg/L]."""
    point, whole = found.point, found.places[0].stream
    of_dump = stream.loads.get(parameter, 0.0)
    entering = of_dump / stream.dumps / point.dump_time + steady.loads.get(parameter, 0.0) / DAY
    at_entry = entering / flow
    levels = [of_dump / stream.volume, at_entry]
    if point.pit_volume:
        mean = whole.loads.get(parameter, 0.0) / whole.volume
        rise = float(peak_behind_tank(point.dump_time, point.pit_volume / flow))
        levels.append(mean + max(0.0, at_entry - mean) * rise)
    return [convert(level, "kg/L", "mg/L") for level in levels]
