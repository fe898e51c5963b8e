"""Finding the row of headings, what a sheet is about, and which column holds what."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass

from rapidfuzz import fuzz

from frondkeep.desk.importing.intake import Sheet
from frondkeep.desk.importing.kinds import KINDS, Kind
from frondkeep.desk.inert_cells import revive

ROWS_LOOKED_AT = 12
NEAR = 88


@dataclass(frozen=True, slots=True)
class Table:
    """A sheet understood: its kind, the row of headings (from 1), and the column (from 0) of each field."""

    sheet: Sheet
    kind: str
    heading_row: int
    columns: dict[str, int]

    @property
    def headings(self) -> tuple[str, ...]:
        return self.sheet.rows[self.heading_row - 1] if self.heading_row else ()

    def missing(self) -> list[str]:
        """Labels of needed fields that no column holds."""
        return [
            field.label for field in KINDS[self.kind].fields if field.needed and field.key not in self.columns
        ]

    @property
    def is_recognised(self) -> bool:
        """Whether the headings speak for its kind: two columns at least, and all that is needed."""
        return len(self.columns) >= 2 and not self.missing()

    def records(self) -> list[tuple[int, dict[str, str]]]:
        """(row number from 1, field → text) for every row below the headings that holds anything.

        Cells that our own tables made inert are what they were before.
        """
        found = []
        for number, row in enumerate(self.sheet.rows[self.heading_row :], self.heading_row + 1):
            values = {
                key: revive(row[column].strip()) for key, column in self.columns.items() if column < len(row)
            }
            if any(values.values()):
                found.append((number, values))
        return found


def plain(heading: str) -> str:
    """A heading in small letters, without accents and signs."""
    letters = unicodedata.normalize("NFKD", heading).encode("ascii", "ignore").decode().casefold()
    return " ".join(re.sub(r"[^a-z0-9]+", " ", letters).split())


def understand(sheet: Sheet, *, kind: str = "", heading_row: int = 0) -> Table:
    """The sheet read as its likeliest kind and row of headings, unless one or both are given.

    Ties go to the kind whose name stands in the file's or sheet's name, then to the earlier row.
    """
    candidates = []
    for row, cells in enumerate(sheet.rows[: max(ROWS_LOOKED_AT, heading_row)], 1):
        if heading_row not in (0, row):
            continue
        for one in [KINDS[kind]] if kind else KINDS.values():
            columns = match_columns(cells, one)
            needed = sum(field.needed and field.key in columns for field in one.fields)
            filled = sum(bool(cell.strip()) for cell in cells)
            score = (
                len(columns) - 0.4 * (filled - len(columns)) + needed + 1.5 * speaks_for(sheet, one),
                -row,
            )
            candidates.append((score, Table(sheet, one.key, row, columns)))
    if not candidates:
        return Table(sheet, kind or "plants", 0, {})
    return max(candidates, key=lambda candidate: candidate[0])[1]


def speaks_for(sheet: Sheet, kind: Kind) -> bool:
    title = plain(f"{sheet.file} {sheet.name}")
    return any(word in title for word in kind.titles)


def match_columns(cells: tuple[str, ...], kind: Kind) -> dict[str, int]:
    """Field → column, each at most once: equal headings first, then nearly equal ones."""
    headings = [plain(cell) for cell in cells]
    columns: dict[str, int] = {}
    for near in (False, True):
        for field in kind.fields:
            if field.key in columns:
                continue
            names = [plain(field.label), *map(plain, field.aliases)]
            for name in names:
                column = column_of(name, headings, set(columns.values()), near=near)
                if column is not None:
                    columns[field.key] = column
                    break
    return columns


def column_of(name: str, headings: list[str], taken: set[int], *, near: bool) -> int | None:
    for column, heading in enumerate(headings):
        if column in taken or not heading:
            continue
        if heading == name or (near and len(name) > 4 and fuzz.ratio(heading, name) >= NEAR):
            return column
    return None
