"""Defaults of the table belong to a setting, and settings are refused in words."""

from __future__ import annotations

from dataclasses import fields

import pytest

from costing.book.layout import accepted_words
from costing.quantities import InputError
from costing.reference_data import defaults
from costing.settings.building import Assumption, Entry, build
from costing.settings.discharge_point import DischargePoint
from costing.settings.mill import Enquiry, Range
from costing.settings.order_book import Planning
from costing.settings.quality import ShadeDepth
from costing.settings.rinse_step import Rinse
from costing.settings.steps import STEP_KINDS
from costing.settings.stock import PurchaseTerms
from costing.settings.style import Style

# Facts that no setting holds: read by the discharge view, or points of a curve for the reader.
FACTS = {
    "general.recovery",
    "indigo.recovery",
    "scour.oxygen_demand",
    "drying.moisture_in",
    "indigo.prereduced",
    "yarn.commercial_regain",
    "train.residence_time",
    "train.sludge_yield",
    "train.volatile_share",
    "train.cake_dryness",
}


def settings_of(group: str) -> set[str]:
    names: set[str] = set()
    for kind in (Range, Enquiry, Style, DischargePoint, ShadeDepth, Planning, PurchaseTerms):
        if group in kind.GROUPS:
            names |= {field.name for field in fields(kind)}
    if group in STEP_KINDS:
        names |= {field.name for field in fields(STEP_KINDS[group])}
    return names


@pytest.mark.parametrize("key", [key for key in defaults() if key not in FACTS and key.count(".") == 1])
def test_every_default_is_the_default_of_a_setting(key: str) -> None:
    group, _, name = key.partition(".")
    dye_class, _, kind = group.partition(" ")
    if dye_class in (*accepted_words("dye_classes"), "glucose") and group not in STEP_KINDS:
        group = kind
    assert name in settings_of(group), f"{key} is read by nothing"


def test_empty_takes_the_typical_value_and_says_so() -> None:
    taken: dict[Assumption, None] = {}
    entries = {"rinse_water": Entry(6.0), "rinse_feed": Entry("counter-current")}
    rinse = build(Rinse, "a rinse", ("rinse",), entries, taken, {"name": "rinse"})
    assert rinse.exchange == pytest.approx(0.55)
    assert Assumption("a rinse", "rinse.exchange") in taken


@pytest.mark.parametrize(
    ("name", "value", "words"),
    [
        ("exchange", 1.5, "exchange is 150 %, accepted is 5 to 100 %; type 1.5 % or 0.015"),
        ("pick_up", "much", "pick up is 'much', not a number"),
        ("boxes", 2.5, "boxes is 2.5; accepted is a whole number"),
        ("rinse_feed", "sideways", "rinse feed is 'sideways'; accepted is one of: counter-current"),
        ("rinse_temperature", float("nan"), "rinse temperature is not a finite number"),
        ("power", -1.0, "power is -1 kW, accepted is 0 to 5000 kW"),
        ("power", True, "power is True, not a number"),
    ],
)
def test_what_makes_no_sense_is_refused_where_it_stands(name: str, value: object, words: str) -> None:
    entries = {
        "rinse_water": Entry(6.0),
        "rinse_feed": Entry("counter-current"),
        name: Entry(value, "Ranges!H9"),
    }
    with pytest.raises(InputError) as refused:
        build(Rinse, "a rinse", ("rinse",), entries, {}, {"name": "rinse"})
    assert str(refused.value).startswith("Ranges!H9: ")
    assert words in str(refused.value)
