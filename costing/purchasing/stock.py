"""The stock of one material: what may be used, what is opened, what is drawn first, what expires."""

from __future__ import annotations

import datetime
import math
from bisect import insort
from typing import NamedTuple

from costing.settings.stock import StockBatch

NEVER = datetime.date.max.toordinal()
DUST = 1e-9  # [kg] less is a last digit, no pack
HOURS_A_DAY = 24.0


class Expired(NamedTuple):
    """What was not used in time.

    Attributes
    ----------
    material, batch : str
        What it is.
    last_day : date
        On which it might still be used.
    mass : float
        As it is [kg].
    counted : float
        At the listed strength [kg].
    money : float or None
        What it cost, or costs today, at the gate [money]; None where there is no price.
    opened : bool
        True for a pack that was opened.
    """

    material: str
    batch: str
    last_day: datetime.date
    mass: float
    counted: float
    money: float | None
    opened: bool


class Lot:
    """Part of a stock that has one last day: closed packs of a batch, or what is left of an opened one.

    `mass` counts at the listed strength; one kilogram of it is `ratio` kilograms as they are in store.
    """

    __slots__ = ("batch", "expiry", "mass", "opened", "pack", "price", "ratio")

    def __init__(
        self,
        batch: str,
        mass: float,
        expiry: int,
        pack: float,
        ratio: float = 1.0,
        price: float | None = None,
        opened: bool = False,
    ) -> None:
        self.batch, self.mass, self.expiry, self.pack = batch, mass, expiry, pack
        self.ratio, self.price, self.opened = ratio, price, opened


class Stock:
    """All lots of one material.

    Parameters
    ----------
    material : str
        Its code.
    keeping : int or None
        Days that an opened pack keeps [day]; None where opening does not matter.
    """

    def __init__(self, material: str, keeping: int | None = None) -> None:
        self.material = material
        self._keeping = keeping
        self._lots: list[tuple[bool, int, int, Lot]] = []  # closed, expiry and turn: the first one goes first
        self._turn = 0
        self._next_expiry = NEVER

    def put(self, lot: Lot) -> None:
        """Take in a lot."""
        self._turn += 1
        insort(self._lots, (not lot.opened, lot.expiry, self._turn, lot))
        self._next_expiry = min(self._next_expiry, lot.expiry)

    @property
    def usable(self) -> float:
        """What is in store, at the listed strength [kg]."""
        return sum([lot.mass for *_, lot in self._lots])

    @property
    def as_it_is(self) -> float:
        """What is in store as it is, whatever its strength [kg]."""
        return sum([lot.mass * lot.ratio for *_, lot in self._lots])

    def take_out_expired(self, day: int) -> list[Expired]:
        """Take out what has its last day behind it.

        Parameters
        ----------
        day : int
            Today, as its ordinal.
        """
        if day <= self._next_expiry:
            return []
        out = [lot for *_, lot in self._lots if lot.expiry < day]
        self._lots = [one for one in self._lots if one[1] >= day]
        self._next_expiry = min((one[1] for one in self._lots), default=NEVER)
        return [
            Expired(
                self.material,
                lot.batch,
                datetime.date.fromordinal(lot.expiry),
                lot.mass * lot.ratio,
                lot.mass,
                None if lot.price is None else lot.price * lot.mass * lot.ratio,
                lot.opened,
            )
            for lot in out
        ]

    def draw(self, day: int, wanted: float) -> float:
        """Use what is in store: an opened pack first, then what expires first; gives what was there [kg].

        Parameters
        ----------
        day : int
            Today, as its ordinal: from it on a pack that is opened now keeps its life after opening.
        wanted : float
            At the listed strength [kg].
        """
        left = wanted
        while left > 0.0 and self._lots:
            lot = self._lots[0][-1]
            if self._keeping is None or lot.opened:
                taken = min(left, lot.mass)
            else:
                packs = math.floor(left / lot.pack + DUST)  # these are emptied today
                taken = min(left, lot.mass, packs * lot.pack)
            lot.mass -= taken
            left -= taken
            if lot.mass <= 0.0:
                del self._lots[0]
            elif left > 0.0:
                self._open(lot, day)
        return wanted - left

    def _open(self, lot: Lot, day: int) -> None:
        """Open one pack of the first lot."""
        assert self._keeping is not None
        mass = lot.pack if lot.mass - lot.pack > DUST else lot.mass
        lot.mass -= mass
        if lot.mass <= 0.0:
            del self._lots[0]
        expiry = min(lot.expiry, day + self._keeping)
        self.put(Lot(lot.batch, mass, expiry, lot.pack, lot.ratio, lot.price, opened=True))


def lot_of_batch(
    batch: StockBatch, listed_strength: float, pack: float, keeping: int | None, price: float | None
) -> Lot:
    """A batch of the sheet Stock as a lot.

    Parameters
    ----------
    batch : StockBatch
        The batch.
    listed_strength : float
        By which needs count [fraction].
    pack : float
        Product in one pack [kg].
    keeping : int or None
        Days that an opened pack keeps [day].
    price : float or None
        Of a kilogram as it is [money/kg].
    """
    share = batch.strength / listed_strength
    expiry = NEVER if batch.expiry is None else batch.expiry.toordinal()
    if batch.opened is not None and keeping is not None:
        expiry = min(expiry, batch.opened.toordinal() + keeping)
    opened = batch.opened is not None
    return Lot(batch.batch, batch.stock_mass * share, expiry, pack * share, 1.0 / share, price, opened)


def life_of(time: float | None) -> int | None:
    """Whole days that a product keeps; a day begun does not count.

    Examples
    --------
    >>> life_of(49.0), life_of(None)
    (2, None)
    """
    return None if time is None else int(time / HOURS_A_DAY + DUST)
