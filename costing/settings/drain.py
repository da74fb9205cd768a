"""What the mill's book says of its drain: points, what runs to them, and other flows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from costing.quantities import InputError, listed
from costing.settings.building import Assumption, Entry
from costing.settings.discharge_point import DischargePoint, OtherFlow, Production


@dataclass
class Drain:
    """Points by their code, and what runs to them.

    `assumptions` holds every default taken, each once; `given` the entries of each point, for a remark that
    names a cell; `places` sheet and cell of each.
    """

    points: dict[str, DischargePoint] = field(default_factory=dict)
    production: list[Production] = field(default_factory=list)
    other_flows: list[OtherFlow] = field(default_factory=list)
    places: dict[str, str] = field(default_factory=dict)
    assumptions: dict[Assumption, None] = field(default_factory=dict)
    given: dict[str, Mapping[str, Entry]] = field(default_factory=dict)

    def point(self, code: str, where: str = "") -> DischargePoint:
        """A point by its code; the only one, or the first, where no code is given.

        Raises
        ------
        InputError
            No such point, or none at all.
        """
        if not self.points:
            raise InputError(
                where or "Discharge points", "the book has no point; accepted is one column with a code"
            )
        if not code:
            return next(iter(self.points.values()))
        if code not in self.points:
            raise InputError(
                where, f"point {code!r} is not in the book; there are: {listed(self.points, code)}"
            )
        return self.points[code]
