"""From an uploaded file to rows of text. Guards come before any parser sees the file."""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
import zipfile
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from frondkeep.desk.importing import parse_child

MOST_BYTES = 10 * 1024 * 1024
MOST_UNPACKED = 50 * 1024 * 1024
MOST_MEMBERS = 200
MOST_RATIO = 200
MOST_ROWS = 20_000
MOST_COLUMNS = 100
SECONDS = 40


class FileRefusedError(ValueError):
    """The file is not taken; `str()` says why and what to do."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """One sheet as rows of text; `rows[0]` is row 1. `encoding` is empty for XLSX."""

    file: str
    name: str
    rows: tuple[tuple[str, ...], ...]
    encoding: str = ""


def read_file(name: str, data: bytes) -> list[Sheet]:
    """The sheets of a CSV or XLSX file, as text. Raises FileRefusedError.

    XLSX is read in a process of its own, with a gigabyte of memory and thirty seconds of processor time,
    for a small file can unpack into a very large one.
    """
    if not data.strip():
        raise FileRefusedError(f"“{name}” is empty.")
    if len(data) > MOST_BYTES:
        raise FileRefusedError(f"“{name}” is larger than 10 MB. Split it into several files.")
    ending = Path(name).suffix.casefold()
    if ending in (".xlsx", ".xlsm") or data[:4] == b"PK\x03\x04":
        guard_zip(name, data)
    elif ending not in (".csv", ".txt", ".tsv"):
        raise FileRefusedError(
            f"“{name}” is neither CSV nor XLSX. In your spreadsheet program, save it as XLSX."
        )
    parse = parse_apart if data[:4] == b"PK\x03\x04" else parse_here
    return [
        Sheet(name, sheet, tuple(map(tuple, rows)), encoding) for sheet, rows, encoding in parse(name, data)
    ]


def parse_here(name: str, data: bytes) -> list[tuple[str, list[list[str]], str]]:
    """(sheet, rows, encoding) of a CSV file: it unpacks into nothing larger, so it needs no process of its own."""
    answer = parse_child.answer_for(data, MOST_ROWS, MOST_COLUMNS)
    return sheets_in(name, answer)


def sheets_in(name: str, answer: dict[str, Any]) -> list[tuple[str, list[list[str]], str]]:
    if "refused" in answer:
        raise FileRefusedError(f"“{name}” {answer['refused']}")
    return [(sheet["name"], sheet["rows"], sheet["encoding"]) for sheet in answer["sheets"]]


def guard_zip(name: str, data: bytes) -> None:
    """Refuse an archive that would unpack into too much, from its directory alone."""
    with tempfile.SpooledTemporaryFile() as file:
        file.write(data)
        try:
            members = zipfile.ZipFile(file).infolist()
        except (zipfile.BadZipFile, OSError, ValueError) as problem:
            raise FileRefusedError(f"“{name}” is damaged or cut short. Save and send it again.") from problem
    unpacked = sum(member.file_size for member in members)
    if len(members) > MOST_MEMBERS or unpacked > MOST_UNPACKED or unpacked > MOST_RATIO * max(len(data), 1):
        raise FileRefusedError(
            f"“{name}” unpacks into far more than a list of plants needs. Save only the sheet itself."
        )
    if not any(member.filename == "xl/workbook.xml" for member in members):
        raise FileRefusedError(
            f"“{name}” is no XLSX spreadsheet. In your spreadsheet program, save it as XLSX."
        )


def parse_apart(name: str, data: bytes) -> list[tuple[str, list[list[str]], str]]:
    """(sheet, rows, encoding) as the child process read them."""
    command = [
        sys.executable,
        "-m",
        "frondkeep.desk.importing.parse_child",
        name,
        str(MOST_ROWS),
        str(MOST_COLUMNS),
    ]
    try:
        done = subprocess.run(command, input=data, capture_output=True, timeout=SECONDS, check=False)  # noqa: S603
    except subprocess.TimeoutExpired as problem:
        raise FileRefusedError(f"“{name}” takes too long to read. Save only the sheet itself.") from problem
    if done.returncode != 0:
        raise FileRefusedError(f"“{name}” could not be read as a spreadsheet. Save it anew as XLSX or CSV.")
    return sheets_in(name, json.loads(done.stdout))
