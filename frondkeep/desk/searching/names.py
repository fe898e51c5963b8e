"""Names found by what somebody types: the start of words, slips of the pen, old names."""

from __future__ import annotations

from dataclasses import dataclass
from threading import Lock

from django.db.models import Count, Max, Min, QuerySet, Sum
from django.db.models.functions import Length

from frondkeep.desk.searching.asked import LONGEST_ASKED
from lineage.core.lookalikes import NameIndex
from specimens.models import Name, Rank
from specimens.naming.names import NameParts, sort_key
from specimens.services.names import NOT_PLACED

LIKE_ENOUGH = 0.5
MOST_FOUND = 60
Stamp = tuple[object, ...]
# Id, text for sorting, the name without its genus, its genus.
Row = tuple[int, str, str, str]


def names_like(text: str, *, limit: int = MOST_FOUND) -> list[int]:
    """Ids of names that this text may mean, best first: words that start so, then names spelled nearly so."""
    text = text[:LONGEST_ASKED]
    asked = folded(text)
    return _kept.find(text, asked, limit=limit) if asked else []


@dataclass(frozen=True, slots=True)
class Alike:
    """A name on record spelled like a text: without its genus, and the genus; `score` 0..1 of `compare_names`."""

    pk: int
    name: str
    genus: str
    score: float


def names_alike(text: str, *, genus: str = "", least: float = LIKE_ENOUGH, limit: int = 5) -> list[Alike]:
    """Names spelled like this text, best first, none below `least`; only of `genus` where it is given."""
    return _kept.alike(text, genus=genus, least=least, limit=limit)


def folded(text: str) -> str:
    """Plain small letters, as names are kept for sorting: × and accents do not matter."""
    return " ".join(sort_key(NameParts(cultivar=text)).split())


class KeptNames:
    """Every standing name in this process's memory, brought up to date before each question; one query to see."""

    def __init__(self) -> None:
        self.lock = Lock()
        self.stamp: Stamp = ()
        self.rows: dict[int, Row] = {}
        self.words: dict[int, tuple[str, ...]] = {}
        self.index = NameIndex()

    def find(self, text: str, asked: str, *, limit: int) -> list[int]:
        # The index is not safe for writing in several threads; a question takes a millisecond.
        with self.lock:
            self.bring_up_to_date()
            starting = [pk for pk, words in self.words.items() if starts_words(asked, words)]
            nearly = self.index.suggest(text, limit=limit) + [
                (pk, score) for pk, score in self.index.like(text, limit=limit) if score >= LIKE_ENOUGH
            ]
        starting.sort(key=lambda pk: self.rows[pk][1])
        return list(dict.fromkeys([*starting, *(pk for pk, _ in nearly)]))[:limit]

    def alike(self, text: str, *, genus: str, least: float, limit: int) -> list[Alike]:
        with self.lock:
            self.bring_up_to_date()
            scored = self.index.like(text, genus=genus or None, limit=limit)
            return [Alike(pk, *self.rows[pk][2:], score) for pk, score in scored if score >= least]

    def bring_up_to_date(self) -> None:
        """Take in what changed: a name once read is not read again."""
        names = Name.objects.standing()
        stamp = stamp_of(names)
        if stamp == self.stamp:
            return
        now = {row[0]: row for row in map(row_of, names.select_related("genus"))}
        for pk in [pk for pk, row in self.rows.items() if now.get(pk) != row]:
            self.index.remove(pk)
            del self.rows[pk], self.words[pk]
        for pk, row in now.items():
            if pk not in self.rows:
                self.rows[pk], self.words[pk] = row, tuple(row[1].split())
                self.index.add(pk, row[2], row[3] or None)
        self.stamp = stamp


def starts_words(asked: str, words: tuple[str, ...]) -> bool:
    """Whether each word asked for is the start of some word of the name."""
    return all(any(word.startswith(start) for word in words) for start in asked.split())


def stamp_of(names: QuerySet[Name]) -> Stamp:
    """Changes whenever a name is added, voided or written otherwise."""
    letters = Sum(Length("sort_text"))
    ends = {"first": Min("sort_text"), "last": Max("sort_text")}
    return tuple(names.aggregate(Count("pk"), Max("pk"), Sum("version"), letters=letters, **ends).values())


def row_of(name: Name) -> Row:
    genus = name.genus.epithet if name.genus and name.genus.epithet != NOT_PLACED else ""
    if name.rank == Rank.FORMULA:
        return name.pk, name.sort_text, name.written, ""
    bare = name.epithet if name.is_cultivar else name.written.removeprefix(genus).strip() or name.epithet
    return name.pk, name.sort_text, bare, genus


_kept = KeptNames()
