"""Recording what tells plants apart: states of traits, of a name or seen on one plant."""

from __future__ import annotations

from collections.abc import Mapping

from django.db import transaction

from frondkeep.society.models import Member
from specimens.changes import announce
from specimens.models import Name, Specimen, TraitRecord, TraitState


@transaction.atomic
def record_traits(
    about: Name | Specimen, *, states: Mapping[str, str], source: str = "", seen_by: Member | None = None
) -> list[TraitRecord]:
    """Record states by key, trait → state; what is on record for it already is left as it is.

    Raises TraitState.DoesNotExist for a state that its trait has not.
    """
    subject = {"name": about} if isinstance(about, Name) else {"specimen": about}
    made = []
    for trait, key in states.items():
        state = TraitState.objects.get(trait__key=trait, key=key)
        record, is_new = TraitRecord.objects.get_or_create(
            state=state, **subject, defaults={"source": source, "seen_by": seen_by}
        )
        made += [record] if is_new else []
    if made:
        announce("names" if isinstance(about, Name) else "specimens", [about.pk])
    return made
