"""Which of our extensions a LibreOffice has, read from its files: nothing is started and nothing changed."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple
from urllib.parse import unquote
from xml.etree import ElementTree

from costing.front_ends.libreoffice.build import extension_parts
from costing.front_ends.libreoffice.parts import IDENTIFIER

FOR_THIS_USER, FOR_ALL_USERS, BUNDLED = "for this user", "for all users", "in its folder of extensions"
REGISTERED = Path("registry", "com.sun.star.comp.deployment.bundle.PackageRegistryBackend", "backenddb.xml")
EXPANDED = "uno_packages"
DESCRIPTION = "description.xml"


class Installed(NamedTuple):
    """An extension of ours that LibreOffice has.

    Attributes
    ----------
    where : str
        For whom it is installed.
    version : str
        As it says itself.
    folder : Path
        Its files.
    is_on : bool
        False when it is switched off in the list of extensions.
    """

    where: str
    version: str
    folder: Path
    is_on: bool

    def is_of_this_build(self) -> bool:
        """Whether its files are those that this program would write."""
        return all(
            (self.folder / name).is_file() and (self.folder / name).read_bytes() == content
            for name, content in extension_parts().items()
        )


def profile() -> Path:
    """The folder in which LibreOffice keeps what belongs to this user."""
    if sys.platform == "win32":
        base = Path(os.environ.get("APPDATA", Path.home() / "AppData" / "Roaming")) / "LibreOffice"
    elif sys.platform == "darwin":
        base = Path.home() / "Library" / "Application Support" / "LibreOffice"
    else:
        base = Path(os.environ.get("XDG_CONFIG_HOME") or Path.home() / ".config") / "libreoffice"
    return base / "4" / "user"


def installed(program: Path, user: Path) -> list[Installed]:
    """Our extensions, with whom they are installed for.

    Parameters
    ----------
    program : Path
        LibreOffice's folder of program files.
    user : Path
        Its folder of what belongs to the user.

    Raises
    ------
    OSError
        A file may not be read.
    """
    shares = [place for place in (program.parent / "share", program.parent / "Resources") if place.is_dir()]
    found = [(FOR_THIS_USER, folder, is_on) for folder, is_on in _registered(user / "uno_packages" / "cache")]
    for share in shares:
        found += [
            (FOR_ALL_USERS, folder, True) for folder in (share / EXPANDED / "cache").glob(f"{EXPANDED}/*/*")
        ]
        found += [(BUNDLED, folder, True) for folder in (share / "extensions").glob("*")]
    return [
        Installed(where, version, folder, is_on)
        for where, folder, is_on in found
        if (version := _version_of_ours(folder)) is not None
    ]


def _registered(cache: Path) -> Iterator[tuple[Path, bool]]:
    """Folder of each extension of a user, and whether it is on."""
    # Not by the folders that there are: an extension that was removed leaves its own behind for a while.
    register = cache / REGISTERED
    if not register.is_file():
        return
    for entry in ElementTree.fromstring(register.read_bytes()).iterfind("{*}extension"):
        inside = unquote(entry.get("url", "")).rpartition(f"/{EXPANDED}/")[2]
        yield cache / EXPANDED / inside, entry.get("revoked") != "true"


def _version_of_ours(folder: Path) -> str | None:
    """The version of an extension, or None where it is not ours."""
    description = folder / DESCRIPTION
    if not description.is_file():
        return None
    said = ElementTree.fromstring(description.read_bytes())
    values = {element.tag.rpartition("}")[2]: element.get("value", "") for element in said}
    return values.get("version", "") if values.get("identifier") == IDENTIFIER else None
