"""What every step needs to know of the range and the mill around it."""

from __future__ import annotations

import math
from typing import NamedTuple


class Lot(NamedTuple):
    """What a step needs to know of the lot that runs.

    Attributes
    ----------
    mass : float
        Grey yarn of the lot, leaders in; infinity for an endless run [kg].
    standing_bath : bool
        True where the lot takes over the bath of the lot before.
    kept_bath : bool
        True where it hands its own bath on.
    stoppages : float
        Stops of the range [whole number].
    stoppage_time : float
        Length of each [h].
    pumps_running : bool
        True where the pumps run on in a stop.
    """

    mass: float = math.inf
    standing_bath: bool = False
    kept_bath: bool = False
    stoppages: float = 0.0
    stoppage_time: float = 0.0
    pumps_running: bool = True


class Surroundings(NamedTuple):
    """The same for all steps of one run.

    Attributes
    ----------
    throughput : float
        Grey yarn through the range while it runs [kg/h].
    water_temperature : float
        Temperature of the mill's water [degC].
    steam_pressure : float
        Absolute [bar].
    direct_steam : bool
        True where live steam is blown into the boxes, False for closed coils.
    steam_losses : float
        Share of the steam that never reaches a user [fraction].
    lot : Lot
        The lot that runs.
    charge_mass : float
        One charge of a vessel; 0 where the range runs on [kg].
    """

    throughput: float
    water_temperature: float
    steam_pressure: float
    direct_steam: bool
    steam_losses: float
    lot: Lot = Lot()
    charge_mass: float = 0.0
