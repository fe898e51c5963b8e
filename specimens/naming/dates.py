"""Dates as growers write them, read into the days they may mean, and said again in words.

Understood are EDTF levels 0 and 1 (Library of Congress, Extended Date/Time Format, 2019; ISO 8601-2:2019)
and the words growers use. What may mean two things is never guessed:
either both are covered, or the reader asks.
"""

from datetime import date

from specimens.naming.date_phrases import read_words
from specimens.naming.date_points import Asking, Reading, say_day
from specimens.naming.date_words import echo_date, say_date, say_when
from specimens.naming.partial_date import DateNotRead, PartialDate, from_columns

__all__ = ["DateNotRead", "PartialDate", "echo_date", "from_columns", "read_date", "say_date", "say_when"]

LONGEST_WORDS = 80
"""Characters a date may have."""
_UNDERSTOOD = "We would understand 6 June 1992, June 1992, spring 1998, about 1950, before 1985 or unknown."


def read_date(
    text: str, *, today: date, day_first: bool = True, southern: bool = False, future_ok: bool = False
) -> PartialDate:
    """The days that `text` may mean; its `words` are the text without white space around it.

    Empty text is no date; "unknown" and its like keep their words and have two open ends. Two-digit years are
    the latest that are not in the future (up to ten years ahead where `future_ok`). A season across New Year
    dated with one year covers both that it may be. `southern` turns the seasons round.
    Raises `DateNotRead`: for words it cannot read, days the calendar lacks, words that may mean two things
    it cannot cover both, and what lies wholly in the future unless `future_ok`.

    >>> read_date("spring 98", today=date(2026, 5, 1))
    PartialDate(words='spring 98', earliest=datetime.date(1998, 3, 1), latest=datetime.date(1998, 5, 31))
    """
    words = " ".join(text.split())
    if not words:
        return PartialDate()
    if len(words) > LONGEST_WORDS:
        raise DateNotRead(f"This is long for a date. {_UNDERSTOOD} The rest can go into the notes.")
    read = _read(words, Asking(today, day_first, southern, future_ok))
    earliest, latest = read.span
    if earliest and earliest > today and not future_ok:
        raise DateNotRead(f"We read this as {read.said or say_day(earliest)}, which has not come yet.")
    return PartialDate(words, earliest, latest)


def _read(words: str, asking: Asking) -> Reading:
    try:
        read = read_words(words, asking)
    except OverflowError:
        read = None
    if read is None:
        raise DateNotRead(f"We could not read “{words}” as a date. {_UNDERSTOOD}")
    return read
