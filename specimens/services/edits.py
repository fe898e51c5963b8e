"""Two people editing one record: the second is told, and keeps what they typed."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

from django.db import models, transaction

if TYPE_CHECKING:
    from specimens.models import Name, Specimen

# The models with a column `version`.
Record = TypeVar("Record", "Name", "Specimen")


class StaleEditError(Exception):
    """Somebody saved this record after the form was opened; `now` is the record as it stands."""

    def __init__(self, now: models.Model) -> None:
        self.now = now
        super().__init__("Somebody changed this while you were typing.")


@transaction.atomic
def lock_version(record: Record, version: int) -> Record:
    """The record fresh from the database, locked until commit, if it still is at this version.

    The lock stops two savers who both read the same version (PostgreSQL; SQLite has one writer).
    """
    fresh = type(record)._default_manager.select_for_update(of=("self",)).get(pk=record.pk)
    if fresh.version != version:
        raise StaleEditError(fresh)
    fresh.version += 1
    return fresh
