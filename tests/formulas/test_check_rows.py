"""Every check row against its formula; every formula with a row that our own code did not make."""

from __future__ import annotations

import csv
from collections import Counter
from decimal import Decimal
from pathlib import Path
from typing import NamedTuple

import pytest

from costing.formulas.registry import FORMULAS
from costing.quantities import quantity
from costing.reference_data.source_list import sources

FOLDER = Path(__file__).parents[1] / "check_rows"
KINDS = ("published", "derived", "common practice", "memory", "regression")
COLUMNS = ["formula", "inputs", "expected", "unit", "tolerance", "kind", "source", "locator", "note"]


class CheckRow(NamedTuple):
    """One row of a file, with its place."""

    place: str
    cells: dict[str, str]


def read_rows() -> list[CheckRow]:
    found = []
    for path in sorted(FOLDER.glob("*.csv")):
        with path.open(newline="", encoding="utf-8") as file:
            reader = csv.DictReader(file)
            assert reader.fieldnames == COLUMNS, path.name
            found += [CheckRow(f"{path.name}:{number}", row) for number, row in enumerate(reader, start=2)]
    return found


ROWS = read_rows()


def inputs_of(text: str) -> dict[str, tuple[float, str]]:
    given = {}
    for part in filter(None, text.split(";")):
        name, _, value = part.strip().partition("=")
        number, _, unit = value.strip().partition(" ")
        given[name] = (float(number), unit.strip() or quantity(name).usual)
    return given


def allowed(row: dict[str, str]) -> float:
    """Half a unit of the last printed digit, or the relative tolerance that a derived row states."""
    if row["tolerance"]:
        return float(row["tolerance"]) * max(abs(float(row["expected"])), 1e-300)
    exponent = Decimal(row["expected"]).as_tuple().exponent
    assert isinstance(exponent, int)
    return 0.5000001 * 10.0**exponent


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.place)
def test_row(row: CheckRow) -> None:
    cells = row.cells
    formula = FORMULAS[cells["formula"]]
    got = formula.calculate(inputs_of(cells["inputs"]), cells["unit"])
    assert abs(got - float(cells["expected"])) <= allowed(cells), f"{got!r} is not {cells['expected']}"


def test_rows_say_where_they_come_from() -> None:
    for row in ROWS:
        cells = row.cells
        assert cells["kind"] in KINDS, row.place
        assert cells["source"] in sources(), row.place
        if cells["kind"] == "published":
            assert sources()[cells["source"]].is_publication, row.place
            assert sources()[cells["source"]].opened, f"{row.place}: a source not read is not published"
            assert cells["locator"], row.place


def test_every_formula_has_an_independent_row() -> None:
    independent = {row.cells["formula"] for row in ROWS if row.cells["kind"] in ("published", "derived")}
    assert sorted(set(FORMULAS) - independent) == []


def test_there_are_at_least_sixty_independent_rows() -> None:
    kinds = Counter(row.cells["kind"] for row in ROWS)
    assert kinds["published"] + kinds["derived"] >= 60
    assert kinds["published"] >= 20
