"""One stage of a treatment train: what it is, its settings, and which share it takes out of what."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from costing.quantities import InputError, check, listed
from costing.reference_data import Removal, default, treatment_removals
from costing.reference_data.treatment_removals import WHAT

SULFURIC_ACID = "neutralisation with sulfuric acid"
CARBON_DIOXIDE = "neutralisation with carbon dioxide"
NEUTRALISATION = "neutralisation"
DOSED = {"coagulation with alum": "alum", "coagulation with ferric chloride": "ferric chloride"}

# Setting -> key of its default; "" where only the mill can know it. An unknown dump is no dump.
SETTINGS: Mapping[str, Mapping[str, str]] = {
    "equalisation": {
        "residence_time": "train.residence_time",
        "pit_transfer": "point.pit_transfer",
        "dump_time": "point.dump_time",
    },
    NEUTRALISATION: {"target_acidity": ""},
    "coagulation": {"coagulant_dose": ""},
    "electrocoagulation": {},
    "biology": {"sludge_yield": "train.sludge_yield", "volatile_share": "train.volatile_share"},
    "filter": {"water_recovery": "train.water_recovery.filter"},
    "membrane": {"water_recovery": "train.water_recovery.membrane"},
}
NO_SETTINGS: Mapping[str, float] = MappingProxyType({})


class Band(NamedTuple):
    """A figure with what it may be at least and at most."""

    low: float
    typical: float
    high: float


CASES = Band._fields
NOTHING = Band(0.0, 0.0, 0.0)
NO_FIGURES: Mapping[str, Band] = MappingProxyType({})


class Stage(NamedTuple):
    """A stage as the mill has it, or means to have it.

    Attributes
    ----------
    step : str
        A step of ``treatment.csv``, or one of the two neutralisations.
    own_removal : mapping of str to Band, optional
        What (as in ``treatment.csv``) -> the mill's own removal, in place of that of the table [fraction].
    settings : mapping of str to float, optional
        Quantity -> value in its house unit; those of the kind, see `SETTINGS`.
    returned : bool, optional
        What a filter or a membrane holds back goes to the range again, indigo to the vat.
    """

    step: str
    own_removal: Mapping[str, Band] = NO_FIGURES
    settings: Mapping[str, float] = NO_SETTINGS
    returned: bool = False

    @property
    def kind(self) -> str:
        """What happens in it: a key of `SETTINGS`."""
        if self.step in (SULFURIC_ACID, CARBON_DIOXIDE):
            return NEUTRALISATION
        return treatment_removals()[self.step][0].kind

    @property
    def figures(self) -> tuple[Removal, ...]:
        """What is published of the step."""
        return treatment_removals().get(self.step, ())

    def setting(self, name: str) -> float:
        """A setting, or its default [house unit]."""
        key = SETTINGS[self.kind][name]
        return self.settings[name] if name in self.settings else default(key).value

    def removal(self, what: str) -> Band:
        """Removal that is counted: the mill's own, else the published one less what a mill falls short of.

        A figure from memory is not counted, nor one that is not there. BOD5 falls as the organic COD does
        where nothing else is known: biology takes more of it.

        Examples
        --------
        >>> [round(share, 2) for share in Stage("membrane bioreactor").removal("unfixed dye")]
        [0.65, 0.7, 0.75]
        """
        if what in self.own_removal:
            return self.own_removal[what]
        for figure in self.figures:
            if figure.what == what and not figure.remembered:
                return Band(*figure.in_a_mill)
        return self.removal("COD, organic") if what == "BOD5" else NOTHING

    def remarks(self) -> list[str]:
        """What is not counted, and why."""
        said = []
        for figure in self.figures:
            if figure.remembered and figure.what not in self.own_removal:
                ends = dict.fromkeys(f"{100 * share:g}" for share in (figure.low, figure.high))
                band = f"{' to '.join(ends)} %"
                said.append(
                    f"{self.step}: removal of {figure.what}, {band}, is from memory, so none is counted; "
                    "type your own"
                )
        known = {figure.what for figure in self.figures} | set(self.own_removal)
        if self.figures and self.kind != "equalisation":
            missing = [
                what for what in ("COD, organic", "suspended solids", "unfixed dye") if what not in known
            ]
            if missing:
                said.append(f"{self.step}: no figure for {' and '.join(missing)}, so none is counted")
        return said


def treatment_steps() -> tuple[str, ...]:
    """Every step a stage may be: those of ``treatment.csv`` and the two neutralisations.

    Examples
    --------
    >>> treatment_steps()[-2:]
    ('neutralisation with sulfuric acid', 'neutralisation with carbon dioxide')
    """
    return (*treatment_removals(), SULFURIC_ACID, CARBON_DIOXIDE)


def checked(stage: Stage) -> Stage:
    """A stage whose settings and figures make sense.

    Raises
    ------
    InputError
        An unknown step, parameter or setting; a setting that is missing or out of range; a removal that is
        not low <= typical <= high within 0 to 100 %.

    Examples
    --------
    >>> checked(Stage("neutralisation with sulfuric acid"))
    Traceback (most recent call last):
    ...
    costing.quantities.checking.InputError: neutralisation with sulfuric acid: target acidity is empty; \
accepted is 6 to 12
    """
    steps = treatment_steps()
    if stage.step not in steps:
        raise InputError(
            "treatment", f"{stage.step!r} is no step; accepted is one of: {listed(steps, stage.step)}"
        )
    accepted = SETTINGS[stage.kind]
    for name in stage.settings:
        if name not in accepted:
            raise InputError(
                stage.step, f"{name} is no setting of it; accepted are: {', '.join(accepted) or 'none'}"
            )
    for name, key in accepted.items():
        if name in stage.settings or not key:
            check(name, stage.settings.get(name), stage.step)
    for what, band in stage.own_removal.items():
        if what not in WHAT:
            raise InputError(stage.step, f"{what!r} has no removal; accepted is one of: {', '.join(WHAT)}")
        if what == "dissolved salts" and stage.kind != "membrane":
            raise InputError(stage.step, "dissolved salts pass it; only a membrane holds them back")
        for share in band:
            check("removal", share, f"{stage.step}, {what}")
        if not band.low <= band.typical <= band.high:
            raise InputError(stage.step, f"removal of {what} must rise from low over typical to high")
    if stage.returned and stage.kind not in ("filter", "membrane"):
        raise InputError(stage.step, "returns nothing; only a filter or a membrane does")
    return stage
