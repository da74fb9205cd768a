"""The store: what stands there and at most would, and pairs that are told in few rows."""

from __future__ import annotations

from collections import Counter
from itertools import product
from random import Random

import pytest

from costing.purchasing.store import ApartGroup, grouped
from costing.purchasing.store_safety import CHEMISTRY, Apart, kept_apart
from tests.purchasing.example_store import batch, coming, on, planned
from tests.purchasing.test_store_safety import STORE


def pairs_of(groups: list[ApartGroup]) -> Counter[tuple[str, frozenset[str]]]:
    """Each pair of products that some rows tell, with its reason."""
    return Counter(
        (item.reason, frozenset(pair)) for item in groups for pair in product(item.first, item.second)
    )


def test_the_rows_hold_each_pair_once_and_no_other() -> None:
    pairs = kept_apart(STORE.values())
    assert pairs_of(grouped(pairs)) == Counter(
        (pair.reason, frozenset((pair.first, pair.second))) for pair in pairs
    )


def test_what_kills_stands_first_and_rules_of_transport_last() -> None:
    rows = grouped(kept_apart(STORE.values()))
    assert rows[0].reason.startswith("Acid on sulfide sets hydrogen sulfide free")
    kinds = [item.kind for item in rows]
    assert kinds == sorted(kinds)  # chemistry, rule of transport


def test_all_of_one_sort_against_all_of_another_is_one_row() -> None:
    acids, alkalis = ["ACETIC-80", "GLACIAL", "SULFURIC"], ["LYE", "FLAKE"]
    (row,) = grouped(kept_apart(STORE[code] for code in [*acids, *alkalis]))
    assert (row.first, row.second, row.pairs) == (tuple(alkalis), tuple(acids), 6)


@pytest.mark.parametrize("seed", range(40))
def test_pairs_of_any_shape_are_all_told(seed: int) -> None:
    draw = Random(seed)
    pairs = [
        Apart(one, other, CHEMISTRY, f"reason {draw.randrange(2)}", "derived", "", "")
        for at, one in enumerate("ABCDEFGH")
        for other in "ABCDEFGH"[at + 1 :]
        if draw.random() < 0.5
    ]
    assert pairs_of(grouped(pairs)) == Counter((pair.reason, frozenset(pair[:2])) for pair in pairs)


def test_the_largest_stock_is_that_of_a_morning_as_it_is_and_not_of_an_evening() -> None:
    # 100 kg of half the listed strength and 60 kg that comes on the second day, before its 80 kg are drawn.
    found = planned([10.0, 80.0, 0.0], (batch(100.0, strength=0.44),), (coming(60.0, 1),), ordered=False)
    assert found.most == pytest.approx(100.0 - 20.0 + 60.0)
    assert found.most_on == on(1)
    assert max(found.left) < found.most
