"""The list of sources in full; needs Python 3.11, so the road into a cell stays away from it."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from costing.quantities import InputError
from costing.reference_data.table_files import SOURCES, folder

NO_SOURCE = "no source"
KINDS = (
    NO_SOURCE,
    "standard",
    "regulation",
    "handbook",
    "report",
    "paper",
    "paper abstract",
    "thesis abstract",
    "patent",
    "encyclopedia",
    "data library",
    "data sheet",
    "exam paper",
    "course page",
    "trade page",
)


class Source(NamedTuple):
    """One source.

    Attributes
    ----------
    key : str
        What tables and docstrings cite.
    title, authors, year : str
        As printed; "" where the source says none.
    kind : str
        One of `KINDS`.
    where : str
        The public document or page, and whether it is a copy, an abstract or an excerpt.
    opened : bool
        True when the text that `where` names was read.
    """

    key: str
    title: str
    authors: str
    year: str
    kind: str
    where: str
    opened: bool

    @property
    def is_publication(self) -> bool:
        """False for the keys that say that there is no source."""
        return self.kind != NO_SOURCE


def read_sources(place: Path) -> Mapping[str, Source]:
    """Read the sources of a folder.

    Parameters
    ----------
    place : Path
        Folder of the tables.

    Raises
    ------
    InputError
        A file that cannot be read, an entry with other fields, or an unknown kind.
    """
    import tomllib  # Python 3.11

    found: dict[str, Source] = {}
    try:
        entries = tomllib.loads((place / SOURCES).read_text(encoding="utf-8"))
    except (OSError, ValueError) as error:
        raise InputError(SOURCES, f"cannot be read: {error}") from None
    wanted = set(Source._fields) - {"key"}
    for key, entry in entries.items():
        where = f"{SOURCES} [{key}]"
        if not isinstance(entry, dict) or set(entry) != wanted:
            raise InputError(where, f"fields differ; accepted are: {', '.join(Source._fields[1:])}")
        texts = all(isinstance(entry[name], str) for name in wanted - {"opened"})
        if not texts or not isinstance(entry["opened"], bool):
            raise InputError(where, "accepted are texts, and true or false for opened")
        if entry["kind"] not in KINDS:
            raise InputError(where, f"kind is {entry['kind']!r}; accepted is one of: {', '.join(KINDS)}")
        found[key] = Source(key=key, **entry)
    return MappingProxyType(found)


@lru_cache
def sources() -> Mapping[str, Source]:
    """All sources by key.

    Examples
    --------
    >>> sources()["common-practice"].title
    'common practice, no source'
    """
    return read_sources(folder())
