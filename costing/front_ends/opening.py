"""Open a figure into its lines, a formula into its arguments, a default into its source."""

from __future__ import annotations

import json
import textwrap
from collections.abc import Iterable
from typing import Any

from costing.book.quantity_cell import read_quantity
from costing.cost.quote import EFFLUENT, CostLine, group_of
from costing.effluent.discharge import Stream
from costing.effluent.factors import PARAMETERS
from costing.formulas.registry import GROUPS, find
from costing.front_ends.tables import Column, Result, Table, costs_of
from costing.process.postings import POWER
from costing.quantities import InputError, describe, label, quantity
from costing.reference_data import cautions, defaults
from costing.reference_data.source_list import sources
from costing.settings.mill import Mill

UTILITIES = {"water": "water", "steam": "steam", "power": POWER, "range time": "range time"}


def open_figure(mill: Mill, result: Result, figure: str, step: str | None = None) -> Table:
    """Lines behind a figure of one enquiry, largest first, with their sum.

    Parameters
    ----------
    mill : Mill
        The mill's book.
    result : Result
        Of an enquiry.
    figure : str
        ``cost``, a material's code, a cost group, a utility, ``flow``, or a drain parameter; ``drain``
        in front tells a drain parameter from a material of the same name.
    step : str, optional
        Keep only the lines of this step.

    Raises
    ------
    InputError
        No such figure or step.
    """
    wanted = figure.strip().lower()
    steps = dict.fromkeys(
        [line.step for line in result.quote.lines] + [line.step for line in result.ledger.lines]
    )
    if step is not None and step not in steps:
        raise InputError("--step", f"{step!r} is not a step of this route; there are: {', '.join(steps)}")
    if wanted == "cost":
        return _cost(mill, result, step)
    parameters = {name.lower(): name for name in (*PARAMETERS, "flow")} | {"cod": "COD, both"}
    drained = wanted.removeprefix("drain ")
    chosen = [] if drained != wanted else _materials_called(mill, result, wanted)
    if not chosen and drained in parameters:
        return _drain(result, parameters[drained], step)
    return _material(mill, result, figure, chosen, step)


def _cost(mill: Mill, result: Result, step: str | None) -> Table:
    currency = costs_of(mill).currency
    per = result.quote.per["m of finished cloth"]
    rows: list[list[Any]] = [
        [line.step, line.material, line.cause, line.cost, line.cost * per]
        for line in result.quote.lines
        if step in (None, line.step)
    ]
    columns = [
        *WHERE_FROM,
        Column("Cost", f"{currency} per kg of grey yarn", 5),
        Column("Cost", f"{currency} per m of finished cloth", 5),
    ]
    return _sorted("cost", f"Cost of {result.enquiry.code}", columns, rows)


WHERE_FROM = [Column("Step"), Column("Material"), Column("Cause")]


def _used_lines(result: Result) -> list[CostLine]:
    """Priced lines of what is used; what the drain and the office cost is not used."""
    return [line for line in result.quote.lines if line.group not in (EFFLUENT, "overhead")]


def _materials_called(mill: Mill, result: Result, wanted: str) -> list[str]:
    """Used things that a word means: a code, a utility, a group, a role or a substance."""
    found = dict.fromkeys(line.material for line in _used_lines(result))
    codes = {code.lower(): code for code in found} | UTILITIES
    if wanted in codes:
        return [codes[wanted]] if codes[wanted] in found else []
    return [code for code in found if code in mill.materials and _is_called(mill, code, wanted)]


def _material(mill: Mill, result: Result, figure: str, chosen: list[str], step: str | None) -> Table:
    lines = _used_lines(result)
    if not chosen:
        words = dict.fromkeys([line.group for line in lines] + [line.material for line in lines])
        raise InputError(
            "--of",
            f"{figure!r} is nothing that enquiry {result.enquiry.code} uses; there are: cost, flow, "
            f"{', '.join(words)}; drain: {'; '.join(PARAMETERS)}",
        )
    products = all(code in mill.materials for code in chosen)
    scale, unit = SHOWN_AS.get(chosen[0], (1000.0, "g/kg"))
    columns = [*WHERE_FROM, Column("As delivered" if products else "Used", unit, 4)]
    if products:
        columns.append(Column("Active part", unit, 4))
    rows: list[list[Any]] = []
    for line in lines:
        if line.material in chosen and step in (None, line.step):
            row: list[Any] = [line.step, line.material, line.cause, scale * line.amount]
            rows.append([*row, row[-1] * mill.materials[line.material].strength] if products else row)
    return _sorted("use", f"{figure} of {result.enquiry.code}", columns, rows)


# What is no product: factor and unit in which a line of it is shown.
SHOWN_AS = {
    "water": (1.0, "L/kg"),
    "steam": (1.0, "kg/kg"),
    POWER: (1.0, "kWh/kg"),
    "range time": (1000.0, "h/t"),
}


def _is_called(mill: Mill, code: str, wanted: str) -> bool:
    material = mill.materials[code]
    called = wanted.replace(" ", "_")
    return wanted in (group_of(material), material.role.lower()) or material.substance.endswith(called)


def _drain(result: Result, parameter: str, step: str | None) -> Table:
    rows: list[list[Any]] = []
    for stream in result.streams[:-1]:
        rows += _stream_rows(stream, parameter, step)
    unit, digits = ("L/kg", 4) if parameter == "flow" else ("g/kg", 5)
    columns = [
        Column("Step"),
        Column("Stream"),
        Column("Substance"),
        Column("Cause"),
        Column(parameter[:1].upper() + parameter[1:], unit, digits),
    ]
    return _sorted("drain", f"{parameter} of {result.enquiry.code}", columns, rows)


def _stream_rows(stream: Stream, parameter: str, step: str | None) -> Iterable[list[Any]]:
    for line in stream.lines:
        if step not in (None, line.step):
            continue
        if parameter == "flow":
            amount = line.amount if line.substance == "water" else 0.0
        else:
            amount = 1000.0 * line.amount * stream.factors.of(line.substance).get(parameter, 0.0)
        if amount:
            yield [line.step, stream.name, line.substance.replace("_", " "), line.cause, amount]


def _sorted(key: str, title: str, columns: list[Column], rows: list[list[Any]]) -> Table:
    first = next(place for place, column in enumerate(columns) if column.digits is not None)
    rows = sorted(rows, key=lambda row: -abs(row[first]))
    total = [sum(row[place] for row in rows) for place in range(first, len(columns))]
    rows.append(["sum", *[None] * (first - 1), *total])
    return Table(key, title, "Largest first; the lines add up to the sum.", columns, rows)


def formula_table(word: str | None, brief: bool = False) -> Table:
    """The formulas, or those whose name, group or help holds a word; `brief` to fit a screen."""
    rows: list[list[Any]] = []
    for group in GROUPS:
        for formula in group.FORMULAS:
            if word and word.lower() not in f"{formula.name} {group.TITLE} {formula.help}".lower():
                continue
            takes = ", ".join(item.name for item in formula.arguments)
            rows.append([group.TITLE, formula.name, takes, quantity(formula.result).usual, formula.help])
    if not rows:
        raise InputError("list", f"no formula holds {word!r}; `costing list` shows all")
    columns = [Column("Group"), Column("Name"), Column("Takes"), Column("Gives"), Column("What it is")]
    if brief:
        columns = [columns[1], columns[3], columns[4]]
        rows = [[row[1], row[3], row[4]] for row in rows]
    return Table("formulas", "Formulas", "costing calculate NAME shows units and ranges.", columns, rows)


def calculated(name: str, values: Iterable[str], unit: str | None, as_json: bool) -> str:
    """Text of a calculated formula, or of what it takes when no value is given.

    Raises
    ------
    InputError
        An unknown formula, argument or unit, or a value that is refused.
    """
    formula = find(name)
    given: dict[str, tuple[float, str]] = {}
    for text in values:
        argument, sign, value = text.partition("=")
        argument = argument.strip()
        if not sign:
            raise InputError(text, 'accepted is ARGUMENT=VALUE, as pick_up=0.75 or "concentration=1.5 g/L"')
        names = [item.name for item in formula.arguments]
        if argument not in names:
            raise InputError(text, f"{argument!r} is not an argument; accepted are: {', '.join(names)}")
        number, _, unit_text = value.strip().partition(" ")
        item = quantity(argument)
        house = read_quantity(_number(number, text), unit_text.strip() or item.usual, argument, text)
        given[argument] = (house, item.unit)
    if not given:
        return _signature(name)
    result = formula.calculate(given, unit)
    shown = unit if unit is not None else quantity(formula.result).usual
    if as_json:
        return json.dumps({"formula": formula.name, "result": result, "unit": shown})
    return f"{result:.10g} {shown}".rstrip()


def _number(text: str, where: str) -> float:
    try:
        return float(text)
    except ValueError:
        raise InputError(
            where, f"{text!r} is not a number; accepted is a number with a decimal point"
        ) from None


def _signature(name: str) -> str:
    formula = find(name)
    lines = [formula.name, f"  {formula.help}", ""]
    for item in formula.arguments:
        left_out = " (may be left out)" if item.name in formula.defaults else ""
        lines.append(f"  {item.name}: {item.help}; {describe(item)}{left_out}")
    answer = quantity(formula.result)
    lines.append(f"  gives {label(answer.name)}, {answer.usual or 'a pure number'}")
    example = " ".join(f'"{key}={value:g} {quantity(key).usual}"' for key, value in formula.example.items())
    return "\n".join([*lines, "", f"  costing calculate {formula.function.__name__} {example}"])


def default_table(word: str | None) -> Table:
    """Defaults whose key or note holds a word, each with its band and its source."""
    rows: list[list[Any]] = []
    for key, row in defaults().items():
        if word and word.lower().replace(" ", "_") not in f"{key} {row.note}".lower():
            continue
        found = sources()[row.source]
        cited = ", ".join(part for part in (found.title, row.locator) if part)
        rows.append([key, row.text(), "contested" if row.contested else "", f"{cited}. {row.note}".strip()])
    if not rows:
        raise InputError("source", f"no default holds {word!r}; `costing source` shows all")
    columns = [Column("Key"), Column("Typical (low to high)"), Column(""), Column("Source and note")]
    return Table("defaults", "Defaults", "Type your own figure in the book to replace one.", columns, rows)


def caution_text(word: str | None) -> str:
    """Cautions of one group of materials, or of all.

    Raises
    ------
    InputError
        No such caution.
    """
    table = cautions()
    wanted = (word or "").lower()
    found = [row for key, row in table.items() if wanted in f"{key} {row.name}".lower()]
    if not found:
        raise InputError("caution", f"{word!r} has no caution here; there are: {', '.join(table)}")
    parts = [textwrap.fill(f"{row.name.upper()}: {row.caution}", 100) for row in found]
    return "\n\n".join([*parts, textwrap.fill(found[0].defer, 100)])
