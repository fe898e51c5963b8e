"""Adding people and the keepers they are."""

from __future__ import annotations

from django.db import transaction

from frondkeep.society.models import Household, Keeper, Member


def keeper_of_member(member: Member) -> Keeper:
    return Keeper.objects.get_or_create(kind=Keeper.Kind.MEMBER, member=member)[0]


def keeper_of_household(household: Household) -> Keeper:
    return Keeper.objects.get_or_create(kind=Keeper.Kind.HOUSEHOLD, household=household)[0]


def society_keeper() -> Keeper:
    return Keeper.objects.get_or_create(kind=Keeper.Kind.SOCIETY)[0]


@transaction.atomic
def add_member(*, name: str, **fields: object) -> Member:
    """A member, with the keeper their plants are recorded under."""
    member = Member.objects.create(name=name, **fields)
    keeper_of_member(member)
    return member


@transaction.atomic
def add_household(*, name: str, members: list[Member], **fields: object) -> Household:
    """A household of these members, with the keeper their common plants are recorded under."""
    household = Household.objects.create(name=name, **fields)
    keeper_of_household(household)
    for member in members:
        member.household = household
        member.save()
    return household
