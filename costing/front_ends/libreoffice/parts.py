"""The parts of the extension that do not depend on the registry."""

from __future__ import annotations

from costing.front_ends.libreoffice.interface import (
    CONFIGURATION,
    IMPLEMENTATION,
    INTERFACE,
    MODULE,
    XML,
)

IDENTIFIER = ".".join((*MODULE, "formulas"))
JOB = ".".join((*MODULE, "ResolveNames"))
OLDEST_PYTHON = (3, 9)
OLDEST_LIBREOFFICE = "7.4"

MANIFEST = (
    XML
    + """<manifest:manifest xmlns:manifest="http://openoffice.org/2001/manifest">
<manifest:file-entry manifest:full-path="functions.idl"
 manifest:media-type="application/vnd.sun.star.uno-typelibrary;type=RDB"/>
<manifest:file-entry manifest:full-path="addin.components"
 manifest:media-type="application/vnd.sun.star.uno-components"/>
<manifest:file-entry manifest:full-path="CalcAddIns.xcu"
 manifest:media-type="application/vnd.sun.star.configuration-data"/>
<manifest:file-entry manifest:full-path="Jobs.xcu"
 manifest:media-type="application/vnd.sun.star.configuration-data"/>
</manifest:manifest>
"""
)

COMPONENTS = (
    XML
    + f"""<components xmlns="http://openoffice.org/2010/uno-components">
<component loader="com.sun.star.loader.Python" uri="addin.py">
<implementation name="{IMPLEMENTATION}"><service name="com.sun.star.sheet.AddIn"/></implementation>
<implementation name="{JOB}"><service name="com.sun.star.task.Job"/></implementation>
</component>
</components>
"""
)

JOBS = (
    CONFIGURATION.format(name="Jobs")
    + f"""<node oor:name="Jobs"><node oor:name="{IMPLEMENTATION}ResolveNames" oor:op="replace">
<prop oor:name="Service"><value>{JOB}</value></prop></node></node>
<node oor:name="Events"><node oor:name="OnLoadFinished" oor:op="fuse"><node oor:name="JobList">
<node oor:name="{IMPLEMENTATION}ResolveNames" oor:op="replace"/></node></node></node>
</oor:component-data>
"""
)

DESCRIPTION = (
    XML
    + """<description xmlns="http://openoffice.org/extensions/description/2006"
 xmlns:d="http://openoffice.org/extensions/description/2006"
 xmlns:l="http://libreoffice.org/extensions/description/2011"
 xmlns:xlink="http://www.w3.org/1999/xlink">
<identifier value="{identifier}"/>
<version value="{version}"/>
<display-name><name lang="en">Denim warp costing: formulas</name></display-name>
<extension-description><src xlink:href="description.txt" lang="en"/></extension-description>
<dependencies><l:LibreOffice-minimal-version value="{libreoffice}" d:name="LibreOffice {libreoffice}"/>
</dependencies>
</description>
"""
)

ABOUT = f"""Formulas for costing the warp dyeing of denim: yarn and cloth, ropes and sets, liquors and
rinsing, reduction chemistry, steam, money, discharge. The function wizard lists them all; their names begin
with {IMPLEMENTATION}_.

Restart LibreOffice after installing. Needed are LibreOffice {OLDEST_LIBREOFFICE} or later and its Python,
{".".join(map(str, OLDEST_PYTHON))} or later. On Debian and its kin that is the package
libreoffice-script-provider-python; on Windows and macOS LibreOffice brings its own, and where that is older
every formula is an error. Nothing else is needed, and nothing is sent anywhere.

What it calculates is arithmetic, not advice on handling: follow the supplier's safety data sheet, your local
regulations, your permit and licensed practice. A discharge estimate is not a compliance measurement.
"""

# The file that LibreOffice loads: at the first formula, or when a document has been opened. It stays small,
# for a document without a formula of ours must not wait for the package.
ADDIN = f'''"""What LibreOffice loads: the functions of a cell, and the job behind opening a document."""

import os
import re
import sys

import uno
import unohelper
from com.sun.star.table import CellAddress
from com.sun.star.task import XJob

OLDEST_PYTHON = {OLDEST_PYTHON}

# In front of everything, so that no other package of the same name is taken.
PACKAGE = os.path.join(os.path.dirname(os.path.abspath(__file__)), "pythonpath")
if PACKAGE in sys.path:
    sys.path.remove(PACKAGE)
sys.path.insert(0, PACKAGE)

OURS = re.compile(r"\\b{IMPLEMENTATION}_[A-Z]", re.IGNORECASE)
TEMPORARY = "warp_resolve_names"
OPENED_BOOK = "{IMPLEMENTATION}_OPENED_BOOK("


class Functions(unohelper.Base, uno.getClass("{".".join((*MODULE, INTERFACE))}")):
    """The functions of a cell; each is looked up at its first call."""

    def __init__(self, context):
        pass  # an error here would keep Calc from reading any formula at all

    def __getattr__(self, name):
        if not name.startswith("{IMPLEMENTATION}_"):
            raise AttributeError(name)
        if sys.version_info < OLDEST_PYTHON:
            raise RuntimeError("the formulas need Python %d.%d or later" % OLDEST_PYTHON)
        from costing.front_ends.libreoffice.adapter import method

        found = method(name)
        setattr(self, name, found)
        return found


class ResolveNames(unohelper.Base, XJob):
    """Make the formulas of an opened document known, and have the books in it opened.

    A LibreOffice before version 25 does not look up the names in an .xlsx file. To add and remove a defined
    name makes Calc read every formula of the document again. What a cell of OPENED_BOOK shows is the mark of
    a book that an earlier session opened, which the other formulas cannot ask: all is calculated anew.
    """

    def __init__(self, context):
        pass

    def execute(self, arguments):
        try:
            for argument in arguments:
                if argument.Name == "Environment":
                    opened({{item.Name: item.Value for item in argument.Value}}.get("Model"))
        except Exception:
            pass  # a document that cannot be changed opens as it would without this job


def opened(document):
    """Have the formulas of a document read and calculated again where they need it, without a trace in it."""
    if document is None or not document.supportsService("com.sun.star.sheet.SpreadsheetDocument"):
        return
    kind = {{item.Name: item.Value for item in document.getArgs()}}.get("FilterName", "")
    modified = document.isModified()
    undo = document.getUndoManager()
    undo.lock()
    try:
        if "Excel 2007" in kind or "Office Open XML" in kind:
            resolve(document.NamedRanges)
        if any(holds(sheet, OPENED_BOOK) for sheet in document.Sheets):
            document.calculateAll()
    finally:
        undo.unlock()
        if not modified:
            unchanged(document)


def unchanged(document):
    """Let a document count as unchanged: its charts too, which have followed their cells."""
    for sheet in document.Sheets:
        for chart in sheet.Charts:
            chart.getEmbeddedObject().setModified(False)
    document.setModified(False)


def resolve(names):
    """Have every formula read again."""
    for name in names:
        content = name.getContent()
        if OURS.search(content):
            name.setContent(content)
    names.addNewByName(TEMPORARY, "$A$1", CellAddress(), 0)
    names.removeByName(TEMPORARY)


def holds(sheet, text):
    """Whether a formula of a sheet holds a text."""
    search = sheet.createSearchDescriptor()
    search.setSearchString(text)
    return sheet.findFirst(search) is not None


g_ImplementationHelper = unohelper.ImplementationHelper()
g_ImplementationHelper.addImplementation(Functions, "{IMPLEMENTATION}", ("com.sun.star.sheet.AddIn",))
g_ImplementationHelper.addImplementation(ResolveNames, "{JOB}", ("com.sun.star.task.Job",))
'''
