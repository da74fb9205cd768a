"""Open a figure into its lines, a formula into its arguments, a default into its source."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from typing import Any

from costing.cost.quote import EFFLUENT, CostLine
from costing.effluent.discharge import Stream
from costing.quantities import InputError
from costing.quantities.units import convert
from costing.reference_data import cautions, defaults, substances
from costing.reference_data.source_list import sources
from costing.report import Column, Result, Table, costs_of
from costing.report.drain import ALL_STREAMS, FIGURES, discharge_of
from costing.report.drain_lines import opened
from costing.report.table import FINISHED_METRE, capital, largest_first, used_lines
from costing.settings.mill import Material, Mill

DRAIN_WORD = "drain"
COSTS = {"cost": None, EFFLUENT: EFFLUENT, "overhead": "overhead"}  # word -> the group of cost it keeps
LARGEST = "Largest first; the lines add up to the sum."
WHERE_FROM = [Column("Step"), Column("Material"), Column("Cause")]


def open_figure(
    mill: Mill,
    result: Result,
    figure: str,
    step: str | None = None,
    stream: str | None = None,
    brief: bool = False,
) -> list[Table]:
    """Lines behind a figure of one enquiry, largest first, with their sum.

    Parameters
    ----------
    mill : Mill
        The mill's book.
    result : Result
        Of an enquiry.
    figure : str
        ``cost``; a material's code, a cost group, a role or a substance, as a whole name; a parameter
        of the drain; or ``drain`` for all parameters. What is bought comes before what drains:
        ``drain`` in front of a parameter tells it from a material of the same name.
    step : str, optional
        Keep only the lines of this step.
    stream : str, optional
        Keep only this stream of the drain.
    brief : bool, optional
        True for tables that fit a screen.

    Raises
    ------
    InputError
        No such figure, step or stream.
    """
    wanted = _folded(figure)
    step = _one_of("--step", step, _steps(result), "step of this route")
    stream = _one_of("--stream", stream, [item.name for item in result.streams], "stream of this enquiry")
    if wanted == DRAIN_WORD:
        if step is not None:
            raise InputError("--step", "opens one parameter; accepted with --of drain is --stream")
        return [discharge_of(result, _stream(result, stream), brief)]
    parameter = wanted.removeprefix(f"{DRAIN_WORD} ")
    names = _names(mill, result)
    if parameter == wanted and (wanted in COSTS or wanted in names):
        if stream is not None:
            raise InputError("--stream", f"goes with a parameter of the drain; {figure!r} is none")
        if wanted in COSTS:
            return [_cost(mill, result, wanted, step)]
        return [_use(mill, result, figure, names[wanted], step)]
    asked = {name.lower(): item for name, item in FIGURES.items()} | {"cod": FIGURES["COD, both"]}
    begun = [name for name in asked if name.startswith((f"{parameter} ", f"{parameter},"))]
    if parameter not in asked and len(begun) == 1:
        parameter = begun[0]  # "sulfur" is "sulfur, all forms"
    if parameter not in asked:
        raise InputError(
            "--of",
            f"{figure!r} is nothing that enquiry {result.enquiry.code} uses or drains; there are: "
            f"{', '.join([*COSTS, *names])}; in the drain: {DRAIN_WORD} for all, {'; '.join(FIGURES)}",
        )
    return opened(result, asked[parameter], step, None if stream == ALL_STREAMS else stream, brief)


def _folded(text: str) -> str:
    """A name as it is compared: capitals, underscores and double spaces do not count."""
    return " ".join(text.replace("_", " ").lower().split())


def _one_of(option: str, word: str | None, there: Sequence[str], what: str) -> str | None:
    """The name that is meant, as it is spelled.

    Raises
    ------
    InputError
        There is no such name.
    """
    if word is None:
        return None
    for name in there:
        if _folded(name) == _folded(word):
            return name
    raise InputError(option, f"{word!r} is not a {what}; there are: {', '.join(there)}")


def _steps(result: Result) -> list[str]:
    priced = [line.step for line in result.quote.lines]
    return list(dict.fromkeys([*priced, *(line.step for line in result.ledger.lines)]))


def _stream(result: Result, name: str | None) -> Stream:
    return next(item for item in result.streams if item.name == (name or ALL_STREAMS))


def _cost(mill: Mill, result: Result, word: str, step: str | None) -> Table:
    currency = costs_of(mill).currency
    per = result.quote.per[FINISHED_METRE]
    rows: list[list[Any]] = [
        [line.step, line.material, line.cause, line.cost, line.cost * per]
        for line in result.quote.lines
        if step in (None, line.step) and COSTS[word] in (None, line.group)
    ]
    columns = [
        *WHERE_FROM,
        Column("Cost", f"{currency} per kg", 5),
        Column("Cost", f"{currency} per m", 5),
    ]
    title = f"{capital(word)} of {result.enquiry.code}"
    note = f"Per kg of grey yarn, per m of finished cloth. {LARGEST}"
    return largest_first("cost", title, note, columns, rows, [3, 4])


def _names(mill: Mill, result: Result) -> dict[str, list[str]]:
    """Name of what is used -> the materials or utilities that it means; codes first, then groups."""
    called = [
        (line.material, _called(line, mill.materials.get(line.material))) for line in used_lines(result)
    ]
    names: dict[str, list[str]] = {}
    for rank in range(4):
        found: dict[str, dict[str, None]] = {}
        for code, ranks in called:
            for name in ranks[rank]:
                found.setdefault(_folded(name), {})[code] = None
        for name, codes in found.items():
            names.setdefault(name, list(codes))
    return names


def _called(line: CostLine, product: Material | None) -> tuple[list[str], ...]:
    """Names of what a line uses: by code, by group of cost, by role, by substance."""
    if product is None:
        return [line.material], [line.group], [], []
    of_substance: list[str] = []
    for key in dict.fromkeys(filter(None, (product.substance, product.counted_as))):
        name = substances()[key].name
        of_substance += [key, key.removeprefix("sodium_"), name, name.split(" (")[0]]
    return [line.material], [line.group], [product.role] if product.role else [], of_substance


def _use(mill: Mill, result: Result, figure: str, chosen: list[str], step: str | None) -> Table:
    lines = [line for line in used_lines(result) if line.material in chosen]
    products = lines[0].material in mill.materials
    unit, scale = _shown(lines[0], products)
    columns = [*WHERE_FROM, Column("As delivered" if products else "Used", unit, 4)]
    if products:
        columns.append(Column("Active part", unit, 4))
    rows: list[list[Any]] = []
    for line in lines:
        if step in (None, line.step):
            row: list[Any] = [line.step, line.material, line.cause, scale * line.amount]
            rows.append([*row, row[-1] * mill.materials[line.material].strength] if products else row)
    title = f"{figure} of {result.enquiry.code}"
    return largest_first("use", title, LARGEST, columns, rows, range(3, len(columns)))


def _shown(line: CostLine, is_product: bool) -> tuple[str, float]:
    """Unit in which a line is shown, and the factor from its own."""
    if is_product:
        return "g/kg", convert(1.0, "kg/kg", "g/kg")
    if line.unit == "h":
        return "h/t", convert(1.0, "t", "kg")
    return f"{line.unit}/kg", 1.0


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
