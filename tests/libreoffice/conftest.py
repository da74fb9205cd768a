"""One LibreOffice for each way of installing, started once for all tests."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.libreoffice.office import Office, is_there


def running(install: str) -> Iterator[Office]:
    if not is_there():
        pytest.skip("LibreOffice with its Python bridge is not installed")
    office = Office(install)
    try:
        yield office
    finally:
        code = office.end()
    assert code == 0, office.log


@pytest.fixture(scope="session")
def bundled() -> Iterator[Office]:
    """The extension unpacked in a folder of extensions, which root may do too."""
    yield from running("bundled")


@pytest.fixture(scope="session")
def installed() -> Iterator[Office]:
    """The extension installed by an ordinary user with LibreOffice's own tool."""
    yield from running("unopkg")


@pytest.fixture(params=["bundled", "installed"])
def either(request: pytest.FixtureRequest) -> Office:
    office: Office = request.getfixturevalue(request.param)
    return office
