"""What the mill's book says of its drain: points, what runs to them, and other flows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from costing.quantities import InputError, listed, meant
from costing.settings.building import Assumption, Entry
from costing.settings.discharge_point import DischargePoint, OtherFlow, Production
from costing.settings.permit import PermitLimit, SupplierFigure
from costing.settings.treatment_train import SewerCharge, TrainStage, TreatmentPrices


@dataclass
class Drain:
    """Points by their code, what runs to them, what treats and takes it, the permit, what suppliers say.

    `stages` are in the order of the flow at each point; `charges` and `prices` are by the code of the point.
    `assumptions` holds every default taken, each once; `given` the entries of each point, for a remark that
    names a cell; `places` sheet and cell of each. `worked_out` keeps what the report has made of a point.
    """

    points: dict[str, DischargePoint] = field(default_factory=dict)
    production: list[Production] = field(default_factory=list)
    other_flows: list[OtherFlow] = field(default_factory=list)
    stages: list[TrainStage] = field(default_factory=list)
    charges: dict[str, SewerCharge] = field(default_factory=dict)
    prices: dict[str, TreatmentPrices] = field(default_factory=dict)
    limits: list[PermitLimit] = field(default_factory=list)
    supplier_figures: list[SupplierFigure] = field(default_factory=list)
    places: dict[str, str] = field(default_factory=dict)
    assumptions: dict[Assumption, None] = field(default_factory=dict)
    given: dict[str, Mapping[str, Entry]] = field(default_factory=dict)
    worked_out: dict[str, Any] = field(default_factory=dict, init=False, compare=False, repr=False)

    def point(self, code: str, where: str = "") -> DischargePoint:
        """A point by its code; the only one, or the first, where no code is given.

        Raises
        ------
        InputError
            No such point, or none at all.
        """
        if not self.points:
            raise InputError(
                where or "Discharge points",
                "the book has no collecting point; accepted is one column with a code (costing book writes a "
                "book with the sheets of the drain)",
            )
        if not code:
            return next(iter(self.points.values()))
        if code not in self.points:
            raise InputError(
                where, f"point {code!r} is not in the book; there are: {listed(self.points, code)}"
            )
        return self.points[code]

    def point_code(self, text: str, where: str) -> str:
        """The code of a point as the sheet Discharge points has it.

        Raises
        ------
        InputError
            No such point, or nothing given.
        """
        known = meant(text, self.points)
        if known is None:
            said = f"point is {text!r}" if text else "point is empty"
            raise InputError(where, f"{said}; accepted is one of: {listed(self.points, text)}")
        return known

    def stages_of(self, point: str, stands: str = "") -> list[TrainStage]:
        """The stages behind a point, in the order of the flow; all, or those that are built or planned."""
        return [stage for stage in self.stages if stage.point == point and stands in ("", stage.stands)]
