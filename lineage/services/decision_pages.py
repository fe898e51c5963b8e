"""What the list of decisions says of each."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from django.db.models import QuerySet

from frondkeep.society.models import User
from lineage.models import Kind, Ruling, Suspicion
from lineage.services.rulings import standing_rulings


@dataclass(frozen=True, slots=True)
class DecidedRow:
    """One decision; `pair` is the id of the pair's page, where it has one."""

    ruling: Ruling
    by: str
    stands: bool
    pair: int | None


def rulings_shown(answer: str) -> QuerySet[Ruling]:
    """Decisions on names, the newest first; of one answer alone where it is one."""
    rulings = Ruling.objects.filter(kind=Kind.NAMES).newest_first()
    if answer in Ruling.Answers.values:
        rulings = rulings.filter(answer=answer)
    return rulings.select_related("first_name", "second_name", "stands", "by__member", "undoes")


def decided_rows(rulings: Iterable[Ruling], reader: User) -> list[DecidedRow]:
    """Two queries for all of them."""
    rulings = list(rulings)
    standing = standing_rulings()
    firsts = {ruling.first_name_id for ruling in rulings}
    pairs = {row.pair: row.pk for row in Suspicion.objects.filter(kind=Kind.NAMES, first_name__in=firsts)}
    return [
        DecidedRow(
            ruling=ruling,
            by=who_decided(ruling, reader),
            stands=ruling.pk in standing,
            pair=pairs.get(ruling.pair),
        )
        for ruling in rulings
    ]


def who_decided(ruling: Ruling, reader: User) -> str:
    """For curators, who alone read decisions: “you”, or the name."""
    if ruling.by is None:
        return "a former member"
    if ruling.by_id == reader.pk:
        return "you"
    return str(getattr(ruling.by, "member", None) or ruling.by)
