"""What waits for somebody on the first page, by role."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from django.urls import reverse

from frondkeep.desk.finding import proposals_for_curator
from frondkeep.society.models import User
from specimens.models import Name, Specimen


@dataclass(frozen=True, slots=True)
class Waiting:
    count: int
    words: str
    url: str


def waiting_for(user: User) -> list[Waiting]:
    """Counts with the pages that answer them. What a curator has to do comes only where there is something."""
    mine = Specimen.objects.mine(user).growing().count()
    own = [Waiting(mine, "plant of mine" if mine == 1 else "plants of mine", reverse("mine"))]
    return own + [each for each in curators_work(user) if each.count]


def curators_work(user: User) -> Iterator[Waiting]:
    if not user.is_curator:
        return
    names = Name.objects.not_yet_checked().count()
    yield Waiting(names, "names not yet checked", f"{reverse('names')}?unchecked=on")
    proposals = proposals_for_curator(user).count()
    yield Waiting(proposals, "other views of what a plant is", reverse("proposals"))
