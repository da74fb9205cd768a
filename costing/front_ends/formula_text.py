"""Text that a spreadsheet program would take for a formula, and how it stays text in CSV."""

from __future__ import annotations

from typing import Any

# The last four are the wide forms of East Asian text, which some programs take for the plain ones.
FORMULA_SIGNS = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")
MARK = "'"


def harmless(cell: Any) -> Any:
    """A cell of CSV that no program takes for a formula; a mark that stands there already is told apart.

    Examples
    --------
    >>> harmless("=1+1"), harmless("plain"), harmless(-1.5), harmless("'quoted")
    ("'=1+1", 'plain', -1.5, "''quoted")
    """
    return f"{MARK}{cell}" if isinstance(cell, str) and cell.startswith((*FORMULA_SIGNS, MARK)) else cell
