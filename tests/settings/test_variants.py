"""Enquiries made on the fly from another."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costing.quantities import InputError
from costing.settings.variants import most_like, variants
from tests.report.demo import demo_mill


def test_another_recipe_stands_beside_the_recipe_of_the_enquiry() -> None:
    mill = demo_mill()
    like = mill.enquiries["Q-02"]
    first, second = variants(mill, like, recipes=["DARK-BOTTOM"])
    assert (first.code, second.code) == ("DARK-POWDER", "DARK-BOTTOM")
    assert replace(first, code="Q-02", description=like.description) == like
    assert replace(second, recipe="DARK-POWDER", code="Q-02", description=like.description) == like


def test_recipes_on_ranges_give_every_pair_a_code_of_its_own() -> None:
    mill = demo_mill()
    made = variants(
        mill,
        mill.enquiries["Q-02"],
        ["D-1350"],
        ["DARK-POWDER", "DARK-LEAN"],
        ["ROPE-A", "ROPE-B"],
        lengths=[9000.0],
    )
    assert [item.code for item in made] == [
        "DARK-POWDER, ROPE-A",
        "DARK-POWDER, ROPE-B",
        "DARK-LEAN, ROPE-A",
        "DARK-LEAN, ROPE-B",
    ]
    assert {(item.style, item.order_length, item.stoppages) for item in made} == {("D-1350", 9000.0, 4.0)}


def test_one_set_runs_on_a_sheet_range() -> None:
    mill = demo_mill()
    made = variants(mill, mill.enquiries["Q-02"], recipes=["DARK-POWDER"], ranges=["ROPE-A", "SHEET-C"])
    assert [item.sets_side_by_side for item in made] == [2.0, 1.0]


def test_two_lengths_are_two_orders() -> None:
    mill = demo_mill()
    made = variants(mill, mill.enquiries["Q-02"], recipes=["DARK-BOTTOM"], lengths=[8000.0, 40000.0, 8000.0])
    assert [(item.code, item.recipe, item.order_length) for item in made] == [
        ("8,000 m", "DARK-BOTTOM", 8000.0),
        ("40,000 m", "DARK-BOTTOM", 40000.0),
    ]


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ({"recipes": ["NONE"]}, r"--recipe: recipe 'NONE' is not in the book; there are: DARK-POWDER"),
        ({"ranges": ["NONE"]}, r"--range: range 'NONE' is not in the book"),
        ({"styles": ["NONE"]}, r"--style: style 'NONE' is not in the book"),
        ({"recipes": ["DARK-POWDER"]}, r"only D-1200 with DARK-POWDER on ROPE-A is named"),
        ({"lengths": [500.0]}, r"nothing to compare it with; accepted are two recipes"),
    ],
)
def test_what_is_not_there_or_stands_alone_is_refused(asked: dict[str, object], said: str) -> None:
    mill = demo_mill()
    with pytest.raises(InputError, match=said):
        variants(mill, mill.enquiries["Q-02"], **asked)  # type: ignore[arg-type]


def test_the_lot_is_taken_from_the_enquiry_most_like_what_is_asked() -> None:
    mill = demo_mill()
    assert most_like(mill, ["D-1200"], ["DARK-POWDER", "DARK-BOTTOM"], ["ROPE-A"], [40000.0]).code == "Q-02"
    assert most_like(mill, ["D-1250-B"]).code == "Q-09"
    assert most_like(mill).code == "Q-01"
