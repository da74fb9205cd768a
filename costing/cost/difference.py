"""Why two quotes differ: inputs of the one take the place of those of the other, one after the other."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from fractions import Fraction
from typing import NamedTuple

from costing.cost.changes import (
    ORDER,
    PROGRAM,
    Change,
    Path,
    Swap,
    closed,
    exchanged,
    joined,
    opened,
    swaps,
    under_codes_of,
)
from costing.cost.quote import WEFT, YARN_BASES, Quote
from costing.quantities import InputError
from costing.settings.mill import Enquiry, Mill
from costing.settings.snapshot import Document, restored

MARGIN = ("quote", "margin", "share of the price", "margin")

Priced = Callable[[Mill, Enquiry], Quote]
LineName = tuple[str, str, str, str]  # step, material, cause, group


class Move(NamedTuple):
    """Some inputs exchanged, and the quote behind it.

    Attributes
    ----------
    groups : tuple of str
        Kinds of input: more than one where they cannot be parted.
    changes : tuple of Change
        The inputs.
    quote : Quote
        With them, and with those of all moves before.
    """

    groups: tuple[str, ...]
    changes: tuple[Change, ...]
    quote: Quote


class Effect(NamedTuple):
    """What some inputs do to a price.

    Attributes
    ----------
    groups, changes
        As of `Move`.
    lines : dict
        Step, material, cause and group -> money on the basis; exact, so that nothing is lost in adding up.
    """

    groups: tuple[str, ...]
    changes: tuple[Change, ...]
    lines: dict[LineName, Fraction]

    @property
    def amount(self) -> Fraction:
        """Money on the basis, of all lines."""
        return sum(self.lines.values(), Fraction(0))


def moves_between(before: Document, after: Document, priced: Priced) -> tuple[Quote, list[Move]]:
    """The quote of one snapshot, and the moves that lead to the quote of another.

    Cloth comes first, then lot, recipe, usage and price; in each, one input after the other, as the snapshot
    has them. An input that the mill refuses while others are still as before (more dips than the range has
    boxes) is tried again, then with what else waits in its place (a rinse told by its flow in place of its
    water), and again behind each kind. What is left then is exchanged at once, and told together.

    Parameters
    ----------
    before, after : dict
        Snapshots.
    priced : callable
        Takes a mill and an enquiry and gives its quote.

    Raises
    ------
    InputError
        One of the snapshots gives no quote, or they are in different money.
    """
    first, last = priced(*restored(before)), priced(*restored(after))
    mine, other = opened(before), opened(under_codes_of(after, before))
    state = joined(mine, other)
    found = swaps(mine, other, before["range"]["code"] != after["range"]["code"])
    moves: list[Move] = []
    waiting: list[Swap] = []
    for group in ORDER:
        waiting += [swap for swap in found if swap.group == group]
        bundles = [[swap] for swap in waiting]
        while bundles:
            left = len(waiting)
            for bundle in bundles:
                trial = exchanged(state, other, bundle)
                try:
                    quote = priced(*restored(closed(trial)))
                except InputError:
                    continue
                state = trial
                waiting = [swap for swap in waiting if swap not in bundle]
                moves.append(_move(bundle, quote))
            if len(waiting) < left:
                bundles = [[swap] for swap in waiting]
            else:
                bundles = _of_one_place(waiting) if len(bundles[0]) == 1 else []
    if waiting:
        moves.append(_move(waiting, last))
    elif moves:
        moves[-1] = moves[-1]._replace(quote=last)  # the same, but for the order in which it was added up
    return first, moves


def _of_one_place(waiting: Sequence[Swap]) -> list[list[Swap]]:
    """The inputs that wait in one place, where there are several: of one step, product or range."""
    places: dict[Path, list[Swap]] = {}
    for swap in waiting:
        places.setdefault(swap.paths[0][:-1] or swap.paths[0], []).append(swap)
    return [found for found in places.values() if len(found) > 1]


def _move(exchanged_now: Sequence[Swap], quote: Quote) -> Move:
    groups = tuple(group for group in ORDER if any(swap.group == group for swap in exchanged_now))
    return Move(groups, tuple(change for swap in exchanged_now for change in swap.changes), quote)


def with_program(
    first: Quote, moves: Sequence[Move], saved: tuple[Quote, Quote], changes: Sequence[Change]
) -> tuple[Quote, list[Move]]:
    """The moves between two quotes as they were saved, where the program of today gives others.

    Parameters
    ----------
    first, moves
        Of `moves_between`.
    saved : tuple of Quote
        The two quotes as they were saved.
    changes : sequence of Change
        What is other about the program.
    """
    told = tuple(changes)
    last = moves[-1].quote if moves else first
    before = [] if saved[0] == first else [Move((PROGRAM,), told, first)]
    behind = [] if saved[1] == last else [Move((PROGRAM,), told, saved[1])]
    return saved[0], [*before, *moves, *behind]


def lines_on(quote: Quote, basis: str) -> dict[LineName, Fraction]:
    """The price of a quote on a basis in its lines, margin among them; exact."""
    per, margin = Fraction(quote.per[basis]), Fraction(quote.margin)
    without_weft = basis in YARN_BASES and quote.weft_per_kg != 0.0
    found: dict[LineName, Fraction] = {}
    for line in quote.lines:
        if not (without_weft and line.step == WEFT):
            key = (line.step, line.material, line.cause, line.group)
            found[key] = found.get(key, Fraction(0)) + Fraction(line.cost) * per
    found[MARGIN] = sum(found.values(), Fraction(0)) * margin / (1 - margin)
    return found


def effects_of(first: Quote, moves: Iterable[Move], basis: str) -> list[Effect]:
    """What each move does to the price on a basis: the amounts add up to the whole difference exactly."""
    found = []
    before = lines_on(first, basis)
    for move in moves:
        after = lines_on(move.quote, basis)
        found.append(Effect(move.groups, move.changes, _less(after, before)))
        before = after
    return found


def together(effects: Iterable[Effect]) -> list[Effect]:
    """Effects of the same kinds of input put together, in the order of their kinds."""
    found: dict[tuple[str, ...], Effect] = {}
    for effect in effects:
        known = found.get(effect.groups, Effect(effect.groups, (), {}))
        lines = dict(known.lines)
        for key, amount in effect.lines.items():
            lines[key] = lines.get(key, Fraction(0)) + amount
        changes = tuple(dict.fromkeys((*known.changes, *effect.changes)))
        found[effect.groups] = Effect(effect.groups, changes, lines)
    rank = (*ORDER, PROGRAM)
    return sorted(found.values(), key=lambda effect: (len(effect.groups), rank.index(effect.groups[0])))


def _less(after: dict[LineName, Fraction], before: dict[LineName, Fraction]) -> dict[LineName, Fraction]:
    """Line by line, what is more; lines that stay the same are left out."""
    keys = dict.fromkeys((*after, *before))
    found = {key: after.get(key, Fraction(0)) - before.get(key, Fraction(0)) for key in keys}
    return {key: amount for key, amount in found.items() if amount}
