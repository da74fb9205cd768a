"""A small invented mill, made in code, for tests of the rooms below the workbook."""

from __future__ import annotations

import datetime
from typing import Any

from costing.quantities import QUANTITIES, to_house
from costing.settings.building import Assumption, Entry, build
from costing.settings.material import Material
from costing.settings.mill import Enquiry, Mill, Range, Recipe
from costing.settings.mill_costs import MillCosts
from costing.settings.style import Style

ROUTE = [
    ("scour", "scour"),
    ("rinse after scour", "rinse"),
    ("indigo dyeing", "indigo"),
    ("rinse after dyeing", "rinse"),
    ("drying", "drying"),
]

PRODUCTS = {
    "caustic_product": "LYE",
    "hydrosulfite_product": "HYDRO",
    "indigo_product": "INDIGO",
    "wetting_agent_product": "WET",
    "sequestrant_product": "SEQ",
    "dye_product": "BLACK",
    "reductant_product": "SULFIDE",
}


def material(
    code: str, substance: str, strength: float, remainder: str, price: float, **more: Any
) -> Material:
    """One invented product; everything left out is zero."""
    given = {
        "description": f"invented {code}",
        "role": "",
        "density": 1.0,
        "alkali": 0.0,
        "own_oxygen_demand": 0.0,
        "own_sodium": 0.0,
        "own_sulfur": 0.0,
        "own_nitrogen": 0.0,
        **more,
    }
    return Material(
        code=code, substance=substance, strength=strength, remainder=remainder, price=price, **given
    )


MATERIALS = [
    material("INDIGO", "indigo", 0.94, "inert", 5.0),
    material("PASTE", "indigo", 0.30, "water", 1.7),
    material("READY", "leuco_indigo", 0.40, "water", 3.2, alkali=0.06, density=1.15),
    material("HYDRO", "sodium_hydrosulfite", 0.88, "inert", 1.1),
    material("LYE", "sodium_hydroxide", 0.50, "water", 0.4, density=1.515),
    material("FLAKE", "sodium_hydroxide", 0.98, "inert", 0.7),
    material("WET", "", 0.60, "water", 1.5, own_oxygen_demand=1.65, own_sodium=0.099, own_sulfur=0.138),
    material("SEQ", "", 0.40, "water", 1.2, own_oxygen_demand=1.02, own_sodium=0.24),
    material(
        *("BLACK", "", 0.30, "water", 1.6),
        role="dye",
        dye_class="sulfur",
        own_oxygen_demand=1.4,
        own_sodium=0.05,
        own_sulfur=0.25,
        own_nitrogen=0.05,
        density=1.1,
    ),
    material(
        *("BLACK-REDUCED", "", 0.30, "water", 1.6),
        role="dye",
        dye_class="sulfur",
        alkali=0.03,
        sodium_sulfide=0.05,
        own_sulfur=0.25,
    ),
    material("VAT", "", 0.60, "inert", 8.0, role="dye", dye_class="vat", own_oxygen_demand=1.9),
    material("REACTIVE", "", 0.70, "inert", 7.0, role="dye", dye_class="reactive", own_sulfur=0.1),
    material("DIRECT", "", 0.70, "inert", 6.0, role="dye", dye_class="direct", own_sulfur=0.1),
    material("SALT", "sodium_chloride", 0.99, "inert", 0.1),
    material("UREA", "urea", 0.99, "inert", 0.4),
    material("SULFIDE", "sodium_sulfide", 0.60, "water", 0.7),
    material("HYDROSULFIDE", "sodium_hydrosulfide", 0.71, "water", 0.8),
    material("GLUCOSE", "glucose", 0.909, "water", 0.6),
    material("TUD", "thiourea_dioxide", 0.99, "inert", 3.0),
    material("PEROXIDE", "hydrogen_peroxide", 0.50, "water", 0.6, density=1.2),
    material("BROMATE", "sodium_bromate", 0.99, "inert", 2.5),
    material("ACETIC", "acetic_acid", 0.80, "water", 0.8, density=1.07),
    material("SULFURIC", "sulfuric_acid", 0.96, "water", 0.2, density=1.84),
    material("ASH", "sodium_carbonate", 0.99, "inert", 0.3),
    material("GAS", "", 1.0, "inert", 0.15, own_nitrogen=1.0),
    material("SOFT", "", 0.25, "water", 1.0, own_oxygen_demand=2.4),
    material("STARCH", "", 0.88, "water", 0.6, own_oxygen_demand=1.184),
    material("WAX", "", 0.95, "inert", 1.4, own_oxygen_demand=3.0),
    material("WARP", "", 1.0, "inert", 2.4),
    material("WEFT", "", 1.0, "inert", 2.2),
]

STYLE: dict[str, Any] = {
    "warp_count": 84.36e-6,
    "warp_ply": 1.0,
    "weft_count": 98.42e-6,
    "weft_ply": 1.0,
    "twist_contraction": 0.0,
    "width": 1.66,
    "width_basis": "cloth",
    "ends_density": 2450.0,
    "selvedge_ends": 48.0,
    "picks_density": 1650.0,
    "warp_crimp": 0.08,
    "crimp_basis": "cloth length",
    "weft_crimp": 0.03,
    "warp_waste": 0.02,
    "weft_waste": 0.03,
    "size_add_on": 0.09,
    "shrinkage_length": 0.10,
    "shrinkage_width": 0.04,
    "desize_loss": 0.0,
    "finishing_loss": 0.005,
    "finishing_add_on": 0.01,
}


def entries(values: dict[str, Any]) -> dict[str, Entry]:
    """Entries from plain values in the usual units."""
    found = {}
    for name, value in values.items():
        if name in QUANTITIES and isinstance(value, (int, float)):
            value = to_house(value, QUANTITIES[name].usual, QUANTITIES[name].unit)
        found[name] = Entry(value, f"test, {name}")
    return found


# What a range is that runs baths, where nothing else is said.
VESSEL = {"yarn_form": "beams in a vessel", "charge_mass": 500.0, "charge_time": 30.0}


def example_mill(
    recipe: dict[str, dict[str, Any]] | None = None,
    machine: dict[str, dict[str, Any]] | None = None,
    whole_machine: dict[str, Any] | None = None,
    enquiry: dict[str, Any] | None = None,
    route: list[tuple[str, str]] | None = None,
) -> Mill:
    """A mill with one style, recipe, range and enquiry.

    `recipe` and `machine` map a step to settings in usual units; `whole_machine` and `enquiry` are
    settings of the range and of the order. What is left out is the table's typical value.
    """
    mill = Mill()
    mill.materials = {item.code: item for item in MATERIALS}
    mill.styles = {"S": Style(code="S", description="invented", warp_yarn="WARP", weft_yarn="WEFT", **STYLE)}
    mill.recipes = {"R": Recipe("R", "invented", "rope indigo")}
    mill.routes = {"rope indigo": list(route or ROUTE)}
    taken: dict[Assumption, None] = {}
    has_bath = any(kind == "bath" for _, kind in route or ())
    general = {
        "steam_pressure": 4.0,
        "pressure_basis": "gauge",
        "steam_heating": "closed",
        "range_hour_rate": 120.0,
        "rope_places": 36,
        **(VESSEL if "yarn_form" not in (whole_machine or {}) and has_bath else {}),
        **(whole_machine or {}),
    }
    mill.ranges = {
        "M": build(Range, "range M", Range.GROUPS, entries(general), taken, {"code": "M", "description": ""})
    }
    order = {
        "order_length": 20000.0,
        "length_basis": "finished cloth",
        "sets_side_by_side": 1,
        "bath_at_start": "standing bath",
        "bath_at_end": "kept for the next lot",
        "pumps_in_stoppage": "running",
        **(enquiry or {}),
    }
    names = {"code": "E", "description": "", "style": "S", "recipe": "R", "range": "M"}
    mill.enquiries = {"E": build(Enquiry, "enquiry E", Enquiry.GROUPS, entries(order), taken, names)}
    for step, kind in mill.routes["rope indigo"]:
        given: dict[str, Any] = dict(PRODUCTS)
        if kind == "indigo":
            given["indigo_on_yarn"] = 2.0
        if kind in ("rinse", "recovering rinse"):
            given.update(rinse_water=6.0, rinse_feed="counter-current")
        given.update((recipe or {}).get(step, {}))
        if given.get("rinse_water_flow") is not None:
            given["rinse_water"] = None
        mill.recipe_steps["R", step] = entries(given)
        mill.range_steps["M", step] = entries((machine or {}).get(step, {}))
    mill.costs = MillCosts(
        currency="EUR",
        price_date=datetime.date(2026, 1, 15),
        water_price=0.0012,
        steam_price=0.032,
        power_price=0.12,
        effluent_charge=0.0018,
        overhead=0.12,
        margin=0.15,
        money_rounding=0.001,
    )
    return mill
