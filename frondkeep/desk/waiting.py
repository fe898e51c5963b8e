"""What waits for somebody on the first page, by role."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from django.urls import reverse

from frondkeep.desk.finding import proposals_for_curator
from frondkeep.desk.navigation import address
from frondkeep.society.models import User
from lineage.models import Suspicion
from specimens.models import Name, Specimen


@dataclass(frozen=True, slots=True)
class Waiting:
    """So many of one thing, and the page that answers them; `words` fit the count."""

    count: int
    words: str
    url: str


def waiting_for(user: User) -> list[Waiting]:
    """One's own plants, then what there is for a curator to do."""
    mine = Specimen.objects.mine(user).growing().count()
    own = Waiting(mine, one_or_many(mine, "plant of mine", "plants of mine"), reverse("mine"))
    return [own, *(each for each in curators_work(user) if each.count and each.url)]


def curators_work(user: User) -> Iterator[Waiting]:
    if not user.is_curator:
        return
    pairs = Suspicion.objects.waiting().count()
    words = one_or_many(pairs, "pair that is perhaps one plant", "pairs that are perhaps one plant")
    yield Waiting(pairs, words, address("same"))
    names = Name.objects.not_yet_checked().count()
    words = one_or_many(names, "name not yet checked", "names not yet checked")
    yield Waiting(names, words, f"{reverse('names')}?unchecked=on")
    views = proposals_for_curator(user).count()
    words = one_or_many(views, "other view of what a plant is", "other views of what a plant is")
    yield Waiting(views, words, reverse("proposals"))


def one_or_many(count: int, one: str, many: str) -> str:
    return one if count == 1 else many
