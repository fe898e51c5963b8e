"""What the queue and the page of one pair say."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from urllib.parse import urlencode

from django.db.models import Q, QuerySet
from django.urls import reverse

from frondkeep.society.keys import key_asked
from frondkeep.society.models import User
from lineage.core.decisions import Decision
from lineage.finding import curators_alone
from lineage.models import Ruling, Suspicion
from lineage.services.clue_words import Bar, bars, in_few_words, likely_words, silent
from lineage.services.queue import Decided
from lineage.services.same_pages import Side, sides_of
from specimens.models import Name


@dataclass(frozen=True, slots=True)
class QueueRow:
    """One pair in the list: the clues in a few words, and how likely it is."""

    suspicion: Suspicion
    clues: str
    likely: str


@dataclass(frozen=True)
class Queue:
    """The pairs that wait, of one genus or of all; ids in order are read once."""

    genus: Name | None = None

    @classmethod
    def of(cls, user: User, genus: str) -> Queue:
        """Of the genus whose id this is, else of all. Http404 for whoever is no curator."""
        curators_alone(user)
        asked = key_asked(genus)
        return cls(Name.objects.filter(pk=asked, rank="genus").first() if asked is not None else None)

    def rows(self) -> QuerySet[Suspicion]:
        waiting = Suspicion.objects.waiting()
        if self.genus is not None:
            waiting = waiting.filter(Q(first_name__genus=self.genus) | Q(second_name__genus=self.genus))
        return waiting.with_names()

    @cached_property
    def ids(self) -> list[int]:
        return list(self.rows().values_list("pk", flat=True))

    def place(self, pk: int) -> int:
        """1 for the first that waits; 0 for one that does not."""
        return self.ids.index(pk) + 1 if pk in self.ids else 0

    def before(self, pk: int) -> int | None:
        place = self.place(pk)
        return self.ids[place - 2] if place > 1 else None

    def after(self, pk: int) -> int | None:
        """The one after this one; None for the last."""
        place = self.place(pk)
        return self.ids[place] if place < len(self.ids) else None

    def as_it_stands(self) -> Queue:
        """The same, with its order read now: a decision takes pairs out of it."""
        _ = self.ids
        return self

    def address_after(self, pk: int) -> str:
        """Where to go on after a decision: the next that still waits, else the first, else the empty list."""
        now = Queue(self.genus).ids
        waiting = {*now} - {pk}
        left = [each for each in self.ids[self.place(pk) :] if each in waiting]
        left += [each for each in now if each in waiting]
        return self.address("same-pair", left[0]) if left else self.address("same")

    def address(self, page: str, *args: int) -> str:
        """The address of a page about these pairs, with the genus they are narrowed to."""
        return f"{reverse(page, args=args)}{self.suffix}"

    @property
    def list_address(self) -> str:
        return self.address("same")

    @property
    def suffix(self) -> str:
        return f"?{urlencode({'genus': self.genus.pk})}" if self.genus else ""

    def genera(self) -> list[Name]:
        """The genera that have a pair waiting."""
        waiting = Suspicion.objects.filter(in_queue=True)
        ids = waiting.values_list("first_name__genus", "second_name__genus")
        return list(Name.objects.filter(pk__in={pk for pair in ids for pk in pair}).in_reading_order())


def queue_rows(suspicions: Iterable[Suspicion]) -> list[QueueRow]:
    return [QueueRow(one, in_few_words(one.summands), likely_words(one.in_a_hundred)) for one in suspicions]


@dataclass(frozen=True, slots=True, kw_only=True)
class PairPage:
    """Two names side by side. `to_stand` are the names that may stand for both, the likelier first."""

    suspicion: Suspicion
    queue: Queue
    sides: tuple[Side, Side]
    bars: list[Bar]
    silent: list[str]
    to_stand: list[Name]
    ruling: Ruling | None
    is_one: bool
    place: int
    before: str
    after: str
    weights: str
    likely: str


def pair_page(suspicion: Suspicion, queue: Queue, reader: User) -> PairPage:
    """All of the page of one pair; the same number of queries for any pair and any queue."""
    decided = Decided.read()
    decision = decided.pairs.get(suspicion.pair)
    before, after = queue.before(suspicion.pk), queue.after(suspicion.pk)
    sides = sides_of(suspicion, reader)
    return PairPage(
        suspicion=suspicion,
        queue=queue,
        sides=sides,
        bars=bars(suspicion.summands),
        silent=silent(suspicion.summands),
        to_stand=names_to_stand(sides, is_one=decided.groups.are_one(*suspicion.pair)),
        ruling=_ruling_of(decision),
        is_one=decided.groups.are_one(*suspicion.pair),
        place=queue.place(suspicion.pk),
        before=queue.address("same-pair", before) if before else "",
        after=queue.address("same-pair", after) if after else "",
        weights=weights_words(decided.weights.rulings),
        likely=likely_words(suspicion.in_a_hundred),
    )


def _ruling_of(decision: Decision | None) -> Ruling | None:
    if decision is None:
        return None
    return Ruling.objects.select_related("by__member", "stands").get(pk=decision.id)


def names_to_stand(sides: Iterable[Side], *, is_one: bool) -> list[Name]:
    """The names that may stand for both, the likelier first: what is checked, raised, dated, recorded.

    Those accepted today; where the two are one already, the two themselves, for another may be chosen.
    """
    names = [side.name if is_one else side.name.accepted or side.name for side in sides]
    return sorted({name.pk: name for name in names}.values(), key=_doubts)


def _doubts(name: Name) -> tuple[bool, bool, bool, int]:
    earliest = name.introduced.earliest
    return not name.checked, not name.raiser, earliest is None, earliest.toordinal() if earliest else name.pk


def weights_words(rulings: int) -> str:
    """On what the weights of the clues rest."""
    if not rulings:
        return "the weights rest on common experience"
    pairs = "one pair" if rulings == 1 else f"{rulings} pairs"
    return f"the weights rest on common experience and on {pairs} decided to be one plant"
