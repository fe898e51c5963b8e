"""Dates counted from today: yesterday, last spring, two years ago."""

import re
from collections.abc import Callable, Iterable
from datetime import date, timedelta

from specimens.naming import calendar_spans as calendar
from specimens.naming.calendar_spans import MONTHS, SEASONS, Days
from specimens.naming.date_points import Asking, Reading, month_number, reading

_WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_DAYS_AWAY = {
    "today": (0, 0),
    "now": (0, 0),
    "this morning": (0, 0),
    "this afternoon": (0, 0),
    "this evening": (0, 0),
    "tonight": (0, 0),
    "just now": (0, 0),
    "yesterday": (-1, -1),
    "last night": (-1, 0),
    "the day before yesterday": (-2, -2),
    "day before yesterday": (-2, -2),
    "the other day": (-7, -1),
    "tomorrow": (1, 1),
}
_NUMBERS = [
    "a",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
]
_AGO = re.compile(
    rf"(?P<number>\d{{1,3}}|an|{'|'.join(_NUMBERS)}|a couple of) (?P<unit>day|week|month|year)s? ago",
    re.ASCII,
)
_NAMED = re.compile(r"(?P<which>last|this|the last|on) (?P<what>[a-z]+)")


def read_relative(text: str, asking: Asking) -> Reading | None:
    """The days that tidied lower-case `text` means today, or None if it is not counted from today.

    Nothing here can be said again later in the same words, so `said` is empty.
    """
    today = asking.today
    if text in _DAYS_AWAY:
        first, last = _DAYS_AWAY[text]
        return reading(Days(today + timedelta(days=first), today + timedelta(days=last)), "")
    ago = _AGO.fullmatch(text)
    if ago:
        return reading(_ago(_number(ago["number"]), ago["unit"], today), "")
    named = _NAMED.fullmatch(text)
    days = _named(named["which"] == "this", named["what"], asking) if named else None
    return reading(days, "") if days else None


def _number(word: str) -> int:
    if word.isdigit():
        return int(word)
    return {"an": 1, "a": 1, "a couple of": 2}.get(word) or _NUMBERS.index(word)


def _ago(number: int, unit: str, today: date) -> Days:
    """So many units back, with half a unit on either side, as people round."""
    if unit in ("day", "week"):
        middle = today - timedelta(days=number * (7 if unit == "week" else 1))
        slack = timedelta(days=3 if unit == "week" else 0)
        return Days(middle - slack, middle + slack)
    middle = _months_back(today, number * (12 if unit == "year" else 1))
    if unit == "month":
        return Days(middle - timedelta(days=15), middle + timedelta(days=15))
    return Days(_months_back(middle, 6), _months_back(middle, -6))


def _months_back(day: date, months: int) -> date:
    year, month = divmod(day.year * 12 + day.month - 1 - months, 12)
    return calendar.day(year, month + 1, min(day.day, calendar.last_day(year, month + 1).day)).first


def _named(this: bool, what: str, asking: Asking) -> Days | None:
    today = asking.today
    if what in ("week", "weekend"):
        return _week(this, what == "weekend", today)
    if what in _WEEKDAYS:
        back = (today.weekday() - _WEEKDAYS.index(what) - 1) % 7 + 1
        day = today - timedelta(days=back % 7 if this else back)
        return Days(day, day)
    if what == "month":
        return _month(this, today)
    make = _yearly(what, asking)
    return _pick(this, make, today) if make else None


def _week(this: bool, weekend: bool, today: date) -> Days:
    monday = today - timedelta(days=today.weekday() + (0 if this else 7))
    return Days(monday + timedelta(days=5 if weekend else 0), monday + timedelta(days=6))


def _month(this: bool, today: date) -> Days:
    day = today if this else _months_back(today, 1)
    return calendar.month_of(day.year, day.month)


def _yearly(what: str, asking: Asking) -> Callable[[int], Days] | None:
    """What `what` was in a given year, for things that come once a year."""
    name = {"fall": "autumn", "xmas": "christmas"}.get(what, what)
    if name == "year":
        return lambda year: calendar.years(year, year)
    if name in SEASONS:
        return lambda year: calendar.season(name, year, southern=asking.southern)
    if name in ("easter", "christmas"):
        return lambda year: calendar.feast(name, year)
    if len(name) >= 3 and any(month.lower().startswith(name) for month in MONTHS):
        return lambda year: calendar.month_of(year, month_number(name))
    return None


def _pick(this: bool, make: Callable[[int], Days], today: date) -> Days:
    """This one: the one today lies in, else this year's. The last one: the latest that is over."""
    candidates: Iterable[Days] = [make(today.year - back) for back in range(3)]
    if this:
        return next((days for days in candidates if days.first <= today <= days.last), make(today.year))
    return next(days for days in candidates if days.last < today)
