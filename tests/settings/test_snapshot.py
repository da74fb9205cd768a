"""A snapshot of an enquiry gives the same quote again, and what it does not know is refused by name."""

from __future__ import annotations

import copy
import dataclasses
from collections.abc import Callable
from typing import Any

import pytest

from costing.cost.difference import moves_between
from costing.quantities import InputError
from costing.report import work_out
from costing.report.table import priced
from costing.settings.inputs import inputs_of, with_inputs
from costing.settings.mill import Mill
from costing.settings.snapshot import from_text, restored, snapshot_of, to_text
from costing.settings.treatment_train import SewerCharge
from tests.report.demo import demo_mill

MILL = demo_mill()
KEPT = {
    *("materials", "styles", "recipes", "ranges", "routes", "enquiries", "costs", "assumptions", "spreads"),
    *("_drain", "_built", "depths", "calibrated"),
}
ONLY_OF_SHEETS = {
    *("recipe_steps", "range_steps", "places", "given", "without_rows", "refused"),
    *("offers", "rates"),  # the materials and costs have what counts of them on the day of the prices
    "_beside",  # of sheets on which no quote rests
    *("calibrations", "calibration"),  # what counts of them is in `calibrated`
    "quote_texts",  # say nothing that a quote rests on
}


@pytest.mark.parametrize("code", MILL.enquiries)
def test_every_demo_quote_comes_back_to_the_last_bit(code: str) -> None:
    enquiry = MILL.enquiries[code]
    text = to_text(snapshot_of(MILL, enquiry))
    mill, asked = restored(from_text(text))
    before, after = work_out(MILL, enquiry), work_out(mill, asked)
    assert after.quote == before.quote
    assert [stream.loads for stream in after.streams] == [stream.loads for stream in before.streams]
    assert to_text(snapshot_of(mill, asked)) == text
    assert inputs_of(mill, asked) == inputs_of(MILL, enquiry)
    assert mill.spreads == MILL.spreads


def test_a_price_of_effluent_by_strength_comes_back_with_its_point() -> None:
    mill = dataclasses.replace(MILL)
    mill.keep_drain(dataclasses.replace(MILL.drain, charges={}))
    enquiry = mill.enquiries[mill.drain.production[0].enquiry]
    plain = work_out(mill, enquiry).quote
    for place in [other.point for other in mill.drain.production if other.enquiry == enquiry.code]:
        mill.drain.charges[place] = SewerCharge(place, None, 0.001, 0.001, 0.001, 0.001, 0.0005, 0.0003)
    before = work_out(mill, enquiry)
    assert before.quote != plain
    after = work_out(*restored(from_text(to_text(snapshot_of(mill, enquiry)))))
    assert (after.quote, after.effluent) == (before.quote, before.effluent)


def test_a_drain_that_is_refused_stays_refused() -> None:
    mill = dataclasses.replace(MILL)
    mill.keep_drain(InputError("Permit!C4", "limit is empty", [InputError("Permit!C5", "unit is empty")]))
    back, _ = restored(snapshot_of(mill, mill.enquiries["Q-01"]))
    with pytest.raises(InputError) as told:
        _ = back.drain
    assert told.value.told() == [("Permit!C4", "limit is empty"), ("Permit!C5", "unit is empty")]


def test_what_the_mill_knows_is_kept_or_named_here() -> None:
    """A new part of the mill that a quote rests on must go into the snapshot: this says so."""
    assert {field.name for field in dataclasses.fields(Mill)} == KEPT | ONLY_OF_SHEETS


def test_defaults_that_were_taken_are_noted_and_stay_what_they_were() -> None:
    enquiry = MILL.enquiries["Q-01"]
    work_out(MILL, enquiry)
    document = snapshot_of(MILL, enquiry)
    assert document["defaults"]
    assert all("Q-02" not in owner for owner, _ in document["defaults"])
    mill, _ = restored(document)
    assert [list(taken) for taken in mill.assumptions] == document["defaults"]


def test_a_number_that_an_older_snapshot_lacks_is_the_typical_value_and_says_so() -> None:
    enquiry = MILL.enquiries["Q-01"]
    document = snapshot_of(MILL, enquiry)
    (dyeing,) = [step for step in document["steps"] if step["kind"] == "indigo"]
    del dyeing["sky_destruction"]
    mill, asked = restored(document)
    taken = [key for owner, key in mill.assumptions if owner.endswith(dyeing["name"])]
    assert "indigo.sky_destruction" in taken
    assert work_out(mill, asked).quote.cost_per_kg > 0.0


def test_a_snapshot_from_before_a_part_of_the_mill_came_gives_its_quote() -> None:
    before = dataclasses.replace(MILL, depths={}, spreads=[])
    enquiry = before.enquiries["Q-01"]
    document = snapshot_of(before, enquiry)
    for part in ("depths", "spreads"):
        del document[part]
    assert work_out(*restored(document)).quote == work_out(before, enquiry).quote
    assert moves_between(document, snapshot_of(before, enquiry), lambda *of: priced(*of)[1])[1] == []


def wrong(path: tuple[Any, ...], value: Any) -> Callable[[dict[str, Any]], None]:
    def change(document: dict[str, Any]) -> None:
        place = document
        for name in path[:-1]:
            place = place[name]
        if value is KeyError:
            del place[path[-1]]
        else:
            place[path[-1]] = value

    return change


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (wrong(("snapshot",), "of a cake"), "accepted is a snapshot of a quote"),
        (wrong(("format",), 2), "format 2; accepted is 1 to 1: a newer one needs a newer version"),
        (wrong(("format",), True), "format True"),
        (wrong(("range", "wheels"), 4.0), "snapshot, range: 'wheels' is not known to this version"),
        (wrong(("weather",), "wet"), "'weather' is not known to this version"),
        (wrong(("materials",), KeyError), "materials is missing"),
        (wrong(("style", "ends_density"), KeyError), "snapshot, style: ends density is missing"),
        (wrong(("steps", 0, "kind"), "dance"), "kind of step 'dance' is not known"),
        (wrong(("steps", 0), 7), "kind of step 7 is not known"),
        (wrong(("style", "width"), [1.0]), "snapshot, style, width: is \\[1.0\\]; accepted is a number"),
        (wrong(("style", "width"), 1e9), "width is"),
        (wrong(("style", "width"), "wide"), "width is 'wide', not a number"),
        (wrong(("costs", "price_date"), {"date": "today"}), "accepted is a date such as"),
        (wrong(("costs", "exchange_rates", "USD"), "dear"), "USD: is 'dear'; accepted is a number"),
        (wrong(("defaults",), [["one"]]), "no pair of texts"),
        (wrong(("drain",), {"sea": []}), "snapshot, drain: 'sea' is not known"),
    ],
)
def test_what_a_snapshot_may_not_hold_is_refused_by_name(change: Any, said: str) -> None:
    document = copy.deepcopy(snapshot_of(MILL, MILL.enquiries["Q-01"]))
    change(document)
    with pytest.raises(InputError, match=said):
        restored(document)


@pytest.mark.parametrize("text", ["", "[]", '{"snapshot": NaN}', "{"])
def test_a_text_that_is_no_snapshot_is_refused(text: str) -> None:
    with pytest.raises(InputError, match="accepted is"):
        from_text(text)


def test_a_changed_enquiry_is_kept_as_it_was_changed() -> None:
    enquiry = MILL.enquiries["Q-02"]
    places = inputs_of(MILL, enquiry)
    place = next(place for place in places if place.name == "bath_indigo")
    changed, asked = with_inputs(MILL, enquiry, {place: 1.01 * places[place]})
    mill, again = restored(snapshot_of(changed, asked))
    assert work_out(mill, again).quote == work_out(changed, asked).quote != work_out(MILL, enquiry).quote
