"""The entries of a show by class, as rows for a page and for paper."""

from __future__ import annotations

from dataclasses import dataclass

from django.utils import timezone

from frondkeep.sheets import ClassRows, EntryList, EntryRow
from frondkeep.shows.models import Entry, EntryPlant, Show, ShowClass
from frondkeep.society.models import Society, User
from specimens.naming.names import Run
from specimens.services.shown_names import shown_name


@dataclass(frozen=True, slots=True)
class ListedEntry:
    """One entry as this reader may see it; `exhibitor` is empty where they may not know whose it is."""

    entry: Entry
    runs: tuple[Run, ...]
    exhibitor: str
    plants: int


@dataclass(frozen=True, slots=True)
class ListedClass:
    show_class: ShowClass
    entries: tuple[ListedEntry, ...]


def listed_classes(show: Show, reader: User) -> list[ListedClass]:
    """Every class with its standing entries, in printed order. Five queries, however many entries."""
    by_class: dict[int, list[ListedEntry]] = {}
    for entry in Entry.objects.filter(show=show).standing().as_staged():
        listed = ListedEntry(
            entry, entry_runs(entry), exhibitor_words(entry, show, reader), max(len(entry.plants.all()), 1)
        )
        by_class.setdefault(entry.show_class_id, []).append(listed)
    return [ListedClass(one, tuple(by_class.get(one.pk, ()))) for one in show.classes.all()]


def exhibitor_words(entry: Entry, show: Show, reader: User) -> str:
    """Whose it is: to the committee by name; to others after judging, as the exhibitor appears; before, nothing."""
    if reader.is_committee:
        return entry.exhibitor.name
    if not show.is_judged:
        return ""
    keeper = entry.exhibitor.keeper
    return keeper.shown_to(reader) if keeper else entry.exhibitor.guest_name


def entry_runs(entry: Entry) -> tuple[Run, ...]:
    """What the entry is called: its plants' accepted names, or its title."""
    plants = list(entry.plants.all())
    if not plants:
        return (Run(entry.title, "roman"),)
    runs: list[Run] = []
    for place, plant in enumerate(plants):
        runs += [Run("; ", "roman")] if place else []
        runs += plant_runs(plant)
    return tuple(runs)


def plant_runs(plant: EntryPlant) -> tuple[Run, ...]:
    if plant.name is not None:
        return (plant.name.accepted or plant.name).runs()
    if plant.specimen is None:
        return (Run(plant.typed_name, "roman"),)
    return shown_name(plant.specimen).runs


def paper_list(show: Show, committee: User, *, paper: str = "a4", large_print: bool = False) -> EntryList:
    """The entry list as rows for the press."""
    return EntryList(
        society=Society.current().name,
        show=show.name,
        date_words=show.date_words,
        venue=show.venue,
        printed_at=timezone.localtime(),
        paper=paper,
        large_print=large_print,
        classes=tuple(paper_class(listed) for listed in listed_classes(show, committee)),
    )


def paper_class(listed: ListedClass) -> ClassRows:
    return ClassRows(
        number=listed.show_class.number,
        title=listed.show_class.title,
        section=listed.show_class.section,
        entries=tuple(
            EntryRow(
                number=one.entry.number or "—",
                name_runs=tuple((run.text, run.style) for run in one.runs),
                exhibitor_number=one.entry.exhibitor.number,
                exhibitor=one.exhibitor,
                plants=one.plants,
                note=one.entry.note,
            )
            for one in listed.entries
        ),
    )
