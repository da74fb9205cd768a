from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

import pytest
from openpyxl import Workbook, load_workbook

from costing.report import Result
from costing.settings.mill import Mill
from tests.workbook_results.written import write


class Written(NamedTuple):
    path: Path
    mill: Mill
    results: list[Result]


@pytest.fixture(scope="session")
def written(tmp_path_factory: pytest.TempPathFactory) -> Written:
    return Written(*write(tmp_path_factory.mktemp("results")))


@pytest.fixture(scope="session")
def book(written: Written) -> Workbook:
    """The written file as openpyxl reads it."""
    return load_workbook(written.path)
