"""Mending how a plant came: a wrong piece-of link, a piece that was none."""

from __future__ import annotations

from django.db import transaction

from lineage.services.descent import DescentError
from specimens.changes import announce
from specimens.models import Came, Division, Specimen
from specimens.services.edits import lock_version
from specimens.services.specimens import PieceOf, divide

MENDED = "The record of how the plant came was mended."


@transaction.atomic
def mend_origin(plant: Specimen, *, version: int, came: str, piece_of: PieceOf | None = None) -> Specimen:
    """Another way of coming, from another plant. What stood before is voided, and stays in the history.

    `came` is any way but from a sowing. Raises StaleEditError, and DescentError where the plant would
    descend from itself: nothing is changed then.
    """
    if piece_of is not None and piece_of.parent == plant:
        # Two records of one plant may name each other; one record may not name itself.
        words = f"A plant cannot come from itself: {plant.code} would be its own parent."
        raise DescentError(words, [plant.code])
    fresh = lock_version(plant, version)
    former = fresh.division
    fresh.came, fresh.sowing = came, None
    fresh.division = divide(piece_of or PieceOf(), taken=fresh.acquired) if came == Came.PIECE else None
    fresh.save()
    if former is not None:
        void_division(former)
    announce("specimens", [fresh.pk])
    return fresh


def void_division(division: Division) -> None:
    """Void a division that no plant came by any more."""
    if not division.specimens.exists():
        division.voided_reason = MENDED
        division.save()
