"""The parts of a workbook file: which is which sheet, their tags with places, some of them replaced."""

from __future__ import annotations

import copy
import io
import posixpath
import zipfile
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple
from xml.etree import ElementTree
from xml.parsers import expat

SHEET_ML = (
    "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
    "http://purl.oclc.org/ooxml/spreadsheetml/main",
)
EXTENDED = "http://schemas.microsoft.com/office/excel/2006/main"
RELATION_ID = (
    "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id",
    "{http://purl.oclc.org/ooxml/officeDocument/relationships}id",
)
WORKBOOK = "xl/workbook.xml"
RELATIONS = "xl/_rels/workbook.xml.rels"
PIECE = 1 << 16


class Token(NamedTuple):
    """A tag or a piece of text of an XML part, with its place in the bytes.

    Attributes
    ----------
    kind : str
        "start", "end", "text", or "other" for a comment and the like.
    name : str
        Of a tag, alone where it belongs to sheets, else behind its name space; of a text, the text.
    attributes : mapping
        Of a start tag.
    begin, end : int
        First byte, and the one behind the last.
    """

    kind: str
    name: str
    attributes: Mapping[str, str]
    begin: int
    end: int


def tokens(content: bytes) -> Iterator[Token]:
    """The tags and texts of an XML part in order; an empty tag gives a start and an end.

    Raises
    ------
    xml.parsers.expat.ExpatError
        It is not well formed.
    ValueError
        It declares a document type, which no part of a workbook does.
    """
    parser = expat.ParserCreate(namespace_separator=" ")
    found: list[tuple[str, str, Mapping[str, str], int]] = []

    def add(kind: str, name: str = "", attributes: Mapping[str, str] | None = None) -> None:
        found.append((kind, name, attributes or {}, parser.CurrentByteIndex))

    def refuse(*_: object) -> None:
        raise ValueError("a part declares a document type")

    parser.StartElementHandler = lambda name, attributes: add("start", _local(name), attributes)
    parser.EndElementHandler = lambda name: add("end", _local(name))
    parser.CharacterDataHandler = lambda text: add("text", text)
    parser.CommentHandler = lambda text: add("other")
    parser.ProcessingInstructionHandler = lambda target, text: add("other")
    parser.StartCdataSectionHandler = parser.EndCdataSectionHandler = lambda: add("other")
    parser.StartDoctypeDeclHandler = refuse
    for begin in range(0, len(content), PIECE):
        parser.Parse(content[begin : begin + PIECE], begin + PIECE >= len(content))
        # The end of a token is where the next one begins.
        for (kind, name, attributes, place), (*_, behind) in zip(found, found[1:]):
            yield Token(kind, name, attributes, place, behind)
        del found[:-1]
    for kind, name, attributes, place in found:
        yield Token(kind, name, attributes, place, len(content))


def _local(name: str) -> str:
    """The name of a tag, alone where it belongs to sheets."""
    space, _, local = name.rpartition(" ")
    return local if space in SHEET_ML else f"{space} {local}"


def spliced(content: bytes, changes: Sequence[tuple[int, int, bytes]]) -> bytes:
    """The bytes with some stretches replaced; the changes are (begin, end, new bytes) in order.

    Examples
    --------
    >>> spliced(b"one two three", [(4, 7, b"2"), (8, 8, b"and ")])
    b'one 2 and three'
    """
    pieces, last = [], 0
    for begin, end, new in changes:
        pieces += [content[last:begin], new]
        last = end
    return b"".join([*pieces, content[last:]])


def read_part(book: zipfile.ZipFile, name: str) -> bytes:
    """A part, and never more of it unpacked than the file says it holds.

    Raises
    ------
    zipfile.BadZipFile
        It holds more.
    """
    entry = book.getinfo(name)
    with book.open(entry) as stream:
        return stream.read(entry.file_size + 1)  # read() alone unpacks all of it first


def sheet_parts(book: zipfile.ZipFile) -> dict[str, str]:
    """Title -> part of each sheet of cells, in the order of the book."""
    targets = {
        relation.get("Id"): (relation.get("Type", ""), relation.get("Target", ""))
        for relation in ElementTree.fromstring(read_part(book, RELATIONS))
    }
    found = {}
    for sheet in ElementTree.fromstring(read_part(book, WORKBOOK)).iterfind("{*}sheets/{*}sheet"):
        identity = next((sheet.get(name) for name in RELATION_ID if sheet.get(name)), None)
        kind, target = targets.get(identity, ("", ""))
        if kind.endswith("/worksheet"):
            found[sheet.get("name", "")] = posixpath.normpath(posixpath.join("/xl", target)).lstrip("/")
    return found


def with_parts(content: bytes, changed: Mapping[str, bytes]) -> bytes:
    """A workbook file with some of its parts replaced, every other part as it is."""
    packed = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(content)) as source, zipfile.ZipFile(packed, "w") as target:
        target.comment = source.comment
        for entry in source.infolist():
            part = changed.get(entry.filename)
            target.writestr(copy.copy(entry), source.read(entry) if part is None else part)
    return packed.getvalue()
