"""Prints a sheet once it is known that our fonts have every character it needs."""

from collections.abc import Callable, Iterable, Sequence
from datetime import datetime

from frondkeep.sheets.errors import SheetError
from frondkeep.sheets.glyphs import STAND_IN, describe_characters, missing_characters, named_in, one_line
from frondkeep.sheets.press import Data, Refused, press

Say = Callable[[object], str]
Row = tuple[str, Sequence[str]]
"""What a person calls the row, and every text printed in it."""


def printed(
    template: str,
    rows: Iterable[Row],
    data: Callable[[Say], Data],
    *,
    timestamp: datetime | int,
    stand_in: bool,
) -> bytes:
    """Print a sheet.

    `data` is asked for what the template reads and must put every text through the function it is
    given, which makes one line of it and a square of each character that stands in.

    Raises
    ------
    SheetError
        Naming the first row with characters our fonts lack, unless `stand_in` lets squares stand in.
    Refused
        When the template itself refuses.
    """
    known_rows = list(rows)
    missing = missing_characters(text for _, texts in known_rows for text in texts)
    if missing and not stand_in:
        raise _missing_error(known_rows, missing)
    try:
        return press(template, data(_say(missing)), timestamp=timestamp)
    except Refused as refusal:
        # Joiners are invisible alone but not beside a character they cannot join.
        joiners = tuple(named_in(str(refusal)).difference(missing))
        if not joiners:
            raise
    if not stand_in:
        raise _missing_error(known_rows, joiners)
    return press(template, data(_say(missing + joiners)), timestamp=timestamp)


def _say(missing: tuple[str, ...]) -> Say:
    squares = str.maketrans(dict.fromkeys(missing, STAND_IN))
    return lambda text: one_line(str(text)).translate(squares)


def _missing_error(rows: list[Row], missing: tuple[str, ...]) -> SheetError:
    # The first row is named; the others are found when that one is mended or a stand-in is allowed.
    for row, texts in rows:
        here = tuple(character for character in missing if any(character in text for text in texts))
        if here:
            return SheetError(f"our fonts cannot print {describe_characters(here)}", row=row, characters=here)
    raise AssertionError("a missing character stands in some row")
