"""What is done with each kind of sheet: how its rows are planned, and in which order they are written.

A further kind needs a `Kind` among `kinds.KINDS`, and a `Subject` here.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from frondkeep.desk.importing.subjects import crosses, meetings, members, names, pieces, plants, sowings

if TYPE_CHECKING:
    from frondkeep.desk.importing.ledger import Ledger
    from frondkeep.desk.importing.rows import PlannedRow, RawRow
    from frondkeep.desk.importing.writing import Writing

Declare = Callable[["RawRow", "Ledger"], None]
MakePlan = Callable[["RawRow", "Ledger"], "PlannedRow"]
Write = Callable[["Writing", "PlannedRow"], None]


@dataclass(frozen=True, slots=True)
class Subject:
    """`records` names what a row becomes (two kinds may share one: pieces are plants).

    `declare` tells the ledger what the row will bring, before any row is planned. Each step is written for all
    new rows before the next greater one, within it after the rows it refers to.
    """

    records: str
    declare: Declare
    plan: MakePlan
    steps: tuple[tuple[int, Write], ...]


SUBJECTS: dict[str, Subject] = {
    "members": Subject("members", members.declare, members.plan, ((10, members.write),)),
    "meetings": Subject("meetings", meetings.declare, meetings.plan, ((20, meetings.write),)),
    "names": Subject("names", names.declare, names.plan, ((30, names.write), (50, names.claim))),
    "plants": Subject("plants", plants.declare, plants.plan, ((40, plants.write), (60, plants.found_name))),
    "pieces": Subject("plants", pieces.declare, pieces.plan, ((40, pieces.write),)),
    "sowings": Subject("sowings", sowings.declare, sowings.plan, ((40, sowings.write),)),
    "crosses": Subject("crosses", crosses.declare, crosses.plan, ((70, crosses.write),)),
}
