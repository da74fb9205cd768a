"""Rows of a table that run together, and running them: here, or on every core."""

from __future__ import annotations

import multiprocessing
import pickle
from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor, as_completed
from concurrent.futures.process import BrokenProcessPool
from typing import Any, NamedTuple, Self

import numpy
from numpy.typing import NDArray

from costing.cost.quote import GROUPS, YARN_BASES, Quote, basis_of
from costing.many.lanes import Floats, Lanes
from costing.many.quotes import CHUNK, COST, PRICE, Worked, run_parted
from costing.quantities import InputError
from costing.quantities.checking import SEVERAL
from costing.report.table import priced
from costing.settings.inputs import Place, with_inputs
from costing.settings.mill import Enquiry, Mill

RESULTS = (COST, PRICE, *GROUPS)
WEFT = "weft yarn"

Rows = NDArray[numpy.int64]
Advance = Callable[[int], None]


class Job(NamedTuple):
    """Rows that take the same way through the ledger.

    Attributes
    ----------
    rows : array of int
        Places of the rows in their table.
    enquiries : tuple of Enquiry
        What they ask for; the numbers in which these differ are among `given`.
    which : array of int
        For each row, which of the enquiries.
    given : dict
        Place -> number of each row, in the house unit.
    """

    rows: Rows
    enquiries: tuple[Enquiry, ...]
    which: Rows
    given: dict[Place, Floats]


class Done(NamedTuple):
    """What the rows of a job come to.

    Attributes
    ----------
    rows : array of int
        Places of the rows in their table.
    values : array
        A line for each of `RESULTS`; not a number where a row is refused [money/m].
    refused : dict
        Place of a row -> why it is refused.
    """

    rows: Rows
    values: NDArray[numpy.float64]
    refused: dict[int, str]


def worked_on(basis: str) -> Worked:
    """Cost, price and cost by group on a basis; the groups add up to the cost."""

    def worked(quoted: Quote) -> Mapping[Hashable, Any]:
        per = quoted.per[basis]
        found: dict[Hashable, Any] = {COST: quoted.cost_on(basis), PRICE: quoted.price_on(basis)}
        for (group,), cost in quoted.by("group").items():
            apart = quoted.weft_per_kg if group == WEFT and basis in YARN_BASES else 0.0
            found[group] = (cost - apart) * per
        return found

    return worked


def parts(jobs: Iterable[Job]) -> Iterator[Job]:
    """The same rows in jobs that are one run of the ledger each, as long as no branch parts them."""
    for job in jobs:
        for first in range(0, len(job.rows), CHUNK):
            piece = slice(first, first + CHUNK)
            given = {place: numbers[piece] for place, numbers in job.given.items()}
            yield Job(job.rows[piece], job.enquiries, job.which[piece], given)


def run(mill: Mill, job: Job) -> Done:
    """Quote the rows of a job; each comes to what it would come to alone."""
    first = job.enquiries[0]
    worked = worked_on(basis_of(first))

    own_number: set[int] = set()  # refusals that tell a number, which is that of one row only

    def work(values: Mapping[Place, Any]) -> Mapping[Hashable, Any]:
        told = Lanes.told
        try:
            changed, asked = with_inputs(mill, first, values)
            return worked(priced(changed, asked)[1])
        except InputError as error:
            if Lanes.told != told:
                own_number.add(id(error))
            raise

    size = len(job.rows)
    outcome = run_parted(work, job.given, size, each=False)
    values = numpy.zeros((len(RESULTS), size))
    for line, name in enumerate(RESULTS):
        if name in outcome.values:
            values[line] = outcome.values[name]
    refused: dict[int, str] = {}
    cases = numpy.array(sorted(outcome.refused), dtype=int)
    values[:, cases] = numpy.nan
    if len(job.enquiries) > 1:  # once more by enquiry: a refusal names its own
        for number in numpy.unique(job.which[cases]):
            again = run(mill, _only(job, cases[job.which[cases] == number], number))
            refused.update(again.refused)
        return Done(job.rows, values, refused)
    same: dict[int, str] = {}
    for case, error in sorted(outcome.refused.items()):
        if id(error) not in same or id(error) in own_number or SEVERAL in error.message:
            same[id(error)] = _alone(mill, job, case)
        refused[int(job.rows[case])] = same[id(error)]
    return Done(job.rows, values, refused)


def _only(job: Job, cases: Rows, number: int) -> Job:
    """Some rows of a job, all of one enquiry."""
    given = {place: numbers[cases] for place, numbers in job.given.items()}
    return Job(job.rows[cases], (job.enquiries[number],), numpy.zeros(len(cases), dtype=int), given)


def _alone(mill: Mill, job: Job, case: int) -> str:
    """Why a row is refused, run alone: with its own style, enquiry and numbers in the words."""
    own = {place: float(numbers[case]) for place, numbers in job.given.items()}
    try:
        priced(*with_inputs(mill, job.enquiries[job.which[case]], own))
    except InputError as error:
        return str(error)
    raise AssertionError("a row that is refused among others must be refused alone")


def run_here(mill: Mill, jobs: Iterable[Job], advance: Advance) -> Iterator[Done]:
    """Run jobs one after the other; `advance` is told the rows of each."""
    for job in jobs:
        yield run(mill, job)
        advance(len(job.rows))


_held: tuple[bytes, Mill] | None = None  # the book that this process has read last


def _run(book: bytes, jobs: Sequence[Job]) -> list[Done]:
    global _held
    if _held is None or _held[0] != book:
        _held = book, pickle.loads(book)
    mill = _held[1]
    return [run(mill, job) for job in jobs]


def _ready() -> None:
    """Nothing: a process that has done it has loaded all that a job needs."""


PACKET = 8192  # rows that are handed to a process together


def _packets(jobs: Iterable[Job]) -> Iterator[list[Job]]:
    """Jobs that are handed to a process together."""
    packet: list[Job] = []
    for job in jobs:
        packet.append(job)
        if sum(len(job.rows) for job in packet) >= PACKET:
            yield packet
            packet = []
    if packet:
        yield packet


class Cores:
    """Processes that run jobs; they start at once, and may be ready before the jobs are.

    Parameters
    ----------
    cores : int
        How many.
    """

    def __init__(self, cores: int) -> None:
        spawn = multiprocessing.get_context("spawn")  # the same on every system, and safe beside threads
        self._pool = ProcessPoolExecutor(cores, spawn)
        for _ in range(cores):
            self._pool.submit(_ready)

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *stopped: object) -> None:
        """End the processes; what has not begun is not begun."""
        self._pool.shutdown(wait=True, cancel_futures=True)

    def run(self, mill: Mill, jobs: Iterable[Job], advance: Advance) -> Iterator[Done]:
        """Run jobs, the first while others are still made; the order in which they are done is not theirs.

        Raises
        ------
        InputError
            A process was ended from outside, as where the memory is full.
        """
        book = pickle.dumps(mill)
        try:
            begun = [self._pool.submit(_run, book, packet) for packet in _packets(jobs)]
            for future in as_completed(begun):
                for done in future.result():
                    yield done
                    advance(len(done.rows))
        except BrokenProcessPool as error:
            raise InputError(
                "--cores", "a process was ended from outside; accepted is fewer cores"
            ) from error
