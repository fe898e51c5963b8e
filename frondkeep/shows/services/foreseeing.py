"""Which entries of shows to come a change of records would touch: their name on list and tag."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from django.db.models import Q

from frondkeep.shows.models import Entry
from specimens.changes import Touched


def foresee_entries(kind: str, ids: Collection[int]) -> Iterable[Touched]:
    """Standing entries, of shows not judged yet, that show one of these plants or bear one of these names."""
    plant = "plants__specimen"
    by_kind = {
        "specimens": Q(**{f"{plant}__in": ids}),
        "names": Q(**{f"{plant}__identification__name__in": ids})
        | Q(**{f"{plant}__identification__name__accepted__in": ids})
        | Q(plants__name__in=ids)
        | Q(plants__name__accepted__in=ids),
    }
    if kind not in by_kind or not ids:
        return []
    entries = Entry.objects.standing().filter(by_kind[kind], show__judging_closed_at__isnull=True).distinct()
    count = entries.count()
    if not count:
        return []
    shows = ", ".join(
        sorted({show.name for show in {entry.show for entry in entries.select_related("show")}})
    )
    return [Touched("entries", count, f"{count} entr{'y' if count == 1 else 'ies'} of {shows}")]
