"""Dates as growers write them, read into the days they may mean, and said again in words."""

import re
from calendar import monthrange
from datetime import date

from specimens.naming.partial_date import PartialDate, from_columns

__all__ = ["DateNotRead", "PartialDate", "echo_date", "from_columns", "read_date", "say_date", "say_when"]


class DateNotRead(ValueError):
    """The words could not be read as a date; `str()` says in plain words what would be understood."""


def read_date(
    text: str, *, today: date, day_first: bool = True, southern: bool = False, future_ok: bool = False
) -> PartialDate:
    """The days that `text` may mean."""
    found = re.fullmatch(r"(\d{4})(?:-(\d\d))?(?:-(\d\d))?", text.strip())
    if not found:
        raise DateNotRead("We could not read this date.")
    year, month, day = (int(each) if each else None for each in found.groups())
    assert year is not None
    first = date(year, month or 1, day or 1)
    last = date(year, month or 12, day or monthrange(year, month or 12)[1])
    return PartialDate(text, first, last)


def say_date(partial: PartialDate) -> str:
    """The date for pages, as "spring 1998"."""
    return partial.words or "date not known"


def say_when(partial: PartialDate) -> str:
    """The date with its preposition, for use in a sentence, as "in spring 1998" or "on 6 June 1992"."""
    return f"in {say_date(partial)}"


def echo_date(partial: PartialDate) -> str:
    """What will be stored, as "We will store: between 1 March and 31 May 1998"."""
    return f"We will store: between {partial.earliest} and {partial.latest}"
