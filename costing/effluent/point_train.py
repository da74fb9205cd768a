"""The train of a collecting point, run on the water that leaves it; what of a strength passes it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from costing.effluent.ion_loads import SOLIDS
from costing.effluent.pit import EQUALISED, Standing
from costing.effluent.stages import Band, Stage
from costing.effluent.treated_flow import ORGANIC, Train
from costing.effluent.treatment import treated
from costing.quantities import InputError
from costing.settings.treatment_train import BUILT, TrainStage

EQUALISATION = "equalisation"


class PointTrain(NamedTuple):
    """What the stages of a point make of its water.

    Attributes
    ----------
    stages : list of TrainStage
        Those that were run, in the order of the flow.
    train : Train or None
        None without a stage, or where it is refused.
    refused : str
        Why it is refused.
    remarks : list of str
        What is not counted, and why.
    """

    stages: list[TrainStage]
    train: Train | None
    refused: str
    remarks: list[str]


class Passed(NamedTuple):
    """Shares of a water that pass a train: of its volume, organic COD, sulfur COD and solids [fraction]."""

    volume: float
    demand: float
    sulfur_demand: float
    solids: float


def stage_of(row: TrainStage) -> Stage:
    """A row of the sheet as a stage that runs."""
    own = {what: Band(share, share, share) for what, share in row.own_removal.items()}
    return Stage(row.step, own, row.settings)


def run_train(standing: Standing, rows: Sequence[TrainStage]) -> PointTrain:
    """Run the stages of a point on the water as it leaves it.

    A water behind an aerated pit is equalised: an equalisation among the stages is not run again.

    Parameters
    ----------
    standing : Standing
        The water of a day.
    rows : sequence of TrainStage
        In the order of the flow.
    """
    run = list(rows)
    remarks = []
    if standing.place == EQUALISED:
        run = [row for row in rows if stage_of(row).kind != EQUALISATION]
        remarks = [
            f"{row.where or row.step}: the pit of {row.point} is the equalisation, so this is not run again"
            for row in rows
            if row not in run
        ]
    if not run or standing.stream.volume <= 0.0:
        return PointTrain(run, None, "", remarks)
    # Rounding leaves less than nothing of what is used up.
    loads = {name: max(0.0, load) for name, load in standing.stream.loads.items()}
    water = standing.stream.water._replace(temperature=standing.stream.temperature)
    try:
        train = treated(loads, water, [stage_of(row) for row in run])
    except InputError as error:
        place = next((row.where for row in run if row.step == error.where), "")
        return PointTrain(run, None, f"{place or error.where}: {error.message}", remarks)
    return PointTrain(run, train, "", [*remarks, *train.remarks])


def passed(rows: Sequence[TrainStage]) -> Passed:
    """What of a strength passes stages, with their typical removal: without any chemistry, so at once.

    Biology oxidises sulfur salts in full; what an equalisation oxidises of them is not counted.

    Parameters
    ----------
    rows : sequence of TrainStage
        In the order of the flow.

    Examples
    --------
    >>> [round(share, 3) for share in passed([TrainStage("PIT", 1, "activated sludge, textile")])]
    [1.0, 0.27, 0.0, 0.44]
    """
    volume = demand = sulfur = solids = 1.0
    for row in rows:
        stage = stage_of(row)
        through = stage.setting("water_recovery") if stage.kind in ("filter", "membrane") else 1.0
        volume *= through
        demand *= through * (1.0 - stage.removal(ORGANIC).typical)
        solids *= through * (1.0 - stage.removal(SOLIDS).typical)
        salts = stage.removal("dissolved salts").typical if stage.kind == "membrane" else 0.0
        sulfur *= 0.0 if stage.kind == "biology" else through * (1.0 - salts)
    return Passed(volume, demand, sulfur, solids)


def built(rows: Sequence[TrainStage]) -> list[TrainStage]:
    """The stages that are built."""
    return [row for row in rows if row.stands == BUILT]
