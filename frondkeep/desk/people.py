"""People as this reader may know them."""

from __future__ import annotations

from collections.abc import Iterable

from frondkeep.society.models import Appearance, Keeper, Member, User


def keeper_words(keeper: Keeper | None, reader: User) -> str:
    """A keeper as shown to the reader; '' for nobody."""
    return keeper.shown_to(reader) if keeper else ""


def member_words(member: Member | None, reader: User) -> str:
    """A member as shown to the reader, by the way their keeper appears; '' for nobody."""
    if member is None:
        return ""
    keeper = getattr(member, "keeper", None)
    return keeper.shown_to(reader) if keeper else "a member"


def user_words(user: User | None, reader: User) -> str:
    """Somebody who signed in, as shown to the reader; '' for nobody."""
    if user is None:
        return ""
    if user.pk == reader.pk:
        return "you"
    member = getattr(user, "member", None)
    return member_words(member, reader) if member else "a member"


def capital(words: str) -> str:
    """The words with a capital, everything else as it is."""
    return words[:1].upper() + words[1:]


def unnamed(texts: Iterable[str], reader: User) -> frozenset[str]:
    """Which of these texts are the whole name of a member who does not wish to be named to this reader.

    One query, or none. Words that came with an old record may name anybody.
    """
    asked = {text for text in texts if text}
    if not asked or reader.is_curator:
        return frozenset()
    shy = Member.objects.exclude(appears=Appearance.BY_NAME).exclude(user=reader)
    names = {name.casefold() for name in shy.values_list("name", flat=True)}
    return frozenset(text for text in asked if text.strip().casefold() in names)
