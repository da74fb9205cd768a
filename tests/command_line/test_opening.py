"""What a word after --of means: a whole name, of what is used before what drains."""

from __future__ import annotations

import dataclasses

import pytest

from costing.cost.quote import GROUPS, SECONDS
from costing.effluent.factors import PARAMETERS
from costing.front_ends.opening import open_figure
from costing.quantities import InputError
from costing.report import Table, work_out
from costing.report.drain import FIGURES
from tests.report.demo import CODES, demo_mill, demo_result

DRAINED = [name for name in FIGURES if name != "hydrosulfite"]


def opened(code: str, figure: str, step: str | None = None, stream: str | None = None) -> Table:
    return open_figure(demo_mill(), demo_result(code), figure, step, stream)[0]


def materials(table: Table) -> set[str]:
    return {row[1] for row in table.rows[:-1]}


@pytest.mark.parametrize("code", CODES)
@pytest.mark.parametrize(
    "group", [group for group in GROUPS if group not in ("size", "effluent", "overhead", SECONDS)]
)
def test_a_group_opens_into_what_the_quote_prices_in_it(code: str, group: str) -> None:
    table = opened(code, group)
    priced = [line for line in demo_result(code).quote.lines if line.group == group]
    scale = {"g/kg": 1000.0, "h/t": 1000.0}.get(table.columns[3].unit, 1.0)
    assert priced
    assert materials(table) == {line.material for line in priced}
    assert table.rows[-1][3] == pytest.approx(scale * sum(line.amount for line in priced), rel=1e-12)


@pytest.mark.parametrize(("code", "group"), [("Q-01", "effluent"), ("Q-01", "overhead"), ("L-01", SECONDS)])
def test_what_is_charged_opens_into_money(code: str, group: str) -> None:
    table = opened(code, group)
    assert table.key == "cost"
    assert table.rows[-1][3] == pytest.approx(demo_result(code).quote.by("group")[group,], rel=1e-12)


@pytest.mark.parametrize("code", CODES)
def test_every_material_and_utility_opens_by_its_code(code: str) -> None:
    lines = demo_result(code).quote.lines
    for name in {line.material for line in lines if line.group not in ("effluent", "overhead")}:
        assert materials(opened(code, name)) == {name}
        assert materials(opened(code, name.lower())) == {name}


@pytest.mark.parametrize("code", CODES)
@pytest.mark.parametrize("name", DRAINED)
def test_a_parameter_opens_the_drain(code: str, name: str) -> None:
    for word in (name, name.upper(), f"drain {name}"):
        table = opened(code, word)
        assert table.key == "drain"
        assert table.title.lower().startswith(name.lower())


def test_a_part_of_a_name_is_no_name() -> None:
    """Sulfite is the end of hydrosulfite, and soda of caustic soda and the begin of soda ash."""
    with pytest.raises(
        InputError, match="'soda', which may be more than one thing; accepted is one of: sodium h"
    ):
        opened("Q-01", "soda")
    for word in ("sulfit", "hydro", "sodium hydro", "HYDRO", "acid", "drains", ""):
        with pytest.raises(InputError, match="is nothing that enquiry Q-01 uses or drains") as refused:
            opened("Q-01", word)
        for known in ("cost", "hydro-88", "caustic", "range time", "flow", "alkalinity", *PARAMETERS):
            assert known in str(refused.value)


@pytest.mark.parametrize(
    ("word", "code"),
    [
        ("hydrosulfite", "HYDRO-88"),
        ("Sodium_Hydrosulfite", "HYDRO-88"),
        ("sodium hydrosulfite (dithionite)", "HYDRO-88"),
        ("reductant", "HYDRO-88"),
        ("caustic soda", "LYE-50"),
        ("Lye", "LYE-50"),
        ("sodium hydrosulphite", "HYDRO-88"),
        ("hydros", "HYDRO-88"),
        ("electricity", "electric energy"),
        ("alkali", "LYE-50"),
        ("sequestrant", "SEQ-40"),
        ("indigo", "INDIGO-94"),
        ("power", "electric energy"),
    ],
)
def test_roles_groups_and_substances_are_whole_names(word: str, code: str) -> None:
    assert materials(opened("Q-01", word)) == {code}


def test_reduced_indigo_is_indigo() -> None:
    assert materials(opened("Q-06", "indigo")) == {"INDIGO-REDUCED-40"}
    assert materials(opened("Q-06", "leuco indigo")) == {"INDIGO-REDUCED-40"}


def test_drain_in_front_always_means_the_drain() -> None:
    assert opened("Q-01", "drain hydrosulfite").key == "drain"
    for word in ("drain caustic", "drain steam", "drain cost"):
        with pytest.raises(InputError, match="is nothing that"):
            opened("Q-01", word)


def test_a_code_comes_before_a_parameter() -> None:
    """A mill may call its yarn what it likes."""
    mill = demo_mill()
    style = mill.styles[mill.enquiries["Q-01"].style]
    yarn = dataclasses.replace(mill.materials[style.weft_yarn], code="Sodium")
    own = dataclasses.replace(
        mill,
        materials={**mill.materials, "Sodium": yarn},
        styles={**mill.styles, style.code: dataclasses.replace(style, weft_yarn="Sodium")},
    )
    result = work_out(own, own.enquiries["Q-01"])
    assert materials(open_figure(own, result, "sodium")[0]) == {"Sodium"}
    assert open_figure(own, result, "drain sodium")[0].key == "drain"


@pytest.mark.parametrize(
    ("short", "long"), [("sulfur", "sulfur, all forms"), ("nitrogen", "nitrogen of dye and chemicals")]
)
def test_the_first_word_of_a_parameter_is_enough_where_it_is_one_only(short: str, long: str) -> None:
    result = demo_result("Q-01")
    first, second = (open_figure(demo_mill(), result, word)[0] for word in (short, long))
    assert first.rows == second.rows
