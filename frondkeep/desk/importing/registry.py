"""What is done with each kind of sheet: how its rows are planned, and in which order they are written.

A further kind needs a `Kind` among `kinds.KINDS`, and a `Subject` here.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from frondkeep.desk.importing.subjects import (
    crosses,
    entries,
    meetings,
    members,
    names,
    pieces,
    planting,
    plants,
    schedule,
    sowings,
)

if TYPE_CHECKING:
    from frondkeep.desk.importing.ledger import Ledger
    from frondkeep.desk.importing.rows import PlannedRow, RawRow
    from frondkeep.desk.importing.writing import Writing

Declare = Callable[["RawRow", "Ledger"], None]
MakePlan = Callable[["RawRow", "Ledger"], "PlannedRow"]
Write = Callable[["Writing", "list[PlannedRow]"], None]


@dataclass(frozen=True, slots=True)
class Subject:
    """`records` names what a row becomes (two kinds may share one: pieces are plants).

    `declare` tells the ledger what the row will bring, before any row is planned. Each step is written for all
    new rows before the next greater one; its writer gets many rows at once, none of which refers to another.
    """

    records: str
    declare: Declare
    plan: MakePlan
    steps: tuple[tuple[int, Write], ...]


def each(write: Callable[[Writing, PlannedRow], None]) -> Write:
    """A writer of many rows from a writer of one."""

    def write_each(writing: Writing, rows: list[PlannedRow]) -> None:
        for row in rows:
            write(writing, row)

    return write_each


SUBJECTS: dict[str, Subject] = {
    "members": Subject("members", members.declare, members.plan, ((10, each(members.write)),)),
    "meetings": Subject("meetings", meetings.declare, meetings.plan, ((20, each(meetings.write)),)),
    "names": Subject("names", names.declare, names.plan, ((30, names.write), (50, names.claim))),
    "plants": Subject(
        "plants", plants.declare, plants.plan, ((40, planting.write), (60, planting.found_names))
    ),
    "pieces": Subject("plants", pieces.declare, pieces.plan, ((40, pieces.write),)),
    "sowings": Subject("sowings", sowings.declare, sowings.plan, ((40, sowings.write),)),
    "crosses": Subject("crosses", crosses.declare, crosses.plan, ((70, each(crosses.write)),)),
    "schedule": Subject("schedule", schedule.declare, schedule.plan, ((80, each(schedule.write)),)),
    "entries": Subject("entries", entries.declare, entries.plan, ((90, each(entries.write)),)),
}
