"""Reads the text of a VBA module, as far as the generated ones go; what is not well formed is an error."""

from __future__ import annotations

import re
from typing import NamedTuple

TOKEN = re.compile(
    r"""(?P<text>"(?:[^"]|"")*")|(?P<comment>'.*)|(?P<name>\#?[A-Za-z][A-Za-z0-9_]*)|(?P<number>\d+)"""
    r"""|(?P<sign>:=|[(),.&=<>+\-:])|(?P<blank>\s+)|(?P<wrong>.)"""
)
HEAD = re.compile(r"(?:(Public|Private) )?(Function|Sub) (\w+)\((.*)\)( As Variant)?")
BLOCKS = {"If": "End If", "For": "Next", "#If": "#End If"}
MOST_CONTINUED = 24


class NotVbaError(Exception):
    """The text is no module."""


class Token(NamedTuple):
    kind: str
    text: str


class Argument(NamedTuple):
    name: str
    optional: bool
    rest: bool


class Procedure(NamedTuple):
    kind: str
    private: bool
    name: str
    arguments: list[Argument]
    body: list[list[Token]]


def logical_lines(text: str) -> list[str]:
    """Lines with what they are continued on."""
    lines: list[str] = []
    continued = 0
    for physical in text.split("\n"):
        if continued:
            lines[-1] += physical.strip()
        else:
            lines.append(physical.strip())
        continued = continued + 1 if physical.endswith(" _") else 0
        if continued > MOST_CONTINUED:
            raise NotVbaError(f"continued too often: {physical}")
        if continued:
            lines[-1] = lines[-1].removesuffix("_")
            tokens(lines[-1], whole=False)  # a text may not go on in the next line
    if continued:
        raise NotVbaError("ends in the middle of a line")
    return lines


def tokens(line: str, *, whole: bool = True) -> list[Token]:
    """Words and signs of a line, with as many brackets closed as opened."""
    found = [Token(str(match.lastgroup), match[0]) for match in TOKEN.finditer(line)]
    if any(token.kind == "wrong" for token in found):
        raise NotVbaError(line)
    depth = 0
    for token in found:
        depth += {"(": 1, ")": -1}.get(token.text, 0)
        if depth < 0:
            raise NotVbaError(line)
    if whole and depth:
        raise NotVbaError(line)
    return [token for token in found if token.kind not in ("blank", "comment")]


def arguments_of(text: str) -> list[Argument]:
    """The arguments between the brackets of a head."""
    found = []
    for part in filter(None, (part.strip() for part in text.split(","))):
        match = re.fullmatch(r"(Optional )?(ParamArray )?(?:ByVal )?(\w+)(\(\))?( As \w+)?", part)
        if match is None or bool(match[2]) != bool(match[4]):
            raise NotVbaError(part)
        found.append(Argument(match[3], bool(match[1]), bool(match[2])))
    return found


def procedures(text: str) -> list[Procedure]:
    """Every procedure of a module, each closed as it was opened, with nothing but declarations outside."""
    found: list[Procedure] = []
    opened: list[str] = []
    for line in logical_lines(text):
        words = tokens(line)
        if not words:
            continue
        head = HEAD.fullmatch(line)
        if head:
            if opened:
                raise NotVbaError(f"{line} inside of {found[-1].name}")
            found.append(Procedure(head[2], head[1] == "Private", head[3], arguments_of(head[4]), []))
            opened.append(f"End {head[2]}")
        elif not opened:
            if words[0].text not in ("Attribute", "Option", "Private", "#Const"):
                raise NotVbaError(line)
        elif " ".join(token.text for token in words[:2]) == opened[-1] or words[0].text == opened[-1]:
            opened.pop()
        elif words[0].text in ("End", "Next", "#End"):
            raise NotVbaError(f"{line} where {opened[-1]} is due")
        else:
            found[-1].body.append(words)
            block = BLOCKS.get(words[0].text)
            if block and (words[0].text != "If" or words[-1].text == "Then"):
                opened.append(block)
    if opened:
        raise NotVbaError(f"{opened[-1]} is missing")
    return found
