"""Draw all live sheets of a book, and give the results that stand behind their formulas."""

from __future__ import annotations

from typing import Any

from openpyxl.workbook import Workbook

from costing.front_ends.workbook.live_areas import name_areas
from costing.front_ends.workbook.live_cells import LiveBook
from costing.front_ends.workbook.live_checks import CheckSheet
from costing.front_ends.workbook.live_chosen import draw_chosen
from costing.front_ends.workbook.live_drain import draw_drain
from costing.front_ends.workbook.live_drivers import draw_drivers
from costing.front_ends.workbook.live_purchasing import draw_purchasing
from costing.front_ends.workbook.live_quote import QuoteSheet, draw_quotes
from costing.front_ends.workbook.live_results import BookResults


def draw_live_sheets(book: Workbook, shown: BookResults) -> dict[str, dict[str, Any]]:
    """Draw Quotes, Quote, the other sheets of the chosen enquiry, Purchasing, the drain's, and Checks.

    Parameters
    ----------
    book : Workbook
        With its input sheets; takes the live ones and the defined names.
    shown : BookResults
        The filled demo.

    Returns
    -------
    dict
        Sheet -> cell -> what its formula shows in the demo.
    """
    name_areas(book)
    live = LiveBook(book, shown)
    quotes = draw_quotes(live)
    quote = QuoteSheet(live, quotes).draw()
    chosen = draw_chosen(live)
    drivers = draw_drivers(live)
    purchasing = draw_purchasing(live)
    drain = draw_drain(live)
    checks = CheckSheet(live, [quotes, *quote, *chosen, *drivers, purchasing.uses, *drain])
    checks.draw(quote[2], chosen, drivers, purchasing)
    return live.results
