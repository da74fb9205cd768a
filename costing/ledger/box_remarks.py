"""What a practitioner would say of dye boxes, treatments and size before believing the number."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from costing.ledger.dye_remarks import dye_warnings
from costing.ledger.route_run import LEFT, TAKE_OFF
from costing.ledger.whole import Ledger
from costing.process.bath_balance import REDUCTION
from costing.process.bath_brought import DESTROYED
from costing.process.box import OVERFLOW
from costing.process.mixing import WATER
from costing.process.postings import AIR, DRAIN, STORE, Posting
from costing.process.size_box import size_liquor
from costing.quantities import label
from costing.reference_data import defaults
from costing.settings.box_steps import Treatment
from costing.settings.dye_box_step import DyeBox
from costing.settings.dye_class import SULFUR, class_of
from costing.settings.material import Material
from costing.settings.product_fields import DYE, INDIGO, REDUCTANTS
from costing.settings.recovering_rinse_step import RecoveringRinse
from costing.settings.sizing_step import Sizing
from costing.settings.steps import NO_OTHER, IndigoDyeing
from costing.settings.vessel_steps import VesselBath

MUCH_OVERFLOW = 0.1  # L/kg
MUCH_DYE_IN_A_DIP = 0.006  # kg/kg; common practice, no source
THICK_FEED = 0.16  # kg/L; common practice, no source
ACIDS = ("acetic_acid", "sulfuric_acid")
OXIDANTS = ("hydrogen_peroxide", "sodium_bromate")
SULFIDES = ("sodium_sulfide", "sodium_hydrosulfide")
MUCH_SULFIDE = 3e-4  # kg/kg; judgement
MUCH_LOOSE_DYE = 1e-3  # kg/kg
NEAR = 5.0  # K; judgement: exchangers of waste water foul

# Only where a route has one of these can acid, oxidant or loose dye come into a box.
BOXED = (DyeBox, Treatment, VesselBath)

Found = Iterator["tuple[str, str]"]


def box_warnings(ledger: Ledger, materials: Mapping[str, Material]) -> Found:
    """Warnings of the boxes of a route.

    Parameters
    ----------
    ledger : Ledger
        Of an enquiry.
    materials : mapping
        Code -> product of the mill's list.

    Yields
    ------
    tuple of str
        Step, and one sentence in the trade's words.
    """
    boxed = any(isinstance(step, BOXED) for step in ledger.steps)
    postings = ledger.run.postings if boxed else ()
    yield from _of_gas(postings)
    yield from _of_pairs(ledger, materials)
    yield from _of_steps(ledger, materials, postings)
    yield from dye_warnings(ledger, materials)
    for name, exchange in ledger.run.exchanges.items():
        if exchange.approach < NEAR:
            yield (
                name,
                f"heat recovered asks an exchanger that comes within {exchange.approach:.2g} K: "
                f"{exchange.recovered:.0f} of the {exchange.held:.0f} kJ/kg that the drain holds; exchangers "
                f"usually keep {NEAR:g} K or more",
            )
    yield from _left_on_yarn(ledger, materials)


def _of_gas(postings: Iterable[Posting]) -> Found:
    for step, _, substance, _, amount, _, destination in postings:
        if substance == "hydrogen_sulfide" and destination == AIR and amount > 1e-9:
            yield (
                step,
                f"acid meets sulfide here and would set free {1000 * amount:.2g} g/kg of hydrogen "
                "sulfide, a deadly gas: rinse and oxidise the yarn before it meets acid",
            )


def _of_pairs(ledger: Ledger, materials: Mapping[str, Material]) -> Found:
    """Products dosed into one box that destroy each other, and acid where sulfide arrives."""
    for step, yarn in ledger.run.entering:
        if not isinstance(step, (Treatment, VesselBath, DyeBox)):
            continue
        held = {materials[code].substance: dose for code, dose in step.products}
        if isinstance(step, DyeBox) and step.reductant_product:
            held[materials[step.reductant_product].substance] = 1.0  # the box is fed it, however strong
        there = {name for name, dose in held.items() if dose > 0.0}
        oxidants, reductants = there & set(OXIDANTS), there & set(REDUCTANTS)
        if oxidants and reductants:
            pair = " and ".join(label(name) for name in sorted(oxidants | reductants))
            yield (
                step.name,
                f"{pair} are dosed into one box: they destroy each other with heat, and it may be violent; "
                "use a box for each with a rinse between",
            )
        if there & set(ACIDS) and any(yarn.dissolved.get(name, 0.0) > MUCH_SULFIDE for name in SULFIDES):
            yield (
                step.name,
                "the yarn brings sulfide into a box with acid: where the acid is first, it sets hydrogen "
                "sulfide free, a deadly gas; rinse better in front of it",
            )


def _of_steps(ledger: Ledger, materials: Mapping[str, Material], postings: Iterable[Posting]) -> Found:
    overflows: dict[str, float] = {}
    destroyed: dict[str, float] = {}
    for name, _, substance, cause, amount, source, destination in postings:
        if cause == OVERFLOW and substance == WATER and destination.startswith(DRAIN):
            overflows[name] = amount
        elif cause == DESTROYED and source == STORE and substance == "sodium_hydrosulfite":
            destroyed[name] = amount
    for step, yarn in ledger.run.entering:
        if isinstance(step, DyeBox) and overflows.get(step.name, 0.0) > MUCH_OVERFLOW:
            yield (
                step.name,
                f"the dye box overflows {overflows[step.name]:.2f} L/kg with its dye: squeeze harder in "
                "front of it, or feed stronger",
            )
        elif isinstance(step, IndigoDyeing):
            dyes = _dyes(ledger)
            carried = sum(yarn.loose.get(code, 0.0) for code in dyes)
            if carried > MUCH_LOOSE_DYE:
                classes = " and ".join(dict.fromkeys(materials[code].dye_class for code in dyes))
                yield (
                    step.name,
                    f"{1000 * carried:.2g} g/kg of loose {classes} dye comes into the indigo bath: rinse the "
                    "bottom in front of it; what the bath takes of it is left out",
                )
            if destroyed.get(step.name, 0.0) > 1e-6:
                yield (
                    step.name,
                    f"oxidant on the yarn destroys {1000 * destroyed[step.name]:.2g} g/kg of "
                    "hydrosulfite: rinse it off before the dye boxes",
                )
            idle = not any(ledger.run.feeds[step.name].reduced_otherwise.values())
            if idle and step.other_reduction_share and step.other_reduction != NO_OTHER:
                yield (
                    step.name,
                    f"the dye comes reduced: the other reduction, {step.other_reduction}, is not used",
                )
            open_box = defaults()["indigo.surface_oxygen"].value
            if step.blanket_use and step.surface_oxygen >= open_box:
                yield (
                    step.name,
                    f"gas keeps air off, but the surface takes up {1000 * step.surface_oxygen:.3g} g/m2/h of "
                    "oxygen like an open box: put what is measured under the gas",
                )
            in_a_dip = step.indigo_on_yarn / step.dips
            if in_a_dip > MUCH_DYE_IN_A_DIP:
                yield (
                    step.name,
                    f"{100 * step.indigo_on_yarn:.3g} % of indigo in {step.dips:.0f} dip(s) is "
                    f"{100 * in_a_dip:.2g} % for each: more than a dip usually builds up",
                )
        elif isinstance(step, RecoveringRinse):
            yield from _of_recovery(step, ledger)
        elif isinstance(step, Sizing):
            liquor = size_liquor(step, yarn)
            if liquor.feed_strength > THICK_FEED:
                yield (
                    step.name,
                    f"the size fed must hold {1000 * liquor.feed_strength:.0f} g/L, thicker than usual: the "
                    "warp brings water; dry or squeeze it harder in front of the size box",
                )
            if abs(step.size_add_on - ledger.style.size_add_on) > 1e-9:
                yield (
                    step.name,
                    f"the recipe puts {100 * step.size_add_on:.3g} % of size on, style {ledger.style.code} "
                    f"counts {100 * ledger.style.size_add_on:.3g} % in the mass of the cloth",
                )


def _of_recovery(step: RecoveringRinse, ledger: Ledger) -> Found:
    for code in filter(None, (step.returned_dye_product, step.recovered_caustic_product)):
        if ledger.used(code) < 0.0:
            yield step.name, f"more {code} is won back than the route takes: the rest saves nothing"
    if step.returned_dye_product and step.dye_returned:
        for vat, feeds in ledger.run.feeds.items():
            if not feeds.hydrosulfite[REDUCTION] and not any(feeds.reduced_otherwise.values()):
                yield (
                    step.name,
                    f"dye goes back to {vat}, which is fed reduced dye: what reduces it again is not counted",
                )


def _dyes(ledger: Ledger) -> list[str]:
    """Dyes of the dye boxes of a route, in its order; a bath of a vessel rinses loose dye as it goes."""
    return list(dict.fromkeys(step.dye_product for step in ledger.steps if isinstance(step, DyeBox)))


def _left_on_yarn(ledger: Ledger, materials: Mapping[str, Material]) -> Found:
    sulfur_dyed = any(class_of(step, materials) == SULFUR for step in ledger.steps)
    dyes = {*_dyes(ledger), INDIGO}
    for step, _, substance, cause, amount, _, _ in ledger.run.postings:
        if step != TAKE_OFF or cause != LEFT or amount < 1e-6:
            continue
        if substance in dyes:
            yield (
                TAKE_OFF,
                f"{1000 * amount:.2g} g/kg of unfixed {DYE} {substance} stays on the yarn: nothing rinses it "
                "behind the last dye box",
            )
        elif sulfur_dyed and substance in ACIDS:
            yield (
                TAKE_OFF,
                f"{1000 * amount:.2g} g/kg of acid is dried on sulfur-dyed yarn: acid damages it in "
                "store; leave it slightly alkaline",
            )
