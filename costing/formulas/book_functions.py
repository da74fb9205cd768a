"""Functions that ask a mill's book: its tables, and single figures of use, cost and discharge."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from typing import Any, Callable

from costing.book.layout import LATE_SHEETS, sheet_names
from costing.book.quantity_cell import is_empty
from costing.cost.quote import group_of
from costing.effluent.factors import PARAMETERS
from costing.formulas.book_tables import opened_book, opened_of, result_table
from costing.formulas.cell_function import ARRAY, BLOCK, NUMBER, TEXT, CellFunction, Parameter
from costing.formulas.cell_reading import single, text_of, tidy
from costing.formulas.formula import PREFIX
from costing.ledger.plan import plan_order
from costing.ledger.plan_cloth import ClothPlan, plan_cloth
from costing.ledger.route_run import run_route
from costing.ledger.whole import is_bought, yarns_of
from costing.process.postings import POWER, Line
from costing.process.surroundings import Lot, Surroundings
from costing.quantities import InputError, check, label, listed, meant
from costing.quantities.units import canonical, convert
from costing.report import BOOK_TABLES, Result
from costing.report.names import codes_called, names_of, parameter_called
from costing.settings.material import YARN_ROLES, Material
from costing.settings.mill import Enquiry, Mill, Range
from costing.settings.style import Style
from costing.settings.vessel_steps import bath_hours

TITLE = "The mill's book"
GREY_KG = "kg of grey yarn"
UTILITIES = {"water": ("water", "L/kg"), "steam": ("steam", "kg/kg"), "power": (POWER, "kWh/kg")}
ALL_STREAMS = "all streams"
MOST_PARTS = 20  # of a list that a refusal tells


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
    mill = opened_of(book, where).mill
    found_style = mill.style(text_of(style, "style", where), where)
    found_recipe = mill.recipe(text_of(recipe, "recipe", where), where)
    found_range = mill.range(text_of(range_code, "range", where), where)
    steps = mill.steps_of(found_recipe, found_range)
    together = check("sets_side_by_side", _number(sets, 1.0, where), where)
    fabric = plan_cloth(found_style, found_range.stretch)
    around = _endless(found_style, fabric, found_recipe.code, found_range, together, bath_hours(steps))
    run = run_route(steps, mill.materials, around, yarns_of(found_style, fabric, found_range))
    amount, unit = _used(mill, run.lines, what, where)
    return _in_unit(amount, unit, result_unit, where)


def _number(cell: Any, left_out: float, where: str) -> Any:
    found = single(cell, "sets", where)
    return left_out if is_empty(found) else found


def _endless(
    style: Style, fabric: ClothPlan, recipe: str, range_: Range, together: float, hours: float
) -> Surroundings:
    """Throughput and steam of a style on a range, for a run without an end."""
    order = Enquiry(
        code="run",
        description="",
        style=style.code,
        recipe=recipe,
        range=range_.code,
        order_length=1e6,
        length_basis="loom-state cloth",
        sets_side_by_side=together,
        bath_at_start="new fill",
        bath_at_end="dumped",
        stoppages=0.0,
        stoppage_time=0.0,
        pumps_in_stoppage="running",
    )
    plan = plan_order(style, fabric, order, range_, hours)
    return plan.around._replace(lot=Lot())


def cost_on(book: Any = None, enquiry: Any = None, basis: Any = None, part: Any = None) -> float:
    """Cost of an enquiry on a basis: all of it, or a cost group, a step or a material."""
    where = PREFIX + "COST_ON"
    _, result = _of_enquiry(book, enquiry, where)
    chosen, asked = _basis(result, basis, where, GREY_KG), text_of(part, "part", where)
    if not asked:
        return float(result.quote.cost_on(chosen))
    lines = result.quote.lines
    groups_and_steps = dict.fromkeys([line.group for line in lines] + [line.step for line in lines])
    wanted = meant(asked, [*groups_and_steps, *dict.fromkeys(line.material for line in lines)])
    if wanted is None:
        known = listed(groups_and_steps, asked, most=MOST_PARTS)
        raise InputError(where, f"part is {asked!r}; accepted are materials, and: {known}")
    lines = [line for line in lines if wanted in (line.group, line.step, line.material)]
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
    streams = {found.name: found for found in result.streams}
    return streams[_word(text_of(stream, "stream", where) or ALL_STREAMS, "stream", streams, where)]


def _word(asked: str, what: str, accepted: Collection[str], where: str) -> str:
    """The one of these words that is meant."""
    found = meant(asked, accepted)
    if found is None:
        said = f"{what} is {asked!r}" if asked else f"{what} is empty"
        raise InputError(where, f"{said}; accepted is one of: {listed(accepted, asked, most=MOST_PARTS)}")
    return found


def _parameter(cell: Any, where: str) -> str:
    asked, known = text_of(cell, "parameter", where), (*PARAMETERS, "flow")
    found = parameter_called(asked, known)
    if found is None:
        accepted = listed(known, sign="; ", most=len(known))
        raise InputError(where, f"parameter is {asked!r}; accepted is one of: {accepted}")
    return found


def _of_enquiry(book: Any, enquiry: Any, where: str) -> tuple[Mill, Result]:
    opened = opened_of(book, where)
    return opened.mill, opened.result(text_of(enquiry, "enquiry", where), where)


def _basis(result: Result, cell: Any, where: str, usual: str) -> str:
    return _word(text_of(cell, "basis", where) or usual, "basis", result.quote.per, where)


def _used(mill: Mill, lines: Iterable[Line], cell: Any, where: str) -> tuple[float, str]:
    """Amount of a material as delivered, of a substance as 100 %, or of a utility, with its unit."""
    asked = text_of(cell, "what", where)
    items = mill.materials.values()
    names = [(item.code, names_of(item.code, _group(item), item)) for item in items]
    names += [(name, ([name], [], [], [])) for name in UTILITIES]
    codes, delivered = codes_called(asked, names, where)
    if not codes:
        roles = dict.fromkeys(item.role for item in items)
        held = dict.fromkeys(label(item.counted_as) for item in items if item.counted_as)
        raise InputError(
            where,
            f"what is {asked!r}; accepted is a code of the sheet Materials, such as "
            f"{listed(mill.materials, asked)}; or as 100 %: {listed([*held, *roles], most=MOST_PARTS)}; or: "
            f"{', '.join(UTILITIES)}",
        )
    if codes[0] in UTILITIES:
        material, unit = UTILITIES[codes[0]]
        return sum(line.amount for line in lines if is_bought(line) and line.material == material), unit
    shares = {code: 1.0 if delivered else mill.materials[code].strength for code in codes}
    amount = sum(
        line.amount * shares[line.material] for line in lines if is_bought(line) and line.material in shares
    )
    return amount, "kg/kg"


def _group(item: Material) -> str:
    return item.role if item.role in YARN_ROLES else group_of(item)


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
            Parameter(
                name.lower().replace(" ", "_"),
                f"the sheet {name}, its whole range from A1 on",
                BLOCK,
                optional=name in LATE_SHEETS,
            )
            for name in sheet_names()
        ),
    ),
    _record(
        result_table,
        ARRAY,
        "titles, units and rows",
        (
            BOOK,
            Parameter("table", f"one of: {', '.join(BOOK_TABLES)}"),
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
