"""The shows, classes and entries on record and in the sheets, looked up once."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from frondkeep.desk.importing.values import plain
from frondkeep.shows.models import Entry, Show, ShowClass

# A show by its plain name and day, a class by its show and number.
ShowKey = tuple[str, date | None]
ClassKey = tuple[ShowKey, int]


def show_key(name: str, day: date | None) -> ShowKey:
    return (plain(name), day)


@dataclass
class ShowBook:
    """`stages` says of each class, on record or declared, what is staged in it."""

    classes: dict[ClassKey, int] = field(default_factory=dict)
    stages: dict[ClassKey, str] = field(default_factory=dict)
    names: dict[ShowKey, str] = field(default_factory=dict)
    entries: dict[str, int] = field(default_factory=dict)
    # The show that entries without one are for: the one the sheets declare, else the next to come.
    meant: ShowKey | None = None

    @classmethod
    def load(cls) -> ShowBook:
        book = cls()
        for one in ShowClass.objects.select_related("show"):
            key = (show_key(one.show.name, one.show.date), one.number)
            book.classes[key] = one.pk
            book.stages[key] = one.stages
        coming = Show.objects.coming().first()
        if coming:
            book.meant = show_key(coming.name, coming.date)
        book.entries = dict(Entry.objects.exclude(import_key="").values_list("import_key", "pk"))
        return book

    def declare(self, key: ClassKey, name: str, stages: str) -> None:
        self.names[key[0]] = name
        self.stages.setdefault(key, stages)
        self.meant = key[0]
