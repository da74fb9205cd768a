"""Read the sheet Materials: what is bought, what it holds, and its price by mass."""

from __future__ import annotations

from costing.book.layout import accepted_words, substance_names, tables_of
from costing.book.sheet import Sheet
from costing.book.tables import TableRow, read_table, refuse_twice
from costing.cost.money import price_from_volume
from costing.process.sulfide_oxidation import SULFUR_IN_SULFIDE
from costing.quantities import InputError, check, listed, meant
from costing.quantities.units import measure
from costing.settings.building import Entry
from costing.settings.material import REDUCED_DYES, YARN_ROLES, Material
from costing.settings.mill import Mill
from costing.settings.offers import LISTED_STRENGTH
from costing.settings.product_fields import DYE, INDIGO

OWN = ("own_oxygen_demand", "own_sodium", "own_sulfur", "own_nitrogen")


def read_materials(sheet: Sheet, mill: Mill) -> None:
    """Put the materials into the mill, whose costs are read already: they know the currencies.

    Raises
    ------
    InputError
        A missing or refused cell, or a code that stands twice.
    """
    (table,) = tables_of("materials")
    for row in refuse_twice(read_table(sheet, table), "material"):
        item = mill.materials[row.code] = _material(row, mill)
        mill.given["material", row.code] = {
            **{name: Entry(getattr(item, name), row.at(name)) for name in ("strength", "alkali", "price")},
            LISTED_STRENGTH: Entry(item.strength, row.at("strength")),
            "density": Entry(row.number("density", "density_unit"), row.at("density")),
            "usual_purchase": Entry(row.number("usual_purchase", unit="kg"), row.at("usual_purchase")),
        }
        mill.places["material", row.code] = row.where


def _material(row: TableRow, mill: Mill) -> Material:
    substance_name, role = row.text("substance"), row.text("role")
    own = {}
    for name in OWN:
        what, empty = row.columns[name].head.lower(), row.cells[name].is_empty
        if substance_name and not empty:
            raise InputError(
                row.at(name),
                f"{what} is filled, but the formula of {substance_name} gives it; accepted is an empty cell",
            )
        if empty and not substance_name and role not in YARN_ROLES:
            raise InputError(
                row.at(name),
                f"{what} of {row.code!r} is empty; accepted is a number, 0 where there is none, or a "
                "substance with a formula",
            )
        own[name] = row.number(name, "own_unit")
    substance = substance_names()[substance_name] if substance_name else ""
    if substance and not row.cells["sulfide"].is_empty:
        raise InputError(
            row.at("sulfide"),
            f"sulfide, as S, is filled beside the substance {substance_name}; accepted is an empty cell; "
            "only a product without a formula brings sulfide beside what it is",
        )
    density = row.number("density", "density_unit")
    price, freight, per = price_by_mass(row, density, row.at("density"))
    strength = row.number("strength", "strength_unit")
    return Material(
        code=row.code,
        description=row.text("description"),
        role=role,
        substance=substance,
        dye_class=_dye_class(row, role, substance),
        strength=check("strength", strength, row.at("strength")),
        remainder=row.text("remainder"),
        density=1.0 if density is None else density,  # only a price by volume needs it, and asks for it
        alkali=row.number("alkali", "alkali_unit") or 0.0,
        sodium_sulfide=(row.number("sulfide", "sulfide_unit") or 0.0) / SULFUR_IN_SULFIDE,
        own_oxygen_demand=own["own_oxygen_demand"] or 0.0,
        own_sodium=own["own_sodium"] or 0.0,
        own_sulfur=own["own_sulfur"] or 0.0,
        own_nitrogen=own["own_nitrogen"] or 0.0,
        caution=row.text("caution"),
        price=price,
        price_by=per,
        freight=freight,
        currency=known_currency(row, mill),
        price_date=row.date("price_date"),
        where=row.where,
    )


def _dye_class(row: TableRow, role: str, substance: str) -> str:
    """The class of a dye; refused beside any other role, and where the substance tells another one."""
    found = row.text("dye_class")
    if role != DYE:
        if found:
            raise InputError(
                row.at("dye_class"),
                f"dye class is {found!r} beside the role {role!r}; accepted is an empty cell, or the role "
                f"{DYE}",
            )
        return ""
    if not found:
        raise InputError(
            row.at("dye_class"),
            f"dye class of {row.code!r} is empty; accepted is one of: "
            f"{listed(accepted_words('dye_classes'))}",
        )
    is_indigo = REDUCED_DYES.get(substance, substance) == INDIGO
    if is_indigo != (found == INDIGO):
        accepted = INDIGO if is_indigo else "another class, or indigo as the substance"
        raise InputError(
            row.at("dye_class"), f"dye class of {row.code!r} is {found!r}; accepted is {accepted}"
        )
    return found


def known_currency(row: TableRow, mill: Mill) -> str:
    """The currency of a price as the sheet Mill costs has it; "" for the mill's own.

    Raises
    ------
    InputError
        One without any rate.
    """
    assert mill.costs is not None
    currency = row.text("currency")
    known = sorted({mill.costs.currency, *(rate.currency for rate in mill.rates)})
    found = meant(currency, known) if currency else ""
    if found is None:
        raise InputError(
            row.at("currency"),
            f"currency {currency!r} of {row.code!r} has no exchange rate; accepted is one of: "
            f"{listed(known, currency)}",
        )
    return found


def price_by_mass(row: TableRow, density: float | None, density_cell: str) -> tuple[float | None, float, str]:
    """Price and freight by mass, and the unit they were given for; None for an empty price.

    Parameters
    ----------
    row : TableRow
        With price, freight and the unit that both are for.
    density : float or None
        Of the product, where it is known.
    density_cell : str
        Sheet and cell of it.

    Raises
    ------
    InputError
        A freight without a price, a price without a unit, or one by volume without a density.
    """
    per = row.text("per")
    if row.cells["price"].is_empty:
        if not row.cells["freight"].is_empty:
            raise InputError(
                row.at("price"), "price is empty beside a freight; accepted is a price of 0 or more"
            )
        return None, 0.0, "kg"
    if not per:
        raise InputError(row.at("per"), "the price has no unit to go with it; accepted is kg, t, lb or L")
    by_volume = measure(per)[0] == measure("L")[0]
    if by_volume and density is None:
        raise InputError(
            density_cell, f"density is empty, but the price is per {per}; accepted is 0.5 to 3 kg/L"
        )
    unit = f"money/{per}"
    found = {}
    for name in ("price", "freight"):
        if by_volume:
            by_litre = row.number(name, unit=unit, quantity="price_per_litre") or 0.0
            found[name] = float(price_from_volume(by_litre, density))
        else:
            found[name] = row.number(name, unit=unit) or 0.0
    return found["price"], found["freight"], per
