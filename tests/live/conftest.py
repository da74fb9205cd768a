"""The LibreOffice of the other tests, for the live sheets too."""

from tests.libreoffice.conftest import bundled, installed

__all__ = ["bundled", "installed"]
