"""One row of a sheet: as read, and as planned — new, on record or refused, with its reasons."""

from __future__ import annotations

import hashlib
from collections import Counter
from dataclasses import dataclass, field
from typing import Any, Literal

from frondkeep.desk.importing.headings import Table
from frondkeep.desk.importing.kinds import KINDS

MOST_KEY = 64
Fate = Literal["new", "on record", "refused"]
# A plant or sowing as rows speak of it: ("plant", "f12") or ("sowing", "s3"), the old number in small letters.
Ref = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Problem:
    """Why a row is not taken: the column's heading, what stands there, and what to do."""

    column: str
    value: str
    reason: str

    def __str__(self) -> str:
        where = f"{self.column}: " if self.column else ""
        value = f"“{self.value}” — " if self.value else ""
        return f"{where}{value}{self.reason}"


@dataclass(slots=True)
class RawRow:
    """The cells of one row by field, with where it stands. `occurrence` counts rows of equal content."""

    table: Table
    position: int
    number: int
    cells: dict[str, str]
    occurrence: int = 1

    @property
    def kind(self) -> str:
        return self.table.kind

    @property
    def place(self) -> str:
        sheet = f", sheet {self.table.sheet.name}" if self.table.sheet.name else ""
        return f"{self.table.sheet.file}{sheet}, row {self.number}"

    def heading(self, field_key: str) -> str:
        """The column's heading as it stands in the sheet, else our word for it."""
        column = self.table.columns.get(field_key)
        headings = self.table.headings
        written = headings[column].strip() if column is not None and column < len(headings) else ""
        return written or KINDS[self.kind].field(field_key).label

    def fingerprint(self) -> str:
        """What identifies a row without a number: its content, and which of several equal rows it is."""
        content = "\x1f".join(f"{key}\x1e{value}" for key, value in sorted(self.cells.items()) if value)
        digest = hashlib.sha256(f"{self.kind}\x1d{self.occurrence}\x1d{content}".encode()).hexdigest()
        return f"row:{digest[:32]}"


@dataclass(slots=True)
class PlannedRow:
    """What will happen to a row. `values` is what its writer needs; `record` is the id of what is on record."""

    raw: RawRow
    key: str
    title: str
    fate: Fate = "new"
    values: dict[str, Any] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    needs: list[Ref] = field(default_factory=list)
    gives: list[Ref] = field(default_factory=list)
    record: int | None = None

    @property
    def kind(self) -> str:
        return self.raw.kind

    def refuse(self, problem: Problem) -> None:
        self.fate = "refused"
        self.problems.append(problem)


def short(key: str) -> str:
    """A key as it fits the records: a long one by its fingerprint."""
    return key if len(key) <= MOST_KEY else f"key:{hashlib.sha256(key.encode()).hexdigest()[:48]}"


def raw_rows(tables: list[Table]) -> list[RawRow]:
    """Every row below the headings of every sheet, in order."""
    seen: Counter[tuple[str, frozenset[tuple[str, str]]]] = Counter()
    rows = []
    for position, table in enumerate(tables):
        for number, cells in table.records():
            content = (table.kind, frozenset((key, value) for key, value in cells.items() if value))
            seen[content] += 1
            rows.append(RawRow(table, position, number, cells, seen[content]))
    return rows
