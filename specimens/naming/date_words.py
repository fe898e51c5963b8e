"""Partial dates said in words: for pages, inside a sentence, and as the echo of what will be stored."""

import re
from datetime import date
from functools import lru_cache
from itertools import product

from specimens.naming.calendar_spans import MONTHS, Span, last_day
from specimens.naming.date_phrases import NOT_KNOWN, read_words
from specimens.naming.date_points import Asking, say_day
from specimens.naming.partial_date import DateNotRead, PartialDate

_AT = re.compile(r"Easter|Christmas|New Year")
_BARE = re.compile(r"about|perhaps|before|after|between|.* or (?:earlier|later)$")


def say_date(partial: PartialDate) -> str:
    """The date for pages: the words typed, tidied, as long as they still mean the days stored; else the days.

    What it says can be read by `read_date` and means the same days.

    >>> say_date(PartialDate("spring 98", date(1998, 3, 1), date(1998, 5, 31)))
    'spring 1998'
    """
    if not partial.is_known:
        return NOT_KNOWN
    return _words_that_mean(partial) or _days(partial)


def say_when(partial: PartialDate) -> str:
    """The date with its preposition, for use in a sentence; '' if nothing is known.

    >>> say_when(PartialDate("6/6/92", date(1992, 6, 6), date(1992, 6, 6)))
    'on 6 June 1992'
    """
    if not partial.is_known:
        return ""
    said = say_date(partial)
    if _BARE.match(said):
        return said
    if said.endswith(("0s", "century")):
        return f"in the {said}"
    return f"{_preposition(partial, said)} {said}"


def echo_date(partial: PartialDate) -> str:
    """What will be stored, to be shown before saving.

    >>> echo_date(PartialDate("spring 1998", date(1998, 3, 1), date(1998, 5, 31)))
    'We will store: between 1 March and 31 May 1998'
    """
    return f"We will store: {_between(partial) if partial.is_known else 'no date'}"


def _preposition(partial: PartialDate, said: str) -> str:
    if _AT.match(said):
        return "at"
    return "on" if partial.is_exact else "in"


@lru_cache(maxsize=4096)
def _words_that_mean(partial: PartialDate) -> str:
    """The words typed, tidied, if some way of reading them gives these days whenever they are read."""
    known = partial.latest or partial.earliest
    if not known or not partial.words:
        return ""
    meant = Span(partial.earliest, partial.latest)
    for day_first, southern in product((True, False), repeat=2):
        asking = Asking(date(known.year, 12, 31), day_first=day_first, southern=southern)
        try:
            read = read_words(partial.words, asking)
        except DateNotRead:
            continue
        if read and read.span == meant:
            return read.said
    return ""


def _days(partial: PartialDate) -> str:
    """The stored days in the shortest words that mean them."""
    first, last = partial.earliest, partial.latest
    if first and last:
        if (first.month, first.day, last.month, last.day) == (1, 1, 12, 31):
            return str(first.year) if first.year == last.year else f"between {first.year} and {last.year}"
        if first.day == 1 and last == last_day(first.year, first.month):
            return f"{MONTHS[first.month - 1]} {first.year}"
    if first and last is None and (first.month, first.day) == (1, 1):
        return f"{first.year} or later"
    if last and first is None and (last.month, last.day) == (12, 31):
        return f"{last.year} or earlier"
    return _between(partial)


def _between(partial: PartialDate) -> str:
    first, last = partial.earliest, partial.latest
    if first is None:
        return f"{say_day(last)} or earlier" if last else NOT_KNOWN
    if last is None:
        return f"{say_day(first)} or later"
    if first == last:
        return say_day(first)
    return f"between {_without_what_is_shared(first, last)} and {say_day(last)}"


def _without_what_is_shared(first: date, last: date) -> str:
    if first.year != last.year:
        return say_day(first)
    month = "" if first.month == last.month else f" {MONTHS[first.month - 1]}"
    return f"{first.day}{month}"
