"""The LibreOffice of the other tests, for the live sheets too, and a demo book that is open in it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.libreoffice.conftest import bundled, installed
from tests.libreoffice.office import Office
from tests.live.open_books import Live, opened

__all__ = ["bundled", "installed", "live"]


@pytest.fixture
def live(bundled: Office) -> Iterator[Live]:
    found = opened(bundled, bundled.folder)
    yield found
    found.close()
