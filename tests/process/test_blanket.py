"""Gas over the dye boxes: what is bought, and what it spares."""

from __future__ import annotations

from typing import Any

import pytest

from costing.ledger.remarks import remarks
from costing.ledger.whole import Ledger, open_ledger
from costing.quantities import InputError
from costing.settings.mill import Mill
from tests.example_mill import example_mill

DYE = "indigo dyeing"
GAS = {"blanket_product": "GAS", "blanket_use": 20.0}
TIGHT = {**GAS, "surface_oxygen": 0.3, "circulation_oxygen": 0.0}


def opened(machine: dict[str, Any], **enquiry: Any) -> Ledger:
    mill = example_mill(machine={DYE: machine}, enquiry={"stoppages": 0, **enquiry})
    return open_ledger(mill, mill.enquiries["E"])


def used(ledger: Ledger, cause: str) -> float:
    return sum(line.amount for line in ledger.run.lines if (line.cause, line.material) == (cause, "HYDRO"))


def test_gas_is_bought_by_the_hour() -> None:
    """20 kg/h over a throughput of so many kg/h; two stops of half an hour take 20 kg more for the lot."""
    ledger = opened(GAS)
    run = sum(line.amount for line in ledger.run.lines if line.material == "GAS")
    assert run == pytest.approx(20.0 / ledger.plan.around.throughput, rel=1e-12)
    stopped = opened(GAS, stoppages=2, stoppage_time=0.5)
    lot = sum(line.amount for line in stopped.lines if line.cause.endswith("in stoppages"))
    assert lot * stopped.plan.saleable_mass == pytest.approx(20.0, rel=1e-12)


def test_what_it_spares_is_the_oxygen_that_is_set() -> None:
    """Surface 3 to 0.3 g/m2/h: a tenth of the hydrosulfite at the surface; circulation 2 to 0 g/m3: none."""
    air, gas = opened({}), opened(TIGHT)
    assert used(gas, "bath surface") == pytest.approx(0.1 * used(air, "bath surface"), rel=1e-12)
    assert used(air, "circulation") > 0.0
    assert used(gas, "circulation") == 0.0


def test_gas_over_a_bath_that_is_set_like_an_open_one_is_remarked() -> None:
    for machine, told in ((GAS, True), (TIGHT, False), ({}, False)):
        said = [remark.text for remark in remarks(opened(machine), Mill())]
        assert any("like an open box" in text for text in said) == told


def test_gas_without_its_use_is_refused() -> None:
    with pytest.raises(InputError, match="blanket product and blanket use: one is empty"):
        opened({"blanket_product": "GAS"})


def test_a_range_names_only_products_that_may_be_blown_over_a_bath() -> None:
    with pytest.raises(InputError, match="blanket product is 'LYE', which holds sodium hydroxide"):
        opened({**GAS, "blanket_product": "LYE"})
