"""What cannot be read as a date is answered in plain words, and nothing is guessed."""

from datetime import date

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from specimens.naming.dates import LONGEST_WORDS, DateNotRead, PartialDate, read_date

TODAY = date(2026, 3, 11)


def refusal(words: str, *, southern: bool = False) -> str:
    with pytest.raises(DateNotRead) as refused:
        read_date(words, today=TODAY, southern=southern)
    return str(refused.value)


@pytest.mark.parametrize(
    "words",
    [
        "hello",
        "12",
        "1/1/1",
        "%%%",
        "1998-9",
        "99999",
        "last",
        "before",
        "about",
        "between 1980 and",
        "a few years ago",
        "early winter 1997",
        "../..",
    ],
)
def test_what_says_no_date_is_answered_with_what_would_be_understood(words: str) -> None:
    said = refusal(words)
    assert said.startswith(f"We could not read “{words}” as a date.")
    assert "spring 1998" in said


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("31/02/2020", "There is no 31 February 2020. If the day is not sure, February 2020 is enough."),
        ("30 Feb 1999", "There is no 30 February 1999."),
        ("29 Feb 2021", "There is no 29 February 2021."),
        ("2020-02-31", "There is no 31 February 2020."),
        ("June 31, 1992", "There is no 31 June 1992."),
        ("31/13/2020", "There is no month 13."),
        ("1998-13", "There is no month 13."),
        ("before 31 June 1992", "There is no 31 June 1992."),
    ],
)
def test_a_day_the_calendar_lacks_is_named(words: str, said: str) -> None:
    assert refusal(words).startswith(said)


@pytest.mark.parametrize(
    ("words", "meanings"),
    [
        ("June 12", ["June 2012", "12 June"]),
        ("1900s", ["1900 to 1909", "1900 to 1999"]),
        ("2004/05", ["May 2004", "2004 to 2005"]),
        ("1921-24", ["winter 1921", "1921 to 1924"]),
    ],
)
def test_what_may_mean_two_things_is_asked_about(words: str, meanings: list[str]) -> None:
    said = refusal(words)
    assert all(meaning in said for meaning in meanings)


@pytest.mark.parametrize(
    ("words", "proposed"),
    [("June", "June 2025"), ("6 June", "6 June 2025"), ("spring", "Spring 2025"), ("12/6", "12/6/2025")],
)
def test_a_missing_year_is_asked_for(words: str, proposed: str) -> None:
    assert refusal(words) == f"Which year? We would understand “{proposed}”."


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("2027", "We read this as 2027, which has not come yet."),
        ("tomorrow", "We read this as 12 March 2026, which has not come yet."),
        ("after 2026", "We read this as after 2026, which has not come yet."),
        ("12/12/26", "We read this as 12 December 2026, which has not come yet."),
    ],
)
def test_what_has_not_come_yet_is_refused_unless_plans_are_made(words: str, said: str) -> None:
    assert refusal(words) == said
    assert read_date(words, today=TODAY, future_ok=True).is_known


def test_a_year_that_has_begun_is_no_future() -> None:
    assert read_date("2026", today=TODAY).latest == date(2026, 12, 31)


def test_a_weekday_that_does_not_fit_is_asked_about() -> None:
    assert refusal("Tues 6 June 1992").startswith("6 June 1992 was a Saturday.")


def test_an_end_before_the_beginning_is_named() -> None:
    assert (
        refusal("between 1985 and 1980")
        == "This ends before it begins: from 1 January 1985 to 31 December 1980."
    )


def test_a_season_within_one_year_has_no_second_year() -> None:
    assert "summer 1997" in refusal("summer 1997/98")
    assert "winter 1997" in refusal("winter 1997/98", southern=True)


@pytest.mark.parametrize(("words", "year"), [("1089", 1089), ("900 years ago", 1126)])
def test_years_before_plants_were_recorded_are_taken_for_slips(words: str, year: int) -> None:
    assert refusal(words) == f"We keep dates from 1700 on, and read this as {year}."


def test_a_year_far_ahead_is_taken_for_a_slip() -> None:
    assert refusal("about 9998").startswith("We read this as the year 9998.")


def test_long_words_go_into_the_notes() -> None:
    assert "notes" in refusal("x" * (LONGEST_WORDS + 1))


PIECES = [
    "about",
    "before",
    "after",
    "or so",
    "or",
    "to",
    "between",
    "and",
    "early",
    "1998",
    "?",
    "june",
    "-",
    "/",
    "12",
]


@settings(deadline=None)
@given(
    st.lists(st.sampled_from(PIECES), max_size=16).map(" ".join)
    | st.text(max_size=LONGEST_WORDS + 5)
    | st.text("0123456789-/.x~? ", max_size=14)
)
@example("or so " * 13)
@example("about " * 13)
@example("1 or " * 16)
@example("?" * 80)
@example("9999/9999")
@example("999 years ago")
@example("late 9999")
@example("about 2999")
@example("1700~")
def test_whatever_is_typed_is_a_date_or_refused(words: str) -> None:
    try:
        read = read_date(words, today=TODAY, future_ok=True)
    except DateNotRead as refused:
        said = str(refused)
    else:
        said = read.words
        assert isinstance(read, PartialDate)
    assert said or not words.strip()
