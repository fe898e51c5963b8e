"""Weigh anew which names are perhaps one plant."""

from __future__ import annotations

from typing import Any

from django.core.management.base import BaseCommand
from django.db import transaction

from lineage.services.suspicions import rebuild_suspicions


class Command(BaseCommand):
    help = "Compare all cultivar names anew, with all that is recorded of them."

    def handle(self, *args: Any, **options: Any) -> None:
        with transaction.atomic():
            kept, waiting = rebuild_suspicions()
        self.stdout.write(f"{kept} pairs of names are kept; {waiting} wait for a decision.")
