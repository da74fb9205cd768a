"""Tables of a point: what the sewer charges, enquiry by enquiry, and salt in water that goes back."""

from __future__ import annotations

from typing import Any, NamedTuple

from costing.effluent.arriving import loads_taken_in
from costing.effluent.point_charge import Strength, price_at_point
from costing.effluent.reuse import concentrate_strength, largest_reuse, salt_in_loop
from costing.effluent.treated_flow import Train
from costing.quantities.units import convert
from costing.report.drain_point import PointResult
from costing.report.drain_treatment import ESTIMATE, trains
from costing.report.effluent_price import returned_of, through_of
from costing.report.table import Column, Table, capital, costs_of
from costing.settings.mill import Mill

SALTS = ("sodium", "sulfate", "chloride", "dissolved solids")


def charge_table(mill: Mill, found: PointResult) -> Table | None:
    """What the water of each enquiry costs, and the bill of the point; None without a charge."""
    drain, code = mill.drain, found.point.code
    charge = drain.charges.get(code)
    if charge is None or found.leaving.stream.volume <= 0.0:
        return None
    currency = costs_of(mill).currency
    through, returned = through_of(drain, code), returned_of(drain, code)
    columns = [
        Column("Water of"),
        Column("Collected", "m3/day", 1),
        Column("COD collected", "mg/L", 0),
        Column("Solids collected", "mg/L", 0),
        Column("COD to sewer", "mg/L", 0),
        Column("Solids to sewer", "mg/L", 0),
        Column("Sewer", f"{currency}/m3", 3),
        Column("Own treatment", f"{currency}/m3", 3),
        Column("Both", f"{currency} per day", 2),
        Column("Both", f"{currency} per month", 0),
    ]

    def row(name: str, strength: Strength) -> list[Any]:
        both = price_at_point(charge, strength, through, returned)
        own = charge.treatment_charge
        daily = both * strength.volume
        figures = [
            *(
                convert(part, "kg/L", "mg/L")
                for told in (strength, strength.behind(through))
                for part in told.concentrations
            ),
            *(convert(p, "money/L", "money/m3") for p in (both - own, own)),
        ]
        return [
            name,
            convert(strength.volume, "L", "m3"),
            *figures,
            daily,
            daily * found.point.days_per_month,
        ]

    whole = strength_leaving(found)
    rows = [row(name, strength) for name, strength in found.strengths.items()]
    rows.append(row("the point", whole))
    sewer = (price_at_point(charge, whole, through, returned) - charge.treatment_charge) * whole.volume
    monthly = max(sewer * found.point.days_per_month, charge.minimum_charge)
    rows.append(["bill", *[None] * 8, monthly])
    note = (
        "COD once settled; money for each cubic metre collected. An enquiry pays in its quote for its own "
        "water, its sulfur salts as fresh as they leave the range. The point pays for the water as it "
        "leaves, with other flows in it and sulfur salts oxidised on the way, so the rows above it do not "
        "add up to it. The bill is without own treatment, and not below the least per month. Planned stages"
        " change no charge. "
        f"{ESTIMATE}"
    )
    return Table("point_charge", f"Sewer charge at {code}", note, columns, rows)


def strength_leaving(found: PointResult) -> Strength:
    """Strength of all water of a day as it leaves the point.

    What settles of its COD is known of the enquiries; of other flows nothing settles.
    """
    loads = found.leaving.stream.loads
    settling = sum(strength.settling for strength in found.strengths.values())
    return Strength(
        found.leaving.stream.volume,
        max(0.0, loads.get("COD, organic", 0.0) - settling),
        max(0.0, loads.get("COD, inorganic sulfur", 0.0)),
        max(0.0, loads.get("suspended solids", 0.0)),
        settling,
    )


class Loop(NamedTuple):
    """A salt of the water that goes round, once it has settled.

    Attributes
    ----------
    fresh, added : float
        In the water taken in, and what range and treatment add to each volume [kg/L].
    rejection : float
        What the membranes hold back; 0 without one [fraction].
    feed, taken, concentrate : float
        Before the membranes; in the water that the range takes; in what the membranes send away, 0 without
        one [kg/L].
    """

    fresh: float
    added: float
    rejection: float
    feed: float
    taken: float
    concentrate: float


def loop_of(train: Train, salt: str, fresh: float, reuse_share: float) -> Loop:
    """Salt in the loop of a range that takes a share of treated water.

    Parameters
    ----------
    train : Train
        As it runs without water that comes back.
    salt : str
        Parameter.
    fresh : float
        In the water taken in [kg/L].
    reuse_share : float
        Treated water, of all that the range takes [fraction].
    """
    once, behind = _before_membranes(train, salt), train.typical[-1].concentration(salt)
    rejection = 1.0 - behind / once if once > 0.0 else 0.0
    rejection = rejection if abs(rejection) > 1e-12 else 0.0
    added = max(0.0, once - fresh)
    feed = float(salt_in_loop(added, reuse_share, rejection, fresh))
    recovery = membrane_recovery(train)
    sent = float(concentrate_strength(feed, rejection, recovery)) if recovery < 1.0 else 0.0
    taken = reuse_share * feed * (1.0 - rejection) + (1.0 - reuse_share) * fresh
    return Loop(fresh, added, rejection, feed, taken, sent)


def _before_membranes(train: Train, salt: str) -> float:
    """Concentration before the first membrane, or at the end [kg/L]."""
    volume = _volume_before(train)
    load = train.before.get(salt, 0.0)
    for behind in train.typical:
        if behind.stage.kind == "membrane":
            break
        load = behind.loads.get(salt, 0.0)
    return load / volume


def _volume_before(train: Train) -> float:
    """Water before the first membrane, or at the end [L]."""
    first = train.typical[0]
    volume = first.flow.water.volume + first.concentrate
    for behind in train.typical:
        if behind.stage.kind == "membrane":
            break
        volume = behind.flow.water.volume
    return volume


def membrane_recovery(train: Train) -> float:
    """Water that the membranes give, of what they are fed; 1 without one [fraction]."""
    return train.typical[-1].flow.water.volume / _volume_before(train)


def whole_recovery(train: Train) -> float:
    """Treated water, of what comes into the train [fraction]."""
    first = train.typical[0]
    return train.typical[-1].flow.water.volume / (first.flow.water.volume + first.concentrate)


def reuse_table(mill: Mill, found: PointResult) -> Table | None:
    """Salt when a share of the treated water goes back, and how much may; None where none is asked for."""
    prices = mill.drain.prices.get(found.point.code)
    if prices is None or (prices.returned_share <= 0.0 and prices.salt_ceiling is None):
        return None
    columns = [
        Column("Train"),
        Column("Salt"),
        Column("Goes back", "% of treated water", 1),
        Column("Goes back", "% of water taken", 1),
        Column("Fresh water", "mg/L", 0),
        Column("Added", "mg/L", 0),
        Column("Held back", "%", 0),
        Column("In water taken", "mg/L", 0),
        Column("In effluent", "mg/L", 0),
        Column("Concentrate", "mg/L", 0),
        Column("Ceiling", "mg/L", 0),
        Column("At most back", "% of treated water", 1),
    ]
    fresh = loads_taken_in(found.point, 1.0)
    rows: list[list[Any]] = []
    for ran in trains(found):
        recovery = whole_recovery(ran.train)
        share = prices.returned_share * recovery
        for salt in SALTS:
            loop = loop_of(ran.train, salt, fresh[salt], share)
            ceiling = prices.salt_ceiling if salt == "dissolved solids" else None
            most = None
            if ceiling is not None:
                at_most = largest_reuse(ceiling, loop.added, loop.rejection, recovery, loop.fresh)
                most = 100.0 * at_most / recovery
            dense = [loop.taken, loop.feed, loop.concentrate, ceiling]
            rows.append(
                [
                    ran.name,
                    capital(salt),
                    100.0 * prices.returned_share,
                    100.0 * share,
                    *(convert(value, "kg/L", "mg/L") for value in (loop.fresh, loop.added)),
                    100.0 * loop.rejection,
                    *(None if value is None else convert(value, "kg/L", "mg/L") for value in dense),
                    most,
                ]
            )
    note = (
        "Once the loop has settled, the effluent as it is before a membrane; with the water taken counted "
        "as much as the water collected. Salt is neither destroyed nor settles: what the range adds leaves "
        "with the water that is not sent back, or with the concentrate, and the concentrate must go "
        "somewhere. "
        f"{ESTIMATE}"
    )
    title = f"Water that goes back from {found.point.code}"
    return Table("point_reuse", title, note, columns, rows) if rows else None
