"""What the charts of the book and of its results share: their letters, and number formats of their own."""

from __future__ import annotations

import re

from openpyxl.chart.text import RichText, Text
from openpyxl.chart.title import Title
from openpyxl.drawing.text import CharacterProperties, Font, Paragraph, ParagraphProperties, RegularTextRun

from costing.front_ends.workbook import styles

_OWN_FORMAT = re.compile(rb'(<c:numFmt|<numFmt) formatCode="([^"]*)"\s*/>')


def amend_chart(name: str, content: bytes) -> bytes:
    """Let the labels keep their own number format, which the library writes without saying so.

    Parameters
    ----------
    name, content
        Of a part of the file.
    """
    if not name.startswith("xl/charts/"):
        return content
    return _OWN_FORMAT.sub(rb'\1 formatCode="\2" sourceLinked="0"/>', content)


def lettering(size: float) -> RichText:
    """Plain letters of a size, in points."""
    return RichText(
        p=[Paragraph(pPr=ParagraphProperties(defRPr=_properties(size)), endParaRPr=_properties(size))]
    )


def heading(text: str, size: float, bold: bool = True) -> Title:
    """The title of a chart or of an axis."""
    run = RegularTextRun(rPr=_properties(size, bold), t=text)
    paragraph = Paragraph(pPr=ParagraphProperties(defRPr=_properties(size, bold)), r=[run])
    return Title(tx=Text(rich=RichText(p=[paragraph])), overlay=False)


def _properties(size: float, bold: bool = False) -> CharacterProperties:
    return CharacterProperties(
        sz=int(size * 100), b=bold, solidFill=styles.INK, latin=Font(typeface=styles.FONT)
    )
