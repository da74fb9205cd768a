"""What a practitioner would say of the settings before believing the number."""

from __future__ import annotations

from dataclasses import fields
from functools import cache, partial
from typing import Any, Callable, NamedTuple

from costing.ledger.box_remarks import MUCH_OVERFLOW, box_warnings
from costing.ledger.quality_remarks import short_last_set, unusual_shares
from costing.ledger.whole import Ledger
from costing.process.bath_balance import CAUSTIC_SURPLUS, SURPLUS
from costing.process.washing import HOLDS_LEVEL
from costing.quantities import QUANTITIES, Quantity, label, shown
from costing.quantities.checking import number_text
from costing.quantities.units import convert
from costing.reference_data import defaults, published_ranges
from costing.settings.building import default_key
from costing.settings.dye_class import groups_of_step
from costing.settings.mill import Mill
from costing.settings.rinse_step import Rinse
from costing.settings.steps import NO_OTHER, IndigoDyeing

TOLD = (SURPLUS, CAUSTIC_SURPLUS, HOLDS_LEVEL)  # causes that are worth a word
FAR = 5.0  # times below or above what is usual, from where a slip of a hundred times is likelier
# The table has them for a range of ropes or a sheet.
OF_A_WARP, WARP_FORMS = ("speed", "leader_length"), ("ropes", "sheet")
METRES_PER_KM = 1000.0
# What is usual of the stock vat is so where hydrosulfite alone reduces the dye.
OF_HYDROSULFITE = ("stock_hydrosulfite_ratio", "stock_caustic_ratio")
WITHOUT_DEFAULT = ("indigo_on_yarn", "order_length")  # their usual range is among the published ones


class Remark(NamedTuple):
    """One remark.

    Attributes
    ----------
    kind : str
        ``warning``: the number may mislead; ``unusual``: outside the usual range of the table;
        ``note``: where a price comes from, or what else the clerk can choose.
    where : str
        Step or setting.
    text : str
        One sentence in the trade's words.
    """

    kind: str
    where: str
    text: str


def remarks(ledger: Ledger, mill: Mill) -> list[Remark]:
    """Warnings and unusual settings of a ledger.

    Parameters
    ----------
    ledger : Ledger
        Of an enquiry.
    mill : Mill
        Of the same enquiry; it knows the cells.

    Returns
    -------
    list of Remark
        Warnings first.
    """
    slips, unusual = _unusual(ledger, mill)
    short = short_last_set(ledger)
    notes = [Remark("note", "lot", short)] if short else []
    return [
        *_warnings(ledger, mill),
        *slips,
        *_unusual_shares(ledger, mill),
        *unusual,
        *_unusual_cloth(ledger),
        *notes,
    ]


def meant_share(value: float, low: float, high: float) -> float | None:
    """The share that was meant, where a percentage came as a fraction or a fraction as a percentage.

    Cells shown as a percentage hand over a hundredth of what they show, and a sheet does not say which they
    are. What is possible is not refused for it.

    Parameters
    ----------
    value, low, high : float
        What came, and what is usual [fraction].

    Returns
    -------
    float or None
        A hundred times as much, or a hundredth; None where neither is likelier than what came.

    Examples
    --------
    >>> meant_share(0.0009, 0.04, 0.14), meant_share(0.07, 0.04, 0.14), meant_share(9.0, 0.04, 0.14)
    (0.09, None, 0.09)
    """
    slack = 1.0 + 1e-9
    far_below = value <= high / 100.0 * slack if low <= 0.0 else value < low / FAR
    if value > 0.0 and far_below and low <= 100.0 * value * slack and 100.0 * value <= high * slack:
        return 100.0 * value
    if value > FAR * high and low <= value / 100.0 * slack and value / 100.0 <= high * slack:
        return value / 100.0
    return None


def located(owner: str, cell: str) -> str:
    """What a remark is about, and the cell where it was typed, where that is known."""
    return f"{owner}, {cell}" if cell else owner


def _warnings(ledger: Ledger, mill: Mill) -> list[Remark]:
    found: list[Remark] = []
    posted = {
        (step, cause)
        for step, _, _, cause, amount, _, _ in ledger.run.postings
        if cause in TOLD and amount > 1e-12
    }
    for step, yarn in ledger.run.entering:
        if isinstance(step, IndigoDyeing):
            found += [Remark("warning", step.name, text) for text in _of_bath(step, posted, ledger)]
            if yarn.air_dry:
                text = "the yarn is not wetted out: it brings its air into the first dip"
                found.append(Remark("warning", step.name, text))
        if isinstance(step, Rinse) and (step.name, HOLDS_LEVEL) in posted:
            found.append(
                Remark(
                    "warning",
                    step.name,
                    "the rinse gets less water than the yarn takes up; water was added to hold the level",
                )
            )
    found += [Remark("warning", where, text) for where, text in box_warnings(ledger, mill.materials)]
    for step in ledger.steps:
        given = mill.range_steps.get((ledger.range.code, step.name), {})
        if given and all(entry.value in (None, "") for entry in given.values()):
            text = (
                f"range {ledger.range.code} has no cell filled for this step: typical values of a machine "
                "are taken; does the range have it?"
            )
            found.append(Remark("warning", step.name, text))
    for what, code in (("warp", ledger.style.warp_yarn), ("weft", ledger.style.weft_yarn)):
        if not code:
            text = f"no code of a {what} yarn: the {what} yarn is not in the cost and not in the price"
            found.append(Remark("warning", f"style {ledger.style.code}", text))
    if not mill.depths:
        text = "the book has no depth of shade on the sheet Quality: all metres count as first quality"
        found.append(Remark("note", "quality", text))
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


def _unusual(ledger: Ledger, mill: Mill) -> tuple[list[Remark], list[Remark]]:
    """Shares that look a hundred times too small or too large, and all else that is not usual."""
    slips, unusual = [], []
    recipe, range_ = ledger.recipe.code, ledger.range.code
    owners: list[tuple[str, tuple[str, ...], Any, Callable[[str], str]]] = [
        (
            step.name,
            groups_of_step(step, mill.materials),
            step,
            partial(mill.cell_of_step, recipe, range_, step.name),
        )
        for step in ledger.steps
    ]
    for kind, item in (("range", ledger.range), ("style", ledger.style), ("enquiry", ledger.enquiry)):
        owners.append((f"{kind} {item.code}", item.GROUPS, item, partial(mill.cell_of, kind, item.code)))
    for owner, groups, item, cell_of in owners:
        found = compared_with_usual(owner, groups, item, cell_of)
        slips += found[0]
        unusual += found[1]
    return slips, unusual


def compared_with_usual(
    owner: str, groups: tuple[str, ...], item: Any, cell_of: Callable[[str], str]
) -> tuple[list[Remark], list[Remark]]:
    """Settings of one thing that look mistyped, and those that are not usual.

    Parameters
    ----------
    owner : str
        What it is, for the remark.
    groups : tuple of str
        Groups of ``defaults.csv`` that hold what is usual for it.
    item : dataclass
        The thing.
    cell_of : callable
        Gives the cell of a setting by its name, "" where none is known.
    """
    slips, unusual = [], []
    for name, low, high in _compared(type(item), groups):  # type: ignore[arg-type]
        value = getattr(item, name)
        if name in OF_HYDROSULFITE and getattr(item, "other_reduction", NO_OTHER) != NO_OTHER:
            continue
        if name in OF_A_WARP and getattr(item, "yarn_form", "") not in WARP_FORMS:
            continue
        # What is usual is no slip; only where 0 is usual too may it be a hundredth of what was meant.
        if value is None or 0.0 < low <= value <= high:
            continue
        quantity = QUANTITIES[name]
        meant = _meant(quantity, value, low, high)
        slack = 1e-9 * max(abs(low), abs(high))
        if meant is None and low - slack <= value <= high + slack:
            continue
        text = (
            f"{label(name)} is {shown(quantity, value)}; usual is {shown(quantity, low)} to "
            f"{shown(quantity, high)}"
        )
        where = located(owner, cell_of(name))
        if meant is None:
            unusual.append(Remark("unusual", where, text))
        else:
            slips.append(Remark("warning", where, f"{text}: did you mean {meant}?"))
    return slips, unusual


def _meant(item: Quantity, value: float, low: float, high: float) -> str | None:
    """What was meant by a share, or by a length in another unit than the one beside it."""
    if item.usual.startswith("%"):
        share = meant_share(value, low, high)
        return None if share is None else shown(item, share)
    if item.name == "order_length" and FAR * value < low <= value * METRES_PER_KM <= high:
        return f"{number_text(value)} km"
    if item.name == "order_length" and low <= value / METRES_PER_KM <= high < value:
        return f"{number_text(value / METRES_PER_KM)} m"
    return None


def _unusual_shares(ledger: Ledger, mill: Mill) -> list[Remark]:
    """Shares of metres that are not usual, and those that look a hundred times too small or too large."""
    found = []
    for name, cell, value, low, high, text in unusual_shares(ledger, mill):
        meant = _meant(QUANTITIES[name], value, low, high)
        where = located(f"enquiry {ledger.enquiry.code}", cell)
        said = text if meant is None else f"{text}: did you mean {meant}?"
        found.append(Remark("unusual" if meant is None else "warning", where, said))
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
def _compared(kind: type, groups: tuple[str, ...]) -> tuple[tuple[str, float, float], ...]:
    """Fields of a setting that have a usual range, with its ends in the house unit."""
    found = []
    for name in (item.name for item in fields(kind) if item.name in QUANTITIES):
        item, key = QUANTITIES[name], default_key(groups, name)
        if key:
            found.append((name, defaults()[key].low, defaults()[key].high))
        elif name in WITHOUT_DEFAULT:
            usual = published_ranges()[name]
            low, high = (convert(end, usual.unit, item.unit) for end in (usual.low, usual.high))
            found.append((name, low, high))
    return tuple(found)
