"""What Excel's function dialog says of a formula, and what Excel and VBA accept of names and texts."""

from __future__ import annotations

import re

from costing.formulas.cell_function import VARARGS, CellFunction, Parameter
from costing.quantities import InputError

CATEGORY = "Denim warp costing"

# A text of the dialog has 1 to 255 characters, a function at most 60 arguments: Microsoft, [MS-XLSB] Excel
# binary file format, ArgDesc (section 2.5.3) and BrtNameExt (section 2.4.712).
LONGEST_TEXT = 255
MOST_ARGUMENTS = 60
# Microsoft, "Visual Basic naming rules": a letter first, then letters, digits and underscores, at most 255.
NAME = re.compile(r"[A-Za-z][A-Za-z0-9_]{0,254}")

# Microsoft, [MS-VBAL] VBA language specification, section 3.3.5.2, without the names that begin with VB_.
KEYWORD_LIST = """
    call case close const declare defbool defbyte defcur defdate defdbl defint deflng deflnglng deflngptr
    defobj defsng defstr defvar dim do else elseif end endif enum erase event exit for friend function get
    global gosub goto if implements input let lock loop lset next on open option print private public put
    raiseevent redim resume return rset seek select set static stop sub type unlock wend while with write rem
    any as byref byval each in new shared until withevents optional paramarray preserve spc tab then to
    addressof and eqv imp is like mod not or typeof xor abs cbool cbyte ccur cdate cdbl cdec cint clng clnglng
    clngptr csng cstr cvar cverr date debug doevents fix int len lenb me pset scale sgn string array circle
    inputb lbound ubound boolean byte currency double integer long longlong longptr single variant true false
    nothing empty null attribute lineinput cdecl decimal defdec
"""
KEYWORDS = frozenset(KEYWORD_LIST.split())
# xlwings puts the calling cell in place of an argument of this name.
TAKEN_BY_XLWINGS = "caller"


def function_help(function: CellFunction) -> str:
    """What a formula does and gives.

    Examples
    --------
    >>> from costing.formulas.registry import cell_functions
    >>> function_help(cell_functions()["WARP_MOLAR_MASS"])[-85:]
    'program: Mass of one mol of a substance, from its formula. Gives: molar mass [g/mol].'
    """
    return shortened(f"{function.group}: {function.help.rstrip('.')}. Gives: {function.gives}.")


def argument_help(parameter: Parameter) -> str:
    """What an argument is."""
    return shortened(parameter.help)


def shortened(text: str) -> str:
    """A text of one line, cut behind a word where it is too long for the dialog.

    Examples
    --------
    >>> shortened("a  b"), len(shortened("word " * 60)), shortened("word " * 60)[-12:]
    ('a b', 252, 'word word...')
    """
    line = " ".join(text.split())
    if len(line) <= LONGEST_TEXT:
        return line
    return line[: LONGEST_TEXT - 2].rpartition(" ")[0] + "..."


def check_names(function: CellFunction, used: frozenset[str]) -> None:
    """Refuse a formula that Excel, VBA or xlwings could not take.

    Parameters
    ----------
    function : CellFunction
        The formula.
    used : frozenset of str
        Names in small letters that the generated function uses itself.

    Raises
    ------
    InputError
        A name of the formula or of an argument, or an order or number of arguments.
    """
    where, names = function.name, [parameter.name for parameter in function.parameters]
    for name in (function.name, *names):
        lower = name.lower()
        if not NAME.fullmatch(name) or lower in KEYWORDS | used | {TAKEN_BY_XLWINGS}:
            raise InputError(where, f"{name[:60]!r} is no name that VBA can take here")
    if len({name.lower() for name in names}) < len(names) or len(names) > MOST_ARGUMENTS:
        raise InputError(where, f"has two arguments of one name, or more than {MOST_ARGUMENTS}")
    kinds = [parameter.kind == VARARGS for parameter in function.parameters]
    optional = [parameter.optional for parameter in function.parameters if parameter.kind != VARARGS]
    if any(kinds[:-1]) or optional != sorted(optional) or (any(kinds) and any(optional)):
        raise InputError(
            where,
            "what may be left out must come last, and as many arguments as there are must be the last and "
            "alone in that",
        )
