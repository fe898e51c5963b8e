"""A partial date is the words and the days between."""

from datetime import date

import pytest

from specimens.naming.dates import PartialDate, from_columns

SPRING_98 = PartialDate("spring 98", date(1998, 3, 1), date(1998, 5, 31))
JUNE_98 = PartialDate("June 98", date(1998, 6, 1), date(1998, 6, 30))
BEFORE_98 = PartialDate("before 1998", None, date(1997, 12, 31))
SINCE_99 = PartialDate("since 1999", date(1999, 1, 1), None)
NEVER_SAID = PartialDate()


def test_no_date_is_not_known() -> None:
    assert not NEVER_SAID.is_known
    assert not PartialDate("unknown").is_known
    assert SPRING_98.is_known
    assert BEFORE_98.is_known


def test_only_one_day_is_exact() -> None:
    assert PartialDate("6/6/92", date(1992, 6, 6), date(1992, 6, 6)).is_exact
    assert not SPRING_98.is_exact
    assert not BEFORE_98.is_exact
    assert not NEVER_SAID.is_exact


def test_one_is_surely_before_another_if_all_its_days_are() -> None:
    assert SPRING_98.surely_before(JUNE_98)
    assert JUNE_98.surely_after(SPRING_98)
    assert BEFORE_98.surely_before(SPRING_98)
    assert SINCE_99.surely_after(BEFORE_98)


@pytest.mark.parametrize(
    "other", [SPRING_98, SINCE_99, NEVER_SAID, PartialDate("1998", date(1998, 1, 1), date(1998, 12, 31))]
)
def test_days_in_common_or_an_open_end_prove_nothing(other: PartialDate) -> None:
    assert not SPRING_98.surely_after(other)
    assert other is SINCE_99 or not SPRING_98.surely_before(other)


def test_an_end_before_the_beginning_is_refused() -> None:
    with pytest.raises(ValueError, match="after the latest"):
        PartialDate("1998", date(1998, 2, 1), date(1998, 1, 1))


def test_columns_make_a_partial_date() -> None:
    assert from_columns("spring 98", date(1998, 3, 1), date(1998, 5, 31)) == SPRING_98
    assert from_columns(None, None, None) == NEVER_SAID
