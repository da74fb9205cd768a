"""The command line on the invented demo mill: what it prints, writes and refuses."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from costing.formulas.registry import FORMULAS
from costing.front_ends.command_line import main
from costing.front_ends.workbook.build import demo_book


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, list(arguments))


def refused(*arguments: str) -> str:
    done = run(*arguments)
    assert done.exit_code == 2, done.output
    text = done.stderr.strip()
    assert "\n" not in text
    assert "Traceback" not in done.output
    return text


def test_quote_writes_a_new_workbook_and_leaves_the_book_alone(folder: Path) -> None:
    before = demo_book().read_bytes()
    done = run("quote")
    assert done.exit_code == 0, done.output
    assert "Q-01" in done.output
    assert [path.name for path in folder.iterdir()] == ["mill_book_results.xlsx"]
    assert demo_book().read_bytes() == before


def test_results_are_not_overwritten_unasked(folder: Path) -> None:
    target = folder / "mill_book_results.xlsx"
    target.write_bytes(b"mine")
    assert "mill_book_results.xlsx" in refused("quote", "-e", "Q-01")
    assert target.read_bytes() == b"mine"
    assert "holds no earlier results" in refused("quote", "-e", "Q-01", "--overwrite")
    assert target.read_bytes() == b"mine"
    target.unlink()
    assert run("quote", "-e", "Q-01").exit_code == 0
    first = target.read_bytes()
    assert "mill_book_results.xlsx" in refused("quote", "-e", "Q-02")
    assert target.read_bytes() == first
    assert run("quote", "-e", "Q-02", "--overwrite").exit_code == 0
    assert target.read_bytes() != first


def test_results_may_not_go_into_the_book(folder: Path) -> None:
    assert run("book", "mine.xlsx").exit_code == 0
    before = (folder / "mine.xlsx").read_bytes()
    assert "is the book itself" in refused("quote", "mine.xlsx", "--out", "mine.xlsx", "--overwrite")
    assert (folder / "mine.xlsx").read_bytes() == before


def test_json_has_every_table_and_adds_up(folder: Path) -> None:
    done = run("quote", "-e", "Q-01", "--json")
    document = json.loads(done.output)
    assert {"quotes", "cost_by_group", "use", "discharge_loads", "ledger", "checks"} <= set(document)
    lines = [row for row in document["cost_lines"] if row["Enquiry"] == "Q-01"]
    costs = [
        value
        for row in lines
        for key, value in row.items()
        if key.endswith("per m of finished cloth]") and "Cost" in key
    ]
    (quoted,) = document["quotes"]
    (cost,) = [value for key, value in quoted.items() if key.startswith("Cost") and "m of finished" in key]
    assert sum(costs) == pytest.approx(cost, abs=0.001)
    assert not list(folder.iterdir())


def test_unknown_enquiry_names_those_that_are_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)  # results that are there already are refused before
    text = refused("quote", "-e", "Q-99")
    assert "'Q-99' is not in the book" in text
    assert "Q-01" in text


@pytest.mark.parametrize(
    "figure",
    [
        "cost",
        "hydrosulfite",
        "indigo",
        "caustic",
        "steam",
        "water",
        "power",
        "COD",
        "sodium",
        "flow",
        "alkalinity",
        "Sulfite",
    ],
)
def test_ledger_opens_a_figure_and_adds_up(figure: str) -> None:
    done = run("ledger", "-e", "Q-01", "--of", figure, "--json")
    assert done.exit_code == 0, done.output
    for rows in json.loads(done.output).values():
        *lines, total = rows
        numbers = [key for key, value in total.items() if isinstance(value, float)]
        assert numbers
        assert lines or not any(total[key] for key in numbers)
        for key in numbers:
            assert sum(row[key] for row in lines) == pytest.approx(total[key], rel=1e-12, abs=1e-12)


def test_ledger_tells_a_material_from_what_is_left_of_it_in_the_drain() -> None:
    bought = json.loads(run("ledger", "-e", "Q-02", "--of", "hydrosulfite", "--json").output)
    assert list(bought) == ["use"]
    assert {"carried into sky 1", "reduces the dye"} <= {row["Cause"] for row in bought["use"][:-1]}
    drained = json.loads(run("ledger", "-e", "Q-02", "--of", "drain hydrosulfite", "--json").output)
    assert list(drained) == ["drain", "made"]
    assert {"bath overflow", "bath dumped"} <= {row["Cause"] for row in drained["drain"][:-1]}


def test_a_stream_alone_is_all_that_drains_there() -> None:
    alone = run("ledger", "-e", "Q-01", "--stream", "rinse after dyeing", "--json")
    named = run("ledger", "-e", "Q-01", "--of", "drain", "--stream", "rinse after dyeing", "--json")
    assert alone.exit_code == 0, alone.output
    assert alone.output == named.output
    assert "leave --of out" in refused("ledger", "-e", "Q-01", "--of", "cost", "--stream", "cleaning")


def test_ledger_filters_the_drain_by_stream() -> None:
    asked = ("ledger", "-e", "Q-01", "--of", "sulfite", "--stream", "Rinse AFTER dyeing", "--json")
    rows = json.loads(run(*asked).output)["drain"]
    assert {row["Stream"] for row in rows[:-1]} == {"rinse after dyeing"}
    (load,) = [
        row["Sulfite [g/kg]"]
        for row in json.loads(run("quote", "-e", "Q-01", "--json").output)["discharge_loads"]
        if row["Stream"] == "rinse after dyeing"
    ]
    assert rows[-1]["Result [g/kg]"] == pytest.approx(load, rel=1e-12)


def test_on_a_screen_of_eighty_columns_every_word_of_the_drain_stays_whole(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    whole = run("ledger", "-e", "Q-01", "--of", "drain").output
    rows = json.loads(run("ledger", "-e", "Q-01", "--of", "drain", "--json").output)["discharge"]
    numbers = [f"{row['Per kg of grey yarn']:,.3f}" for row in rows]
    for word in ("Parameter", "Hydrosulfite", "oxidised", "Alkalinity", "estimate", "mmol/L", *numbers):
        assert word in whole
    opened = run("ledger", "-e", "Q-01", "--of", "sulfite").output
    for word in ("Stream", "Result", "formula Na2SO3", "Made by", "carried into sky 3"):
        assert word in opened
    assert max(len(line) for line in (whole + opened).splitlines()) <= 80


def test_no_number_is_cut_on_a_screen_that_is_too_narrow(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "50")
    shown = run("quote", "-e", "V-04").output
    for text in ("D-1200", "BATCH-BLACK", "8,000", "5.161", "2.889", "153"):
        assert text in shown


def test_beside_sentences_that_are_folded_no_number_and_no_word_is_cut(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    words = ("band", "-e", "Q-02", "--draws", "200")
    printed = run(*words).output
    assert max(len(line) for line in printed.splitlines()) <= 80
    shown = printed.split()
    found = json.loads(run(*words, "--json").output)
    numbers = [
        value for row in found["enquiries"]["band"] for value in row.values() if value and value != 0.0
    ]
    assert {f"{number:.4f}" for number in numbers if isinstance(number, float)} <= set(shown)
    assert {"Middle", "Refused", "destruction", "common-", "practice", "-0.0024"} <= set(shown)


def test_ledger_of_cost_is_the_quote() -> None:
    opened = json.loads(run("ledger", "-e", "Q-02", "--of", "cost", "--json").output)["cost"][-1]
    quoted = json.loads(run("quote", "-e", "Q-02", "--json").output)["quotes"][0]
    (total,) = [value for key, value in opened.items() if "per m" in key]
    (cost,) = [value for key, value in quoted.items() if key.startswith("Cost") and "m of finished" in key]
    assert total == pytest.approx(cost, abs=0.0005)


def test_unknown_figure_and_step_are_refused_with_what_there_is() -> None:
    assert "'chalk' is nothing that enquiry Q-01 uses" in refused("ledger", "-e", "Q-01", "--of", "chalk")
    assert "is not a step of this route" in refused("ledger", "-e", "Q-01", "--step", "sizing")
    text = refused("ledger", "-e", "Q-01", "--of", "COD", "--stream", "rinse")
    assert "'rinse' is not a stream of this enquiry" in text
    assert "rinse after dyeing" in text
    assert "'steam' is none" in refused("ledger", "-e", "Q-01", "--of", "steam", "--stream", "cleaning")
    assert "--stream" in refused("ledger", "-e", "Q-01", "--of", "drain", "--step", "drying")


@pytest.mark.parametrize("typed", ["q-02", " Q-02 ", "Q-02\u00a0", "Q\u201102"])
def test_an_enquiry_is_found_as_it_is_typed(typed: str) -> None:
    plain, found = (run("ledger", "-e", code, "--of", "lye", "--json") for code in ("Q-02", typed))
    assert found.exit_code == 0
    assert found.output == plain.output


def test_arguments_and_words_are_found_as_they_are_typed() -> None:
    plain = run("calculate", "carried_by_liquor", "pick_up=0.75", "concentration=1.5 g/L")
    assert (
        run("calculate", "carried_by_liquor", " Pick up =0.75", "CONCENTRATION=1.5 g/L").output
        == plain.output
    )
    assert "accepted are: concentration, pick_up" in refused(
        "calculate", "carried_by_liquor", "concentraton=1"
    )
    assert run("caution", "lye").output == run("caution", "caustic").output


def test_calculate_with_units() -> None:
    done = run("calculate", "carried_by_liquor", "pick_up=0.75", "concentration=1.5 g/L")
    assert done.output.strip() == "1.125 g/kg"
    done = run("calculate", "WARP_LINEAR_DENSITY_FROM_ENGLISH_COUNT", "english_count=7 Ne", "--in", "den")
    assert float(done.output.split()[0]) == pytest.approx(5314.871 / 7, rel=1e-6)


@pytest.mark.parametrize("name", list(FORMULAS))
def test_every_formula_shows_what_it_takes_and_its_example_runs(name: str) -> None:
    shown = run("calculate", name)
    assert shown.exit_code == 0
    formula = FORMULAS[name]
    from costing.quantities import quantity

    values = [f"{key}={value!r} {quantity(key).usual}".strip() for key, value in formula.example.items()]
    if values:
        done = run("calculate", name, *values, "--json")
        assert done.exit_code == 0, done.output
        assert json.loads(done.output)["result"] == pytest.approx(
            formula.calculate(formula.example), rel=1e-12
        )


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["calculate", "carried_by_liqour"], "near are: WARP_CARRIED_BY_LIQUOR"),
        (["calculate", "carried_by_liquor", "pick_up"], "accepted is ARGUMENT=VALUE"),
        (["calculate", "carried_by_liquor", "pickup=1"], "accepted are: pick_up, concentration"),
        (["calculate", "carried_by_liquor", "pick_up=0.75"], "concentration is empty"),
        (["calculate", "carried_by_liquor", "pick_up=0,75", "concentration=1"], "'0,75' is not a number"),
        (["calculate", "carried_by_liquor", "pick_up=0.75 kWh", "concentration=1"], "kWh"),
        (["calculate", "carried_by_liquor", "pick_up=0.75 foo", "concentration=1"], "foo"),
        (["calculate", "delivered_from_pure", "pure_mass=1", "strength=0"], "accepted is 1 to 100 %"),
        (
            ["calculate", "delivered_from_pure", "pure_mass=1 kg", "strength=88", "--in", "m"],
            "cannot be read as m",
        ),
        (["calculate", "carried_by_liquor", "pick_up=nan", "concentration=1"], "pick up is nan"),
        (["list", "elephants"], "no formula holds"),
        (["source", "elephants"], "no default holds"),
        (["caution", "elephants"], "has no caution"),
        (["quote", "nothing_here.xlsx"], "nothing_here.xlsx"),
        (["book", "no/such/folder/book.xlsx"], "no/such/folder"),
    ],
)
def test_refusals(arguments: list[str], words: str, folder: Path) -> None:
    assert words in refused(*arguments)
    assert not list(folder.iterdir())


def test_source_tells_where_a_default_comes_from() -> None:
    rows = json.loads(run("source", "sky_destruction", "--json").output)["defaults"]
    assert rows[0]["Key"] == "indigo.sky_destruction"
    assert "contested" in rows[0].values()


def test_caution_defers() -> None:
    text = " ".join(run("caution", "caustic").output.split())
    assert "CAUSTIC" in text
    assert "safety data sheet" in text


def test_help_teaches() -> None:
    text = run("--help").output
    for word in ("costing quote", "costing book", "costing ledger"):
        assert word in text


def test_help_loads_nothing_heavy() -> None:
    code = (
        "import sys\nfrom costing.front_ends.command_line import main\n"
        "try:\n    main(['--help'])\nexcept SystemExit:\n    pass\n"
        "print([m for m in ('pandas', 'numpy', 'openpyxl', 'pint', 'rich') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], check=True, capture_output=True, text=True)
    assert done.stdout.strip().endswith("[]")
