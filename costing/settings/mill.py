"""The mill's book: ranges, recipes and enquiries, and all that is looked up by code beside them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any, ClassVar, TypeVar

from costing.quantities import InputError, label, listed, meant
from costing.quantities.checking import refuse_all
from costing.reference_data import Default, default
from costing.settings.building import (
    EMPTY,
    Assumption,
    Entry,
    at_its_cell,
    check_fields,
    given_values,
)
from costing.settings.calibration import CalibratedFactor, calibrated_of
from costing.settings.drain import Drain
from costing.settings.dye_class import groups_of, refused_for_class
from costing.settings.how_sure import GivenSpread
from costing.settings.lye_dose import resolve_doses
from costing.settings.material import YARN_ROLES, Material
from costing.settings.mill_costs import MillCosts
from costing.settings.offers import ExchangeRate, MaterialOffers
from costing.settings.product_fields import (
    DYE_FIELDS,
    PRODUCT_FIELDS,
    accepted_product,
    may_be_used,
)
from costing.settings.quality import ShadeDepth
from costing.settings.quote_texts import QuoteText
from costing.settings.steps import STEP_KINDS, Step
from costing.settings.style import Style


@dataclass(frozen=True)
class Range:
    """One range for ropes, a sheet, beams in a vessel or cloth: what holds for the whole machine.

    Of a sheet range, `rope_places` are the section beams of its creel and `ends_per_rope` their ends. A
    vessel has a charge in place of speed and ropes; cloth has no ropes.
    """

    GROUPS: ClassVar[tuple[str, ...]] = ("general", "sets", "lot")

    code: str
    description: str
    speed: float
    efficiency: float
    rope_places: float
    ends_per_rope: float
    set_length_max: float
    stretch: float
    steam_pressure: float
    pressure_basis: str
    atmospheric_pressure: float
    steam_heating: str
    steam_losses: float
    water_temperature: float
    leader_length: float
    off_shade_length: float
    cleaning_water: float
    changeover_time: float
    recovery: float
    range_hour_rate: float
    yarn_form: str = "ropes"
    sublot_length: float | None = None
    charge_mass: float | None = None
    charge_time: float | None = None

    def __post_init__(self) -> None:
        check_fields(self, f"range {self.code}")


@dataclass(frozen=True)
class Recipe:
    """One recipe: its route, and what it says of each step."""

    code: str
    description: str
    route: str


@dataclass(frozen=True)
class Enquiry:
    """What a customer asks for: a style, a length, and how the lot is run."""

    GROUPS: ClassVar[tuple[str, ...]] = ("lot",)

    code: str
    description: str
    style: str
    recipe: str
    range: str
    order_length: float
    length_basis: str
    sets_side_by_side: float
    bath_at_start: str
    bath_at_end: str
    stoppages: float
    stoppage_time: float
    pumps_in_stoppage: str
    margin: float | None = None
    order_unit: str = "m"
    off_shade_share: float | None = None
    seconds_share: float | None = None

    def __post_init__(self) -> None:
        check_fields(self, f"enquiry {self.code}")


T = TypeVar("T")

RouteRow = tuple[str, str]  # step name, kind


@dataclass
class Mill:
    """Everything that a quote may need, looked up by code.

    A look-up by a code that is not there raises `InputError` and says which codes there are, the nearest
    first; case, blanks and underscores of a code do not count.
    `recipe_steps` and `range_steps` map (code, step name) to the entries of that step; `places` maps
    (kind, code) to sheet and cell; `given` maps (kind, code) to the entries that its remarks may name;
    `assumptions` holds every default taken, each once. `without_rows` maps a step to the sheets
    that have no row of it, with the fields they would give. `refused` maps (kind, code) to why a style,
    recipe, range or enquiry is not among the others, where a reader was asked to keep those apart.
    `spreads` says how far numbers may be from what the book says, `quote_texts` what a customer is told.
    `depths` are the depths of shade, the lightest first.
    `calibrations` are the rows of all calibrations, `calibration` the name of the one that counts;
    `calibrated` maps a default that was taken to the row that counts in its place. A material with `offers`
    has price and strength of the one that counts on the day of the prices; `rates` are the exchange rates of
    all days.
    """

    materials: dict[str, Material] = field(default_factory=dict)
    offers: dict[str, MaterialOffers] = field(default_factory=dict)
    rates: tuple[ExchangeRate, ...] = ()
    styles: dict[str, Style] = field(default_factory=dict)
    recipes: dict[str, Recipe] = field(default_factory=dict)
    ranges: dict[str, Range] = field(default_factory=dict)
    routes: dict[str, list[RouteRow]] = field(default_factory=dict)
    enquiries: dict[str, Enquiry] = field(default_factory=dict)
    recipe_steps: dict[tuple[str, str], dict[str, Entry]] = field(default_factory=dict)
    range_steps: dict[tuple[str, str], dict[str, Entry]] = field(default_factory=dict)
    costs: MillCosts | None = None
    depths: dict[str, ShadeDepth] = field(default_factory=dict)
    assumptions: dict[Assumption, None] = field(default_factory=dict)
    places: dict[tuple[str, str], str] = field(default_factory=dict)
    given: dict[tuple[str, str], Mapping[str, Entry]] = field(default_factory=dict)
    without_rows: dict[str, dict[str, tuple[str, ...]]] = field(default_factory=dict)
    refused: dict[tuple[str, str], InputError] = field(default_factory=dict)
    spreads: list[GivenSpread] = field(default_factory=list)
    quote_texts: list[QuoteText] = field(default_factory=list)
    calibrations: list[CalibratedFactor] = field(default_factory=list)
    calibration: str = ""
    calibrated: dict[Assumption, CalibratedFactor] = field(default_factory=dict)
    _drain: Drain | InputError | None = field(default=None, compare=False, repr=False)
    _beside: dict[str, Any] = field(default_factory=dict, compare=False, repr=False)
    _built: dict[tuple[str, str], list[Step]] = field(default_factory=dict, compare=False, repr=False)

    def keep_drain(self, drain: Drain | InputError) -> None:
        """Keep what the book says of its drain, or why that is refused."""
        self._drain = drain

    @property
    def drain(self) -> Drain:
        """What the book says of its drain.

        Raises
        ------
        InputError
            A cell of its sheets is refused, or there are none.
        """
        if isinstance(self._drain, InputError):
            raise self._drain
        return self._drain or Drain()

    def keep(self, sheet: str, held: object) -> None:
        """Keep what a sheet holds on which no quote rests, or why it is refused."""
        self._beside[sheet] = held

    def kept(self, sheet: str) -> Any:
        """What a sheet holds on which no quote rests; None where the book has no such sheet.

        Raises
        ------
        InputError
            A cell of it is refused.
        """
        held = self._beside.get(sheet)
        if isinstance(held, InputError):
            raise held
        return held

    @staticmethod
    def _code(kind: str, table: Mapping[str, T], code: str, where: str) -> str:
        known = meant(code, table)
        if known is None:
            said = f"{kind} {code!r} is not in the book" if code else f"{kind} is empty"
            raise InputError(where, f"{said}; there are: {listed(table, code)}")
        return known

    def _found(self, kind: str, table: Mapping[str, T], code: str, where: str) -> T:
        found = table.get(code)
        if found is not None:
            return found
        apart = {name: error for (sort, name), error in self.refused.items() if sort == kind}
        if meant(code, table) is None and (name := meant(code, apart)) is not None:
            raise apart[name]
        return table[self._code(kind, table, code, where)]

    def material(self, code: str, where: str = "", fit: Sequence[str] = ()) -> Material:
        """Find a material by its code; where it is not there, tell those that fit, or all."""
        if fit and meant(code, self.materials) is None:
            self._code("material", dict.fromkeys(fit), code, where)
        return self._found("material", self.materials, code, where)

    def style(self, code: str, where: str = "") -> Style:
        """Find a style by its code."""
        return self._found("style", self.styles, code, where)

    def recipe(self, code: str, where: str = "") -> Recipe:
        """Find a recipe by its code."""
        return self._found("recipe", self.recipes, code, where)

    def range(self, code: str, where: str = "") -> Range:
        """Find a range by its code."""
        return self._found("range", self.ranges, code, where)

    def route(self, code: str, where: str = "") -> list[RouteRow]:
        """Find a route by its code."""
        return self._found("route", self.routes, code, where)

    def route_code(self, code: str, where: str = "") -> str:
        """The code of a route as the book has it."""
        return self._code("route", self.routes, code, where)

    def enquiry(self, code: str, where: str = "") -> Enquiry:
        """Find an enquiry by its code."""
        return self._found("enquiry", self.enquiries, code, where)

    def enquiry_code(self, code: str, where: str = "") -> str:
        """The code of an enquiry as the book has it, of one that is refused too."""
        refused = (name for kind, name in self.refused if kind == "enquiry")
        return self._code("enquiry", dict.fromkeys([*self.enquiries, *refused]), code, where)

    def cell_of(self, kind: str, code: str, name: str) -> str:
        """Sheet and cell of what was given; "" where that is not known."""
        return self.given.get((kind, code), {}).get(name, EMPTY).where

    def cell_of_step(self, recipe: str, range_: str, step: str, name: str) -> str:
        """Sheet and cell of what a recipe or a range gives for a step; "" where that is not known."""
        of_recipe = self.recipe_steps.get((recipe, step), {})
        of_range = self.range_steps.get((range_, step), {})
        return (of_recipe.get(name) or of_range.get(name, EMPTY)).where

    def steps_of(self, recipe: Recipe, range_: Range) -> list[Step]:
        """The steps of a recipe on a range, each with all it needs; checked once and then kept.

        Parameters
        ----------
        recipe, range_ : Recipe, Range
            Of this book.

        Raises
        ------
        InputError
            An unknown route or material, a product that holds another substance, a missing or
            refused setting.
        """
        known = self._built.get((recipe.code, range_.code))
        if known is not None:
            return known
        built: list[Step] = []
        missing: list[InputError] = []
        route = self.route(recipe.route, self.places.get(("recipe", recipe.code), ""))
        for name, kind_name in route:
            kind = STEP_KINDS[kind_name]
            entries = dict(self.recipe_steps.get((recipe.code, name), {}))
            if (range_.code, name) not in self.range_steps:
                raise InputError(
                    f"range {range_.code}", f"has no section for the step {name!r} of recipe {recipe.code}"
                )
            entries.update(self.range_steps[range_.code, name])
            owner = f"recipe {recipe.code} on range {range_.code}, {name}"
            lacking = self._check_products(entries, kind, owner)
            resolve_doses(entries, self.materials)
            groups = groups_of(kind, entries, self.materials)
            fixed = {"name": name, **dict.fromkeys(lacking, "")}
            values, others = given_values(kind, owner, groups, entries, self.assumptions, fixed)
            calibrated = calibrated_of(
                self.calibrations, self.calibration, self.assumptions, owner, groups, range_.code, name
            )
            self.calibrated.update(calibrated)
            values.update({row.quantity: row.value for row in calibrated.values()})
            missing += self._of_rows(name, kind_name, {**lacking, **others})
            if not missing:
                with at_its_cell(entries, owner):
                    built.append(kind(**values))
        refuse_all(missing)
        for step, row, text in refused_for_class(built, self.materials):
            owner = f"recipe {recipe.code} on range {range_.code}, {step}"
            raise InputError(self.cell_of_step(recipe.code, range_.code, step, row) or owner, text)
        self._built[recipe.code, range_.code] = built
        return built

    def default_of(self, taken: Assumption) -> Default:
        """A typical value that was taken, with value, ends and source of the calibration where one counts."""
        row, of_table = self.calibrated.get(taken), default(taken.key)
        return of_table if row is None else row.in_place_of(of_table)

    def without_calibration(self) -> Mill:
        """The same mill with typical values where a calibration counts."""
        if not self.calibration:
            return self
        taken = dict(self.assumptions)
        return replace(self, calibration="", calibrated={}, assumptions=taken, _built={})

    def _of_rows(self, step: str, kind: str, missing: Mapping[str, InputError]) -> list[InputError]:
        """The refusals of missing fields; where a sheet has no row of the step at all, one for that sheet."""
        found, left = [], dict(missing)
        for title, names in self.without_rows.get(step, {}).items():
            if left.keys().isdisjoint(names):
                continue
            left = {name: error for name, error in left.items() if name not in names}
            alike = dict.fromkeys(
                name for route in self.routes.values() for name, sort in route if sort == kind
            )
            like = [name for name in alike if title not in self.without_rows.get(name, {})]
            rows = f"copy those of {listed(like)}" if like else "make one for each quantity"
            found.append(
                InputError(
                    self.places.get(("step", step), title),
                    f"the step {step!r} has no rows on the sheet {title}; accepted are the rows of a step of "
                    f"the kind {kind!r}: {rows}, with {step!r} in the column Step",
                )
            )
        return [*found, *left.values()]

    def _check_products(
        self, entries: dict[str, Entry], kind: type[Step], owner: str
    ) -> dict[str, InputError]:
        """Refuse a product of another substance; put its code as the price list has it; give what lacks."""
        missing: dict[str, InputError] = {}
        for name in (*kind.RECIPE, *kind.RANGE):
            if name not in PRODUCT_FIELDS:
                continue
            entry = entries.get(name, EMPTY)
            fit = [code for code, item in self.materials.items() if _may_be_used(name, item)]
            if not entry.value and hasattr(kind, name):  # the field has a default: it may stay empty
                continue
            if not entry.value:
                missing[name] = InputError(
                    entry.where or owner, f"{label(name)} is empty; accepted is one of: {listed(fit)}"
                )
                continue
            product = self.material(str(entry.value), entry.where or owner, fit)
            entries[name] = entry._replace(value=product.code)
            if _may_be_used(name, product):
                continue
            if product.role in YARN_ROLES:
                what = f"is a {product.role}"
            else:
                held = f"holds {label(product.substance) or 'a product of its own'}"
                what = f"{held} and has the role {product.role!r}" if name in DYE_FIELDS else held
            raise InputError(
                entry.where or owner,
                f"{label(name)} is {product.code!r}, which {what}; accepted is {accepted_product(name)}",
            )
        return missing


def _may_be_used(name: str, product: Material) -> bool:
    """True where a product may stand in a row of a recipe."""
    return product.role not in YARN_ROLES and may_be_used(name, product.substance, product.role)
