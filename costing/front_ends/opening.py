"""Open a figure into its lines, a formula into its arguments, a default into its source."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from typing import Any

from costing.cost.quote import EFFLUENT, SECONDS, CostLine
from costing.effluent.discharge import Stream
from costing.quantities import InputError, folded, listed, meant
from costing.quantities.units import convert
from costing.reference_data import cautions, cautions_of, defaults, meaning_of, spelled
from costing.reference_data.source_list import sources
from costing.report import Column, Result, Table, costs_of
from costing.report.drain import ALL_STREAMS, FIGURES, discharge_of
from costing.report.drain_lines import opened
from costing.report.names import RANKS, Called, codes_called, names_of, parameter_called
from costing.report.table import FINISHED_METRE, capital, largest_first, used_lines
from costing.settings.mill import Mill

DRAIN_WORD, COST_WORD = "drain", "cost"
COSTS = {
    COST_WORD: None,
    **{group: group for group in (EFFLUENT, "overhead", SECONDS)},
}  # word -> the group of cost it keeps
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
    wanted = folded(figure)
    step = _one_of("--step", step, _steps(result), "step of this route")
    stream = _one_of("--stream", stream, [item.name for item in result.streams], "stream of this enquiry")
    if wanted == DRAIN_WORD:
        if step is not None:
            raise InputError("--step", "opens one parameter; accepted with --of drain is --stream")
        return [discharge_of(result, _stream(result, stream), brief)]
    of_drain = wanted.removeprefix(f"{DRAIN_WORD} ")
    called = _called(mill, result)
    chosen = codes_called(figure, called, "--of")[0] if of_drain == wanted else []
    if of_drain == wanted and (wanted in COSTS or chosen):
        if stream is not None:
            raise InputError(
                "--stream",
                f"goes with a parameter of the drain; {figure!r} is none: leave --of out for all that drains "
                "there, or name one, as in --of COD",
            )
        if wanted in COSTS:
            return [_cost(mill, result, wanted, step)]
        return [_use(mill, result, figure, chosen, step)]
    parameter = parameter_called(of_drain, FIGURES)
    if parameter is None:
        names = dict.fromkeys(
            folded(name) for rank in range(RANKS) for _, ranks in called for name in ranks[rank]
        )
        raise InputError(
            "--of",
            f"{figure!r} is nothing that enquiry {result.enquiry.code} uses or drains; there are: "
            f"{', '.join([*COSTS, *names])}; in the drain: {DRAIN_WORD} for all, {'; '.join(FIGURES)}",
        )
    return opened(result, FIGURES[parameter], step, None if stream == ALL_STREAMS else stream, brief)


def _one_of(option: str, word: str | None, there: Sequence[str], what: str) -> str | None:
    """The name that is meant, as it is spelled.

    Raises
    ------
    InputError
        There is no such name.
    """
    if word is None:
        return None
    found = meant(word, there)
    if found is None:
        raise InputError(option, f"{word!r} is not a {what}; there are: {listed(there, word)}")
    return found


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


def _called(mill: Mill, result: Result) -> list[tuple[str, Called]]:
    """What an enquiry uses, with all its names."""
    return [
        (line.material, names_of(line.material, line.group, mill.materials.get(line.material)))
        for line in used_lines(result)
    ]


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
    wanted = spelled(word or "")
    found = [row for key, row in table.items() if wanted in spelled(f"{key} {row.name}")]
    if not found and (meaning := meaning_of(wanted, "the word", "caution")):
        found = [table[key] for key in dict.fromkeys(cautions_of(meaning))]
    if not found:
        raise InputError("caution", f"{word!r} has no caution here; there are: {', '.join(table)}")
    parts = [textwrap.fill(f"{row.name.upper()}: {row.caution}", 100) for row in found]
    return "\n\n".join([*parts, textwrap.fill(found[0].defer, 100)])
