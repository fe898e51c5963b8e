"""Cultivar names in this process's memory, ready to be asked what a text looks like."""

from __future__ import annotations

from collections.abc import Iterable
from threading import Lock

from django.db.models import Count, Max, QuerySet, Sum
from django.db.models.functions import Length

from lineage.core.lookalikes import NameIndex
from lineage.services.clue_records import WRITTEN, genus_of, texts_of
from specimens.models import Name

Stamp = tuple[object, ...]
# A way the name is written, and its genus.
Row = tuple[str, str]


class KeptCultivars:
    """Every standing cultivar name, brought up to date before each question; one query where nothing changed.

    What was read in a transaction that is then undone is put right at the next question, for the
    database tells another count then.
    """

    def __init__(self) -> None:
        self.lock = Lock()
        self.stamp: Stamp = ()
        self.rows: dict[tuple[int, int], Row] = {}
        self.index = NameIndex()

    def like(self, text: str, genus: str | None, *, limit: int) -> list[tuple[int, float]]:
        """Names most like a text: (id, score), best first, each once; a query or two."""
        return self.like_each([(text, genus)], limit=limit)[0]

    def like_each(
        self, asked: Iterable[tuple[str, str | None]], *, limit: int
    ) -> list[list[tuple[int, float]]]:
        # The index is not safe for writing in several threads; a question takes a millisecond.
        with self.lock:
            self._bring_up_to_date()
            return [self._like(text, genus, limit) for text, genus in asked]

    def _like(self, text: str, genus: str | None, limit: int) -> list[tuple[int, float]]:
        best: dict[int, float] = {}
        for (pk, _), score in self.index.like(text, genus=genus or None, limit=2 * limit):
            best.setdefault(pk, score)
        return list(best.items())[:limit]

    def _bring_up_to_date(self) -> None:
        names = Name.objects.cultivars()
        stamp = _stamp_of(names)
        if stamp == self.stamp:
            return
        now = {
            (pk, way): (text, genus_of(written[-1]))
            for pk, *written in names.order_by("pk").values_list("pk", *WRITTEN)
            for way, text in enumerate(texts_of(*written))
        }
        for key in [key for key, row in self.rows.items() if now.get(key) != row]:
            self.index.remove(key)
            del self.rows[key]
        for key, (text, genus) in now.items():
            if key not in self.rows:
                self.rows[key] = (text, genus)
                self.index.add(key, text, genus or None)
        self.stamp = stamp


def _stamp_of(names: QuerySet[Name]) -> Stamp:
    """Changes whenever a name is added, voided or written otherwise."""
    told = names.aggregate(
        Count("pk"), Max("pk"), Sum("version"), Max("written"), Sum("group"), letters=Sum(Length("written"))
    )
    return tuple(told.values())


kept_cultivars = KeptCultivars()
