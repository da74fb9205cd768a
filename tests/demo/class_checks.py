"""What the demo routes of dyes of other classes must show: in the piece and on beams in a vessel."""

from __future__ import annotations

from costing.process.postings import STORE
from tests.demo.route_checks import Check, derived
from tests.demo.route_figures import CAUSTIC, SULFIDE, bought, drained, fixed, moved, setting, used

HYDROSULFITE = "sodium_hydrosulfite"
REACTIVE, VAT, DIRECT, BLACK_POWDER = "REACTIVE-BLUE", "VAT-BLUE", "DIRECT-NAVY", "SULFUR-BLACK-PDR"
DYEING, CHEMICALS = "vessel dyeing", "chemical pad"


def in_pad(material: str) -> float:
    """Product as delivered in a litre of the dye pad, which leaves 0.7 L/kg on dry cloth [g/L]."""
    return 1000.0 * bought("P-02", material, "dye pad") / 0.7


def on_yarn(code: str, material: str) -> float:
    """Product as delivered in the dye bath, of the yarn [%]."""
    return 100.0 * bought(code, material, DYEING)


CHECKS = [
    Check("P-02", "dye fixed", lambda: fixed("P-02", REACTIVE), "reactive_fixation"),
    Check("P-02", "dye in the pad", lambda: in_pad(REACTIVE), "reactive_pad_dye"),
    # gate-tf-2021: strength is add-on over pick-up; 72 % is fixed and 70 % of the product is dye
    Check("P-02", "dye of the pad, derived", lambda: in_pad(REACTIVE), derived(6.0 / 0.72 / 0.7 / 0.7)),
    Check("P-02", "soda ash in the pad", lambda: in_pad("SODA-99"), "reactive_pad_soda"),
    Check("P-02", "salt in the pad", lambda: in_pad("SALT-99"), "reactive_pad_salt"),
    Check("P-02", "urea in the pad", lambda: in_pad("UREA-99"), "reactive_pad_urea"),
    Check("P-02", "pick-up", lambda: 100.0 * setting("P-02", "dye pad", "pick_up"), "reactive_pad_pick_up"),
    Check(
        "P-02", "steaming", lambda: setting("P-02", "steaming", "steaming_temperature"), "reactive_steaming"
    ),
    # urea leaves as it came, 28.014 of 60.056 of it nitrogen; the dye adds a little, some stays on the cloth
    Check(
        "P-02",
        "nitrogen to the drain over that of the urea used",
        lambda: (
            drained("P-02", "nitrogen of dye and chemicals")
            / (990.0 * used("P-02", "UREA-99") * 28.014 / 60.056)
        ),
        (0.95, 1.02),
    ),
    Check("P-03", "dye fixed", lambda: fixed("P-03", VAT), "vat_fixation"),
    Check("P-03", "dye not fixed", lambda: 100.0 - fixed("P-03", VAT), "vat_dye_left_over"),
    # 45 g/L of 88 % in 0.8 L/kg on dry cloth
    Check(
        "P-03",
        "hydrosulfite fed",
        lambda: moved("P-03", HYDROSULFITE, CHEMICALS, STORE),
        derived(0.8 * 0.045 * 0.88),
    ),
    # 60 % of it is used up: each takes 2 NaOH, for it ends as a sulfite and a sulfate
    Check(
        "P-03",
        "caustic taken over hydrosulfite fed",
        lambda: (
            moved("P-03", CAUSTIC, CHEMICALS, destination="reaction")
            / moved("P-03", HYDROSULFITE, CHEMICALS, STORE)
        ),
        derived(0.6 * 2 * 39.997 / 174.10, 3e-4),
    ),
    # what the rinse has left of it takes 3 H2O2 in the oxidation, a sulfite and a bisulfite one each
    Check(
        "P-03",
        "peroxide over hydrosulfite, where it is oxidised",
        lambda: (
            (
                moved("P-03", "hydrogen_peroxide", "oxidation", destination="reaction")
                - 34.014 / 126.04 * moved("P-03", "sodium_sulfite", "oxidation", destination="reaction")
                - 34.014 / 104.06 * moved("P-03", "sodium_bisulfite", "oxidation", destination="reaction")
            )
            / moved("P-03", HYDROSULFITE, "oxidation", destination="reaction")
        ),
        derived(3 * 34.014 / 174.10, 1e-2),
    ),
    Check("V-02", "liquor ratio", lambda: setting("V-02", DYEING, "liquor_ratio"), "batch_liquor_ratio"),
    Check("V-02", "dye fixed", lambda: fixed("V-02", DIRECT), "direct_fixation"),
    Check("V-02", "dye offered", lambda: on_yarn("V-02", DIRECT), "direct_offered"),
    Check("V-02", "salt", lambda: on_yarn("V-02", "SALT-99"), "direct_salt"),
    Check("V-02", "soda ash", lambda: on_yarn("V-02", "SODA-99"), "direct_soda"),
    Check("V-02", "temperature", lambda: setting("V-02", DYEING, "box_temperature"), "direct_temperature"),
    Check("V-02", "water, all work on yarn", lambda: used("V-02", "water"), "water_yarn_finishing"),
    Check("V-03", "liquor ratio", lambda: setting("V-03", DYEING, "liquor_ratio"), "batch_liquor_ratio"),
    Check("V-03", "dye fixed", lambda: fixed("V-03", VAT), "vat_fixation"),
    Check("V-03", "dye not fixed", lambda: 100.0 - fixed("V-03", VAT), "vat_dye_left_over"),
    Check("V-03", "temperature", lambda: setting("V-03", DYEING, "box_temperature"), "vat_temperature"),
    Check(
        "V-03",
        "hydrosulfite 85 % in the bath",
        lambda: 1000.0 * bought("V-03", "HYDRO-85", DYEING) / 8.0,
        "vat_hydrosulfite",
    ),
    Check("V-03", "salt", lambda: on_yarn("V-03", "SALT-99"), "vat_salt"),
    # 6 g/L of 85 % in 8 L/kg: 60 % of it ends as a sulfite and a sulfate; sulfur is two for one
    Check(
        "V-03",
        "sulfite made over hydrosulfite fed",
        lambda: (
            moved("V-03", "sodium_sulfite", DYEING, "reaction") / moved("V-03", HYDROSULFITE, DYEING, STORE)
        ),
        derived(0.6 * 126.04 / 174.10, 3e-4),
    ),
    Check("V-04", "liquor ratio", lambda: setting("V-04", DYEING, "liquor_ratio"), "batch_liquor_ratio"),
    Check("V-04", "dye fixed", lambda: fixed("V-04", BLACK_POWDER), "sulfur_fixation"),
    Check("V-04", "dye offered", lambda: on_yarn("V-04", BLACK_POWDER), "sulfur_black_offered"),
    Check(
        "V-04",
        "sulfide over dye, as delivered",
        lambda: on_yarn("V-04", "SULFIDE-60") / on_yarn("V-04", BLACK_POWDER),
        "sulfide_per_sulfur_black",
    ),
    Check("V-04", "salt", lambda: on_yarn("V-04", "SALT-99"), "sulfur_black_salt"),
    Check("V-04", "soda ash", lambda: on_yarn("V-04", "SODA-99"), "sulfur_black_soda"),
    # 60 % of the sulfide is used up, and two of it give one thiosulfate: 0.6 x 158.10 / (2 x 78.04)
    Check(
        "V-04",
        "thiosulfate made over sulfide fed",
        lambda: (
            moved("V-04", "sodium_thiosulfate", DYEING, "reaction") / moved("V-04", SULFIDE, DYEING, STORE)
        ),
        derived(0.6 * 158.10 / (2 * 78.04), 3e-4),
    ),
    # 40 % of 9.9 % x 60 % is left; each of the two rinses leaves 2.2/8 of what comes; what the peroxide meets
    # is sulfide no longer
    Check(
        "V-04",
        "sulfide to the drain, as S",
        lambda: drained("V-04", "sulfide, as S"),
        derived(1000 * 0.4 * 0.099 * 0.60 * 32.06 / 78.04 * (1 - (2.2 / 8) ** 3), 3e-4),
    ),
]
