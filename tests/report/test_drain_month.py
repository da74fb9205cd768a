"""A month at a collecting point: the sum of its days, and the mean day that the other tables show."""

from __future__ import annotations

import datetime

import pytest

from costing.effluent.factors import IONS, PARAMETERS
from costing.quantities import InputError
from costing.report.drain_month import FLOW, Month, Ran, days_table, month_table, ran_table, work_out_month
from costing.report.drain_point import PointResult, work_out_point
from costing.report.table import capital
from tests.report.demo import demo_mill, demo_result

D = datetime.date
RAN = [
    Ran(D(2026, 10, 1), "Q-02", "PIT", 5200.0, 0.0),
    Ran(D(2026, 10, 2), "Q-02", "PIT", 3000.0, 0.0),
    Ran(D(2026, 10, 2), "B-01", "PIT", 1600.0, 0.0),
    Ran(D(2026, 10, 5), "K-01", "PIT", 0.0, 9000.0),
    Ran(D(2026, 11, 2), "Q-02", "PIT", 9999.0, 0.0),
]


# Peroxide of one enquiry meets the sulfur salts of another only where both run on the same day.
MEETING = {*IONS, "COD, inorganic sulfur", "COD, both", "BOD5", "dissolved solids"}


@pytest.fixture(scope="module")
def month() -> Month:
    return work_out_month(demo_mill(), "PIT", RAN, "2026-10", demo_result)


@pytest.fixture(scope="module")
def mean(month: Month) -> PointResult:
    return work_out_point(month.mean, "PIT", demo_result)


def test_the_month_is_the_sum_of_its_days_and_the_mean_day_times_their_number(
    month: Month, mean: PointResult
) -> None:
    rows = {row[0]: row for row in month_table(month, mean).rows}
    assert len(month.days) == 3
    volumes = [day.places[0].stream.volume / 1000.0 for day in month.days.values()]
    assert rows[FLOW][1] == pytest.approx(sum(volumes))
    for name in PARAMETERS:
        days = [day.places[0].stream.loads.get(name, 0.0) for day in month.days.values()]
        row = rows[capital(name)]
        assert row[1] == pytest.approx(sum(days), abs=1e-9)
        if name not in MEETING:
            assert row[1] == pytest.approx(3.0 * mean.places[0].stream.loads.get(name, 0.0), abs=1e-9)
        assert row[5] == pytest.approx(max(days), abs=1e-9)


def test_the_days_show_what_ran_and_the_peaks(month: Month, mean: PointResult) -> None:
    table = days_table(month, mean)
    sulfide = table.rows[1][5], table.rows[2][5]
    assert [row[0].day for row in table.rows] == [1, 2, 5]
    assert table.rows[0][5] == 0.0
    assert min(sulfide) > 0.0
    assert "sulfide" in table.rows[1 + sulfide.index(max(sulfide))][-1]
    assert "COD" in max(table.rows, key=lambda row: row[4])[-1]
    assert all(10.0 < row[8] < 13.0 for row in table.rows)
    assert sum(row[1] for row in table.rows[:2]) == pytest.approx(9800.0)
    assert table.rows[2][2] == pytest.approx(9000.0)


def test_what_ran_is_told_by_enquiry(month: Month, mean: PointResult) -> None:
    rows = {row[0]: row[1:4] for row in ran_table(month, mean).rows}
    assert rows == {"Q-02": [2, 8200.0, None], "B-01": [1, 1600.0, None], "K-01": [1, None, 9000.0]}


def test_running_days_take_the_place_of_the_days_of_the_point(mean: PointResult) -> None:
    assert mean.point.days_per_month == 3.0


def test_the_book_stays_as_it_is(month: Month) -> None:
    assert month.mean is not demo_mill()
    assert [row.enquiry for row in demo_mill().drain.production] == ["Q-02", "B-01", "K-01"]
    assert demo_mill().drain.points["PIT"].days_per_month != 3.0


@pytest.mark.parametrize(
    ("wanted", "said"),
    [
        ("", "the log holds 2026-10, 2026-11"),
        ("2026-12", "nothing ran in 2026-12"),
        ("10/2026", "is no month"),
    ],
)
def test_a_month_that_is_not_told_or_not_there_is_refused(wanted: str, said: str) -> None:
    with pytest.raises(InputError, match=said):
        work_out_month(demo_mill(), "PIT", RAN, wanted, demo_result)
