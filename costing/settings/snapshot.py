"""Everything that one enquiry rests on as plain data, and back to a mill that gives the same quote.

A snapshot holds the settings as they were resolved: typical values that were taken stand in it as numbers, so
that a later table of typical values does not move a kept quote, and of several offers or exchange rates only
what counted on the day of the prices. Left out is what only the sheets tell: which
cell a number came from, save for products.
"""

from __future__ import annotations

import datetime
import json
from collections.abc import Iterable, Mapping
from dataclasses import MISSING, Field, fields
from typing import Any, TypeVar

from costing.quantities import InputError, label, listed
from costing.reference_data import defaults
from costing.settings.building import Assumption, default_key
from costing.settings.calibration import CalibratedFactor
from costing.settings.discharge_point import DischargePoint, Production
from costing.settings.drain import Drain
from costing.settings.dye_class import groups_of_step
from costing.settings.how_sure import GivenSpread
from costing.settings.inputs import materials_of
from costing.settings.material import Material
from costing.settings.mill import Enquiry, Mill, Range, Recipe
from costing.settings.mill_costs import MillCosts
from costing.settings.quality import ShadeDepth
from costing.settings.steps import STEP_KINDS, Step
from costing.settings.style import Style
from costing.settings.treatment_train import SewerCharge, TrainStage, TreatmentPrices

T = TypeVar("T")

FORMAT = 1  # of the document; a new one where an old reader would misread it
SNAPSHOT = "snapshot of a quote"
WHERE = "snapshot"
DATE = "date"  # key of a date, which JSON does not have
REFUSED = "refused"

Document = dict[str, Any]

SINGLE: dict[str, type] = {
    "enquiry": Enquiry,
    "style": Style,
    "recipe": Recipe,
    "range": Range,
    "costs": MillCosts,
}
OF_DRAIN: dict[str, type] = {
    "points": DischargePoint,
    "production": Production,
    "stages": TrainStage,
    "charges": SewerCharge,
    "prices": TreatmentPrices,
}
# Parts that came later: a snapshot of before rests on none of them.
LATER: dict[str, list[Any]] = {"depths": [], "spreads": [], "calibrated": []}
PARTS = (WHERE, "format", *SINGLE, "steps", "materials", "drain", "defaults", *LATER)


def concerns(owner: str, enquiry: Enquiry) -> bool:
    """Whether what is named in an assumption, such as a recipe or a style, is of an enquiry."""
    whole = (f"range {enquiry.range}", f"style {enquiry.style}", f"enquiry {enquiry.code}")
    step = f"recipe {enquiry.recipe} on range {enquiry.range}, "
    others = ("recipe ", "range ", "style ", "enquiry ")
    return owner in whole or owner.startswith(step) or not owner.startswith(others)


def snapshot_of(mill: Mill, enquiry: Enquiry) -> Document:
    """What an enquiry rests on, of texts, numbers, lists and mappings alone.

    Parameters
    ----------
    mill, enquiry : Mill, Enquiry
        The mill's book, with costs, and an enquiry of it.

    Returns
    -------
    dict
        To be kept as JSON; `restored` makes a mill of it again.

    Raises
    ------
    InputError
        An unknown code, a setting that is refused, or no costs.
    """
    style, recipe, range_ = mill.style(enquiry.style), mill.recipe(enquiry.recipe), mill.range(enquiry.range)
    if mill.costs is None:
        raise InputError("mill costs", "the book holds no mill costs")
    codes = materials_of(mill, enquiry)
    costs = _plain(mill.costs)
    currencies = {mill.costs.currency, *(mill.materials[code].currency for code in codes)}
    costs["exchange_rates"] = {
        code: rate for code, rate in mill.costs.exchange_rates.items() if code in currencies
    }
    single = {"enquiry": enquiry, "style": style, "recipe": recipe, "range": range_}
    return {
        WHERE: SNAPSHOT,
        "format": FORMAT,
        **{part: _plain(item) for part, item in single.items()},
        "costs": costs,
        "steps": [{"kind": step.KIND, **_plain(step)} for step in mill.steps_of(recipe, range_)],
        "materials": [_plain(mill.materials[code]) for code in codes],
        "depths": [_plain(depth) for depth in mill.depths.values()],
        "drain": _drain_of(mill, enquiry),
        "spreads": [_plain(given) for given in mill.spreads],
        "defaults": [list(taken) for taken in mill.assumptions if concerns(taken.owner, enquiry)],
        "calibrated": [
            {"taken": list(taken), **_plain(row)}
            for taken, row in mill.calibrated.items()
            if concerns(taken.owner, enquiry)
        ],
    }


def _drain_of(mill: Mill, enquiry: Enquiry) -> Document:
    """What the price of the effluent of an enquiry rests on; empty where that of the mill's costs counts."""
    try:
        drain = mill.drain
    except InputError as error:
        return {REFUSED: [[one.where, one.message] for one in (error, *error.more)]}
    rows = [row for row in drain.production if row.enquiry == enquiry.code]
    points = list(dict.fromkeys(row.point for row in rows))
    if not any(point in drain.charges for point in points):
        return {}
    return {
        "points": [_plain(drain.points[point]) for point in points],
        "production": [_plain(row) for row in rows],
        "stages": [_plain(stage) for stage in drain.stages if stage.point in points],
        "charges": [_plain(charge) for point, charge in drain.charges.items() if point in points],
        "prices": [_plain(prices) for point, prices in drain.prices.items() if point in points],
    }


def _plain(item: Any) -> Document:
    """The fields of a setting as plain data."""
    return {field.name: _plain_value(field.name, getattr(item, field.name)) for field in fields(item)}


def _plain_value(name: str, value: Any) -> Any:
    if isinstance(value, datetime.date):
        return {DATE: value.isoformat()}
    if isinstance(value, Mapping):
        return {str(key): _plain_value(name, part) for key, part in value.items()}
    if value is None or isinstance(value, (str, int, float)):
        return value
    raise InputError(WHERE, f"{label(name)} is {value!r}, which has no plain form; accepted is one number")


def restored(document: Mapping[str, Any]) -> tuple[Mill, Enquiry]:
    """A mill that holds what a snapshot does, and its enquiry; checked like any other.

    A number that the snapshot is too old to have is the typical value of today's table, and counts among the
    assumptions of the mill.

    Parameters
    ----------
    document : mapping
        Of `snapshot_of`.

    Raises
    ------
    InputError
        No snapshot, one of a newer format, a part, kind or field that is unknown or missing, a value that
        is refused.
    """
    _check_frame(document)
    document = completed(document)
    assumptions = {Assumption(*_pair(taken)): None for taken in document["defaults"]}
    single: dict[str, Any] = {
        part: _made(kind, document[part], getattr(kind, "GROUPS", ()), f"{WHERE}, {part}", assumptions)
        for part, kind in SINGLE.items()
    }
    enquiry, style, recipe, range_ = (single[part] for part in ("enquiry", "style", "recipe", "range"))
    goods = [_made(Material, given, (), f"{WHERE}, material", {}) for given in document["materials"]]
    materials = {item.code: item for item in goods}
    depths = [_made(ShadeDepth, given, (), f"{WHERE}, depth", {}) for given in document["depths"]]
    steps = [
        _step(given, materials, f"recipe {recipe.code} on range {range_.code}", assumptions)
        for given in document["steps"]
    ]
    mill = Mill(
        materials=materials,
        styles={style.code: style},
        recipes={recipe.code: recipe},
        ranges={range_.code: range_},
        routes={recipe.route: [(step.name, step.KIND) for step in steps]},
        enquiries={enquiry.code: enquiry},
        costs=single["costs"],
        depths={depth.code: depth for depth in depths},
        assumptions=assumptions,
        calibrated=dict(_calibrated(row) for row in document["calibrated"]),
        spreads=[_made(GivenSpread, row, (), f"{WHERE}, spreads", {}) for row in document["spreads"]],
    )
    mill._built[recipe.code, range_.code] = steps
    mill.keep_drain(_drain(document["drain"]))
    return mill, enquiry


def _calibrated(given: Any) -> tuple[Assumption, CalibratedFactor]:
    """A default that was taken, and what a calibration put in its place."""
    where = f"{WHERE}, calibrated"
    if not isinstance(given, Mapping) or "taken" not in given:
        raise InputError(where, f"is {given!r}; accepted is what a default was taken for")
    fields_ = {name: value for name, value in given.items() if name != "taken"}
    return Assumption(*_pair(given["taken"])), _made(CalibratedFactor, fields_, (), where, {})


def completed(document: Mapping[str, Any]) -> Document:
    """A snapshot with the parts that came later, empty where it is older than they are."""
    return {**LATER, **document}


def _check_frame(document: Any) -> None:
    """Refuse what is no snapshot, or one of a form that this version does not know."""
    if not isinstance(document, Mapping) or document.get(WHERE) != SNAPSHOT:
        raise InputError(WHERE, f"is none; accepted is a {SNAPSHOT}")
    form = document.get("format")
    if type(form) is not int or not 1 <= form <= FORMAT:
        raise InputError(
            WHERE,
            f"has the format {form!r}; accepted is 1 to {FORMAT}: a newer one needs a newer version of this "
            "program",
        )
    _check_names(document, PARTS, [part for part in PARTS if part not in LATER], WHERE)


def _check_names(given: Any, known: Iterable[str], wanted: Iterable[str], where: str) -> None:
    """Refuse names that are not known, and those that are missing."""
    if not isinstance(given, Mapping):
        raise InputError(where, f"is {given!r}; accepted are names with their values")
    known = list(known)
    unknown = [name for name in given if name not in known]
    if unknown:
        raise InputError(
            where, f"{unknown[0]!r} is not known to this version; there are: {listed(known, unknown[0])}"
        )
    missing = [name for name in wanted if name not in given]
    if missing:
        raise InputError(where, f"{label(missing[0])} is missing; accepted is a snapshot that has it")


def _made(
    kind: type[T],
    given: Any,
    groups: tuple[str, ...],
    where: str,
    assumptions: dict[Assumption, None],
    owner: str = "",
) -> T:
    """A setting of its fields; what an older snapshot lacks is a default of the field, or typical."""
    known: dict[str, Field[Any]] = {field.name: field for field in fields(kind)}  # type: ignore[arg-type]
    typical = {}
    for name, field in known.items():
        if isinstance(given, Mapping) and name not in given and field.default is MISSING:
            key = default_key(groups, name)
            if key:
                typical[name] = defaults()[key].value
                assumptions[Assumption(owner or where, key)] = None
    optional = [
        name
        for name, field in known.items()
        if field.default is not MISSING or field.default_factory is not MISSING
    ]
    _check_names(given, known, [name for name in known if name not in (*typical, *optional)], where)
    values = {name: _value(value, f"{where}, {label(name)}") for name, value in given.items()}
    return kind(**typical, **values)


def _value(value: Any, where: str) -> Any:
    """A value of a field; numbers and words of a list are checked by the setting itself."""
    if isinstance(value, Mapping):
        if list(value) != [DATE]:
            return {str(key): _number(part, f"{where}, {key}") for key, part in value.items()}
        try:
            return datetime.date.fromisoformat(value[DATE])
        except (TypeError, ValueError):
            raise InputError(where, f"is {value[DATE]!r}; accepted is a date such as 2026-01-31") from None
    if value is None or isinstance(value, str):
        return value
    return _number(value, where)


def _number(value: Any, where: str) -> float:
    if type(value) not in (int, float):
        raise InputError(where, f"is {value!r}; accepted is a number or a text")
    number: float = value
    return number


def _step(
    given: Any, materials: Mapping[str, Material], owner: str, assumptions: dict[Assumption, None]
) -> Step:
    """A step of its kind and its fields."""
    where = f"{WHERE}, steps"
    if not isinstance(given, Mapping) or given.get("kind") not in STEP_KINDS:
        kind = given.get("kind") if isinstance(given, Mapping) else given
        raise InputError(
            where, f"the kind of step {kind!r} is not known to this version; there are: {listed(STEP_KINDS)}"
        )
    kind = STEP_KINDS[given["kind"]]
    values = {name: value for name, value in given.items() if name != "kind"}
    name = str(given.get("name", ""))
    groups = groups_of_step(_Bare(given["kind"], values), materials)
    return _made(kind, values, groups, f"{where}, {name}", assumptions, f"{owner}, {name}")


class _Bare:
    """Fields of a step that is not made yet, to look up which typical values are of it."""

    def __init__(self, kind: str, values: Mapping[str, Any]) -> None:
        self.__dict__.update(values)
        self.KIND = kind


def _drain(given: Any) -> Drain | InputError:
    """The drain of a snapshot, or why it was refused."""
    where = f"{WHERE}, drain"
    if isinstance(given, Mapping) and REFUSED in given:
        first, *others = [InputError(*_pair(told)) for told in given[REFUSED]]
        return InputError(first.where, first.message, others)
    if given == {}:
        return Drain()
    _check_names(given, OF_DRAIN, OF_DRAIN, where)
    rows: dict[str, list[Any]] = {
        part: [_made(kind, row, (), f"{where}, {part}", {}) for row in given[part]]
        for part, kind in OF_DRAIN.items()
    }
    return Drain(
        points={item.code: item for item in rows["points"]},
        production=rows["production"],
        stages=rows["stages"],
        charges={item.point: item for item in rows["charges"]},
        prices={item.point: item for item in rows["prices"]},
    )


def _pair(told: Any) -> tuple[str, str]:
    if not isinstance(told, (list, tuple)) or len(told) != 2 or not all(isinstance(one, str) for one in told):
        raise InputError(WHERE, f"{told!r} is no pair of texts; accepted is a snapshot as it was written")
    return told[0], told[1]


def to_text(document: Mapping[str, Any]) -> str:
    """A snapshot as JSON, the same text for the same numbers; each number with all its digits."""
    return json.dumps(document, ensure_ascii=False, sort_keys=False, allow_nan=False, separators=(",", ":"))


def from_text(text: str, where: str = WHERE) -> Document:
    """A snapshot of its JSON.

    Raises
    ------
    InputError
        The text is no JSON, or holds what is not a number.
    """

    def refuse(word: str) -> None:
        raise InputError(where, f"holds {word}, which is no number; accepted is a finite number")

    try:
        document = json.loads(text, parse_constant=refuse)
    except json.JSONDecodeError as error:
        raise InputError(where, f"is no JSON ({error}); accepted is a snapshot as it was written") from None
    if not isinstance(document, dict):
        raise InputError(where, f"is none; accepted is a {SNAPSHOT}")
    return document
