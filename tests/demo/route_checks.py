"""What a check of a demo route is, and what every box of sulfur dye and every size box must show."""

from __future__ import annotations

from typing import Callable, NamedTuple

from costing.process.postings import STORE, YARN
from tests.demo.route_figures import (
    BLACK,
    SULFIDE,
    drained,
    dry_size,
    dry_warp,
    fixed,
    moved,
    result,
    size_of_the_fill,
    used,
)


class Check(NamedTuple):
    """One figure of a route; `within` names a published range, or is what arithmetic gives: low and high."""

    code: str
    what: str
    figure: Callable[[], float]
    within: str | tuple[float, float]


def derived(expected: float, share: float = 1e-6) -> tuple[float, float]:
    return expected * (1.0 - share), expected * (1.0 + share)


def of_sulfur_dye(code: str, step: str, over: float = 0.0, on_yarn: float = 1.0) -> list[Check]:
    """What every box of sulfur dye must show; bath that goes over the weir and on the yarn in L/kg."""
    return [
        Check(code, "dye fixed while it runs", lambda: fixed(code, BLACK), "sulfur_fixation"),
        # mercer-acid-damage tells of 50 % or more lost with black. The demo takes the middle of the class
        # figure, 65 % fixed: of each kilogram that stays 0.35/0.65 kg is rinsed off. What overflows comes on
        # top, and has the strength at which the bath on the yarn and 30 % more hold 1/0.65 kg; a pad draws no
        # more.
        Check(
            code,
            "dye lost over dye that stays",
            lambda: moved(code, BLACK, destination="drain") / moved(code, BLACK, destination=YARN),
            derived(0.35 / 0.65 + over / on_yarn / 1.3 / 0.65),
        ),
        # 60 % of the sulfide is used up, and two of it give one thiosulfate: 0.6 x 158.10 / (2 x 78.04)
        Check(
            code,
            "thiosulfate made over sulfide fed",
            lambda: moved(code, "sodium_thiosulfate", step, "reaction") / moved(code, SULFIDE, step, STORE),
            derived(0.6 * 158.10 / (2 * 78.04), 3e-4),
        ),
        # 40 % is left, 32.06 / 78.04 of it sulfur; a dump of a fresh fill holds more, an oxidising box takes
        # some.
        Check(
            code,
            "sulfide to the drain, as S, over sulfide used, fills in",
            lambda: drained(code, "sulfide, as S") / 600.0 / used(code, "SULFIDE-60") * 78.04 / 32.06,
            (0.8 * 0.40, 1.05 * 0.40),
        ),
    ]


def of_size(code: str) -> list[Check]:
    """What every size box must show."""
    return [
        # pick-up-exam-item: add-on is pick-up times solids, 80 % x 6.0 % = 4.8 %. The recipe asks for 9 %.
        Check(code, "size over dry warp", lambda: dry_size(code) / dry_warp(code), derived(0.09)),
        # 1.15 L/kg of box liquor, all of it exchanged on a dry warp and nine tenths on a wet one
        Check(
            code,
            "size over pick-up times strength of the box",
            lambda: dry_size(code) / (1.15 * (0.9 if code == "S-02" else 1.0) * size_of_the_fill(code)),
            derived(1.0),
        ),
        Check(
            code,
            "starch lost of what is cooked",
            lambda: (
                moved(code, "STARCH-MOD", "size box", destination="drain")
                / moved(code, "STARCH-MOD", "size box", STORE)
            ),
            derived(0.04),
        ),
        # The style counts 9 % of grey warp at 8.5 % of regain, the box 9 % of the dyed warp bone dry, which
        # has lost up to 4 % of the grey warp and gained up to 4 % of dye and salt.
        Check(
            code,
            "size on the warp over size in the mass of the loom-state cloth",
            lambda: dry_size(code) / result(code).ledger.style.size_add_on,
            (1.0 / 1.085 - 0.04, 1.04 / 1.085),
        ),
    ]
