"""A table of quotes as files, in and out."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import openpyxl
import pandas
import pytest
from click.testing import CliRunner

from costing.front_ends import bulk_command
from costing.front_ends.bulk_file import read_table, write_table
from costing.front_ends.command_line import main
from costing.many.bulk import bulk_quotes
from costing.many.bulk_dask import bulk_partitions
from costing.quantities import InputError
from tests.many.test_bulk import COST, MILL, random_table


def run(*words: str) -> Any:
    return CliRunner().invoke(main, ["bulk", *words])


@pytest.mark.parametrize("kind", ["csv", "xlsx", "parquet"])
def test_a_table_comes_back_with_its_quotes(kind: str, tmp_path: Path) -> None:
    table = random_table(40)
    source, out = tmp_path / f"rows.{kind}", tmp_path / f"quotes.{kind}"
    write_table(source, table)
    done = run(str(source), "--out", str(out))
    assert done.exit_code in (0, 3), done.output
    assert f"40 rows are in {out}" in done.output
    found, expected = read_table(out), bulk_quotes(MILL, table)
    assert list(found.columns) == list(expected.columns)
    given = pandas.to_numeric(found[COST], errors="coerce")
    pandas.testing.assert_series_equal(given, expected[COST], rtol=1e-12, check_dtype=False)
    assert (found["enquiry"] == table["enquiry"]).all()


def test_what_looks_like_a_formula_is_text_and_a_refused_cost_is_an_error(tmp_path: Path) -> None:
    table = pandas.DataFrame({"enquiry": ["=1+1", "Q-01"]})
    found = bulk_quotes(MILL, table)
    write_table(tmp_path / "a.xlsx", found)
    sheet = openpyxl.load_workbook(tmp_path / "a.xlsx").active
    assert sheet is not None
    assert [sheet["A2"].data_type, sheet["A2"].value] == ["s", "=1+1"]
    assert [sheet["C2"].data_type, sheet["C2"].value] == ["e", "#N/A"]
    assert sheet["C3"].data_type == "n"
    write_table(tmp_path / "a.csv", found)
    lines = (tmp_path / "a.csv").read_text("utf-8-sig").splitlines()
    assert lines[1].startswith("'=1+1,,#N/A,")


@pytest.mark.parametrize(
    ("name", "text", "told"),
    [
        ("a.csv", "enquiry,dips\nQ-01,six\n", "a.csv, column 'dips', row 2: dips is the text 'six'"),
        ("a.csv", "enquiry,dips,dips\nQ-01,6,6\n", "the heading 'dips' stands there twice"),
        ("a.csv", "enquiry,dips\nQ-01,6,7\n", "cannot be read"),
        ("a.csv", "enquiry;order length [m]\nQ-01;1.234,5\n", "is the text '1.234,5'"),
        ("a.csv", "", "heading"),
        ("a.txt", "enquiry\n", "is no table"),
        ("a.xlsx", "enquiry\n", "is not a workbook"),
        ("a.parquet", "enquiry\n", "cannot be read"),
    ],
)
def test_a_table_that_cannot_be_read_is_refused_and_nothing_written(
    name: str, text: str, told: str, tmp_path: Path
) -> None:
    (tmp_path / name).write_text(text)
    done = run(str(tmp_path / name), "--out", str(tmp_path / "out.csv"))
    assert done.exit_code == 2
    assert told in done.output
    assert sorted(path.name for path in tmp_path.iterdir()) == [name]


def test_a_comma_is_a_decimal_sign_where_it_is_said(tmp_path: Path) -> None:
    source, out = tmp_path / "a.csv", tmp_path / "out.csv"
    source.write_text("enquiry;order length [m]\nQ-01;1234,5\n\n")
    assert run(str(source), "--decimal", ",", "--out", str(out)).exit_code == 0
    assert read_table(out)["order length [m]"].tolist() == [1234.5]
    again = run(str(source), "--decimal", ",", "--out", str(out))
    assert "is there already" in again.output


def test_processes_of_the_command_give_the_same(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(bulk_command, "WORTH_CORES", 1)
    table = random_table(60)
    write_table(tmp_path / "rows.csv", table)
    run(str(tmp_path / "rows.csv"), "--out", str(tmp_path / "out.parquet"), "--cores", "2")
    found = read_table(tmp_path / "out.parquet")
    pandas.testing.assert_series_equal(found[COST], bulk_quotes(MILL, table)[COST], rtol=1e-12)


@pytest.mark.filterwarnings("ignore:The inplace keyword")  # Dask's own use of pandas
def test_partitions_of_parquet_files_give_the_same_on_a_local_cluster(tmp_path: Path) -> None:
    from dask import dataframe
    from distributed import Client, LocalCluster

    table = random_table(60)
    for number in range(3):
        write_table(tmp_path / f"part{number}.parquet", table[20 * number : 20 * number + 20])
    frame = dataframe.read_parquet(str(tmp_path / "part*.parquet"))
    cluster: Any = LocalCluster(  # type: ignore[no-untyped-call]
        n_workers=1, threads_per_worker=2, processes=False, dashboard_address="127.0.0.1:0"
    )
    with cluster, Client(cluster):  # type: ignore[no-untyped-call]
        found = bulk_partitions(MILL, frame).compute().reset_index(drop=True)
    expected = bulk_quotes(MILL, table)
    pandas.testing.assert_frame_equal(found, expected, rtol=1e-12, check_dtype=False)
    assert frame.npartitions == 3


@pytest.mark.filterwarnings("ignore:The inplace keyword")
def test_the_command_runs_a_folder_of_parquet_files(tmp_path: Path) -> None:
    table = random_table(20)
    for number in range(2):
        write_table(tmp_path / f"part{number}.parquet", table[10 * number : 10 * number + 10])
    out = tmp_path / "quotes.parquet"
    done = run(str(tmp_path / "part*.parquet"), "--dask", "--cores", "1", "--out", str(out))
    assert done.exit_code in (0, 3), done.output
    found = pandas.read_parquet(out)
    pandas.testing.assert_series_equal(found[COST], bulk_quotes(MILL, table)[COST], rtol=1e-12)


def test_a_missing_library_is_named(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    import sys

    (tmp_path / "a.csv").write_text("enquiry\nQ-01\n")
    monkeypatch.setitem(sys.modules, "pandas", None)
    with pytest.raises(InputError, match=r"needs the library pandas; accepted is after: pip install"):
        read_table(tmp_path / "a.csv")
