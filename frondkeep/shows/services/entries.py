"""Entering, withdrawing and numbering."""

from __future__ import annotations

from dataclasses import dataclass

from django.db import transaction
from django.db.models import F, Max
from django.utils import timezone

from frondkeep.shows.models import Entry, EntryPlant, Exhibitor, Show, ShowClass
from frondkeep.shows.services.exhibitors import lock_show
from frondkeep.shows.services.fitting import objections
from frondkeep.society.models import User
from specimens.models import Name, Specimen


class EntryRefusedError(ValueError):
    """The entry is not taken; `reasons` say why, each a sentence."""

    def __init__(self, reasons: list[str]) -> None:
        self.reasons = reasons
        super().__init__(" ".join(reasons))


@dataclass(frozen=True, slots=True)
class Staged:
    """One plant to be shown: on record, or by a typed name and the name on record it was read as."""

    specimen: Specimen | None = None
    typed_name: str = ""
    name: Name | None = None


@transaction.atomic
def enter(
    show_class: ShowClass,
    *,
    exhibitor: Exhibitor,
    plants: tuple[Staged, ...] = (),
    by: User | None,
    title: str = "",
    note: str = "",
    overrule: bool = False,
    import_key: str = "",
) -> Entry:
    """An entry of this exhibitor. Raises EntryRefusedError with every reason against it.

    With `overrule`, which is the committee's, it is taken whatever the show's rules say.
    """
    show = lock_show(show_class.show)
    reasons = [] if overrule else objections(show, show_class, exhibitor, as_they_stand(plants))
    reasons += shortcomings(show_class, plants, title)
    if reasons:
        raise EntryRefusedError(reasons)
    entry = Entry.objects.create(
        show=show,
        show_class=show_class,
        exhibitor=exhibitor,
        entered_by=by,
        title=title,
        note=note,
        import_key=import_key,
    )
    for order, plant in enumerate(plants):
        EntryPlant.objects.create(
            entry=entry, order=order, specimen=plant.specimen, typed_name=plant.typed_name, name=plant.name
        )
    return entry


def as_they_stand(plants: tuple[Staged, ...]) -> list[Specimen]:
    """The recorded plants as the database has them now, not as a page found them."""
    ids = [plant.specimen.pk for plant in plants if plant.specimen]
    return list(Specimen.objects.filter(pk__in=ids).with_page_parts())


def shortcomings(show_class: ShowClass, plants: tuple[Staged, ...], title: str) -> list[str]:
    """What an entry lacks whatever the rules say: something to stage."""
    if show_class.stages_plants and not plants:
        return ["Say which plant is shown."]
    if not show_class.stages_plants and not plants and not title.strip():
        return ["Say what is shown."]
    return []


@transaction.atomic
def withdraw(entry: Entry) -> None:
    """The entry is not staged; its number is not given to another."""
    fresh = Entry.objects.select_for_update().get(pk=entry.pk)
    fresh.withdrawn_at = fresh.withdrawn_at or timezone.now()
    fresh.save()


@transaction.atomic
def number_entries(show: Show) -> int:
    """Give each standing entry without a number the next one, by class, then as they came; returns how many.

    Numbers that were given stay. The lock makes two who number at once follow each other.
    """
    lock_show(show)
    last = Entry.objects.filter(show=show).aggregate(last=Max("number"))["last"] or 0
    waiting = (
        Entry.objects.filter(show=show, number__isnull=True)
        .standing()
        .order_by("show_class__number", F("at").asc(), "pk")
    )
    for number, entry in enumerate(waiting, last + 1):
        entry.number = number
        entry.save()
    return len(waiting)


@transaction.atomic
def close_judging(show: Show) -> None:
    """Judging is over: from now on everybody may read whose entry it is."""
    locked = lock_show(show)
    if locked.judging_closed_at is None:
        locked.judging_closed_at = timezone.now()
        locked.save()
