"""The numbers in the file add up to those of the quotes, by ways that do not share the writer's code."""

from __future__ import annotations

import math
import re
import zipfile
from decimal import Decimal
from typing import Any

import pandas as pd
import pytest
from openpyxl import Workbook, load_workbook

from costing.cost.quote import GROUPS
from costing.ledger.closure import content
from costing.report import all_tables
from tests.workbook_results.conftest import Written
from tests.workbook_results.written import sheet

PER_METRE = "EUR per m of finished cloth"
PER_KG = "EUR per kg of grey yarn"
OUTSIDE = ("store", "earlier lot", "next lot")

SHEETS = {
    "key_figures": "Key figures",
    "cost_by_group": "Cost by group",
    "cost_by_step": "Cost by step",
    "use": "Use",
    "dye_bath": "Dye bath",
    "discharge_loads": "Discharge loads",
    "discharge_concentrations": "Discharge concentrations",
    "discharge_by_parameter": "Discharge by parameter",
    "cloth_plan": "Cloth",
    "order_plan": "Order",
    "checks": "Checks",
    "defaults_taken": "Defaults taken",
    "cost_lines": "Cost lines",
    "prices": "Prices",
    "ledger": "Ledger",
    "safety": "Safety",
    "sources": "Sources",
}


def test_cost_lines_add_up_to_each_quote(written: Written) -> None:
    lines = sheet(written.path, "Cost lines")
    per_kg = lines.groupby("Enquiry")[f"Cost [{PER_KG}]"].sum()
    per_metre = lines.groupby("Enquiry")[f"Cost [{PER_METRE}]"].sum()
    assert len(per_kg) == len(written.results)
    for item in written.results:
        plan = item.ledger.plan
        yarn_of_a_metre = plan.saleable_mass / plan.finished_length
        assert per_kg[item.enquiry.code] == pytest.approx(item.quote.cost_per_kg, rel=1e-12)
        assert per_metre[item.enquiry.code] == pytest.approx(
            item.quote.cost_per_kg * yarn_of_a_metre, rel=1e-12
        )


def test_amount_times_price_is_cost(written: Written) -> None:
    lines = sheet(written.path, "Cost lines")
    found = lines["Amount [per kg of grey yarn]"] * lines["Price [EUR per unit]"]
    assert (found - lines[f"Cost [{PER_KG}]"]).abs().max() < 1e-15


def test_one_purchase_is_one_cost_line(written: Written) -> None:
    lines = sheet(written.path, "Cost lines")
    assert not lines.duplicated(["Enquiry", "Step", "Material", "Cause"]).any()


def test_groups_and_steps_add_up_to_the_same_cost(written: Written) -> None:
    groups, steps = sheet(written.path, "Cost by group"), sheet(written.path, "Cost by step")
    lines = sheet(written.path, "Cost lines")
    names = [f"{group.capitalize()} [EUR per m]" for group in GROUPS]
    for item in written.results:
        code = item.enquiry.code
        of_groups = groups[groups["Enquiry"] == code].iloc[0]
        of_steps = steps[steps["Enquiry"] == code]
        single, whole = of_steps[of_steps["Step"] != "all steps"], of_steps[of_steps["Step"] == "all steps"]
        total = of_groups["All [EUR per m]"]
        assert of_groups[names].sum() == pytest.approx(total, rel=1e-12)
        assert single[f"Cost [{PER_METRE}]"].sum() == pytest.approx(total, rel=1e-12)
        assert single["Share [%]"].sum() == pytest.approx(100.0, rel=1e-12)
        assert whole[f"Cost [{PER_METRE}]"].item() == pytest.approx(total, rel=1e-12)
        for group, name in zip(GROUPS, names):
            own = lines[(lines["Enquiry"] == code) & (lines["Group"] == group)]
            assert own[f"Cost [{PER_METRE}]"].sum() == pytest.approx(of_groups[name], rel=1e-12, abs=1e-15)
            assert single[name].sum() == pytest.approx(of_groups[name], rel=1e-12, abs=1e-15)


def test_summary_rounds_once_and_on_every_basis(written: Written) -> None:
    summary = sheet(written.path, "Summary")
    step = Decimal(repr(written.mill.costs.money_rounding)) if written.mill.costs else Decimal(0)
    bases = [name for name in summary.columns if name.startswith("Per ")]
    ledger = sheet(written.path, "Ledger")
    onto_yarn = ledger[ledger["To"] == "dyed yarn"]
    dyed = onto_yarn.groupby("Enquiry")["Amount [kg, kWh or h per kg of grey yarn]"].sum()
    assert len(bases) == 7
    for item in written.results:
        rows = summary[summary["Enquiry"] == item.enquiry.code].set_index("Money")
        cost, price = rows.loc["cost"], rows.loc["price"]
        plan, offer = item.ledger.plan, item.quote
        mass = plan.saleable_mass
        kilograms = {
            "Per kg of grey yarn [EUR]": 1.0,
            "Per kg of dyed yarn [EUR]": 1.0 / dyed[item.enquiry.code],
            "Per m of dyed warp [EUR]": mass / plan.warp_length,
            "Per m of loom-state cloth [EUR]": mass / plan.loom_state_length,
            "Per yd of loom-state cloth [EUR]": 0.9144 * mass / plan.loom_state_length,
            "Per m of finished cloth [EUR]": mass / plan.finished_length,
            "Per yd of finished cloth [EUR]": 0.9144 * mass / plan.finished_length,
        }
        assert set(kilograms) == set(bases)
        for basis, kilogram in kilograms.items():
            weft = 0.0 if "cloth" in basis else offer.by("group").get(("weft yarn",), 0.0)
            whole = offer.cost_per_kg - weft
            for row, exact in ((cost, whole), (price, whole / (1.0 - offer.margin))):
                assert Decimal(repr(float(row[basis]))) % step == 0
                assert float(row[basis]) == pytest.approx(exact * kilogram, abs=float(step) * 0.5000001)
        assert item.enquiry.length_basis == "finished cloth"
        assert price["Order value [EUR]"] == pytest.approx(
            price["Per m of finished cloth [EUR]"] * item.enquiry.order_length, abs=float(step)
        )
        assert price["Margin [% of price]"] == pytest.approx(100.0 * offer.margin)
        assert cost["Warnings"] == sum(remark.kind == "warning" for remark in item.remarks)


def test_the_ledger_closes_when_read_back(written: Written) -> None:
    ledger = sheet(written.path, "Ledger")
    amount = "Amount [kg, kWh or h per kg of grey yarn]"
    assert len(ledger) == sum(len(item.ledger.lines) for item in written.results)
    for _, lines in ledger.groupby("Enquiry"):
        held = lines[lines["To"] == "process"].groupby("Substance")[amount].sum()
        given = lines[lines["From"] == "process"].groupby("Substance")[amount].sum()
        gap = held.sub(given, fill_value=0.0).abs() / held.abs().add(given.abs(), fill_value=0.0)
        assert len(gap) > 10
        assert gap.max() < 1e-9
        reacted = lines[lines["To"] == "reaction"][amount].sum()
        assert reacted == pytest.approx(lines[lines["From"] == "reaction"][amount].sum(), rel=1e-9)
        assert reacted > 0


def test_sodium_comes_in_and_goes_out_by_the_sheet_alone(written: Written) -> None:
    ledger = sheet(written.path, "Ledger")
    amount = ledger["Amount [kg, kWh or h per kg of grey yarn]"]
    materials = written.mill.materials
    share = {
        name: content(name if name in materials else name.replace(" ", "_"), "Na", materials)
        for name in ledger["Substance"].unique()
    }
    sodium = amount * ledger["Substance"].map(share)
    for _, lines in ledger.groupby("Enquiry"):
        own = sodium[lines.index]
        inside = ("process", "reaction")
        came = own[~lines["From"].isin(inside)].sum()
        left = own[~lines["To"].isin(inside)].sum()
        assert came > 0.01
        assert came == pytest.approx(left, rel=1e-9)


def test_use_is_what_the_ledger_takes(written: Written) -> None:
    use, ledger = sheet(written.path, "Use"), sheet(written.path, "Ledger")
    taken = ledger[ledger["From"].isin([*OUTSIDE, "grey yarn"]) & ledger["Material"].notna()]
    use = use[use["Group"] != "weft yarn"]  # the weft meets the warp behind the range
    sums = taken.groupby(["Enquiry", "Material"])["Amount [kg, kWh or h per kg of grey yarn]"].sum()
    assert len(use) == len(sums)
    plans = {item.enquiry.code: item.ledger.plan for item in written.results}
    for _, row in use.iterrows():
        exact = sums[(row["Enquiry"], row["Material"])]
        plan = plans[row["Enquiry"]]
        scale = {"g": 1000.0}.get(row["Unit of these"], 1.0)
        assert row["Per kg of grey yarn [as delivered]"] == pytest.approx(scale * exact, rel=1e-9)
        assert row["For the order [as delivered]"] == pytest.approx(exact * plan.saleable_mass, rel=1e-9)
        assert row["Per m of finished cloth [as delivered]"] * plan.finished_length == pytest.approx(
            scale * exact * plan.saleable_mass, rel=1e-9
        )


def test_key_figures_agree_with_use(written: Written) -> None:
    use, figures = sheet(written.path, "Use"), sheet(written.path, "Key figures").set_index("Enquiry")
    for code, rows in use.groupby("Enquiry"):
        by_name = rows.set_index("Material")
        delivered, active = "Per kg of grey yarn [as delivered]", "Active part [per kg of grey yarn]"
        row = figures.loc[code]
        assert row["Water [L/kg]"] == pytest.approx(by_name.loc["water", delivered])
        assert row["Steam [kg/kg]"] == pytest.approx(by_name.loc["steam", delivered])
        assert row["Hydrosulfite [g/kg, as 100 %]"] == pytest.approx(by_name.loc["HYDRO", delivered] * 0.88)
        assert row["Indigo [g/kg, as 100 %]"] == pytest.approx(by_name.loc["INDIGO", active])
        assert row["Hydrosulfite over indigo [kg/kg, as 100 %]"] == pytest.approx(
            by_name.loc["HYDRO", active] / by_name.loc["INDIGO", active]
        )


def test_loads_over_flow_are_the_concentrations(written: Written) -> None:
    loads, found = sheet(written.path, "Discharge loads"), sheet(written.path, "Discharge concentrations")
    assert list(loads["Stream"]) == list(found["Stream"])
    names = [name[: -len(" [mg/L]")] for name in found.columns if name.endswith("[mg/L]")]
    assert "COD, inorganic sulfur" in names
    for name in names:
        exact = 1000.0 * loads[f"{name} [g/kg]"] / loads["Flow [L/kg]"]
        assert (found[f"{name} [mg/L]"] - exact).abs().max() < 1e-6
    both = loads["COD, organic [g/kg]"] + loads["COD, inorganic sulfur [g/kg]"]
    assert (both - loads["COD, both [g/kg]"]).abs().max() < 1e-12


def test_streams_are_the_drains_of_the_ledger(written: Written) -> None:
    loads, ledger = sheet(written.path, "Discharge loads"), sheet(written.path, "Ledger")
    water = ledger[(ledger["Substance"] == "water") & ledger["To"].str.startswith("drain: ")]
    sums = water.groupby(["Enquiry", "To"])["Amount [kg, kWh or h per kg of grey yarn]"].sum()
    for code, rows in loads.groupby("Enquiry"):
        streams = rows[rows["Stream"] != "all streams"].set_index("Stream")["Flow [L/kg]"]
        for stream, flow in streams.items():
            assert flow == pytest.approx(sums[(code, f"drain: {stream}")], rel=1e-12)
        total = rows[rows["Stream"] == "all streams"]["Flow [L/kg]"].item()
        assert total == pytest.approx(streams.sum(), rel=1e-12)


@pytest.fixture(scope="module")
def saved_values(written: Written) -> Workbook:
    return load_workbook(written.path, data_only=True)


@pytest.mark.parametrize(("key", "name"), SHEETS.items())
def test_pandas_and_openpyxl_see_every_value(
    written: Written, saved_values: Workbook, key: str, name: str
) -> None:
    table = next(table for table in all_tables(written.mill, written.results) if table.key == key)
    frame = sheet(written.path, name)
    cells: list[tuple[Any, ...]] = list(saved_values[name].iter_rows(min_row=7, values_only=True))
    assert len(frame) == len(cells) == len(table.rows)
    for seen, row, values in zip(frame.itertuples(index=False), cells, table.rows):
        for by_pandas, by_openpyxl, value in zip(seen, row, values):
            if value is None or value == "":
                assert by_openpyxl is None
                assert pd.isna(by_pandas)
            elif isinstance(value, str):
                clean = value.replace("\x07", "")
                assert by_openpyxl == clean
                assert by_pandas == clean
            else:
                assert not isinstance(by_openpyxl, (str, bool))
                assert math.isclose(by_openpyxl, value, rel_tol=1e-15)
                assert math.isclose(by_pandas, value, rel_tol=1e-15)


def test_no_cell_holds_a_formula(written: Written, book: Workbook) -> None:
    count = 0
    for page in book.worksheets:
        for row in page.iter_rows():
            for cell in row:
                count += cell.value is not None
                assert cell.data_type in ("s", "n", "d"), (page.title, cell.coordinate, cell.value)
    assert count > 10_000
    with zipfile.ZipFile(written.path) as parts:
        for name in parts.namelist():
            if name.startswith("xl/worksheets/sheet"):
                assert not re.search(rb"<f[ >/]", parts.read(name)), name
