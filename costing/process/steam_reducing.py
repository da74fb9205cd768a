"""The constants of IAPWS-IF97 that carry a unit."""

from __future__ import annotations

from typing import Any, NamedTuple


class Reducing(NamedTuple):
    """Every constant of the formulation that carries a unit, and the range it is used in.

    A function takes it behind a bare star, so it is no argument of a formula in a cell. To run a function on
    quantities that carry units, hand it a bundle that carries them too: degC where degC is said, and degrees
    of difference (kelvins) where K is said.

    Attributes
    ----------
    gas_constant : float
        Of water [kJ/kg/K].
    ice_point : float
        Zero of the scale, and the coldest temperature accepted [degC].
    ice_point_absolute : float
        The same above absolute zero [K].
    water_pressure, water_temperature : float
        Region 1 [bar, K].
    steam_pressure, steam_temperature : float
        Region 2 [bar, K].
    boiling_pressure, boiling_temperature : float
        Region 4 [bar, K].
    atmosphere : float
        Standard pressure of the air [bar].
    hottest : float
        Highest temperature accepted [degC].
    least_pressure, most_pressure : float
        Pressures accepted for saturated steam [bar].
    most_water_pressure : float
        Pressure accepted for water [bar].

    References
    ----------
    iapws-if97, equation (1) and sections 5.1, 6.1 and 8
    """

    gas_constant: Any = 0.461526
    ice_point: Any = 0.0
    ice_point_absolute: Any = 273.15
    water_pressure: Any = 165.3
    water_temperature: Any = 1386.0
    steam_pressure: Any = 10.0
    steam_temperature: Any = 540.0
    boiling_pressure: Any = 10.0
    boiling_temperature: Any = 1.0
    atmosphere: Any = 1.01325
    hottest: Any = 350.0
    least_pressure: Any = 0.0061122
    most_pressure: Any = 165.29
    most_water_pressure: Any = 1000.0


HOUSE = Reducing()
