"""Saying what a plant is thought to be."""

from __future__ import annotations

from django.db import transaction

from frondkeep.society.models import User
from specimens.changes import announce
from specimens.models import Identification, Name, Specimen, Treatment
from specimens.naming.dates import PartialDate

NO_DATE = PartialDate("", None, None)


@transaction.atomic
def identify(
    specimen: Specimen,
    *,
    name: Name | None,
    by: User | None,
    ground: str = Identification.Ground.LABEL,
    qualifier: str = "",
    on: PartialDate = NO_DATE,
    treatment: Treatment | None = None,
    remarks: str = "",
    by_words: str = "",
    and_pieces: bool = False,
) -> Identification:
    """Put a new identification beside the earlier ones.

    It becomes the current one, unless a curator or DNA stands behind the current one and this is
    neither a curator's nor a test: then it waits as a proposal. With `and_pieces` every growing
    piece of the plant, piece of a piece and so on is identified likewise.
    """
    changed = [specimen, *(pieces_below(specimen) if and_pieces else [])]
    made = [
        _identify_one(one, name, by, ground, qualifier, on, treatment, remarks, by_words) for one in changed
    ]
    announce("specimens", [one.pk for one in changed])
    return made[0]


def _identify_one(
    specimen: Specimen,
    name: Name | None,
    by: User | None,
    ground: str,
    qualifier: str,
    on: PartialDate,
    treatment: Treatment | None,
    remarks: str,
    by_words: str,
) -> Identification:
    # Locked, so that two identifications at one moment do not both believe they replace the current one.
    locked = (
        Specimen.objects.select_for_update(of=("self",)).select_related("identification").get(pk=specimen.pk)
    )
    current = locked.identification
    by_curator = bool(by and by.is_curator)
    waits = current is not None and current.is_firm and not by_curator and ground != Identification.Ground.DNA
    if current is not None and not waits:
        current.standing = Identification.Standing.EARLIER
        current.save()
    made = Identification.objects.create(
        specimen=locked,
        name=name,
        by=by,
        by_words=by_words,
        by_curator=by_curator,
        ground=ground,
        qualifier=qualifier,
        on=on,
        treatment=treatment,
        remarks=remarks,
        standing=Identification.Standing.PROPOSED if waits else Identification.Standing.CURRENT,
    )
    if not waits:
        locked.identification = made
        locked.save()
        specimen.identification = made
    return made


def pieces_below(specimen: Specimen) -> list[Specimen]:
    """All pieces of a plant, their pieces and so on; not the plant itself; no sports."""
    found: dict[int, Specimen] = {}
    level = [specimen.pk]
    while level:
        pieces = (
            Specimen.objects.standing()
            .filter(division__parent__in=level, division__sport=False)
            .exclude(pk__in=found)
        )
        level = [piece.pk for piece in pieces if piece.pk != specimen.pk]
        found.update({piece.pk: piece for piece in pieces if piece.pk != specimen.pk})
    return list(found.values())
