"""The demo enquiries that save something: arithmetic written out, and against those they save on."""

from __future__ import annotations

import pytest

from costing.process.postings import AIR, DRAIN, POWER, STORE
from tests.demo.route_figures import CAUSTIC, bought, moved, result

HYDROSULFITE = "sodium_hydrosulfite"
CELL = "indigo dyeing"
FILTER, EVAPORATOR = "rinse with filter", "rinse with evaporator"


def test_a_cell_takes_over_nine_tenths_of_the_reduction() -> None:
    """Of each kg of dye fed 0.9 are reduced in the cell, at 2 kWh and with 0.06100 kg of oxygen.

    Hydrosulfite for the other tenth is 0.1 x 174.096 / 262.268 = 0.066381 kg.
    """
    fed = result("E-01").ledger.run.feeds[CELL].indigo
    assert moved("E-01", POWER, CELL, STORE, cause="reduces the dye in the cell") == pytest.approx(1.8 * fed)
    oxygen = moved("E-01", "oxygen", CELL, destination=AIR, cause="reduces the dye")
    assert oxygen == pytest.approx(0.9 * 0.061002 * fed, rel=1e-4)
    reducing = moved("E-01", HYDROSULFITE, CELL, STORE, cause="reduces the dye")
    assert reducing == pytest.approx(0.066381 * fed, rel=1e-4)


def test_a_filter_gives_back_dye_and_water() -> None:
    """2.4 % on the yarn, 10 % lost in rinsing: 2.4 / 0.9 x 0.1 = 0.26667 %, of which 80 % come back.

    Of the rinse water, less the live steam in it, 60 % are fresh. Nitrogen is 15 kg for each hour.
    """
    assert moved("G-01", "indigo", FILTER, STORE) == pytest.approx(-0.0021333, rel=1e-4)
    live = bought("G-01", "steam", FILTER, "heats") + bought("G-01", "steam", FILTER, "lost at the surface")
    assert bought("G-01", "water", FILTER) == pytest.approx(0.6 * (5.0 - live), rel=1e-9)
    throughput = result("G-01").ledger.plan.around.throughput
    assert bought("G-01", "NITROGEN", CELL) == pytest.approx(15.0 / throughput, rel=1e-9)


def test_an_evaporator_gives_back_caustic() -> None:
    """0.9 L/kg of 120 g/L less 2 g/kg for the yarn's acids come to the rinse: 106 g/kg at steady state.

    2.5 L/kg of water to 0.62 L/kg of liquor is 4.0323; g = 1 - 0.65 (1 - 1/4.0323) = 0.51120 and g^5 =
    0.034911, so 0.034911 x 3.0323 / (4.0323 - 0.034911) = 2.6483 % stay. Of what is rinsed off 80 % come
    back, in lye of 50 % with as much water. The drain of 0.9 + 2.5 - 0.62 = 2.78 L/kg goes in by 80 %:
    2.224 kg/kg less the lye's water are driven off, with 0.42 times as much steam.
    """
    (comes,) = [
        yarn.dissolved[CAUSTIC]
        for step, yarn in result("R-01").ledger.run.entering
        if step.name == EVAPORATOR
    ]
    assert 0.106 < comes < 0.1065  # the lot starts with a fresh fill, which no yarn has weakened
    back = 0.8 * (1.0 - 0.026483) * comes
    assert moved("R-01", CAUSTIC, EVAPORATOR, STORE) == pytest.approx(-back, rel=1e-4)
    steam = bought("R-01", "steam", EVAPORATOR, "evaporates the weak lye")
    assert steam == pytest.approx(0.42 * (2.224 - back), rel=1e-4)
    assert moved("R-01", CAUSTIC, EVAPORATOR, destination=DRAIN) == pytest.approx(back / 4.0, rel=1e-4)


@pytest.mark.parametrize(
    ("saving", "other", "less", "more"),
    [
        ("E-01", "Q-05", ("HYDRO-90", "FLAKE-98"), (POWER,)),
        ("G-01", "Q-02", ("INDIGO-94", "HYDRO-88", "water", "steam"), (POWER, "NITROGEN")),
        ("R-01", "C-01", ("LYE-50", "water"), ("steam",)),
    ],
)
def test_what_it_saves_and_what_it_takes(
    saving: str, other: str, less: tuple[str, ...], more: tuple[str, ...]
) -> None:
    one, two = result(saving).ledger, result(other).ledger
    assert all(one.used(name) < two.used(name) for name in less)
    assert all(one.used(name) > two.used(name) for name in more)
