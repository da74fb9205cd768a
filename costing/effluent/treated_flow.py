"""An effluent on its way through a train: what it holds, what left it, what is behind each stage."""

from __future__ import annotations

from typing import NamedTuple

from costing.effluent.composition import Water
from costing.effluent.ion_loads import SULFUR_DEMAND, ion_loads
from costing.effluent.sludge import wet_cake
from costing.effluent.stages import Band, Stage
from costing.reference_data import default

ORGANIC = "COD, organic"
BOTH = "COD, both"


class Moved(NamedTuple):
    """A part of a parameter that left the water.

    Attributes
    ----------
    parameter : str
        As loads name it.
    amount : float
        [kg]
    to : str
        ``sludge``, ``oxidised``, ``concentrate`` or ``returned``.
    """

    parameter: str
    amount: float
    to: str


class Sludge(NamedTuple):
    """Dry solids by where they come from [kg]."""

    biological: float = 0.0
    chemical: float = 0.0
    captured: float = 0.0

    @property
    def dry(self) -> float:
        """All of it [kg]."""
        return self.biological + self.chemical + self.captured


class Flow(NamedTuple):
    """An effluent on its way.

    Attributes
    ----------
    loads : dict
        Parameters that are no ion, such as organic COD [kg].
    water : Water
        The water with its ions.
    other : dict
        Of parameters that ions give: what is not from the ions followed, such as sodium of products without a
        formula and dissolved organic matter. It goes along like salt, but for the latter in biology [kg].
    organic : float
        Dissolved organic matter among it, in the dissolved solids [kg].
    """

    loads: dict[str, float]
    water: Water
    other: dict[str, float]
    organic: float = 0.0

    def all_loads(self) -> dict[str, float]:
        """Every parameter [kg]."""
        ions = ion_loads(self.water)
        held = {name: amount + self.other.get(name, 0.0) for name, amount in ions.items()}
        whole = {**self.loads, **held}
        whole[BOTH] = self.loads.get(ORGANIC, 0.0) + held[SULFUR_DEMAND]
        return whole


class Behind(NamedTuple):
    """What is behind a stage.

    Attributes
    ----------
    stage : Stage
        The stage.
    flow : Flow
        The effluent.
    loads : dict
        Parameter -> load of the effluent [kg].
    acidity : float
        pH, shut off from air.
    moved : tuple of Moved
        What left the water, and where to.
    added : dict
        What was dosed, and the salt it left, each with its own name [kg].
    oxygen : float
        Oxygen that was used up [kg].
    concentrate : float
        Water that a filter or a membrane sends away [L].
    sludge : Sludge
        Dry solids made here.
    peak_left : float
        Peak of a dump behind the stage over that before it [fraction].
    warnings : tuple of str
        Gas that may arise.
    """

    stage: Stage
    flow: Flow
    loads: dict[str, float]
    acidity: float
    moved: tuple[Moved, ...]
    added: dict[str, float]
    oxygen: float
    concentrate: float
    sludge: Sludge
    peak_left: float
    warnings: tuple[str, ...]

    def concentration(self, parameter: str) -> float:
        """Of the effluent behind the stage [kg/L]."""
        return self.loads.get(parameter, 0.0) / self.flow.water.volume


class Train(NamedTuple):
    """A train that has run.

    Attributes
    ----------
    before : dict
        Parameter -> load that came in [kg].
    low, typical, high : tuple of Behind
        Every stage, with its low, typical and high removal: the low removal leaves the high load.
    remarks : tuple of str
        What is not counted, and why.
    """

    before: dict[str, float]
    low: tuple[Behind, ...]
    typical: tuple[Behind, ...]
    high: tuple[Behind, ...]
    remarks: tuple[str, ...]

    def load(self, parameter: str) -> Band:
        """Load behind the last stage, least first [kg]."""
        found = [run[-1].loads.get(parameter, 0.0) for run in (self.low, self.typical, self.high)]
        return Band(min(found), found[1], max(found))

    def passing(self, parameter: str) -> Band:
        """Load behind the last stage over what came in; 0 where nothing came in [fraction]."""
        came = self.before.get(parameter, 0.0)
        return Band(*(amount / came if came > 0.0 else 0.0 for amount in self.load(parameter)))

    def sludge(self, cake_dryness: float | None = None) -> tuple[Band, Band]:
        """Dry solids of the whole train, and the cake to be carted away [kg]."""
        dryness = default("train.cake_dryness").value if cake_dryness is None else cake_dryness
        dry = sorted(sum(item.sludge.dry for item in run) for run in (self.low, self.typical, self.high))
        return Band(*dry), Band(*(wet_cake(mass, dryness) for mass in dry))
