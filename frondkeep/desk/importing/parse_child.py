"""A spreadsheet's bytes as rows of text.

Run as a process of its own, it sets limits, reads standard input and writes JSON to standard output.
"""

from __future__ import annotations

import contextlib
import csv
import io
import json
import resource
import sys
import warnings
from collections.abc import Iterable, Iterator
from datetime import date, datetime, time
from typing import Any

MEMORY = 1024**3
PROCESSOR_SECONDS = 30


class RefusedError(ValueError):
    pass


def main() -> None:
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    resource.setrlimit(resource.RLIMIT_CPU, (PROCESSOR_SECONDS, PROCESSOR_SECONDS))
    most_rows, most_columns = int(sys.argv[2]), int(sys.argv[3])
    json.dump(answer_for(sys.stdin.buffer.read(), most_rows, most_columns), sys.stdout)


def answer_for(data: bytes, most_rows: int, most_columns: int) -> dict[str, Any]:
    """The sheets as rows of text, or why they are refused."""
    try:
        read = read_xlsx if data[:4] == b"PK\x03\x04" else read_csv
        sheets = [
            {"name": name, "rows": list(limited(rows, most_rows, most_columns)), "encoding": encoding}
            for name, rows, encoding in read(data)
        ]
        filled = [sheet for sheet in sheets if sheet["rows"]]
        if not filled:
            raise RefusedError("has no rows.")
    except RefusedError as problem:
        return {"refused": str(problem)}
    except csv.Error as problem:  # raised row by row, where the rows are taken
        return {"refused": f"could not be read as CSV: {problem}."}
    return {"sheets": filled}


def read_xlsx(data: bytes) -> Iterator[tuple[str, Iterable[Iterable[Any]], str]]:
    import openpyxl

    warnings.simplefilter("ignore")
    book = openpyxl.load_workbook(io.BytesIO(data), read_only=True, data_only=True)
    for sheet in book.worksheets:
        # What the file says of its own size may be wrong or hostile; rows are counted as they come.
        sheet.reset_dimensions()
        yield sheet.title, sheet.iter_rows(values_only=True), ""


def read_csv(data: bytes) -> Iterator[tuple[str, Iterable[Iterable[Any]], str]]:
    text, encoding = decode(data)
    if "\0" in text:
        raise RefusedError("holds characters that no list has. Save it anew as CSV in UTF-8.")
    csv.field_size_limit(100_000)
    yield "", csv.reader(io.StringIO(text, newline=""), delimiter=delimiter_of(text)), encoding


def decode(data: bytes) -> tuple[str, str]:
    """The text and the encoding it was in: UTF-8, UTF-16 with its mark, else Windows-1252."""
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        with contextlib.suppress(UnicodeDecodeError):
            return data.decode("utf-16"), "UTF-16"
    try:
        return data.decode("utf-8-sig"), "UTF-8"
    except UnicodeDecodeError:
        return data.decode("cp1252", errors="replace"), "Windows-1252"


def delimiter_of(text: str) -> str:
    """Comma, semicolon or tab: whichever the first lines hold most of."""
    head = "\n".join(text.splitlines()[:5])
    return max(",;\t", key=lambda sign: (head.count(sign), sign == ","))


def limited(rows: Iterable[Iterable[Any]], most_rows: int, most_columns: int) -> Iterator[list[str]]:
    """Rows as text; trailing empty cells and rows are left out."""
    waiting = 0
    for number, row in enumerate(rows, 1):
        cells = []
        for column, value in enumerate(row, 1):
            if column > most_columns:
                if value is not None and str(value).strip():
                    raise RefusedError(f"has more than {most_columns} columns.")
                continue
            cells.append(as_text(value))
        while cells and not cells[-1]:
            cells.pop()
        if not cells:
            waiting += 1
            if waiting > most_rows:
                raise RefusedError(f"has more than {most_rows:,} rows. Split it into several files.")
            continue
        if number > most_rows + 1:
            raise RefusedError(f"has more than {most_rows:,} rows. Split it into several files.")
        yield from ([] for _ in range(waiting))
        waiting = 0
        yield cells


def as_text(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, datetime):
        return value.date().isoformat() if value.time() == time() else value.isoformat(" ", "minutes")
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    return str(value).strip()


if __name__ == "__main__":
    main()
