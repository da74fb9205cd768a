"""The sheet files of ``workbook_template/``: where they are, and what they say."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

import tomllib

import costing
from costing.quantities import InputError


def template_folder() -> Path:
    """The folder of the sheet files: inside the installed package, or beside it in a clone.

    Raises
    ------
    InputError
        When neither is there.
    """
    package = Path(costing.__file__).resolve().parent
    for place in (package / "workbook_template", package.parent / "workbook_template"):
        if (place / "words.toml").is_file():
            return place
    raise InputError(
        "workbook_template", f"the folder is missing; it belongs in {package}: install the package again"
    )


@lru_cache(maxsize=32)
def sheet_file(name: str) -> Mapping[str, Any]:
    """A sheet's file, by its name without the ending."""
    with (template_folder() / f"{name}.toml").open("rb") as stream:
        return tomllib.load(stream)
