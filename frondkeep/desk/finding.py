"""Finding what somebody asked for, if they may see or change it. What they may not, is not there."""

from __future__ import annotations

from collections.abc import Iterable

from django.db.models import Q, QuerySet
from django.http import Http404

from frondkeep.society.models import Appearance, Keeper, User
from specimens.models import Identification, Name, Photo, Specimen


def visible_plant(user: User, code: str) -> Specimen:
    """The plant of this code with its page parts, or Http404 for whoever may not see it."""
    return _one(Specimen.objects.visible_to(user).with_page_parts(), code)


def editable_plant(user: User, code: str) -> Specimen:
    """The plant of this code with its page parts, or Http404 for whoever may not change it."""
    return _one(Specimen.objects.editable_by(user).with_page_parts(), code)


def _one(plants: QuerySet[Specimen], code: str) -> Specimen:
    found = plants.filter(code=code).first()
    if found is None:
        raise Http404
    return found


def waiting_proposal(user: User, code: str, pk: int) -> Identification:
    """A member's view of a plant that waits for the curator; Http404 for everybody else."""
    found = (
        Identification.objects.filter(pk=pk, specimen__code=code, standing=Identification.Standing.PROPOSED)
        .select_related("specimen", "name")
        .first()
    )
    if found is None or not user.is_curator:
        raise Http404
    return found


def standing_name(pk: int) -> Name:
    """A name that is not voided, with its parents and accepted name, or Http404."""
    found = (
        Name.objects.standing()
        .select_related("parent", "genus", "accepted", "group", "first_parent", "second_parent")
        .filter(pk=pk)
        .first()
    )
    if found is None:
        raise Http404
    return found


def curators_name(user: User, pk: int) -> Name:
    """A name for the curator to change; Http404 for everybody else."""
    if not user.is_curator:
        raise Http404
    return standing_name(pk)


def visible_ids(user: User, ids: Iterable[int | None]) -> frozenset[int]:
    """Which of these plants the user may see; one query, none for no ids."""
    asked = {pk for pk in ids if pk is not None}
    if not asked:
        return frozenset()
    return frozenset(Specimen.objects.visible_to(user).filter(pk__in=asked).values_list("pk", flat=True))


def known_keepers(user: User) -> QuerySet[Keeper]:
    """Keepers whose name this user may read: a curator all, a member their own and those who appear by name."""
    keepers = Keeper.objects.with_people()
    if user.is_curator:
        return keepers
    by_name = Q(member__appears=Appearance.BY_NAME) | Q(household__appears=Appearance.BY_NAME)
    return keepers.filter(by_name | Q(kind=Keeper.Kind.SOCIETY) | Q(pk__in=user.keeper_ids))


def visible_photos(user: User) -> QuerySet[Photo]:
    """Photos this user may look at: those shown to members, of plants they see; and every one of their own plants."""
    own = Specimen.objects.owned_by(user).values("pk")
    shown = ~Q(shown_to=Photo.ShownTo.NOBODY) & Q(specimen__in=Specimen.objects.visible_to(user).values("pk"))
    return Photo.objects.filter(shown | Q(specimen__in=own))


def proposals_for_curator(user: User) -> QuerySet[Identification]:
    """Members' views of plants that wait for an answer, the oldest first; Http404 for everybody else."""
    if not user.is_curator:
        raise Http404
    return (
        Identification.objects.filter(standing=Identification.Standing.PROPOSED)
        .select_related(
            "name",
            "by__member__keeper__household",
            "specimen__identification__name__accepted",
            "specimen__sowing",
        )
        .order_by("at", "pk")
    )


def curators_plant(user: User, code: str) -> Specimen:
    """The plant of this code for the curator to mend; Http404 for everybody else."""
    if not user.is_curator:
        raise Http404
    return visible_plant(user, code)
