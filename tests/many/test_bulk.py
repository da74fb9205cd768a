"""Rows of a table come to what each comes to alone."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy
import pandas
import pytest

from costing.cost.quote import basis_of
from costing.front_ends.workbook.read import read_book
from costing.many import bulk_jobs
from costing.many.bulk import REFUSED, bulk_quotes, result_headings
from costing.many.target import place_named
from costing.quantities import QUANTITIES, InputError
from costing.quantities.units import convert
from costing.report import work_out
from costing.report.table import priced
from costing.settings.inputs import with_inputs
from costing.settings.mill import Enquiry
from costing.settings.variants import variant

BOOK = Path(__file__).resolve().parents[2] / "workbook_template" / "mill_book.xlsx"
MILL = read_book(BOOK)
PRICES = {
    "INDIGO-94: price [money/kg]": (5.0, 9.0),
    "LYE-50: price [money/kg]": (0.2, 0.5),
    "power price [money/kWh]": (0.05, 0.2),
    "steam price [money/t]": (15.0, 40.0),
    "order length [yd]": (9e3, 6e4),
    "water temperature [degF]": (50.0, 80.0),
}
COST, PRICE = result_headings(MILL)[1:3]
GROUPS = result_headings(MILL)[3:-1]


def random_table(rows: int, seed: int = 3) -> pandas.DataFrame:
    """Demo enquiries in demo styles, with random numbers and some empty cells."""
    random = numpy.random.default_rng(seed)
    columns: dict[str, Any] = {
        "enquiry": random.choice(list(MILL.enquiries), rows),
        "style": random.choice([*MILL.styles, ""], rows),
    }
    for heading, (low, high) in PRICES.items():
        columns[heading] = numpy.where(random.random(rows) < 0.1, numpy.nan, random.uniform(low, high, rows))
    return pandas.DataFrame(columns)


def asked(row: Any) -> Enquiry:
    model = MILL.enquiries[row["enquiry"]]
    if row["style"] in ("", model.style):
        return model
    return variant(MILL, model, "alone", "", row["style"], model.recipe, model.range)


def alone(row: Any) -> tuple[float, float]:
    """Cost and price of a row, by the way of a single quote."""
    enquiry = asked(row)
    values = {}
    for heading in PRICES:
        name, unit = heading[:-1].split(" [")
        used = not name.startswith(("INDIGO-94", "LYE-50")) or name.split(":")[0] in used_by(enquiry)
        if used and not numpy.isnan(row[heading]):
            place = place_named(MILL, enquiry, name)
            values[place] = convert(float(row[heading]), unit, QUANTITIES[place.name].unit)
    changed, other = with_inputs(MILL, enquiry, values)
    quoted = work_out(changed, other).quote
    return quoted.cost_on(basis_of(other)), quoted.price_on(basis_of(other))


def used_by(enquiry: Enquiry) -> list[str]:
    from costing.settings.inputs import materials_of

    return materials_of(MILL, enquiry)


def test_rows_of_a_table_are_the_quotes_one_at_a_time() -> None:
    table = random_table(150)
    found = bulk_quotes(MILL, table)
    assert list(found.columns) == [*table.columns, *result_headings(MILL)]
    pandas.testing.assert_frame_equal(found[table.columns], table)
    quoted = 0
    for place, row in table.iterrows():
        if found[REFUSED][place]:
            with pytest.raises(InputError) as told:
                alone(row)
            assert found[REFUSED][place].split(": ")[-1] == str(told.value).split(": ")[-1]
            assert found.loc[place, [COST, PRICE, *GROUPS]].isna().all()
            continue
        cost, price = alone(row)
        assert found[COST][place] == pytest.approx(cost, rel=1e-12)
        assert found[PRICE][place] == pytest.approx(price, rel=1e-12)
        assert sum(found.loc[place, GROUPS]) == pytest.approx(cost, rel=1e-12)
        quoted += 1
    assert quoted > 100


def test_a_table_cut_anywhere_and_run_in_processes_gives_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    table = random_table(400)
    whole = bulk_quotes(MILL, table)
    cut = pandas.concat([bulk_quotes(MILL, table[:37]), bulk_quotes(MILL, table[37:])])
    pandas.testing.assert_frame_equal(whole, cut, rtol=1e-12, atol=0.0)
    monkeypatch.setattr(bulk_jobs, "PACKET", 100)
    told: list[int] = []
    with bulk_jobs.Cores(2) as cores:
        apart = bulk_quotes(MILL, table, runner=lambda mill, jobs: cores.run(mill, jobs, told.append))
    pandas.testing.assert_frame_equal(whole, apart, rtol=0.0, atol=0.0)
    assert 300 < sum(told) <= 400


def test_styles_of_few_rows_run_together(monkeypatch: pytest.MonkeyPatch) -> None:
    style = MILL.styles["D-1200"]
    first = MILL.enquiries["Q-01"]
    mill = replace(
        MILL,
        styles={
            **MILL.styles,
            "LIKE-IT": replace(style, code="LIKE-IT", ends_density=style.ends_density * 0.98),
        },
        enquiries={"A": first, "B": replace(first, code="B", style="LIKE-IT", order_length=9000.0)},
    )
    table = pandas.DataFrame(
        {"enquiry": ["A", "B", "A", "B"], "power price [money/kWh]": [0.1, 0.1, 0.2, 0.2]}
    )
    seen = []

    def run(mill: Any, jobs: Any) -> Any:
        seen.extend(jobs := list(jobs))
        return [bulk_jobs.run(mill, job) for job in jobs]

    found = bulk_quotes(mill, table, runner=run)
    assert len(seen) == 1
    assert found[COST].nunique() == 4
    monkeypatch.setattr("costing.many.bulk.FEW", 0)
    pandas.testing.assert_frame_equal(found, bulk_quotes(mill, table, runner=run), rtol=1e-12)
    assert len(seen) == 3


def test_styles_of_other_yarns_run_together_unless_a_column_names_one(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    styles = [
        code for code, style in MILL.styles.items() if style.warp_yarn != MILL.styles["D-1200"].warp_yarn
    ]
    table = pandas.DataFrame({"style": ["D-1200", *styles], "power price [money/kWh]": 0.1})
    yarn = MILL.styles["D-1200"].warp_yarn
    for more in ({}, {f"{yarn}: price [money/kg]": 5.0}):
        asked = table.assign(**more)
        together = bulk_quotes(MILL, asked, like="Q-01")
        one_by_one = [bulk_quotes(MILL, asked[row : row + 1], like="Q-01") for row in range(len(asked))]
        pandas.testing.assert_frame_equal(together, pandas.concat(one_by_one), rtol=1e-12, atol=0.0)
        assert together[COST].notna().sum() > 1


def test_a_refused_row_tells_its_own_number_and_takes_no_other_with_it() -> None:
    table = pandas.DataFrame(
        {
            "enquiry": ["Q-01", "Q-01", "Q-1", "Q-01", None, "N-01"],
            "indigo dyeing: pick up [L/kg]": [0.7, 90.0, 0.7, 91.0, 0.7, 0.7],
            "indigo dyeing: dips": [6, None, 6, 6, 6, None],
        }
    )
    found = bulk_quotes(MILL, table)
    assert found[COST].notna().tolist() == [True, False, False, False, False, False]
    assert "90 L/kg" in found[REFUSED][1]
    assert "'Q-1' is not in the book" in found[REFUSED][2]
    assert "91 L/kg" in found[REFUSED][3]
    assert "enquiry: is empty" in found[REFUSED][4]
    assert "no number of enquiry N-01" in found[REFUSED][5]


def test_a_mass_of_rows_refused_for_one_reason_is_not_run_row_by_row(monkeypatch: pytest.MonkeyPatch) -> None:
    runs = []

    def counted(*given: Any) -> Any:
        runs.append(given)
        return priced(*given)

    monkeypatch.setattr(bulk_jobs, "priced", counted)
    table = pandas.DataFrame(
        {"enquiry": "Q-08", "style": "D-1100", "power price [money/kWh]": [0.1, 0.2] * 300}
    )
    found = bulk_quotes(MILL, table)
    assert found[REFUSED].str.contains("need 48 rope places").all()
    assert len(runs) < 10


def test_whole_numbers_and_words_part_the_rows() -> None:
    table = pandas.DataFrame(
        {
            "style": ["", "D-1350", "", ""],
            "dips": [5, 6, 7, 6.5],
            "bath at end": ["drained", "", "kept for the next lot", ""],
        }
    )
    words = sorted({enquiry.bath_at_end for enquiry in MILL.enquiries.values()})
    table["bath at end"] = [words[0], "", words[-1], ""]
    found = bulk_quotes(MILL, table, like="Q-01")
    assert found[COST].notna().tolist() == [True, True, True, False]
    assert found[COST][:3].nunique() == 3
    assert "whole" in found[REFUSED][3]


@pytest.mark.parametrize(
    ("columns", "told"),
    [
        ({"speeed [m/min]": [30.0]}, "'speeed [m/min]': is no number of an enquiry"),
        (
            {"order length": [30.0]},
            "the unit is missing; accepted is one behind the name, as order length [m]",
        ),
        ({"order length [kg]": [30.0]}, "measures something else"),
        ({"order length [m]": [30.0], "order_length [km]": [0.03]}, "which is the same"),
        ({"dips": [5], "indigo dyeing: dips": [6]}, "which is the same number"),
        (
            {"power price [money/kWh]": ["0,12"]},
            "'power price [money/kWh]', row 2: power price is the text '0,12'",
        ),
        ({"exhaust [%]": [3.0]}, "is no number of an enquiry"),
        ({"nothing here: dips": [5]}, "is no number of enquiry"),
    ],
)
def test_a_column_that_cannot_be_meant_is_refused_by_its_name(columns: dict[str, Any], told: str) -> None:
    with pytest.raises(InputError) as refused:
        bulk_quotes(MILL, pandas.DataFrame({"enquiry": ["Q-01"], **columns}))
    assert told in str(refused.value)


def test_a_table_without_codes_or_rows() -> None:
    with pytest.raises(InputError, match="no column of codes"):
        bulk_quotes(MILL, pandas.DataFrame({"dips": [5]}))
    empty = bulk_quotes(MILL, pandas.DataFrame({"enquiry": [], "dips": []}))
    assert list(empty.columns) == ["enquiry", "dips", *result_headings(MILL)]


def test_counts_and_degrees_of_lye_are_read_as_the_book_reads_them() -> None:
    table = pandas.DataFrame(
        {"enquiry": "Q-01", "warp count [Ne]": [7.0, 0.0], "caustic dosing [°Bé]": [26.0, 26.0]}
    )
    found = bulk_quotes(MILL, table)
    place = place_named(MILL, MILL.enquiries["Q-01"], "warp count")
    lye = place_named(MILL, MILL.enquiries["Q-01"], "caustic dosing")
    from costing.book.quantity_cell import measured

    values = {
        place: measured(QUANTITIES[place.name], 7.0, "Ne").house,
        lye: measured(QUANTITIES[lye.name], 26.0, "°Bé").house,
    }
    changed, other = with_inputs(MILL, MILL.enquiries["Q-01"], values)
    assert found[COST][0] == pytest.approx(work_out(changed, other).quote.cost_on(basis_of(other)), rel=1e-12)
    assert "warp count is 0 Ne" in found[REFUSED][1]
