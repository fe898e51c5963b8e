"""The way round: what stands in the head of every page, by role."""

from __future__ import annotations

from typing import Any

from django.http import HttpRequest
from django.urls import NoReverseMatch, reverse

from frondkeep.society.models import Role, User

PLACES = (
    ("Log plants", "log"),
    ("Mine", "mine"),
    ("The society’s plants", "plants"),
    ("Names", "names"),
    ("Perhaps the same plant", "same"),
    ("Shows", "shows"),
    ("Help", "help"),
)
CURATORS_ALONE = frozenset({"same"})


def navigation(request: HttpRequest) -> dict[str, Any]:
    """The pages to go to, the one we are on marked, and who is signed in. Nothing for a stranger."""
    user = getattr(request, "user", None)
    if user is None or not user.is_authenticated:
        return {"nav": []}
    return {"nav": places_for(user, request.path), "signed_in_as": signed_in_as(user)}


def places_for(user: User, path: str) -> list[tuple[str, str, bool]]:
    places = [
        (label, address(place)) for label, place in PLACES if place not in CURATORS_ALONE or user.is_curator
    ]
    return [(label, url, path.startswith(url)) for label, url in places if url]


def address(place: str) -> str:
    """The address of a page; '' where this part of the software is not installed."""
    try:
        return reverse(place)
    except NoReverseMatch:
        return ""


def signed_in_as(user: User) -> str:
    """“Curator: I. Marsh”, or the name alone for a member without a role."""
    member = getattr(user, "member", None)
    who = str(member or user)
    held = [role.label for role in Role if user.holds(role)]
    return f"{', '.join(held).capitalize()}: {who}" if held else who
