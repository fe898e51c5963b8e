"""Read the society's spreadsheets as a person would: by their headings."""

import csv
import re
from pathlib import Path

import openpyxl

FOLDER = Path(__file__).resolve().parents[2] / "demo_data"
HEADINGS_BELOW = {"members.xlsx": 2}  # rows above the headings

Record = dict[str, str]


def read(name: str) -> list[Record]:
    """Return the rows of a file, each by heading."""
    table = _workbook(name) if name.endswith(".xlsx") else _text(name)
    headings, *rows = table[HEADINGS_BELOW.get(name, 0) :]
    return [dict(zip(headings, row, strict=True)) for row in rows]


def _text(name: str) -> list[list[str]]:
    encoding, delimiter = ("cp1252", ";") if name == "names.csv" else ("utf-8-sig", ",")
    with (FOLDER / name).open(encoding=encoding, newline="") as file:
        return list(csv.reader(file, delimiter=delimiter))


def _workbook(name: str) -> list[list[str]]:
    book = openpyxl.load_workbook(FOLDER / name, read_only=True)
    table = [[cell or "" for cell in row] for row in book.worksheets[0].iter_rows(values_only=True)]
    book.close()
    return table


def years_meant(words: str) -> tuple[int, int] | None:
    """Return the first and last year the words of a date allow, None where there are no words.

    >>> years_meant("14/3/2019"), years_meant("1990s"), years_meant("c. 1985"), years_meant("")
    ((2019, 2019), (1990, 1999), (1980, 1990), None)
    """
    digits = re.search(r"\d{4}", words)
    if not digits:
        return None
    year = int(digits[0])
    if words.endswith("0s"):
        return year, year + 9
    if words.startswith(("c.", "about")) or words.endswith(("?", "~")):
        return year - 5, year + 5
    return year, year
