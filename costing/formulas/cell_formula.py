"""An equation as a cell calls it: arguments in their order, then the unit wanted for the result."""

from __future__ import annotations

from typing import Any, Callable

from costing.book.lye_scale import SCALES
from costing.book.quantity_cell import house_of, is_empty, unit_of
from costing.formulas.cell_function import NUMBER, CellFunction, Parameter
from costing.formulas.cell_reading import cells_of, given, single, text_of
from costing.formulas.formula import Formula
from costing.quantities import InputError, Quantity, describe, label, quantity, shown
from costing.quantities.checking import LIMITS
from costing.quantities.units import measure

RESULT_UNIT = "result_unit"
SMALLEST = 5e-324
MOST_SPELLINGS = 100  # of one argument that are kept; a sheet holds a few

ALONE = object()  # stands for the unit of a number without one beside it

Scales = dict[Any, tuple[float, float]]
Texts = dict[str, float]
Step = tuple[Scales, Texts, float, float, bool, Any]


def cell_formula(formula: Formula, group: str) -> CellFunction:
    """The record of an equation among the functions of a cell.

    Examples
    --------
    >>> from costing.formulas.registry import find
    >>> found = cell_formula(find("delivered_from_pure"), "Liquors")
    >>> [parameter.name for parameter in found.parameters]
    ['pure_mass', 'strength', 'result_unit']
    >>> found.parameters[1].help
    'pure substance in the product as delivered (assay) [%], 1 to 100 %'
    """
    answer = quantity(formula.result)
    defaults = formula.defaults
    arguments = tuple(
        Parameter(
            item.name,
            _help(item)
            + (f"; left out: {shown(item, defaults[item.name])}" if item.name in defaults else ""),
            optional=item.name in defaults,
            default=defaults.get(item.name),
        )
        for item in formula.arguments
    )
    wanted = Parameter(
        RESULT_UNIT, f"unit of the result; left out: {answer.usual or 'none, a pure number'}", optional=True
    )
    return CellFunction(
        name=formula.name,
        function=compiled(formula),
        parameters=(*arguments, wanted),
        result=NUMBER,
        gives=f"{label(answer.name)}{f' [{answer.usual}]' if answer.usual else ''}",
        group=group,
        help=formula.help,
        example=tuple(formula.example.get(item.name) for item in formula.arguments),
    )


def compiled(formula: Formula, *, empty_is_zero: bool = False) -> Callable[..., float]:
    """What a cell calls: the cells in order, in and out in units, checked.

    Parameters
    ----------
    formula : Formula
        The equation.
    empty_is_zero : bool, optional
        True for a program that hands over an empty cell of an argument that may be left out as the
        number 0. Such an argument then takes no plain 0 where its default is another number.

    Returns
    -------
    callable
        Takes the cells, raises `InputError`.

    Examples
    --------
    >>> from costing.formulas.registry import find
    >>> use = compiled(find("carried_by_liquor"))
    >>> use(0.75, 2.0), use("0.75 L/kg", ((2.0, "g/L"),), "%")
    (1.5, 0.15)
    """
    items = formula.arguments
    defaults = formula.defaults
    function = formula.function
    answer = quantity(formula.result)
    steps = [_step(item, defaults.get(item.name), empty_is_zero) for item in items]
    results: Scales = {None: _scale(answer.unit, answer.usual) or (1.0, 1.0)}
    count = len(steps)

    def in_words(cells: tuple[Any, ...]) -> float:
        return _calculated(formula, cells, empty_is_zero, steps, results)

    # The short way takes what cells hold nearly always: plain numbers, alone, in a block of one or beside a
    # unit seen before. What it does not take, the long way takes, or refuses in words. Both calculate alike.
    def called(*cells: Any) -> float:
        house = []
        try:
            for cell, (scales, texts, low, high, whole, default) in zip(cells, steps):
                unit: Any = ALONE
                if type(cell) is tuple:
                    row = cell[0]
                    if len(row) == 2 and len(cell) == 1:
                        cell, unit = row
                    elif len(row) == 1 and len(cell) == 1:
                        cell = row[0]
                    elif len(row) == 1 and len(cell) == 2:
                        cell, (unit,) = row[0], cell[1]
                if type(cell) is float:
                    up, down = scales[unit]
                    value = cell * up / down
                    if not low <= value <= high or (whole and value % 1.0):
                        return in_words(cells)
                    house.append(value)
                elif cell is None and default is not None:
                    house.append(default)
                elif type(cell) is str and unit is ALONE:
                    house.append(texts[cell])
                else:
                    return in_words(cells)
            if len(house) < count or len(cells) > count + 1:
                return in_words(cells)
            up, down = results[cells[count] if len(cells) > count else None]
            result: float = function(*house) * up / down
            if result - result == 0.0:  # neither infinite nor not a number
                return result
        except (LookupError, TypeError, ValueError, ArithmeticError):
            pass
        return in_words(cells)

    return called


def _calculated(
    formula: Formula, cells: tuple[Any, ...], empty_is_zero: bool, steps: list[Step], results: Scales
) -> float:
    """Calculate the long way, and remember the units for the short one."""
    items, where = formula.arguments, formula.name
    if len(cells) > len(items) + 1:
        names = ", ".join((*(item.name for item in items), RESULT_UNIT))
        raise InputError(where, f"got {len(cells)} arguments; accepted are: {names}")
    values: dict[str, Any] = {}
    for item, cell, step in zip(items, cells, steps):
        default = step[-1]
        if empty_is_zero and cell == 0.0 and default:
            zero = f", or type '0 {item.usual}'" if item.low <= 0.0 else ""
            raise InputError(
                where,
                f"{label(item.name)} is 0 or its cell is empty, which look alike here; leave it out for "
                f"{shown(item, default)}{zero}",
            )
        found = given(item, cell, where)
        if found is None:
            continue
        number, unit = found
        values[item.name] = number if unit is None else (number, unit)
    wanted = single(cells[len(items)], "the unit of the result", where) if len(cells) > len(items) else None
    if empty_is_zero and wanted == 0.0:
        wanted = None
    result_unit = None
    if not is_empty(wanted):
        answer = quantity(formula.result)
        result_unit = unit_of(answer, text_of(wanted, "the unit of the result", where), where)
        scale = _scale(answer.unit, result_unit)
        if scale:
            results[wanted] = scale
    result = float(formula.calculate(values, result_unit))
    for item, cell, step in zip(items, cells, steps):
        given_as = values.get(item.name)
        if isinstance(given_as, tuple):
            number, unit = given_as
            _remember(step, cell, number, unit, item)
    return result


def _step(item: Quantity, default: float | None, empty_is_zero: bool) -> Step:
    """What the short way needs to know of an argument."""
    low, high = LIMITS[item.name]
    if empty_is_zero and default and low <= 0.0:
        low = SMALLEST  # a 0 goes the long way, where it is refused
    scale = _scale(item.usual, item.unit)
    scales: Scales = {ALONE: scale} if scale else {}
    if item.usual == "":
        scales[""] = (1.0, 1.0)
    return scales, {}, low, high, item.whole, default


def _scale(unit: str, target: str) -> tuple[float, float] | None:
    """Factors up and down from a unit to another; None where it takes more than a factor."""
    if unit in SCALES or target in SCALES:
        return None
    (source, up, offset), (other, down, shift) = measure(unit), measure(target)
    if source != other or ((up, offset) != (down, shift) and (offset or shift)):
        return None
    return (1.0, 1.0) if up == down else (up, down)


def _remember(step: Step, cell: Any, number: float, unit: str, item: Quantity) -> None:
    """Keep a text, or the unit of a block, as it was written."""
    scales, texts, *_ = step
    cells = [found for row in cells_of(cell) for found in row] if isinstance(cell, (list, tuple)) else [cell]
    scale = _scale(unit, item.unit)
    if len(cells) == 1 and len(texts) < MOST_SPELLINGS:
        texts[cells[0]] = house_of(item, number, unit)
    elif len(cells) == 2 and scale and len(scales) < MOST_SPELLINGS:
        scales[cells[1]] = scale


def _help(item: Quantity) -> str:
    unit = f" [{item.usual}]" if item.usual else ""
    return f"{item.help}{unit}, {describe(item)}"
