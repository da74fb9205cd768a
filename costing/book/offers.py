"""Read the sheet Offers: what suppliers ask for a material, from which quantity, and until when."""

from __future__ import annotations

from costing.book.layout import tables_of
from costing.book.materials import known_currency, price_by_mass
from costing.book.sheet import Sheet
from costing.book.tables import TableRow, read_table
from costing.cost.offers import bought_from
from costing.quantities import InputError, check
from costing.quantities.units import measure
from costing.settings.mill import Mill
from costing.settings.offers import CHEAPEST, DELIVERED, MaterialOffers, Offer

OFFERS_SHEET = "Offers"  # which a book may lack: then the sheet Materials has all prices


def read_offers(sheet: Sheet, mill: Mill) -> None:
    """Put the offers into the mill, whose materials are read already.

    Raises
    ------
    InputError
        A missing or refused cell, an unknown material, or one that has a price on the sheet Materials too.
    """
    (table,) = tables_of("offers")
    found: dict[str, list[Offer]] = {}
    for row in read_table(sheet, table):
        offer = _offer(row, mill)
        found.setdefault(offer.material, []).append(offer)
    for code, offers in found.items():
        listed = mill.materials[code]
        for offer in offers:
            bought_from(listed, offer)  # its strength may not go with the caustic that is in the product
        usual = mill.given["material", code]["usual_purchase"].value
        mill.offers[code] = MaterialOffers(listed, tuple(offers), usual)


def _offer(row: TableRow, mill: Mill) -> Offer:
    listed = mill.material(row.code, row.where)
    given = mill.given["material", listed.code]
    if listed.price is not None:
        raise InputError(
            row.at("price"),
            f"{listed.code!r} has an offer here and a price in {given['price'].where} too; accepted is one "
            "of the two: take the price out there, or make it an offer",
        )
    if row.cells["price"].is_empty:
        raise InputError(row.at("price"), f"the price of {listed.code!r} is empty; accepted is more than 0")
    terms = row.text("price_terms")
    freight_empty = row.cells["freight"].is_empty
    if terms == DELIVERED and not freight_empty:
        raise InputError(
            row.at("freight"),
            "freight is filled beside a delivered price, which has it in; accepted is an empty cell, or the "
            "terms ex works",
        )
    if terms != DELIVERED and freight_empty:
        raise InputError(
            row.at("freight"),
            f"freight is empty beside the terms {terms}; accepted is what it costs to the mill, 0 where it "
            "costs nothing",
        )
    strength = row.number("strength", unit="%")
    price, freight, per = price_by_mass(row, given["density"].value, given["density"].where)
    assert price is not None
    if price == 0.0:
        raise InputError(
            row.at("price"),
            f"the price of {listed.code!r} is 0, and would be the cheapest of all; accepted is more than 0; "
            "what costs nothing has its price 0 on the sheet Materials",
        )
    if strength is not None and measure(per)[0] == measure("L")[0]:
        raise InputError(
            row.at("strength"),
            f"strength is filled beside a price per {per}: the density on the sheet Materials is that of the "
            "strength there; accepted is an empty cell, or a price per kg or t",
        )
    own = strength is not None
    return Offer(
        material=listed.code,
        supplier=row.text("supplier"),
        price=price,
        freight=freight,
        price_by=per,
        currency=known_currency(row, mill),
        price_terms=terms,
        strength=listed.strength if strength is None else check("strength", strength, row.at("strength")),
        from_quantity=row.number("from_quantity", unit="kg") or 0.0,
        valid_from=row.date("valid_from"),
        valid_to=row.date("valid_to"),
        offer_counts=row.text("offer_counts") or CHEAPEST,
        note=row.text("note"),
        where=row.where,
        strength_where=row.at("strength") if own else given["strength"].where,
    )
