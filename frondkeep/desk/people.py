"""People as this reader may know them."""

from __future__ import annotations

from frondkeep.society.models import Keeper, Member, User


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
