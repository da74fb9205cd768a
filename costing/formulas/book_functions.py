"""Functions that ask a mill's book: its tables, and single figures of use, cost and discharge."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from typing import Any, Callable

from costing.book.cells import DAY_0
from costing.book.layout import sheet_names
from costing.book.quantity_cell import is_empty
from costing.cost.quote import group_of
from costing.effluent.factors import PARAMETERS
from costing.formulas.cell_function import ARRAY, BLOCK, NUMBER, TEXT, CellFunction, Parameter
from costing.formulas.cell_reading import single, text_of, tidy
from costing.formulas.formula import PREFIX
from costing.formulas.opened_book import OpenedBook, kept_book, open_book
from costing.ledger.plan import plan_cloth, plan_order
from costing.ledger.route_run import run_route
from costing.ledger.whole import is_bought
from costing.process.postings import POWER, Line
from costing.process.surroundings import Lot, Surroundings
from costing.quantities import InputError, check
from costing.quantities.units import canonical, convert
from costing.report import TABLES, Result, Table
from costing.settings.mill import Enquiry, Mill, Range
from costing.settings.style import Style

TITLE = "The mill's book"
GREY_KG = "kg of grey yarn"
UTILITIES = {"water": ("water", "L/kg"), "steam": ("steam", "kg/kg"), "power": (POWER, "kWh/kg")}
ALL_STREAMS = "all streams"
MOST_ROWS = 100_000


def opened_book(*sheets: Any) -> str:
    """Read the mill's book from its sheets; the other functions of this group take the text it gives."""
    where = PREFIX + "OPENED_BOOK"
    names = sheet_names()
    given = [*sheets, *[None] * (len(names) - len(sheets))]
    for name, block in zip(names, given):
        if not isinstance(block, (list, tuple)):
            raise InputError(where, f"the sheet {name!r} is missing; accepted is its range from A1 on")
    return open_book(given)


def result_table(book: Any = None, table: Any = None, enquiry: Any = None, rows: Any = None) -> Any:
    """One table of results with its heads: of one enquiry, or of all."""
    where = PREFIX + "RESULT_TABLE"
    key = text_of(table, "table", where).lower().replace(" ", "_")
    if key not in TABLES:
        raise InputError(where, f"table is {key!r}; accepted is one of: {', '.join(TABLES)}")
    opened, code = _opened(book, where), text_of(enquiry, "enquiry", where)
    found = TABLES[key](opened.mill, opened.results(code, where))
    return _padded(cells_of_table(found), _rows(rows, where), key, where)


def cells_of_table(table: Table) -> list[list[Any]]:
    """A table as cells: titles, units, then its rows; a date as the number of its day, nothing as "".

    Examples
    --------
    >>> from costing.report import Column
    >>> cells_of_table(Table("t", "T", "", [Column("Day"), Column("Mass", "kg", 1)],
    ...                      [[datetime.date(2026, 1, 2), None]]))
    [['Day', 'Mass'], ['', 'kg'], [46024.0, '']]
    """
    heads = [[column.title for column in table.columns], [column.unit for column in table.columns]]
    return [*heads, *[[_cell(value) for value in row] for row in table.rows]]


def _cell(value: Any) -> Any:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, datetime.date):
        return float((value - DAY_0).days)
    return float(value) if isinstance(value, (int, float)) else str(value)


def _padded(cells: list[list[Any]], rows: int | None, what: str, where: str) -> list[list[Any]]:
    """As many rows as the range has; a range too short is refused, so that no total can lack a row."""
    if rows is None:
        return cells
    if len(cells) > rows:
        raise InputError(
            where,
            f"the table {what!r} has {len(cells)} rows with its heads; accepted is a range of as many, not "
            f"{rows}",
        )
    width = len(cells[0])
    return cells + [[""] * width for _ in range(rows - len(cells))]


def _rows(cell: Any, where: str) -> int | None:
    found = single(cell, "rows", where)
    if is_empty(found):
        return None
    if isinstance(found, bool) or not isinstance(found, (int, float)) or not 1 <= found <= MOST_ROWS:
        raise InputError(where, f"rows is {found!r}; accepted is a whole number from 1 to {MOST_ROWS}")
    return int(found)


def use_per_kg(book: Any = None, what: Any = None, enquiry: Any = None, result_unit: Any = None) -> float:
    """What an enquiry takes per kilogram of grey yarn sold, fills, stops and leaders in."""
    where = PREFIX + "USE_PER_KG"
    mill, result = _of_enquiry(book, enquiry, where)
    amount, unit = _used(mill, result.ledger.lines, what, where)
    return _in_unit(amount, unit, result_unit, where)


def use_per_metre(
    book: Any = None, what: Any = None, enquiry: Any = None, basis: Any = None, result_unit: Any = None
) -> float:
    """What an enquiry takes per metre of finished cloth, or of another basis."""
    where = PREFIX + "USE_PER_METRE"
    mill, result = _of_enquiry(book, enquiry, where)
    amount, unit = _used(mill, result.ledger.lines, what, where)
    metres = result.quote.per[_basis(result, basis, where, "m of finished cloth")]
    return _in_unit(amount * metres, unit.replace("/kg", "/m"), result_unit, where)


def use_of_order(book: Any = None, what: Any = None, enquiry: Any = None, result_unit: Any = None) -> float:
    """What a whole order takes."""
    where = PREFIX + "USE_OF_ORDER"
    mill, result = _of_enquiry(book, enquiry, where)
    amount, unit = _used(mill, result.ledger.lines, what, where)
    return _in_unit(amount * result.ledger.plan.saleable_mass, unit.replace("/kg", ""), result_unit, where)


def running_use_per_kg(
    book: Any = None,
    what: Any = None,
    recipe: Any = None,
    range_code: Any = None,
    style: Any = None,
    sets: Any = None,
    result_unit: Any = None,
) -> float:
    """What a recipe takes on a range while it runs, per kilogram of yarn: no fill, no stop, no leader."""
    where = PREFIX + "RUNNING_USE_PER_KG"
    mill = _opened(book, where).mill
    found_style = mill.style(text_of(style, "style", where), where)
    found_recipe = mill.recipe(text_of(recipe, "recipe", where), where)
    found_range = mill.range(text_of(range_code, "range", where), where)
    steps = mill.steps_of(found_recipe, found_range)
    together = check("sets_side_by_side", _number(sets, 1.0, where), where)
    around = _endless(found_style, found_recipe.code, found_range, together)
    run = run_route(steps, mill.materials, around, found_style.warp_yarn)
    amount, unit = _used(mill, run.lines, what, where)
    return _in_unit(amount, unit, result_unit, where)


def _number(cell: Any, left_out: float, where: str) -> Any:
    found = single(cell, "sets", where)
    return left_out if is_empty(found) else found


def _endless(style: Style, recipe: str, range_: Range, together: float) -> Surroundings:
    """Throughput and steam of a style on a range, for a run without an end."""
    order = Enquiry(
        code="run",
        description="",
        style=style.code,
        recipe=recipe,
        range=range_.code,
        order_length=1e6,
        length_basis="dyed warp",
        sets_side_by_side=together,
        bath_at_start="new fill",
        bath_at_end="dumped",
        stoppages=0.0,
        stoppage_time=0.0,
        pumps_in_stoppage="running",
    )
    plan = plan_order(style, plan_cloth(style, range_.stretch), order, range_)
    return plan.around._replace(lot=Lot())


def cost_on(book: Any = None, enquiry: Any = None, basis: Any = None, part: Any = None) -> float:
    """Cost of an enquiry on a basis: all of it, or a cost group, a step or a material."""
    where = PREFIX + "COST_ON"
    _, result = _of_enquiry(book, enquiry, where)
    chosen, wanted = _basis(result, basis, where, GREY_KG), text_of(part, "part", where)
    if not wanted:
        return float(result.quote.cost_on(chosen))
    lines = [line for line in result.quote.lines if wanted in (line.group, line.step, line.material)]
    if not lines:
        known = dict.fromkeys(
            [line.group for line in result.quote.lines] + [line.step for line in result.quote.lines]
        )
        raise InputError(where, f"part is {wanted!r}; accepted are materials, and: {', '.join(known)}")
    return float(sum(line.cost for line in lines) * result.quote.per[chosen])


def price_on(book: Any = None, enquiry: Any = None, basis: Any = None) -> float:
    """Selling price of an enquiry on a basis, with its margin, not rounded."""
    where = PREFIX + "PRICE_ON"
    _, result = _of_enquiry(book, enquiry, where)
    return result.quote.price_on(_basis(result, basis, where, GREY_KG))


def discharge_load(
    book: Any = None, parameter: Any = None, enquiry: Any = None, stream: Any = None, result_unit: Any = None
) -> float:
    """Load of a parameter in a stream, or in all, per kilogram of grey yarn: an estimate, no measurement."""
    where = PREFIX + "DISCHARGE_LOAD"
    found, key = _stream(book, enquiry, stream, where), _parameter(parameter, where)
    if key == "flow":
        return _in_unit(found.flow, "L/kg", result_unit, where)
    return _in_unit(found.loads[key], "kg/kg", result_unit, where, "g/kg")


def discharge_concentration(
    book: Any = None, parameter: Any = None, enquiry: Any = None, stream: Any = None, result_unit: Any = None
) -> float:
    """Concentration of a parameter in a stream, before any treatment: an estimate, no measurement."""
    where = PREFIX + "DISCHARGE_CONCENTRATION"
    found, key = _stream(book, enquiry, stream, where), _parameter(parameter, where)
    if key == "flow" or found.flow <= 0:
        raise InputError(
            where, f"the stream {found.name!r} has no concentration of {key}: nothing flows or is asked"
        )
    return _in_unit(found.concentration(key), "kg/L", result_unit, where, "mg/L")


def _stream(book: Any, enquiry: Any, stream: Any, where: str) -> Any:
    _, result = _of_enquiry(book, enquiry, where)
    wanted = text_of(stream, "stream", where) or ALL_STREAMS
    for found in result.streams:
        if found.name == wanted:
            return found
    raise InputError(
        where,
        f"stream is {wanted!r}; accepted is one of: {', '.join(found.name for found in result.streams)}",
    )


def _parameter(cell: Any, where: str) -> str:
    wanted = text_of(cell, "parameter", where)
    known = {name.lower(): name for name in (*PARAMETERS, "flow")} | {"cod": "COD, both"}
    if wanted.lower() not in known:
        raise InputError(where, f"parameter is {wanted!r}; accepted is one of: {'; '.join(known.values())}")
    return known[wanted.lower()]


def _opened(book: Any, where: str) -> OpenedBook:
    return kept_book(text_of(book, "book", where), where)


def _of_enquiry(book: Any, enquiry: Any, where: str) -> tuple[Mill, Result]:
    opened = _opened(book, where)
    return opened.mill, opened.result(text_of(enquiry, "enquiry", where), where)


def _basis(result: Result, cell: Any, where: str, usual: str) -> str:
    wanted = text_of(cell, "basis", where) or usual
    if wanted not in result.quote.per:
        raise InputError(where, f"basis is {wanted!r}; accepted is one of: {', '.join(result.quote.per)}")
    return wanted


def _used(mill: Mill, lines: Iterable[Line], cell: Any, where: str) -> tuple[float, str]:
    """Amount of a material as delivered, of a substance as 100 %, or of a utility, with its unit."""
    wanted = text_of(cell, "what", where)
    if wanted.lower() in UTILITIES:
        material, unit = UTILITIES[wanted.lower()]
        return sum(line.amount for line in lines if is_bought(line) and line.material == material), unit
    shares = {code: 1.0 for code in mill.materials if code == wanted} or {
        item.code: item.strength
        for item in mill.materials.values()
        if wanted.lower() in (item.counted_as.replace("_", " "), group_of(item), item.role.lower())
    }
    if not wanted or not shares:
        raise InputError(
            where,
            f"what is {wanted!r}; accepted is a code of the sheet Materials, or as 100 %: a substance or a "
            f"role of that sheet; or one of: {', '.join(UTILITIES)}",
        )
    amount = sum(
        line.amount * shares[line.material] for line in lines if is_bought(line) and line.material in shares
    )
    return amount, "kg/kg"


def _in_unit(value: float, unit: str, cell: Any, where: str, usual: str = "") -> float:
    """A figure in the unit asked for, else in the usual one."""
    wanted = text_of(cell, "result unit", where) or usual or ("g/kg" if unit == "kg/kg" else unit)
    try:
        return convert(value, unit, canonical(tidy(wanted)))
    except (KeyError, ValueError):
        raise InputError(where, f"result unit is {wanted!r}, which does not measure {unit}") from None


BOOK = Parameter("book", "the cell of WARP_OPENED_BOOK")
ENQUIRY = Parameter("enquiry", "a code of the sheet Enquiries")
WHAT = Parameter(
    "what", "code of a material, as delivered; a substance or role, as 100 %; water, steam or power"
)
UNIT = Parameter("result_unit", "unit of the result; left out: the usual one", optional=True)
BASIS = Parameter(
    "basis", "kg of grey yarn, m of finished cloth and so on; left out: the usual one", optional=True
)
STREAM = Parameter("stream", "name of a stream; left out: all streams", optional=True)
PARAMETER = Parameter("parameter", "COD, sodium, sulfate, flow and so on")


def _record(
    function: Callable[..., Any], result: str, gives: str, parameters: tuple[Parameter, ...], *example: Any
) -> CellFunction:
    return CellFunction(
        name=PREFIX + function.__name__.upper(),
        function=function,
        parameters=parameters,
        result=result,
        gives=gives,
        group=TITLE,
        help=(function.__doc__ or "").strip(),
        example=example,
    )


# What stands for the cell of the opened book in an example.
OPENED = "opened book"

FUNCTIONS: tuple[CellFunction, ...] = (
    _record(
        opened_book,
        TEXT,
        "a mark of the book",
        tuple(
            Parameter(name.lower().replace(" ", "_"), f"the sheet {name}, its whole range from A1 on", BLOCK)
            for name in sheet_names()
        ),
    ),
    _record(
        result_table,
        ARRAY,
        "titles, units and rows",
        (
            BOOK,
            Parameter("table", f"one of: {', '.join(TABLES)}"),
            Parameter("enquiry", "a code of the sheet Enquiries; left out: all of them", optional=True),
            Parameter(
                "rows",
                "rows of the range, which are filled up; left out: as many as there are",
                optional=True,
            ),
        ),
        OPENED,
        "cost_by_step",
        "Q-02",
        15.0,
    ),
    _record(
        use_per_kg,
        NUMBER,
        "use [g/kg, L/kg, kg/kg, kWh/kg]",
        (BOOK, WHAT, ENQUIRY, UNIT),
        OPENED,
        "indigo",
        "Q-02",
    ),
    _record(
        use_per_metre,
        NUMBER,
        "use [g/m and so on]",
        (BOOK, WHAT, ENQUIRY, BASIS, UNIT),
        OPENED,
        "water",
        "Q-02",
    ),
    _record(use_of_order, NUMBER, "use [kg, L]", (BOOK, WHAT, ENQUIRY, UNIT), OPENED, "HYDRO-88", "Q-02"),
    _record(
        running_use_per_kg,
        NUMBER,
        "use [g/kg, L/kg, kg/kg, kWh/kg]",
        (
            BOOK,
            WHAT,
            Parameter("recipe", "a code of the sheet Recipes"),
            Parameter("range_code", "a code of the sheet Ranges"),
            Parameter("style", "a code of the sheet Styles: its warp sets the throughput"),
            Parameter("sets", "sets that run side by side; left out: 1", optional=True),
            UNIT,
        ),
        OPENED,
        "caustic",
        "DARK-POWDER",
        "ROPE-A",
        "D-1200",
    ),
    _record(
        cost_on,
        NUMBER,
        "money of the mill",
        (
            BOOK,
            ENQUIRY,
            BASIS,
            Parameter("part", "a cost group, a step or a material; left out: all", optional=True),
        ),
        OPENED,
        "Q-02",
        "m of finished cloth",
        "dye",
    ),
    _record(price_on, NUMBER, "money of the mill", (BOOK, ENQUIRY, BASIS), OPENED, "Q-02"),
    _record(
        discharge_load,
        NUMBER,
        "load [g/kg], flow [L/kg]",
        (BOOK, PARAMETER, ENQUIRY, STREAM, UNIT),
        OPENED,
        "sodium",
        "Q-02",
    ),
    _record(
        discharge_concentration,
        NUMBER,
        "concentration [mg/L]",
        (BOOK, PARAMETER, ENQUIRY, STREAM, UNIT),
        OPENED,
        "sulfate",
        "Q-02",
        "rinse after dyeing",
    ),
)
