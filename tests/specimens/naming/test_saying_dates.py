"""Dates are said again in words that mean the same days."""

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specimens.naming.dates import PartialDate, echo_date, read_date, say_date, say_when

from .test_reading_dates import TABLE, TODAY


def read(words: str, **how: bool) -> PartialDate:
    return read_date(words, today=TODAY, **how)


@pytest.mark.parametrize(
    ("words", "said", "in_a_sentence"),
    [
        ("spring 98", "spring 1998", "in spring 1998"),
        ("6/6/92", "6 June 1992", "on 6 June 1992"),
        ("June '92", "June 1992", "in June 1992"),
        ("1978", "1978", "in 1978"),
        ("easter 98", "Easter 1998", "at Easter 1998"),
        ("winter 97/98", "winter 1997/98", "in winter 1997/98"),
        ("70s", "1970s", "in the 1970s"),
        ("late 70s", "late 1970s", "in the late 1970s"),
        ("c1950", "about 1950", "about 1950"),
        ("1998?", "perhaps 1998", "perhaps 1998"),
        ("pre-1985", "before 1985", "before 1985"),
        ("../1985", "1985 or earlier", "1985 or earlier"),
        ("1980-85", "between 1980 and 1985", "between 1980 and 1985"),
        ("June-Aug 1992", "between June and August 1992", "between June and August 1992"),
        ("1998 or 1999", "1998 or 1999", "in 1998 or 1999"),
        ("1998~ or 1990", "between 1990 and 2000", "between 1990 and 2000"),
        ("yesterday", "10 March 2026", "on 10 March 2026"),
        ("last week", "between 2 and 8 March 2026", "between 2 and 8 March 2026"),
        ("last month", "February 2026", "in February 2026"),
        ("last year", "2025", "in 2025"),
        ("unknown", "date not known", ""),
        ("", "date not known", ""),
    ],
)
def test_words_are_tidied(words: str, said: str, in_a_sentence: str) -> None:
    assert say_date(read(words)) == said
    assert say_when(read(words)) == in_a_sentence


@pytest.mark.parametrize("southern", [True, False])
def test_a_season_is_said_as_such_in_either_hemisphere(southern: bool) -> None:
    assert say_date(read("spring 98", southern=southern)) == "spring 1998"


def test_month_first_is_said_right() -> None:
    assert say_date(read("12/6/1987", day_first=False)) == "6 December 1987"


def test_words_that_no_longer_mean_the_days_give_way_to_them() -> None:
    mended = PartialDate("spring 98", date(1998, 4, 2), date(1998, 4, 2))
    assert say_date(mended) == "2 April 1998"
    assert say_date(PartialDate("Aunt May’s birthday", date(1998, 4, 2), None)) == "2 April 1998 or later"


@pytest.mark.parametrize(
    ("words", "echo"),
    [
        ("spring 1998", "We will store: between 1 March and 31 May 1998"),
        ("June 1992", "We will store: between 1 and 30 June 1992"),
        ("1980-85", "We will store: between 1 January 1980 and 31 December 1985"),
        ("6/6/92", "We will store: 6 June 1992"),
        ("before 1985", "We will store: 31 December 1984 or earlier"),
        ("after 1990", "We will store: 1 January 1991 or later"),
        ("?", "We will store: no date"),
    ],
)
def test_the_echo_names_the_days(words: str, echo: str) -> None:
    assert echo_date(read(words)) == echo


def assert_means_the_same(words: str, partial: PartialDate) -> None:
    again = read_date(words, today=TODAY, future_ok=True)
    assert (again.earliest, again.latest) == (partial.earliest, partial.latest)


@pytest.mark.parametrize("words", [words for words, _ in TABLE])
def test_what_is_said_and_what_is_echoed_can_be_read_again(words: str) -> None:
    partial = read(words)
    assert_means_the_same(say_date(partial), partial)
    assert_means_the_same(echo_date(partial).removeprefix("We will store: "), partial)


ends = st.none() | st.dates(date(1700, 1, 1), date(2100, 1, 1))


@settings(deadline=None)
@given(ends, ends, st.sampled_from(["", "unknown", "spring 98", "some words"]))
def test_any_days_are_said_in_words_that_can_be_read_again(
    one: date | None, other: date | None, words: str
) -> None:
    if one and other:
        one, other = sorted([one, other])
    partial = PartialDate(words, one, other)
    assert_means_the_same(say_date(partial), partial)


@settings(deadline=None)
@given(st.integers(1700, 2025), st.integers(1, 12))
def test_whole_months_and_years_are_said_short(year: int, month: int) -> None:
    whole = read(f"{year}-{month:02d}")
    assert say_date(PartialDate("", whole.earliest, whole.latest)) == f"{whole.earliest:%B} {year}"
    assert say_date(PartialDate("", date(year, 1, 1), date(year, 12, 31))) == str(year)
