"""Which estimate answers a parameter of a permit, and what is missing where none does."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from costing.quantities import InputError, folded
from costing.reference_data.table_files import folder, rows

NAME = "permit_parameters.csv"
COLUMNS = ("name", "also", "kind", "estimate", "form", "missing")

LOAD, SUPPLIER, NONE = "load", "supplier", "none"
ACIDITY, TEMPERATURE, CONDUCTIVITY = "acidity", "temperature", "conductivity"
FLOW, VOLUME, COLOUR = "flow", "volume", "colour"
VALUES = (ACIDITY, TEMPERATURE, CONDUCTIVITY, FLOW, VOLUME, COLOUR)
KINDS = (LOAD, SUPPLIER, NONE, *VALUES)


class PermitParameter(NamedTuple):
    """A parameter as permits name it.

    Attributes
    ----------
    name : str
        As the list of the book offers it.
    also : tuple of str
        Other names of it.
    kind : str
        ``load``: worked out from recipe and range; ``supplier``: from what suppliers say; ``none``: nothing
        here tells it; else a value that is no load.
    estimate : str
        Parameter of the drain, of a load.
    form : str
        As what the estimate is counted.
    missing : str
        What is missing where there is no estimate.
    """

    name: str
    also: tuple[str, ...]
    kind: str
    estimate: str
    form: str
    missing: str


def read_permit_parameters(place: Path) -> Mapping[str, PermitParameter]:
    """Read the table of a folder: folded name, and every other name -> parameter.

    Raises
    ------
    InputError
        At the first row that is refused, naming file and row.
    """
    found: dict[str, PermitParameter] = {}
    for row in rows(NAME, COLUMNS, place):
        cells = row.cells
        also = tuple(filter(None, (name.strip() for name in cells["also"].split(";"))))
        kind = row.one_of("kind", KINDS)
        if (kind == LOAD) != bool(cells["estimate"]):
            raise InputError(
                row.where, "estimate is filled or empty; accepted is a parameter for a load only"
            )
        item = PermitParameter(
            row.text("name"), also, kind, cells["estimate"], cells["form"], cells["missing"]
        )
        for name in (item.name, *also):
            if folded(name) in found:
                raise InputError(row.where, f"the name {name!r} stands twice; accepted is a name of its own")
            found[folded(name)] = item
    return MappingProxyType(found)


@lru_cache
def _known() -> Mapping[str, PermitParameter]:
    return read_permit_parameters(folder())


@lru_cache
def permit_parameters() -> tuple[PermitParameter, ...]:
    """All parameters, each once.

    Examples
    --------
    >>> permit_parameters()[0].estimate
    'COD, both'
    """
    return tuple(dict.fromkeys(_known().values()))


def permit_parameter(name: str) -> PermitParameter | None:
    """The parameter of a name; None where it is not known. Case and blanks do not count.

    Examples
    --------
    >>> permit_parameter("Suspended solids").name, permit_parameter("vanadium")
    ('TSS', None)
    """
    return _known().get(folded(name))
