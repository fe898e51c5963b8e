"""Adding many names, traits and claims at once, as an import does: as one at a time, in few queries."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from django.db import transaction
from django.utils import timezone

from frondkeep.society.models import User
from specimens.changes import announce
from specimens.models import ClaimParent, Name, ParentageClaim, Specimen, TraitRecord, TraitState
from specimens.services.claims import PARENTS_NEEDED
from specimens.services.many_plants import create
from specimens.services.names import write_out
from specimens.services.sowings import Source


@dataclass(frozen=True, slots=True, kw_only=True)
class NewClaim:
    """What `claim_parentage` is told of one claim."""

    about: Specimen | Name
    says: str
    ground: str
    parents: tuple[Source, ...] = ()
    fields: dict[str, Any] = field(default_factory=dict)


@transaction.atomic
def add_names(names: Sequence[Name], *, by: User | None) -> None:
    """Insert new names none of which stands under another of them; as `add_name` does each.

    Raises IntegrityError where one is on record already.
    """
    for name in names:
        name.added_by = by
        write_out(name)
    create(names, by=by)
    announce("names", [name.pk for name in names])


@transaction.atomic
def record_traits_of_many(
    states: Sequence[tuple[Name, Mapping[str, str]]], *, source: str, by: User | None
) -> None:
    """Record states by key, trait → state, of new names. Raises KeyError for a state that its trait has not."""
    known = {(state.trait.key, state.key): state for state in TraitState.objects.select_related("trait")}
    records = [
        TraitRecord(name=name, state=known[trait, key], source=source)
        for name, told in states
        for trait, key in told.items()
    ]
    create(records, by=by)
    announce("names", {record.name_id for record in records if record.name_id})


@transaction.atomic
def claim_parentage_of_many(claims: Sequence[NewClaim], *, by: User | None) -> list[ParentageClaim]:
    """One new current claim about each of several subjects; as `claim_parentage` does each.

    Raises ValueError for a wrong number of parents.
    """
    for claim in claims:
        fewest, most = PARENTS_NEEDED[claim.says]
        if not fewest <= len(claim.parents) <= most:
            raise ValueError(f"A claim of {claim.says} needs {fewest} to {most} parents.")
    supersede(claims)
    made = [
        ParentageClaim(says=claim.says, ground=claim.ground, by=by, **subject(claim.about), **claim.fields)
        for claim in claims
    ]
    create(made, by=by)
    ClaimParent.objects.bulk_create(
        ClaimParent(claim=one, order=order, specimen=parent.specimen, name=parent.name, words=parent.words)
        for one, told in zip(made, claims, strict=True)
        for order, parent in enumerate(told.parents)
    )
    announce("claims", [claim.pk for claim in made])
    return made


def subject(about: Specimen | Name) -> dict[str, Any]:
    return {"specimen": about} if isinstance(about, Specimen) else {"name": about}


def supersede(claims: Sequence[NewClaim]) -> None:
    """The claims that stood before are kept as formerly thought."""
    standing = ParentageClaim.objects.select_for_update(of=("self",)).filter(standing="current")
    names = [claim.about for claim in claims if isinstance(claim.about, Name)]
    plants = [claim.about for claim in claims if isinstance(claim.about, Specimen)]
    for former in [*standing.filter(name__in=names), *standing.filter(specimen__in=plants)]:
        former.standing, former.superseded_at = "superseded", timezone.now()
        former.save()
