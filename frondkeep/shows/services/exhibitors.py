"""Who shows, under which number."""

from __future__ import annotations

from django.db import transaction
from django.db.models import Max

from frondkeep.shows.models import Exhibitor, Show
from frondkeep.society.models import Keeper, Member
from frondkeep.society.services.people import keeper_of_household, keeper_of_member


def lock_show(show: Show) -> Show:
    """The show, locked until commit: stops two at one moment from taking the same next number."""
    return Show.objects.select_for_update().get(pk=show.pk)


def shows_as(keeper: Keeper) -> Keeper:
    """A household shows as one: its members' entries are the household's."""
    if keeper.member and keeper.member.household:
        return keeper_of_household(keeper.member.household)
    return keeper


def keeper_who_shows(member: Member) -> Keeper:
    return shows_as(keeper_of_member(member))


@transaction.atomic
def exhibitor_for(
    show: Show, *, keeper: Keeper | None = None, guest_name: str = "", junior: bool = False
) -> Exhibitor:
    """The exhibitor of this show, with the next number where they are new. Guests of one name are one exhibitor."""
    lock_show(show)
    who = {"keeper": shows_as(keeper)} if keeper else {"guest_name": guest_name.strip()}
    found = Exhibitor.objects.filter(show=show, **who).first()
    if found:
        return found
    last = Exhibitor.objects.filter(show=show).aggregate(last=Max("number"))["last"] or 0
    return Exhibitor.objects.create(show=show, number=last + 1, junior=junior, **who)
