"""From tables to a plan: every row with its fate, before anything is written."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from frondkeep.desk.importing.headings import Table
from frondkeep.desk.importing.ledger import Ledger
from frondkeep.desk.importing.registry import SUBJECTS
from frondkeep.desk.importing.rows import PlannedRow, Problem, RawRow, Ref, raw_rows

STEP = 5_000


@dataclass
class Plan:
    """Rows in the order of the sheets; `levels()` puts what others refer to first."""

    rows: list[PlannedRow]

    def counts(self, position: int | None = None) -> Counter[str]:
        """Rows by fate, of one sheet or of all."""
        return Counter(row.fate for row in self.rows if position is None or row.raw.position == position)

    def fates(self) -> list[str]:
        return [row.fate for row in self.rows]

    def new(self) -> list[PlannedRow]:
        return [row for row in self.rows if row.fate == "new"]

    def levels(self) -> list[list[PlannedRow]]:
        """New rows that refer to no other new row, then those that refer only to these, and so on."""
        return in_levels(self.new())


class Planning:
    """Plans the rows of some tables step by step, so that one request never plans more than it may."""

    def __init__(self, tables: Sequence[Table], ledger: Ledger | None = None) -> None:
        self.ledger = ledger or Ledger.load()
        self.raw = raw_rows([table for table in tables if table.kind in SUBJECTS])
        for kind in SUBJECTS:
            for row in self.raw:
                if row.kind == kind:
                    SUBJECTS[kind].declare(row, self.ledger)

    def rows(self, start: int = 0, stop: int | None = None) -> list[PlannedRow]:
        return [SUBJECTS[raw.kind].plan(raw, self.ledger) for raw in self.raw[start:stop]]

    def plan(self) -> Plan:
        """All rows at once, settled."""
        rows = self.rows()
        settle(rows)
        return Plan(rows)


def settle(rows: Sequence[PlannedRow]) -> None:
    """Refuse what only shows with all rows in view: a number twice, a circle, a parent that is not taken."""
    refuse_doubles(rows)
    givers = {ref: row for row in rows for ref in row.gives}
    refuse_circles([row for row in rows if row.fate == "new"], givers)
    refuse_orphans(rows, givers)


def refuse_doubles(rows: Iterable[PlannedRow]) -> None:
    first: dict[tuple[str, str], RawRow] = {}
    for row in rows:
        where = first.setdefault((SUBJECTS[row.kind].records, row.key), row.raw)
        if where is not row.raw and row.fate != "refused":
            row.refuse(Problem("", row.title, f"It stands in {where.place} already. Leave one of them out."))


def refuse_circles(rows: Sequence[PlannedRow], givers: dict[Ref, PlannedRow]) -> None:
    while left := [row for row in levels_or_left(rows)[1] if row.fate == "new"]:
        circle = circle_from(left[0], givers)
        named = " comes from ".join([*(row.title for row in circle), circle[0].title])
        for row in circle:
            row.refuse(Problem("", "", f"It would be its own ancestor: {named}. Correct one of these rows."))
        rows = [row for row in rows if row.fate == "new"]


def circle_from(row: PlannedRow, givers: dict[Ref, PlannedRow]) -> list[PlannedRow]:
    """Follow what each row needs among those left over until one comes again."""
    unresolved = set(map(id, levels_or_left(list(givers.values()))[1]))
    path: list[PlannedRow] = []
    while row not in path:
        path.append(row)
        row = next(givers[ref] for ref in row.needs if ref in givers and id(givers[ref]) in unresolved)
    return path[path.index(row) :]


def refuse_orphans(rows: Sequence[PlannedRow], givers: dict[Ref, PlannedRow]) -> None:
    """A row that refers to a refused one is refused as well, and so on down."""
    users: dict[int, list[PlannedRow]] = {}
    for row in rows:
        for ref in row.needs:
            if ref in givers:
                users.setdefault(id(givers[ref]), []).append(row)
    waiting = [row for row in rows if row.fate == "refused"]
    while waiting:
        refused = waiting.pop()
        for row in users.get(id(refused), ()):
            if row.fate == "new":
                row.refuse(
                    Problem(
                        "", "", f"It refers to {refused.title} ({refused.raw.place}), which is not taken."
                    )
                )
                waiting.append(row)


def in_levels(rows: Sequence[PlannedRow]) -> list[list[PlannedRow]]:
    """Rows that need none of the others, then those that need only these, and so on."""
    levels, left = levels_or_left(rows)
    if left:
        raise ValueError("These rows refer to each other in a circle.")
    return levels


def levels_or_left(rows: Sequence[PlannedRow]) -> tuple[list[list[PlannedRow]], list[PlannedRow]]:
    """(levels, rows in a circle or below one), each in the order given."""
    giver = {ref: index for index, row in enumerate(rows) for ref in row.gives}
    needs = [{giver[ref] for ref in row.needs if ref in giver} for row in rows]
    users: dict[int, list[int]] = {}
    for index, wanted in enumerate(needs):
        for other in wanted:
            users.setdefault(other, []).append(index)
    open_needs = [len(wanted) for wanted in needs]
    levels: list[list[int]] = []
    level = [index for index, count in enumerate(open_needs) if not count]
    while level:
        levels.append(level)
        following = []
        for user in (user for index in level for user in users.get(index, ())):
            open_needs[user] -= 1
            if not open_needs[user]:
                following.append(user)
        level = sorted(following)
    placed = {index for level in levels for index in level}
    left = [row for index, row in enumerate(rows) if index not in placed]
    return [[rows[index] for index in level] for level in levels], left
