"""Draw the live sheet Discharge: where water and COD leave, then loads and concentrations of each stream."""

from __future__ import annotations

from typing import Any

from openpyxl.utils import get_column_letter

from costing.front_ends.workbook.live_cells import LiveBook
from costing.front_ends.workbook.live_chart import Bars, add_chart
from costing.front_ends.workbook.live_table import Live, head_heights, widths_for
from costing.front_ends.workbook.results_sheets import number_format
from costing.front_ends.workbook.sheet_drawing import put, section
from costing.front_ends.workbook.styles import PERCENT, page, widths
from costing.front_ends.workbook.template_files import sheet_file
from costing.report.drain import FIGURES as FIGURES_OF_DRAIN

MOST_STREAMS, PRINTED_STREAMS = 24, 18
ALL_STREAMS = "all streams"
CHARTED = 8  # streams with a bar of their own; all further ones have one bar together
SECTION_COLUMNS = len(FIGURES_OF_DRAIN) + 2  # enquiry and stream in front of them
SECOND_PAGE = "Sulfur, all forms"  # first column of the second page
SAID = 6  # column in which it is said how much is printed
NAME, FIRST_FIGURE, SHARE = 1, 3, 7  # columns of the streams; a name runs over the column between
FIGURES = ("Flow", "COD, organic", "COD, inorganic sulfur", "COD, both")
FLOW, ORGANIC, SULFUR = 3, 4, 5  # their columns in the charts
CHARTS, CHART_HEIGHT = ((8, 9.2), (12, 9.2)), 6.5  # column and width, and height [cm]: on the first page


def draw_discharge(live: LiveBook) -> tuple[Live, Live]:
    """Streams with their charts, and below them loads and concentrations, a row for each stream."""
    text = sheet_file("live")["discharge"]
    sheet, top = live.sheet("discharge")
    live.repeat_chosen(sheet, top)
    put(sheet, top + 1, 1, text["estimate"], "estimate")
    at = top + 3
    row = at + CHARTED + 6
    tables = []
    for key, heading in (("discharge_loads", "loads"), ("discharge_concentrations", "concentrations")):
        section(sheet, row, text[heading], SECTION_COLUMNS)
        tables.append(live.table(sheet, row + 1, key, MOST_STREAMS, total=ALL_STREAMS))
        row = tables[-1].last + 2
    loads, concentrations = tables
    _Streams(live, loads, top).draw(at)
    wide = widths_for(loads, narrow=10.5, **{"Stream": 24.0, "COD, inorganic sulfur": 14.0})
    widths(sheet, wide)
    for table in tables:
        head_heights(table, wide)
    streams = loads.range(loads.place("Stream"))
    live.say_printed(sheet, (top, SAID), streams, loads.filled, PRINTED_STREAMS, "streams")
    page(
        sheet,
        freeze=f"C{top + 1}",
        title_columns="A:B",
        print_area=",".join([*_printed(loads, 1), *_printed(concentrations, concentrations.row - 1)]),
    )
    return loads, concentrations


def _printed(table: Live, top: int) -> list[str]:
    """The cells of a table in two halves, each for a page of its own; the first with what stands above it."""
    split, last = table.place(SECOND_PAGE), table.first + PRINTED_STREAMS - 1
    end = table.letter(len(table.table.columns) - 1)
    return [f"A{top}:{table.letter(split - 1)}{last}", f"{table.letter(split)}{table.row}:{end}{last}"]


class _Streams:
    """The streams one below the other, with their charts: each of the first ones, and all others together.

    Charts need cells without errors and without the sum of all streams.
    """

    def __init__(self, live: LiveBook, loads: Live, top: int) -> None:
        self.live, self.loads, self.sheet = live, loads, loads.sheet
        self.text = sheet_file("live")["discharge"]
        self.names = loads.place("Stream")
        self.places = [loads.place(title) for title in FIGURES]
        self.rows = [row for row in loads.cells[2:] if row[0]]
        count = f"SUMPRODUCT(--(LEN({loads.range(self.names)})>0))-1"
        put(self.sheet, top, FIRST_FIGURE, self.text["streams"], "live line")
        cell = live.formula(
            self.sheet, top, FIRST_FIGURE + 1, count, float(len(self.rows) - 1), "live number", "0"
        )
        self.count = f"${cell.column_letter}${cell.row}"

    def draw(self, row: int) -> None:
        section(self.sheet, row, self.text["by_stream"], SECTION_COLUMNS)
        self._heads(row + 1)
        first = row + 3
        self.whole = first + CHARTED + 1
        for number in range(1, CHARTED + 1):
            self._stream(first + number - 1, number)
        self._further(first, first + CHARTED)
        self._all(self.whole)
        last = first + CHARTED
        demand = [("COD, organic", ORGANIC), ("COD, inorganic sulfur", SULFUR)]
        (title, axis), (flow_title, flow_axis) = self.text["demand"], self.text["flow"]
        bars = (
            Bars(title, axis, NAME, demand, first, last, "0.0"),
            Bars(flow_title, flow_axis, NAME, [("flow", FLOW)], first, last, "0.0"),
        )
        for shown, (column, width) in zip(bars, CHARTS):
            add_chart(self.sheet, shown, (row + 1, column), width, CHART_HEIGHT)

    def _heads(self, row: int) -> None:
        put(self.sheet, row, NAME, self.loads.table.columns[self.names].title, "column head")
        put(self.sheet, row, NAME + 1, None, "column head")
        for column in (NAME, NAME + 1, SHARE):
            put(self.sheet, row + 1, column, None, "unit")
        for column, place in enumerate(self.places, start=FIRST_FIGURE):
            put(self.sheet, row, column, self.loads.table.columns[place].title, "number head")
            unit = self.live.look(self.sheet, row + 1, column, "unit", side="number")
            unit.value = self.loads.table.columns[place].unit
        put(self.sheet, row, SHARE, self.text["share"], "number head")
        self.sheet.row_dimensions[row].height = 30

    def _stream(self, row: int, number: int) -> None:
        """A stream of the table by its number, or nothing."""
        mine = self.rows[number - 1] if number < len(self.rows) else None
        spare = f"{number}>{self.count}"
        name = f'IF({spare},"",INDEX({self.loads.range(self.names)},{number})&"")'
        self._name(row, name, mine[self.names] if mine else "")
        for column, place in enumerate(self.places, start=FIRST_FIGURE):
            text = f'IF({spare},"",INDEX({self.loads.range(place)},{number}))'
            self._figure(row, column, text, mine[place] if mine else "")
        self._share(row, mine[self.places[-1]] if mine else "")

    def _further(self, first: int, row: int) -> None:
        """All streams beyond those with a bar of their own: what the whole has more than these."""
        more = f"{self.count}>{CHARTED}"
        others = self.rows[CHARTED:-1]
        self._name(row, f'IF({more},"{self.text["further"]}","")', self.text["further"] if others else "")
        for column, place in enumerate(self.places, start=FIRST_FIGURE):
            letter = get_column_letter(column)
            text = f'IF({more},{letter}{self.whole}-SUM({letter}{first}:{letter}{row - 1}),"")'
            self._figure(row, column, text, sum(other[place] for other in others) if others else "")
        self._share(row, sum(other[self.places[-1]] for other in others) if others else "")

    def _all(self, row: int) -> None:
        self._name(row, f'"{ALL_STREAMS}"', ALL_STREAMS, "total text")
        word = f'"{ALL_STREAMS}"'
        for column, place in enumerate(self.places, start=FIRST_FIGURE):
            same = self.loads.is_text(self.names, word)
            text = f"SUMPRODUCT(--{same},{self.loads.range(place)})"
            self._figure(row, column, text, self.rows[-1][place], "total number")
        self._share(row, self.rows[-1][self.places[-1]], "total number")

    def _name(self, row: int, text: str, shown: str, style: str = "result line") -> None:
        self.live.formula(self.sheet, row, NAME, text, shown, style)
        put(self.sheet, row, NAME + 1, None, style)

    def _figure(self, row: int, column: int, text: str, shown: Any, style: str = "result") -> None:
        number = number_format(self.loads.table.columns[self.places[column - FIRST_FIGURE]])
        self.live.formula(self.sheet, row, column, text, shown, style, number)

    def _share(self, row: int, shown: Any, style: str = "result") -> None:
        letter = get_column_letter(SHARE - 1)
        here, whole = f"{letter}{row}", f"{letter}{self.whole}"
        demand = self.rows[-1][self.places[-1]]
        text = f"IF(OR(N({here})=0,{whole}=0),{here},{here}/{whole})"
        share = shown / demand if shown not in ("", 0.0) else shown
        self.live.formula(self.sheet, row, SHARE, text, share, style, f'{PERCENT};-{PERCENT};"–"')
