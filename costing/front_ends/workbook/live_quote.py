"""Draw the live sheets Quotes, of all enquiries, and Quote, of the chosen one."""

from __future__ import annotations

from typing import Any

from costing.front_ends.workbook.input_rules import add_list
from costing.front_ends.workbook.live_areas import CHOICE, CHOSEN, CODES, absolute, name_cells
from costing.front_ends.workbook.live_cells import LiveBook
from costing.front_ends.workbook.live_chart import Bars, add_chart
from costing.front_ends.workbook.live_results import total
from costing.front_ends.workbook.live_table import Live, head_heights, widths_for
from costing.front_ends.workbook.results_sheets import number_format
from costing.front_ends.workbook.sheet_drawing import cells, put
from costing.front_ends.workbook.styles import PERCENT, page, widths
from costing.front_ends.workbook.template_files import sheet_file

MOST_QUOTES, PRINTED_QUOTES = 60, 32
MOST_STEPS, MOST_REMARKS = 24, 12
LABEL, VALUE, PRICE = 1, 3, 4  # columns of the headline; a label runs over the column between
HEADLINE = 5  # its last column
GROUP = 7  # first column of the list of groups
GROUPS_FROM = 2  # place of the first group in the table of cost by group; All stands behind the last
LAST = 17  # column up to which the sections go
YARNS = 2  # the first groups, left out of the chart
PRINTED_TO = 21  # beyond the last column: both halves are as wide, so both print in the same size
CHART, CHART_SIZE = 12, (13.6, 9.4)  # cm


def draw_quotes(live: LiveBook) -> Live:
    """One row for each enquiry, and the sum of the order values above it."""
    sheet, top = live.sheet("quotes")
    table = live.table(sheet, top + 1, "quotes", MOST_QUOTES, of_chosen=False)
    value = table.place("Order value")
    put(sheet, top, table.column + value - 4, sheet_file("live")["quotes"]["sum"], "live line")
    live.formula(
        sheet,
        top,
        table.column + value,
        f"SUM({table.range(value)})",
        total(table.values(value)),
        "total number",
        number_format(table.table.columns[value]),
    )
    wide = widths_for(table, Description=38, Style=13, Recipe=19, Order_value=15, Not_priced=18)
    widths(sheet, wide)
    head_heights(table, wide)
    live.say_printed(sheet, (top, table.column + 1), table.range(0), table.filled, PRINTED_QUOTES)
    page(
        sheet,
        title_rows=f"{table.row}:{table.row + 1}",
        title_columns="A:A",
        freeze=f"B{table.first}",
        pages_wide=2,
        print_area=table.printed(PRINTED_QUOTES).replace("A1", f"A{top}"),
        heading=sheet.title,
    )
    return table


class QuoteSheet:
    """The sheet Quote while it is drawn.

    Parameters
    ----------
    live : LiveBook
        Draws.
    quotes : Live
        The table of all quotes, which the headline looks up.
    """

    def __init__(self, live: LiveBook, quotes: Live) -> None:
        self.live = live
        self.quotes = quotes
        self.text = sheet_file("live")["quote"]
        self.sheet, self.top = live.sheet("quote")
        self.row = next(row for row in quotes.cells if row[0] == live.shown.chosen)

    def draw(self) -> tuple[Live, ...]:
        """Headline, groups with their chart, then the tables, in the order in which they are checked."""
        after = self._headline()
        figures = self._table(after, "figures", "key_figures", 1)
        groups = self._table(figures.last + 2, "by_group", "cost_by_group", 1)
        seconds = self._table(groups.last + 2, "seconds", "seconds", 1)
        lots = self._table(seconds.last + 2, "shade_lots", "shade_lots", 1)
        remarks = self._table(lots.last + 2, "remarks", "checks", MOST_REMARKS)
        steps = self._table(remarks.last + 2, "steps", "cost_by_step", MOST_STEPS, total="all steps")
        self._groups(groups)
        wide = widths_for(steps, narrow=12.0, Enquiry=11.0, Step=34.0, Cost=15.0, Share=11.0)
        wide[steps.letter(VALUE - 1)] = 23.0  # where a remark says its step and its cell
        widths(self.sheet, wide)
        for table in (figures, groups, seconds, lots, steps):
            head_heights(table, wide)
        strips = (1, figures.last), (groups.row - 1, remarks.last), (steps.row - 1, steps.last)
        printed = ",".join(area for first, last in strips for area in self._halves(first, last))
        page(self.sheet, freeze=f"A{self.top + 1}", title_columns="A:B", print_area=printed)
        return figures, groups, steps, remarks, seconds, lots

    def _halves(self, first: int, last: int) -> list[str]:
        """Rows of the sheet as two pages, the second from the column of the chart on."""
        right = max(first, self.top + 2)  # title and choice stand on the first page
        return [cells(1, first, last, CHART - 1), cells(CHART, right, last, PRINTED_TO)]

    def _table(self, row: int, heading: str, key: str, room: int, total: str = "") -> Live:
        self._section(row, 1, LAST, self.text[heading])
        table = self.live.table(self.sheet, row + 1, key, room, total=total)
        if key == "checks":  # its last texts run over the columns behind
            for column in range(len(table.table.columns) + 1, LAST + 1):
                put(self.sheet, table.row, column, None, "column head")
                put(self.sheet, table.row + 1, column, None, "unit")
            self.live.ruled(self.sheet, cells(1, table.first, table.last, LAST), f"$A{table.first}")
        return table

    def _section(self, row: int, first: int, last: int, heading: str) -> None:
        for column in range(first, last + 1):
            put(self.sheet, row, column, heading if column == first else None, "section")
        self.sheet.row_dimensions[row].height = 18

    def _headline(self) -> int:
        """The chosen enquiry, what was asked for, cost and price; gives the next free row."""
        put(self.sheet, self.top, LABEL, self.text["choose"], "strong text")
        chosen = put(self.sheet, self.top, VALUE, self.live.shown.chosen, "given code")
        name_cells(self.live.book, CHOICE, absolute(self.sheet, chosen.coordinate))
        add_list(self.sheet, chosen.coordinate, CODES, "enquiry")
        put(self.sheet, self.top, PRICE, self.text["choose_hint"], "live line")
        self._section(self.top + 2, LABEL, HEADLINE, self.text["details"])
        row = self._details(self.top + 3) + 1
        self._section(row, LABEL, HEADLINE, self.text["money"])
        return self._money(row + 1) + 1

    def _details(self, row: int) -> int:
        self._label(row, self.text["code"])
        same = f"UPPER(TRIM({CODES}))=UPPER(TRIM({CHOICE}))"
        number = f"SUMPRODUCT(MAX(({same})*(ROW({CODES})-MIN(ROW({CODES}))+1)))"
        code = f"IF({number}=0,TRIM({CHOICE}),TRIM(INDEX({CODES},{number})))"
        text = f'IF(TRIM({CHOICE})="","{self.text["none"]}",{code})'
        cell = self.live.formula(self.sheet, row, VALUE, text, self.live.shown.chosen, "result line")
        name_cells(self.live.book, CHOSEN, absolute(self.sheet, cell.coordinate))
        number = self.quotes.number_of(0, CHOSEN)
        place = float(self.quotes.cells.index(self.row) - 1)
        cell = self.live.formula(
            self.sheet, row, PRICE, f"IF({number}=0,NA(),{number})", place, "result", "0"
        )
        self.number = f"${cell.column_letter}${cell.row}"
        for title in ("Description", "Style", "Recipe", "Range", "Ordered"):
            row += 1
            self._looked_up(row, self.quotes.place(title), title)
        unit, basis = (self.quotes.place(title) for title in ("Unit", "Length of"))
        text = f'{self._found(unit)}&" of "&{self._found(basis)}'
        shown = f"{self.row[unit]} of {self.row[basis]}"
        self.live.formula(self.sheet, row, PRICE, text, shown, "result line")
        return row + 1

    def _money(self, row: int) -> int:
        for column, head in ((LABEL, "Basis"), (LABEL + 1, None), (VALUE, "Cost"), (PRICE, "Price")):
            put(self.sheet, row, column, head, "column head" if column < VALUE else "number head")
        step = self.quotes.place("Price") - self.quotes.place("Cost")
        for place, item in enumerate(self.quotes.table.columns):
            if item.title != "Cost":
                continue
            row += 1
            self._label(row, None)
            basis = absolute(self.quotes.sheet, f"{self.quotes.letter(place)}{self.quotes.row + 1}")
            self.live.formula(self.sheet, row, LABEL, basis, item.unit, "result line")
            self._value(row, VALUE, place)
            self._value(row, PRICE, place + step)
        for title in ("Margin", "Order value", "Not priced", "Warnings"):
            row += 1
            place = self.quotes.place(title)
            self._looked_up(row, place, f"{title}, {self.quotes.cells[1][place]}".rstrip(", "))
        return row + 1

    def _looked_up(self, row: int, place: int, label: str) -> None:
        self._label(row, label)
        self._value(row, VALUE, place)

    def _label(self, row: int, label: str | None) -> None:
        put(self.sheet, row, LABEL, label, "result line")
        for column in range(LABEL + 1, HEADLINE + 1):
            put(self.sheet, row, column, None, "result line")

    def _found(self, place: int) -> str:
        return f"INDEX({self.quotes.range(place)},{self.number})"

    def _value(self, row: int, column: int, place: int) -> None:
        """A cell of the row of the chosen enquiry on the sheet Quotes."""
        item = self.quotes.table.columns[place]
        style, number = ("result", number_format(item)) if item.digits is not None else ("result line", "")
        self.live.formula(self.sheet, row, column, self._found(place), self.row[place], style, number)

    def _groups(self, groups: Live) -> None:
        """The groups of cost one below the other, with their share, and the chart."""
        self._section(self.top + 2, GROUP, GROUP + 3, self.text["groups"])
        row = self.top + 3
        unit = absolute(self.sheet, f"{groups.letter(GROUPS_FROM)}{groups.row + 1}")
        put(self.sheet, row, GROUP, "Group", "column head")
        put(self.sheet, row, GROUP + 1, None, "column head")
        self.live.formula(self.sheet, row, GROUP + 2, unit, groups.cells[1][GROUPS_FROM], "number head")
        put(self.sheet, row, GROUP + 3, "Share", "number head")
        first = row + 1
        all_groups = groups.place("All")
        for place in range(GROUPS_FROM, all_groups + 1):
            row += 1
            last = place == all_groups
            style, text_style = ("total number", "total text") if last else ("result", "result line")
            letter = groups.letter(place)
            head, value = (absolute(self.sheet, f"{letter}{line}") for line in (groups.row, groups.first))
            whole = absolute(self.sheet, f"{groups.letter(all_groups)}{groups.first}")
            shown: Any = groups.cells[2][place]
            self.live.formula(self.sheet, row, GROUP, head, groups.cells[0][place], text_style)
            put(self.sheet, row, GROUP + 1, None, text_style)
            self.live.formula(
                self.sheet, row, GROUP + 2, value, shown, style, number_format(groups.table.columns[place])
            )
            self.live.formula(
                self.sheet,
                row,
                GROUP + 3,
                f"{value}/{whole}",
                shown / groups.cells[2][all_groups],
                style,
                PERCENT,
            )
        title, axis = self.text["chart"], self.text["chart_axis"]
        series = [("cost", GROUP + 2)]
        bars = Bars(title, axis, GROUP, series, first + YARNS, row - 1, "0.000")
        add_chart(self.sheet, bars, (self.top + 2, CHART), *CHART_SIZE)
