"""Rows of a mill's permit, what suppliers say of their products, and limits made from presets."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace

from costing.quantities import InputError
from costing.quantities.units import convert, measure
from costing.reference_data.discharge_limits import (
    AT_MOST,
    BASES,
    BETWEEN,
    CONCENTRATION,
    DIRECTIONS,
    NUMBERED,
    PER_DAY,
    PER_PRODUCT,
    POINTS,
    STATISTICS,
    VALUE,
    VERIFY,
    LimitRow,
    worded_statistic,
)

KILOGRAM, DAILY, DENSITY = "kg/kg", "kg/day", "kg/L"
HOUSE = {PER_PRODUCT: KILOGRAM, PER_DAY: DAILY, CONCENTRATION: DENSITY}
PH = "pH"


@dataclass(frozen=True)
class Limit:
    """One row of a permit table.

    Attributes
    ----------
    parameter : str
        As the permit names it.
    value : float or None
        In `unit`; None as long as nobody has typed it.
    unit : str
        "" for a pure number such as pH.
    basis, statistic, point, direction : str
        One of `BASES`, `STATISTICS`, `POINTS` and `DIRECTIONS`.
    number : int
        Days of the mean, or hours of the composite.
    value_to : float or None
        Upper end of a range.
    form : str
        As what it is counted: "as S", "as SO3", "filtered".
    per : str
        What a load is counted for.
    reference_flow : float or None
        Effluent up to which the permit allows no dilution [L/kg].
    reference : str
        Permit or regulation, with its section.
    """

    parameter: str
    value: float | None
    unit: str
    basis: str
    statistic: str
    point: str
    direction: str = AT_MOST
    number: int = 0
    value_to: float | None = None
    form: str = ""
    per: str = ""
    reference_flow: float | None = None
    reference: str = ""

    def __post_init__(self) -> None:
        if not self.parameter.strip():
            raise InputError("limit", "parameter is empty; accepted is a name")
        for name, accepted in (("basis", BASES), ("point", POINTS), ("direction", DIRECTIONS)):
            self._one_of(name, accepted)
        if self.value is not None or self.statistic:  # an empty form may leave the statistic open
            self._one_of("statistic", STATISTICS)
        self._check_numbers()
        self._check_unit()

    @property
    def where(self) -> str:
        """Name of the limit, for an error text."""
        return f"limit of {self.parameter}"

    @property
    def is_additive(self) -> bool:
        """True of pH and temperature, of which a percentage means nothing."""
        return self.parameter.casefold() == PH.casefold() or "temperature" in measure(self.unit)[0]

    def text(self) -> str:
        """The limit in words: value, unit, statistic, point."""
        low = "no value typed" if self.value is None else f"{self.direction} {self.value:g}"
        number = f"{low} and {self.value_to:g}" if self.value_to is not None else low
        parts = (f"{number} {self.unit}".rstrip(), worded_statistic(self.statistic, self.number), self.point)
        return f"{self.parameter} {self.form}".rstrip() + ": " + ", ".join(filter(None, parts))

    def _one_of(self, name: str, accepted: tuple[str, ...]) -> None:
        if getattr(self, name) not in accepted:
            raise InputError(
                self.where, f"{name} is {getattr(self, name)!r}; accepted is one of: {', '.join(accepted)}"
            )

    def _check_numbers(self) -> None:
        for name in ("value", "value_to", "reference_flow"):
            number = getattr(self, name)
            if number is not None and not (is_number(number) and number > 0.0):
                raise InputError(
                    self.where, f"{name.replace('_', ' ')} is {number!r}; accepted is a number above 0"
                )
        if (self.value is not None and self.direction == BETWEEN) != (self.value_to is not None):
            raise InputError(
                self.where, f"value to is {self.value_to!r}; accepted is a number for {BETWEEN}, else nothing"
            )
        if self.value is not None and self.value_to is not None and self.value_to <= self.value:
            raise InputError(
                self.where, f"range is {self.value:g} to {self.value_to:g}; accepted is low to high"
            )
        if self.direction != AT_MOST and self.basis != VALUE:
            raise InputError(
                self.where, f"direction is {self.direction!r}; accepted is {AT_MOST} for a {self.basis}"
            )
        if isinstance(self.number, bool) or self.number != int(self.number) or self.number < 0:
            raise InputError(self.where, f"number is {self.number!r}; accepted is a whole number")
        if (self.number > 0) != (self.statistic in NUMBERED):
            raise InputError(
                self.where,
                f"number is {self.number} for {self.statistic!r}; accepted are days or hours for "
                f"{' and '.join(NUMBERED)}, else 0",
            )
        if self.reference_flow is not None and self.basis != CONCENTRATION:
            raise InputError(
                self.where, f"reference flow stands beside a {self.basis}; accepted is a concentration"
            )

    def _check_unit(self) -> None:
        if self.basis != VALUE and "/" not in self.unit:
            raise InputError(
                self.where, f"unit is {self.unit!r}; accepted is a unit such as {HOUSE[self.basis]}"
            )
        self.read(1.0, HOUSE.get(self.basis, self.unit))

    def read(self, number: float, unit: str) -> float:
        """A number in the limit's unit read in another one."""
        try:
            return convert(number, self.unit, unit)
        except KeyError as error:
            raise InputError(self.where, f"unit is {error.args[0]!r}, which is not known") from None
        except ValueError:
            raise InputError(
                self.where,
                f"unit is {self.unit!r}; accepted for a {self.basis} is one such as {unit or 'none'}",
            ) from None


@dataclass(frozen=True)
class PermitLimit:
    """A limit of the sheet Permit.

    Attributes
    ----------
    point : str
        Code of the collecting point for which it holds.
    limit : Limit
        The limit.
    where : str
        Sheet and cell.
    """

    point: str
    limit: Limit
    where: str = ""


@dataclass(frozen=True)
class SupplierFigure:
    """What a supplier's sheet says of a product.

    Attributes
    ----------
    material : str
        Code of the sheet Materials.
    parameter : str
        As permits name it: copper, AOX, total phosphorus.
    content : float
        Mass for each mass of the product as delivered [kg/kg].
    reference : str
        From which sheet, and of what date.
    where : str
        Sheet and cell.
    """

    material: str
    parameter: str
    content: float
    reference: str = ""
    where: str = ""


def limit_of(row: LimitRow, reference_flow: float | None = None) -> Limit:
    """A preset or an empty form as a row of a permit table.

    Parameters
    ----------
    row : LimitRow
        Of `costing.reference_data.discharge_limits`; one that adds to another preset is refused.
    reference_flow : float, optional
        Of the permit [L/kg].

    Raises
    ------
    InputError
        An addition by itself.

    Examples
    --------
    >>> from costing.reference_data.discharge_limits import limits_of
    >>> limit_of(limits_of("us_410_g_bpt")[3]).text()
    'COD: at most 42.3 kg/t, mean of 30 days, after treatment'
    """
    if row.adds_to:
        raise InputError(
            f"limit of {row.parameter}",
            f"{row.preset} adds to {row.adds_to}; accepted is what both allow together",
        )
    return Limit(
        parameter=row.parameter,
        value=row.value,
        unit=row.unit,
        basis=row.basis,
        statistic=row.statistic,
        point=row.point,
        direction=row.direction,
        number=row.number,
        value_to=row.value_to,
        form=row.form,
        per=row.per,
        reference_flow=reference_flow,
        reference="; ".join(filter(None, (row.regulation, row.locator, row.edition, VERIFY))),
    )


def allowance(blocks: Iterable[tuple[Limit, float]]) -> Limit:
    """The load of a day that several products or subparts allow together: the sum of their blocks.

    Which product counts under which limit is for the permit writer to say.

    Parameters
    ----------
    blocks : iterable of (Limit, float)
        Limits for each mass of product, each with the production that it counts [kg/day].

    Returns
    -------
    Limit
        Load per day, with the statistic and the point that all blocks share.

    Raises
    ------
    InputError
        No block, an empty or an unlike one.

    Notes
    -----
    ``W = sum(factor * production)``

    Examples
    --------
    Twelve tonnes of yarn dyed, ten tonnes of cloth finished:

    >>> from costing.reference_data.discharge_limits import limits_of
    >>> cod = [limit_of(limits_of(preset)[3]) for preset in ("us_410_g_bpt", "us_410_d_bpt")]
    >>> round(allowance(zip(cod, (12000.0, 10000.0))).value, 1)
    807.6
    """
    given = list(blocks)
    if not given:
        raise InputError("allowance", "has no block; accepted is one or more")
    first = given[0][0]
    total = 0.0
    for limit, production in given:
        for name in ("parameter", "form", "statistic", "number", "point"):
            if getattr(limit, name) != getattr(first, name):
                raise InputError(
                    limit.where,
                    f"{name} is {getattr(first, name)!r} in one block and {getattr(limit, name)!r} in "
                    "another; accepted are blocks alike",
                )
        if limit.basis != PER_PRODUCT or limit.value is None:
            raise InputError(limit.where, f"accepted as a block is a {PER_PRODUCT} with a value")
        if not (is_number(production) and production >= 0.0):
            raise InputError(limit.where, f"production is {production!r}; accepted is 0 kg/day and above")
        total += limit.read(limit.value, KILOGRAM) * production
    if total <= 0.0:
        raise InputError(first.where, "no block has a production; accepted is one or more")
    told = " + ".join(dict.fromkeys(limit.reference for limit, _ in given if limit.reference))
    return replace(first, value=total, unit=DAILY, basis=PER_DAY, per="", reference=told)


def is_number(value: object) -> bool:
    """True for a finite number that is no truth value."""
    return isinstance(value, (int, float)) and not isinstance(value, bool) and math.isfinite(value)
