"""What the commands of the buyer share: the order book they plan from, and how they plan."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

import click

from costing.front_ends.command_frame import asked_day, asked_quantity, only_one
from costing.quantities import InputError

if TYPE_CHECKING:
    from costing.front_ends.row_files.reading import LeftOut
    from costing.purchasing.plan import PurchasePlan
    from costing.purchasing.requirement import Requirement
    from costing.settings.mill import Mill
    from costing.settings.order_book import OrderLine, Planning
    from costing.settings.stock import Store

WEEKS = 13  # a quarter
Command = TypeVar("Command", bound=Callable[..., Any])

FEW_LOTS = 40  # up to here one ledger after the other is as fast as arrays, and loads no library

_OPTIONS = (
    click.option(
        "--orders",
        type=click.Path(path_type=Path, readable=False),
        multiple=True,
        callback=only_one,
        metavar="FILE",
        help="Orders of this .csv or .xlsx in place of the sheet Order book.",
    ),
    click.option(
        "--columns",
        metavar="MAP",
        help='Which heading is what, as "order=Auftrag, style=Artikel, length=Meter [m], due=Termin".',
    ),
    click.option("--keep-columns", is_flag=True, help="Keep that map beside the file of orders."),
    click.option(
        "--skip-unknown", is_flag=True, help="Leave out rows of enquiries that the book does not know."
    ),
    click.option(
        "--without-refused", is_flag=True, help="Leave out orders that cannot be planned, and say so."
    ),
    click.option("--forecast", is_flag=True, help="Plan forecasts like orders."),
    click.option(
        "--from", "day", metavar="YYYY-MM-DD", help="Plan from this day; else that of the book, or today."
    ),
    click.option("--gather", metavar="TIME", help="Dye orders of one shade together that are due within it."),
    click.option("--before-due", metavar="TIME", help="From the beginning of a lot to the day it is due."),
    click.option("--keep-bath", metavar="TIME", help="Lots of one recipe within it share a dye bath."),
)

_AHEAD = (
    click.option("--weeks", default=WEEKS, show_default=True, metavar="N", help="Plan so many weeks."),
    click.option(
        "--late",
        "delay",
        default=0,
        metavar="DAYS",
        help="Everything that is on order, or ordered from now on, comes so many days later.",
    ),
)


class Asked(NamedTuple):
    """The options of the plan, as they were given."""

    orders: Path | None
    columns: str | None
    keep_columns: bool
    skip_unknown: bool
    without_refused: bool
    forecast: bool
    day: str | None
    gather: str | None
    before_due: str | None
    keep_bath: str | None


class Planned(NamedTuple):
    """A plan: the day it is made from, how, what it takes, and what of a file is in no total."""

    day: datetime.date
    planning: Planning
    found: Requirement
    skipped: Sequence[LeftOut]

    @property
    def rows_skipped(self) -> int:
        """Rows of the file that are in no total."""
        return sum(item.rows for item in self.skipped)


class StockPlanned(NamedTuple):
    """A plan of purchases, with the store and the plan of the order book that it rests on."""

    store: Store
    asked: Planned
    found: PurchasePlan


def plan_options(command: Command) -> Command:
    """Give a command the options of the plan; it takes them as `Asked` does."""
    return _with(_OPTIONS, command)


def stock_options(command: Command) -> Command:
    """Give a command the options of a plan of purchases, `weeks` and `delay`."""
    return _with(_AHEAD, command)


def _with(options: Sequence[Callable[[Command], Command]], command: Command) -> Command:
    for option in reversed(options):
        command = option(command)
    return command


def stock_planned(mill: Mill, asked: Asked, weeks: int, delay: int, overwrite: bool = False) -> StockPlanned:
    """Plan the purchases for the order book.

    Raises
    ------
    InputError
        Nothing in store, on order or to be bought; from `planned` and `plan_purchases`.
    """
    from costing.book.stock import PURCHASE_TERMS, store_of
    from costing.purchasing.plan import plan_purchases

    store = store_of(mill)
    if not (store.terms or store.batches or store.open_orders):
        raise InputError(
            PURCHASE_TERMS, "holds no row, nor do Stock and Open orders; accepted is one or more"
        )
    needs = planned(mill, asked, overwrite)
    return StockPlanned(store, needs, plan_purchases(mill, store, needs.found.needs, needs.day, weeks, delay))


def planned(mill: Mill, asked: Asked, overwrite: bool = False) -> Planned:
    """Plan the order book.

    Raises
    ------
    InputError
        No order book; a cell, a row or an option of it is refused; an order that cannot be planned, unless
        those are to be left out.
    """
    from costing.book.order_book import planning_of
    from costing.purchasing.dye_lots import plan_lots
    from costing.purchasing.requirement import one_by_one, refuse_left_out, requirement

    planning = _as_asked(planning_of(mill), asked)
    day = asked_day(asked.day, "--from") if asked.day else planning.plan_from or datetime.date.today()
    lines, skipped = _lines(mill, asked, overwrite)
    plan = plan_lots(mill, lines, planning, day, asked.forecast)
    if not plan.lots and not plan.left_out:
        raise InputError("order book", "holds no order that is still to be dyed; accepted is one row or more")
    explode = one_by_one
    if len(plan.lots) > FEW_LOTS:
        from costing.many.requirement import together as explode
    found = requirement(mill, plan, explode)
    if not asked.without_refused:
        refuse_left_out(found.left_out)
    return Planned(day, planning, found, skipped)


def _as_asked(planning: Planning, asked: Asked) -> Planning:
    given = {
        "gather_time": (asked.gather, "--gather"),
        "time_before_due": (asked.before_due, "--before-due"),
        "bath_keeping_time": (asked.keep_bath, "--keep-bath"),
    }
    changed: dict[str, Any] = {
        name: asked_quantity(text, name, option) for name, (text, option) in given.items() if text is not None
    }
    return replace(planning, **changed)


def _lines(mill: Mill, asked: Asked, overwrite: bool) -> tuple[Sequence[OrderLine], Sequence[LeftOut]]:
    from costing.book.order_book import ORDER_BOOK

    if asked.orders is None:
        if asked.columns or asked.keep_columns or asked.skip_unknown:
            raise InputError("--columns", "goes with --orders, a file of orders")
        lines = mill.kept(ORDER_BOOK)
        if not lines:
            raise InputError(
                ORDER_BOOK,
                "holds no order; accepted is one row or more, or a file of orders with --orders",
            )
        return lines, []
    from costing.front_ends.order_file import FORM, read_orders
    from costing.front_ends.row_files.column_map import asked_columns, keep

    columns = asked_columns(asked.columns, asked.orders, FORM)
    read = read_orders(asked.orders, mill, columns, asked.skip_unknown)
    if asked.keep_columns:
        click.echo(f"columns kept in {keep(columns, asked.orders, FORM, overwrite)}", err=True)
    return read.lines, read.left_out
