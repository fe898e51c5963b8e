"""Hands a sheet's data to the press and takes the PDF back."""

import json
import subprocess
import sys
from collections.abc import Mapping
from datetime import datetime
from pathlib import Path

from frondkeep.sheets.errors import SheetError
from frondkeep.sheets.press_child import REFUSED

TEMPLATES = Path(__file__).resolve().parents[2] / "templates" / "sheets"
CHILD = Path(__file__).with_name("press_child.py")
SECONDS = 30.0

Data = Mapping[str, object]


class Refused(Exception):
    """The compiler would not set the sheet; carries its words."""


def press(template: str, data: Data, *, timestamp: datetime | int, seconds: float = SECONDS) -> bytes:
    """Set a sheet as a tagged PDF (PDF/UA-1, ISO 14289-1).

    The data travels as JSON and is never read as markup. The same template, data and timestamp give
    the same bytes. Runs in a child process with limits of time and memory.

    Parameters
    ----------
    template
        File name of one of our templates.
    data
        What `json.dumps` takes.
    timestamp
        A datetime that knows its zone, or seconds since 1970; goes into the file as its date.

    Raises
    ------
    Refused
        When the compiler refuses, as for a character no font has.
    SheetError
        When the press breaks down, takes too long, or something strange lies among the templates.
    """
    order = {
        "template": str(checked_root(TEMPLATES) / template),
        "root": str(TEMPLATES),
        "data": dict(data),
        "timestamp": _epoch(timestamp),
    }
    return _run(json.dumps(order).encode("ascii"), seconds)


def checked_root(root: Path) -> Path:
    """Return the folder if it holds plain templates only: a link in it could lead out of it."""
    for path in root.iterdir():
        if path.is_symlink() or not path.is_file() or path.suffix != ".typ":
            raise SheetError(f"the templates' folder may hold templates only; take “{path.name}” out of it")
    return root


def _epoch(timestamp: datetime | int) -> int:
    if isinstance(timestamp, int):
        return timestamp
    if timestamp.tzinfo is None:
        raise ValueError("the timestamp of a sheet needs a time zone")
    return int(timestamp.timestamp())


def _run(order: bytes, seconds: float) -> bytes:
    # -I: the child sees no environment of ours and no folder but Python's own.
    command = [sys.executable, "-I", str(CHILD)]
    try:
        done = subprocess.run(command, input=order, capture_output=True, timeout=seconds, env={}, check=False)  # noqa: S603
    except subprocess.TimeoutExpired:
        raise SheetError("the sheet took too long to print; print fewer classes at once") from None
    if done.returncode == REFUSED:
        raise Refused(done.stderr.decode("utf-8", "replace"))
    if done.returncode or not done.stdout.startswith(b"%PDF"):
        raise SheetError("the sheet could not be printed; it may be too large: print fewer classes at once")
    return done.stdout
