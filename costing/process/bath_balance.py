"""Steady state of the common dye liquor: what is fed, what each cause takes, what overflows."""

from __future__ import annotations

from typing import Callable, NamedTuple

from costing.process import bath_salt, hydrosulfite, liquor, reduction
from costing.process.arithmetic import anywhere, not_negative, smaller, where
from costing.process.other_reduction import reduced_otherwise
from costing.process.yarn import YarnState
from costing.quantities import InputError
from costing.settings.material import Material
from costing.settings.steps import IndigoDyeing

MAX_ROUNDS = 100
MOST_OVERFLOW = 1e3  # L/kg


class Feeds(NamedTuple):
    """Feeds of the bath per kilogram of grey yarn.

    Attributes
    ----------
    indigo : float
        Indigo fed [kg/kg].
    hydrosulfite : dict
        Cause -> hydrosulfite (100 %) that is oxidised or reduces dye; overflow and decay apart [kg/kg].
    hydrosulfite_decayed, hydrosulfite_overflow : float
        The two causes with a chemistry of their own [kg/kg].
    hydrosulfite_in_stock, caustic_in_stock : float
        What the stock vat brings of the feed [kg/kg].
    caustic : float
        Caustic (NaOH 100 %) that the balance asks for; may be below zero [kg/kg].
    overflow, make_up, feed_volume : float
        Volumes [L/kg].
    stock_volume, hydrosulfite_volume, caustic_volume : float
        The feeds that make up the feed volume [L/kg].
    kept_liquor : float
        Entering liquor that leaves as it came behind the last box [L/kg].
    bath_on_yarn : float
        Liquor of the bath that leaves with the yarn [L/kg].
    caustic_lacking : float
        Caustic (NaOH 100 %) that the last sky takes beyond what the yarn carries into it [kg/kg].
    reduced_otherwise : dict
        Cause -> indigo that something else than hydrosulfite reduces [kg/kg].
    """

    indigo: float
    hydrosulfite: dict[str, float]
    hydrosulfite_decayed: float
    hydrosulfite_overflow: float
    hydrosulfite_in_stock: float
    caustic_in_stock: float
    caustic: float
    overflow: float
    make_up: float
    feed_volume: float
    stock_volume: float
    hydrosulfite_volume: float
    caustic_volume: float
    kept_liquor: float
    bath_on_yarn: float
    caustic_lacking: float
    reduced_otherwise: dict[str, float]

    @property
    def hydrosulfite_total(self) -> float:
        """Hydrosulfite (100 %) fed, all causes [kg/kg]."""
        return sum(self.hydrosulfite.values()) + self.hydrosulfite_decayed + self.hydrosulfite_overflow

    @property
    def hydrosulfite_dosed(self) -> float:
        """Hydrosulfite (100 %) dosed beside the stock vat [kg/kg]."""
        return self.hydrosulfite_total - self.hydrosulfite_in_stock

    @property
    def caustic_dosed(self) -> float:
        """Caustic (NaOH 100 %) dosed beside the stock vat [kg/kg]."""
        return not_negative(self.caustic - self.caustic_in_stock)

    @property
    def caustic_surplus(self) -> float:
        """Caustic (NaOH 100 %) that comes in beyond what the bath loses [kg/kg]."""
        return not_negative(self.caustic_in_stock - self.caustic)


REDUCTION = "reduces the dye"
SECOND_REDUCTION = "reduces redissolved dye again"
LAST_SKY = "carried into the last sky and the rinse"
SURPLUS = "stock vat stronger than the bath uses"
CAUSTIC_SURPLUS = "surplus that leaves with the liquor"


def steady_feeds(step: IndigoDyeing, yarn: YarnState, indigo: Material, throughput: float) -> Feeds:
    """Solve the coupled balance of volume, indigo, hydrosulfite and caustic.

    The overflow sets what is lost, what is lost sets the feeds, and the feeds set the overflow: the
    loop is followed until it stands still.

    Parameters
    ----------
    step : IndigoDyeing
        Settings of the boxes.
    yarn : YarnState
        The entering yarn.
    indigo : Material
        The dye as bought.
    throughput : float
        Grey yarn through the range [kg/h].

    Returns
    -------
    Feeds
        The steady state.

    Raises
    ------
    InputError
        Feeds so thin that no steady state exists.
    """
    prereduced = 1.0 if indigo.is_reduced_dye else 0.0
    kept = liquor_kept(step, yarn)
    on_yarn = step.pick_up_last - kept
    # What the yarn brings and keeps never mixes with the bath; the rest counts as a feed.
    brought = yarn.dissolved.get("sodium_hydroxide", 0.0)
    mixed = brought - unchanged(brought, kept, yarn)
    fixed_losses = _losses_without_overflow(step, yarn, throughput)
    decayed = hydrosulfite.hydrosulfite_by_decay(
        step.decay_rate, step.bath_volume, step.bath_hydrosulfite, throughput
    )
    in_last_sky = (
        reduction.CAUSTIC_PER_HYDROSULFITE * fixed_losses[LAST_SKY]
        + reduction.CAUSTIC_PER_CARBON_DIOXIDE * step.carbon_dioxide / step.dips
    )
    lacking = not_negative(in_last_sky - on_yarn * step.bath_caustic)
    other, share = reduced_otherwise(step, indigo)
    alkali_per_indigo = step.stock_caustic_ratio + indigo.alkali / indigo.strength

    def feeds_at(overflow: float) -> Feeds:
        """What is fed where a given volume overflows; its own overflow is what these feeds make."""
        fed = reduction.indigo_feed_of_bath(step.indigo_on_yarn, step.rinse_loss, overflow, step.bath_indigo)
        by_it = (1.0 - share) * fed
        causes = {
            REDUCTION: hydrosulfite.hydrosulfite_for_reduction(by_it, prereduced),
            SECOND_REDUCTION: hydrosulfite.hydrosulfite_for_second_reduction(by_it, step.redissolved),
            **fixed_losses,
        }
        # What comes reduced has no other share, so all of it counts here.
        otherwise = {REDUCTION: share * fed, SECOND_REDUCTION: share * fed * step.redissolved}
        overflowed = liquor.carried_by_liquor(overflow, step.bath_hydrosulfite)
        needed = sum(causes.values()) + decayed + overflowed
        in_stock = step.stock_hydrosulfite_ratio * fed
        causes[SURPLUS] = not_negative(in_stock - needed)
        needed += causes[SURPLUS]
        # What goes into the last sky leaves the bath as it is; there it takes caustic that is on the yarn.
        taken = other.caustic_per_indigo * sum(otherwise.values())
        caustic = (
            lacking
            + taken
            + bath_salt.caustic_feed_of_bath(
                needed,
                overflowed + fixed_losses[LAST_SKY],
                decayed,
                on_yarn,
                overflow,
                step.bath_caustic,
                step.carbon_dioxide * (1.0 - 1.0 / step.dips),
                mixed,
            )
        )
        stock_volume = fed / step.stock_indigo
        hydrosulfite_volume = (needed - in_stock) / step.hydrosulfite_dosing
        caustic_volume = not_negative(caustic - alkali_per_indigo * fed) / step.caustic_dosing
        volume = stock_volume + hydrosulfite_volume + caustic_volume
        around_box = (yarn.liquor, volume, step.pick_up_last, step.sky_evaporation)
        return Feeds(
            fed,
            causes,
            decayed,
            overflowed,
            in_stock,
            alkali_per_indigo * fed,
            caustic,
            liquor.overflow_volume(*around_box),
            liquor.make_up_volume(*around_box),
            volume,
            stock_volume,
            hydrosulfite_volume,
            caustic_volume,
            kept,
            on_yarn,
            lacking,
            otherwise,
        )

    feeds = _standing_still(feeds_at)
    if feeds is None:
        raise InputError(
            step.name,
            "the feeds are too thin: every litre fed overflows with as much as it brings; accepted are a "
            "stronger stock vat or dosing liquor, or a weaker bath",
        )
    return feeds


def _standing_still(feeds_at: Callable[[float], Feeds]) -> Feeds | None:
    """Feeds whose overflow is the overflow they were worked out for; None where there are none.

    The feeds rise with the overflow along a line with a few bends upwards. From each point the line
    through it and the next is followed to where it would stand still: that never overshoots, and on
    the last straight part it is exact.
    """
    overflow = 0.0
    for _ in range(MAX_ROUNDS):
        feeds = feeds_at(overflow)
        step = feeds.overflow - overflow
        still = abs(step) <= 1e-14 * (1.0 + overflow)
        if not anywhere(where(still, False, True)):
            return feeds
        slope = (feeds_at(feeds.overflow).overflow - feeds.overflow) / where(still, 1.0, step)
        rising = where(slope < 1.0, slope, 0.0)  # without a line to follow, the next point itself
        overflow = where(still, overflow, overflow + step / (1.0 - rising))
        if not (overflow >= 0.0 and overflow <= MOST_OVERFLOW):
            return None
    return None


def liquor_kept(step: IndigoDyeing, yarn: YarnState) -> float:
    """Entering liquor that no box replaces and no squeeze takes off [L/kg].

    Each box replaces its share; a squeeze that leaves less than it got takes old and new liquor alike.
    """
    left = yarn.liquor
    if step.dips > 1:
        left = smaller(left, step.pick_up) * smaller(1.0, step.pick_up_last / step.pick_up)
    kept: float = liquor.residue_after_boxes(step.dips, step.exchange) * smaller(left, step.pick_up_last)
    return kept


def unchanged(brought: float, kept_liquor: float, yarn: YarnState) -> float:
    """Part of what the entering liquor brings that leaves behind the last box as it came [kg/kg]."""
    return brought * kept_liquor / yarn.liquor if yarn.liquor > 0 else 0.0


def _losses_without_overflow(step: IndigoDyeing, yarn: YarnState, throughput: float) -> dict[str, float]:
    *skies, last = hydrosulfite.hydrosulfite_lost_behind_dips(
        step.dips,
        step.pick_up,
        step.pick_up_last,
        step.exchange,
        step.sky_destruction,
        step.bath_hydrosulfite,
    )
    losses = {f"carried into sky {number}": lost for number, lost in enumerate(skies, start=1)}
    losses[LAST_SKY] = last
    losses["bath surface"] = hydrosulfite.hydrosulfite_at_bath_surface(
        step.hydrosulfite_per_oxygen, step.surface_oxygen, step.bath_surface, throughput
    )
    losses["circulation"] = hydrosulfite.hydrosulfite_in_circulation(
        step.hydrosulfite_per_oxygen, step.circulation_oxygen, step.circulation_flow, throughput
    )
    losses["air in the yarn"] = hydrosulfite.hydrosulfite_by_entrained_air(
        step.hydrosulfite_per_oxygen,
        step.entrained_air,
        step.oxygen_in_air,
        0.0 if yarn.air_dry else step.wetted_out,
    )
    return losses
