"""Keepers by the name somebody typed, if they may know that name."""

from __future__ import annotations

from django.db.models import Q

from frondkeep.desk.finding import known_keepers
from frondkeep.society.models import Keeper, User

NOBODY = "We know nobody by this name who appears by name. Look at the spelling, or leave it empty."
TWO = "Two keepers bear this name. Pick the one you mean from the suggestions."


def keepers_named(user: User, typed: str, *, chosen: int | None = None) -> list[Keeper]:
    """At most two keepers of this very name that the user may know; the one `chosen` alone, if it bears the name."""
    typed = typed.strip()
    if not typed:
        return []
    named = Q(member__name__iexact=typed) | Q(household__name__iexact=typed)
    if is_the_society(typed):
        named |= Q(kind=Keeper.Kind.SOCIETY)
    found = known_keepers(user).filter(named).order_by("pk")
    return list(found.filter(pk=chosen)[:1]) or list(found[:2])


def is_the_society(typed: str) -> bool:
    return typed.casefold() in ("the society", "society")
