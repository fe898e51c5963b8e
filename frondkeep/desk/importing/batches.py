"""An import from upload to the last row: each step short, everything kept between them."""

from __future__ import annotations

import uuid
from collections import Counter
from collections.abc import Sequence
from datetime import timedelta

from django.db import transaction
from django.utils import timezone

from frondkeep.desk.importing.headings import Table, understand
from frondkeep.desk.importing.intake import MOST_ROWS, FileRefusedError, Sheet
from frondkeep.desk.importing.planning import STEP, Plan, Planning, settle
from frondkeep.desk.importing.rows import PlannedRow, Problem, RawRow
from frondkeep.desk.importing.writing import write_plan
from frondkeep.desk.models import ImportBatch, ImportedRow, ImportSheet
from frondkeep.society.models import User
from frondkeep.society.services.submissions import take_once

KEPT_UNDONE = timedelta(days=7)
KEPT_DONE = timedelta(days=90)
State = ImportBatch.State


class PlanChangedError(Exception):
    """Records changed since the preview was made, and with them what would happen to some rows."""


@transaction.atomic
def open_batch(user: User, sheets: Sequence[Sheet]) -> ImportBatch:
    """Keep these sheets as one import, each as it is best understood. Raises FileRefusedError for too many rows."""
    if sum(len(sheet.rows) for sheet in sheets) > MOST_ROWS + len(sheets):
        raise FileRefusedError(
            f"These sheets have more than {MOST_ROWS:,} rows together. Send fewer at a time."
        )
    forget_old(user)
    batch = ImportBatch.objects.create(by=user)
    for place, sheet in enumerate(sheets):
        table = understand(sheet)
        ImportSheet.objects.create(
            batch=batch, place=place, file=sheet.file[:255], name=sheet.name[:120], encoding=sheet.encoding,
            kind=table.kind if table.is_recognised else "",
            heading_row=max(table.heading_row, 1), columns=table.columns, rows=list(map(list, sheet.rows)),
        )  # fmt: skip
    return batch


def forget_old(user: User) -> None:
    """Imports left lying, and written ones of long ago: their sheets hold people's data."""
    now = timezone.now()
    mine = ImportBatch.objects.filter(by=user)
    mine.exclude(state=State.DONE).filter(at__lt=now - KEPT_UNDONE).delete()
    mine.filter(at__lt=now - KEPT_DONE).delete()


def table_of(sheet: ImportSheet) -> Table:
    read = Sheet(sheet.file, sheet.name, tuple(map(tuple, sheet.rows)), sheet.encoding)
    return Table(
        read, sheet.kind, sheet.heading_row, {key: int(column) for key, column in sheet.columns.items()}
    )


def planning_of(batch: ImportBatch) -> tuple[Planning, list[ImportSheet]]:
    """The planning of the sheets that are not left out, and those sheets in its order."""
    sheets = [sheet for sheet in batch.sheets.all() if sheet.kind]
    return Planning([table_of(sheet) for sheet in sheets]), sheets


def understand_again(sheet: ImportSheet, *, kind: str, heading_row: int) -> None:
    """Guess the columns anew for another kind or another row of headings; the sheet is not saved."""
    table = understand(table_of(sheet).sheet, kind=kind, heading_row=heading_row) if kind else None
    sheet.kind, sheet.heading_row = kind, heading_row
    sheet.columns = table.columns if table else {}


@transaction.atomic
def begin_reading(batch: ImportBatch) -> None:
    """The columns stand: whatever was planned before is planned anew."""
    batch.rows.all().delete()
    batch.state = State.READING
    batch.save()


def read_on(batch: ImportBatch) -> tuple[int, int]:
    """Plan the next rows, at most a step of them; returns (rows planned, all rows)."""
    planning, sheets = planning_of(batch)
    done = batch.rows.count()
    planned = planning.rows(done, done + STEP)
    with transaction.atomic():
        keep(batch, sheets, planned, start=done)
        done += len(planned)
        if done >= len(planning.raw):
            settle_kept(batch, planning.raw)
    return done, len(planning.raw)


def keep(
    batch: ImportBatch, sheets: Sequence[ImportSheet], rows: Sequence[PlannedRow], *, start: int = 0
) -> None:
    ImportedRow.objects.bulk_create(
        [kept_row(batch, sheets[row.raw.position], row, order) for order, row in enumerate(rows, start)],
        batch_size=500,
    )


def kept_row(batch: ImportBatch, sheet: ImportSheet, row: PlannedRow, order: int) -> ImportedRow:
    return ImportedRow(
        batch=batch, sheet=sheet, order=order, number=row.raw.number, key=row.key[:200], title=row.title[:600],
        notes=row.notes, needs=row.needs, gives=row.gives, **fate_of(row),
    )  # fmt: skip


def fate_of(row: PlannedRow) -> dict[str, object]:
    problems = [[problem.column, problem.value, problem.reason] for problem in row.problems]
    return {"fate": row.fate, "problems": problems}


def settle_kept(batch: ImportBatch, raw: Sequence[RawRow]) -> None:
    """What only shows with all rows in view; the batch then waits to be confirmed."""
    kept = list(batch.rows.all())
    rows = [planned_again(one, raw[one.order]) for one in kept]
    settle(rows)
    changed = []
    for one, row in zip(kept, rows, strict=True):
        if row.fate != one.fate or len(row.problems) != len(one.problems):
            for key, value in fate_of(row).items():
                setattr(one, key, value)
            changed.append(one)
    ImportedRow.objects.bulk_update(changed, ["fate", "problems"], batch_size=500)
    batch.state = State.PREVIEW
    batch.save()


def planned_again(kept: ImportedRow, raw: RawRow) -> PlannedRow:
    return PlannedRow(
        raw, kept.key, kept.title, fate=kept.fate, problems=[Problem(*parts) for parts in kept.problems],
        needs=[(kind, number) for kind, number in kept.needs],
        gives=[(kind, number) for kind, number in kept.gives],
    )  # fmt: skip


def confirm(batch: ImportBatch, *, user: User, token: uuid.UUID) -> None:
    """Write the new rows, all or none, once for each token.

    Everything is planned anew first. Where a row would fare otherwise than the preview said, nothing is written,
    the new plan is kept as the preview, and PlanChangedError is raised. Raises what the services raise.
    """
    planning, sheets = planning_of(batch)
    plan = planning.plan()
    if plan.fates() != list(batch.rows.values_list("fate", flat=True)):
        keep_anew(batch, sheets, plan)
        raise PlanChangedError

    def write() -> list[int]:
        write_plan(plan, by=user)
        close(batch, plan)
        return [batch.pk]

    take_once(token=token, user=user, purpose=f"import {batch.pk}", write=write)


@transaction.atomic
def keep_anew(batch: ImportBatch, sheets: Sequence[ImportSheet], plan: Plan) -> None:
    batch.rows.all().delete()
    keep(batch, sheets, plan.rows)


def close(batch: ImportBatch, plan: Plan) -> None:
    """The sheets' content goes; what was said of the rows that were not taken stays."""
    batch.state = State.DONE
    batch.written = dict(Counter(row.kind for row in plan.rows if row.fate == "new"))
    batch.save()
    batch.rows.exclude(fate="refused").delete()
    for sheet in batch.sheets.all():
        sheet.rows = []
        sheet.save()
