"""EDTF dates read against an independent reader of the format.

Source: Library of Congress, Extended Date/Time Format (EDTF) Specification, 2019, levels 0 and 1, as read by
the Python package edtf. Its bounds of open intervals are wrong (an unknown end becomes ten years), so of those only
the closed end is compared; its padding of approximate dates is its own, so there only the strict days are.
"""

from collections.abc import Iterator
from datetime import date
from time import struct_time

import pytest
from edtf import parse_edtf
from hypothesis import given, settings
from hypothesis import strategies as st

from specimens.naming.calendar_spans import easter_sunday
from specimens.naming.dates import PartialDate, read_date

TODAY = date(2026, 3, 11)


def day(moment: struct_time) -> date:
    return date(moment.tm_year, moment.tm_mon, moment.tm_mday)


def strict_days(text: str) -> tuple[date, date]:
    parsed = parse_edtf(text)
    return day(parsed.lower_strict()), day(parsed.upper_strict())


def ours(text: str) -> PartialDate:
    return read_date(text, today=TODAY)


def points() -> st.SearchStrategy[str]:
    """Dates of levels 0 and 1 without a mark of doubt, from 1700 to 2019."""
    years = st.integers(1700, 2019).map(str)
    months = st.tuples(years, st.integers(1, 12)).map(lambda pair: f"{pair[0]}-{pair[1]:02d}")
    days = st.dates(date(1700, 1, 1), date(2019, 12, 31)).map(str)
    open_digits = st.integers(170, 201).map(lambda decade: f"{decade}X") | st.sampled_from(
        ["17XX", "18XX", "19XX"]
    )
    open_parts = years.map(lambda year: f"{year}-XX") | months.map(lambda month: f"{month}-XX")
    return years | months | days | open_digits | open_parts


@settings(deadline=None, max_examples=50)
@given(points())
def test_dates_mean_the_same_days(text: str) -> None:
    read = ours(text)
    assert (read.earliest, read.latest) == strict_days(text)


@settings(deadline=None, max_examples=50)
@given(points(), points())
def test_intervals_mean_the_same_days(one: str, other: str) -> None:
    first, last = sorted([one, other], key=strict_days)
    if strict_days(first)[0] > strict_days(last)[1]:
        first, last = last, first
    read = ours(f"{first}/{last}")
    assert (read.earliest, read.latest) == (strict_days(first)[0], strict_days(last)[1])


@pytest.mark.parametrize("season", ["2001-21", "2001-22", "2001-23"])
def test_seasons_within_a_year_mean_the_same_days(season: str) -> None:
    read = ours(season)
    assert (read.earliest, read.latest) == strict_days(season)


def test_winter_covers_what_the_other_reader_makes_of_it() -> None:
    first, last = strict_days("2001-24")
    read = ours("2001-24")
    assert read.earliest is not None
    assert read.latest is not None
    assert read.earliest <= first <= last <= read.latest


@settings(deadline=None, max_examples=50)
@given(points().filter(lambda text: "X" not in text), st.sampled_from("~?%"))
def test_a_doubtful_date_covers_the_days_it_would_mean_without_doubt(text: str, mark: str) -> None:
    read = ours(text + mark)
    assert read.earliest is not None
    assert read.latest is not None
    first, last = strict_days(text)
    assert read.earliest < first <= last < read.latest


def half_open(text: str) -> Iterator[tuple[str, str]]:
    yield from (
        (f"{text}/..", "later"),
        (f"{text}/", "later"),
        (f"../{text}", "earlier"),
        (f"/{text}", "earlier"),
    )


@settings(deadline=None, max_examples=50)
@given(points())
def test_an_open_end_is_open_and_the_other_the_same(text: str) -> None:
    first, last = strict_days(text)
    for interval, side in half_open(text):
        read = ours(interval)
        assert (read.earliest, read.latest) == ((first, None) if side == "later" else (None, last))


@pytest.mark.parametrize(
    "sunday",
    [
        "1818-03-22",
        "1943-04-25",
        "1961-04-02",
        "1998-04-12",
        "2000-04-23",
        "2008-03-23",
        "2019-04-21",
        "2038-04-25",
    ],
)
def test_easter_falls_on_its_sunday(sunday: str) -> None:
    """Dates of Easter from memory; 22 March and 25 April are the earliest and latest there can be."""
    assert easter_sunday(int(sunday[:4])) == date.fromisoformat(sunday)


def test_easter_is_always_a_sunday_between_22_march_and_25_april() -> None:
    """The limits of the Gregorian calendar of 1582."""
    for year in range(1700, 2200):
        sunday = easter_sunday(year)
        assert sunday.isoweekday() == 7
        assert date(year, 3, 22) <= sunday <= date(year, 4, 25)
