"""A schedule by sections, as it is read."""

from __future__ import annotations

from dataclasses import dataclass, field

from django.db.models import Count, Q

from frondkeep.shows.models import Show, ShowClass


@dataclass(slots=True)
class Section:
    title: str
    classes: list[ShowClass] = field(default_factory=list)


def schedule_of(show: Show, *, count_entries: bool) -> list[Section]:
    """The classes of a show under their sections, in the order of numbers; with `count_entries`, each class has
    `standing_entries`. One query.
    """
    classes = show.classes.select_related("genus").order_by("number")
    if count_entries:
        classes = classes.annotate(
            standing_entries=Count("entries", filter=Q(entries__withdrawn_at__isnull=True))
        )
    sections: list[Section] = []
    for one in classes:
        if not sections or sections[-1].title != one.section:
            sections.append(Section(one.section))
        sections[-1].classes.append(one)
    return sections
