"""What waits for somebody on the first page, and what else their roles let them do."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import chain

from django.urls import reverse

from frondkeep.desk.finding import proposals_for_curator
from frondkeep.desk.navigation import address
from frondkeep.shows.models import Entry, Show
from frondkeep.society.models import Role, User
from lineage.models import Suspicion
from specimens.models import HandOver, Name, Specimen

CURATOR, SECRETARY, ADMINISTRATOR = (Role.CURATOR,), (Role.SECRETARY,), (Role.ADMINISTRATOR,)
DUTIES = (
    (CURATOR + ADMINISTRATOR, "Import spreadsheets", "import"),
    (CURATOR, "Decisions so far", "decisions"),
    (CURATOR, "Placements and treatments", "admin:specimens_placement_changelist"),
    (CURATOR + SECRETARY, "Members and how to reach them", "admin:society_member_changelist"),
    (CURATOR + SECRETARY, "Meetings", "admin:society_meeting_changelist"),
    (ADMINISTRATOR, "Users and their roles", "admin:society_user_changelist"),
    (CURATOR + SECRETARY + ADMINISTRATOR, "All records behind the pages", "admin:index"),
    ((), "Change my password", "password-change"),
)


@dataclass(frozen=True, slots=True)
class Waiting:
    """So many of one thing, and the page that answers them; `words` fit the count."""

    count: int
    words: str
    url: str


def waiting_for(user: User) -> list[Waiting]:
    """One's own plants, then what there is for a curator or the committee to do."""
    mine = Specimen.objects.mine(user).growing().count()
    own = Waiting(mine, one_or_many(mine, "plant I keep", "plants I keep"), reverse("mine"))
    work = chain(hand_overs_asked(user), curators_work(user), committees_work(user))
    return [own, *(each for each in work if each.count and each.url)]


def hand_overs_asked(user: User) -> Iterator[Waiting]:
    asked = HandOver.objects.waiting_for(user).count()
    yield Waiting(
        asked, one_or_many(asked, "hand-over to answer", "hand-overs to answer"), address("hand-overs")
    )


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


def committees_work(user: User) -> Iterator[Waiting]:
    if not user.is_committee or not (show := Show.objects.coming().first()):
        return
    count = Entry.objects.standing().filter(show=show, number=None).count()
    words = one_or_many(count, "entry without a number", "entries without a number")
    yield Waiting(count, words, reverse("entry-list", args=[show.pk]))


def duties_of(user: User) -> list[tuple[str, str]]:
    """(words, address) of pages that no list leads to: one's own, and those of one's roles."""
    return [(words, reverse(page)) for roles, words, page in DUTIES if not roles or user.holds(*roles)]


def one_or_many(count: int, one: str, many: str) -> str:
    return one if count == 1 else many
