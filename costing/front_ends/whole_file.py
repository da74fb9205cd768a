"""Write a file whole or not at all."""

from __future__ import annotations

import contextlib
import os
import secrets
import shutil
from collections.abc import Callable, Sequence
from pathlib import Path

from costing.quantities import InputError


def write_whole(
    content: Callable[[], bytes],
    path: Path,
    *,
    what: str,
    suffixes: Sequence[str],
    overwrite: bool = False,
) -> None:
    """Write bytes to a new file: under another name first, then renamed in one step.

    Parameters
    ----------
    content : callable
        Gives the bytes; called once it is known that the name will do.
    path : Path
        Where to; the folder must be there.
    what : str
        What it is, for the error text: a workbook, an extension.
    suffixes : sequence of str
        What the name may end in.
    overwrite : bool, optional
        True to replace a file of that name; who may read it stays as it was.

    Raises
    ------
    InputError
        Another name, a file that is there already, a folder that is not, no permission, a full disk. Then
        nothing of it stays behind, and a file that was there is as it was.
    """
    if path.suffix.lower() not in suffixes:
        raise InputError(str(path), f"the name of {what} must end in {' or '.join(suffixes)}")
    if path.is_dir():
        raise InputError(str(path), f"is a folder; accepted is the name of a new {suffixes[0]} file")
    if path.exists() and not overwrite:
        raise InputError(
            str(path), "is there already and was left as it is; accepted is the name of a new file"
        )
    part = path.with_name(f".{path.stem}.{secrets.token_hex(4)}.part")
    try:
        whole = content()
        with part.open("xb") as stream:
            stream.write(whole)
            stream.flush()
            os.fsync(stream.fileno())
        if path.exists():
            shutil.copymode(path, part)
        part.replace(path)
    except OSError as error:
        reason = error.strerror or str(error)
        raise InputError(str(path), f"could not be written: {reason}; nothing was changed") from error
    finally:
        with contextlib.suppress(OSError):
            part.unlink(missing_ok=True)
