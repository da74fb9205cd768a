"""Which estimate answers a parameter of a permit: every row, and what a wrong table is refused for."""

from __future__ import annotations

from pathlib import Path

import pytest

from costing.quantities import InputError
from costing.reference_data.discharge_limits import VALUE, limit_rows
from costing.reference_data.permit_parameters import (
    COLUMNS,
    LOAD,
    SUPPLIER,
    VALUES,
    permit_parameter,
    permit_parameters,
    read_permit_parameters,
)

GOOD = 'COD,chemical oxygen demand,load,"COD, both",,'


def table(folder: Path, *lines: str) -> Path:
    (folder / "permit_parameters.csv").write_text(
        "\n".join([",".join(COLUMNS), *lines]) + "\n", encoding="utf-8"
    )
    return folder


def test_other_names_lead_to_the_same_row() -> None:
    assert permit_parameter("TDS") is permit_parameter("dissolved solids")
    assert permit_parameter("dithionite") is permit_parameter("Hydrosulfite")
    assert permit_parameter("vanadium") is None


def test_kinds_agree_with_the_limits_of_regulations() -> None:
    for row in limit_rows().values():
        known = permit_parameter(row.parameter)
        assert known is not None
        if known.kind in (LOAD, SUPPLIER):
            assert row.basis != VALUE, row.key
        elif known.kind in VALUES:
            assert row.basis == VALUE, row.key


def test_each_parameter_once() -> None:
    names = [item.name for item in permit_parameters()]
    assert len(names) == len(set(names))


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("BOD5,COD,load,BOD5,,", "the name 'COD' stands twice"),
        ("BOD5,,load,,,", "estimate is filled or empty"),
        ("AOX,,supplier,AOX,,", "estimate is filled or empty"),
        ("AOX,,bought,,,", "kind is 'bought'"),
    ],
)
def test_a_wrong_row_is_refused(tmp_path: Path, line: str, said: str) -> None:
    with pytest.raises(InputError, match=said) as refused:
        read_permit_parameters(table(tmp_path, GOOD, line))
    assert refused.value.where == "permit_parameters.csv row 3"
