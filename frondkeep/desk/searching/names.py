"""Names found by what somebody types: the start of words, slips of the pen, old names."""

from __future__ import annotations

from dataclasses import dataclass

from django.db.models import Count, Max, Sum
from rapidfuzz import fuzz, process

from specimens.models import Name
from specimens.naming.names import NameParts, sort_key

LIKE_ENOUGH = 82
MOST_FOUND = 60


def folded(text: str) -> str:
    """Plain small letters, as names are kept for sorting: × and accents do not matter."""
    return " ".join(sort_key(NameParts(cultivar=text)).split())


def names_like(text: str, *, limit: int = MOST_FOUND) -> list[int]:
    """Ids of names that this text may mean, best first: words that start so, then names spelled nearly so."""
    asked = folded(text)
    if not asked:
        return []
    kept = kept_names()
    starting = [pk for pk, words in kept.words.items() if starts_words(asked, words)]
    nearly = [
        pk
        for _, _, pk in process.extract(
            asked, kept.texts, scorer=fuzz.token_set_ratio, score_cutoff=LIKE_ENOUGH, limit=limit
        )
    ]
    return list(dict.fromkeys([*starting, *nearly]))[:limit]


def starts_words(asked: str, words: tuple[str, ...]) -> bool:
    """Whether each word asked for is the start of some word of the name."""
    return all(any(word.startswith(start) for word in words) for start in asked.split())


@dataclass(frozen=True)
class KeptNames:
    """The names of one moment, in memory: their words and texts by id."""

    stamp: tuple[int | None, ...]
    words: dict[int, tuple[str, ...]]
    texts: dict[int, str]


_kept = KeptNames(stamp=(), words={}, texts={})


def kept_names() -> KeptNames:
    """The names as they stand; read anew when their number or their versions have changed (one query to see)."""
    global _kept
    found = Name.objects.aggregate(Count("pk"), Max("pk"), Sum("version"))
    stamp = tuple(found.values())
    if _kept.stamp != stamp:
        texts = {
            pk: " ".join(text.split())
            for pk, text in Name.objects.standing().in_reading_order().values_list("pk", "sort_text")
        }
        _kept = KeptNames(stamp, {pk: tuple(text.split()) for pk, text in texts.items()}, texts)
    return _kept
