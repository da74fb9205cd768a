"""Thousands of quotes from a table: a row of codes and numbers in, the same row with its cost and price out.

A pure map from table to table: rows know nothing of each other, so a table may be cut anywhere, and each part
run on its own.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import fields, replace
from typing import TYPE_CHECKING, Any, NamedTuple

import numpy

from costing.cost.quote import GROUPS, basis_of
from costing.many.bulk_columns import CODES, WORDS, Numbers, Texts, columns_of
from costing.many.bulk_jobs import RESULTS, Done, Job, Rows, parts, run_here
from costing.many.lanes import Floats
from costing.many.quotes import COST, PRICE
from costing.many.target import Names, names_of, place_among, place_if_any
from costing.quantities import (
    QUANTITIES,
    InputError,
    folded,
    listed,
    meant,
)
from costing.quantities.checking import check_choice
from costing.report.table import costs_of
from costing.settings.drain import Drain
from costing.settings.inputs import ENQUIRY, MATERIAL, STYLE, Place, inputs_of
from costing.settings.material import YARN_ROLES, Material
from costing.settings.mill import Enquiry, Mill
from costing.settings.variants import variant

if TYPE_CHECKING:
    import pandas

BASIS, REFUSED = "basis", "refused"
FEW = 512  # rows of one style: of fewer, styles run together, for a run of the ledger costs as much
# Of a style or an enquiry: no number depends on these, or they are looked at apart.
NO_MATTER = ("code", "description", "order_unit", "style", "warp_yarn", "weft_yarn")

Runner = Callable[[Mill, Iterable[Job]], Iterable[Done]]


class Shape(NamedTuple):
    """What enquiries share that take the same way through the ledger."""

    enquiry: Enquiry
    names: Names
    places: list[Place | bool | None]  # None: of what is not used; False: this enquiry has no such number

    def why(self, column: Numbers) -> InputError:
        """Why it has no number of that name."""
        try:
            place_among(self.names, self.enquiry.code, column.text)
        except InputError as error:
            return error.at(lambda _: f"column {column.heading!r}")
        raise AssertionError(column.heading)


def bulk_quotes(mill: Mill, table: pandas.DataFrame, like: str = "", runner: Runner | None = None) -> Any:
    """Quote every row of a table.

    Parameters
    ----------
    mill : Mill
        The mill's book, with costs.
    table : DataFrame
        A column ``enquiry``, or ``style``, ``recipe``, ``range`` for the order of an enquiry with others; the
        words of an enquiry, as ``bath at start``; and numbers, each headed by its name and unit, as
        ``order length [m]`` or ``indigo dyeing: pick up [L/kg]``. An empty cell is as in the book.
    like : str, optional
        Enquiry that gives all that a row does not name, where the table has no column ``enquiry``.
    runner : callable, optional
        Runs the jobs; one after the other where it is left out.

    Returns
    -------
    DataFrame
        The same rows in the same order, with basis, cost, price, cost by group, and why a row is refused; a
        refused row has no numbers. Money on the basis of the row's enquiry.

    Raises
    ------
    InputError
        A column that is not known, stands there twice, has another unit or holds text for a number.
    """
    headings = [str(heading).strip() for heading in table.columns]
    words, numbers = columns_of(table, headings)
    size = len(table)
    enquiries, which, refused = _asked(mill, words, like, size)
    for row in numpy.flatnonzero(table.isna().all(axis=1).to_numpy()).tolist():
        refused[row] = "the row is empty"
    for column in numbers:
        for row, error in column.refused.items():
            refused.setdefault(row, str(error))
    jobs = parts(_jobs(mill, enquiries, which, numbers, refused))
    values = numpy.full((len(RESULTS), size), numpy.nan)
    for done in runner(mill, jobs) if runner else run_here(mill, jobs, lambda _: None):
        values[:, done.rows] = done.values
        refused.update(done.refused)
    return _told(mill, table, enquiries, which, values, refused)


def result_headings(mill: Mill) -> list[str]:
    """Headings of the columns that a table gets, beside its own."""
    unit = f"[{costs_of(mill).currency}/m]"
    groups = [f"{COST}: {group} {unit}" for group in GROUPS]
    return [BASIS, f"{COST} {unit}", f"{PRICE} {unit}", *groups, REFUSED]


def _told(
    mill: Mill,
    table: pandas.DataFrame,
    enquiries: Sequence[Enquiry],
    which: Rows,
    values: Floats,
    refused: dict[int, str],
) -> pandas.DataFrame:
    import pandas

    bases = numpy.array([*(basis_of(enquiry) for enquiry in enquiries), ""], dtype=object)
    why = numpy.full(len(table), "", dtype=object)
    for row, text in refused.items():
        why[row] = text
    new = dict(zip(result_headings(mill), [bases[which], *values, why]))
    added = pandas.DataFrame(new, index=table.index).astype({BASIS: "str", REFUSED: "str"})
    return pandas.concat([table, added], axis=1)


def _asked(
    mill: Mill, words: dict[str, Texts], like: str, size: int
) -> tuple[list[Enquiry], Rows, dict[int, str]]:
    """The enquiries that rows ask for, each once; for each row which of them, or -1 and why not."""
    kind_of, first = _kinds([column.numbers for column in words.values()], size)
    enquiries: list[Enquiry] = []
    number_of = numpy.full(len(first), -1)
    refused: dict[int, str] = {}
    for kind, row in enumerate(first.tolist()):
        texts = {name: column.known[column.numbers[row]] for name, column in words.items()}
        try:
            enquiries.append(_enquiry(mill, texts, like))
            number_of[kind] = len(enquiries) - 1
        except InputError as error:
            refused.update(dict.fromkeys(numpy.flatnonzero(kind_of == kind).tolist(), str(error)))
    return enquiries, number_of[kind_of], refused


def _kinds(columns: Iterable[Any], size: int) -> tuple[Rows, Rows]:
    """Rows that are alike in all columns: the kind of each row, and the first row of each kind.

    One column after the other makes finer kinds; sorting whole numbers is ten times faster than sorting rows.
    """
    kind_of = numpy.zeros(size, dtype=int)
    first = kind_of[:1]
    for column in columns:
        own = numpy.unique(column, return_inverse=True)[1]
        _, first, kind_of = numpy.unique(
            kind_of * (own.max(initial=0) + 1) + own, return_index=True, return_inverse=True
        )
    return kind_of, first


def _enquiry(mill: Mill, texts: dict[str, str], like: str) -> Enquiry:
    """What the codes and words of a row ask for."""
    code = texts.get(CODES[0], "") or like
    if not code:
        raise InputError(
            "enquiry",
            f"is empty; accepted is a code of the book, which gives the lot: {listed(mill.enquiries)}",
        )
    model = mill.enquiry(code, "enquiry")
    style = mill.style(texts.get("style", "") or model.style, "style").code
    recipe = mill.recipe(texts.get("recipe", "") or model.recipe, "recipe").code
    range_ = mill.range(texts.get("range", "") or model.range, "range").code
    asked = model
    if (style, recipe, range_) != (model.style, model.recipe, model.range):
        about = f"as {model.code}: {style}, {recipe}, {range_}"
        # A code of its own: the plan of the drain says where the model runs, not this one.
        asked = variant(mill, model, about, about, style, recipe, range_)
    given: dict[str, Any] = {name: check_choice(name, texts[name]) for name in WORDS if texts.get(name)}
    return replace(asked, **given) if given else asked


def _jobs(
    mill: Mill,
    enquiries: Sequence[Enquiry],
    which: Rows,
    numbers: Sequence[Numbers],
    refused: dict[int, str],
) -> Iterator[Job]:
    """Put rows together that take the same way through the ledger; what cannot run is told in `refused`."""
    shapes: dict[Any, Shape] = {}
    bases: list[dict[Place, float]] = []
    keys: list[Any] = []
    apart = any(_of_yarn(mill, column) for column in numbers)
    counted = numpy.bincount(which[which >= 0], minlength=len(enquiries))
    for number, enquiry in enumerate(enquiries):
        key = _shape(mill, enquiry, apart)
        try:
            bases.append(inputs_of(mill, enquiry))
            if key not in shapes:
                names = names_of(bases[-1])
                shapes[key] = Shape(enquiry, names, [_place(mill, names, column) for column in numbers])
            keys.append((key, -1 if counted[number] < FEW else number))
        except InputError as error:
            if len(bases) == number:
                bases.append({})
            keys.append(None)
            refused.update({row: str(error) for row in numpy.flatnonzero(which == number).tolist()})
    _check_places(shapes.values(), numbers)
    together: dict[Any, int] = {}
    group_of = numpy.array([-1 if key is None else together.setdefault(key, len(together)) for key in keys])
    groups = numpy.where(which >= 0, group_of[which], -1) if len(enquiries) else which
    groups[list(refused)] = -1
    order = numpy.argsort(groups, kind="stable")
    ends = numpy.searchsorted(groups[order], numpy.arange(len(together) + 1))
    for (key, _), group in together.items():
        rows = order[ends[group] : ends[group + 1]]
        shape = shapes[key]
        for column, place in zip(numbers, shape.places):
            if place is False and (filled := ~numpy.isnan(column.house[rows])).any():
                refused.update(dict.fromkeys(rows[filled].tolist(), str(shape.why(column))))
                rows = rows[~filled]
        if len(rows):
            yield from _split(mill, rows, enquiries, which, bases, numbers, shape)


def _split(
    mill: Mill,
    rows: Rows,
    enquiries: Sequence[Enquiry],
    which: Rows,
    bases: Sequence[dict[Place, float]],
    numbers: Sequence[Numbers],
    shape: Shape,
) -> Iterator[Job]:
    """Jobs of rows of one shape: whole numbers, as of boxes and dips, are the same throughout a job."""
    used, lanes = numpy.unique(which[rows], return_inverse=True)
    asked = tuple(enquiries[number] for number in used)
    given: dict[Place, Floats] = {}
    if len(used) > 1:
        for place in bases[used[0]]:
            if place.kind in (STYLE, ENQUIRY):
                own = numpy.array([bases[number][place] for number in used])
                if (own != own[0]).any():
                    given[place] = own[lanes]
        given.update(
            {
                place: own[lanes]
                for place, own in _yarns(mill, asked, [bases[number] for number in used]).items()
            }
        )
    whole: list[Floats] = []
    for column, place in zip(numbers, shape.places):
        typed = column.house[rows]
        empty = numpy.isnan(typed)
        if not isinstance(place, Place) or empty.all():
            continue
        if empty.any():
            own = numpy.array([bases[number][place] for number in used])
            typed = numpy.where(empty, own[lanes], typed)
        given[place] = typed
        if column.item.whole:
            whole.append(typed)
    parted, first = _kinds(whole, len(rows))
    for part in range(len(first)):
        mine = numpy.flatnonzero(parted == part) if len(first) > 1 else slice(None)
        yield Job(rows[mine], asked, lanes[mine], {place: values[mine] for place, values in given.items()})


def _shape(mill: Mill, enquiry: Enquiry, yarns_apart: bool) -> Any:
    """What two enquiries must share to run as lanes of one run: all that is no number, and whole numbers.

    Yarns are a price and a currency; only where a column names one of them, their codes are kept apart.
    """
    drain = mill._drain
    charged = isinstance(drain, Drain) and any(
        row.enquiry == enquiry.code and row.point in drain.charges for row in drain.production
    )
    own = enquiry.code if charged else ""  # what it pays for its water is not what others pay
    style = mill.style(enquiry.style)
    yarns = (style.warp_yarn, style.weft_yarn)
    parted: list[Any] = [own, yarns[0] == yarns[1]]
    for code in yarns:
        yarn = mill.materials.get(code)
        free = yarn is not None and yarn.price is not None and not yarns_apart
        parted.append(yarn.currency if yarn is not None and free else (code,))
    for item in (enquiry, style):
        for field in fields(item):
            value = getattr(item, field.name)
            free = field.name in QUANTITIES and not QUANTITIES[field.name].whole and value is not None
            if not (free or field.name in NO_MATTER):
                parted.append(value)
    return tuple(parted)


def _of_yarn(mill: Mill, column: Numbers) -> bool:
    """Whether a column may be of a yarn."""
    if column.item.name not in (field.name for field in fields(Material)):
        return False
    code, colon, _ = column.text.rpartition(": ")
    known = meant(code, mill.materials) if colon else None
    return known is None or mill.materials[known].role in YARN_ROLES


def _yarns(mill: Mill, asked: Sequence[Enquiry], bases: Sequence[dict[Place, float]]) -> dict[Place, Floats]:
    """Numbers of the yarns where enquiries differ in them, told as numbers of the yarns of the first."""
    found: dict[Place, Floats] = {}
    for name in ("warp_yarn", "weft_yarn"):
        codes = [getattr(mill.style(enquiry.style), name) for enquiry in asked]
        if len(set(codes)) > 1:
            for place in [place for place in bases[0] if place.kind == MATERIAL and place.code == codes[0]]:
                found[place] = numpy.array(
                    [own[place._replace(code=code)] for own, code in zip(bases, codes)]
                )
    return found


def _place(mill: Mill, names: Names, column: Numbers) -> Place | bool | None:
    """Where a column stands in an enquiry; None where it is of a product or a currency that is not used."""
    if place := place_if_any(names, column.text):
        return place
    code, colon, _ = column.text.rpartition(": ")
    known = (folded(name) for name in (*mill.materials, *costs_of(mill).exchange_rates))
    return None if colon and folded(code) in known else False


def _check_places(shapes: Iterable[Shape], numbers: Sequence[Numbers]) -> None:
    """Refuse a column that no enquiry has, and two columns that are one number."""
    every = list(shapes)
    for number, column in enumerate(numbers):
        if every and all(shape.places[number] is False for shape in every):
            raise every[0].why(column)
    for shape in every:
        taken: dict[Place, str] = {}
        for column, place in zip(numbers, shape.places):
            if isinstance(place, Place) and taken.setdefault(place, column.heading) != column.heading:
                raise InputError(
                    f"column {column.heading!r}",
                    f"stands beside {taken[place]!r}, which is the same number; accepted is one",
                )
