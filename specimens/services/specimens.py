"""Logging a plant, changing its record, and what befalls it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Any

from django.db import transaction
from django.utils import timezone

from frondkeep.society.models import Keeper, Meeting, Member, User
from specimens.changes import announce
from specimens.models import (
    Came,
    Division,
    Holds,
    Identification,
    Keeping,
    Name,
    Specimen,
    SporeSowing,
    State,
)
from specimens.naming.codes import Code
from specimens.naming.dates import PartialDate
from specimens.services.codes import draw_code, keep_clear_of
from specimens.services.edits import lock_version
from specimens.services.identifications import NO_DATE, identify
from specimens.services.sowings import Source, record_sowing


@dataclass(frozen=True, slots=True)
class PieceOf:
    """The plant a piece was taken from: on record, or in words."""

    parent: Specimen | None = None
    words: str = ""
    kind: str = Division.Kind.PUP
    sport: bool = False
    sport_words: str = ""
    by: Member | None = None


@transaction.atomic
def log_specimen(
    *,
    keeper: Keeper | None,
    came: str,
    by: User | None,
    label_text: str = "",
    name: Name | None = None,
    qualifier: str = "",
    ground: str = Identification.Ground.LABEL,
    piece_of: PieceOf | None = None,
    sowing: SporeSowing | None = None,
    sources: tuple[Source, ...] = (),
    acquired: PartialDate = NO_DATE,
    code: Code | None = None,
    identified_by_words: str = "",
    **fields: Any,
) -> Specimen:
    """Record a plant that came to a keeper, with its keeping, its origin and what it is thought to be.

    `came` is one of `Came`; a piece makes a division of `piece_of`; from spores joins `sowing`, or makes
    one of `sources`. Other fields are the specimen's own. Draws a code of this year unless one is given.
    Raises whatever the refresher finds wrong with its descent (lineage.core.PedigreeError).
    """
    specimen = Specimen(
        code=str(code or draw_code(year=timezone.localdate().year)),
        came=came,
        label_text=label_text,
        acquired=acquired,
        logged_by=by,
        **fields,
    )
    if code is not None:
        keep_clear_of(code)
    if came == Came.PIECE:
        specimen.division = divide(piece_of or PieceOf(), taken=acquired)
    elif came == Came.SOWING:
        specimen.sowing = sowing or record_sowing(sources=sources, label=label_text[:200])
    specimen.save()
    if keeper is not None:
        Keeping.objects.create(
            specimen=specimen,
            keeper=keeper,
            since=acquired,
            is_open=specimen.state in (State.GROWING, State.LOST),
        )
    if name is not None or label_text:
        identify(
            specimen,
            name=name,
            by=by,
            ground=ground,
            qualifier=qualifier,
            by_words=identified_by_words,
            on=acquired,
        )
    else:
        announce("specimens", [specimen.pk])
    return specimen


def divide(piece: PieceOf, *, taken: PartialDate = NO_DATE) -> Division:
    """The division a piece came by. A piece of a pot of several is no clone of it: lineage reads `holds`."""
    return Division.objects.create(
        parent=piece.parent,
        parent_words=piece.words,
        kind=piece.kind,
        sport=piece.sport,
        sport_words=piece.sport_words,
        taken=taken,
        by=piece.by,
    )


@transaction.atomic
def take_pups(
    parent: Specimen,
    *,
    count: int,
    by: User,
    keeper: Keeper,
    taken: PartialDate = NO_DATE,
    kind: str = Division.Kind.PUP,
    meeting: Meeting | None = None,
    label_text: str = "",
) -> list[Specimen]:
    """Record `count` pieces taken from a plant; they bear its name until somebody thinks otherwise."""
    if not 1 <= count <= 50:
        raise ValueError("Between 1 and 50 pieces at a time.")
    current = parent.identification
    return [
        log_specimen(
            keeper=keeper,
            came=Came.PIECE,
            by=by,
            label_text=label_text or parent.label_text,
            acquired=taken,
            meeting=meeting,
            name=current.name if current else None,
            qualifier=current.qualifier if current else "",
            ground=current.ground if current else Identification.Ground.LABEL,
            piece_of=PieceOf(parent=parent, kind=kind, by=getattr(by, "member", None)),
            holds=parent.holds,
            seen_by=parent.seen_by,
            from_keeper=parent.keeper,
        )
        for _ in range(count)
    ]


@transaction.atomic
def edit_specimen(specimen: Specimen, *, version: int, **fields: Any) -> Specimen:
    """Change a plant's own fields. Raises StaleEditError where somebody was quicker."""
    fresh = lock_version(specimen, version)
    for field, value in fields.items():
        setattr(fresh, field, value)
    fresh.save()
    announce("specimens", [fresh.pk])
    return fresh


@transaction.atomic
def end_specimen(
    specimen: Specimen, *, version: int, state: str, on: PartialDate = NO_DATE, reason: str = ""
) -> Specimen:
    """It died, left, was stolen or was entered by mistake: the open keeping closes, the record stays."""
    fresh = lock_version(specimen, version)
    fresh.state, fresh.ended, fresh.state_reason = state, on, reason
    fresh.save()
    for keeping in fresh.keepings.filter(is_open=True):
        keeping.is_open, keeping.until = False, on
        keeping.save()
    announce("specimens", [fresh.pk])
    return fresh


@transaction.atomic
def change_keeper(specimen: Specimen, *, keeper: Keeper, on: PartialDate = NO_DATE) -> Keeping:
    """The plant went into other hands."""
    Specimen.objects.select_for_update(of=("self",)).get(pk=specimen.pk)  # two receivers at one moment
    for keeping in specimen.keepings.filter(is_open=True):
        keeping.is_open, keeping.until = False, on
        keeping.save()
    made = Keeping.objects.create(specimen=specimen, keeper=keeper, since=on)
    announce("keepings", [specimen.pk])
    return made


@transaction.atomic
def seen_alive(specimen: Specimen, *, on: date) -> None:
    """Somebody saw it growing; an earlier day never replaces a later one."""
    if specimen.last_seen_alive is None or specimen.last_seen_alive < on:
        specimen.last_seen_alive = on
        specimen.save()


def is_pot_of_several(specimen: Specimen) -> bool:
    return specimen.holds in (Holds.SEVERAL, Holds.KINDS)
