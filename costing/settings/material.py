"""A material of the price list: what it holds, how strong it is, and what it costs."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

from costing.quantities import InputError, label
from costing.reference_data import substances
from costing.settings.building import check_fields

# Form in which a dye is delivered -> the dye that its strength and its loads count.
REDUCED_DYES = {"leuco_indigo": "indigo"}

# Roles of materials that are spun, not dissolved.
YARN_ROLES = ("warp yarn", "weft yarn")

ROUNDING = 1e-9  # by which shares that make a whole may miss it


@dataclass(frozen=True)
class Material:
    """One product as the mill buys it.

    `substance` is a key of ``substances.csv``, or "" for a product without a formula; then the
    ``own_`` fields say what one kilogram of the active part holds. `strength` is the active part of
    the delivered mass; for reduced indigo it counts the dye as indigo. `remainder` is what the rest
    is: "water" or "inert" matter. `alkali` is caustic and `sodium_sulfide` sulfide delivered with the
    product, per delivered mass. A dye has a `dye_class`. `supplier` and `price_until`, the last day, are
    those of the offer that counts; `no_price` says why none counts on the day of the prices.
    """

    code: str
    description: str
    role: str
    substance: str
    strength: float
    remainder: str
    density: float
    alkali: float
    own_oxygen_demand: float
    own_sodium: float
    own_sulfur: float
    own_nitrogen: float
    caution: str = ""
    dye_class: str = ""
    sodium_sulfide: float = 0.0
    price: float | None = None
    price_by: str = "kg"
    freight: float = 0.0
    currency: str = ""
    price_date: datetime.date | None = None
    where: str = ""
    supplier: str = ""
    price_until: datetime.date | None = None
    no_price: str = ""

    def __post_init__(self) -> None:
        where = self.where or f"material {self.code}"
        check_fields(self, where)
        if self.remainder not in ("water", "inert"):
            raise InputError(where, f"remainder is {self.remainder!r}; accepted is one of: water, inert")
        if not self.substance and self.code in substances():
            raise InputError(
                where,
                f"the code {self.code!r} of a product without a formula is the key of a substance; accepted "
                "is another code, or the substance itself",
            )
        self._check_whole(where, f"{self.code!r} as delivered", "strength", "alkali", "sodium_sulfide")
        active = f"the active part of {self.code!r}"
        self._check_whole(where, active, "own_sodium", "own_sulfur", "own_nitrogen")

    def _check_whole(self, where: str, whole: str, *parts: str) -> None:
        """Refuse parts that are more than the whole."""
        shares = [getattr(self, name) for name in parts]
        if sum(shares) > 1.0 + ROUNDING:
            held = [(name, share) for name, share in zip(parts, shares) if share]
            told = [f"{label(name)} is {100 * share:.6g} %" for name, share in held]
            raise InputError(
                where,
                f"{', '.join(told[:-1])} and {told[-1]}, together {100 * sum(shares):.6g} % of {whole}; "
                "accepted is up to 100 % together",
            )

    def holds(self, substance: str) -> bool:
        """True where the substance comes with the product, as what it is or beside it."""
        return self.substance == substance or (substance == "sodium_sulfide" and self.sodium_sulfide > 0.0)

    @property
    def is_reduced_dye(self) -> bool:
        """True where the dye comes reduced."""
        return self.substance in REDUCED_DYES

    @property
    def counted_as(self) -> str:
        """Substance that the strength counts: the dye itself where it comes reduced."""
        return REDUCED_DYES.get(self.substance, self.substance)
