"""The entry list for the committee's table and the judges' copy without exhibitors."""

import dataclasses
from collections.abc import Iterator
from datetime import datetime

from frondkeep.sheets.errors import SheetError
from frondkeep.sheets.glyphs import STAND_IN, describe_characters, missing_characters, named_in, one_line
from frondkeep.sheets.press import Data, Refused, press
from frondkeep.sheets.rows import PAPERS, ClassRows, EntryList, EntryRow


def entry_list_pdf(entry_list: EntryList, *, timestamp: datetime | int, stand_in: bool = False) -> bytes:
    """Return the committee's list as a tagged PDF: every class, its entries and whose they are.

    The same list and timestamp give the same bytes. Long names are wrapped, never cut; a class is
    never parted from its title; a class without entries says so.

    Parameters
    ----------
    timestamp
        The date in the file: a datetime that knows its zone, or seconds since 1970.
    stand_in
        Print an empty square, explained at the end, for characters our fonts do not have.

    Raises
    ------
    SheetError
        Saying which row cannot be printed, and why. Without `stand_in` that includes characters no
        font has.
    """
    return _printed("entry_list.typ", entry_list, timestamp, stand_in)


def judges_copy_pdf(entry_list: EntryList, *, timestamp: datetime | int, stand_in: bool = False) -> bytes:
    """Return the judges' copy: entries by class with space for places, and nobody's name or number.

    Exhibitors and notes are dropped here, whatever the rows hold, before anything reaches the press.
    Otherwise like `entry_list_pdf`.
    """
    return _printed("judges_copy.typ", without_exhibitors(entry_list), timestamp, stand_in)


def without_exhibitors(entry_list: EntryList) -> EntryList:
    """Return the list with entry numbers, names and counts only."""
    classes = tuple(
        dataclasses.replace(class_, entries=tuple(map(_without_exhibitor, class_.entries)))
        for class_ in entry_list.classes
    )
    return dataclasses.replace(entry_list, classes=classes)


def _without_exhibitor(entry: EntryRow) -> EntryRow:
    return EntryRow(number=entry.number, name_runs=entry.name_runs, plants=entry.plants)


def _printed(template: str, entry_list: EntryList, timestamp: datetime | int, stand_in: bool) -> bytes:
    missing = missing_characters(text for _, texts in _texts_by_row(entry_list) for text in texts)
    if missing and not stand_in:
        raise _missing_error(entry_list, missing)
    try:
        return press(template, sheet_data(entry_list, missing=missing), timestamp=timestamp)
    except Refused as refusal:
        # Joiners are invisible alone but not beside a character they cannot join.
        joiners = tuple(named_in(str(refusal)).difference(missing))
        if not joiners:
            raise SheetError(f"the sheet could not be set: {str(refusal).splitlines()[0]}") from refusal
    if not stand_in:
        raise _missing_error(entry_list, joiners)
    return press(template, sheet_data(entry_list, missing=missing + joiners), timestamp=timestamp)


def _missing_error(entry_list: EntryList, missing: tuple[str, ...]) -> SheetError:
    # The first row is named; the others are found when that one is mended or a stand-in is allowed.
    for row, texts in _texts_by_row(entry_list):
        here = tuple(character for character in missing if any(character in text for text in texts))
        if here:
            return SheetError(f"our fonts cannot print {describe_characters(here)}", row=row, characters=here)
    raise AssertionError("a missing character stands in some row")


def _texts_by_row(entry_list: EntryList) -> Iterator[tuple[str, tuple[str, ...]]]:
    head = (entry_list.society, entry_list.show, entry_list.date_words, entry_list.venue)
    yield "heading", (*head, entry_list.printed_words())
    for class_ in entry_list.classes:
        yield f"class {class_.number}", (str(class_.number), class_.title, class_.section)
        for entry in class_.entries:
            yield f"class {class_.number}, entry {entry.number}", _entry_texts(entry)


def _entry_texts(entry: EntryRow) -> tuple[str, ...]:
    return (str(entry.number), entry.name, str(entry.exhibitor_number), entry.exhibitor, entry.note)


def sheet_data(entry_list: EntryList, *, missing: tuple[str, ...] = ()) -> Data:
    """Return what the templates read, with a square in place of each missing character."""
    language, _, region = entry_list.language.partition("-")
    squares = str.maketrans(dict.fromkeys(missing, STAND_IN))

    def said(text: object) -> str:
        return one_line(str(text)).strip().translate(squares)

    return {
        "society": said(entry_list.society),
        "show": said(entry_list.show),
        "date": said(entry_list.date_words),
        "venue": said(entry_list.venue),
        "printed": said(entry_list.printed_words()),
        "paper": PAPERS[entry_list.paper],
        "language": language.lower(),
        "region": region.upper() or None,
        "large": entry_list.large_print,
        "squares": bool(missing),
        "classes": [_class_data(class_, squares) for class_ in entry_list.classes],
    }


def _class_data(class_: ClassRows, squares: dict[int, str]) -> Data:
    def said(text: object) -> str:
        return one_line(str(text)).strip().translate(squares)

    return {
        "number": said(class_.number),
        "title": said(class_.title),
        "section": said(class_.section),
        "entries": [
            {
                "number": said(entry.number),
                "name": [[one_line(text).translate(squares), style] for text, style in entry.name_runs],
                "exhibitor_number": said(entry.exhibitor_number),
                "exhibitor": said(entry.exhibitor),
                "plants": entry.plants,
                "note": said(entry.note),
            }
            for entry in class_.entries
        ],
    }
