"""What a cell of the book lets in, and what it says of what it does not let in."""

from __future__ import annotations

from openpyxl.formatting.rule import Rule
from openpyxl.styles import Border, Font
from openpyxl.styles.differential import DifferentialStyle
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.worksheet import Worksheet

from costing.book.lye_scale import SCALES
from costing.book.quantity_cell import accepted_range, accepted_scales, accepted_units
from costing.front_ends.workbook.styles import ALERT, INK, UNREAD, fill, line
from costing.quantities import QUANTITIES, label
from costing.quantities.checking import number_text
from costing.settings.lye_dose import DOSES

LONGEST_LIST = 250
LONGEST_TITLE = 31
LONGEST_TEXT = 220
ANY_UNIT = "1E+300"


def add_list(sheet: Worksheet, cells: str, source: str, what: str, strict: bool = True) -> None:
    """Offer a list; a word that is not in it is refused, or questioned where it is not strict.

    Parameters
    ----------
    sheet : Worksheet
        The sheet.
    cells : str
        Range of cells.
    source : str
        A defined name of the book.
    what : str
        What is chosen.
    strict : bool, optional
        False for a list that names only the usual ones.
    """
    rule = DataValidation(
        type="list",
        formula1=source,
        allow_blank=not strict,
        errorStyle="stop" if strict else "warning",
    )
    told = "Choose one of the list, or empty the cell."
    _say(rule, what, told if strict else "The list does not hold this one. The program may still know it.")
    _add(sheet, rule, cells)


def add_units(sheet: Worksheet, cells: str, quantity_name: str, first: str = "") -> None:
    """Offer the units that can measure a quantity; another one is questioned, not refused."""
    scales = on_lye_scales(quantity_name)
    units = dict.fromkeys(unit for unit in (first, *scales, *accepted_units(quantity_name)) if unit)
    offered = ""
    for unit in units:
        longer = f"{offered},{unit}" if offered else unit
        if len(longer) > LONGEST_LIST:
            break
        offered = longer
    rule = DataValidation(type="list", formula1=f'"{offered}"', allow_blank=True, errorStyle="warning")
    _say(
        rule,
        f"unit of {label(quantity_name)}",
        "The list does not hold this unit. The program may still know it.",
    )
    _add(sheet, rule, cells)


def on_lye_scales(quantity_name: str) -> tuple[str, ...]:
    """The scales of lye that a cell takes, a dose for a product that is caustic."""
    return SCALES if quantity_name in DOSES else accepted_scales(quantity_name)


def add_number(
    sheet: Worksheet, cells: str, quantity_name: str, unit: str, unit_cell: str = "", what: str = ""
) -> None:
    """Let in numbers of the accepted range; the range holds as long as the unit is the one given here.

    Parameters
    ----------
    sheet : Worksheet
        The sheet.
    cells : str
        Range of cells.
    quantity_name : str
        A name of the table of quantities.
    unit : str
        The unit that the sheet ships with.
    unit_cell : str, optional
        Where the unit stands, relative to the first of the cells; "" where it cannot be changed.
    what : str, optional
        What to call it, where that is not the name of the quantity.
    """
    item = QUANTITIES[quantity_name]
    low, high = accepted_range(quantity_name, unit)
    bounds = [f"{low:.6G}", f"{high:.6G}"]
    if unit_cell:
        bounds = [
            f'IF({unit_cell}="{unit}",{bounds[0]},-{ANY_UNIT})',
            f'IF({unit_cell}="{unit}",{bounds[1]},{ANY_UNIT})',
        ]
    rule = DataValidation(
        type="whole" if item.whole else "decimal",
        operator="between",
        formula1=bounds[0],
        formula2=bounds[1],
        allow_blank=True,
        errorStyle="stop",
    )
    scales = on_lye_scales(quantity_name)
    if scales:
        first = cells.split(":")[0]
        formula = f"OR(ISTEXT({first}),AND({first}>={bounds[0]},{first}<={bounds[1]}))"
        rule = DataValidation(type="custom", formula1=formula, allow_blank=True, errorStyle="stop")
    name = what or label(quantity_name)
    kind = "a whole number from " if item.whole else ""
    text = f"Accepted is {kind}{number_text(low)} to {number_text(high)} {unit}".rstrip() + "."
    if unit == "%":
        text += " Type 88 for 88 %, without the sign."
    if scales:
        text += f" Of caustic also a text such as 26 {scales[0]}; {' or '.join(scales[1:])} in place of it."
    _say(rule, name, text)
    _add(sheet, rule, cells)


def add_above_zero(sheet: Worksheet, cells: str, what: str) -> None:
    """Let in numbers above zero, whatever their unit."""
    rule = DataValidation(
        type="decimal", operator="greaterThan", formula1="0", allow_blank=True, errorStyle="stop"
    )
    _say(rule, what, "Accepted is a number above 0, in the unit beside it.")
    _add(sheet, rule, cells)


def add_any_number(sheet: Worksheet, cells: str, what: str) -> None:
    """Let in any number, whatever its unit."""
    rule = DataValidation(
        type="decimal",
        operator="between",
        formula1="-1E+300",
        formula2="1E+300",
        allow_blank=True,
        errorStyle="stop",
    )
    _say(rule, what, "Accepted is a number, in the unit beside it.")
    _add(sheet, rule, cells)


def add_count(sheet: Worksheet, cells: str, most: int, what: str) -> None:
    """Let in whole numbers from 1 on."""
    rule = DataValidation(
        type="whole",
        operator="between",
        formula1="1",
        formula2=str(most),
        allow_blank=True,
        errorStyle="stop",
    )
    _say(rule, what, f"Accepted is a whole number from 1 to {most}.")
    _add(sheet, rule, cells)


def add_date(sheet: Worksheet, cells: str, what: str) -> None:
    """Let in dates only."""
    rule = DataValidation(
        type="date", operator="greaterThan", formula1="36526", allow_blank=True, errorStyle="stop"
    )
    _say(rule, what, "Accepted is a date after 2000-01-01.")
    _add(sheet, rule, cells)


def mark_unread(sheet: Worksheet, cells: str, formula: str) -> None:
    """Grey cells that nothing reads, before any other mark."""
    look = DifferentialStyle(fill=fill(UNREAD))
    rule = Rule(type="expression", dxf=look, formula=[formula], stopIfTrue=True)
    sheet.conditional_formatting.add(cells, rule)


def mark_needed(sheet: Worksheet, cells: str, formula: str) -> None:
    """Give a dashed edge to cells that must be filled and are empty."""
    edge = line("dashed", INK)
    look = DifferentialStyle(border=Border(left=edge, right=edge, top=edge, bottom=edge))
    _mark(sheet, cells, formula, look)


def mark_unusual(sheet: Worksheet, cells: str, formula: str) -> None:
    """Make numbers outside the usual range bold and slanted, on a darker fill."""
    bold = Font(bold=True, italic=True, color=f"FF{INK}")  # a conditional format may not change font or size
    _mark(sheet, cells, formula, DifferentialStyle(font=bold, fill=fill(ALERT)))


def _mark(sheet: Worksheet, cells: str, formula: str, look: DifferentialStyle) -> None:
    sheet.conditional_formatting.add(cells, Rule(type="expression", dxf=look, formula=[formula]))


def _say(rule: DataValidation, what: str, text: str) -> None:
    rule.errorTitle, rule.error = what[:LONGEST_TITLE], f"{what}: {text}"[:LONGEST_TEXT]
    rule.showErrorMessage, rule.showInputMessage = True, False


def _add(sheet: Worksheet, rule: DataValidation, cells: str) -> None:
    rule.add(cells)
    sheet.add_data_validation(rule)
