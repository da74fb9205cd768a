"""Figures of one demo enquiry, read from its ledger by step, substance and account."""

from __future__ import annotations

from functools import cache

from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.process.postings import CONDENSATE, STORE, YARN
from costing.report import Result, work_out
from costing.settings.mill import Mill

BLACK, SULFIDE, PEROXIDE = "SULFUR-BLACK-LIQ", "sodium_sulfide", "hydrogen_peroxide"
CAUSTIC = "sodium_hydroxide"
SIZE = ("STARCH-MOD", "PVA-95", "SIZE-WAX")


@cache
def mill() -> Mill:
    return read_book(demo_book())


@cache
def result(code: str) -> Result:
    return work_out(mill(), mill().enquiries[code])


def moved(
    code: str, substance: str, step: str = "", source: str = "", destination: str = "", cause: str = ""
) -> float:
    """What a kilogram of grey yarn moves while the range runs, of the lines that begin with what is named."""
    return sum(
        line.amount
        for line in result(code).ledger.run.lines
        if line.substance == substance
        and line.step.startswith(step)
        and line.source.startswith(source)
        and line.destination.startswith(destination)
        and line.cause.startswith(cause)
    )


def bought(code: str, material: str, step: str = "", cause: str = "") -> float:
    """A product as delivered, per kilogram of grey yarn while the range runs."""
    return sum(
        line.amount
        for line in result(code).ledger.run.lines
        if line.material == material
        and line.source == STORE
        and line.step.startswith(step)
        and line.cause.startswith(cause)
    )


def used(code: str, material: str, step: str = "") -> float:
    """The same per kilogram of saleable yarn, with leaders, fills and cleaning."""
    lines = result(code).ledger.lines
    return sum(
        line.amount
        for line in lines
        if line.material == material and line.source == STORE and line.step.startswith(step)
    )


def setting(code: str, step: str, name: str) -> float:
    return float(getattr(next(item for item in result(code).ledger.steps if item.name == step), name))


def arriving(code: str, step: str, substance: str) -> float:
    """What comes into a step in the yarn's liquor."""
    (yarn,) = [yarn for item, yarn in result(code).ledger.run.entering if item.name == step]
    return yarn.dissolved.get(substance, 0.0)


def dry_warp(code: str) -> float:
    """What comes to the size box, bone dry."""
    (yarn,) = [yarn for item, yarn in result(code).ledger.run.entering if item.name == "size box"]
    held = (yarn.dissolved, yarn.loose, yarn.dried_on)
    return yarn.fibre + yarn.fixed + sum(sum(amounts.values()) for amounts in held)


def dry_size(code: str) -> float:
    """Dry size that stays on the warp, its products as 100 %."""
    return sum(moved(code, name, "size box", destination=YARN) for name in SIZE)


def size_of_the_fill(code: str) -> float:
    """Dry size in a litre of the first fill of the size box of 700 L [kg/L]."""
    ledger = result(code).ledger
    filled = sum(
        line.amount for line in ledger.lines if line.substance in SIZE and line.cause == "first fill"
    )
    return filled * ledger.plan.saleable_mass / 700.0


def steam_of_cans(code: str, step: str) -> float:
    return sum(
        line.amount
        for line in result(code).ledger.lines
        if line.step == step and line.destination == CONDENSATE
    )


def fixed(code: str, dye: str) -> float:
    """Dye that stays on the yarn, of what is fed while the range runs [%]."""
    stays = moved(code, dye, destination=YARN, cause="stays on the yarn")
    return 100.0 * stays / moved(code, dye, source=STORE)


def drained(code: str, parameter: str) -> float:
    """Load of all streams [g/kg]."""
    return 1000.0 * result(code).streams[-1].loads[parameter]
