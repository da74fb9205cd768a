"""How every sheet looks: fonts, fills, named styles and print setup, in the book and in its results.

A cell that may be typed in has a light fill, a thin border all round and is unlocked; everything else
has no border all round. So the two are told apart in black and white as well.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Literal

from openpyxl.styles import Alignment, Border, Font, NamedStyle, PatternFill, Protection, Side
from openpyxl.workbook import Workbook
from openpyxl.worksheet.header_footer import HeaderFooterItem, _HeaderFooterPart
from openpyxl.worksheet.worksheet import Worksheet

FONT = "Calibri"
INK = "1D2730"
MUTED = "55626E"
RULE = "8E9AA5"
DARK = "22384F"
BAND = "DCE4EB"
PALE = "EFF3F6"
INPUT = "FFF8DF"
ALERT = "F6D9CF"
UNREAD = "D4D8DC"  # cells that nothing reads
REFUSED = "9C1C1C"

# For the series of a chart, in this order: neighbours differ in brightness, not in hue alone.
CHART_COLOURS = ("22384F", "A8C1D9", "5F83A8", "E0B070", "8A5A33", "CBD3C0", "63765A", "BFBFBF", "6E6E6E")

NUMBER = "General"
WHOLE = "#,##0"
ONE_DECIMAL = "#,##0.0"
TWO_DECIMALS = "#,##0.00"
THREE_DECIMALS = "#,##0.000"
FOUR_DECIMALS = "#,##0.0000"
PERCENT = "0.0%"
DATE = "yyyy-mm-dd"
TEXT = "@"

A4 = 9
UPRIGHT, ACROSS = 133.0, 196.0  # characters across A4 at which ten points print at seven: found by printing

Horizontal = Literal["left", "center", "right"]
Vertical = Literal["top", "center", "bottom"]
Weight = Literal["hair", "thin", "medium", "thick", "double", "dashed"]


def font(size: float = 10, *, bold: bool = False, italic: bool = False, colour: str = INK) -> Font:
    """A font with its name and size given, so that no program puts its own in their place."""
    return Font(name=FONT, size=size, bold=bold, italic=italic, color=f"FF{colour}")


def fill(colour: str) -> PatternFill:
    """A plain fill."""
    return PatternFill("solid", start_color=f"FF{colour}", end_color=f"FF{colour}")


def line(weight: Weight = "thin", colour: str = RULE) -> Side:
    """One side of a border."""
    return Side(style=weight, color=f"FF{colour}")


def box() -> Border:
    """The border of a cell that may be typed in."""
    return Border(left=line(), right=line(), top=line(), bottom=line())


def _style(
    name: str,
    text: Font,
    *,
    colour: str = "",
    border: Border | None = None,
    horizontal: Horizontal | None = None,
    vertical: Vertical = "center",
    wrap: bool = False,
    number: str = NUMBER,
    padded: bool = True,
    typed: bool = False,
) -> NamedStyle:
    return NamedStyle(
        name=name,
        font=text,
        fill=fill(colour) if colour else PatternFill(),
        border=border or Border(),
        alignment=Alignment(
            horizontal=horizontal,
            vertical=vertical,
            wrap_text=wrap,
            indent=1 if padded and horizontal == "left" else 0,
        ),
        number_format=number,
        protection=Protection(locked=not typed),
    )


def named_styles() -> list[NamedStyle]:
    """Every named style of the book and of its results, made new.

    ``sheet title``, ``subtitle``, ``intro``, ``intro line``, ``section``, ``column head``, ``number head``,
    ``row label``, ``row step``, ``unit``, ``remark``, ``column note``, ``text``, ``strong text``,
    ``row text``, ``strong row``: the frame.
    ``given number``, ``given text``, ``given code``, ``given choice``, ``given date``: cells to type in.
    ``table number``, ``table text``: facts of the reference tables, not to be typed over.
    ``result``, ``result text``, ``total number``, ``total text``, ``key figure``, ``check``,
    ``alert``, ``result line``, ``estimate``: results.
    ``live number``, ``live line``: results of array formulas; a conditional
    format draws their rules as far down as there are rows.

    No name is one of a spreadsheet program's own styles (Title, Total, Note ...), in any case.
    """
    under = Border(bottom=line("medium", DARK))
    thin = Border(bottom=line("thin", DARK))
    hair = Border(bottom=line("hair"))
    total = Border(top=line("thin", INK), bottom=line("double", INK))
    return [
        _style("sheet title", font(18, bold=True, colour=DARK), padded=False),
        _style("subtitle", font(12, colour=MUTED), padded=False),
        _style("intro", font(10, colour=INK), padded=False, vertical="top", wrap=True),
        _style("intro line", font(10, colour=INK), padded=False),
        _style("section", font(11, bold=True, colour=DARK), colour=PALE, border=thin, horizontal="left"),
        _style("column head", font(10, bold=True), colour=BAND, border=under, horizontal="left", wrap=True),
        _style("number head", font(10, bold=True), colour=BAND, border=under, horizontal="right", wrap=True),
        _style("row label", font(10), border=hair, horizontal="left", wrap=True),
        _style("row step", font(10, colour=MUTED), border=hair, horizontal="left"),
        _style("unit", font(10, colour=MUTED), border=hair, horizontal="left"),
        _style("remark", font(9, italic=True, colour=MUTED), border=hair, horizontal="left", wrap=True),
        _style(
            "column note", font(9, italic=True, colour=MUTED), horizontal="left", vertical="bottom", wrap=True
        ),
        _style("text", font(10), horizontal="left", wrap=True),
        _style("row text", font(10), border=hair, horizontal="left", vertical="top", wrap=True),
        _style("strong row", font(10, bold=True), border=hair, horizontal="left", vertical="top", wrap=True),
        _style("strong text", font(10, bold=True), horizontal="left", wrap=True),
        _style("given number", font(10), colour=INPUT, border=box(), horizontal="right", typed=True),
        _style("given text", font(10), colour=INPUT, border=box(), horizontal="left", wrap=True, typed=True),
        _style("given code", font(10, bold=True), colour=INPUT, border=box(), horizontal="left", typed=True),
        _style(
            "given choice", font(10), colour=INPUT, border=box(), horizontal="left", wrap=True, typed=True
        ),
        _style(
            "given date", font(10), colour=INPUT, border=box(), horizontal="right", number=DATE, typed=True
        ),
        _style("table number", font(10, colour=MUTED), border=hair, horizontal="right"),
        _style("table text", font(9, colour=MUTED), border=hair, horizontal="left", wrap=True),
        _style("result", font(10), border=hair, horizontal="right", number=THREE_DECIMALS),
        _style("result text", font(10), border=hair, horizontal="left", wrap=True),
        _style("live number", font(10), horizontal="right", number=THREE_DECIMALS),
        _style("live line", font(10), horizontal="left"),
        _style("result line", font(10), border=hair, horizontal="left"),
        _style("total number", font(10, bold=True), border=total, horizontal="right", number=THREE_DECIMALS),
        _style("total text", font(10, bold=True), border=total, horizontal="left"),
        _style("key figure", font(14, bold=True, colour=DARK), horizontal="right", number=TWO_DECIMALS),
        _style("check", font(10, bold=True), border=hair, horizontal="center"),
        _style("estimate", font(10, bold=True, colour=REFUSED), padded=False),
        _style("alert", font(10, bold=True), colour=ALERT, border=Border(left=line("thick", INK)), wrap=True),
    ]


def add_styles(book: Workbook) -> None:
    """Give a new book all named styles."""
    present = set(book.named_styles)
    for style in named_styles():
        if style.name not in present:
            book.add_named_style(style)


def widths(sheet: Worksheet, columns: Mapping[str, float]) -> None:
    """Set column widths, in characters, by letter."""
    for letter, width in columns.items():
        sheet.column_dimensions[letter].width = width


def pages_across(columns: Sequence[float], repeated: int = 0, room: float = ACROSS) -> int:
    """Pages beside each other on which columns print in a size that can be read.

    Parameters
    ----------
    columns : sequence of float
        Widths, from the first on, in characters.
    repeated : int, optional
        How many of the first stand on each page.
    room : float, optional
        Of a page: ACROSS or UPRIGHT.

    Examples
    --------
    >>> pages_across([50, 100, 40, 40]), pages_across([50, 100, 40, 40, 60, 60], repeated=1)
    (2, 3)
    """
    pages, taken = 1, 0.0
    for place, width in enumerate(columns):
        if taken + width > room and place >= repeated:
            pages, taken = pages + 1, sum(columns[:repeated])
        taken += width
    return pages


def _footer_part(text: str) -> _HeaderFooterPart:
    return _HeaderFooterPart(text=text, size=8, font=f"{FONT},Regular")


def page(
    sheet: Worksheet,
    *,
    title_rows: str = "",
    title_columns: str = "",
    landscape: bool = True,
    freeze: str = "",
    pages_wide: int = 1,
    one_page: bool = False,
    print_area: str = "",
    heading: str = "",
) -> None:
    """Print on A4, as wide as the page or two, with repeated heads and a footer; freeze the panes.

    Parameters
    ----------
    sheet : Worksheet
        To set up.
    title_rows, title_columns : str, optional
        Rows and columns that each page repeats, such as ``1:6`` and ``A:C``.
    landscape : bool, optional
        False for a portrait page.
    freeze : str, optional
        First cell that scrolls.
    pages_wide : int, optional
        2 for a sheet so wide that one page would be too small to read.
    one_page : bool, optional
        True for a sheet that is also to be no longer than a page.
    print_area, heading : str, optional
        Cells to print where that is not all, and a line on top of each page in place of what is left out.
    """
    sheet.sheet_view.showGridLines = False
    sheet.sheet_view.zoomScale = 100
    sheet.page_setup.orientation = "landscape" if landscape else "portrait"
    sheet.page_setup.paperSize = A4
    sheet.page_setup.fitToWidth = pages_wide
    sheet.page_setup.fitToHeight = 1 if one_page else 0
    sheet.sheet_properties.pageSetUpPr.fitToPage = True  # type: ignore[union-attr]
    margins = sheet.page_margins
    margins.left = margins.right = 0.5
    margins.top, margins.bottom, margins.header, margins.footer = 0.5, 0.7, 0.3, 0.3
    sheet.print_options.horizontalCentered = False
    footer = HeaderFooterItem(
        left=_footer_part("&F"), center=_footer_part("&A"), right=_footer_part("page &P of &N")
    )
    sheet.oddFooter = footer
    if heading:
        part = _HeaderFooterPart(text=heading, size=12, font=f"{FONT},Bold")
        sheet.oddHeader = HeaderFooterItem(left=part, center=_footer_part(""), right=_footer_part(""))
        margins.top = 0.75
    if print_area:
        sheet.print_area = print_area
    if title_rows:
        sheet.print_title_rows = title_rows
    if title_columns:
        sheet.print_title_cols = title_columns
    if freeze:
        sheet.freeze_panes = freeze
