"""Compute accepted names and lineage anew from the records, or check that they are right."""

from __future__ import annotations

from argparse import ArgumentParser
from typing import Any

from django.core.management.base import BaseCommand, CommandError
from django.db import transaction

from lineage.services.accepted import refresh_accepted, wrongly_accepted
from lineage.services.descent import DescentError
from lineage.services.plan import Plan
from lineage.services.planning import plan_everything
from lineage.services.writing import write
from specimens.models import Name


class Command(BaseCommand):
    help = "Compute accepted names and lineage anew from the records; with --check only say what differs."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--check", action="store_true", help="write nothing; fail where anything differs")

    def handle(self, *args: Any, check: bool = False, **options: Any) -> None:
        try:
            with transaction.atomic():
                self._check() if check else self._rebuild()
        except DescentError as found:
            raise CommandError(f"{found} ({', '.join(found.codes)})") from found

    def _rebuild(self) -> None:
        self.stdout.write("Accepted names …")
        names = refresh_accepted(Name.objects.values_list("pk", flat=True))
        self.stdout.write(f"{len(names)} names touched. Lineage …")
        found = self._plan()
        write(found)
        self.stdout.write("Written.")

    def _check(self) -> None:
        wrong = [f"name {pk}: accepted name differs" for pk in wrongly_accepted()]
        wrong += self._plan().words()
        for line in wrong:
            self.stderr.write(line)
        if wrong:
            raise CommandError(f"{len(wrong)} differences. Run rebuild_lineage to mend them.")
        self.stdout.write("Everything stored is what the records say.")

    def _plan(self) -> Plan:
        found = plan_everything()
        written, removed = len(found.nodes), len(found.removed)
        self.stdout.write(
            f"{written} plants and {len(found.classes)} parentages to write, {removed} to remove."
        )
        return found
