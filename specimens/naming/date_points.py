"""Single dates as people write them: a day, a month, a season, a feast, a year, a decade."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from typing import NamedTuple

from specimens.naming import calendar_spans as calendar
from specimens.naming.calendar_spans import MONTHS, SEASONS, Days, Span
from specimens.naming.partial_date import DateNotRead

_YEARS_AHEAD = 10


@dataclass(frozen=True, slots=True)
class Asking:
    """What a reading depends on besides the words."""

    today: date
    day_first: bool = True
    southern: bool = False
    future_ok: bool = False

    def year(self, typed: str) -> int:
        """The year typed with four digits, or with two: then the latest such year that is not in the future.

        Where future dates are welcome, two digits may lie up to ten years ahead.
        """
        digits = typed.strip("' ")
        if len(digits) > 2:
            return int(digits)
        latest = self.today.year + (_YEARS_AHEAD if self.future_ok else 0)
        return latest - (latest - int(digits)) % 100


class Reading(NamedTuple):
    """The days some words mean, and the same in tidy words that can be read again ('' if there are none).

    `rough` marks what was said to be about or perhaps so.
    """

    span: Span
    said: str
    rough: bool = False


def read_point(text: str, asking: Asking) -> Reading | None:
    """The single date in tidied lower-case `text`, or None if it is none.

    Raises `DateNotRead` for a day the calendar lacks and for words that may mean two things.
    """
    for pattern, read in _POINTS:
        found = pattern.fullmatch(text)
        if found:
            return read(found, asking)
    return None


def reading(days: Days, said: str) -> Reading:
    """A reading with both ends closed."""
    return Reading(Span(*days), said)


def say_day(each: date) -> str:
    """A day in words."""
    return f"{each.day} {MONTHS[each.month - 1]} {each.year}"


def month_number(word: str) -> int:
    """1 to 12 for a month's name or its beginning (at least three letters)."""
    return next(place for place, name in enumerate(MONTHS, 1) if name.lower().startswith(word[:3]))


def _one_day(year: int, month: int, day: int) -> Reading:
    days = calendar.day(year, month, day)
    return reading(days, say_day(days.first))


def _one_month(year: int, month: int) -> Reading:
    return reading(calendar.month_of(year, month), f"{MONTHS[month - 1]} {year}")


def _one_year(year: int) -> Reading:
    return reading(calendar.years(year, year), str(year))


def _named_day(found: re.Match[str], asking: Asking) -> Reading:
    read = _one_day(asking.year(found["year"]), month_number(found["month"]), int(found["day"]))
    weekday = found["weekday"]
    day = read.span.earliest
    if weekday and day and not f"{day:%A}".lower().startswith(weekday[:3]):
        raise DateNotRead(f"{read.said} was a {day:%A}. Which is right, the day of the week or the date?")
    return read


def _named_month(found: re.Match[str], asking: Asking) -> Reading:
    number, typed = month_number(found["month"]), found["year"]
    if len(typed) == 2 and 1 <= int(typed) <= 31:
        name = MONTHS[number - 1]
        raise DateNotRead(
            f"“{name} {typed}” may mean {name} {asking.year(typed)} or {int(typed)} {name}. Which is it?"
        )
    return _one_month(asking.year(typed), number)


def _numbers(found: re.Match[str], asking: Asking) -> Reading:
    first, second, year = int(found["first"]), int(found["second"]), asking.year(found["year"])
    day, month = (first, second) if asking.day_first else (second, first)
    if month > 12 and day <= 12:
        # Only the other order is a date, so there is nothing to guess.
        day, month = month, day
    return _one_day(year, month, day)


def _year_first(found: re.Match[str], asking: Asking) -> Reading:
    return _one_day(int(found["year"]), int(found["month"]), int(found["day"]))


def _month_and_year(found: re.Match[str], asking: Asking) -> Reading:
    return _one_month(asking.year(found["year"]), int(found["month"]))


def _year_and_two_digits(found: re.Match[str], asking: Asking) -> Reading:
    """`2004-06` is a month, `2001-21` a season (EDTF level 1), `1980-85` some years."""
    year, number = int(found["year"]), int(found["number"])
    until = year - year % 100 + number
    if 21 <= number <= 24:
        name = SEASONS[number - 21]
        if 0 < until - year < 10:
            raise DateNotRead(
                f"“{year}-{number}” may mean {name} {year} or {year} to {until}. Please write which."
            )
        return _season_of(name, year, asking)
    return _years_or_month(year, number)


def _years_or_month(year: int, number: int) -> Reading:
    until = year - year % 100 + number
    if number > 12 and until > year:
        return reading(calendar.years(year, until), f"between {year} and {until}")
    return _one_month(year, number)


def _split_year(found: re.Match[str], asking: Asking) -> Reading:
    """`1997/98`: some time in these years; `1987/06`: a month."""
    year, number = int(found["year"]), int(found["number"])
    follows = (year + 1) % 100 == number
    if follows and number <= 12:
        raise DateNotRead(
            f"“{found[0]}” may mean {MONTHS[number - 1]} {year} or {year} to {year + 1}. Please write which."
        )
    if follows:
        return reading(calendar.years(year, year + 1), f"between {year} and {year + 1}")
    return _years_or_month(year, number)


def _season(found: re.Match[str], asking: Asking) -> Reading:
    name = "autumn" if found["season"] == "fall" else found["season"]
    first = asking.year(found["year"])
    until = found["until"]
    if not until:
        return _season_of(name, first, asking)
    if (first + 1) % 10 ** min(len(until), 4) != int(until) or not calendar.spans_new_year(
        name, southern=asking.southern
    ):
        raise DateNotRead(f"We could not tell which {name} “{found[0]}” is. {name} {first} would do.")
    days = calendar.season(name, first, southern=asking.southern)
    return reading(days, f"{name} {first}/{(first + 1) % 100:02d}")


def _season_of(name: str, year: int, asking: Asking) -> Reading:
    return reading(calendar.season_of_year(name, year, southern=asking.southern), f"{name} {year}")


_FEASTS = {"easter": "Easter", "christmas": "Christmas", "xmas": "Christmas", "new year": "New Year"}


def _feast(found: re.Match[str], asking: Asking) -> Reading:
    said, year = _FEASTS[found["feast"]], asking.year(found["year"])
    return reading(calendar.feast(said.lower(), year), f"{said} {year}")


def _decade(found: re.Match[str], asking: Asking) -> Reading:
    digits = found["decade"]
    if len(digits) == 4 and digits.endswith("00"):
        start = int(digits)
        raise DateNotRead(
            f"The {digits}s may be {start} to {start + 9} or {start} to {start + 99}. Please write which."
        )
    start = int(digits) if len(digits) == 4 else asking.year(digits)
    return _years_of(start)


_TENS = ("twenties", "thirties", "forties", "fifties", "sixties", "seventies", "eighties", "nineties")


def _decade_in_words(found: re.Match[str], asking: Asking) -> Reading:
    return _years_of(asking.year(str(20 + 10 * _TENS.index(found["tens"]))))


def _years_of(start: int) -> Reading:
    return reading(calendar.years(start, start + 9), f"{start}s")


def _century(found: re.Match[str], asking: Asking) -> Reading:
    number = int(found["century"])
    ending = {1: "st", 2: "nd", 3: "rd"}.get(number % 10 if number // 10 != 1 else 0, "th")
    return reading(calendar.years(100 * number - 99, 100 * number), f"{number}{ending} century")


def _digits_left_open(found: re.Match[str], asking: Asking) -> Reading:
    """`199X`, `19XX`, `1999-XX`, `1999-05-XX` (EDTF level 1, unspecified digits)."""
    typed = found["year"]
    first, last = int(typed.replace("x", "0")), int(typed.replace("x", "9"))
    month = found["month"]
    if first == last and month and month != "xx":
        return _one_month(first, int(month))
    if first == last:
        return _one_year(first)
    said = f"{first}s" if last - first == 9 and first % 100 else f"between {first} and {last}"
    return reading(calendar.years(first, last), said)


def _year(found: re.Match[str], asking: Asking) -> Reading:
    return _one_year(asking.year(found["year"]))


def _without_year(found: re.Match[str], asking: Asking) -> Reading:
    words = " ".join(word.capitalize() for word in found[0].split())
    raise DateNotRead(f"Which year? We would understand “{words} {asking.today.year - 1}”.")


def _day_and_month(found: re.Match[str], asking: Asking) -> Reading:
    raise DateNotRead(f"Which year? We would understand “{found[0]}/{asking.today.year - 1}”.")


_MONTH = (
    r"(?P<month>jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?"
    r"|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\.?"
)
_WEEKDAY = r"(?:(?P<weekday>(?:mon|tue|tues|wed|wednes|thu|thur|thurs|fri|sat|satur|sun)(?:day)?)\.?,? )?"
_DAY = r"(?:the )?(?P<day>\d{1,2})(?:st|nd|rd|th)?"
_YEAR = r"(?P<year>\d{4}|'?\d\d)"
_GAP = r"(?:[ -]|, ?)"
_SEASON = r"(?P<season>spring|summer|autumn|fall|winter)"
_FEAST = r"(?P<feast>easter|christmas|xmas|new year)(?:'?s day| day)?"

_POINTS: tuple[tuple[re.Pattern[str], Callable[[re.Match[str], Asking], Reading]], ...] = tuple(
    (re.compile(pattern, re.ASCII), read)
    for pattern, read in (
        (rf"{_WEEKDAY}{_DAY}(?: of)?[ -]?{_MONTH}{_GAP}?(?:of )?{_YEAR}", _named_day),
        (rf"{_WEEKDAY}{_MONTH} {_DAY},? ?(?P<year>(?<=[ ,])(?:\d{{4}}|'?\d\d))", _named_day),
        (rf"{_MONTH}{_GAP}?(?:of )?{_YEAR}", _named_month),
        (rf"(?P<year>\d{{4}}){_GAP}{_MONTH}", _named_month),
        (r"(?P<year>\d{4})([/.-])(?P<month>\d{1,2})\2(?P<day>\d{1,2})(?:[t ]00:00(?::00)?)?", _year_first),
        (r"(?P<first>\d{1,2})([/. -])(?P<second>\d{1,2})\2(?P<year>\d{4}|'?\d\d)", _numbers),
        (r"(?P<month>0?[1-9]|1[0-2])[/.-](?P<year>\d{4}|3[2-9]|[4-9]\d)", _month_and_year),
        (r"(?P<year>\d{4})-(?P<number>\d\d)", _year_and_two_digits),
        (r"(?P<year>\d{4})[/.](?P<number>\d\d)", _split_year),
        (rf"{_SEASON}(?: of|,)? ?{_YEAR}(?:[/-](?P<until>\d{{4}}|\d{{1,2}}))?", _season),
        (rf"(?P<year>\d{{4}})(?P<until>)[ ,-]{_SEASON}", _season),
        (rf"{_FEAST}(?: of|,)? ?{_YEAR}", _feast),
        (r"(?:the )?'?(?P<decade>\d{3}0|\d0) ?'?s", _decade),
        (rf"(?:the )?(?:nineteen[ -])?(?P<tens>{'|'.join(_TENS)})", _decade_in_words),
        (r"(?:the )?(?P<century>1[89]|2[01])(?:th|st|nd)? ?(?:century|c\.)", _century),
        (r"(?P<year>\d\d(?:\dx|xx)|\d{4}(?=-))(?:-(?P<month>xx|\d\d))?(?:-xx)?", _digits_left_open),
        (r"(?P<year>\d{4}|'\d\d|3[2-9]|[4-9]\d)", _year),
        (
            rf"(?:{_DAY}(?: of)? )?{_MONTH}|{_MONTH.replace('month', 'other')} \d\d?(?:st|nd|rd|th)?",
            _without_year,
        ),
        (rf"{_SEASON}|{_FEAST}", _without_year),
        (r"\d{1,2}[/.]\d{1,2}", _day_and_month),
    )
)
