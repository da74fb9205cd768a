"""Tables of why two quotes differ."""

from __future__ import annotations

import copy
import dataclasses
from decimal import Decimal
from typing import Any

from costing.cost.difference import moves_between
from costing.quantities import InputError
from costing.report.difference import TOGETHER, Side, difference_tables, quote_alone
from costing.report.table import Table
from costing.settings.mill import Enquiry, Mill
from costing.settings.snapshot import Document, restored, snapshot_of
from costing.settings.treatment_train import SewerCharge
from tests.report.demo import demo_mill

MILL = demo_mill()
STEP = Decimal("0.001")


def explained(
    before: Document, after: Document, priced: Any = quote_alone, brief: bool = False
) -> list[Table]:
    sides = [
        Side(name, document, quote_alone(*restored(document)))
        for name, document in (("old", before), ("new", after))
    ]
    return difference_tables(sides[0], sides[1], moves_between(before, after, priced), STEP, brief)


def money(value: float) -> Decimal:
    return Decimal(str(value)).quantize(STEP)


def test_a_sewer_charge_that_rises_is_a_price_effect_that_names_its_terms() -> None:
    enquiry = MILL.enquiries[MILL.drain.production[0].enquiry]
    (point,) = {row.point for row in MILL.drain.production if row.enquiry == enquiry.code}
    documents: list[Document] = []
    for charge in (0.002, 0.003):
        mill = dataclasses.replace(MILL)
        mill.keep_drain(dataclasses.replace(MILL.drain, charges={point: SewerCharge(point, charge)}))
        documents.append(snapshot_of(mill, enquiry))
    effects, inputs, lines = explained(documents[0], documents[1])
    assert [row[0] for row in effects.rows] == ["old", "Price effect", "new", "difference"]
    assert inputs.rows[0][1:6] == ["discharge charges 1", "effluent charge", 2.0, 3.0, "EUR/m3"]
    assert {row[4] for row in lines.rows} == {"effluent", "overhead", "margin"}


def test_what_a_screen_shows_of_long_tables_adds_up_too() -> None:
    before, after = (snapshot_of(MILL, MILL.enquiries[code]) for code in ("Q-02", "P-03"))
    whole, brief = explained(before, after), explained(before, after, brief=True)
    difference = whole[0].rows[-1][1:3]
    for number in (1, 2):
        assert len(brief[number].rows) < len(whole[number].rows)
        assert brief[number].rows[-1][0] == f"{len(whole[number].rows) - len(brief[number].rows) + 1} more"
        for table in (whole[number], brief[number]):
            for place in (0, 1):
                assert sum(money(row[place - 2]) for row in table.rows) == money(difference[place])


def test_what_cannot_be_parted_is_said() -> None:
    before = snapshot_of(MILL, MILL.enquiries["Q-02"])
    after = copy.deepcopy(before)
    after["steps"][0]["power"] += 20.0
    after["enquiry"]["stoppages"] += 4.0

    def both_or_none(mill: Mill, enquiry: Enquiry) -> Any:
        power = mill.steps_of(mill.recipe(enquiry.recipe), mill.range(enquiry.range))[0].power
        if (power == after["steps"][0]["power"]) != (enquiry.stoppages == after["enquiry"]["stoppages"]):
            raise InputError("range", "refused")
        return quote_alone(mill, enquiry)

    effects, inputs, _ = explained(before, after, both_or_none)
    assert effects.rows[1][0] == "Lot and usage effect"
    assert effects.rows[1][3:] == [2, TOGETHER]
    assert [row[2] for row in inputs.rows] == ["stoppages", "power"]
    assert inputs.rows[1][-2:] == [None, None]
