"""Products and water of four demo routes against the same worked out anew from the input files."""

from __future__ import annotations

import pytest

from tests.demo.route_figures import result
from tests.demo.worked_routes import Bottom, Cloth, Route, Sheet, Vessel

KINDS: dict[str, type[Route]] = {"B-01": Bottom, "S-01": Sheet, "V-01": Vessel, "P-01": Cloth}


@pytest.fixture(scope="module", params=KINDS)
def anew(request: pytest.FixtureRequest) -> tuple[str, Route]:
    return request.param, KINDS[request.param](request.param)


def test_goods_sold_and_dyed(anew: tuple[str, Route]) -> None:
    code, worked = anew
    plan = result(code).ledger.plan
    assert plan.saleable_mass == pytest.approx(worked.sold, rel=1e-9)
    assert plan.grey_mass_dyed == pytest.approx(worked.dyed, rel=1e-9)


def test_every_product_and_the_water(anew: tuple[str, Route]) -> None:
    code, worked = anew
    used = result(code).ledger.used
    for product, amount in worked.products().items():
        assert used(product) == pytest.approx(amount, rel=1e-6), product
    assert used("water") == pytest.approx(worked.water, rel=1e-6)


def test_nothing_else_is_bought(anew: tuple[str, Route]) -> None:
    code, worked = anew
    ledger = result(code).ledger
    bought = {line.material for line in ledger.lines if line.material and abs(ledger.used(line.material)) > 0}
    assert bought - {"water", "steam", "electric energy", "range time"} == set(worked.products())
