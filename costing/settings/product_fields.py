"""Which products a recipe or a range may name for which of its rows."""

from __future__ import annotations

from costing.reference_data import substances

# The product holds one of the substances named; "" stands for a product without a formula. Where nothing is
# named it holds none that takes part in a reaction.
PLAIN: tuple[str, ...] = ()
REDUCTANTS = ("sodium_sulfide", "sodium_hydrosulfide", "sodium_hydrosulfite", "glucose")
IN_ANY_BOX = (
    "",
    *REDUCTANTS,
    "sodium_hydroxide",
    "sodium_carbonate",
    "sodium_bicarbonate",
    "hydrogen_peroxide",
    "sodium_bromate",
    "acetic_acid",
    "sulfuric_acid",
)

PRODUCT_FIELDS: dict[str, tuple[str, ...]] = {
    "caustic_product": ("sodium_hydroxide",),
    "hydrosulfite_product": ("sodium_hydrosulfite",),
    "indigo_product": ("indigo", "leuco_indigo"),
    "dye_product": ("",),
    "batch_dye_product": ("",),
    "reductant_product": REDUCTANTS,
    "other_reductant_product": ("glucose", "thiourea_dioxide"),
    "returned_dye_product": ("indigo",),
    "recovered_caustic_product": ("sodium_hydroxide",),
    "blanket_product": PLAIN,
    "wetting_agent_product": PLAIN,
    "sequestrant_product": PLAIN,
    "first_product": IN_ANY_BOX,
    "second_product": IN_ANY_BOX,
    "third_product": IN_ANY_BOX,
    "fourth_product": IN_ANY_BOX,
    "fifth_product": IN_ANY_BOX,
}

# Rows whose product must have this role, and rows whose product must not be a dye.
DYE = "dye"
INDIGO = "indigo"
DYE_FIELDS = ("dye_product", "batch_dye_product")

# Roles of substances that a bath makes, uses up or is made of; an auxiliary leaves as it came.
REACTING = ("dye", "reductant", "alkali", "oxidant", "acid", "gas", "water", "fibre matter")


def may_be_used(field: str, substance: str, role: str) -> bool:
    """True where a product may stand in a row of a recipe.

    Parameters
    ----------
    field : str
        Name of the row.
    substance : str
        What the product holds, "" without a formula.
    role : str
        Role of the product in the mill's list.
    """
    if not substance and (role == DYE) != (field in DYE_FIELDS):
        return False
    holding = PRODUCT_FIELDS[field]
    if substance in holding:
        return True
    if holding and "" not in holding:
        return False
    return field not in DYE_FIELDS and (not substance or substances()[substance].role not in REACTING)


def accepted_product(field: str) -> str:
    """What `may_be_used` accepts, in words."""
    if field in DYE_FIELDS:
        return "a product of the role dye without a formula"
    named = [name.replace("_", " ") for name in PRODUCT_FIELDS[field] if name]
    plain = "a product without a formula that is no dye, or one that holds a salt"
    if not named:
        return plain
    held = f"a material that holds {' or '.join(named)}"
    return f"{held}, {plain}" if "" in PRODUCT_FIELDS[field] else held
