"""Build the extension: one file with the interface, the package and its tables, whole or not at all."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import costing
from costing.formulas.registry import cell_functions
from costing.front_ends.libreoffice import parts
from costing.front_ends.libreoffice.interface import interface_text, wizard_text
from costing.front_ends.whole_file import write_whole
from costing.reference_data import folder

SUFFIX = ".oxt"
DATE = (2025, 1, 6, 0, 0, 0)  # fixed, so that the same content gives the same file
ROOMS = (
    "quantities",
    "reference_data",
    "construction",
    "settings",
    "process",
    "ledger",
    "effluent",
    "cost",
    "purchasing",
    "book",
    "report",
    "formulas",
)
FRONT_END = (
    "front_ends/__init__.py",
    "front_ends/libreoffice/__init__.py",
    "front_ends/libreoffice/adapter.py",
)
# Needs a younger Python than a spreadsheet program may bring; no formula reads it.
LEFT_OUT = ("reference_data/source_list.py",)
PACKED = "pythonpath/costing"
TABLES = (".csv", ".toml")


def build_extension(path: Path, *, overwrite: bool = False) -> None:
    """Write the extension to a new file.

    Parameters
    ----------
    path : Path
        Where to; the name ends in .oxt and the folder must be there.
    overwrite : bool, optional
        True to replace a file of that name.

    Raises
    ------
    InputError
        Another name, a file that is there already, a folder that is not, or one that cannot be written.
        Then nothing of it stays behind, and a file that was there is as it was.
    """
    write_whole(extension_bytes, path, what="an extension", suffixes=(SUFFIX,), overwrite=overwrite)


def extension_bytes() -> bytes:
    """The content of the file, the same bytes for the same package."""
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as target:
        for name, content in extension_parts().items():
            entry = zipfile.ZipInfo(name, DATE)
            entry.compress_type = zipfile.ZIP_DEFLATED
            entry.external_attr = 0o644 << 16
            target.writestr(entry, content)
    return packed.getvalue()


def extension_parts() -> dict[str, bytes]:
    """Name -> content of every file inside the extension."""
    functions = list(cell_functions().values())
    description = parts.DESCRIPTION.format(
        identifier=parts.IDENTIFIER, version=costing.__version__, libreoffice=parts.OLDEST_LIBREOFFICE
    )
    texts = {
        "META-INF/manifest.xml": parts.MANIFEST,
        "description.xml": description,
        "description.txt": parts.ABOUT,
        "functions.idl": interface_text(functions),
        "addin.components": parts.COMPONENTS,
        "CalcAddIns.xcu": wizard_text(functions),
        "Jobs.xcu": parts.JOBS,
        "addin.py": parts.ADDIN,
    }
    return {**{name: text.encode() for name, text in texts.items()}, **package_parts()}


def package_parts() -> dict[str, bytes]:
    """The pure part of the package and its tables, as the extension carries them."""
    package = Path(costing.__file__).parent
    modules = [package / "__init__.py", *(package / name for name in FRONT_END)]
    for room in ROOMS:
        modules += sorted((package / room).rglob("*.py"))
    found = {
        f"{PACKED}/{name}": path.read_bytes()
        for path in modules
        if (name := path.relative_to(package).as_posix()) not in LEFT_OUT
    }
    tables = sorted(path for path in folder().iterdir() if path.suffix in TABLES)
    return {**found, **{f"{PACKED}/reference_tables/{path.name}": path.read_bytes() for path in tables}}
