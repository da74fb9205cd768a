"""Tables of what goes down the drain, stream by stream."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, NamedTuple

from costing.effluent.composition import strong_charge
from costing.effluent.discharge import Stream
from costing.effluent.factors import PARAMETERS, Factors
from costing.process.mixing import WATER
from costing.quantities.units import convert
from costing.report.table import FINISHED_METRE, Column, Result, Table, capital

FLOW, ALKALINITY = "flow", "alkalinity"
ALL_STREAMS = "all streams"


class Figure(NamedTuple):
    """A figure of the drain, and the units in which it is shown.

    Attributes
    ----------
    name : str
        By which it is asked for.
    title : str
        Its heading.
    house : str
        Unit of its amount in a ledger.
    small, large, dense : str
        Units of what is shown per kilogram and metre, for the order and a day, and per litre; the flow
        has no last one.
    digits : int
        Decimals of what is shown per kilogram.
    note : str
        What a reader must know of it.
    """

    name: str
    title: str
    house: str = "kg"
    small: str = "g"
    large: str = "kg"
    dense: str = "mg"
    digits: int = 3
    note: str = ""

    def load(self, stream: Stream) -> float:
        """Its amount in a stream, per kilogram of saleable grey yarn [its house unit]."""
        if self.name == FLOW:
            return stream.flow
        return stream.alkalinity if self.name == ALKALINITY else stream.loads[self.name]

    def concentration(self, stream: Stream) -> float | None:
        """Its amount in a litre, as it is shown; None for the flow, and where nothing flows."""
        if self.name == FLOW or stream.flow <= 0.0:
            return None
        if self.name == ALKALINITY:
            found = stream.alkalinity_concentration
        else:
            found = stream.concentration(self.name)
        return convert(found, f"{self.house}/L", f"{self.dense}/L")

    def per_kg(self, amount: float) -> float:
        """An amount per kilogram, from the house unit to the unit shown."""
        return convert(amount, f"{self.house}/kg", f"{self.small}/kg")

    def whole(self, amount: float) -> float:
        """An amount of an order or a day, from the house unit to the unit shown."""
        return convert(amount, self.house, self.large)

    def factor(self, factors: Factors, substance: str) -> float:
        """What one kilogram of a substance adds to it [its house unit per kg]."""
        if self.name == FLOW:
            return 1.0 if substance == WATER else 0.0
        if self.name == ALKALINITY:
            return strong_charge(substance)
        return factors.of(substance).get(self.name, 0.0)


_NOTES = {
    "peroxide": "Peroxide is not in the COD shown.",
    "COD, both": "A COD test reads between the organic part alone and both parts.",
    "sulfate, once all is oxidised": (
        "Sulfate, once all is oxidised: what it becomes if all inorganic sulfur of the water ends as sulfate."
    ),
}

FIGURES = {
    FLOW: Figure(FLOW, FLOW, "L", "L", "m3"),
    **{name: Figure(name, name, note=_NOTES.get(name, "")) for name in PARAMETERS},
    ALKALINITY: Figure(
        ALKALINITY,
        "alkalinity, estimate",
        house="mol",
        small="mmol",
        large="mol",
        dense="mmol",
        digits=1,
        note="Alkalinity: of salts that have a formula; salts of weak acids are counted in full.",
    ),
}

ESTIMATE = "Estimate from recipe and range, before any treatment; not a measurement of compliance."
BASES = "Per day: the order spread over its hours of running, changeover and stoppage."
MEANINGS = " ".join(figure.note for figure in FIGURES.values() if figure.note)
DISCHARGE_NOTE = f"{ESTIMATE} {MEANINGS}"


def discharge_loads(results: Sequence[Result]) -> Table:
    """Flow and loads per kilogram, a row for each stream."""
    columns = [Column("Enquiry"), Column("Stream")]
    columns += [Column(capital(item.title), f"{item.small}/kg", item.digits) for item in FIGURES.values()]
    rows: list[list[Any]] = []
    for result in results:
        for stream in result.streams:
            loads = [item.per_kg(item.load(stream)) for item in FIGURES.values()]
            rows.append([result.enquiry.code, stream.name, *loads])
    note = f"Per kg of saleable grey yarn; g/kg is kg per t. {DISCHARGE_NOTE}"
    return Table("discharge_loads", "Discharge, loads", note, columns, rows)


def discharge_concentrations(results: Sequence[Result]) -> Table:
    """Concentrations, a row for each stream, as it leaves, before any treatment."""
    dissolved = [item for item in FIGURES.values() if item.name != FLOW]
    columns = [Column("Enquiry"), Column("Stream"), Column("Flow", "L/kg", 3)]
    columns += [
        Column(capital(item.title), f"{item.dense}/L", 1 if item.name == ALKALINITY else 0)
        for item in dissolved
    ]
    rows: list[list[Any]] = []
    for result in results:
        for stream in result.streams:
            found = [item.concentration(stream) for item in dissolved]
            rows.append([result.enquiry.code, stream.name, stream.flow, *found])
    return Table("discharge_concentrations", "Discharge, concentrations", DISCHARGE_NOTE, columns, rows)


def discharge_by_parameter(results: Sequence[Result]) -> Table:
    """Each parameter of each stream on every basis that a permit may use, side by side."""
    rows = [
        [result.enquiry.code, stream.name, *values]
        for result in results
        for stream in result.streams
        for values in _on_every_basis(result, stream)
    ]
    columns = [Column("Enquiry"), Column("Stream"), *BY_PARAMETER]
    note = f"{BASES} {MEANINGS}"
    return Table("discharge_by_parameter", "Discharge by parameter", note, columns, rows)


def discharge_of(result: Result, stream: Stream, brief: bool = False) -> Table:
    """Every parameter of one stream on every basis; `brief` to fit a screen."""
    title = f"Discharge of {result.enquiry.code}: {stream.name}"
    columns = BRIEF if brief else BY_PARAMETER
    rows = _on_every_basis(result, stream)
    return Table("discharge", title, f"{BASES} {DISCHARGE_NOTE}", columns, rows)


BY_PARAMETER = [
    Column("Parameter"),
    Column("Per kg of grey yarn", "", 4),
    Column("Per m of finished cloth", "", 4),
    Column("Unit of these"),
    Column("For the order", "", 2),
    Column("Per day", "24 h on the range", 2),
    Column("Unit of the loads"),
    Column("Concentration", "", 1),
    Column("Unit of it"),
]
BRIEF = [
    Column("Parameter"),
    Column("Per kg", "of yarn", 3),
    Column("Per m", "of cloth", 3),
    Column(""),
    Column("Order", "", 1),
    Column("Per day", "of 24 h", 1),
    Column(""),
    Column("In water", "", 1),
    Column(""),
]


def _on_every_basis(result: Result, stream: Stream) -> list[list[Any]]:
    plan = result.ledger.plan
    hours = plan.run_hours + plan.changeover_hours + plan.stoppage_hours
    days = convert(hours, "h", "day")
    rows: list[list[Any]] = []
    for item in FIGURES.values():
        load = item.load(stream)
        small, whole = item.per_kg(load), item.whole(load * plan.saleable_mass)
        rows.append(
            [
                capital(item.title),
                small,
                small * result.quote.per[FINISHED_METRE],
                item.small,
                whole,
                whole / days,
                item.large,
                item.concentration(stream),
                f"{item.dense}/L" if item.name != FLOW else None,
            ]
        )
    return rows
