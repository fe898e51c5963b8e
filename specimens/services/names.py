"""Adding names, and keeping what follows from the chain of their parents."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from django.db import transaction
from django.db.models import Q

from frondkeep.society.models import User
from specimens.changes import announce
from specimens.models import Name, Placement, Rank, Treatment
from specimens.naming.names import plain, sort_key
from specimens.services.edits import lock_version
from specimens.services.name_parts import parts_of

LONGEST_WRITTEN = 400
# The genus of names that came without one; written as a cultivar epithet alone until somebody places it.
NOT_PLACED = "(genus not known)"


@transaction.atomic
def add_name(
    *, rank: str, epithet: str = "", parent: Name | None = None, by: User | None = None, **fields: Any
) -> Name:
    """A new name. Raises IntegrityError where it is on record already, ValueError for a loop."""
    name = Name(rank=rank, epithet=epithet.strip(), parent=parent, added_by=by, **fields)
    write_out(name)
    name.save()
    announce("names", [name.pk])
    name.refresh_from_db(fields=["accepted"])
    return name


@transaction.atomic
def edit_name(name: Name, *, version: int, **fields: Any) -> Name:
    """Change a name's own fields; every name below it is written anew. Raises StaleEditError."""
    fresh = lock_version(name, version)
    for field, value in fields.items():
        setattr(fresh, field, value)
    write_out(fresh)
    fresh.save()
    below = rewrite_below([fresh])
    announce("names", [fresh.pk, *below])
    return fresh


def write_out(name: Name) -> None:
    """Fill what follows from rank, epithet and parents; the row is not saved."""
    if name.rank == Rank.FORMULA and name.first_parent and name.second_parent:
        name.parts = {
            "formula": [parts_of(name.first_parent).to_json(), parts_of(name.second_parent).to_json()]
        }
    else:
        name.parts = parts_of(name).to_json()
    name.__dict__.pop("name_parts", None)
    # Cut to their columns: one sign may fold into eighteen letters, and the parts keep the name whole.
    name.written = plain(name.runs())[:LONGEST_WRITTEN]
    sorted_by = name.written.casefold() if name.rank == Rank.FORMULA else sort_key(name.name_parts)
    name.sort_text = sorted_by[:LONGEST_WRITTEN]
    name.genus = genus_above(name)


def genus_above(name: Name) -> Name | None:
    """The genus a name stands under; None for a genus itself (it has no row yet) and for a formula across genera."""
    if name.rank == Rank.FORMULA and name.first_parent and name.second_parent:
        first, second = genus_above(name.first_parent), genus_above(name.second_parent)
        return first if first == second else None
    above = name
    while above.parent is not None:
        above = above.parent
    return above if above.pk else None


def rewrite_below(names: Iterable[Name]) -> list[int]:
    """Write out anew every name under these, level by level; returns their ids."""
    written: list[int] = []
    level = list(names)
    while level:
        ids = [name.pk for name in level]
        level = list(
            Name.objects.filter(
                Q(parent__in=ids) | Q(group__in=ids) | Q(first_parent__in=ids) | Q(second_parent__in=ids)
            )
            .exclude(pk__in=written)
            .select_related("parent", "group")
        )
        for name in level:
            write_out(name)
            name.save_without_historical_record()  # type: ignore[attr-defined]  # the history adds it
        written += [name.pk for name in level]
    return written


@transaction.atomic
def place_name(
    *, name: Name, treatment: Treatment, status: str, accepted: Name | None = None, source: str = ""
) -> Placement:
    """What a treatment says of a name; a second call replaces the first. Raises IntegrityError for nonsense."""
    placement, _ = Placement.objects.update_or_create(
        name=name, treatment=treatment, defaults={"status": status, "accepted": accepted, "source": source}
    )
    announce("placements", [name.pk])
    return placement


@transaction.atomic
def follow_treatment(treatment: Treatment) -> None:
    """The society follows another treatment from now on."""
    for former in Treatment.objects.filter(followed=True).exclude(pk=treatment.pk):
        former.followed = False
        former.save()
    treatment.followed = True
    treatment.save()
    announce("placements", Placement.objects.values_list("name_id", flat=True))


def genus_named(epithet: str, *, by: User | None = None) -> Name:
    """The genus of this name, added unchecked where it is new."""
    found = (
        Name.objects.standing()
        .filter(rank__in=[Rank.GENUS, Rank.NOTHOGENUS], epithet__iexact=epithet)
        .first()
    )
    return found or add_name(rank=Rank.GENUS, epithet=epithet, by=by, checked=epithet == NOT_PLACED)
