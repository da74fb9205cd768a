"""A loop range: the warp passes several times through one small box, with a sky after each pass.

It is given as a dyeing of as many dips in the volume of that one box. The kind of machine: mercer-loop.
"""

from __future__ import annotations

import math

import pytest

from costing.ledger.whole import Ledger
from tests.process.test_boxes import opened

PASSES, VOLUME = 4, 1500.0
BATH = {"indigo_on_yarn": 1.2, "dips": PASSES, "bath_hydrosulfite": 2.0}
BOX = {
    "bath_volume": VOLUME,
    "bath_surface": 1.5,
    "exchange": 90.0,
    "sky_destruction": 80.0,
    "pick_up": 0.7,
    "pick_up_last": 0.75,
}


def loop(boxes: int, volume: float = VOLUME) -> Ledger:
    return opened(
        recipe={"indigo dyeing": BATH},
        machine={"indigo dyeing": {**BOX, "boxes": boxes, "bath_volume": volume}},
    )


def test_a_loop_is_as_many_boxes_in_a_common_liquor_of_its_volume() -> None:
    assert loop(PASSES).postings == loop(boxes=9).postings


def test_hydrosulfite_of_the_skies_pass_by_pass() -> None:
    """Each pass brings 90 % of the liquor on the yarn to 2 g/L, each sky destroys 80 % of what is on it."""
    on_yarn, lost = 0.0, 0.0
    for number in range(PASSES):
        on_yarn += 0.9 * (2.0 - on_yarn)
        if number < PASSES - 1:
            lost += 0.7 * 0.8 * on_yarn
            on_yarn *= 0.2
    lost += 0.75 * on_yarn  # the last sky goes on until the rinse, and destroys all
    feeds = loop(PASSES).run.feeds["indigo dyeing"]
    in_skies = sum(amount for cause, amount in feeds.hydrosulfite.items() if "sk" in cause)
    assert in_skies == pytest.approx(lost / 1000.0, rel=1e-9)


def test_a_small_box_fills_with_salt_sooner() -> None:
    """Behind m kg that take w L/kg along: 1 - exp(-m w / V) of the way from the fill to the steady state."""
    for volume in (VOLUME, 8 * VOLUME):
        ledger = loop(PASSES, volume)
        content, feeds = ledger.run.contents["indigo dyeing"], ledger.run.feeds["indigo dyeing"]
        start, end = (part["sodium_carbonate"] for part in (content.start, content.end))
        gone = feeds.bath_on_yarn + feeds.overflow
        fading = math.exp(-ledger.plan.grey_mass_dyed * gone / volume)
        steady = (end - start * fading) / (1.0 - fading)
        # all of the carbonate that the skies but the last make leaves with the liquor in the end
        made = 0.3e-3 * 105.99 / 44.01 * (1 - 1 / PASSES)
        assert steady == pytest.approx(made / gone, rel=1e-3)
        assert 0.0 < start < end < steady
