"""A figure of a collecting point opened: each line that carries it, its factor, and where that stands."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from costing.effluent.arriving import loads_taken_in
from costing.effluent.factors import PARAMETERS, Factors
from costing.quantities import QUANTITIES, InputError, listed
from costing.quantities.units import convert, from_house
from costing.reference_data import Default, default, defaults
from costing.report.acidity_why import ACIDITY, acidity_why
from costing.report.drain import FIGURES, FLOW, Figure
from costing.report.drain_point import PointResult
from costing.report.names import parameter_called
from costing.report.point_lines import above_rounding, brief_lines, ran_to
from costing.report.table import Column, Result, Table, capital, largest_first
from costing.settings.mill import Mill

ASKED = (FLOW, ACIDITY, *PARAMETERS)
TEXTS, LAST = 5, 6  # texts that a line begins with, and the place of its result
# Parameters to which all ions of the water taken in add, and those to which one does.
OF_EVERY_ION = ("sodium", "dissolved solids")
OF_ONE_ION = {
    "chloride": ("chloride",),
    "sulfate": ("sulfate",),
    "sulfate, once all is oxidised": ("sulfate",),
    "sulfur, all forms": ("sulfate",),
}
_SETTING = re.compile(r"\b[a-z_]+\.[a-z_]+(?:\.[a-z_]+)?")


def why(
    mill: Mill, found: PointResult, word: str, result: Callable[[str], Result], brief: bool = False
) -> list[Table]:
    """The lines behind a parameter as it leaves a point, and what their factors rest on; of pH its ions.

    Parameters
    ----------
    mill : Mill
        The book.
    found : PointResult
        The point.
    word : str
        A parameter of the drain, flow or pH.
    result : callable
        Gives the result of an enquiry by its code.
    brief : bool, optional
        True for a screen: small lines are one.

    Raises
    ------
    InputError
        No such parameter.
    """
    name = parameter_called(word, ASKED)
    if name is None:
        raise InputError("--why", f"{word!r} is no parameter of the drain; there are: {listed(ASKED, word)}")
    if name == ACIDITY:
        return acidity_why(mill, found, result, brief)
    figure = FIGURES[name]
    rows: list[list[Any]] = []
    factors: dict[tuple[Any, ...], list[Any]] = {}
    for enquiry, mass, streams in ran_to(mill, found, result):
        sums: dict[tuple[str, ...], list[float]] = {}
        for stream in streams:
            for line in stream.lines:
                factor = figure.factor(stream.factors, line.substance)
                if factor:
                    told = (line.step, stream.name, line.substance.replace("_", " "), line.cause)
                    held = sums.setdefault(told, [0.0, 0.0])
                    held[0] += line.amount * mass
                    held[1] += line.amount * mass * factor
                    given = [told[2], factor, _grounds(figure, stream.factors, line.substance)]
                    factors.setdefault(tuple(given), given)
        rows += [[enquiry, *told, *held] for told, held in sums.items()]
    for own, given in _without_recipe(found, figure):
        rows.append(own)
        if given and own[-1]:
            factors.setdefault(tuple(given), given)
    rows = above_rounding(rows, [LAST])
    if name == FLOW:
        for row in rows:
            row[-1] = convert(row[-1], "L", "m3")
    unit = "m3/day" if name == FLOW else "kg/day"
    columns = [
        *(Column(title) for title in ("Enquiry", "Step", "Stream", "Substance", "Cause")),
        Column("Amount", "kg/day", 3),
        Column("Result", unit, 4),
    ]
    note = (
        "Largest first; the lines add up to what leaves the point on a running day. Result = amount x "
        f"factor; the factors stand below. {figure.note}".strip()
    )
    title = f"{capital(figure.title)} of {found.point.code}: where it comes from"
    lines = largest_first("point_why", title, note, columns, rows, [len(columns) - 1])
    if brief:
        lines = lines._replace(rows=brief_lines(lines.rows, TEXTS, [LAST]))
    return [lines, _factors_table(mill, found, figure, list(factors.values()))]


def _without_recipe(found: PointResult, figure: Figure) -> list[tuple[list[Any], list[Any]]]:
    """What no recipe brings, with what it rests on: lint, water, other flows, and the air on the way."""
    told: list[tuple[list[Any], list[Any]]] = []
    for stream in found.streams:
        load = stream.volume if figure.name == FLOW else stream.loads.get(figure.name, 0.0)
        if not stream.enquiry:
            line = ["", "", stream.name, "", "typed on the sheet Discharge plan", load, load]
            told.append((line, []))
        elif stream.name == "lint":
            line = [stream.enquiry, "", stream.name, "lint", "loose fibre", load, load]
            told.append((line, ["lint", None, "point.lint"]))
    if figure.name == FLOW:
        return told
    volume = sum(stream.volume for stream in found.streams if stream.enquiry)
    taken = loads_taken_in(found.point, volume).get(figure.name, 0.0)
    line = ["", "", "water taken in", "", "its alkalinity, chloride, sulfate", taken, taken]
    of_water = [
        f"point.mains_{ion}"
        for ion in ("alkalinity", "chloride", "sulfate")
        if figure.name in OF_EVERY_ION or ion in OF_ONE_ION.get(figure.name, ())
    ]
    factor = taken / volume if volume else None
    told.append((line, ["water taken in", factor, ", ".join(of_water)]))
    apart = sum(stream.loads.get(figure.name, 0.0) for stream in found.streams)
    fresh, left = (place.stream.loads.get(figure.name, 0.0) for place in (found.places[0], found.leaving))
    line = ["", "", found.places[0].place, "", "peroxide meets sulfur salts", fresh - apart, fresh - apart]
    told.append((line, ["peroxide of another stream", None, ""]))
    line = ["", "", found.leaving.place, "", "air on the way to there", left - fresh, left - fresh]
    told.append((line, ["oxygen of the air", None, "point.drain_transfer, point.pit_transfer"]))
    return told


def _grounds(figure: Figure, factors: Factors, substance: str) -> str:
    return "1 kg of water counts as 1 L" if figure.name == FLOW else factors.grounds(substance, figure.name)


def _factors_table(mill: Mill, found: PointResult, figure: Figure, rows: list[list[Any]]) -> Table:
    """Factor of each substance, what it rests on, and where that is given."""
    unit = "L/kg" if figure.name == FLOW else "kg/kg"
    columns = [Column("Substance"), Column("Factor", unit, 6), Column("Factor from"), Column("Given by")]
    told = [[*row, "; ".join(_given(mill, found, key) for key in _settings(row[-1]))] for row in rows]
    note = "A factor of COD has the share in it that the test finds."
    return Table("point_factors", "Factors", note if "COD" in figure.name else "", columns, told)


def _settings(grounds: str) -> list[str]:
    return [key for key in dict.fromkeys(_SETTING.findall(grounds)) if key in defaults()]


def _given(mill: Mill, found: PointResult, key: str) -> str:
    """Where a setting comes from: a cell, or its typical value with the source."""
    group, _, name = key.partition(".")
    if group == "point":
        entry = mill.drain.given.get(found.point.code, {}).get(name)
        if entry is not None and entry.value is not None:
            return f"{key}: {entry.where}"
        return f"{key}: {_typical(default(key))}"
    taken = dict.fromkeys(mill.default_of(one) for one in mill.assumptions if one.key == key)
    return f"{key}: {' or '.join(map(_typical, taken)) or 'typed in the book'}"


def _typical(row: Default) -> str:
    from costing.reference_data.source_list import (
        sources,  # its reader wants a younger Python than a cell has
    )

    item = QUANTITIES[row.quantity]
    value, low, high = (
        f"{from_house(number, item.usual, item.unit):.6g}" for number in (row.value, row.low, row.high)
    )
    of_table = row.source in sources()  # else it is of a calibration
    title = sources()[row.source].title if of_table else row.source
    cited = ", ".join(part for part in (title, row.locator) if part)
    said = f"{'typical' if of_table else 'calibrated'} {value} {item.usual} ({low} to {high}), {cited}"
    return said.replace("  ", " ")
