"""The pH of a collecting point opened: the balance of its ions, its weak acids, and what each step brings."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Any, NamedTuple

from costing.effluent.acidity import Weak
from costing.effluent.arriving import taken_in, together
from costing.effluent.composition import IONS, STRONG_ANIONS, Water, brought_by, mixed, strong_charge
from costing.effluent.pit import Standing
from costing.effluent.speciation import PARTS, Speciation
from costing.effluent.weak_acids import activity_exponent, constants_at
from costing.quantities import InputError
from costing.quantities.units import convert
from costing.report.drain_point import PointResult, acidity_spread
from costing.report.point_lines import above_rounding, brief_lines, ran_to
from costing.report.table import Column, Result, Table, largest_first
from costing.settings.mill import Mill

ACIDITY = "pH"
OF_WATER = ("OH-", "H+")
STRONG_IONS = {"Na+", *(anion for anion, _ in STRONG_ANIONS.values())}
# Sorts of ions, with the words for all of one.
SORTS = {
    "strong": "strong ions together",
    "weak acid": "weak acids together",
    "of water": "ions of water together",
}
WORDS = {"carboxylate": "other organic acids"}
# Where the constants of a weak acid come from, as `costing.effluent.weak_acids` has them.
CONSTANTS_FROM = {
    "carbonate": ("carbonic", "phreeqc-dat"),
    "sulfite": ("sulfurous", "phreeqc-llnl-dat"),
    "sulfide": ("sulfide", "phreeqc-dat"),
    "acetate": ("acetic", "minteq-v4-dat"),
    "carboxylate": ("carboxylic", ""),
}
FROM_MEMORY = "from memory, to be verified; at any pH above 6 an ion in full"
TEXTS = ("Enquiry", "Step", "Stream", "Substance", "Cause")


class Brought(NamedTuple):
    """A line of what brings ions: its texts, and charge of strong ions and weak acids in a day [mol]."""

    told: tuple[str, ...]
    charge: float
    weak: Weak

    def of(self, acids: Sequence[str]) -> list[float]:
        """The numbers of its row."""
        return [self.charge, *(float(getattr(self.weak, acid)) for acid in acids)]


def acidity_why(
    mill: Mill, found: PointResult, result: Callable[[str], Result], brief: bool = False
) -> list[Table]:
    """The pH as it reads where the water leaves the point: places, ions, weak acids, and what brings them.

    Parameters
    ----------
    mill : Mill
        The book.
    found : PointResult
        The point.
    result : callable
        Gives the result of an enquiry by its code.
    brief : bool, optional
        True for a screen: small lines are one.

    Raises
    ------
    InputError
        No water runs to the point.
    """
    leaving = found.leaving
    if leaving.closed is None:
        raise InputError("--why", f"no water runs to {found.point.code}, so it has no pH")
    water = leaving.stream.water
    acids = [name for name in PARTS if any(getattr(stream.water.weak, name) for stream in found.streams)]
    acids = [name for name in PARTS if name in acids or getattr(water.weak, name)]
    lines = _brought_table(mill, found, result, acids)
    if brief:
        lines = lines._replace(
            rows=brief_lines(lines.rows, len(TEXTS), range(len(TEXTS), len(lines.columns)))
        )
    return [_places_table(found), _ions_table(found, leaving.closed), _acids_table(leaving, acids), lines]


def _places_table(found: PointResult) -> Table:
    columns = [
        Column("At"),
        Column(ACIDITY, "", 2),
        Column("Within", "", 1),
        Column("pH after days in air", "", 2),
        Column("Temperature", "°C", 1),
        Column("Ionic strength", "mmol/L", 2),
        Column("Strong ions", "mmol/L", 3),
    ]
    rows: list[list[Any]] = []
    for place in found.places:
        if place.closed is None or place.in_air is None:
            continue
        acidity = place.closed.acidity
        strong = place.stream.water.strong_difference / place.stream.volume
        rows.append(
            [
                place.place,
                acidity,
                acidity_spread(acidity),
                place.in_air.acidity,
                place.stream.temperature,
                convert(place.closed.ionic_strength, "mol/L", "mmol/L"),
                convert(strong, "mol/L", "mmol/L"),
            ]
        )
    note = (
        "Strong ions: charge of sodium and its like less that of sulfate and its like. Weak acids and the "
        "ions of water balance it, and the pH is where they do. Hot caustic reads lower than cold. What "
        "narrows it most: titrate a sample to pH 8.3 and to 4.5, and note its temperature."
    )
    return Table("acidity_places", f"pH of {found.point.code}: where it comes from", note, columns, rows)


def _ions_table(found: PointResult, closed: Speciation) -> Table:
    columns = [
        Column("Ion"),
        Column("Sort"),
        Column("Concentration", "mmol/L", 4),
        Column("Charge", "", 0),
        Column("Charge of it", "mmol/L", 4),
        Column("Activity coefficient", "", 3),
    ]
    rows: list[list[Any]] = []
    total = 0.0
    for sort, summed in SORTS.items():
        charges = 0.0
        for ion, amount in closed.ions.items():
            if _sort_of(ion) != sort or not amount:
                continue
            dense, charge = convert(amount, "mol/L", "mmol/L"), IONS[ion].charge
            coefficient = 10.0 ** activity_exponent(closed.ionic_strength, charge)
            rows.append([ion, sort, dense, charge, dense * charge, coefficient])
            charges += dense * charge
        rows.append([summed, "sum", None, None, charges, None])
        total += charges
    rows.append(["all", "sum", None, None, total, None])
    note = (
        "The charges add up to nothing: that is how the pH is found. Activities by the equation of Davies, "
        "held above 0.5 mol/L; ion pairs are left out. Products without a formula count as neutral salts."
    )
    title = f"Ions of {found.point.code} {found.leaving.place}, at pH {closed.acidity:.2f}"
    return Table("acidity_ions", title, note, columns, rows)


def _sort_of(ion: str) -> str:
    if ion in STRONG_IONS:
        return "strong"
    return "of water" if ion in OF_WATER else "weak acid"


def _acids_table(leaving: Standing, acids: Sequence[str]) -> Table:
    from costing.reference_data.source_list import (
        sources,  # its reader wants a younger Python than a cell has
    )

    assert leaving.closed is not None
    columns = [
        Column("Weak acid"),
        Column("All of it", "mmol/L", 4),
        Column("First proton", "half at pH", 2),
        Column("Second proton", "half at pH", 2),
        Column("Parts at this pH"),
        Column("Constants from"),
    ]
    constants = constants_at(leaving.stream.temperature, leaving.closed.ionic_strength)
    rows: list[list[Any]] = []
    for acid in acids:
        whole = getattr(leaving.stream.water.weak, acid) / leaving.stream.volume
        field, source = CONSTANTS_FROM[acid]
        held = getattr(constants, field)
        first, second = held if isinstance(held, tuple) else (held, None)
        shares = [(part, leaving.closed.ions.get(part, 0.0) / whole) for part in PARTS[acid] if whole > 0.0]
        told = ", ".join(f"{part} {100.0 * share:.3g} %" for part, share in shares) or "none is left"
        cited = sources()[source].title if source else FROM_MEMORY
        name = WORDS.get(acid, acid)
        rows.append([name, convert(whole, "mol/L", "mmol/L"), first, second, told, cited])
    note = (
        f"Constants at {leaving.stream.temperature:.1f} °C and at the ionic strength there; those of organic "
        "acids are held at 25 °C. Soap, size and what else is a weak acid is left out."
    )
    return Table("acidity_acids", "Weak acids", note, columns, rows)


def _brought_table(
    mill: Mill, found: PointResult, result: Callable[[str], Result], acids: Sequence[str]
) -> Table:
    """What brings the charge of the strong ions and the weak acids, line by line."""
    brought = [*_of_enquiries(mill, found, result), *_without_recipe(found)]
    rows = [[*line.told, *line.of(acids)] for line in brought]
    columns = [
        *(Column(title) for title in TEXTS),
        Column("Strong ions", "mol/day", 1),
        *(Column(WORDS.get(acid, acid).capitalize(), "mol/day", 1) for acid in acids),
    ]
    numbers = range(len(TEXTS), len(columns))
    rows = above_rounding(rows, numbers)
    note = (
        "Above zero: it raises the pH, as caustic does; below zero: it lowers it. A weak acid lowers it by "
        "what it gives of its protons at this pH. The lines add up to the water that leaves the point on a "
        "running day. Each mol of a substance brings the ions of its formula."
    )
    return largest_first("acidity_lines", "What brings them", note, columns, rows, list(numbers))


def _of_enquiries(mill: Mill, found: PointResult, result: Callable[[str], Result]) -> Iterator[Brought]:
    for enquiry, mass, streams in ran_to(mill, found, result):
        sums: dict[tuple[str, ...], tuple[float, Weak]] = {}
        for stream in streams:
            for line in stream.lines:
                charge, weak = strong_charge(line.substance), _weak_of(line.substance)
                if charge or any(weak):
                    substance = line.substance.replace("_", " ")
                    told: tuple[str, ...] = (enquiry, line.step, stream.name, substance, line.cause)
                    amount = line.amount * mass
                    held, before = sums.get(told, (0.0, Weak(*[0.0] * len(Weak._fields))))
                    after = Weak(*(old + amount * new for old, new in zip(before, weak)))
                    sums[told] = (held + amount * charge, after)
        yield from (Brought(told, charge, weak) for told, (charge, weak) in sums.items())


def _weak_of(substance: str) -> Weak:
    brought = brought_by(substance)
    amounts = dict.fromkeys(Weak._fields, 0.0)
    if brought.weak:
        amounts[brought.weak] = brought.weak_amount
    return Weak(**amounts)


def _without_recipe(found: PointResult) -> Iterator[Brought]:
    """Water taken in, other flows, and what reacts on the way."""
    volume = sum(stream.volume for stream in found.streams if stream.enquiry)
    mains = taken_in(found.point, volume, 25.0)
    yield _line(("", "", "water taken in", "", "its alkalinity"), mains)
    for stream in found.streams:
        if not stream.enquiry:
            yield _line(("", "", stream.name, "", "typed on the sheet Discharge plan"), stream.water)
    apart, fresh, left = (
        together(found.streams).water,
        found.places[0].stream.water,
        found.leaving.stream.water,
    )
    yield _line(("", "", found.places[0].place, "", "peroxide meets sulfur salts"), _less(fresh, apart))
    yield _line(("", "", found.leaving.place, "", "air on the way to there"), _less(left, fresh))


def _line(told: tuple[str, ...], water: Water) -> Brought:
    return Brought(told, water.strong_difference, water.weak)


def _less(water: Water, other: Water) -> Water:
    taken = {ion: -amount for ion, amount in other.strong.items()}
    return mixed(water, Water(0.0, other.temperature, taken, Weak(*(-amount for amount in other.weak))))
