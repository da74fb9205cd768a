"""Many quotes of one enquiry, each with numbers of its own, in a few runs of the ledger."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping
from typing import Any, NamedTuple

import numpy

from costing.cost.quote import Quote
from costing.many.lanes import Floats, Lanes, PartedError
from costing.quantities import InputError
from costing.report.table import priced
from costing.settings.inputs import Place, with_inputs
from costing.settings.mill import Enquiry, Mill

CHUNK = 4096  # lanes of one run: arrays of this length stay close to the processor

Work = Callable[[Mapping[Place, Any]], Mapping[Hashable, Any]]


class Outcome(NamedTuple):
    """What many cases come to.

    Attributes
    ----------
    values : dict
        Name -> number of each case; not a number where the case is refused.
    refused : dict
        Case -> why it is refused.
    runs : int
        How often the ledger was run.
    """

    values: dict[Hashable, Floats]
    refused: dict[int, InputError]
    runs: int


def run_parted(work: Work, given: Mapping[Place, Floats], size: int, each: bool = True) -> Outcome:
    """Do some work on many cases at once, parting them where they take different branches.

    Parameters
    ----------
    work : callable
        Takes a number or `Lanes` for each place, gives a number or `Lanes` for each name. What it gives for
        some cases only is zero for the others.
    given : mapping
        Place -> one number for each case.
    size : int
        How many cases there are.
    each : bool, optional
        True to run every refused case once more alone, so that it is told its own number; False where it only
        counts how many are refused, and the first of them speaks for those refused with it.

    Returns
    -------
    Outcome
        Each case with what it comes to alone.
    """
    values: dict[Hashable, Floats] = {}
    refused: dict[int, InputError] = {}
    runs = 0
    todo = list(reversed([numpy.arange(first, min(first + CHUNK, size)) for first in range(0, size, CHUNK)]))
    while todo:
        lanes = todo.pop()
        runs += 1
        try:
            found = work(dict(_of(given, lanes)))
        except PartedError as parted:
            todo += [lanes[~parted.taken], lanes[parted.taken]]
        except InputError as error:
            if len(lanes) == 1 or not each:
                refused.update(dict.fromkeys(lanes.tolist(), error))
            else:  # all of them are refused
                todo += [lanes[number : number + 1] for number in range(len(lanes) - 1, -1, -1)]
        else:
            for name, value in found.items():
                if name not in values:
                    values[name] = numpy.zeros(size)
                values[name][lanes] = value
    for numbers in values.values():
        numbers[list(refused)] = numpy.nan
    return Outcome(values, refused, runs)


def _of(given: Mapping[Place, Floats], lanes: Any) -> Iterator[tuple[Place, Any]]:
    """The numbers of some cases: lanes, or plain numbers where they are all alike."""
    for place, numbers in given.items():
        some = numbers[lanes]
        alike = len(some) == 1 or not (some != some[0]).any()
        yield place, float(some[0]) if alike else some.view(Lanes)


# What is worked out of one quote.
Worked = Callable[[Quote], Mapping[Hashable, Any]]


def many_quotes(
    mill: Mill,
    enquiry: Enquiry,
    given: Mapping[Place, Floats],
    worked: Worked,
    each: bool = True,
    size: int | None = None,
) -> Outcome:
    """Quote one enquiry with many sets of numbers.

    Parameters
    ----------
    mill, enquiry : Mill, Enquiry
        The mill's book, with costs, and an enquiry of it.
    given : mapping
        Place -> one number for each case, in the house unit; the others stay as the book has them.
    worked : callable
        What is wanted of each quote, such as `ordered`.
    each : bool, optional
        As of `run_parted`.
    size : int, optional
        How many cases there are, where nothing may be given; else as many as the numbers of a place.

    Returns
    -------
    Outcome
        The same numbers as one quote after the other.
    """
    if size is None:
        size = max((len(numbers) for numbers in given.values()), default=1)

    def work(values: Mapping[Place, Any]) -> Mapping[Hashable, Any]:
        changed, asked = with_inputs(mill, enquiry, values)
        return worked(priced(changed, asked)[1])

    return run_parted(work, given, size, each)


COST, PRICE = "cost", "price"


def ordered(basis: str) -> Worked:
    """Cost and price on a basis."""

    def worked(quoted: Quote) -> Mapping[Hashable, Any]:
        return {COST: quoted.cost_on(basis), PRICE: quoted.price_on(basis)}

    return worked
