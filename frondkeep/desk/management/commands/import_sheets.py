"""`manage.py import_sheets FILE...`: what would be imported, and with `--confirm` the import itself."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from django.core.management.base import BaseCommand, CommandError, CommandParser
from django.db import IntegrityError

from frondkeep.desk.importing.folder import read_tables
from frondkeep.desk.importing.headings import Table
from frondkeep.desk.importing.intake import FileRefusedError
from frondkeep.desk.importing.planning import STEP, Plan, Planning, settle
from frondkeep.desk.importing.rows import PlannedRow
from frondkeep.desk.importing.writing import write_plan
from frondkeep.society.models import User
from lineage.core import PedigreeError
from lineage.services.descent import DescentError

Rows = list[PlannedRow]


class Command(BaseCommand):
    help = "Read spreadsheets (CSV or XLSX) and say what each row would become; write them with --confirm."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("files", nargs="+", type=Path, metavar="FILE")
        parser.add_argument("--confirm", action="store_true", help="Write the new rows.")
        parser.add_argument("--by", default="", metavar="NAME", help="The sign-in name of whoever imports.")

    def handle(self, *, files: list[Path], confirm: bool, by: str, **options: Any) -> None:
        user = self.user(by)
        try:
            tables = read_tables(files)
        except (FileRefusedError, OSError) as problem:
            raise CommandError(str(problem)) from problem
        self.tell_tables(tables)
        plan = self.plan(tables)
        self.tell_plan(tables, plan)
        if confirm and plan.new():
            self.write(plan, user)
        elif plan.new():
            self.stdout.write("Nothing is written yet. Say --confirm to write the new rows.")

    def user(self, name: str) -> User | None:
        if not name:
            return None
        found = User.objects.filter(name__iexact=name).first()
        if found is None:
            raise CommandError(f"Nobody signs in as {name}.")
        return found

    def tell_tables(self, tables: list[Table]) -> None:
        for table in tables:
            if not table.is_recognised:
                raise CommandError(
                    f"We do not recognise the columns of {table.sheet.file}. Import it on the page."
                )
            self.stdout.write(f"{table.sheet.file}: {table.kind}, headings in row {table.heading_row}")

    def plan(self, tables: list[Table]) -> Plan:
        planning = Planning(tables)
        rows: Rows = []
        while len(rows) < len(planning.raw):
            rows += planning.rows(len(rows), len(rows) + STEP)
            self.stdout.write(f"  read {len(rows)} of {len(planning.raw)} rows")
        settle(rows)
        return Plan(rows)

    def tell_plan(self, tables: list[Table], plan: Plan) -> None:
        for row in plan.rows:
            for problem in row.problems:
                self.stdout.write(f"  not taken: {row.raw.place}: {row.title}: {problem}")
        for place, table in enumerate(tables):
            count = plan.counts(place)
            self.stdout.write(
                f"{table.sheet.file}: {count['new']} new, {count['on record']} on record, "
                f"{count['refused']} not taken"
            )

    def write(self, plan: Plan, user: User | None) -> None:
        """Whoever runs this may read the whole database: offices are given unless somebody else is named."""
        try:
            write_plan(plan, by=user, may_appoint=True if user is None else None, tell=self.tell)
        except (IntegrityError, DescentError, PedigreeError) as problem:
            raise CommandError(f"Nothing was written. {problem}") from problem
        self.stdout.write(f"Written: {len(plan.new())} rows.")

    def tell(self, kind: str, done: int, total: int) -> None:
        self.stdout.write(f"  {kind}: {done} of {total}" if total else f"  {kind} …")
