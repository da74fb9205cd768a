"""Write the VBA module of the formulas: ``python -m costing.front_ends.excel.build [FILE.bas]``.

Without a name it writes the committed one in ``workbook_template/`` anew.
"""

from __future__ import annotations

import sys
from pathlib import Path

from costing.formulas.registry import cell_functions
from costing.front_ends.excel.vba import module_text
from costing.front_ends.whole_file import write_whole
from costing.quantities import InputError
from costing.reference_data import folder

SUFFIX = ".bas"
MODULE_FILE = f"excel_functions{SUFFIX}"


def module_bytes() -> bytes:
    """The content of the file, the same bytes for the same formulas."""
    return module_text(cell_functions().values()).encode("ascii")


def build_module(path: Path, *, overwrite: bool = False) -> None:
    """Write the module to a new file, whole or not at all.

    Parameters
    ----------
    path : Path
        Where to; the name ends in .bas and the folder must be there.
    overwrite : bool, optional
        True to replace a file of that name.

    Raises
    ------
    InputError
        Another name, a file that is there already, a folder that is not, or one that cannot be written.
        Then nothing of it stays behind, and a file that was there is as it was.
    """
    write_whole(module_bytes, path, what="a VBA module", suffixes=(SUFFIX,), overwrite=overwrite)


def main(arguments: list[str]) -> int:
    """Write the named file, or the committed one; 0 when it was written."""
    if len(arguments) > 1:
        print("accepted is the name of one new file", file=sys.stderr)
        return 2
    try:
        if arguments:
            build_module(Path(arguments[0]))
        else:
            build_module(folder().parent / "workbook_template" / MODULE_FILE, overwrite=True)
    except InputError as error:
        print(error, file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
