"""Growers' dates are read into the days they mean."""

from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specimens.naming.dates import PartialDate, read_date

TODAY = date(2026, 3, 11)  # a Wednesday


def days(text: str) -> tuple[date | None, date | None]:
    """`1998-03-01 1998-05-31` as two days, `-` for an open end, one day for both."""
    first, *rest = text.split()
    ends = [first, *(rest or [first])]
    return tuple(None if end == "-" else date.fromisoformat(end) for end in ends)  # type: ignore[return-value]


PHRASES = """
1978                            1978-01-01 1978-12-31
'78                             1978-01-01 1978-12-31
98                              1998-01-01 1998-12-31
in 1978                         1978-01-01 1978-12-31
June 92                         1992-06-01 1992-06-30
June '12                        2012-06-01 2012-06-30
June 1992                       1992-06-01 1992-06-30
june, 1992                      1992-06-01 1992-06-30
Jun. 1992                       1992-06-01 1992-06-30
Sept 98                         1998-09-01 1998-09-30
6/87                            1987-06-01 1987-06-30
06.1987                         1987-06-01 1987-06-30
Feb 2000                        2000-02-01 2000-02-29
6 June 1992                     1992-06-06
6th June 1992                   1992-06-06
6th of June, 1992               1992-06-06
June 6th, 1992                  1992-06-06
June 6 92                       1992-06-06
Sat 6 June 1992                 1992-06-06
Saturday, 6 June 1992           1992-06-06
6-Jun-92                        1992-06-06
12/6/1987                       1987-06-12
12.6.87                         1987-06-12
12-6-1987                       1987-06-12
12 6 87                         1987-06-12
13/6/1987                       1987-06-13
6/13/1987                       1987-06-13
1987/6/12                       1987-06-12
1987-06-12                      1987-06-12
1992-06-06 00:00:00             1992-06-06
29 Feb 2024                     2024-02-29
spring 98                       1998-03-01 1998-05-31
Spring 1998                     1998-03-01 1998-05-31
spring of '98                   1998-03-01 1998-05-31
summer 1998                     1998-06-01 1998-08-31
autumn 1998                     1998-09-01 1998-11-30
fall 1998                       1998-09-01 1998-11-30
1998 spring                     1998-03-01 1998-05-31
winter 1997/98                  1997-12-01 1998-02-28
winter 1997-1998                1997-12-01 1998-02-28
winter 1999/00                  1999-12-01 2000-02-29
winter 1997                     1996-12-01 1998-02-28
Easter 1998                     1998-04-10 1998-04-13
Christmas 2001                  2001-12-24 2001-12-26
xmas 01                         2001-12-24 2001-12-26
New Year 2001                   2000-12-31 2001-01-01
about 1950                      1948-01-01 1952-12-31
c. 1950                         1948-01-01 1952-12-31
c1950                           1948-01-01 1952-12-31
ca. 1950                        1948-01-01 1952-12-31
circa 1950                      1948-01-01 1952-12-31
1950 or so                      1948-01-01 1952-12-31
1950ish                         1948-01-01 1952-12-31
about June 1998                 1998-05-01 1998-07-31
about 6 June 1998               1998-05-30 1998-06-13
around the 1970s                1965-01-01 1984-12-31
probably 1998                   1996-01-01 2000-12-31
1998 (?)                        1996-01-01 2000-12-31
before 1985                     - 1984-12-31
pre-1985                        - 1984-12-31
before June 1985                - 1985-05-31
by 1985                         - 1985-12-31
1985 or earlier                 - 1985-12-31
on or before 6 June 1985        - 1985-06-06
before about 1950               - 1952-12-31
after 1990                      1991-01-01 -
post 1990                       1991-01-01 -
since 1990                      1990-01-01 -
from 1990                       1990-01-01 -
1990 or later                   1990-01-01 -
1990 onwards                    1990-01-01 -
the nineties                    1990-01-01 1999-12-31
70s                             1970-01-01 1979-12-31
the '70s                        1970-01-01 1979-12-31
1970's                          1970-01-01 1979-12-31
20s                             2020-01-01 2029-12-31
30s                             1930-01-01 1939-12-31
early 1990s                     1990-01-01 1993-12-31
the mid-1990s                   1993-01-01 1996-12-31
late 1990s                      1996-01-01 1999-12-31
early to mid 1990s              1990-01-01 1996-12-31
mid-to-late 1990s               1993-01-01 1999-12-31
early 1998                      1998-01-01 1998-04-30
late in 1998                    1998-09-01 1998-12-31
mid June 1992                   1992-06-11 1992-06-20
end of June 1992                1992-06-21 1992-06-30
late spring 1998                1998-05-01 1998-05-31
late winter 1997/98             1998-02-01 1998-02-28
19th century                    1801-01-01 1900-12-31
1980-85                         1980-01-01 1985-12-31
1980-1985                       1980-01-01 1985-12-31
1980 – 85                       1980-01-01 1985-12-31
1980 to 1985                    1980-01-01 1985-12-31
from 1980 to 1985               1980-01-01 1985-12-31
between 1980 and 1985           1980-01-01 1985-12-31
1997/98                         1997-01-01 1998-12-31
June-August 1992                1992-06-01 1992-08-31
3 to 5 June 1992                1992-06-03 1992-06-05
June 12 to June 20 1998         1998-06-12 1998-06-20
between 1 March and 31 May 98   1998-03-01 1998-05-31
1998 or 1999                    1998-01-01 1999-12-31
March or April 98               1998-03-01 1998-04-30
1999 or 1998                    1998-01-01 1999-12-31
today                           2026-03-11
yesterday                       2026-03-10
last night                      2026-03-10 2026-03-11
last week                       2026-03-02 2026-03-08
this week                       2026-03-09 2026-03-15
last weekend                    2026-03-07 2026-03-08
last Tuesday                    2026-03-10
last Wednesday                  2026-03-04
last month                      2026-02-01 2026-02-28
this month                      2026-03-01 2026-03-31
last year                       2025-01-01 2025-12-31
last spring                     2025-03-01 2025-05-31
last winter                     2025-12-01 2026-02-28
last autumn                     2025-09-01 2025-11-30
last June                       2025-06-01 2025-06-30
last Christmas                  2025-12-24 2025-12-26
this spring                     2026-03-01 2026-05-31
three days ago                  2026-03-08
2 weeks ago                     2026-02-22 2026-02-28
a month ago                     2026-01-27 2026-02-26
two years ago                   2023-09-11 2024-09-11
unknown                         - -
?                               - -
n/d                             - -
n.d.                            - -
don’t know                      - -
1998~                           1996-01-01 2000-12-31
2004?                           2002-01-01 2006-12-31
199X                            1990-01-01 1999-12-31
19XX                            1900-01-01 1999-12-31
1999-XX                         1999-01-01 1999-12-31
1999-05-XX                      1999-05-01 1999-05-31
2004-06                         2004-06-01 2004-06-30
2001-21                         2001-03-01 2001-05-31
../1985                         - 1985-12-31
1985/..                         1985-01-01 -
2004-06/2006                    2004-06-01 2006-12-31
2004-06-01/2004-06-20           2004-06-01 2004-06-20
"""
TABLE = [(line[:32].strip(), line[32:]) for line in PHRASES.strip().splitlines()]


@pytest.mark.parametrize(("words", "meant"), TABLE)
def test_a_phrase_is_read(words: str, meant: str) -> None:
    read = read_date(words, today=TODAY)
    assert (read.earliest, read.latest) == days(meant)
    assert read.words == words


@pytest.mark.parametrize("text", ["", "   ", "\n"])
def test_no_words_are_no_date(text: str) -> None:
    assert read_date(text, today=TODAY) == PartialDate()


def test_month_first_where_that_is_the_custom() -> None:
    read = read_date("12/6/1987", today=TODAY, day_first=False)
    assert read.earliest == date(1987, 12, 6)


@pytest.mark.parametrize(
    ("words", "meant"),
    [
        ("spring 1998", "1998-09-01 1998-11-30"),
        ("summer 1998/99", "1998-12-01 1999-02-28"),
        ("summer 1998", "1997-12-01 1999-02-28"),
        ("autumn 1998", "1998-03-01 1998-05-31"),
        ("winter 1998", "1998-06-01 1998-08-31"),
        ("last summer", "2025-12-01 2026-02-28"),
        ("2001-21", "2001-09-01 2001-11-30"),
    ],
)
def test_seasons_are_those_of_the_societys_hemisphere(words: str, meant: str) -> None:
    read = read_date(words, today=TODAY, southern=True)
    assert (read.earliest, read.latest) == days(meant)


def test_two_digits_are_never_a_year_to_come() -> None:
    assert read_date("June '26", today=TODAY, future_ok=True).earliest == date(2026, 6, 1)
    assert read_date("'26", today=TODAY).earliest == date(2026, 1, 1)
    assert read_date("'27", today=TODAY).earliest == date(1927, 1, 1)


def test_two_digits_may_be_a_year_soon_to_come_where_plans_are_made() -> None:
    assert read_date("12/6/27", today=TODAY, future_ok=True).earliest == date(2027, 6, 12)
    assert read_date("12/6/40", today=TODAY, future_ok=True).earliest == date(1940, 6, 12)


def test_white_space_within_does_not_matter() -> None:
    assert read_date("  spring \n 98 ", today=TODAY).words == "spring 98"


some_days = st.dates(date(1700, 1, 1), TODAY)


@settings(deadline=None)
@given(
    some_days,
    st.sampled_from(
        ["{0.day}/{0.month}/{0.year}", "{0:%d %B %Y}", "{0:%B %d, %Y}", "{0:%Y-%m-%d}", "{0:%a %d %b %Y}"]
    ),
)
def test_every_day_is_read_in_every_writing(day: date, writing: str) -> None:
    read = read_date(writing.format(day), today=TODAY)
    assert (read.earliest, read.latest) == (day, day)


@settings(deadline=None)
@given(some_days, some_days, st.sampled_from(["between {} and {}", "{} to {}", "{} - {}", "from {} to {}"]))
def test_two_days_are_read_as_what_lies_between(one: date, other: date, writing: str) -> None:
    first, last = sorted([one, other])
    read = read_date(writing.format(f"{first:%d %b %Y}", f"{last:%d %b %Y}"), today=TODAY)
    assert (read.earliest, read.latest) == (first, last)


@settings(deadline=None)
@given(some_days, st.integers(0, 400))
def test_what_was_said_of_days_gone_by_contains_the_day(today: date, back: int) -> None:
    read = read_date(f"{back} days ago", today=today + timedelta(days=400))
    assert read.earliest == read.latest == today + timedelta(days=400 - back)
