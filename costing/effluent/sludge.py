"""Sludge of biology and of coagulants, the alkalinity coagulants use up, and the oxygen biology takes."""

from __future__ import annotations

from typing import Any

from costing.effluent.oxygen_demand import oxygen_demand_of_formula
from costing.process.chemistry import molar_mass_of_formula

ALUM = molar_mass_of_formula("Al2S3O12")  # aluminium sulfate without water
WATER = molar_mass_of_formula("H2O")
ALUMINIUM_HYDROXIDE = molar_mass_of_formula("AlO3H3")
FERRIC_CHLORIDE = molar_mass_of_formula("FeCl3")
FERRIC_HYDROXIDE = molar_mass_of_formula("FeO3H3")
ALUM_WATER = 14.3  # mol of water in each mol of the alum of trade
ALUM_CHARGE = 6.0  # charges of sulfate, which take as many of hydroxide or bicarbonate
FERRIC_CHARGE = 3.0
# Cells as C5H7NO2, the formula of textbooks; their nitrogen stays ammonium, as in the dichromate test.
OXYGEN_PER_CELLS = oxygen_demand_of_formula("C5H7NO2")


def biological_sludge(demand_removed: Any, sludge_yield: Any, volatile_share: Any) -> Any:
    """Dry sludge that grows on the oxygen demand that biology removes.

    Leaves out suspended solids that are caught in it.

    Parameters
    ----------
    demand_removed : float
        Organic COD removed [kg/h].
    sludge_yield : float
        Volatile solids that grow for each mass of COD removed, as observed [kg/kg].
    volatile_share : float
        Volatile part of the solids; the rest is ash [fraction].

    Returns
    -------
    float
        Dry solids [kg/h].

    Examples
    --------
    >>> round(biological_sludge(demand_removed=300.0, sludge_yield=0.25, volatile_share=0.75), 6)
    100.0
    """
    return demand_removed * sludge_yield / volatile_share


def biology_oxygen(demand_removed: Any, sludge_yield: Any, sulfur_demand: Any = 0.0) -> Any:
    """Oxygen that biology takes: what is removed and not built into sludge, and the sulfur salts in full.

    Leaves out oxygen for nitrogen. Sludge that breaks down takes more, which a lower observed yield says.

    Parameters
    ----------
    demand_removed : float
        Organic COD removed [kg/h].
    sludge_yield : float
        Volatile solids that grow for each mass of COD removed, as observed [kg/kg].
    sulfur_demand : float, optional
        COD of sulfite, hydrosulfite, thiosulfate and sulfide [kg/h].

    Returns
    -------
    float
        Oxygen [kg/h].

    Notes
    -----
    ``(1 - 1.416 Y) COD + COD_S``: cells as C5H7NO2 hold 1.416 kg of oxygen demand a kilogram.

    Examples
    --------
    >>> round(biology_oxygen(demand_removed=300.0, sludge_yield=0.25, sulfur_demand=50.0), 1)
    243.9
    """
    return demand_removed * (1.0 - OXYGEN_PER_CELLS * sludge_yield) + sulfur_demand


def alum_sludge(
    coagulant_used: Any,
    crystal_water: Any = ALUM_WATER,
    *,
    anhydrous_alum: Any = ALUM,
    water_of_crystals: Any = WATER,
    aluminium_hydroxide: Any = ALUMINIUM_HYDROXIDE,
) -> Any:
    """Dry sludge that alum makes of itself, as hydroxide; what it catches comes on top.

    Parameters
    ----------
    coagulant_used : float
        Alum, with its water of crystals [kg/h].
    crystal_water : float, optional
        Water in each mol: 14 to 18 by the grade [fraction].
    anhydrous_alum, water_of_crystals, aluminium_hydroxide : float
        Mass of one mol [kg/mol].

    Returns
    -------
    float
        Dry solids [kg/h].

    Notes
    -----
    ``Al2(SO4)3 + 6 HCO3- -> 2 Al(OH)3 + 3 SO4-- + 6 CO2``

    Examples
    --------
    >>> round(alum_sludge(100.0), 1)
    26.0
    """
    return coagulant_used * 2.0 * aluminium_hydroxide / (anhydrous_alum + crystal_water * water_of_crystals)


def ferric_sludge(
    coagulant_used: Any,
    *,
    ferric_chloride: Any = FERRIC_CHLORIDE,
    ferric_hydroxide: Any = FERRIC_HYDROXIDE,
) -> Any:
    """Dry sludge that ferric chloride (100 %) makes of itself, as hydroxide; what it catches comes on top.

    Parameters
    ----------
    coagulant_used : float
        Ferric chloride, without water [kg/h].
    ferric_chloride, ferric_hydroxide : float
        Mass of one mol [kg/mol].

    Returns
    -------
    float
        Dry solids [kg/h].

    Examples
    --------
    >>> round(ferric_sludge(100.0), 1)
    65.9
    """
    return coagulant_used * ferric_hydroxide / ferric_chloride


def alum_alkalinity(
    coagulant_dose: Any,
    crystal_water: Any = ALUM_WATER,
    *,
    anhydrous_alum: Any = ALUM,
    water_of_crystals: Any = WATER,
) -> Any:
    """Alkalinity that alum uses up; its sulfate stays in the water.

    Parameters
    ----------
    coagulant_dose : float
        Alum, with its water of crystals, in each volume of water [kg/L].
    crystal_water : float, optional
        Water in each mol: 14 to 18 by the grade [fraction].
    anhydrous_alum, water_of_crystals : float
        Mass of one mol [kg/mol].

    Returns
    -------
    float
        Strong-ion difference used up [mol/L].

    Notes
    -----
    Six charges a mol: 0.50 kg as calcium carbonate for each kilogram of alum.

    Examples
    --------
    >>> round(alum_alkalinity(0.0003) * 1000, 2)
    3.0
    """
    return ALUM_CHARGE * coagulant_dose / (anhydrous_alum + crystal_water * water_of_crystals)


def ferric_alkalinity(coagulant_dose: Any, *, ferric_chloride: Any = FERRIC_CHLORIDE) -> Any:
    """Alkalinity that ferric chloride (100 %) uses up; its chloride stays in the water.

    Parameters
    ----------
    coagulant_dose : float
        Ferric chloride, without water, in each volume of water [kg/L].
    ferric_chloride : float
        Mass of one mol [kg/mol].

    Returns
    -------
    float
        Strong-ion difference used up [mol/L].

    Notes
    -----
    Three charges a mol: 0.925 kg as calcium carbonate for each kilogram.

    Examples
    --------
    >>> round(ferric_alkalinity(0.0003) * 1000, 2)
    5.55
    """
    return FERRIC_CHARGE * coagulant_dose / ferric_chloride


def wet_cake(dry_sludge: Any, cake_dryness: Any) -> Any:
    """Sludge as it leaves the press, to be carted away.

    Parameters
    ----------
    dry_sludge : float
        Dry solids [kg/h].
    cake_dryness : float
        Dry solids in the cake [fraction].

    Returns
    -------
    float
        Cake [kg/h].

    Examples
    --------
    >>> wet_cake(dry_sludge=100.0, cake_dryness=0.20)
    500.0
    """
    return dry_sludge / cake_dryness
