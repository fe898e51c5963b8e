"""The entries of a show, as somebody took them down: taken whatever the rules say, which the committee checks."""

from __future__ import annotations

from typing import TYPE_CHECKING

from frondkeep.desk.importing.ledger import Ledger
from frondkeep.desk.importing.reader import RowReader
from frondkeep.desk.importing.rows import PlannedRow, RawRow, Ref
from frondkeep.desk.importing.shows import ClassKey
from frondkeep.desk.importing.subjects.schedule import class_words
from frondkeep.shows.models import ShowClass
from frondkeep.shows.services.entries import Staged, enter
from frondkeep.shows.services.exhibitors import exhibitor_for

if TYPE_CHECKING:
    from frondkeep.desk.importing.writing import Writing

# What is shown: a plant on record, or a typed name.
Shown = tuple[Ref | None, str]
WITHOUT_PLANTS = (ShowClass.Stages.DISPLAY, ShowClass.Stages.PHOTOGRAPH)


def declare(raw: RawRow, ledger: Ledger) -> None:
    """Nothing refers to an entry."""


def plan(raw: RawRow, ledger: Ledger) -> PlannedRow:
    key = raw.fingerprint()
    title = f"class {raw.cells.get('number', '')}, {raw.cells.get('exhibitor', '')}"
    read = RowReader(raw, ledger, key=key, title=title)
    place = class_meant(read)
    read.keeper("exhibitor")
    read.needed("exhibitor", most=120)
    words = read.needed("plant", most=200)
    staged_words = place is not None and ledger.shows.stages[place] in WITHOUT_PLANTS
    read.row.values = {
        "class": place,
        "exhibitor": read.cell("exhibitor"),
        "shown": []
        if staged_words
        else [shown(read, part.strip()) for part in words.split(";") if part.strip()],
        "title": words if staged_words else "",
        "note": read.text("notes", most=200),
    }
    if key in ledger.shows.entries and read.row.fate == "new":
        read.found(ledger.shows.entries[key])
    return read.row


def class_meant(read: RowReader) -> ClassKey | None:
    number = read.cell("number")
    show = read.ledger.shows.meant
    if show is None:
        read.refuse("number", "No show is to come. Send its schedule along.")
        return None
    key = (show, int(number)) if number.isdecimal() else None
    if key is None or key not in read.ledger.shows.stages:
        read.refuse("number", "The schedule has no class of this number.")
        return None
    read.row.needs.append(("class", class_words(key)))
    return key


def shown(read: RowReader, words: str) -> Shown:
    return read.reference_in("plant", words, kinds=("plant",)), words


def write(writing: Writing, row: PlannedRow) -> None:
    values = row.values
    (name, day), number = values["class"]
    show_class = writing.show_class(name, day, number)
    exhibitor = exhibitor_for(show_class.show, keeper=writing.keeper(values["exhibitor"]))
    plants = tuple(staged(writing, ref, words) for ref, words in values["shown"])
    enter(
        show_class, exhibitor=exhibitor, plants=plants, by=writing.by, title=values["title"], note=values["note"],
        overrule=True, import_key=row.key,
    )  # fmt: skip


def staged(writing: Writing, ref: Ref | None, words: str) -> Staged:
    if ref is not None:
        return Staged(specimen=writing.plant(ref))
    matched = writing.known.match(words)
    return Staged(typed_name=words, name=None if matched.qualifier else matched.name)
