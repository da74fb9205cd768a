"""The command that writes a quote: a page for the customer, and the mill's working in a file of its own."""

from __future__ import annotations

import datetime
import re
from pathlib import Path
from typing import TYPE_CHECKING

import click

from costing.front_ends.command_frame import BOOK, ON, one_line_errors, read, results_of
from costing.quantities import InputError

if TYPE_CHECKING:
    from costing.front_ends.workbook.customer_page import Page
    from costing.report import Result, Table
    from costing.settings.mill import Mill

VALID_DAYS = 30
SAME = 1e-9  # by which the same quote may differ between machines
LONGEST = 200  # letters of a text
TERMS = {"payment": "Payment", "delivery": "Delivery", "tolerance": "Tolerances", "other term": "Further"}
XLSX, PDF = ".xlsx", ".pdf"
CUSTOMER, WORKING = "_customer", "_working"  # behind the number of the quote


@click.command()
@BOOK
@click.option("--enquiry", "-e", "code", required=True, metavar="CODE", help="Enquiry of the book.")
@click.option("--number", metavar="TEXT", help="Number of the quote; the code of the enquiry when left out.")
@click.option("--customer", default="", metavar="TEXT", help="For whom.")
@click.option(
    "--valid-until",
    type=click.DateTime(["%Y-%m-%d"]),
    metavar="DATE",
    help=f"As 2026-12-31; {VALID_DAYS} days from today when left out.",
)
@click.option("--shrinkage", is_flag=True, help="Tell the customer what finishing takes off, too.")
@click.option("--draws", type=click.IntRange(100, 1_000_000), default=10_000, show_default=True)
@click.option(
    "--out", "-o", type=click.Path(path_type=Path), help="Folder for the files; default: the current one."
)
@click.option("--pdf", is_flag=True, help="Print both as PDF, too; needs LibreOffice.")
@click.option("--overwrite", is_flag=True, help="Replace earlier files of that quote.")
@ON
@one_line_errors
def document(
    book: Path | None,
    code: str,
    number: str | None,
    customer: str,
    valid_until: datetime.datetime | None,
    shrinkage: bool,
    draws: int,
    out: Path | None,
    pdf: bool,
    overwrite: bool,
    on: str | None,
) -> None:
    """Write a quote: one page for the customer, and the mill's full working in a file of its own.

    The page has number, dates, cloth, length, price and value, and the texts of the sheet Quote texts;
    nothing of recipe, cost or margin. The working has every input with its range, cost by step, material
    and cause, range, drivers, lot curve, prices with their dates, remarks, versions, and a snapshot from
    which the quote can be made again. Send the first, keep the second.

    \b
    costing document my_mill.xlsx -e Q-02 --number 2026-117 --customer "customer 12" --pdf
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends.printed import check_printer, printed_by_libreoffice
    from costing.front_ends.whole_file import write_together
    from costing.front_ends.workbook.customer_page import customer_book
    from costing.front_ends.workbook.results import midnight
    from costing.front_ends.workbook.working_book import working_book

    if pdf:
        check_printer()
    today = datetime.date.today()
    until = today + datetime.timedelta(VALID_DAYS) if valid_until is None else valid_until.date()
    if until < today:
        raise InputError("--valid-until", f"is {until}, which is past; accepted is today or later")
    mill, source = read(book, on)
    (result,) = results_of(mill, source, (code,))
    called = _one_line(number or result.enquiry.code, "--number")
    said: dict[str, str | datetime.date] = {"Number": called, "Date": today, "Valid until": until}
    if customer.strip():
        said["For"] = _one_line(customer, "--customer")
    page = _page(mill, result, said, shrinkage)
    folder, name = out or Path.cwd(), re.sub(r"[^\w.-]+", "-", called)
    files = {folder / f"{name}{part}{XLSX}": part for part in (CUSTOMER, WORKING)}
    if pdf:
        files |= {folder / f"{name}{part}{PDF}": part for part in (CUSTOMER, WORKING)}
    _check_earlier(files, overwrite)
    made = {
        CUSTOMER: customer_book(page, midnight()),
        WORKING: working_book(_working(mill, result, said, draws), midnight()),
    }
    contents = {
        path: made[part] if path.suffix == XLSX else printed_by_libreoffice(made[part], path.stem)
        for path, part in files.items()
    }
    write_together(
        {path: lambda whole=whole: whole for path, whole in contents.items()},  # type: ignore[misc]
        what="a quote",
        suffixes=(XLSX, PDF),
        overwrite=overwrite,
    )
    offer = page.offer
    click.echo(
        f"{called}: {offer.price} {offer.currency} per {offer.unit} of {offer.counted_on}, "
        f"{offer.length:,.0f} {offer.unit}, {offer.value:,} {offer.currency}"
    )
    for path, part in files.items():
        whose = "for the customer" if part == CUSTOMER else "for the mill only: recipe, cost and margin"
        click.echo(f"{whose}: {path}")
    for note in result.remarks:
        if note.kind == "warning":
            click.echo(f"warning, {note.where}: {note.text}")


def _one_line(text: str, option: str) -> str:
    plain = " ".join(text.split())
    if not plain or len(plain) > LONGEST or not plain.isprintable():
        raise InputError(option, f"is {text[:LONGEST]!r}; accepted is a line of 1 to {LONGEST} letters")
    return plain


def _page(mill: Mill, result: Result, said: dict[str, str | datetime.date], with_shrinkage: bool) -> Page:
    """What the customer reads, after no text of it was found to name a product or the recipe."""
    from costing.front_ends.workbook.customer_page import Page
    from costing.report import costs_of, decimals_of
    from costing.report.offer import cloth_facts, offer_of, refuse_recipe_words

    enquiry = result.enquiry
    style = mill.style(enquiry.style)
    own = [item for item in mill.quote_texts if item.enquiry in ("", enquiry.code)]
    texts = {item.where: item.text for item in own}
    texts[mill.places.get(("style", style.code), "style")] = f"{style.code} {style.description}"
    options = {"Number": "--number", "For": "--customer"}
    texts |= {options[what]: str(said[what]) for what in options if what in said}
    refuse_recipe_words(mill, result, texts)

    def lines(kind: str) -> list[str]:
        return [item.text for item in own if item.kind == kind]

    return Page(
        [*lines("mill"), *lines("address"), *lines("contact")],
        list(said.items()),
        style.code,
        style.description,
        cloth_facts(result.ledger, with_shrinkage),
        offer_of(mill, result),
        decimals_of(costs_of(mill).money_rounding),
        [(head, text) for kind, head in TERMS.items() for text in lines(kind)],
        lines("closing"),
    )


def _working(mill: Mill, result: Result, said: dict[str, str | datetime.date], draws: int) -> list[Table]:
    """Tables of the mill's working; a range or a lot curve that is refused is told in place of its table."""
    from costing import report
    from costing.many import tables
    from costing.many.band import SEED
    from costing.many.lot_curve import lot_curve
    from costing.report import working

    enquiry = result.enquiry
    facts = working.facts_of_quote(mill, result, {**said})
    found = [
        facts,
        working.inputs_table(mill, result),
        working.words_table(mill, result),
        report.TABLES["cost_by_step"](mill, [result]),
        working.cost_opened(mill, result, "material"),
        working.cost_opened(mill, result, "cause"),
        working.prices_used(mill, result),
        *(report.TABLES[key](mill, [result]) for key in ("checks", "defaults_taken", "sources")),
        working.snapshot_table(mill, result),
    ]
    try:
        item = tables.ranged(mill, enquiry, draws)
        found += [
            tables.band_table(mill, [item]),
            tables.group_band_table(mill, item),
            tables.driver_table(mill, item, len(item.first_order.drivers)),
        ]
        facts.rows.append(["draws, and what they start from", f"{draws:,}, {SEED}"])
    except InputError as error:
        facts.rows.append(["range and drivers", f"refused: {error}"])
    try:
        found.append(tables.lot_table(mill, enquiry, lot_curve(mill, enquiry), 60))
    except InputError as error:
        facts.rows.append(["lot curve", f"refused: {error}"])
    return found


def _check_earlier(files: dict[Path, str], overwrite: bool) -> None:
    """Refuse to replace a file that is no earlier one of a quote; a PDF is one beside its workbook."""
    from costing.front_ends.workbook import customer_page, working_book
    from costing.front_ends.workbook.results import not_replaced, sheet_names

    wanted = {CUSTOMER: {customer_page.SHEET}, WORKING: working_book.OWN_SHEETS}
    for path, part in files.items():
        if overwrite and path.exists() and not wanted[part] <= sheet_names(path.with_suffix(XLSX)):
            raise not_replaced(path)


@click.command()
@click.argument("working", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@one_line_errors
def requote(working: Path) -> None:
    """Work a quote out again from the file *_working.xlsx of it, whatever its book holds by now.

    Takes the inputs that the working keeps, and this version with its tables; says what the price was, and
    what it is.
    """
    import costing
    from costing.front_ends.workbook.working_book import kept_in
    from costing.reference_data import fingerprint
    from costing.report import work_out
    from costing.report.offer import offer_of
    from costing.report.working import OFFERED, TABLES_MARK, VERSION
    from costing.settings.snapshot import from_text, restored

    facts, text = kept_in(working)
    mill, enquiry = restored(from_text(text, working.name))
    offer = offer_of(mill, work_out(mill, enquiry))
    (before,) = [value for what, value in facts.items() if what.startswith(OFFERED)]
    unit = f"{offer.currency} per {offer.unit} of {offer.counted_on}"
    click.echo(f"was {float(before):.6f}, is {offer.exact:.6f} {unit}; offered now {offer.price}")
    now = {VERSION: costing.__version__, TABLES_MARK: fingerprint()}
    others = [
        f"{what} {facts.get(what)}, now {is_now}" for what, is_now in now.items() if facts.get(what) != is_now
    ]
    alike = abs(float(before) / offer.exact - 1.0) < SAME
    said = "the same quote" if alike else "not the same quote"
    click.echo("; ".join([said, *others]))
