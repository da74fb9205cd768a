"""Valid settings drawn at random, in usual units, as wide as the quantities accept."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from tests.example_mill import ROUTE

STEPS_BEFORE = ROUTE[:2]
DYEING = ROUTE[2]
RINSE = ROUTE[3]
DRYING = ROUTE[4]
BOXES = [
    ("sulfur bottom", "dye box"),
    ("sulfur top", "dye box"),
    ("oxidation", "treatment"),
    ("softener", "treatment"),
    ("rinse with recovery", "recovering rinse"),
    ("vessel dyeing", "bath"),
    ("soaping", "bath"),
    ("steaming", "steaming"),
]
SIZE_BOX = ("size box", "size")
LAST_DRYING = ("drying after size", "drying")


def number(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False, allow_infinity=False)


OTHER_REDUCTION = st.one_of(
    st.just({"other_reduction": "none"}),
    st.builds(
        lambda kind, share, energy: {
            "other_reduction": kind,
            "other_reduction_share": share,
            "other_reductant_product": {"glucose": "GLUCOSE", "thiourea dioxide": "TUD"}.get(kind),
            "electrolysis_energy": energy,
        },
        st.sampled_from(["glucose", "thiourea dioxide", "electrolysis"]),
        st.floats(0.0, 100.0, allow_nan=False, allow_infinity=False),
        st.one_of(st.none(), st.floats(0.2, 10.0, allow_nan=False, allow_infinity=False)),
    ),
)

INDIGO_BATH = st.fixed_dictionaries(
    {
        "indigo_product": st.sampled_from(["INDIGO", "PASTE", "READY"]),
        "indigo_on_yarn": number(0.05, 6.0),
        "dips": st.integers(1, 10),
        "bath_indigo": number(0.05, 5.0),
        "bath_hydrosulfite": number(0.0, 5.0),
        "bath_caustic": number(0.0, 8.0),
        "bath_wetting_agent": number(0.0, 5.0),
        "bath_temperature": number(15.0, 60.0),
        "stock_indigo": number(40.0, 150.0),
        "stock_hydrosulfite_ratio": number(0.0, 1.2),
        "stock_caustic_ratio": number(0.0, 1.2),
        "hydrosulfite_dosing": number(40.0, 200.0),
        "caustic_dosing": number(50.0, 400.0),
        "rinse_loss": number(0.0, 40.0),
        "redissolved": number(0.0, 50.0),
        "start_indigo": st.one_of(st.none(), number(0.0, 8.0)),
        "start_hydrosulfite": st.one_of(st.none(), number(0.0, 8.0)),
        "start_recovered": number(0.0, 100.0),
    }
)

INDIGO_RECIPE = st.builds(lambda bath, other: {**bath, **other}, INDIGO_BATH, OTHER_REDUCTION)

BLANKET = st.one_of(
    st.just({}),
    st.builds(lambda use: {"blanket_product": "GAS", "blanket_use": use}, number(0.0, 200.0)),
)

OPEN_BOXES = st.fixed_dictionaries(
    {
        "boxes": st.just(10),
        "bath_volume": number(500.0, 40000.0),
        "bath_surface": number(0.0, 60.0),
        "pick_up": number(0.4, 1.4),
        "pick_up_last": number(0.4, 1.4),
        "exchange": number(20.0, 100.0),
        "sky_evaporation": number(0.0, 0.3),
        "sky_destruction": number(0.0, 100.0),
        "hydrosulfite_per_oxygen": number(1.0, 2.0),
        "surface_oxygen": number(0.0, 20.0),
        "circulation_flow": number(0.0, 200.0),
        "circulation_oxygen": number(0.0, 8.0),
        "entrained_air": number(0.0, 3.0),
        "wetted_out": number(0.0, 100.0),
        "decay_rate": number(0.0, 10.0),
        "carbon_dioxide": number(0.0, 5.0),
        "ageing_loss": number(0.0, 100.0),
        "bath_kept": number(0.0, 100.0),
        "power": number(0.0, 200.0),
    }
)

INDIGO_MACHINE = st.builds(lambda boxes, blanket: {**boxes, **blanket}, OPEN_BOXES, BLANKET)

SCOUR_RECIPE = st.fixed_dictionaries(
    {
        "scour_caustic": number(0.0, 60.0),
        "scour_wetting_agent": number(0.0, 8.0),
        "scour_sequestrant": number(0.0, 5.0),
        "scour_temperature": number(20.0, 98.0),
        "scour_overflow": number(0.0, 3.0),
        "weight_loss": number(2.0, 9.0),
        "caustic_neutralised": number(0.0, 2.5),
        "wetting_agent_kept": number(0.0, 50.0),
    }
)

# More than the drain holds is refused, and few boxes drain much; more is drawn in
# tests/process/test_heat_recovered.py.
HEAT_BACK = st.one_of(st.just(0.0), st.just(0.0), number(0.0, 20.0))

BOX_MACHINE = st.fixed_dictionaries(
    {
        "pick_up": number(0.4, 1.4),
        "exchange": number(20.0, 100.0),
        "tank_volume": number(50.0, 5000.0),
        "heat_recovered": HEAT_BACK,
    }
)

REDUCTION = st.one_of(
    st.just({"reductant_product": None}),
    st.fixed_dictionaries(
        {
            "reductant_product": st.sampled_from(["SULFIDE", "HYDROSULFIDE", "HYDRO", "GLUCOSE"]),
            "reductant_ratio": number(0.0, 1.0),
            "bath_reductant": number(0.0, 15.0),
        }
    ),
)

CAUSTIC = st.one_of(
    st.just({"caustic_product": None}),
    st.builds(lambda dose: {"bath_caustic": dose}, number(0.0, 60.0)),
)

PAD_LIQUOR = st.fixed_dictionaries(
    {
        "dye_on_yarn": number(0.1, 3.0),
        "dye_fixation": number(40.0, 100.0),
        "extra_uptake": number(0.0, 150.0),
        "wetting_agent_product": st.sampled_from([None, "WET"]),
        "box_overflow": number(0.0, 1.0),
        "feed_ratio": number(2.0, 40.0),
        "first_product": st.just("SOFT"),
        "first_dose": number(0.0, 10.0),
        "second_product": st.sampled_from(["ASH", "SALT", "UREA", "PEROXIDE"]),
        "second_dose": number(0.0, 30.0),
    }
)

SULFUR_DYES, OTHER_DYES = ("BLACK", "BLACK-REDUCED"), ("REACTIVE", "DIRECT")


@st.composite
def dye_boxes(draw: st.DrawFn) -> dict[str, Any]:
    """A dye box of any class, with a reductant only where its class may have one."""
    reduction = draw(REDUCTION)
    dosed = any(reduction.get(name) for name in ("bath_reductant", "reductant_ratio"))
    dyes = (*SULFUR_DYES, "VAT") if dosed else (*SULFUR_DYES, *OTHER_DYES)
    dye = draw(st.sampled_from(dyes))
    return {**draw(PAD_LIQUOR), **reduction, **draw(CAUSTIC), "dye_product": dye}


DYE_BOX_MACHINE = st.builds(
    lambda box, more: {**box, **more},
    BOX_MACHINE,
    st.fixed_dictionaries({"reductant_left": number(0.0, 100.0), "bath_kept": number(0.0, 100.0)}),
)

BOX_PRODUCTS = (
    *("PEROXIDE", "BROMATE", "ACETIC", "SULFURIC", "ASH", "LYE"),
    *("SULFIDE", "HYDROSULFIDE", "HYDRO", "SOFT", "WET"),
)

TREATMENT_RECIPE = st.fixed_dictionaries(
    {
        "dose_basis": st.sampled_from(["as delivered", "100 %"]),
        "first_product": st.sampled_from(BOX_PRODUCTS),
        "first_dose": number(0.0, 30.0),
        "second_product": st.sampled_from(BOX_PRODUCTS),
        "second_dose": number(0.0, 30.0),
        "third_product": st.sampled_from(BOX_PRODUCTS),
        "third_dose": number(0.0, 30.0),
        "box_temperature": number(15.0, 98.0),
        "box_overflow": number(0.0, 2.0),
        "feed_ratio": number(2.0, 40.0),
        "auxiliary_uptake": number(0.0, 200.0),
        "peroxide_taken": number(0.0, 5.0),
        "peroxide_broken_down": number(0.0, 100.0),
        "reductant_left": number(0.0, 100.0),
    }
)

BATH_RECIPE = st.fixed_dictionaries(
    {
        "liquor_ratio": number(3.0, 20.0),
        "bath_time": number(5.0, 240.0),
        "batch_dye_product": st.sampled_from(["BLACK", "BLACK-REDUCED"]),
        "dye_offered": number(0.0, 10.0),
        "dye_exhaustion": number(0.0, 100.0),
        "dye_fixation": number(0.0, 100.0),
        "first_product": st.sampled_from(BOX_PRODUCTS),
        "first_dose": number(0.0, 30.0),
        "second_product": st.sampled_from(BOX_PRODUCTS),
        "second_on_yarn": number(0.0, 10.0),
        "box_temperature": number(15.0, 98.0),
        "loose_removed": number(0.0, 100.0),
        "peroxide_taken": number(0.0, 5.0),
        "peroxide_broken_down": number(0.0, 100.0),
        "reductant_left": number(0.0, 100.0),
        "weight_loss": number(2.0, 4.0),
        "caustic_neutralised": number(0.0, 2.0),
    }
)

BATH_MACHINE = st.fixed_dictionaries({"liquor_retained": number(0.5, 2.9), "power": number(0.0, 90.0)})

SIZE_RECIPE = st.builds(
    lambda add_on, wax: {
        "size_add_on": add_on,
        "first_product": "STARCH",
        "first_share": 100.0 - wax,
        "second_product": "WAX",
        "second_share": wax,
    },
    number(3.0, 15.0),
    number(0.0, 10.0),
)

RINSE_RECIPE = st.one_of(
    st.fixed_dictionaries({"rinse_water": number(0.1, 30.0), "rinse_temperature": number(15.0, 90.0)}),
    st.fixed_dictionaries({"rinse_water_flow": number(0.01, 30.0), "rinse_temperature": number(15.0, 90.0)}),
)

RINSE_MACHINE = st.fixed_dictionaries(
    {
        "boxes": st.integers(1, 7),
        "rinse_feed": st.sampled_from(["counter-current", "separate feeds"]),
        "exchange": number(10.0, 100.0),
        "pick_up": number(0.4, 1.4),
        "heat_recovered": HEAT_BACK,
    }
)

RECOVERY_RECIPE = st.builds(
    lambda rinse, products: {**rinse, **products},
    RINSE_RECIPE,
    st.fixed_dictionaries(
        {
            "returned_dye_product": st.sampled_from([None, "INDIGO", "PASTE"]),
            "recovered_caustic_product": st.sampled_from([None, "LYE", "FLAKE"]),
        }
    ),
)

RECOVERY_MACHINE = st.fixed_dictionaries(
    {
        "water_reused": number(0.0, 95.0),
        "reuse_energy": number(0.0, 10.0),
        "recovery_steam": number(0.0, 2.0),
    }
)

WHOLE_MACHINE = st.fixed_dictionaries(
    {
        "speed": number(12.0, 40.0),
        "efficiency": number(50.0, 100.0),
        "stretch": number(0.0, 4.0),
        "steam_pressure": number(1.5, 9.0),
        "pressure_basis": st.sampled_from(["gauge", "absolute"]),
        "steam_heating": st.sampled_from(["closed", "direct"]),
        "steam_losses": number(0.0, 30.0),
        "leader_length": number(0.0, 300.0),
        "off_shade_length": number(0.0, 300.0),
        "cleaning_water": number(0.0, 20000.0),
        "yarn_form": st.sampled_from(["ropes", "sheet", "beams in a vessel", "cloth"]),
        "charge_mass": number(50.0, 2000.0),
        "charge_time": number(1.0, 120.0),
    }
)

ENQUIRY = st.fixed_dictionaries(
    {
        "order_length": number(500.0, 200000.0),
        "length_basis": st.sampled_from(["finished cloth", "loom-state cloth", "dyed warp"]),
        "sets_side_by_side": st.integers(1, 3),
        "bath_at_start": st.sampled_from(["new fill", "standing bath"]),
        "bath_at_end": st.sampled_from(["kept for the next lot", "dumped"]),
        "stoppages": st.integers(0, 4),
        "stoppage_time": number(0.0, 40.0),
        "pumps_in_stoppage": st.sampled_from(["running", "stopped"]),
    }
)


@st.composite
def routes(draw: st.DrawFn) -> list[tuple[str, str]]:
    """Every kind of step in the trade's order, and in odd ones."""
    usual = draw(st.booleans())
    if usual:
        return list(ROUTE)
    steps = draw(st.permutations([*STEPS_BEFORE, DYEING, RINSE, *BOXES]))
    keep = draw(st.integers(1, len(steps)))
    chosen = list(steps[:keep])
    if draw(st.booleans()):
        chosen.append(DRYING)
    if draw(st.booleans()):
        chosen += [SIZE_BOX, LAST_DRYING]
    return chosen


@st.composite
def mills(draw: st.DrawFn) -> dict[str, Any]:
    """Arguments for `example_mill`."""
    route = draw(routes())
    recipe: dict[str, dict[str, Any]] = {}
    machine: dict[str, dict[str, Any]] = {}
    for step, kind in route:
        if kind == "indigo":
            recipe[step], machine[step] = draw(INDIGO_RECIPE), draw(INDIGO_MACHINE)
        elif kind == "scour":
            recipe[step] = draw(SCOUR_RECIPE)
            machine[step] = {"pick_up": draw(number(0.4, 1.4))}
        elif kind == "rinse":
            recipe[step], machine[step] = draw(RINSE_RECIPE), draw(RINSE_MACHINE)
        elif kind == "recovering rinse":
            recipe[step], machine[step] = draw(RECOVERY_RECIPE), draw(RINSE_MACHINE) | draw(RECOVERY_MACHINE)
            for share, product in (
                ("dye_returned", "returned_dye_product"),
                ("caustic_recovered", "recovered_caustic_product"),
            ):
                if recipe[step][product]:
                    machine[step][share] = draw(number(0.0, 100.0))
        elif kind == "dye box":
            recipe[step], machine[step] = draw(dye_boxes()), draw(DYE_BOX_MACHINE)
        elif kind == "treatment":
            recipe[step], machine[step] = draw(TREATMENT_RECIPE), draw(BOX_MACHINE)
        elif kind == "bath":
            recipe[step], machine[step] = draw(BATH_RECIPE), draw(BATH_MACHINE)
        elif kind == "steaming":
            machine[step] = {"vented_steam": draw(number(0.0, 500.0))}
        elif kind == "size":
            recipe[step] = draw(SIZE_RECIPE)
            machine[step] = {"pick_up": draw(number(0.8, 1.6)), "exchange": draw(number(50.0, 100.0))}
    whole_machine, enquiry = draw(WHOLE_MACHINE), draw(ENQUIRY)
    if whole_machine["yarn_form"] != "ropes":
        enquiry["sets_side_by_side"] = 1
    if whole_machine["yarn_form"] == "cloth" and enquiry["length_basis"] == "dyed warp":
        enquiry["length_basis"] = "loom-state cloth"
    return {
        "route": route,
        "recipe": recipe,
        "machine": machine,
        "whole_machine": whole_machine,
        "enquiry": enquiry,
    }
