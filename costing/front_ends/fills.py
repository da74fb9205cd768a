"""Fills of what charts and pictures show: told apart in black and white, by brightness and by pattern."""

from __future__ import annotations

from typing import Literal, NamedTuple

Pattern = Literal["dkUpDiag", "wdDnDiag", "pct50", "dkHorz", "smGrid", "ltVert"]


class Filled(NamedTuple):
    """Fill of one series: a colour, and a pattern on white for those that must differ from a neighbour.

    Without a colour it is not seen.
    """

    colour: str
    pattern: Pattern | None = None


FILLS = {
    "warp yarn": Filled("22384F"),
    "weft yarn": Filled("A8C1D9"),
    "dye": Filled("34557A"),
    "reductant": Filled("8A5A33", "dkUpDiag"),
    "caustic": Filled("E0B070"),
    "auxiliaries": Filled("63765A", "pct50"),
    "size": Filled("C9B458", "ltVert"),
    "water": Filled("5F83A8", "dkHorz"),
    "steam": Filled("6E6E6E"),
    "power": Filled("22384F", "smGrid"),
    "effluent": Filled("A8A8A8"),
    "range time": Filled("DCE4EB"),
    "overhead": Filled("55626E", "wdDnDiag"),
    "seconds and off-shade": Filled("E0B070", "dkHorz"),
    "COD, organic": Filled("63765A"),
    "COD, inorganic sulfur": Filled("8A5A33", "dkUpDiag"),
    "flow": Filled("5F83A8"),
    "cost": Filled("22384F"),
    "open orders": Filled("22384F"),
    "proposed orders": Filled("A8C1D9", "dkUpDiag"),
    "sodium": Filled("A8C1D9"),
    "suspended solids": Filled("6E6E6E"),
    "BOD5": Filled("E0B070"),
    "up to the low end": Filled("22384F"),
    "from there to the estimate": Filled("34557A", "wdDnDiag"),
    "from the estimate to the high end": Filled("8E9AA5", "ltVert"),
    "low end": Filled("C9D6E2"),
    "high end": Filled("22384F", "dkUpDiag"),
    "more": Filled("8A5A33", "dkUpDiag"),
    "less": Filled("A8C1D9"),
    "below the bar": Filled(""),
}
