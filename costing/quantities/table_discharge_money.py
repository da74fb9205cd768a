"""What goes down the drain, and what it costs."""

from __future__ import annotations

from costing.quantities.quantity import Quantity as Q  # noqa: N817  (one row a line)

DISCHARGE = (
    Q("effluent_volume", "L/kg", "L/kg", 0.0, 1000.0, "effluent"),
    Q("load", "kg/kg", "g/kg", 0.0, 5000.0, "mass of a parameter in the effluent"),
    Q("load_per_metre", "kg/m", "g/m", 0.0, 5000.0, "mass of a parameter per metre of cloth"),
    Q("effluent_concentration", "kg/L", "mg/L", 0.0, 1e6, "concentration in the effluent"),
    Q("oxygen_demand", "kg/kg", "kg/kg", 0.0, 5.0, "oxygen taken by full oxidation, per substance"),
    Q("recovery", "", "%", 0.0, 120.0, "share of the theoretical demand that the test finds"),
    Q("molar_mass", "kg/mol", "g/mol", 1.0, 5000.0, "mass of one mol"),
    Q("alkalinity", "mol/L", "mmol/L", -1e5, 1e5, "strong-ion difference of the water"),
    Q("acid_demand", "kg/L", "g/L", 0.0, 1000.0, "acid (100 %) that the alkalinity takes"),
    Q("acid_per_charge", "kg/mol", "g/mol", 1.0, 500.0, "pure acid that takes up one mol of charge"),
    Q("amount_concentration", "mol/L", "mmol/L", 0.0, 1e6, "amount of a substance in each litre"),
    Q("free_caustic", "kg/L", "g/L", 0.0, 200.0, "free caustic (NaOH 100 %) in the water"),
    Q("water_constant", "", "", 12.0, 15.0, "ion product of water, as the minus of its power of ten"),
    Q(
        "total_carbonate",
        "mol/L",
        "mmol/L",
        0.0,
        5000.0,
        "carbon dioxide, bicarbonate and carbonate together",
    ),
    Q("total_sulfite", "mol/L", "mmol/L", 0.0, 5000.0, "sulfur dioxide, bisulfite and sulfite together"),
    Q("total_sulfide", "mol/L", "mmol/L", 0.0, 5000.0, "hydrogen sulfide and its ions together"),
    Q("total_acetate", "mol/L", "mmol/L", 0.0, 5000.0, "acetic acid and acetate together"),
    Q("effluent_temperature", "degC", "degC", 0.0, 100.0, "temperature of the effluent"),
    Q("ionic_strength", "mol/L", "mol/L", 0.0, 10.0, "half the sum of concentration times charge squared"),
    Q("target_acidity", "", "", 6.0, 12.0, "pH to be reached; lower sets poisonous gas free"),
    Q("carbon_dioxide_pressure", "bar", "bar", 0.0, 2.0, "pressure of the carbon dioxide in the gas, alone"),
    Q("carbon_dioxide_demand", "kg/L", "g/L", 0.0, 1000.0, "carbon dioxide that the water dissolves"),
    Q("gas_carbon_dioxide", "", "%", 1.0, 100.0, "carbon dioxide in the gas, by volume"),
    Q("gas_uptake", "", "%", 1.0, 100.0, "share of the carbon dioxide blown in that the water takes"),
    Q("flue_gas", "", "", 0.0, 1e6, "flue gas, at 25 degC and 1 atm, for each volume of water"),
    Q("substance_share", "", "%", 0.0, 100.0, "part of the mass, by its formula"),
    Q(
        "own_oxygen_demand",
        "kg/kg",
        "kg/kg",
        0.0,
        5.0,
        "oxygen demand of the active substance, where it has no formula",
    ),
)

MONEY = (
    Q("price", "money/kg", "money/kg", 0.0, 1e6, "price of the product as delivered"),
    Q("price_per_litre", "money/L", "money/L", 0.0, 1e6, "price of a product sold by volume"),
    Q("freight", "money/kg", "money/kg", 0.0, 1e5, "freight and duty on the product as delivered"),
    Q("pure_price", "money/kg", "money/kg", 0.0, 1e8, "price of the pure substance"),
    Q("water_price", "money/L", "money/m3", 0.0, 1e4, "water, treated, at the range"),
    Q("steam_price", "money/kg", "money/t", 0.0, 1e5, "steam at the range"),
    Q("power_price", "money/kWh", "money/kWh", 0.0, 100.0, "electric energy"),
    Q("effluent_charge", "money/L", "money/m3", 0.0, 1e4, "treatment and discharge"),
    Q("range_hour_rate", "money/h", "money/h", 0.0, 1e6, "people, maintenance and capital of the range"),
    Q("overhead", "", "%", 0.0, 300.0, "overhead, of the conversion cost"),
    Q("margin", "", "%", 0.0, 90.0, "margin, of the selling price"),
    Q("exchange_rate", "", "", 1e-6, 1e6, "money of the mill for one of the other currency"),
    Q("money_rounding", "money", "money", 1e-6, 1e3, "step to which money is rounded, at the end only"),
    Q("cost", "money/kg", "money/kg", 0.0, 1e9, "cost per mass of yarn"),
    Q("cost_per_metre", "money/m", "money/m", 0.0, 1e9, "cost per metre of cloth"),
    Q("selling_price", "money/kg", "money/kg", 0.0, 1e9, "price with margin"),
)
