"""The ledger closes for any valid input, and views of it agree."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings

from costing.cost.quote import quote
from costing.effluent.discharge import streams
from costing.effluent.oxygen_demand import oxygen_demand_of_formula
from costing.ledger.closure import check_closed, gaps
from costing.ledger.route_run import LOOM
from costing.ledger.whole import Ledger, is_bought, open_ledger
from costing.process.postings import DRAIN, GREY, Line
from costing.quantities import InputError
from costing.reference_data import substances
from costing.settings.mill import Mill
from tests.example_mill import example_mill
from tests.ledger.strategies import mills

MANY = settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow])
SOME = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def opened(drawn: Mapping[str, Any]) -> tuple[Mill, Ledger]:
    """The ledger of drawn settings; a draw that the rooms refuse in words is no counter-example."""
    mill = example_mill(**drawn)
    try:
        return mill, open_ledger(mill, mill.enquiries["E"])
    except InputError as error:
        if "does not close" not in error.message:
            assume(False)
        raise


@MANY
@given(mills())
def test_every_substance_and_element_closes(drawn: dict[str, Any]) -> None:
    mill, ledger = opened(drawn)
    found = gaps(ledger.lines, mill.materials)
    assert {f"reaction {element}" for element in ("Na", "S", "N", "C", "H", "O")} <= set(found)
    assert {"outside Na", "outside S", "outside N", "process water"} <= set(found)
    for what, gap in found.items():
        assert gap < 1e-9, what


@SOME
@given(mills())
def test_nothing_leaves_below_zero(drawn: dict[str, Any]) -> None:
    mill, ledger = opened(drawn)
    for stream in streams(ledger, mill.materials):
        size = 1e-9 * (1.0 + sum(abs(load) for load in stream.loads.values()))
        assert stream.flow >= -size, stream.name
        for parameter, load in stream.loads.items():
            assert load >= -size, (stream.name, parameter)


@MANY
@given(mills())
def test_no_substance_leaves_below_zero(drawn: dict[str, Any]) -> None:
    """A sum over substances would hide one that is negative: each is looked at in each stream."""
    _, ledger = opened(drawn)
    held: dict[tuple[str, str], float] = {}
    moved: dict[str, float] = {}
    for line in ledger.lines:
        moved[line.substance] = moved.get(line.substance, 0.0) + abs(line.amount)
        if line.destination.startswith(DRAIN):
            key = (line.destination, line.substance)
            held[key] = held.get(key, 0.0) + line.amount
    for (stream, substance), amount in held.items():
        assert amount >= -1e-9 * moved[substance] - 1e-15, (stream, substance)


@MANY
@given(mills())
def test_only_oxygen_taken_up_lowers_the_demand_of_a_whole_mill(drawn: dict[str, Any]) -> None:
    """Demand of all that reacts, before less after, is the oxygen that came out of the air."""
    _, ledger = opened(drawn)
    change = size = 0.0
    for line in ledger.lines:
        if line.substance in substances() and "reaction" in (line.source, line.destination):
            demand = oxygen_demand_of_formula(substances()[line.substance].formula)
            demand = -1.0 if line.substance == "oxygen" else demand
            change += (1.0 if line.destination == "reaction" else -1.0) * line.amount * demand
            size += abs(line.amount * demand)
    assert abs(change) <= 1e-9 * size


@SOME
@given(mills())
def test_streams_and_cost_are_views_of_the_same_lines(drawn: dict[str, Any]) -> None:
    mill, ledger = opened(drawn)
    assert mill.costs is not None
    drained = sum(
        line.amount
        for line in ledger.lines
        if line.destination.startswith(DRAIN) and line.substance == "water"
    )
    assert streams(ledger, mill.materials)[-1].flow == pytest.approx(drained, rel=1e-12, abs=1e-15)
    offer = quote(ledger, mill.materials, mill.costs)
    for columns in (("group",), ("step", "material", "cause")):
        assert sum(offer.by(*columns).values()) == pytest.approx(offer.cost_per_kg, rel=1e-12)
    direct = sum(line.amount * mill.costs.effluent_charge for line in _drain_water(ledger))
    assert offer.by("group").get(("effluent",), 0.0) == pytest.approx(direct, rel=1e-12, abs=1e-15)


def _drain_water(ledger: Ledger) -> list[Line]:
    return ledger.select(lambda line: line.destination.startswith(DRAIN) and line.substance == "water")


@SOME
@given(mills())
def test_grey_yarn_of_one_kilogram_enters(drawn: dict[str, Any]) -> None:
    _, ledger = opened(drawn)
    entered = sum(line.amount for line in ledger.lines if line.source == GREY and line.destination != LOOM)
    returned = sum(line.amount for line in ledger.lines if line.destination == GREY)
    dyed = ledger.plan.grey_mass_dyed / ledger.plan.saleable_mass
    assert entered - returned == pytest.approx(dyed, rel=1e-12)


def test_a_lost_posting_does_not_close() -> None:
    mill = example_mill()
    ledger = open_ledger(mill, mill.enquiries["E"])
    sulfite = max(
        (
            line
            for line in ledger.lines
            if line.substance == "sodium_sulfite" and line.destination == "process"
        ),
        key=lambda line: line.amount,
    )
    for broken in (
        [line for line in ledger.lines if line is not sulfite],
        [line._replace(amount=1.01 * line.amount) if line is sulfite else line for line in ledger.lines],
    ):
        assert max(gaps(broken, mill.materials).values()) > 1e-4


def test_a_ledger_that_does_not_close_is_not_shown() -> None:
    mill = example_mill()
    lines = open_ledger(mill, mill.enquiries["E"]).lines
    check_closed(lines, mill.materials, "enquiry E")
    biggest = max(lines, key=lambda line: line.amount if line.destination == "process" else 0.0)
    lost = [line for line in lines if line is not biggest]
    with pytest.raises(InputError, match="enquiry E: its ledger does not close: process "):
        check_closed(lost, mill.materials, "enquiry E")


def test_twice_the_yarn_twice_the_use_of_the_run() -> None:
    """Per kilogram nothing of the steady state may depend on the length of the order."""
    short, long = (
        example_mill(
            whole_machine={"leader_length": 0.0, "off_shade_length": 0.0, "set_length_max": 200000.0},
            enquiry={"order_length": length},
        )
        for length in (10000.0, 20000.0)
    )
    amounts = []
    for mill in (short, long):
        ledger = open_ledger(mill, mill.enquiries["E"])
        amounts.append({line[:4]: line.amount for line in ledger.lines if line.cause == "reduces the dye"})
    assert amounts[0]
    assert amounts[0] == pytest.approx(amounts[1], rel=1e-12)


def test_twice_the_shade_takes_twice_the_dye() -> None:
    usage = []
    for shade in (0.5, 1.0, 2.0):
        mill = example_mill(recipe={"indigo dyeing": {"indigo_on_yarn": shade}})
        ledger = open_ledger(mill, mill.enquiries["E"])
        usage.append(
            sum(
                line.amount
                for line in ledger.lines
                if line.material == "INDIGO" and line.cause == "stays on the yarn" and is_bought(line)
            )
        )
    assert usage[1] == pytest.approx(2 * usage[0], rel=1e-12)
    assert usage[2] == pytest.approx(4 * usage[0], rel=1e-12)
