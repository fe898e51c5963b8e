"""The list of meetings."""

from __future__ import annotations

from typing import TYPE_CHECKING

from frondkeep.desk.importing.ledger import Ledger
from frondkeep.desk.importing.reader import RowReader
from frondkeep.desk.importing.rows import PlannedRow, RawRow
from frondkeep.desk.importing.values import plain
from frondkeep.society.forms import read_growers_date
from frondkeep.society.models import Meeting
from specimens.naming.dates import DateNotRead, PartialDate

if TYPE_CHECKING:
    from frondkeep.desk.importing.writing import Writing


def declare(raw: RawRow, ledger: Ledger) -> None:
    name = raw.cells.get("name", "")
    if name and plain(name) not in ledger.meetings:
        ledger.meetings[plain(name)] = [Meeting(name=name)]


def plan(raw: RawRow, ledger: Ledger) -> PlannedRow:
    name = raw.cells.get("name", "")
    read = RowReader(raw, ledger, key=f"meeting:{plain(name)}:{plain(raw.cells.get('date', ''))}", title=name)
    held = day_held(read)
    read.row.values = {
        "name": read.needed("name", most=120),
        "date": held.earliest,
        "place": read.text("place", most=120),
    }
    for found in ledger.meetings.get(plain(name), []):
        if found.pk and found.date == held.earliest and read.row.fate == "new":
            read.found(found.pk)
            read.differing({"place": (read.row.values["place"], found.place)})
    return read.row


def day_held(read: RowReader) -> PartialDate:
    """A meeting to come is a meeting; but it is held on one day."""
    try:
        held = read_growers_date(read.cell("date"), future_ok=True)
    except DateNotRead as problem:
        read.refuse("date", str(problem))
        return PartialDate()
    if not held.is_exact:
        read.refuse("date", "A meeting is held on one day. Write day, month and year.")
    return held


def write(writing: Writing, row: PlannedRow) -> None:
    Meeting.objects.create(**row.values)
