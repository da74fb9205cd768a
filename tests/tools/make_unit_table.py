"""Generate ``costing/quantities/unit_table.py`` from pint.

Run ``python -m tests.tools.make_unit_table`` after adding a unit to ``WANTED`` or ``PARTS``.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pint

TARGET = Path(__file__).parents[2] / "costing" / "quantities" / "unit_table.py"

# Units that are offered: spelling in the table -> spelling that pint reads.
WANTED = {
    "": "dimensionless",
    "%": "percent",
    "ppm": "ppm",
    "g/kg": "g/kg",
    "kg/kg": "kg/kg",
    "kg/t": "kg/metric_ton",
    "g/t": "g/metric_ton",
    "mg/kg": "mg/kg",
    # counts and linear density
    "tex": "tex",
    "dtex": "dtex",
    "den": "denier",
    "g/m": "g/m",
    "kg/m": "kg/m",
    "g/km": "g/km",
    "oz/yd": "oz/yd",
    "Ne": "number_english",
    "Nm": "number_meter",
    "m/kg": "m/kg",
    # length, area, threads
    "m": "m",
    "cm": "cm",
    "mm": "mm",
    "km": "km",
    "yd": "yd",
    "in": "inch",
    "ft": "ft",
    "m2": "m**2",
    "1/m": "1/m",
    "1/cm": "1/cm",
    "1/in": "1/inch",
    "g/m2": "g/m**2",
    "kg/m2": "kg/m**2",
    "oz/yd2": "oz/yd**2",
    # mass, volume, strength of liquors
    "kg": "kg",
    "g": "g",
    "mg": "mg",
    "t": "metric_ton",
    "lb": "lb",
    "oz": "oz",
    "L": "L",
    "mL": "mL",
    "m3": "m**3",
    "kg/L": "kg/L",
    "g/L": "g/L",
    "mg/L": "mg/L",
    "kg/m3": "kg/m**3",
    "g/m3": "g/m**3",
    "g/cm3": "g/cm**3",
    "L/kg": "L/kg",
    "mL/kg": "mL/kg",
    "m3/t": "m**3/metric_ton",
    "m3/kg": "m**3/kg",
    "mol/mol": "mol/mol",
    "S/m": "siemens/m",
    "mS/cm": "millisiemens/cm",
    "uS/cm": "microsiemens/cm",
    "kg*m/L/S": "kg*m/L/siemens",
    "mg/L/(uS/cm)": "mg/L/(microsiemens/cm)",
    "mol/L": "mol/L",
    "mmol/L": "mmol/L",
    "mol/kg": "mol/kg",
    "mmol/kg": "mmol/kg",
    "kg/mol": "kg/mol",
    "g/mol": "g/mol",
    # time, speed, flow
    "h": "hour",
    "min": "minute",
    "s": "second",
    "day": "day",
    "1/h": "1/hour",
    "%/h": "percent/hour",
    "%/year": "percent/year",
    "m/h": "m/hour",
    "m/day": "m/day",
    "m/min": "m/minute",
    "m/s": "m/s",
    "yd/min": "yd/minute",
    "L/h": "L/hour",
    "L/min": "L/minute",
    "m3/h": "m**3/hour",
    "m3/day": "m**3/day",
    "kg/h": "kg/hour",
    "kg/day": "kg/day",
    "t/h": "metric_ton/hour",
    "kg/m2/h": "kg/m**2/hour",
    "g/m2/h": "g/m**2/hour",
    # heat, steam, power
    "degC": "degC",
    "degF": "degF",
    "K": "kelvin",
    "bar": "bar",
    "kPa": "kPa",
    "MPa": "MPa",
    "psi": "psi",
    "kJ/kg": "kJ/kg",
    "MJ/kg": "MJ/kg",
    "kJ/kg/K": "kJ/kg/kelvin",
    "kJ/h/m2": "kJ/hour/m**2",
    "kW/m2": "kW/m**2",
    "kW": "kW",
    "kWh": "kWh",
    "kJ": "kJ",
    "MJ": "MJ",
    "kWh/kg": "kWh/kg",
    "Wh/kg": "Wh/kg",
    "kWh/m3": "kWh/m**3",
    "kWh/L": "kWh/L",
    "V": "volt",
    "mV": "millivolt",
    # money; the currency itself is text beside the number
    "money": "money",
    "money/kg": "money/kg",
    "money/t": "money/metric_ton",
    "money/g": "money/g",
    "money/lb": "money/lb",
    "money/L": "money/L",
    "money/m3": "money/m**3",
    "money/kWh": "money/kWh",
    "money/MJ": "money/MJ",
    "money/h": "money/hour",
    "money/min": "money/minute",
    "money/year": "money/year",
    "money/m": "money/m",
    "money/yd": "money/yd",
}

# Units that are understood, alone or as a part such as in "kcal/h/m2", but not offered.
PARTS = {
    "µg": "µg",
    "grain": "grain",
    "ktex": "ktex",
    "mtex": "mtex",
    "dm": "dm",
    "µm": "µm",
    "cL": "cL",
    "dL": "dL",
    "hL": "hL",
    "cc": "cm**3",
    "gal": "gallon",
    "mol": "mol",
    "mmol": "mmol",
    "kmol": "kmol",
    "µmol": "µmol",
    "week": "week",
    "year": "year",
    "N": "newton",
    "kgf": "kilogram_force",
    "Pa": "Pa",
    "hPa": "hPa",
    "mbar": "mbar",
    "atm": "atm",
    "J": "J",
    "GJ": "GJ",
    "cal": "cal",
    "kcal": "kcal",
    "BTU": "BTU",
    "W": "W",
    "MW": "MW",
    "hp": "hp",
    "S": "siemens",
    "mS": "mS",
    "µS": "µS",
    "Wh": "Wh",
    "MWh": "MWh",
}


def registry() -> pint.UnitRegistry[float]:
    """Pint's own registry, with money as one more dimension."""
    units: pint.UnitRegistry[float] = pint.UnitRegistry()
    units.define("money = [money]")
    return units


def rows(wanted: Mapping[str, str]) -> list[tuple[str, str, float, float]]:
    """Name, dimension, factor and offset to SI base units of each wanted unit."""
    units = registry()
    found = []
    for name, spelling in wanted.items():
        unit = units.Unit(spelling)
        zero = units.Quantity(0.0, unit).to_base_units().magnitude
        dimension = " ".join(
            f"{key.strip('[]')}{power:+g}" for key, power in sorted(unit.dimensionality.items())
        )
        one = units.Quantity(1.0, unit).to_base_units().magnitude
        if (
            spelling != "kelvin" and zero != 0
        ):  # a temperature scale with its own zero: the size of one degree
            one = units.Quantity(1.0, f"delta_{spelling}").to("delta_degC").magnitude
        found.append((name, dimension, float(f"{one:.15g}"), float(f"{zero:.15g}")))
    return found


def text() -> str:
    """The module as it should stand."""
    lines = [
        '"""Unit -> (dimension, factor, offset) to SI base units: those offered, and parts of others.',
        "",
        "Generated by ``python -m tests.tools.make_unit_table`` from pint: do not edit.",
        '"""',
        "",
        "from __future__ import annotations",
        "",
    ]
    for table, wanted in (("UNITS", WANTED), ("PARTS", PARTS)):
        lines.append(f"{table}: dict[str, tuple[str, float, float]] = {{")
        lines += [
            f'    "{name}": ("{dimension}", {factor!r}, {offset!r}),'
            for name, dimension, factor, offset in rows(wanted)
        ]
        lines += ["}", ""]
    return "\n".join(lines)


if __name__ == "__main__":
    TARGET.write_text(text(), encoding="utf-8")
