"""One demo quote worked out anew from the input files, without the rooms it checks.

Written as a balance sheet would be: rinses box by box, the dye bath as four linear equations, steam from a
reference library, atomic weights typed in. Holds for a range that rinses with separate feeds and live steam,
powder dye, a bath that overflows, and a standing bath that is kept.
"""

from __future__ import annotations

import csv
import math
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
import tomllib
from iapws import IAPWS97

ROOT = Path(__file__).parents[2]
H, C, N, O, NA, S = 1.008, 12.011, 14.007, 15.999, 22.990, 32.06  # noqa: E741  (symbols of the elements)
INDIGO = 16 * C + 10 * H + 2 * N + 2 * O
HYDROSULFITE = 2 * NA + 2 * S + 4 * O
HYDROXIDE = NA + O + H
SULFITE, SULFATE, THIOSULFATE = 2 * NA + S + 3 * O, 2 * NA + S + 4 * O, 2 * NA + 2 * S + 3 * O
LEUCO, ACID, SALT_OF_ACID = INDIGO + 2 * H, 6 * C + 10 * H + 7 * O, 6 * C + 9 * H + 7 * O + NA
WATER, OXYGEN, CARBON_DIOXIDE = 2 * H + O, 2 * O, C + 2 * O


def template(name: str) -> Any:
    return tomllib.loads((ROOT / "workbook_template" / name).read_text(encoding="utf-8"))


@lru_cache
def typical() -> dict[str, float]:
    with (ROOT / "reference_tables" / "defaults.csv").open(encoding="utf-8", newline="") as file:
        return {row["key"]: float(row["value"]) for row in csv.DictReader(file)}


def column(file: str, code: str) -> Any:
    return next(item["values"] for item in template(file)["demo"] if item["code"] == code)


@lru_cache
def water_heat(temperature: float) -> float:
    return float(IAPWS97(P=0.101325, T=temperature + 273.15).h)


class Worked:
    """All figures of one enquiry, per kilogram of saleable grey warp [kg, L, kWh, h] unless said."""

    def __init__(self, code: str) -> None:
        rows = template("enquiries.toml")["demo"]["enquiries"]
        self.order = next(row for row in rows if row["code"] == code)
        self.style = column("styles.toml", self.order["style"])
        self.recipe = column("recipes.toml", self.order["recipe"])
        self.range = column("ranges.toml", self.order["range"])
        self.water = self.steam = self.drain = 0.0
        self.streams: dict[str, dict[str, float]] = {}
        self.found = typical()["general.recovery"] / 100
        self._cloth()
        self._order()
        self._steam()
        carried = self._rinse("rinse after scour", self._scour(), self.scour_pick_up, 90.0)
        self._dye(carried)
        self._last_rinse_and_cans()
        self._lot()

    def setting(self, step: str, kind: str, name: str) -> float:
        for source in (self.recipe, self.range):
            if name in source.get(step, {}):
                return float(source[step][name])
        return typical()[f"{kind}.{name}"]

    def _cloth(self) -> None:
        style, hank = self.style, 453.59237 / (840 * 0.9144) * 1000
        self.tex, weft = hank / style["warp_count"], hank / style["weft_count"]
        width, self.crimp = style["width"] / 100, style["warp_crimp"] / 100
        self.ends = math.ceil(style["ends_density"] * 100 * width + style["selvedge_ends"] - 1e-9)
        self.stretch = self.range["general"]["stretch"] / 100
        weft_length = 1 + style["weft_crimp"] / 100
        warp_mass = self.ends / width * self.tex / (1 + self.stretch) * 1e-3 * (1 + self.crimp)
        weft_mass = style["picks_density"] * 100 * weft * 1e-3 * weft_length
        loom_state = warp_mass * (1 + style["size_add_on"] / 100) + weft_mass
        change = style["desize_loss"] + style["finishing_loss"] - style["finishing_add_on"]
        self.shrunk = 1 - style["shrinkage_length"] / 100
        narrowed = 1 - style["shrinkage_width"] / 100
        self.ounces = loom_state * (1 - change / 100) / (self.shrunk * narrowed) / 33.90575
        wasted = 1 - style["weft_waste"] / 100
        self.weft_per_metre = style["picks_density"] * 100 * width * weft_length * weft * 1e-6 / wasted

    def _order(self) -> None:
        general, together = self.range["general"], self.order["sets_side_by_side"]
        self.loom_state = self.order["order_length"] / self.shrunk
        warp = self.loom_state * (1 + self.crimp) / (1 - self.style["warp_waste"] / 100)
        sets = together * math.ceil(warp / together / general["set_length_max"])
        lost = general["leader_length"] + general["off_shade_length"]
        run = warp / together + sets / together * lost
        per_metre = self.ends * self.tex * 1e-6 / (1 + self.stretch)
        self.sold, self.dyed = warp * per_metre, (warp + sets * lost) * per_metre
        self.extra = self.dyed / self.sold
        self.hourly = together * per_metre * general["speed"] * 60
        hours = run / (general["speed"] * 60) / (general["efficiency"] / 100)
        stops = self.order["stoppages"] * self.order["stoppage_time"]
        self.hours = (hours + general["changeover_time"] + stops) / self.sold

    def _steam(self) -> None:
        general = self.range["general"]
        pressure = (general["steam_pressure"] + 1.01325) / 10
        self.vapour = float(IAPWS97(P=pressure, x=1).h)
        self.condensing = self.vapour - float(IAPWS97(P=pressure, x=0).h)
        self.cold, self.net = general["water_temperature"], 1 - general["steam_losses"] / 100
        self.dry = 1 / 1.085
        self.regain = 1 - self.dry

    def _live_steam(self, step: str, kind: str, hot: float, came: float, liquor: float, feed: float) -> float:
        surface = (
            self.setting(step, kind, "heated_surface") * self.setting(step, kind, "surface_heat_loss") * 3600
        )
        moisture = (self.regain + liquor) / self.fibre
        heat = feed * (water_heat(hot) - water_heat(self.cold))
        heat += self.fibre * (1.3 + moisture * 4.19) * max(0.0, hot - came) + surface / self.hourly
        used = heat / (self.vapour - water_heat(self.cold))
        self.steam += self.extra * used / self.net
        return float(used)

    def _scour(self) -> dict[str, float]:
        recipe = self.recipe["scour"]
        self.fibre = self.dry
        pick_up = self.scour_pick_up = self.setting("scour", "scour", "pick_up")
        over = self.setting("scour", "scour", "scour_overflow")
        volume = pick_up + over
        neutralised = self.setting("scour", "scour", "caustic_neutralised") / 1000
        self.caustic = volume * recipe["scour_caustic"] / 1000 + neutralised
        wetting = volume * recipe["scour_wetting_agent"] / 1000
        self.sequestrant = volume * recipe["scour_sequestrant"] / 1000
        self.wetting = wetting
        live = self._live_steam("scour", "scour", recipe["scour_temperature"], self.cold, 0.0, volume)
        products = self.caustic + 0.4 * wetting + 0.6 * self.sequestrant  # lye of 50 % brings as much water
        self.water += self.extra * (volume - live - products - neutralised * WATER / HYDROXIDE)
        loss = self.setting("scour", "scour", "weight_loss") / 100
        self.fibre = self.dry - loss
        organic = loss * (1 - self.setting("scour", "scour", "ash_share") / 100)
        acid = neutralised / HYDROXIDE
        self.extract = organic - acid * ACID
        asked = organic * self.setting("scour", "scour", "oxygen_demand")
        self.demand_of_extract = (asked - acid * 10 * O * self.found) / self.extract
        pool = {
            "caustic": volume * recipe["scour_caustic"] / 1000,
            "salt of acids": acid * SALT_OF_ACID,
            "extract": self.extract,
            "ash": loss - organic,
            "wetting": 0.6 * wetting,
            "sequestrant": 0.4 * self.sequestrant,
        }
        tank = self.range["scour"]["tank_volume"]
        fresh = {
            "caustic": recipe["scour_caustic"] / 1000,
            "wetting": 0.6 * recipe["scour_wetting_agent"] / 1000,
            "sequestrant": 0.4 * recipe["scour_sequestrant"] / 1000,
        }
        left, self.scour_end = self._filling_up(pool, fresh, volume, tank, 0.0)
        self.stream("scour overflow", {name: amount * over / volume for name, amount in left.items()}, over)
        carried = {name: amount * pick_up / volume for name, amount in left.items()}
        self.fixed = carried["wetting"] * self.setting("scour", "scour", "wetting_agent_kept") / 100
        carried["wetting"] -= self.fixed
        return carried

    def stream(self, name: str, amounts: dict[str, float], water: float, share: float = 0.0) -> None:
        """Add to a stream what a kilogram of yarn sends there, or a share of what the lot sends."""
        times = share or self.extra
        found = self.streams.setdefault(name, {"water": 0.0})
        for what, amount in {**amounts, "water": water}.items():
            found[what] = found.get(what, 0.0) + times * amount
        self.drain += times * water

    def _filling_up(
        self,
        fed: dict[str, float],
        fresh: dict[str, float],
        out: float,
        volume: float,
        taken_over: float,
        start: dict[str, float] | None = None,
        stops: dict[str, float] | None = None,
        waiting: dict[str, float] | None = None,
    ) -> tuple[dict[str, float], dict[str, float]]:
        """What leaves a stirred box on average over the lot, and what stands in it at the end [kg/L]."""
        start, stops, waiting = start or {}, stops or {}, waiting or {}
        left, end = {}, {}
        fading = math.exp(-self.dyed * out / volume)
        for name in {**fed, **fresh, **start, **stops}:
            all_fed = fed.get(name, 0.0) + stops.get(name, 0.0) / self.dyed
            steady, fill = all_fed / out, fresh.get(name, 0.0)
            last = fill
            for _ in range(500 if taken_over else 1):  # lot follows lot until nothing changes
                first = taken_over * (last + waiting.get(name, 0.0)) + (1 - taken_over) * fill
                first += start.get(name, 0.0) / volume
                last = steady + (first - steady) * fading
            end[name] = last
            left[name] = all_fed - volume * (last - first) / self.dyed
        return left, end

    def _rinse(self, step: str, carried: dict[str, float], liquor: float, came: float) -> dict[str, float]:
        fresh, pick_up = self.recipe[step]["rinse_water"], self.setting(step, "rinse", "pick_up")
        boxes, exchange = (
            int(self.setting(step, "rinse", "boxes")),
            self.setting(step, "rinse", "exchange") / 100,
        )
        left, ratio = 1.0, fresh / boxes / pick_up
        for _ in range(boxes):
            box = exchange * left / (ratio + exchange)
            left += exchange * (box - left)
        live = self._live_steam(step, "rinse", self.recipe[step]["rinse_temperature"], came, liquor, fresh)
        self.water += self.extra * (fresh - live)
        gone = {name: amount * (1 - left) for name, amount in carried.items()}
        self.stream(step, gone, liquor + fresh - pick_up)
        self.liquor = pick_up
        return {name: amount * left for name, amount in carried.items()}

    def _dye(self, carried: dict[str, float]) -> None:
        recipe = self.recipe["indigo dyeing"]

        def get(name: str) -> float:
            return self.setting("indigo dyeing", "indigo", name)

        shade, lost = recipe["indigo_on_yarn"] / 100, recipe["rinse_loss"] / 100
        dye, hydro, alkali = (recipe[f"bath_{what}"] / 1000 for what in ("indigo", "hydrosulfite", "caustic"))
        exchange, gone, last = get("exchange") / 100, get("sky_destruction") / 100, get("pick_up_last")
        oxygen = get("surface_oxygen") / 1000 * get("bath_surface") / self.hourly
        oxygen += get("circulation_oxygen") / 1e3 * get("circulation_flow") / self.hourly
        oxygen += get("entrained_air") * get("oxygen_in_air") / 1000 * (1 - get("wetted_out") / 100)
        self.per_oxygen = get("hydrosulfite_per_oxygen") * HYDROSULFITE / OXYGEN
        destroyed, entering = self.per_oxygen * oxygen, 0.0
        for dip in range(1, int(recipe["dips"]) + 1):
            leaving = entering + exchange * (hydro - entering)
            self.last_sky = last * leaving  # of the last dip, once the loop is through
            destroyed += self.last_sky if dip == recipe["dips"] else gone * get("pick_up") * leaving
            entering = (1 - gone) * leaving
        self.volume, self.decay = get("bath_volume"), get("decay_rate") / 100
        decayed = self.decay * self.volume * hydro / self.hourly
        self.reducing, self.alkaline = HYDROSULFITE / INDIGO, 2 * HYDROXIDE / HYDROSULFITE
        old, wet = self.liquor, self.liquor  # entering liquor that is still there, box by box
        for dip in range(1, int(recipe["dips"]) + 1):
            leaving = last if dip == recipe["dips"] else get("pick_up")
            old, wet = old * (1 - exchange) * min(1.0, leaving / wet), leaving
        kept, bath = old / self.liquor, last - old
        mixed = carried["caustic"] * (1 - kept)
        carbonated = get("carbon_dioxide") / 1000 * 2 * HYDROXIDE / CARBON_DIOXIDE
        of_stock, of_hydro, of_alkali = (
            1000 / recipe[name] for name in ("stock_indigo", "hydrosulfite_dosing", "caustic_dosing")
        )
        in_stock = recipe["stock_hydrosulfite_ratio"], recipe["stock_caustic_ratio"]
        again = self.reducing * (1 + get("redissolved") / 100)
        # Unknown: indigo, hydrosulfite and caustic fed, and the overflow.
        matrix = np.array(
            [
                [1, 0, 0, -dye],
                [-again, 1, 0, -hydro],
                [0, -self.alkaline, 1, self.alkaline * hydro - alkali],
                [in_stock[0] * of_hydro + in_stock[1] * of_alkali - of_stock, -of_hydro, -of_alkali, 1],
            ]
        )
        # The last sky takes its caustic from the yarn, which has it from the bath already.
        held = bath * alkali + carbonated * (1 - 1 / recipe["dips"]) - mixed
        held -= self.alkaline * (self.last_sky + decayed / 2)
        assert self.alkaline * self.last_sky + carbonated / recipe["dips"] < bath * alkali
        known = [shade / (1 - lost), destroyed + decayed, held, self.liquor - last - get("sky_evaporation")]
        self.indigo, self.hydrosulfite, caustic, over = np.linalg.solve(matrix, known)
        assert over > 0
        assert caustic > in_stock[1] * self.indigo
        self.caustic += caustic
        self.bath_wetting = (bath + over) * recipe["bath_wetting_agent"] / 1000
        feed = over + last + get("sky_evaporation") - self.liquor
        airing = shade / (1 - lost) / INDIGO + get("carbon_dioxide") / 1000 / CARBON_DIOXIDE
        made = WATER * ((destroyed + 0.5 * decayed) / HYDROSULFITE + airing)
        self.water += self.extra * (feed - caustic - 0.6 * self.bath_wetting - made)
        came = self.recipe["rinse after scour"]["rinse_temperature"]
        moisture = (self.regain + self.liquor) / self.fibre
        heat = feed * (water_heat(recipe["bath_temperature"]) - water_heat(self.cold))
        heat += self.fibre * (1.3 + moisture * 4.19) * max(0.0, recipe["bath_temperature"] - came)
        self.steam += self.extra * heat / self.condensing / self.net
        self.passed = {name: amount * kept for name, amount in carried.items()}
        self._solids(carried, destroyed, decayed, over, bath, caustic, carbonated)
        self.liquor, self.fixed = last, self.fixed + shade

    def _solids(
        self,
        carried: dict[str, float],
        destroyed: float,
        decayed: float,
        over: float,
        bath: float,
        caustic: float,
        carbonated: float,
    ) -> None:
        """What is dissolved behind the last box, salt by salt, and what overflows."""
        recipe = self.recipe["indigo dyeing"]

        def get(name: str) -> float:
            return self.setting("indigo dyeing", "indigo", name)

        dye, hydro, alkali = (recipe[f"bath_{what}"] / 1000 for what in ("indigo", "hydrosulfite", "caustic"))
        self.to_sulfate = 2 / get("hydrosulfite_per_oxygen") - 1
        self.aired = get("sulfite_oxidised") / 100
        reduced = self.hydrosulfite - destroyed - decayed - over * hydro
        last, in_bath = self.last_sky, destroyed - self.last_sky
        mol = (2 * reduced + (2 - self.to_sulfate) * in_bath + decayed) / HYDROSULFITE
        gas = carbonated / recipe["dips"]
        free = caustic - self.alkaline * (reduced + in_bath + decayed / 2) - carbonated + gas
        soda = (2 * NA + C + 3 * O) / HYDROXIDE / 2
        held = {
            **{name: amount - self.passed[name] for name, amount in carried.items()},
            "sulfite": mol * (1 - self.aired) * SULFITE,
            "sulfate": (mol * self.aired + in_bath / HYDROSULFITE * self.to_sulfate) * SULFATE,
            "thiosulfate": decayed / HYDROSULFITE / 2 * THIOSULFATE,
            "carbonate": (carbonated - gas) * soda,
            "inert": self.indigo * 6 / 94 + self.hydrosulfite * 12 / 88,
            "bath wetting": 0.4 * self.bath_wetting,
        }
        held["caustic"] += free
        fresh = {
            "caustic": alkali,
            "sulfite": dye / INDIGO * 2 * (1 - self.aired) * SULFITE,
            "sulfate": dye / INDIGO * 2 * self.aired * SULFATE,
            "inert": dye * 6 / 94 + (dye * self.reducing + hydro) * 12 / 88,
            "bath wetting": 0.4 * recipe["bath_wetting_agent"] / 1000,
        }
        taken_over = get("bath_kept") / 100
        start, stops, waiting = self._losses_of_lot(dye, hydro)
        left, self.bath_end = self._filling_up(
            held, fresh, bath + over, self.volume, taken_over, start, stops, waiting
        )
        gone = {name: amount * over / (bath + over) for name, amount in left.items()}
        gone.update({"leuco": over * dye / INDIGO * LEUCO, "hydrosulfite": over * hydro})
        self.stream("indigo dyeing overflow", gone, over)
        self.dissolved = {
            name: amount * bath / (bath + over) + self.passed.get(name, 0.0) for name, amount in left.items()
        }
        for name, amount in self._made_by_air(last).items():
            self.dissolved[name] += amount
        self.dissolved["caustic"] -= self.alkaline * last + gas
        self.dissolved["carbonate"] += gas * soda

    def _made_by_air(self, destroyed: float, decayed: float = 0.0) -> dict[str, float]:
        """Salts of hydrosulfite that air destroys, or that decomposes."""
        mol = ((2 - self.to_sulfate) * destroyed + decayed) / HYDROSULFITE
        return {
            "sulfite": mol * (1 - self.aired) * SULFITE,
            "sulfate": (mol * self.aired + destroyed / HYDROSULFITE * self.to_sulfate) * SULFATE,
            "thiosulfate": decayed / HYDROSULFITE / 2 * THIOSULFATE,
        }

    def _losses_of_lot(self, dye: float, hydro: float) -> tuple[dict[str, float], ...]:
        """What the start and the stops make in the bath [kg], and what a waiting bath makes [kg/L]."""

        def get(name: str) -> float:
            return self.setting("indigo dyeing", "indigo", name)

        standing = self.volume * get("bath_kept") / 100
        loss = get("ageing_loss") / 100 * hydro
        self.aged = standing * loss
        self.fill_oxygen = self.per_oxygen * get("fill_water_oxygen") / 1e6 * (self.volume - standing)
        by_air = self.per_oxygen * get("surface_oxygen") / 1000 * get("bath_surface")
        if self.order["pumps_in_stoppage"] == "running":
            by_air += self.per_oxygen * get("circulation_oxygen") / 1e3 * get("circulation_flow")
        rate = by_air + self.decay * self.volume * hydro
        time = self.order["stoppage_time"]
        self.stopped = self.order["stoppages"] * min(time * rate, self.volume * hydro)
        self.stop_decayed = self.stopped * (1 - by_air / rate)
        start = self._made_by_air(self.fill_oxygen)
        start["inert"] = (self.fill_oxygen + self.aged) * 12 / 88
        stops = self._made_by_air(self.stopped - self.stop_decayed, self.stop_decayed)
        stops["inert"] = self.stopped * 12 / 88
        return start, stops, self._made_by_air(loss)

    def _last_rinse_and_cans(self) -> None:
        bath = self.recipe["indigo dyeing"]["bath_temperature"]
        left = self._rinse("rinse after dyeing", self.dissolved, self.liquor, bath)
        shade, lost = (self.recipe["indigo dyeing"][what] / 100 for what in ("indigo_on_yarn", "rinse_loss"))
        self.stream("rinse after dyeing", {"indigo": shade / (1 - lost) - shade}, 0.0)
        solid = self.fibre + self.fixed + sum(left.values())
        came, out = (
            self.recipe["rinse after dyeing"]["rinse_temperature"],
            self.recipe["drying"]["moisture_out"] / 100,
        )
        evaporated = (self.regain + self.liquor) / solid - out
        vapour = float(IAPWS97(T=373.15, x=1).h)
        heat = evaporated * (vapour - water_heat(came)) + (1.3 + out * 4.19) * (100.0 - came)
        efficiency = self.setting("drying", "drying", "dryer_efficiency") / 100
        self.steam += self.extra * solid * heat / (efficiency * self.condensing) / self.net
        steps = ("scour", "rinse after scour", "indigo dyeing", "rinse after dyeing", "drying")
        self.power = self.extra * sum(self.range[step]["power"] for step in steps) / self.hourly

    def _lot(self) -> None:
        recipe, scour = self.recipe["indigo dyeing"], self.recipe["scour"]

        def get(name: str) -> float:
            return self.setting("indigo dyeing", "indigo", name)

        dye, hydro, alkali = (recipe[f"bath_{what}"] / 1000 for what in ("indigo", "hydrosulfite", "caustic"))
        standing = self.volume * get("bath_kept") / 100
        new, aged = self.volume - standing, self.aged
        tank, again = self.range["scour"]["tank_volume"], self.fill_oxygen + self.stopped
        decayed = self.stop_decayed
        reduced = self.reducing * dye
        lye = tank * scour["scour_caustic"] / 1000
        fill_lye = new * (self.alkaline * reduced + alkali)
        wetting = new * recipe["bath_wetting_agent"] / 1000
        scour_wetting, scour_seq = (
            tank * scour[f"scour_{what}"] / 1000 for what in ("wetting_agent", "sequestrant")
        )
        cleaning = self.range["general"]["cleaning_water"]
        lot = {
            "indigo": new * dye,
            "hydrosulfite": new * (reduced + hydro) + aged + again,
            "caustic": fill_lye + lye + self.alkaline * (again + aged - decayed / 2),
            "wetting": scour_wetting,
            "sequestrant": scour_seq,
            "bath_wetting": wetting,
        }
        for name, amount in lot.items():
            setattr(self, name, self.extra * getattr(self, name) + amount / self.sold)
        fills = tank - lye - 0.4 * scour_wetting - 0.6 * scour_seq + new - fill_lye - 0.6 * wetting
        self.water += (fills + cleaning) / self.sold
        warm = tank * (water_heat(scour["scour_temperature"]) - water_heat(self.cold))
        warm += new * (water_heat(recipe["bath_temperature"]) - water_heat(self.cold))
        self.steam += warm / self.condensing / self.net / self.sold
        # Water made, half as much where no oxygen has a part in it, and that of the lye.
        made = (again + aged - decayed / 2) * (WATER / HYDROSULFITE + self.alkaline)
        share = 1 / self.sold
        self.stream("rinse after dyeing", {}, made, share)
        self.stream("scour dump", {k: v * tank for k, v in self.scour_end.items()}, tank, share)
        bath = {"leuco": dye / INDIGO * LEUCO, "hydrosulfite": hydro, **self.bath_end}
        self.stream("indigo dyeing dump", {k: v * new for k, v in bath.items()}, new, share)
        self.stream("cleaning", {}, cleaning, share)

    def costs(self) -> dict[str, float]:
        """Cost by group, per kilogram of saleable grey warp."""
        listed = [row for row in template("materials.toml")["demo"]["materials"] if "price" in row]
        rows = [*listed, *template("offers.toml")["demo"]["offers"]]  # the first offer is the one that counts
        prices = template("mill_costs.toml")["demo"]
        rates = {row["code"]: row["rate"] for row in prices["currencies"]}
        general = {row["quantity"]: row["value"] for row in prices["costs"]}

        def price(code: str) -> float:
            row = next(item for item in rows if item["code"] == code)
            per = {"kg": 1.0, "t": 1000.0, "lb": 0.45359237, "L": row.get("density", 1.0)}[row["per"]]
            return float((row["price"] + row.get("freight", 0.0)) * rates[row.get("currency", "EUR")] / per)

        found = {
            "warp yarn": self.extra * price(self.style["warp_yarn"]),
            "weft yarn": self.weft_per_metre * self.loom_state / self.sold * price(self.style["weft_yarn"]),
            "dye": self.indigo / 0.94 * price("INDIGO-94"),
            "reductant": self.hydrosulfite / 0.88 * price("HYDRO-88"),
            "caustic": self.caustic / 0.5 * price("LYE-50"),
            "auxiliaries": self.wetting * price("WET-N-60")
            + self.sequestrant * price("SEQ-40")
            + self.bath_wetting * price("WET-A-40"),
            "water": self.water * general["water_price"] / 1000,
            "steam": self.steam * general["steam_price"] / 1000,
            "power": self.power * general["power_price"],
            "effluent": self.drain * general["effluent_charge"] / 1000,
            "range time": self.hours * self.range["general"]["range_hour_rate"],
        }
        conversion = sum(cost for group, cost in found.items() if "yarn" not in group)
        found["overhead"] = conversion * general["overhead"] / 100
        self.margin = general["margin"] / 100
        return found
