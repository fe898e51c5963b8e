"""Cultivar names in this process's memory, ready to be asked what a text looks like."""

from __future__ import annotations

from collections.abc import Iterable
from threading import Lock

from django.db.models import Count, Max, QuerySet, Sum
from django.db.models.functions import Length

from lineage.core.lookalikes import NameIndex
from specimens.models import Name
from specimens.services.names import NOT_PLACED

Stamp = tuple[object, ...]
# The name as written, and its genus.
Row = tuple[str, str]


class KeptCultivars:
    """Every standing cultivar name, brought up to date before each question; one query where nothing changed.

    What was read in a transaction that is then undone is put right at the next question, for the
    database tells another count then.
    """

    def __init__(self) -> None:
        self.lock = Lock()
        self.stamp: Stamp = ()
        self.rows: dict[int, Row] = {}
        self.index = NameIndex()

    def like(self, text: str, genus: str | None, *, limit: int) -> list[tuple[int, float]]:
        """Names most like a text: (id, score), best first; a query or two."""
        return self.like_each([(text, genus)], limit=limit)[0]

    def like_each(
        self, asked: Iterable[tuple[str, str | None]], *, limit: int
    ) -> list[list[tuple[int, float]]]:
        # The index is not safe for writing in several threads; a question takes a millisecond.
        with self.lock:
            self._bring_up_to_date()
            return [self.index.like(text, genus=genus or None, limit=limit) for text, genus in asked]

    def _bring_up_to_date(self) -> None:
        names = Name.objects.cultivars()
        stamp = _stamp_of(names)
        if stamp == self.stamp:
            return
        now = {pk: (written, genus or "") for pk, written, genus in _rows(names)}
        for pk in [pk for pk, row in self.rows.items() if now.get(pk) != row]:
            self.index.remove(pk)
            del self.rows[pk]
        for pk, (written, genus) in now.items():
            if pk not in self.rows:
                self.rows[pk] = (written, genus)
                self.index.add(pk, written, None if genus == NOT_PLACED else genus or None)
        self.stamp = stamp


def _rows(names: QuerySet[Name]) -> QuerySet[Name]:
    return names.order_by("pk").values_list("pk", "written", "genus__epithet")


def _stamp_of(names: QuerySet[Name]) -> Stamp:
    """Changes whenever a name is added, voided or written otherwise."""
    told = names.aggregate(
        Count("pk"), Max("pk"), Sum("version"), Max("written"), letters=Sum(Length("written"))
    )
    return tuple(told.values())


kept_cultivars = KeptCultivars()
