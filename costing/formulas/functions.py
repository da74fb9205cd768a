"""Functions of a cell beside the equations: why an error, units, cautions, sources, what runs here."""

from __future__ import annotations

import sys
from collections.abc import Mapping
from typing import Any, Callable, TypeVar

import costing
from costing.book.quantity_cell import house_of, in_unit
from costing.construction.sets import sublots
from costing.effluent.oxygen_demand import oxygen_demand_of_formula
from costing.formulas.cell_formula import RESULT_UNIT
from costing.formulas.cell_function import ARRAY, NUMBER, TEXT, VARARGS, CellFunction, Parameter
from costing.formulas.cell_reading import AMOUNT_RATIO, given, is_empty, single, text_of, tidy, unit_of
from costing.formulas.formula import PREFIX
from costing.process.chemistry import molar_mass_of_formula
from costing.process.hydrosulfite import hydrosulfite_behind_dips
from costing.quantities import QUANTITIES, InputError, check, describe, quantity
from costing.quantities.units import canonical, convert
from costing.reference_data import (
    Default,
    cautions,
    cautions_of,
    defaults,
    fingerprint,
    materials,
    meaning_of,
)
from costing.reference_data import published_ranges as ranges
from costing.reference_data.store_safety import transport_entry

TITLE = "Look-ups, sets and the program"
# Libraries that a formula never needs, and that a spreadsheet program's own Python need not have.
HEAVY = ("numpy", "pandas", "pint", "openpyxl", "click", "xlwings")
AMMONIUM, NITRATE = "ammonium", "nitrate"

Row = TypeVar("Row")


def reason_for(name: Any = None, *cells: Any) -> str:
    """Why a formula with these arguments is an error; an empty text where it is none."""
    from costing.formulas.cell_calls import reason  # it knows every function, this one too

    wanted = text_of(name, "name", PREFIX + "REASON_FOR")
    if not wanted:
        raise InputError(PREFIX + "REASON_FOR", "name is empty; accepted is the name of a formula")
    return reason(wanted, cells)


def converted_value(value: Any = None, unit: Any = None, result_unit: Any = None) -> float:
    """Read a number in one unit in another one."""
    where = PREFIX + "CONVERTED_VALUE"
    from_unit, to_unit = (
        _unit(cell, what, where) for cell, what in ((unit, "unit"), (result_unit, "result unit"))
    )
    if (AMOUNT_RATIO in (from_unit, to_unit)) and from_unit != to_unit:
        raise InputError(where, f"a ratio of amounts, {AMOUNT_RATIO}, is read in no other unit")
    number = _number(value, "value", where)
    try:
        return convert(number, from_unit, to_unit)
    except ValueError as error:
        raise InputError(where, str(error)) from None


def caution_for(key: Any = None) -> str:
    """The usual cautions for a material of the list or a group of materials, and to whom they defer."""
    where = PREFIX + "CAUTION_FOR"
    name = text_of(key, "key", where).lower().replace(" ", "_")
    form = materials().get(name)
    if not form and name not in cautions():
        # A substance has the same caution in all its forms; a role may have more than one.
        meant = cautions_of(meaning_of(name, "key", where))
        name = meant[0] if len(meant) == 1 else name
    key_of_caution = form.caution if form else known(name, {**materials(), **cautions()}, where)
    found = cautions()[key_of_caution]
    text = f"{form.name if form else found.name}: {found.caution} {found.defer}"
    entry = transport_entry(form.substance, form.strength, form.remainder, form.alkali) if form else None
    if entry and entry.un_number:
        text += f" Transport: {entry.un_number}, class {entry.class_text} ({entry.source})."
    return text


def default_low(key: Any = None, result_unit: Any = None) -> float:
    """Low end of the band of a default."""
    return _default_in("LOW", key, result_unit, lambda found: found.low)


def default_typical(key: Any = None, result_unit: Any = None) -> float:
    """Typical value of a default: what an empty setting takes."""
    return _default_in("TYPICAL", key, result_unit, lambda found: found.value)


def default_high(key: Any = None, result_unit: Any = None) -> float:
    """High end of the band of a default."""
    return _default_in("HIGH", key, result_unit, lambda found: found.high)


def default_source(key: Any = None) -> str:
    """Value and band of a default, where they come from, and what else a reader should know."""
    where = PREFIX + "DEFAULT_SOURCE"
    found = _row(defaults(), text_of(key, "key", where), where)
    contested = "contested, so measure it" if found.contested else ""
    return "; ".join(filter(None, (found.text(), contested, found.source, found.locator, found.note)))


def molar_mass(formula: Any = None, result_unit: Any = None) -> float:
    """Mass of one mol of a substance, from its formula."""
    where = PREFIX + "MOLAR_MASS"
    return _by_formula(molar_mass_of_formula, formula, "molar_mass", result_unit, where)


def theoretical_oxygen_demand(formula: Any = None, nitrogen: Any = None, result_unit: Any = None) -> float:
    """Oxygen that the full oxidation of a substance takes, from its formula."""
    where = PREFIX + "THEORETICAL_OXYGEN_DEMAND"
    ends = text_of(nitrogen, "nitrogen", where).lower() or AMMONIUM
    if ends not in (AMMONIUM, NITRATE):
        raise InputError(where, f"nitrogen is {ends!r}; accepted is {AMMONIUM} or {NITRATE}")

    def demand(text: str) -> float:
        return oxygen_demand_of_formula(text, ends == NITRATE)

    return _by_formula(demand, formula, "oxygen_demand", result_unit, where)


def published_low(key: Any = None, result_unit: Any = None) -> float:
    """Low end of a range to compare a result with."""
    where = PREFIX + "PUBLISHED_LOW"
    found = _row(ranges(), text_of(key, "key", where), where)
    return in_asked_unit(found.low, found.unit, result_unit, where)


def published_high(key: Any = None, result_unit: Any = None) -> float:
    """High end of a range to compare a result with."""
    where = PREFIX + "PUBLISHED_HIGH"
    found = _row(ranges(), text_of(key, "key", where), where)
    return in_asked_unit(found.high, found.unit, result_unit, where)


def published_range(key: Any = None) -> str:
    """A range to compare a result with, and its source; published only where that is a publication."""
    where = PREFIX + "PUBLISHED_RANGE"
    found = _row(ranges(), text_of(key, "key", where), where)
    span = f"{found.what}: {found.low:g} to {found.high:g} {found.unit}".rstrip()
    return "; ".join(filter(None, (span, found.source, found.locator, found.note)))


def program_version() -> str:
    """Version of the program."""
    return costing.__version__


def tables_fingerprint() -> str:
    """A short mark of the content of all reference tables: one other figure, another mark."""
    return fingerprint()


def program_interpreter() -> str:
    """The Python that calculates the formulas, and the larger libraries that it has loaded."""
    loaded = [name for name in HEAVY if name in sys.modules]
    return f"Python {sys.version.split()[0]}; loaded beside it: {', '.join(loaded) or 'nothing'}"


def sublots_of_set(
    set_length: Any = None, sublot_length: Any = None, result_unit: Any = None
) -> tuple[tuple[Any, ...], ...]:
    """Lettered sub-lots of a long set, from the top of the tub: letter, place in the tub, length."""
    where = PREFIX + "SUBLOTS_OF_SET"
    total, each = _house("set_length", set_length, where), _house("sublot_length", sublot_length, where)
    item = quantity("sublot_length")
    unit = unit_of(item, text_of(result_unit, "result unit", where) or item.usual, where)
    return tuple(
        (part.letter, part.position, convert(part.length, item.unit, unit)) for part in sublots(total, each)
    )


def hydrosulfite_by_dip(
    dips: Any = None,
    exchange: Any = None,
    sky_destruction: Any = None,
    bath_hydrosulfite: Any = None,
    result_unit: Any = None,
) -> tuple[tuple[float, float], ...]:
    """Hydrosulfite in the liquor on the yarn behind each dip, wet on wet: dip, concentration."""
    where = PREFIX + "HYDROSULFITE_BY_DIP"
    item = quantity("bath_hydrosulfite")
    unit = unit_of(item, text_of(result_unit, "result unit", where) or item.usual, where)
    behind = hydrosulfite_behind_dips(
        _house("dips", dips, where),
        _house("exchange", exchange, where),
        _house("sky_destruction", sky_destruction, where),
        _house("bath_hydrosulfite", bath_hydrosulfite, where),
    )
    return tuple((float(dip), convert(value, item.unit, unit)) for dip, value in enumerate(behind, start=1))


def _house(name: str, cell: Any, where: str) -> float:
    """An argument in its house unit, checked."""
    item = quantity(name)
    found = given(item, cell, where)
    if found is None:
        return check(name, None, where)
    number, unit = found
    return check(name, house_of(item, number, unit or item.usual), where)


def _unit(cell: Any, what: str, where: str) -> str:
    text = text_of(cell, what, where)
    try:
        return canonical(tidy(text))
    except KeyError:
        raise InputError(where, f"{what} is {text[:40]!r}, which is not known") from None


def _number(cell: Any, what: str, where: str) -> float:
    found = single(cell, what, where)
    if isinstance(found, bool) or not isinstance(found, (int, float)):
        got = "empty" if is_empty(found) else repr(found)
        raise InputError(where, f"{what} is {got}; accepted is a number, with its unit in a cell of its own")
    return float(found)


def _row(table: Mapping[str, Row], key: str, where: str) -> Row:
    """A row of a table by its key, in any case."""
    return table[known(key.lower(), table, where)]


def known(key: str, table: Mapping[str, object], where: str, what: str = "key") -> str:
    """The key, if the table has it."""
    if key in table:
        return key
    import difflib  # only a wrong key pays for it

    holding = [name for name in table if key and key in name]
    near = holding[:3] or difflib.get_close_matches(key, table, n=3, cutoff=0.6)
    hint = f"near are: {', '.join(near)}" if near else f"accepted is for example {next(iter(table))}"
    got = f"{what} is {key[:40]!r}, which the table does not have" if key else f"{what} is empty"
    raise InputError(where, f"{got}; {hint}")


def _default_in(which: str, key: Any, result_unit: Any, part: Callable[[Default], float]) -> float:
    where = f"{PREFIX}DEFAULT_{which}"
    found = _row(defaults(), text_of(key, "key", where), where)
    item = QUANTITIES[found.quantity]
    unit = unit_of(item, text_of(result_unit, "result unit", where) or item.usual, where)
    return in_unit(item, part(found), unit)


def in_asked_unit(value: float, unit: str, result_unit: Any, where: str) -> float:
    """A figure of a table in the unit that a cell asks for."""
    wanted = _unit(result_unit, "result unit", where) or unit
    try:
        return convert(value, unit, wanted)
    except ValueError as error:
        raise InputError(where, str(error)) from None


def _by_formula(
    function: Callable[[str], float], formula: Any, result: str, result_unit: Any, where: str
) -> float:
    """A figure that follows from the formula of a substance."""
    text = text_of(formula, "formula", where)
    if not text:
        raise InputError(where, "formula is empty; accepted is a formula such as NaOH or Na2S.9H2O")
    item = quantity(result)
    unit = unit_of(item, text_of(result_unit, "result unit", where) or item.usual, where)
    try:
        return convert(function(text), item.unit, unit)
    except (ValueError, ArithmeticError) as error:
        raise InputError(where, f"formula: {error}") from None


def unit_help(usual: str) -> Parameter:
    """The last argument of a look-up that gives a number."""
    return Parameter(RESULT_UNIT, f"unit of the result; left out: {usual}", optional=True)


def _of(name: str) -> Parameter:
    item = quantity(name)
    return Parameter(name, f"{item.help}{f' [{item.usual}]' if item.usual else ''}, {describe(item)}")


def record(
    function: Callable[..., Any], result: str, gives: str, parameters: tuple[Parameter, ...], *example: Any
) -> CellFunction:
    """The record of a look-up: its name and its help are those of the function."""
    summary = (function.__doc__ or "").split("\n", 1)[0]
    return CellFunction(
        PREFIX + function.__name__.upper(), function, parameters, result, gives, TITLE, summary, example
    )


_DEFAULT_KEY = Parameter("key", "group and quantity, such as indigo.bath_hydrosulfite")
_RANGE_KEY = Parameter("key", "key of the range, such as water_rope_usual")
_SUBSTANCE = Parameter("formula", "element symbols and numbers, such as NaOH or Na2S.9H2O")
OWN_UNIT = unit_help("that of the table")
_LENGTH = quantity("sublot_length").usual

FUNCTIONS: tuple[CellFunction, ...] = (
    record(
        reason_for,
        TEXT,
        "one line, or an empty text",
        (
            Parameter("name", "name of the formula, such as WARP_CARRIED_BY_LIQUOR"),
            Parameter("arguments", "its arguments, as that formula has them", VARARGS, optional=True),
        ),
        "WARP_CARRIED_BY_LIQUOR",
        0.75,
        "1.5 g/m2",
    ),
    record(
        converted_value,
        NUMBER,
        "the value in the other unit",
        (
            Parameter("value", "a number"),
            Parameter("unit", "its unit, such as Ne"),
            Parameter(RESULT_UNIT, "unit of the result, such as tex"),
        ),
        7.0,
        "Ne",
        "tex",
    ),
    record(
        caution_for,
        TEXT,
        "cautions, to be read beside the supplier's safety data sheet",
        (Parameter("key", "material or group of materials, such as caustic_lye_50 or hydrosulfite"),),
        "caustic_lye_50",
    ),
    *(
        record(function, NUMBER, "the value", (_DEFAULT_KEY, OWN_UNIT), "indigo.bath_hydrosulfite")
        for function in (default_low, default_typical, default_high)
    ),
    record(
        default_source,
        TEXT,
        "value, band, source and note",
        (_DEFAULT_KEY,),
        "indigo.hydrosulfite_per_oxygen",
    ),
    record(molar_mass, NUMBER, "molar mass [g/mol]", (_SUBSTANCE, unit_help("g/mol")), "C16H10N2O2"),
    record(
        theoretical_oxygen_demand,
        NUMBER,
        "oxygen per mass of the substance [kg/kg]",
        (
            _SUBSTANCE,
            Parameter(
                "nitrogen", f"what nitrogen ends as, {AMMONIUM} or {NITRATE}; left out: {AMMONIUM}"
            )._replace(optional=True),
            unit_help("kg/kg"),
        ),
        "Na2S2O4",
    ),
    *(
        record(function, NUMBER, "the value", (_RANGE_KEY, OWN_UNIT), "water_rope_usual")
        for function in (published_low, published_high)
    ),
    record(published_range, TEXT, "range, source and note", (_RANGE_KEY,), "water_rope_usual"),
    record(
        sublots_of_set,
        ARRAY,
        f"rows of letter, place in the tub, length [{_LENGTH}]",
        (_of("set_length"), _of("sublot_length"), unit_help(_LENGTH)),
        25000.0,
        10000.0,
    ),
    record(
        hydrosulfite_by_dip,
        ARRAY,
        "rows of dip, concentration [g/L]",
        (
            *(_of(name) for name in ("dips", "exchange", "sky_destruction", "bath_hydrosulfite")),
            unit_help("g/L"),
        ),
        6.0,
        80.0,
        90.0,
        2.0,
    ),
    record(program_version, TEXT, "version", ()),
    record(tables_fingerprint, TEXT, "twelve letters and figures", ()),
    record(program_interpreter, TEXT, "one line", ()),
)
