"""The card for the shift: what is weighed, set, filled and added for one recipe on one range.

All of it comes from the ledger of one enquiry: its running lines at the speed of the range, the fresh liquor
of its boxes, and the reactions of a stop. It is an estimate; the liquors are tested and the feeds follow.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from costing.process.heating import STEAM
from costing.process.mixing import WATER
from costing.process.postings import POWER
from costing.quantities import InputError, label
from costing.quantities.units import convert
from costing.reference_data import cautions
from costing.report.grounds import cautions_of_use
from costing.report.range_feeds import SIZE, Feed, running_feeds, taken
from costing.report.range_fills import after_stop, fills, given_at_start
from costing.report.range_targets import targets
from costing.report.table import Column, Result, Table
from costing.settings.mill import Mill
from costing.settings.steps import Drying
from costing.settings.vessel_steps import VesselBath

ESTIMATE = (
    "Estimate from recipe and range; test the liquors and follow them. The supplier's safety data sheet and "
    "your own work instructions come first."
)
TEMPERATURES = ("scour_temperature", "rinse_temperature", "bath_temperature", "box_temperature")
VOLUMES = ("bath_volume", "tank_volume", "size_box_volume")
FILLED_UP = "water, up to the mark [L]"
TRACE = 0.01  # L/min: less is no setting of a valve
SMALL = 0.1  # L/min: less is set in mL/min
GRAMS = convert(1.0, "kg", "g")
MILLILITRES = convert(1.0, "L", "mL")
PER_MINUTE = convert(1.0, "1/h", "1/min")
PER_HOUR_IN_M3 = convert(1.0, "L/h", "m3/h")


class Ask(NamedTuple):
    """What the shift asks of the card. House units.

    Attributes
    ----------
    stop : float
        Length of a stop [h].
    vat : float
        Liquor made up at a time [L].
    kettle : float
        Size cooked at a time [L].
    """

    stop: float = 2.0
    vat: float = 1000.0
    kettle: float = 1000.0


USUAL = Ask()


def range_card(mill: Mill, result: Result, ask: Ask = USUAL) -> list[Table]:
    """The tables of the card of one enquiry, in the order in which they are read; empty ones are left out.

    Parameters
    ----------
    mill : Mill
        The mill's book.
    result : Result
        Of an enquiry: style, recipe and range.
    ask : Ask, optional
        Stop, vat and kettle.

    Raises
    ------
    InputError
        A route without a step.
    """
    if not result.ledger.steps:
        route = result.ledger.recipe.route
        raise InputError(
            f"recipe {result.ledger.recipe.code}",
            f"its route {route!r} has no step, so there is nothing to set on the range; accepted is a route "
            "of one step or more",
        )
    feeds = running_feeds(result.ledger, mill.materials)
    tables = [
        _about(result),
        _pumps(result, feeds, ask),
        _charge(result, feeds),
        _tests(mill, result),
        _fills(mill, result),
        _stop(mill, result, ask),
        _kettle(result, feeds, ask),
        _boxes(result),
        _use(result),
        _cautions(mill, result),
    ]
    return [table for table in tables if table.rows]


def _about(result: Result) -> Table:
    ledger = result.ledger
    plan, range_ = ledger.plan, ledger.range
    speed = convert(range_.speed, "m/h", "m/min")
    runs = f"{speed:.3g} m/min, {plan.around.throughput:,.0f} kg of grey yarn in an hour"
    at_speed = plan.grey_mass_dyed / plan.around.throughput
    lot = (
        f"{plan.number_of_sets:.0f} set(s) of {plan.set_length:,.0f} m, {plan.run_length:,.0f} m in all, "
        f"{plan.grey_mass_dyed:,.0f} kg: {at_speed:.1f} h at speed, {plan.run_hours:.1f} h at an efficiency "
        f"of {100.0 * range_.efficiency:.3g} %"
    )
    if plan.around.charge_mass > 0.0:
        runs = f"charges of {plan.around.charge_mass:,.0f} kg of grey yarn"
        lot = f"{plan.number_of_sets:.0f} charge(s), {plan.grey_mass_dyed:,.0f} kg, {plan.run_hours:.1f} h"
    rows: list[list[Any]] = [
        ["enquiry", f"{ledger.enquiry.code}: {ledger.enquiry.description}"],
        ["style", f"{ledger.style.code}: {ledger.style.description}"],
        ["recipe", f"{ledger.recipe.code}: {ledger.recipe.description}"],
        ["range", f"{range_.code}: {range_.description}"],
        ["running", runs],
        ["lot", lot],
        ["bath", f"{ledger.enquiry.bath_at_start}, {ledger.enquiry.bath_at_end}"],
    ]
    return Table("card", "Range card", ESTIMATE, [Column("What"), Column("Value")], rows)


def _pumps(result: Result, feeds: list[Feed], ask: Ask) -> Table:
    """A row for each feed, and below it one for each product of a liquor that is made up."""
    per_minute = result.ledger.plan.around.throughput * PER_MINUTE
    per_hour = result.ledger.plan.around.throughput * PER_HOUR_IN_M3
    vat = f"{ask.vat:,.0f} L"
    columns = [
        Column("Box"),
        Column("Feed"),
        Column("Product"),
        Column("Pump or valve", "L/min", 2),
        Column("Small pump", "mL/min", 1),
        Column("The same", "m3/h", 2),
        Column("Product", "g/min as delivered", 1),
        Column(f"For {vat}", "kg as delivered", 1),
    ]
    rows: list[list[Any]] = []
    of_charge = {step.name for step in _baths(result)}
    for feed in feeds:
        if feed.step in of_charge:
            continue
        flow = None if feed.volume is None else feed.volume * per_minute
        if not feed.products and (flow or 0.0) < TRACE:
            continue
        hourly = None if feed.volume is None or feed.products else feed.volume * per_hour
        set_to = _of_pump(flow)
        if not feed.mixed:
            code, amount = next(iter(feed.products.items()), ("", None))
            grams = None if amount is None else GRAMS * amount * per_minute
            rows.append([feed.step, feed.name, code, *set_to, hourly, grams, None])
            continue
        rows.append([feed.step, feed.name, "", *set_to, hourly, None, None])
        in_vat = None if feed.name == SIZE or not feed.volume else ask.vat / feed.volume
        for code, amount in feed.products.items():
            weighed = None if in_vat is None else amount * in_vat
            rows.append([feed.step, feed.name, code, None, None, None, GRAMS * amount * per_minute, weighed])
        if in_vat is not None and feed.water:
            rows.append([feed.step, feed.name, FILLED_UP, None, None, None, None, ask.vat])
    speed = convert(result.ledger.range.speed, "m/h", "m/min")
    note = (
        f"At {speed:.3g} m/min; at another speed in proportion. Water first, most of it, then the products, "
        "each slowly; then fill up to the mark. Never water onto hydrosulfite or caustic."
    )
    return Table("card_feeds", "Pumps, valves and vats", note, columns, rows)


def _of_pump(flow: float | None) -> tuple[float | None, float | None]:
    """Flow in L/min, or of a small pump in mL/min: one of the two."""
    if flow is not None and flow < SMALL:
        return None, MILLILITRES * flow
    return flow, None


def _tests(mill: Mill, result: Result) -> Table:
    columns = [Column("Box"), Column("What"), Column("In a litre", "g, as 100 %", 1), Column("Lye", "°Bé", 1)]
    rows: list[list[Any]] = [
        [item.step, item.what, GRAMS * item.strength, item.baume]
        for item in targets(result.ledger, mill.materials)
    ]
    note = "What the liquor is to hold while it runs. °Bé: 145 - 145/d, hydrometer for 60 °F in lye of 25 °C."
    return Table("card_tests", "To be tested", note, columns, rows)


def _baths(result: Result) -> list[VesselBath]:
    """Baths that are filled for a charge; none where the range runs on."""
    if result.ledger.plan.around.charge_mass <= 0.0:
        return []
    return [step for step in result.ledger.steps if isinstance(step, VesselBath)]


def _charge(result: Result, feeds: list[Feed]) -> Table:
    """What each bath of a vessel is filled with for one charge; the yarn brings the rest of its liquor."""
    charge = result.ledger.plan.around.charge_mass
    columns = [
        Column("Bath"),
        Column("Product"),
        Column("In a litre", "g as delivered", 2),
        Column("Charge", "kg as delivered; water in L", 2),
    ]
    rows: list[list[Any]] = []
    for bath in _baths(result):
        for feed in (feed for feed in feeds if feed.step == bath.name):
            rows += [
                [bath.name, code, GRAMS * amount / bath.liquor_ratio, amount * charge]
                for code, amount in feed.products.items()
            ]
            if feed.water:
                rows.append([bath.name, WATER, None, feed.water * charge])
    note = (
        "Water from the main; the yarn still holds liquor of the bath before. In a litre: what is weighed, "
        "over the whole bath."
    )
    return Table("card_charge", f"Vessel, for a charge of {charge:,.0f} kg", note, columns, rows)


def _fills(mill: Mill, result: Result) -> Table:
    columns = [
        Column("Box"),
        Column("What for"),
        Column("Product"),
        Column("In a litre", "g as delivered", 2),
        Column("Whole box", "kg; water in L", 1),
        Column("This lot", "kg; water in L", 1),
    ]
    rows: list[list[Any]] = []
    for fill in fills(result.ledger, mill.materials):
        for code, litre in fill.litre.items():
            shown = None if code == WATER else GRAMS * litre
            where = [fill.step, f"first fill of {fill.volume:,.0f} L", code]
            rows.append([*where, shown, litre * fill.volume, litre * fill.new])
    for step, cause, amounts in given_at_start(result.ledger):
        rows += [[step, cause, code, None, None, amount] for code, amount in amounts.items() if code != WATER]
    note = "This lot: what it fills anew; a standing bath is taken over for the rest."
    return Table("card_fill", "First fill", note, columns, rows)


def _stop(mill: Mill, result: Result, ask: Ask) -> Table:
    columns = [
        Column("Box"),
        Column("Product"),
        Column("Pumps stopped", "kg as delivered", 2),
        Column("Pumps running", "kg as delivered", 2),
    ]
    stopped, running = (
        after_stop(result.ledger, mill.materials, ask.stop, pumps_running) for pumps_running in (False, True)
    )
    rows: list[list[Any]] = []
    for step, amounts in running.items():
        for code in dict.fromkeys([*amounts, *stopped[step]]):
            if code in mill.materials:
                rows.append([step, code, stopped[step].get(code, 0.0), amounts.get(code, 0.0)])
    note = "Add in parts, and test between them. For boxes not named here the balance has no figure: test."
    return Table("card_stop", f"After a stop of {ask.stop:g} h", note, columns, rows)


def _kettle(result: Result, feeds: list[Feed], ask: Ask) -> Table:
    """What is put into the kettle before live steam comes on, which brings the rest of the water."""
    columns = [Column("Box"), Column("Product"), Column(f"For {ask.kettle:,.0f} L", "kg; water in L", 1)]
    rows: list[list[Any]] = []
    used = []
    for feed in feeds:
        if feed.name != SIZE or not feed.volume:
            continue
        kettles = ask.kettle / feed.volume
        rows += [[feed.step, code, amount * kettles] for code, amount in feed.products.items()]
        rows.append([feed.step, WATER, feed.water * kettles])
        used.append(result.ledger.plan.around.throughput / kettles)
    runs = ", ".join(f"{hourly:.2f}" for hourly in used)
    note = (
        "The size box is filled from it too. Water before live steam, whose condensate in kettle and box is "
        f"the rest. {runs} kettle(s) in an hour."
    )
    return Table("card_size", "Size kettle", note, columns, rows)


def _boxes(result: Result) -> Table:
    columns = [
        Column("Box"),
        Column("Temperature", "degC", 0),
        Column("Liquor", "L", 0),
        Column("Steam", "kg/h", 0),
        Column("Note"),
    ]
    ledger, rows = result.ledger, []
    for step in ledger.steps:
        of_step = (posting for posting in ledger.run.postings if posting[0] == step.name)
        steam = taken(of_step).get(STEAM, 0.0)
        note = ""
        if isinstance(step, Drying):
            note = f"{label('moisture_out')} {100.0 * step.moisture_out:.3g} %"
        volume = _first(step, VOLUMES)
        rate: float | None = steam * ledger.plan.around.throughput
        if isinstance(step, VesselBath):
            charge = ledger.plan.around.charge_mass
            volume = step.liquor_ratio * charge
            minutes = convert(step.bath_time, "h", "min")
            note, rate = f"{minutes:.0f} min, {steam * charge:,.0f} kg of steam for a charge", None
        temperature = _first(step, (*TEMPERATURES, "yarn_temperature_out"))
        rows.append([step.name, temperature, volume, rate, note])
    note = "Of a dryer: the yarn as it leaves. Steam while the range runs, losses of the net in it."
    return Table("card_boxes", "Temperatures", note, columns, rows)


def _first(step: object, names: tuple[str, ...]) -> float | None:
    return next((getattr(step, name) for name in names if hasattr(step, name)), None)


def _use(result: Result) -> Table:
    columns = [Column("What"), Column("In an hour", "", 1), Column("Unit")]
    units: Mapping[str, str] = {WATER: "L", STEAM: "kg", POWER: "kWh"}
    amounts = taken(result.ledger.run.postings)
    rows: list[list[Any]] = [
        [code, amount * result.ledger.plan.around.throughput, units.get(code, "kg as delivered")]
        for code, amount in sorted(amounts.items(), key=lambda item: item[0] in units)
    ]
    note = "While the range runs, without fills and stops; what is won back is taken off."
    return Table("card_use", "Use in an hour", note, columns, rows)


def _cautions(mill: Mill, result: Result) -> Table:
    """The cautions of what is handled, without their sources, which the results name."""
    full = cautions_of_use(mill, [result])
    columns = [column for column in full.columns if column.title in ("Concerns", "Materials", "Caution")]
    places = [full.columns.index(column) for column in columns]
    drain = cautions()["discharge"].name  # nothing that the shift handles
    rows = [[row[place] for place in places] for row in full.rows if row[0] != drain]
    note = full.rows[0][[column.title for column in full.columns].index("Comes first")]
    return Table("card_cautions", "Cautions", str(note), columns, rows)
