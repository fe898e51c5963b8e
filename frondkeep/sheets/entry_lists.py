"""The entry list for the committee's table and the judges' copy without exhibitors."""

import dataclasses
from collections.abc import Iterator
from datetime import datetime

from frondkeep.sheets.errors import SheetError
from frondkeep.sheets.glyphs import STAND_IN, one_line
from frondkeep.sheets.press import Data, Refused
from frondkeep.sheets.printing import Say, printed
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
    def data(say: Say) -> Data:
        return sheet_data(entry_list, say=say)

    try:
        return printed(template, _texts_by_row(entry_list), data, timestamp=timestamp, stand_in=stand_in)
    except Refused as refusal:
        raise SheetError(f"the sheet could not be set: {str(refusal).splitlines()[0]}") from refusal


def _texts_by_row(entry_list: EntryList) -> Iterator[tuple[str, tuple[str, ...]]]:
    head = (entry_list.society, entry_list.show, entry_list.date_words, entry_list.venue)
    yield "heading", (*head, entry_list.printed_words())
    for class_ in entry_list.classes:
        yield f"class {class_.number}", (str(class_.number), class_.title, class_.section)
        for entry in class_.entries:
            yield f"class {class_.number}, entry {entry.number}", _entry_texts(entry)


def _entry_texts(entry: EntryRow) -> tuple[str, ...]:
    return (str(entry.number), entry.name, str(entry.exhibitor_number), entry.exhibitor, entry.note)


def _as_it_is(text: object) -> str:
    return one_line(str(text))


def sheet_data(entry_list: EntryList, *, say: Say = _as_it_is) -> Data:
    """Return what the templates read, every text put through `say`."""
    language, _, region = entry_list.language.partition("-")
    return {
        "society": say(entry_list.society).strip(),
        "show": say(entry_list.show).strip(),
        "date": say(entry_list.date_words).strip(),
        "venue": say(entry_list.venue).strip(),
        "printed": say(entry_list.printed_words()).strip(),
        "paper": PAPERS[entry_list.paper],
        "language": language.lower(),
        "region": region.upper() or None,
        "large": entry_list.large_print,
        "squares": _squares_stand_in(entry_list, say),
        "classes": [_class_data(class_, say) for class_ in entry_list.classes],
    }


def _squares_stand_in(entry_list: EntryList, say: Say) -> bool:
    texts = [text for _, texts in _texts_by_row(entry_list) for text in texts]
    return any(say(text).count(STAND_IN) > text.count(STAND_IN) for text in texts)


def _class_data(class_: ClassRows, say: Say) -> Data:
    return {
        "number": say(class_.number).strip(),
        "title": say(class_.title).strip(),
        "section": say(class_.section).strip(),
        "entries": [_entry_data(entry, say) for entry in class_.entries],
    }


def _entry_data(entry: EntryRow, say: Say) -> Data:
    return {
        "number": say(entry.number).strip(),
        "name": [[say(text), style] for text, style in entry.name_runs],
        "exhibitor_number": say(entry.exhibitor_number).strip(),
        "exhibitor": say(entry.exhibitor).strip(),
        "plants": entry.plants,
        "note": say(entry.note).strip(),
    }
