"""Stretches of days: months, seasons, decades, feasts."""

from calendar import monthrange
from datetime import date, timedelta
from typing import NamedTuple

from specimens.naming.partial_date import DateNotRead

FIRST_YEAR = 1700
LAST_YEAR = 2999
MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
SEASONS = ("spring", "summer", "autumn", "winter")
_ONE_DAY = timedelta(days=1)


class Span(NamedTuple):
    """From the earliest to the latest day, both included; None leaves that end open."""

    earliest: date | None
    latest: date | None


class Days(NamedTuple):
    """A span with both ends closed."""

    first: date
    last: date


def day(year: int, month: int, day_of_month: int) -> Days:
    """One day. Raises `DateNotRead`, naming it, if the calendar has no such day."""
    _check_year(year)
    if not 1 <= month <= 12:
        raise DateNotRead(f"There is no month {month}. We would understand 6 June {year} or June {year}.")
    if not 1 <= day_of_month <= monthrange(year, month)[1]:
        raise DateNotRead(
            f"There is no {day_of_month} {MONTHS[month - 1]} {year}. "
            f"If the day is not sure, {MONTHS[month - 1]} {year} is enough."
        )
    only = date(year, month, day_of_month)
    return Days(only, only)


def month_of(year: int, month: int) -> Days:
    """A whole month."""
    first = day(year, month, 1).first
    return Days(first, last_day(year, month))


def years(first: int, last: int) -> Days:
    """Whole years, both included."""
    _check_year(first)
    _check_year(last)
    return Days(date(first, 1, 1), date(last, 12, 31))


def last_day(year: int, month: int) -> date:
    """The last day of a month."""
    return date(year, month, monthrange(year, month)[1])


def season(name: str, year: int, *, southern: bool) -> Days:
    """The three months of a season that begins in `year` (meteorological seasons)."""
    _check_year(year)
    _check_year(year + 1)
    first_month = (3 + 3 * SEASONS.index(name) + (6 if southern else 0) - 1) % 12 + 1
    last_month = first_month + 2
    end = last_day(year + 1, last_month - 12) if last_month > 12 else last_day(year, last_month)
    return Days(date(year, first_month, 1), end)


def spans_new_year(name: str, *, southern: bool) -> bool:
    """Whether the season begins in one year and ends in the next."""
    return name == ("summer" if southern else "winter")


def season_of_year(name: str, year: int, *, southern: bool) -> Days:
    """The season that somebody dates with one year.

    A season across New Year may be the one that began or the one that ended in that year: both are covered.
    """
    begun = season(name, year, southern=southern)
    if not spans_new_year(name, southern=southern):
        return begun
    return Days(season(name, year - 1, southern=southern).first, begun.last)


def feast(name: str, year: int) -> Days:
    """The days people mean by a feast: 'easter', 'christmas' or 'new year'."""
    _check_year(year)
    if name == "easter":
        sunday = easter_sunday(year)
        return Days(sunday - 2 * _ONE_DAY, sunday + _ONE_DAY)
    if name == "christmas":
        return Days(date(year, 12, 24), date(year, 12, 26))
    return Days(date(year - 1, 12, 31), date(year, 1, 1))


def easter_sunday(year: int) -> date:
    """Easter Sunday of the Gregorian calendar (in Meeus, Astronomical Algorithms, 1991)."""
    century, rest = divmod(year, 100)
    leaps, century_rest = divmod(century, 4)
    moon_correction = (century - (century + 8) // 25 + 1) // 3
    epact = (19 * (year % 19) + century - leaps - moon_correction + 15) % 30
    weekday = (32 + 2 * century_rest + 2 * (rest // 4) - epact - rest % 4) % 7
    late = (year % 19 + 11 * epact + 22 * weekday) // 451
    month, before = divmod(epact + weekday - 7 * late + 114, 31)
    return date(year, month, before + 1)


def third(days: Days, which: int) -> Days:
    """The first, second or last third (0, 1, 2) of a month, a season, a year or a decade.

    Of a decade: years 0 to 3, 3 to 6, 6 to 9, overlapping because people's words do.
    """
    length = (days.last - days.first).days + 1
    if length > 3600:
        start = days.first.year + (0, 3, 6)[which]
        return years(start, start + 3)
    if length > 31:
        months = round(length / 30.5) // 3
        start_month = days.first.month - 1 + months * which
        end_month = start_month + months - 1
        return Days(
            date(days.first.year + start_month // 12, start_month % 12 + 1, 1),
            last_day(days.first.year + end_month // 12, end_month % 12 + 1),
        )
    start_day = days.first.replace(day=(1, 11, 21)[which])
    return Days(start_day, days.last if which == 2 else start_day + 9 * _ONE_DAY)


def around(days: Days) -> Days:
    """The days with what "about" adds on either side.

    A week about a day, a month about anything up to a season, two years about a year, five about more
    (common practice; the words typed are kept beside it).
    """
    length = (days.last - days.first).days + 1
    if length <= 7:
        return Days(days.first - timedelta(days=7), days.last + timedelta(days=7))
    if length <= 92:
        before = days.first - _ONE_DAY
        after = days.last + _ONE_DAY
        return Days(before.replace(day=1), last_day(after.year, after.month))
    margin = 2 if length <= 366 else 5
    return Days(date(days.first.year - margin, 1, 1), date(days.last.year + margin, 12, 31))


def _check_year(year: int) -> None:
    if year < FIRST_YEAR:
        raise DateNotRead(f"We keep dates from {FIRST_YEAR} on, and read this as {year}.")
    if year > LAST_YEAR:
        raise DateNotRead(f"We read this as the year {year}. A year such as 1998 would be understood.")
