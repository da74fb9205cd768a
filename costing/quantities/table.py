"""All quantities, gathered from one table for each subject."""

from __future__ import annotations

from costing.quantities.quantity import Quantity
from costing.quantities.table_boxes import BOXES
from costing.quantities.table_discharge_money import DISCHARGE, LIMITS, MONEY
from costing.quantities.table_drain import DRAIN
from costing.quantities.table_dyeing import DYEING, LIQUOR, LOT
from costing.quantities.table_energy import ENERGY
from costing.quantities.table_orders import ORDERS
from costing.quantities.table_purchase import PURCHASE
from costing.quantities.table_records import RECORDS
from costing.quantities.table_size import SIZE
from costing.quantities.table_sulfur_dye import SULFUR_DYE
from costing.quantities.table_treatment import TREATMENT
from costing.quantities.table_yarn import CLOTH, SETS, YARN

SUBJECTS = {
    "yarn": YARN,
    "cloth": CLOTH,
    "sets": SETS,
    "liquor": LIQUOR,
    "dyeing": DYEING,
    "boxes": BOXES,
    "sulfur dye": SULFUR_DYE,
    "size": SIZE,
    "lot": LOT,
    "energy": ENERGY,
    "discharge": DISCHARGE,
    "drain": DRAIN,
    "treatment": TREATMENT,
    "limits": LIMITS,
    "money": MONEY,
    "orders": ORDERS,
    "purchase": PURCHASE,
    "records": RECORDS,
}

QUANTITIES: dict[str, Quantity] = {item.name: item for subject in SUBJECTS.values() for item in subject}

if len(QUANTITIES) != sum(map(len, SUBJECTS.values())):
    raise RuntimeError("a name stands twice in the tables of quantities")

CHOICES: dict[str, tuple[str, ...]] = {
    "width_basis": ("cloth", "reed"),
    "crimp_basis": ("cloth length", "warp length"),
    "length_basis": ("finished cloth", "loom-state cloth", "dyed warp"),
    "yarn_form": ("ropes", "sheet", "beams in a vessel", "cloth"),
    "pressure_basis": ("gauge", "absolute"),
    "steam_heating": ("direct", "closed"),
    "rinse_feed": ("counter-current", "separate feeds"),
    "other_reduction": ("none", "glucose", "thiourea dioxide", "electrolysis"),
    "dose_basis": ("as delivered", "100 %"),
    "bath_at_start": ("new fill", "standing bath"),
    "bath_at_end": ("kept for the next lot", "dumped"),
    "pumps_in_stoppage": ("running", "stopped"),
    "input_kind": (
        "step",
        "material",
        "mill costs",
        "exchange rate",
        "style",
        "range",
        "enquiry",
        "depth of shade",
    ),
    "text_kind": (
        "mill",
        "address",
        "contact",
        "payment",
        "delivery",
        "tolerance",
        "other term",
        "closing",
    ),
    "price_terms": ("delivered", "ex works"),
    "offer_counts": ("cheapest", "always", "no"),
    "pack_kind": ("bag", "drum", "IBC", "tanker"),
    "order_rule": ("as needed", "for a time", "economic quantity"),
    "order_status": ("open", "running", "forecast", "done", "cancelled"),
}


def quantity(name: str) -> Quantity:
    """The record of a name.

    Raises
    ------
    KeyError
        When no quantity has this name.
    """
    return QUANTITIES[name]
