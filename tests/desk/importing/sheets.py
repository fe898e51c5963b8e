"""Spreadsheets for tests, written as text, and what is planned for them."""

from __future__ import annotations

import io
from collections.abc import Sequence

import openpyxl

from frondkeep.desk.importing.headings import Table, understand
from frondkeep.desk.importing.intake import read_file
from frondkeep.desk.importing.planning import Plan, Planning
from frondkeep.desk.importing.rows import PlannedRow
from frondkeep.desk.importing.writing import Writing, write_plan
from frondkeep.society.models import User

PLANTS = "No,Tag,Thought to be,Kept by,From whom,When,How,Parent,Holds,State,Remarks"


def csv_bytes(text: str, *, encoding: str = "utf-8") -> bytes:
    return "\n".join(line.strip() for line in text.strip().splitlines()).encode(encoding)


def xlsx_bytes(
    rows: Sequence[Sequence[object]], *, sheet: str = "Sheet", merged: Sequence[str] = ()
) -> bytes:
    book = openpyxl.Workbook()
    page = book.active
    page.title = sheet
    for row in rows:
        page.append(list(row))
    for cells in merged:
        page.merge_cells(cells)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def tables(**files: str) -> list[Table]:
    """One CSV sheet a file; `plants="…"` is the file plants.csv."""
    return [
        understand(sheet)
        for name, text in files.items()
        for sheet in read_file(f"{name}.csv", csv_bytes(text))
    ]


def planned(**files: str) -> Plan:
    return Planning(tables(**files)).plan()


def plants(*lines: str) -> str:
    """A plants' list: PLANTS as its headings, then these rows."""
    return "\n".join([PLANTS, *lines])


def only(plan: Plan) -> PlannedRow:
    (row,) = plan.rows
    return row


def imported(by: User | None = None, *, may_appoint: bool | None = None, **files: str) -> Writing:
    plan = planned(**files)
    assert plan.counts()["refused"] == 0, [row.problems for row in plan.rows]
    return write_plan(plan, by=by, may_appoint=may_appoint)


def told(row: PlannedRow) -> str:
    """All reasons of a refused row."""
    return " / ".join(str(problem) for problem in row.problems)
