"""Write a file whole or not at all."""

from __future__ import annotations

import contextlib
import os
import secrets
import shutil
from collections.abc import Callable, Mapping, Sequence
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
    write_together({path: content}, what=what, suffixes=suffixes, overwrite=overwrite)


def write_together(
    contents: Mapping[Path, Callable[[], bytes]],
    *,
    what: str,
    suffixes: Sequence[str],
    overwrite: bool = False,
) -> None:
    """Write several files that belong together, all of them or none.

    Parameters
    ----------
    contents : mapping
        File -> what gives its bytes; called once it is known that every name will do.
    what, suffixes, overwrite
        As of `write_whole`.

    Raises
    ------
    InputError
        As of `write_whole`, for any of the files.
    """
    for path in contents:
        check_name(path, what, suffixes, overwrite)
    parts = {path: path.with_name(f".{path.stem}.{secrets.token_hex(4)}.part") for path in contents}
    path = next(iter(contents))
    changed: dict[Path, Path | None] = {}  # a file that is changed, and what it was
    try:
        wholes = {path: content() for path, content in contents.items()}
        for path, part in parts.items():
            with part.open("xb") as stream:
                stream.write(wholes[path])
                stream.flush()
                os.fsync(stream.fileno())
            if path.exists():
                shutil.copymode(path, part)
        for path, part in parts.items():
            before = part.with_suffix(".before") if path.exists() else None
            if before is not None and len(parts) > 1:
                shutil.copy2(path, before)
            part.replace(path)
            changed[path] = before
    except OSError as error:
        for other, before in changed.items():
            with contextlib.suppress(OSError):
                other.unlink() if before is None else before.replace(other)
        reason = error.strerror or str(error)
        raise InputError(str(path), f"could not be written: {reason}; nothing was changed") from error
    finally:
        for part in parts.values():
            for left in (part, part.with_suffix(".before")):
                with contextlib.suppress(OSError):
                    left.unlink(missing_ok=True)


def check_name(path: Path, what: str, suffixes: Sequence[str], overwrite: bool) -> None:
    """Refuse the name of a file that `write_whole` would refuse, before anything is worked out for it.

    Raises
    ------
    InputError
        Another ending, a folder, or a file that is there and may not be replaced.
    """
    if path.suffix.lower() not in suffixes:
        raise InputError(str(path), f"the name of {what} must end in {' or '.join(suffixes)}")
    if path.is_dir():
        raise InputError(str(path), f"is a folder; accepted is the name of a new {suffixes[0]} file")
    if path.exists() and not overwrite:
        raise InputError(
            str(path), "is there already and was left as it is; accepted is the name of a new file"
        )
