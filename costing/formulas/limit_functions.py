"""Look-ups of a cell among the limits of regulations that were read; forms of others have no value."""

from __future__ import annotations

from typing import Any

from costing.formulas.cell_function import NUMBER, TEXT, CellFunction, Parameter
from costing.formulas.cell_reading import text_of
from costing.formulas.formula import PREFIX
from costing.formulas.functions import OWN_UNIT, in_asked_unit, known, record
from costing.quantities import InputError
from costing.quantities.wording import listed, meant
from costing.reference_data.discharge_limits import BETWEEN, LimitRow, limits_of, presets


def preset_limit(
    preset: Any = None, parameter: Any = None, statistic: Any = None, result_unit: Any = None
) -> float:
    """Limit of a regulation that was read; verify it with your permit."""
    where = PREFIX + "PRESET_LIMIT"
    row = _found(preset, parameter, statistic, where)
    if row.value is None:
        raise InputError(
            where, f"{row.parameter} of {row.preset} has no value here; type the value of your permit"
        )
    if row.direction == BETWEEN:
        raise InputError(where, f"{row.parameter} of {row.preset} is a range, {row.value_text()}")
    return in_asked_unit(row.value, row.unit, result_unit, where)


def preset_limit_text(preset: Any = None, parameter: Any = None, statistic: Any = None) -> str:
    """Limit of a regulation in words: value, statistic, point, section, edition, and what to verify."""
    return _found(preset, parameter, statistic, PREFIX + "PRESET_LIMIT_TEXT").text()


def _found(preset: Any, parameter: Any, statistic: Any, where: str) -> LimitRow:
    """The one limit that is meant, or a refusal that names those there are."""
    wanted = known(text_of(preset, "preset", where).lower(), presets(), where, "preset")
    rows = limits_of(wanted)
    named = text_of(parameter, "parameter", where)
    accepted = list(dict.fromkeys(row.parameter for row in rows))
    chosen = meant(named, accepted)
    if chosen is None:
        got = repr(named[:40]) if named else "empty"
        raise InputError(where, f"parameter is {got}; accepted is one of: {listed(accepted, named)}")
    of_parameter = [row for row in rows if row.parameter == chosen]
    told = text_of(statistic, "statistic", where).casefold()
    found = [row for row in of_parameter if not told or told in (row.statistic, row.statistic_text())]
    if len(found) != 1:
        accepted = list(dict.fromkeys(row.statistic_text() for row in of_parameter))
        got = repr(told[:40]) if told else "empty"
        raise InputError(where, f"statistic is {got}; accepted is one of: {', '.join(accepted)}")
    return found[0]


_PRESET = Parameter("preset", "name of the preset, such as us_410_g_bpt")
_PARAMETER = Parameter("parameter", "as the regulation has it, such as COD")
_STATISTIC = Parameter(
    "statistic",
    "such as any one day, or mean of 30 days; may be left out where the parameter has one only",
    optional=True,
)

FUNCTIONS: tuple[CellFunction, ...] = (
    record(
        preset_limit,
        NUMBER,
        "the value",
        (_PRESET, _PARAMETER, _STATISTIC, OWN_UNIT),
        "us_410_g_bpt",
        "COD",
        "mean of 30 days",
    ),
    record(
        preset_limit_text,
        TEXT,
        "limit, section, edition and note",
        (_PRESET, _PARAMETER, _STATISTIC),
        "de_annex_38",
        "sulfite",
    ),
)
