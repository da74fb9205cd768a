"""Read the sheet Treatment: stages of each point, what the sewer charges, prices of running the train."""

from __future__ import annotations

from typing import Any

from costing.book.layout import Table, tables_of
from costing.book.sheet import Sheet
from costing.book.tables import TableRow, read_table, refuse_twice
from costing.effluent.point_train import stage_of
from costing.effluent.stages import SETTINGS, checked
from costing.quantities import InputError, quantity
from costing.quantities.checking import describe
from costing.settings.building import Assumption
from costing.settings.drain import Drain
from costing.settings.treatment_train import BUILT, SewerCharge, TrainStage, TreatmentPrices

SALTS = "dissolved salts"
# Column of the stages -> what is removed, as treatment.csv names it.
REMOVALS = {
    "cod": "COD, organic",
    "bod5": "BOD5",
    "suspended_solids": "suspended solids",
    "colour": "unfixed dye",
    "nitrogen": "nitrogen",
    "salts": SALTS,
}
# Settings that a row may give.
OF_A_STAGE = ("target_acidity", "coagulant_dose", "residence_time", "water_recovery")


def read_treatment(sheet: Sheet, drain: Drain) -> None:
    """Read stages, charges and prices into the drain.

    Raises
    ------
    InputError
        The first cell that is refused.
    """
    stages, charges, prices = tables_of("treatment")
    numbered: dict[tuple[str, int], str] = {}
    for row in read_table(sheet, stages, [charges, prices]):
        stage = _stage(row, drain)
        key = (stage.point, stage.number)
        if key in numbered:
            raise InputError(
                row.at("number"),
                f"no. {stage.number} of {stage.point} stands twice, also in {numbered[key]}; accepted is one "
                "stage for a number",
            )
        numbered[key] = row.at("number")
        drain.stages.append(stage)
        for name, default in SETTINGS[stage_of(stage).kind].items():
            if default and name not in stage.settings:
                _take(default, stage.point, drain)
    drain.stages.sort(key=lambda stage: stage.number)
    for row in refuse_twice(read_table(sheet, charges, [stages, prices]), "point"):
        point = drain.point_code(row.code, row.where)
        given = _numbers(row, charges)
        _refuse_half_a_charge(row, given)
        drain.charges[point] = SewerCharge(point, where=row.where, **given)
    for row in refuse_twice(read_table(sheet, prices, [stages, charges]), "point"):
        point = drain.point_code(row.code, row.where)
        drain.prices[point] = TreatmentPrices(point, where=row.where, **_numbers(row, prices))
    for point in dict.fromkeys(stage.point for stage in drain.stages):
        if point not in drain.prices or drain.prices[point].cake_dryness is None:
            _take("train.cake_dryness", point, drain)


def _take(key: str, point: str, drain: Drain) -> None:
    """Say that a typical value is taken."""
    drain.assumptions[Assumption(f"discharge point {point}", key)] = None


def _number(row: TableRow, name: str) -> float | None:
    """A number whose unit stands in the head of its column."""
    return row.number(name, unit=quantity(row.columns[name].quantity).usual)


def _numbers(row: TableRow, table: Table) -> dict[str, Any]:
    """What is filled of a row, but for its point."""
    found = {column.name: _number(row, column.name) for column in table.columns[1:]}
    return {name: value for name, value in found.items() if value is not None}


def _refuse_half_a_charge(row: TableRow, given: dict[str, Any]) -> None:
    """Name the cell that is missing, or one too many, of a charge."""
    terms = [name for name in SewerCharge.TERMS if name in given]
    plain = SewerCharge.PLAIN
    if plain in given and terms:
        raise InputError(
            row.at(terms[0]),
            f"{row.columns[terms[0]].head.lower()} is filled beside the plain price in {row.at(plain)}; "
            "accepted is the plain price, or the six terms by strength",
        )
    if plain in given:
        return
    for name in SewerCharge.TERMS:
        if name not in terms:
            raise InputError(
                row.at(name),
                f"{row.columns[name].head.lower()} is empty; accepted is a plain price, or all six terms by "
                "strength (0 for a charge that is not made)",
            )


def _stage(row: TableRow, drain: Drain) -> TrainStage:
    step = row.text("step")
    stage = TrainStage(
        drain.point_code(row.code, row.where),
        row.whole("number"),
        step,
        row.text("stands") or BUILT,
        _settings(row, step),
        _own_removal(row, step),
        row.where,
    )
    try:
        checked(stage_of(stage))
    except InputError as error:
        raise InputError(row.at("step"), f"{error.where}: {error.message}") from None
    return stage


def _settings(row: TableRow, step: str) -> dict[str, float]:
    kind = stage_of(TrainStage("", 1, step)).kind
    found = {}
    for name in OF_A_STAGE:
        value = _number(row, name)
        head = row.columns[name].head.lower()
        if value is None and SETTINGS[kind].get(name) == "":
            raise InputError(row.at(name), f"{head} is empty; accepted is {describe(quantity(name))}")
        if value is None:
            continue
        if name not in SETTINGS[kind]:
            raise InputError(
                row.at(name),
                f"{head} is {row.cells[name].value!r} beside {step}; accepted is an empty cell, it has none",
            )
        found[name] = value
    return found


def _own_removal(row: TableRow, step: str) -> dict[str, float]:
    kind = stage_of(TrainStage("", 1, step)).kind
    found = {}
    for name, what in REMOVALS.items():
        value = _number(row, name)
        if value is None:
            continue
        if what == SALTS and kind != "membrane":
            raise InputError(
                row.at(name),
                f"{row.columns[name].head.lower()} is {row.cells[name].value!r} beside {step}; accepted is "
                "an empty cell: salt passes it, only a membrane holds it back",
            )
        found[what] = value
    return found
