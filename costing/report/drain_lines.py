"""A figure of the drain opened: the lines that carry it, their factors, and the reactions that make it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from costing.effluent.factors import Factors
from costing.process.postings import REACTION
from costing.quantities.units import convert
from costing.report.drain import FLOW, Figure
from costing.report.table import Column, Result, Table, capital, largest_first

ROUNDING = 1e-9  # of what a reaction makes: a smaller rest is rounding, the reaction passes it on whole
NOTHING = 1e-12  # of the largest line: what a sum that ends at zero leaves of rounding
GRAMS = convert(1.0, "kg", "g")


def opened(
    result: Result, figure: Figure, step: str | None, stream: str | None, brief: bool = False
) -> list[Table]:
    """The lines behind a figure of the drain, and what makes it.

    Parameters
    ----------
    result : Result
        Of an enquiry.
    figure : Figure
        The figure.
    step, stream : str or None
        Keep only the lines of this step, of this stream.
    brief : bool, optional
        True for a screen: where the factors come from stands once for each substance, in a table of
        its own, and not in every line.
    """
    lines = _lines(result, figure, step, stream)
    made = _made(result, figure)
    if not brief:
        return [lines, made]
    narrow = lines._replace(columns=lines.columns[:-1], rows=[row[:-1] for row in lines.rows])
    return [narrow, _factors(figure, lines), made]


def _is_demand(figure: Figure) -> bool:
    """True for oxygen demands, of which a test finds a share."""
    return figure.name.startswith("COD")


def _about_factor(figure: Figure) -> list[Column]:
    found = [Column("Found", "%", 0)] if _is_demand(figure) else []
    return [Column("Factor", f"{figure.small}/g", 4), *found]


def _lines(result: Result, figure: Figure, step: str | None, stream: str | None) -> Table:
    columns = [
        Column("Step"),
        Column("Stream"),
        Column("Substance"),
        Column("Cause"),
        Column("Amount", "g/kg", 4),
        *_about_factor(figure),
        Column("Result", f"{figure.small}/kg", 5),
        Column("Factor from"),
    ]
    rows: list[list[Any]] = []
    for item in result.streams[:-1]:
        for line in item.lines:
            factor = figure.factor(item.factors, line.substance)
            if factor and stream in (None, item.name) and step in (None, line.step):
                *numbers, grounds = _explained(figure, item.factors, line.substance)
                about = [line.step, item.name, line.substance.replace("_", " "), line.cause]
                amount, found = GRAMS * line.amount, figure.per_kg(line.amount * factor)
                rows.append([*about, amount, *numbers, found, grounds])
    largest = max((abs(row[-2]) for row in rows), default=0.0)
    rows = [row for row in rows if abs(row[-2]) > NOTHING * largest]
    product = "amount x factor x share that the test finds" if _is_demand(figure) else "amount x factor"
    note = f"Largest first; result = {product}, per kg of saleable grey yarn. {figure.note}".strip()
    title = f"{capital(figure.title)} of {result.enquiry.code}{f': {stream}' if stream else ''}"
    return largest_first("drain", title, note, columns, rows, [len(columns) - 2])


def _explained(figure: Figure, factors: Factors, substance: str) -> list[Any]:
    """Factor as it is shown, for a demand the share that the test finds, and where they come from."""
    if _is_demand(figure):
        demand = factors.demand(substance)
        return [
            figure.per_kg(demand.theory) / GRAMS,
            100.0 * demand.recovery,
            factors.grounds(substance, figure.name),
        ]
    factor = figure.per_kg(figure.factor(factors, substance)) / GRAMS
    if figure.name == FLOW:
        return [factor, "1 kg of water counts as 1 L"]
    return [factor, factors.grounds(substance, figure.name)]


def _factors(figure: Figure, lines: Table) -> Table:
    """Factor and grounds of each substance of the lines, once."""
    columns = [Column("Substance"), *_about_factor(figure), Column("Factor from")]
    numbers = slice(5, 5 + len(columns) - 2)
    rows = {row[2]: [row[2], *row[numbers], row[-1]] for row in lines.rows[:-1]}
    note = "Names like general.recovery are defaults: costing source NAME shows them." if rows else ""
    return Table("factors", "Factors", note if _is_demand(figure) else "", columns, list(rows.values()))


def _made(result: Result, figure: Figure) -> Table:
    """What reactions make and take of a figure, summed by step and cause."""
    factors = result.streams[-1].factors
    sums: dict[tuple[str, str], list[float]] = {}
    for line in result.ledger.lines:
        for place, account in enumerate((line.source, line.destination)):
            if account == REACTION:
                both = sums.setdefault((line.step, line.cause), [0.0, 0.0])
                both[place] += line.amount * figure.factor(factors, line.substance)
    rows: list[list[Any]] = []
    for about, (made, taken) in sums.items():
        if abs(made - taken) > ROUNDING * (abs(made) + abs(taken)):
            rows.append([*about, *(figure.per_kg(amount) for amount in (made, taken, made - taken))])
    unit = f"{figure.small}/kg"
    columns = [
        Column("Step"),
        Column("Cause"),
        Column("Made", unit, 5),
        Column("Taken", unit, 5),
        Column("Net", unit, 5),
    ]
    title = f"Made by: {figure.title} in reactions of {result.enquiry.code}"
    return largest_first("made", title, _made_note(rows), columns, rows, [2, 3, 4])


def _made_note(rows: Sequence[Sequence[Any]]) -> str:
    if not rows:
        return (
            "No reaction makes or takes it: it comes with what is bought, with the yarn and the earlier bath."
        )
    return (
        "Largest first, for the whole enquiry; net = made less taken. What is made leaves with the drain, "
        "stays on the yarn or in the bath."
    )
