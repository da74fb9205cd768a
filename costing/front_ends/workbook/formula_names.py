"""Give our formulas their plain names again, in a workbook that other programs have saved.

A formula is called by one plain name, as ``WARP_MOLAR_MASS``. A program that saves a workbook may write
another one: LibreOffice before version 25 puts the name of the extension in front; LibreOffice without the
extension writes small letters; Excel writes the place of an add-in, or a mark of its own. In the other
program each of these is an unknown name.
"""

from __future__ import annotations

import contextlib
import functools
import io
import re
import zipfile
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import NamedTuple
from xml.sax.saxutils import escape

from costing.formulas.formula import PREFIX
from costing.formulas.registry import cell_functions
from costing.front_ends.whole_file import write_whole
from costing.front_ends.workbook.open_file import refuse_open_elsewhere, workbook_content
from costing.front_ends.workbook.xml_parts import EXTENDED, WORKBOOK, sheet_parts, spliced, tokens, with_parts
from costing.quantities import InputError

SUFFIXES = (".xlsx", ".xlsm")
OPEN_DOCUMENT = (".ods", ".ots", ".fods")
IMPLEMENTATION = PREFIX.rstrip("_")  # what LibreOffice writes in front, behind a name space or alone

ROOTS = {"workbook", "worksheet", "table"}
FORMULAS = {
    "f",
    "definedName",
    "formula",
    "formula1",
    "formula2",
    "calculatedColumnFormula",
    "totalsRowFormula",
    f"{EXTENDED} f",
}

# An add-in's path and "!"; LibreOffice 7.4 leaves a space in place of the "!".
_ADD_IN = r"""
    '(?:[^']|'')*'! | '(?:[^']|'')*\.xl\w\w?'[ ]
  | \[[^\[\]']*\]!  | \[\d+\][ ]
  | (?:[A-Za-z]:\\)?[\w.\\]+! | (?:[A-Za-z]:\\)?[\w.\\]+\.xl\w\w?[ ]
"""
_TOKEN = re.compile(
    rf"""
    "(?:[^"]|"")*"                                         # a text
  | (?P<add_in>{_ADD_IN})?(?P<name>[\w.]+)(?=\s*\()        # a call
  | '(?:[^']|'')*'                                         # the name of a sheet
  | \[(?:[^\[\]']|'.|\[(?:[^\[\]']|'.)*\])*\]              # a column of a table
  | [\w.\\?]+
    """,
    re.VERBOSE,
)
_ENCODING = re.compile(rb"<\?xml[^>]*\sencoding\s*=\s*[\"']([\w.-]+)")
_BYTE_ORDERS = {b"\xff\xfe": "utf-16-le", b"\xfe\xff": "utf-16-be"}
_PROGRAM_MARK = re.compile(r"(?:_XL(?:L|UDF|FN|WS)\.)*")
_WEB_MARK = "_XLDUDF_"


class Repair(NamedTuple):
    """What a repair has done.

    Attributes
    ----------
    changed : mapping
        Sheet, or part of the file that is no sheet -> number of formulas that were given plain names.
    written : Path or None
        The repaired file; None where there was nothing to change and no file was asked for.
    kept : Path or None
        Where the file as it was is kept, when it was repaired in its place.
    """

    changed: Mapping[str, int]
    written: Path | None
    kept: Path | None = None


def repair_names(path: Path, target: Path | None = None, *, in_place: bool = False) -> Repair:
    """Write a copy of a workbook in which every formula of ours has its plain name.

    Only formulas are touched: of cells, defined names, tables, conditional formats and validations; there
    only names of our functions, never a text. A formula that sets the ends of a colour scale or a data bar
    is left out.

    Parameters
    ----------
    path : Path
        The workbook, .xlsx or .xlsm; saved and closed.
    target : Path, optional
        Name of the new file; when left out, that of the workbook with ``_plain`` behind it, and it is
        written only when there is something to change.
    in_place : bool, optional
        True to put the repaired file in the place of the workbook, which is kept beside it under its name
        with ``_before`` behind it.

    Raises
    ------
    InputError
        It is no workbook or open in a program; the new file is there already or cannot be written. Then all
        is as it was.
    """
    suffix = path.suffix.lower()
    if suffix in OPEN_DOCUMENT:
        raise InputError(
            path.name, "is an OpenDocument file, where LibreOffice reads its own names, and needs no repair"
        )
    if suffix not in SUFFIXES:
        raise InputError(
            path.name, f"is no workbook; accepted is a file that ends in {' or '.join(SUFFIXES)}"
        )
    if in_place and target is not None:
        raise InputError(str(target), "goes with a new file; accepted is a new file or the place of the old")
    content = workbook_content(path)
    repaired, changed = with_plain_names(content, path.name)
    if target is None and not changed:
        return Repair(changed, None)
    if in_place:
        return Repair(changed, path, _put_in_place(path, content, repaired))
    new = target or path.with_name(f"{path.stem}_plain{path.suffix}")
    write_whole(lambda: repaired, new, what="a workbook", suffixes=(suffix,))
    return Repair(changed, new)


def _put_in_place(path: Path, content: bytes, repaired: bytes) -> Path:
    """Replace a file and give the name under which it is kept as it was."""
    place = path.resolve()  # behind a link
    kept = _free_name(place)
    write_whole(lambda: content, kept, what="a workbook", suffixes=SUFFIXES)
    try:
        kept.chmod(place.stat().st_mode)
        refuse_open_elsewhere(place)
        if place.read_bytes() != content:
            raise InputError(path.name, "was saved by somebody else meanwhile; nothing was changed")
        write_whole(lambda: repaired, place, what="a workbook", suffixes=SUFFIXES, overwrite=True)
    except BaseException:
        with contextlib.suppress(OSError):
            kept.unlink()
        raise
    return kept


def with_plain_names(content: bytes, where: str) -> tuple[bytes, dict[str, int]]:
    """The bytes of a workbook with plain names, and how many formulas of each sheet or part changed.

    Raises
    ------
    InputError
        A part is damaged.
    """
    changed: dict[str, bytes] = {}
    counts: dict[str, int] = {}
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as book:
            titles = {part: title for title, part in sheet_parts(book).items()}
            titles[WORKBOOK] = "defined names"
            for entry in book.infolist():
                part = book.read(entry)
                changes = _changes(part) if entry.filename.endswith(".xml") and _may_hold(part) else []
                if changes:
                    changed[entry.filename] = spliced(part, changes)
                    counts[titles.get(entry.filename, entry.filename)] = len(changes)
        return (with_parts(content, changed) if changed else content), counts
    except Exception as error:  # a damaged part fails in many ways
        raise InputError(where, "is damaged and was left as it is; accepted is an .xlsx workbook") from error


def plain_formula(formula: str) -> str:
    r"""A formula in which every function of ours has its plain name.

    Examples
    --------
    >>> plain_formula("SUM(1,WARP.WARP_MOLAR_MASS(A1),'C:\\warp.xlam'!warp_molar_mass(A2))")
    'SUM(1,WARP_MOLAR_MASS(A1),WARP_MOLAR_MASS(A2))'
    >>> plain_formula('IF(A1="warp.warp_molar_mass(A1)",1,2)')
    'IF(A1="warp.warp_molar_mass(A1)",1,2)'
    """

    def plain(token: re.Match[str]) -> str:
        name = token["name"]
        return (_plain_name(name) if name else None) or token[0]

    return _TOKEN.sub(plain, formula)


def _plain_name(written: str) -> str | None:
    """The plain name of one of our functions, however it is written; None for any other."""
    name = _PROGRAM_MARK.sub("", written.upper(), count=1)
    if name.startswith(_WEB_MARK):
        name = name.removeprefix(_WEB_MARK)
        return next((own for own in _own_names() if name == own or name.endswith("_" + own)), None)
    before, _, last = name.rpartition(".")
    ours = before in ("", IMPLEMENTATION) or before.endswith("." + IMPLEMENTATION)
    return last if ours and last in cell_functions() else None


@functools.cache
def _own_names() -> tuple[str, ...]:
    """The names, longest first, so that a name is not taken for another one behind a name space."""
    return tuple(sorted(cell_functions(), key=len, reverse=True))


def _may_hold(part: bytes) -> bool:
    """Whether the prefix stands anywhere in a part, also in one that takes two bytes for a letter."""
    return PREFIX.lower().encode() in part.lower().replace(b"\0", b"")


def _changes(part: bytes) -> list[tuple[int, int, bytes]]:
    """What to replace in a part by what."""
    said = _ENCODING.match(part)
    codec = said[1].decode() if said else _BYTE_ORDERS.get(part[:2], "utf-8")
    found = []
    for begin, end, formula in _formulas(part):
        new = plain_formula(formula)
        if new != formula:
            found.append((begin, end, escape(new, {"\r": "&#13;"}).encode(codec, "xmlcharrefreplace")))
    return found


def _formulas(part: bytes) -> Iterator[tuple[int, int, str]]:
    """Place and text of every formula of a part."""
    root, begin = "", None
    texts: list[str] = []
    for token in tokens(part):
        if token.kind == "start":
            root = root or token.name
            if root not in ROOTS:
                return
            begin, texts = (token.end, []) if token.name in FORMULAS else (None, [])
        elif token.kind == "text" and begin is not None:
            texts.append(token.name)
        elif token.kind == "end":
            if begin is not None:
                yield begin, token.begin, "".join(texts)
            begin = None


def _free_name(path: Path) -> Path:
    """A name beside a file for the file as it was."""
    number, kept = 1, path.with_name(f"{path.stem}_before{path.suffix}")
    while kept.exists():
        number += 1
        kept = path.with_name(f"{path.stem}_before_{number}{path.suffix}")
    return kept
