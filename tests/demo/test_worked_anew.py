"""The quote of a demo enquiry against the same quote worked out anew from the input files."""

from __future__ import annotations

import pytest

from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.report import TABLES, Result, work_out
from tests.demo.worked_anew import Worked
from tests.demo.worked_drain import drained

CODES = ("Q-02", "Q-04")


@pytest.fixture(scope="module", params=CODES)
def both(request: pytest.FixtureRequest) -> tuple[Worked, Result]:
    mill = read_book(demo_book())
    return Worked(request.param), work_out(mill, mill.enquiries[request.param])


def test_cloth_and_order(both: tuple[Worked, Result]) -> None:
    anew, quoted = both
    plan = quoted.ledger.plan
    assert quoted.ledger.fabric.ends == anew.ends
    assert quoted.ledger.fabric.finished_areal_mass * 1000 / 33.90575 == pytest.approx(anew.ounces, rel=1e-6)
    assert plan.saleable_mass == pytest.approx(anew.sold, rel=1e-9)
    assert plan.around.throughput == pytest.approx(anew.hourly, rel=1e-9)


def test_use(both: tuple[Worked, Result]) -> None:
    anew, quoted = both
    used = quoted.ledger.used
    for code, strength, amount in (
        ("INDIGO-94", 0.94, anew.indigo),
        ("HYDRO-88", 0.88, anew.hydrosulfite),
        ("LYE-50", 0.50, anew.caustic),
        ("WET-N-60", 1.0, anew.wetting),
        ("SEQ-40", 1.0, anew.sequestrant),
        ("WET-A-40", 1.0, anew.bath_wetting),
        ("water", 1.0, anew.water),
        ("steam", 1.0, anew.steam),
        ("electric energy", 1.0, anew.power),
        ("range time", 1.0, anew.hours),
    ):
        assert used(code) * strength == pytest.approx(amount, rel=1e-6), code
    assert quoted.streams[-1].flow == pytest.approx(anew.drain, rel=1e-6)


def test_every_stream_of_the_drain(both: tuple[Worked, Result]) -> None:
    """Flow, loads and concentrations of each stream, so that no two errors can hide in their sum."""
    anew, quoted = both
    worked = drained(anew)
    found = {stream.name: stream for stream in quoted.streams[:-1]}
    assert set(found) == set(worked)
    for name, loads in worked.items():
        flow = loads.pop("flow")
        assert found[name].flow == pytest.approx(flow, rel=1e-6), name
        for parameter, load in loads.items():
            where = f"{parameter} of {name}"
            assert found[name].loads[parameter] == pytest.approx(load, rel=1e-6, abs=1e-12), where
            shown = found[name].concentration(parameter)
            assert shown == pytest.approx(load / flow, rel=1e-6, abs=1e-12), where


def test_cost_by_group_and_price(both: tuple[Worked, Result]) -> None:
    anew, quoted = both
    costs = anew.costs()
    found = {group: cost for (group,), cost in quoted.quote.by("group").items()}
    assert found == pytest.approx(costs, rel=1e-6)
    per_metre = anew.sold / anew.order["order_length"]
    price = sum(costs.values()) / (1 - anew.margin) * per_metre
    assert quoted.quote.price_on("m of finished cloth") == pytest.approx(price, rel=1e-6)


def test_key_figures_and_dye_bath_as_they_are_shown(both: tuple[Worked, Result]) -> None:
    anew, quoted = both
    mill = read_book(demo_book())
    streams = drained(anew).values()
    shown = {
        column.title: value
        for key in ("key_figures", "dye_bath")
        for table in [TABLES[key](mill, [quoted])]
        for column, value in zip(table.columns, table.rows[0], strict=True)
    }
    for title, expected in (
        ("Finished cloth", anew.ounces),
        ("Indigo", 1000 * anew.indigo),
        ("Hydrosulfite", 1000 * anew.hydrosulfite),
        ("Hydrosulfite over indigo", anew.hydrosulfite / anew.indigo),
        ("Caustic", 1000 * anew.caustic),
        ("Water", anew.water),
        ("Steam", anew.steam),
        ("Power", anew.power),
        ("Range time", 1000 * anew.hours),
        ("To drain", anew.drain),
        ("COD, organic", 1000 * sum(loads["COD, organic"] for loads in streams)),
        ("COD, inorganic sulfur", 1000 * sum(loads["COD, inorganic sulfur"] for loads in streams)),
        (
            "Sulfite and sulfate in the bath, end of the lot",
            1000 * (anew.bath_end["sulfite"] + anew.bath_end["sulfate"]),
        ),
    ):
        assert shown[title] == pytest.approx(expected, rel=1e-6), title
