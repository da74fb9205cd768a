"""Four demo routes worked out anew from the input files: dye, reductant, size and water.

A sulfur bottom on a rope range, a sheet with size, beams in a vessel, cloth on a pad-steam range. The
arithmetic of scour, rinse and indigo box is that of `worked_anew`; none of it is that of the rooms it checks.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from tests.demo.worked_anew import (
    HYDROXIDE,
    NA,
    WATER,
    C,
    H,
    O,
    S,
    Worked,
    column,
    template,
    typical,
    water_heat,
)

SULFIDE, PEROXIDE, ACETIC = 2 * NA + S, 2 * H + 2 * O, 2 * C + 4 * H + 2 * O


def material(code: str) -> dict[str, Any]:
    rows = template("materials.toml")["demo"]["materials"]
    return next(row for row in rows if row["code"] == code)


def water_of(code: str, pure: float) -> float:
    """Water that comes with a product: what its drum holds beside the active part and alkali."""
    row = material(code)
    if row["remainder"] != "water":
        return 0.0
    share = row["strength"] / 100
    return float(pure / share * (1 - share - row.get("alkali", 0.0)))


class Route(Worked):
    """What the four have in common: products bought as 100 %, per kilogram of saleable goods."""

    def __init__(self, code: str) -> None:
        rows = template("enquiries.toml")["demo"]["enquiries"]
        self.order = next(row for row in rows if row["code"] == code)
        self.style = column("styles.toml", self.order["style"])
        self.recipe = column("recipes.toml", self.order["recipe"])
        self.range = column("ranges.toml", self.order["range"])
        self.water = self.steam = self.drain = self.fixed = 0.0
        self.streams: dict[str, dict[str, float]] = {}
        self.found = typical()["general.recovery"] / 100
        self.bought: dict[str, float] = {}
        self._cloth()
        self._order()
        self._steam()
        self.work()

    def work(self) -> None:
        raise NotImplementedError

    def products(self) -> dict[str, float]:
        """All that is bought, as delivered; `worked_anew` counts a part of it as 100 %."""
        found = dict(self.bought)
        for code, strength, name in (
            ("INDIGO-94", 0.94, "indigo"),
            ("HYDRO-88", 0.88, "hydrosulfite"),
            ("LYE-50", 0.50, "caustic"),
            ("WET-N-60", 1.0, "wetting"),
            ("SEQ-40", 1.0, "sequestrant"),
            ("WET-A-40", 1.0, "bath_wetting"),
        ):
            if hasattr(self, name):
                found[code] = found.get(code, 0.0) + getattr(self, name) / strength
        return found

    def feed(self, code: str, pure: float, share: float | None = None) -> float:
        """Buy a product; gives the water that it brings. For a kilogram of run, or a share of the lot."""
        times = self.extra if share is None else share
        strength = material(code)["strength"] / 100
        self.bought[code] = self.bought.get(code, 0.0) + times * pure / strength
        return water_of(code, pure)


class Bottom(Route):
    """A sulfur bottom under indigo: separate feeds and live steam in the rinses."""

    def work(self) -> None:
        scoured = self._scour()
        carried = self._rinse("rinse after scour", scoured, self.scour_pick_up, 90.0)
        carried = self._bottom(carried)
        hot = self.recipe["sulfur dyeing"]["bath_temperature"]
        self._dye(self._rinse("rinse after sulfur", carried, self.liquor, hot))
        self._last_rinse_and_cans()
        self._lot()
        self._fill_of_bottom()

    def _bottom(self, carried: dict[str, float]) -> dict[str, float]:
        step, machine = self.recipe["sulfur dyeing"], self.range["sulfur dyeing"]
        came, out = self.liquor, machine["pick_up"]
        stays = (1 - machine["exchange"] / 100) * min(came, out)
        bath = out - stays
        assert came - out + bath / step["feed_ratio"] < 0  # dry enough: nothing overflows
        applied = step["dye_on_yarn"] / step["dye_fixation"]
        dye = applied / bath / (1 + step["extra_uptake"] / 100)
        wetting = 0.4 * step["bath_wetting_agent"] / 1000
        self.strengths = {
            "SULFUR-BLACK-LIQ": dye,
            "SULFIDE-60": step["bath_reductant"] / 1000,
            "LYE-50": step["bath_caustic"] / 1000,
            "WET-A-40": wetting,
        }
        passed = {name: amount * stays / came for name, amount in carried.items()}
        mixed = {name: amount - passed[name] for name, amount in carried.items()}
        brought = min(mixed["caustic"], bath * self.strengths["LYE-50"])
        fed = {name: bath * strength for name, strength in self.strengths.items()}
        fed["SULFUR-BLACK-LIQ"], fed["LYE-50"] = applied, fed["LYE-50"] - brought
        with_products = sum(self.feed(name, amount) for name, amount in fed.items())
        used = (1 - machine["reductant_left"] / 100) * fed["SULFIDE-60"]
        mol = used / SULFIDE  # 2 Na2S + 2 O2 + H2O -> Na2S2O3 + 2 NaOH
        self.water += self.extra * (out - came - with_products + mol / 2 * WATER)
        alkali = applied / 0.30 * 0.03  # of all the dye that is fed, drawn by the fibre or not
        pool = {**mixed, "bottom wetting": fed["WET-A-40"]}
        pool["caustic"] = mixed["caustic"] + fed["LYE-50"] + alkali + mol * HYDROXIDE
        fresh = {"caustic": self.strengths["LYE-50"] + dye / 0.30 * 0.03, "bottom wetting": wetting}
        kept = machine["bath_kept"] / 100
        left, _ = self._filling_up(pool, fresh, bath, machine["tank_volume"], kept)
        self.liquor = out
        return {name: amount + passed.get(name, 0.0) for name, amount in left.items()}

    def _dye(self, carried: dict[str, float]) -> None:
        """The wetting agent of the bottom counts towards that of the dye bath, and less is dosed."""
        super()._dye(carried)
        saved = (carried["bottom wetting"] - self.passed["bottom wetting"]) / 0.4
        assert saved < self.bath_wetting
        self.bath_wetting -= saved
        self.water += self.extra * 0.6 * saved

    def _fill_of_bottom(self) -> None:
        machine = self.range["sulfur dyeing"]
        new = machine["tank_volume"] * (1 - machine["bath_kept"] / 100)
        with_products = sum(
            self.feed(name, new * strength, 1 / self.sold) for name, strength in self.strengths.items()
        )
        self.water += (new - with_products) / self.sold


class Sheet(Route):
    """A sheet, sized on the dry warp: closed coils, counter-current rinses."""

    def work(self) -> None:
        scoured = self._scour()
        carried = self._rinse("rinse after scour", scoured, self.scour_pick_up, 85.0)
        self._dye(carried)
        self._last_rinse_and_cans()
        self._lot()
        self._size()

    def _live_steam(self, step: str, kind: str, hot: float, came: float, liquor: float, feed: float) -> float:
        return 0.0

    def _rinse(self, step: str, carried: dict[str, float], liquor: float, came: float) -> dict[str, float]:
        """Counter-current, and the water is what the recipe says."""
        fresh, pick_up = self.recipe[step]["rinse_water"], self.range[step]["pick_up"]
        boxes, exchange = int(self.range[step]["boxes"]), self.range[step]["exchange"] / 100
        left = residue(fresh, pick_up, boxes, exchange)
        self.water += self.extra * fresh
        self.stream(step, {k: v * (1 - left) for k, v in carried.items()}, liquor + fresh - pick_up)
        self.liquor = pick_up
        after = {name: amount * left for name, amount in carried.items()}
        self.solid = self.fibre + self.fixed + sum(after.values())
        return after

    def _size(self) -> None:
        step, machine = self.recipe["size box"], self.range["size box"]
        dry_size = step["size_add_on"] / 100 * self.solid
        cooked = 1 / (1 - step["size_loss"] / 100)
        density = typical()["size.size_density"]
        water = (machine["pick_up"] * density - dry_size) * cooked
        hot = step["box_temperature"]
        heat = water * (water_heat(hot) - water_heat(self.cold))
        loss = typical()["size.surface_heat_loss"] * 3600 * machine["heated_surface"]
        # The warp comes hotter from the cans than the box; live steam cooks and stays in the size.
        live = (heat + loss / self.hourly) / (self.vapour - water_heat(self.cold))
        box = dry_size / machine["pick_up"] * machine["size_box_volume"]
        shares = [
            (step[f"{place}_product"], step[f"{place}_share"] / 100) for place in ("first", "second", "third")
        ]
        for code, share in shares:
            water -= self.feed(code, dry_size * cooked * share)
        self.water += self.extra * (water - live)
        fill = machine["size_box_volume"] * density - box
        for code, share in shares:
            fill -= self.feed(code, box * share, 1 / self.sold)
        self.water += fill / self.sold


def residue(fresh: float, pick_up: float, boxes: int, exchange: float) -> float:
    """Share left behind counter-current boxes, from the balance of each box."""
    size = 2 * boxes  # liquor on the yarn behind each box, then what stands in it
    matrix, known = np.zeros((size, size)), np.zeros(size)
    for box in range(boxes):
        matrix[box, box], matrix[box, boxes + box] = 1.0, -exchange
        row = boxes + box
        # what comes with yarn and water leaves with them
        matrix[row, box], matrix[row, row] = pick_up, fresh
        if box == 0:
            known[box], known[row] = 1.0 - exchange, pick_up
        else:
            matrix[box, box - 1], matrix[row, box - 1] = exchange - 1.0, -pick_up
        if box < boxes - 1:
            matrix[row, row + 1] = -fresh
    return float(np.linalg.solve(matrix, known)[boxes - 1])


class Vessel(Route):
    """Beams in a vessel: one bath after the other, filled around the yarn and drained."""

    BATHS = (
        "vessel scour",
        "vessel rinse",
        "vessel dyeing",
        "first vessel rinse",
        "soaping",
        "last vessel rinse",
    )

    def _order(self) -> None:
        self.loom_state = self.order["order_length"] / self.shrunk
        warp = self.loom_state * (1 + self.crimp) / (1 - self.style["warp_waste"] / 100)
        self.sold = self.dyed = warp * self.ends * self.tex * 1e-6 / (1 + self.stretch)
        self.extra, self.hourly = 1.0, 1.0

    def _cloth(self) -> None:
        self.range["general"].setdefault("stretch", typical()["sets.stretch"])
        super()._cloth()

    def work(self) -> None:
        liquor, alkali = 0.0, 0.0  # caustic as mol in the yarn's liquor
        for name in self.BATHS:
            step, ratio = self.recipe[name], self.recipe[name]["liquor_ratio"]
            kept = self.range[name]["liquor_retained"]
            water, acid = ratio - liquor, 0.0
            for place in ("first", "second", "third"):
                code = step.get(f"{place}_product")
                if not code:
                    continue
                given = step.get(f"{place}_on_yarn")
                amount = given / 100 if given is not None else step[f"{place}_dose"] / 1000 * ratio
                pure = amount * material(code)["strength"] / 100
                water -= self.feed(code, pure)
                if code == "LYE-50":
                    alkali += pure / HYDROXIDE
                if code == "ACETIC-80":
                    acid = pure / ACETIC
            if "batch_dye_product" in step:
                water -= self.feed(step["batch_dye_product"], step["dye_offered"] / 100 * 0.70)
            of_fibre = step.get("caustic_neutralised", 0.0) / 1000 / HYDROXIDE
            alkali -= of_fibre
            assert acid <= alkali  # all acid is neutralised, and nothing else in the vessel takes any
            water -= (acid + of_fibre) * WATER
            self.water += water
            alkali = (alkali - acid) * kept / ratio
            liquor = kept
        self.water += self.range["general"]["cleaning_water"] / self.sold


class Cloth(Route):
    """Cloth on a pad-steam range: dry into the pad, steamed, rinsed, oxidised, rinsed."""

    def _order(self) -> None:
        general, hank = self.range["general"], self.tex
        weft = self.style["picks_density"] * 100 * self.style["width"] / 100
        metre = self.ends * hank * (1 + self.crimp) + weft * (1 + self.style["weft_crimp"] / 100) * hank
        self.loom_state = self.order["order_length"] / self.shrunk
        sets = math.ceil(self.loom_state / general["set_length_max"])
        lost = general["leader_length"] + general["off_shade_length"]
        self.sold = self.loom_state * metre * 1e-6
        self.dyed = (self.loom_state + sets * lost) * metre * 1e-6
        self.extra = self.dyed / self.sold
        self.hourly = metre * 1e-6 * general["speed"] * 60

    def work(self) -> None:
        sulfide, sulfite = self._pad()
        liquor = self.range["dye pad"]["pick_up"]
        assert liquor < self._rinse_water("rinse after sulfur") + liquor
        rinse = self.range["rinse after sulfur"]
        left = residue(
            self.recipe["rinse after sulfur"]["rinse_water"],
            rinse["pick_up"],
            int(rinse["boxes"]),
            rinse["exchange"] / 100,
        )
        self._oxidise(sulfide * left, sulfite * left, rinse["pick_up"])
        self._rinse_water("rinse after oxidation")
        self.water += self.range["general"]["cleaning_water"] / self.sold

    def _rinse_water(self, step: str) -> float:
        fresh = float(self.recipe[step]["rinse_water"])
        self.water += self.extra * fresh
        return fresh

    def _pad(self) -> tuple[float, float]:
        step, machine = self.recipe["dye pad"], self.range["dye pad"]
        pick_up = machine["pick_up"]
        strengths = {
            "SULFUR-BLACK-LIQ": step["dye_on_yarn"] / step["dye_fixation"] / pick_up,
            "SULFIDE-60": step["bath_reductant"] / 1000,
            "LYE-50": step["bath_caustic"] / 1000,
            "WET-A-40": 0.4 * step["bath_wetting_agent"] / 1000,
        }
        trough = machine["tank_volume"]
        with_run = sum(self.feed(name, pick_up * strength) for name, strength in strengths.items())
        with_fill = sum(self.feed(name, trough * part, 1 / self.sold) for name, part in strengths.items())
        fed = pick_up * strengths["SULFIDE-60"]
        used = (1 - typical()["dye box.reductant_left"] / 100) * fed
        self.water += self.extra * (pick_up - with_run + used / SULFIDE / 2 * WATER)
        self.water += (trough - with_fill) / self.sold
        left, _ = self._filling_up(
            {"sulfide": fed - used}, {"sulfide": strengths["SULFIDE-60"]}, pick_up, trough, 0.0
        )
        return left["sulfide"], 0.0

    def _oxidise(self, sulfide: float, sulfite: float, liquor: float) -> None:
        step, machine = self.recipe["oxidation"], self.range["oxidation"]
        assert sulfite == 0.0
        stays = (1 - machine["exchange"] / 100) * min(liquor, machine["pick_up"])
        bath = machine["pick_up"] - stays
        assert liquor - machine["pick_up"] + bath / step["feed_ratio"] < 0
        strength = step["first_dose"] / 1000 * 0.50
        meets = sulfide * (1 - stays / liquor)
        assert 4 * meets / SULFIDE * PEROXIDE < bath * strength  # peroxide enough for all of it
        feed = machine["pick_up"] - liquor - self.feed("PEROXIDE-50", bath * strength)
        self.water += self.extra * (feed - 4 * meets / SULFIDE * WATER)
        tank = machine["tank_volume"]
        self.water += (tank - self.feed("PEROXIDE-50", tank * strength, 1 / self.sold)) / self.sold
