"""Ids that come with an address or a form."""

from __future__ import annotations

LONGEST_KEY = 18


def key_asked(text: str) -> int | None:
    """The id a text spells; None where it is none that a record can have.

    >>> key_asked("12"), key_asked("-1"), key_asked("9" * 5000)
    (12, None, None)
    """
    return int(text) if text.isdecimal() and len(text) <= LONGEST_KEY else None
