"""A plant that was given up grows after all."""

from __future__ import annotations

from django.db import transaction

from specimens.changes import announce
from specimens.models import Specimen, State
from specimens.naming.dates import PartialDate
from specimens.services.edits import lock_version


@transaction.atomic
def found_again(plant: Specimen, *, version: int) -> Specimen:
    """It grows, and whoever kept it last keeps it on as if nothing had been said. Raises StaleEditError."""
    fresh = lock_version(plant, version)
    fresh.state, fresh.ended, fresh.state_reason = State.GROWING, PartialDate(), ""
    fresh.save()
    last = fresh.keepings.order_by("-pk").first()
    if last is not None and not last.is_open:
        last.is_open, last.until = True, PartialDate()
        last.save()
    announce("specimens", [fresh.pk])
    return fresh
