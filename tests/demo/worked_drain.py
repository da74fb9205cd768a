"""The drain of the quotes that are worked out anew: loads of every stream from its salts."""

from __future__ import annotations

from tests.demo.worked_anew import (
    HYDROSULFITE,
    HYDROXIDE,
    INDIGO,
    LEUCO,
    NA,
    SALT_OF_ACID,
    SULFATE,
    SULFITE,
    THIOSULFATE,
    C,
    N,
    O,
    S,
    Worked,
    typical,
)


def drained(worked: Worked) -> dict[str, dict[str, float]]:
    """Flow and loads by stream, per kilogram of saleable grey warp [L, kg]."""
    dye = typical()["indigo.recovery"] / 100
    organic = {
        "indigo": 16 * 2 * O / INDIGO * dye,  # 16 oxygen molecules with nitrogen left as ammonium
        "leuco": 16.5 * 2 * O / LEUCO * dye,
        "salt of acids": 10 * O / SALT_OF_ACID * worked.found,
        "extract": worked.demand_of_extract,
        "wetting": 2.327 * worked.found,
        "bath wetting": 1.653 * worked.found,
        "sequestrant": 1.021 * worked.found,
    }
    sulfur = {
        "hydrosulfite": (1.5, HYDROSULFITE),
        "sulfite": (0.5, SULFITE),
        "thiosulfate": (2, THIOSULFATE),
    }
    sodium = {
        "caustic": NA / HYDROXIDE,
        "salt of acids": NA / SALT_OF_ACID,
        "carbonate": 2 * NA / (2 * NA + C + 3 * O),
        "sulfate": 2 * NA / SULFATE,
        "sequestrant": 0.2445,
        "bath wetting": 0.099,
        **{name: 2 * NA / mass for name, (_, mass) in sulfur.items()},
    }
    found = {}
    for name, held in worked.streams.items():
        got = {key: held.get(key, 0.0) for key in (*organic, *sodium)}
        found[name] = {
            "flow": held["water"],
            "COD, organic": sum(got[key] * demand for key, demand in organic.items()),
            "COD, inorganic sulfur": sum(got[key] * n * 2 * O / mass for key, (n, mass) in sulfur.items()),
            "unfixed dye": got["indigo"] + got["leuco"] * INDIGO / LEUCO,
            "sodium": sum(got[key] * share for key, share in sodium.items()),
            "sulfate": got["sulfate"] * (S + 4 * O) / SULFATE,
            "sulfite": got["sulfite"] * (S + 3 * O) / SULFITE,
            "thiosulfate": got["thiosulfate"] * (2 * S + 3 * O) / THIOSULFATE,
            "hydrosulfite": got["hydrosulfite"] * (2 * S + 4 * O) / HYDROSULFITE,
            "sulfate, once all is oxidised": (got["sulfite"] / SULFITE + got["sulfate"] / SULFATE)
            * (S + 4 * O)
            + (got["thiosulfate"] / THIOSULFATE + got["hydrosulfite"] / HYDROSULFITE) * 2 * (S + 4 * O),
            "nitrogen of dye and chemicals": (got["indigo"] / INDIGO + got["leuco"] / LEUCO) * 2 * N,
            "sulfur, all forms": got["bath wetting"] * 0.138
            + (got["sulfite"] / SULFITE + got["sulfate"] / SULFATE) * S
            + (got["thiosulfate"] / THIOSULFATE + got["hydrosulfite"] / HYDROSULFITE) * 2 * S,
        }
    return found
