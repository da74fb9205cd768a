"""What a practitioner would say of the settings before believing the number."""

from __future__ import annotations

from dataclasses import fields
from functools import cache
from typing import Any, NamedTuple

from costing.ledger.box_remarks import box_warnings
from costing.ledger.whole import Ledger
from costing.process.bath_balance import CAUSTIC_SURPLUS, SURPLUS
from costing.quantities import QUANTITIES, label, shown
from costing.quantities.units import convert
from costing.reference_data import defaults, published_ranges
from costing.settings.building import default_key
from costing.settings.steps import IndigoDyeing, Rinse

MUCH_OVERFLOW = 0.1  # L/kg


class Remark(NamedTuple):
    """One remark.

    Attributes
    ----------
    kind : str
        ``warning``: the number may mislead; ``unusual``: outside the usual range of the table.
    where : str
        Step or setting.
    text : str
        One sentence in the trade's words.
    """

    kind: str
    where: str
    text: str


def remarks(ledger: Ledger) -> list[Remark]:
    """Warnings and unusual settings of a ledger.

    Parameters
    ----------
    ledger : Ledger
        Of an enquiry.

    Returns
    -------
    list of Remark
        Warnings first.
    """
    return [*_warnings(ledger), *_unusual(ledger), *_unusual_cloth(ledger)]


def _warnings(ledger: Ledger) -> list[Remark]:
    found: list[Remark] = []
    posted = {(step, cause) for step, _, _, cause, amount, _, _ in ledger.run.postings if amount > 1e-12}
    for step, yarn in ledger.run.entering:
        if isinstance(step, IndigoDyeing):
            found += [Remark("warning", step.name, text) for text in _of_bath(step, posted, ledger)]
            if yarn.air_dry:
                text = "the yarn is not wetted out: it brings its air into the first dip"
                found.append(Remark("warning", step.name, text))
        if isinstance(step, Rinse) and (step.name, "holds the level") in posted:
            found.append(
                Remark(
                    "warning",
                    step.name,
                    "the rinse gets less water than the yarn takes up; water was added to hold the level",
                )
            )
    found += [Remark("warning", where, text) for where, text in box_warnings(ledger)]
    for what, code in (("warp", ledger.style.warp_yarn), ("weft", ledger.style.weft_yarn)):
        if not code:
            text = f"no code of a {what} yarn: the {what} yarn is not in the cost and not in the price"
            found.append(Remark("warning", f"style {ledger.style.code}", text))
    lost = ledger.range.leader_length + ledger.range.off_shade_length
    if ledger.plan.set_length < lost:
        found.append(
            Remark(
                "warning",
                "lot",
                f"each set sells {ledger.plan.set_length:.0f} m of warp and runs {lost:.0f} m of leader and "
                "off-shade warp",
            )
        )
    return found


def _of_bath(step: IndigoDyeing, posted: set[tuple[str, str]], ledger: Ledger) -> list[str]:
    found = []
    if (step.name, SURPLUS) in posted:
        found.append(
            "the stock vat brings more hydrosulfite than the bath loses: the bath will climb above "
            "the recipe; lower the stock ratio"
        )
    if (step.name, CAUSTIC_SURPLUS) in posted:
        found.append(
            "stock vat, dye and scour bring more caustic than the bath loses: the bath will climb above "
            "the recipe"
        )
    over = ledger.run.feeds[step.name].overflow
    if over > MUCH_OVERFLOW:
        found.append(
            f"the dye bath overflows {over:.2f} L/kg with its dye: squeeze harder before the first dip, "
            "or feed stronger"
        )
    if step.bath_hydrosulfite == 0.0:
        found.append("no free hydrosulfite in the bath: the dye would oxidise in the box")
    return found


def _unusual(ledger: Ledger) -> list[Remark]:
    table = defaults()
    found = []
    owners: list[tuple[str, tuple[str, ...], Any]] = [
        (step.name, (step.KIND,), step) for step in ledger.steps
    ]
    owners.append((f"range {ledger.range.code}", ledger.range.GROUPS, ledger.range))
    owners.append((f"style {ledger.style.code}", ledger.style.GROUPS, ledger.style))
    owners.append((f"enquiry {ledger.enquiry.code}", ledger.enquiry.GROUPS, ledger.enquiry))
    for where, groups, item in owners:
        for name, key in _compared(type(item), groups):  # type: ignore[arg-type]
            value = getattr(item, name)
            if value is None:
                continue
            row = table[key]
            slack = 1e-9 * max(abs(row.low), abs(row.high))
            if value < row.low - slack or value > row.high + slack:
                quantity = QUANTITIES[name]
                found.append(
                    Remark(
                        "unusual",
                        where,
                        f"{label(name)} is {shown(quantity, value)}; usual is {shown(quantity, row.low)} to "
                        f"{shown(quantity, row.high)}",
                    )
                )
    return found


def _unusual_cloth(ledger: Ledger) -> list[Remark]:
    """Counts and cloth that no denim has: mostly a unit that belongs to another column."""
    found = []
    style = ledger.style
    for what, value, unit, key in (
        ("warp count", ledger.fabric.linear_density, "kg/m", "warp_count"),
        ("weft count", style.weft_count * style.weft_ply, "kg/m", "weft_count"),
        ("finished cloth", ledger.fabric.finished_areal_mass, "kg/m2", "denim_mass"),
    ):
        usual = published_ranges()[key]
        shown_value = convert(value, unit, usual.unit)
        if not usual.low <= shown_value <= usual.high:
            text = f"{what} is {shown_value:.3g} {usual.unit}; usual is {usual.low:g} to {usual.high:g}"
            found.append(Remark("unusual", f"style {style.code}", text))
    return found


@cache
def _compared(kind: type, groups: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    """Fields of a setting that have a default, with its key."""
    names = [item.name for item in fields(kind) if item.name in QUANTITIES]
    return tuple((name, key) for name in names if (key := default_key(groups, name)))
