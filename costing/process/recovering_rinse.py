"""Rinse boxes with a filter or an evaporator behind their drain.

What is won back is a negative feed from the store, with its cause: it saves as much of the product named.
"""

from __future__ import annotations

from collections.abc import Mapping

from costing.process.arithmetic import not_negative, smaller
from costing.process.heating import post_closed_steam
from costing.process.mixing import WATER, send_to_drain, shared_out
from costing.process.postings import DRAIN, MOTORS, POWER, PROCESS, STORE, Book
from costing.process.surroundings import Surroundings
from costing.process.washing import RINSE_WATER, RINSED_OFF, behind_rinse, rinse_boxes
from costing.process.yarn import YarnState
from costing.settings.material import Material
from costing.settings.recovering_rinse_step import RecoveringRinse

DYE_BACK = "credit: dye that the filter returns to the vat"
CAUSTIC_BACK = "credit: caustic that the evaporator returns"
FILTERED = "filters rinse water"
EVAPORATED = "evaporates the weak lye"
INERT = "inert"


def rinse_and_recover(
    step: RecoveringRinse, yarn: YarnState, materials: Mapping[str, Material], around: Surroundings
) -> tuple[YarnState, Book]:
    """Run wet yarn through rinse boxes, and win back water, dye or caustic from what they drain.

    Reused water stands for water of the main and comes back as cold and as clean; all it held goes to the
    drain with what is left. Returned dye must be reduced again like powder: the vat counts all dye fed to
    it. The evaporator takes its share of the drain; vapour goes to the drain as water. Leaves out cleaning
    of membranes, cooling water, salt and dirt that come back with dye or lye, and water that comes back
    with either beyond what the product named holds.

    Parameters
    ----------
    step : RecoveringRinse
        Settings of the boxes, the filter and the evaporator.
    yarn : YarnState
        The entering yarn.
    materials : mapping
        Code -> product of the mill's list.
    around : Surroundings
        Of the run.

    Returns
    -------
    YarnState, Book
        The leaving yarn, and the lines.

    Notes
    -----
    Water evaporated is ``share x drain - water in the lye returned``, in kg per kg of yarn: a weak lye of
    few g/L costs much steam for each kilogram of caustic.
    """
    book = Book(step.name)
    flows = rinse_boxes(step, yarn, around, book)
    reused = smaller(step.water_reused * flows.main_water, not_negative(flows.drained))
    returned = (step.dye_returned or 0.0) if step.returned_dye_product else 0.0
    recovered = (step.caustic_recovered or 0.0) if step.recovered_caustic_product else 0.0
    filtered = flows.drained if returned > 0.0 else reused
    book.move(WATER, RINSE_WATER, flows.main_water - reused, STORE, PROCESS, WATER)
    book.move(POWER, FILTERED, step.reuse_energy * not_negative(filtered), STORE, MOTORS, POWER)
    rinsed, loose = shared_out(yarn.dissolved, 1.0 - flows.residue), dict(yarn.loose)
    drained = flows.drained - reused
    if returned > 0.0:
        dye = returned * loose.get("indigo", 0.0)
        drained -= _give_back(book, materials[step.returned_dye_product], DYE_BACK, dye, rinsed, drained)
        loose["indigo"] = loose.get("indigo", 0.0) - dye
    if recovered > 0.0:
        caustic = recovered * not_negative(rinsed.get("sodium_hydroxide", 0.0))
        taken = recovered * not_negative(drained)
        product = materials[step.recovered_caustic_product]
        in_lye = _give_back(book, product, CAUSTIC_BACK, caustic, rinsed, taken)
        if caustic:
            rinsed["sodium_hydroxide"] -= caustic
            post_closed_steam(book, EVAPORATED, (step.recovery_steam or 0.0) * (taken - in_lye), around)
        drained -= in_lye
    send_to_drain(book, step.name, RINSED_OFF, rinsed)
    send_to_drain(book, step.name, "loose dye rinsed off", loose)
    book.move(WATER, RINSE_WATER, drained, PROCESS, DRAIN + step.name)
    return behind_rinse(step, yarn, around, flows.residue), book


def _give_back(
    book: Book, product: Material, cause: str, pure: float, rinsed: dict[str, float], water: float
) -> float:
    """Credit a product by its active part, with as much of the rest of it as there is to give.

    What a powder holds beside its dye is saved too, and then lacks in the drain.

    Returns
    -------
    float
        Water that goes back with it [L/kg].
    """
    if pure <= 0.0:
        return 0.0
    rest = pure / product.strength - pure
    book.move(product.substance, cause, -pure, STORE, PROCESS, product.code)
    if product.remainder == WATER:
        rest = smaller(rest, not_negative(water))
        book.move(WATER, cause, -rest, STORE, PROCESS, product.code)
        return rest
    rest = smaller(rest, not_negative(rinsed.get(INERT, 0.0)))
    book.move(INERT, cause, -rest, STORE, PROCESS, product.code)
    rinsed[INERT] = rinsed.get(INERT, 0.0) - rest
    return 0.0
