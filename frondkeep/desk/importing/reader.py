"""Reads the cells of one row, gathering what is wrong with them and what is worth saying."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TypeVar

from frondkeep.desk.importing.ledger import Ledger, UnknownReferenceError
from frondkeep.desk.importing.people import UnclearPersonError
from frondkeep.desk.importing.rows import PlannedRow, Problem, RawRow, Ref
from frondkeep.desk.importing.values import plain, read_day
from frondkeep.society.models import Keeper, Meeting
from specimens.naming.dates import DateNotRead, PartialDate
from specimens.naming.labels import LabelTooLong, clean_label

Value = TypeVar("Value")


class RowReader:
    """Cells by field; whatever cannot be read refuses the row in words, and reading goes on."""

    def __init__(self, raw: RawRow, ledger: Ledger, *, key: str, title: str) -> None:
        self.raw, self.ledger = raw, ledger
        self.row = PlannedRow(raw, key, title)
        self.extra: list[str] = []

    def cell(self, field: str) -> str:
        return self.raw.cells.get(field, "")

    def refuse(self, field: str, reason: str) -> None:
        self.row.refuse(Problem(self.raw.heading(field), self.cell(field)[:80], reason))

    def note(self, words: str) -> None:
        self.row.notes.append(words)

    def keep_in_notes(self, field: str, *, why: str = "") -> None:
        """What has no place of its own goes to the record's notes, under its heading."""
        self.extra.append(f"{self.raw.heading(field)}: {self.cell(field)}")
        if why:
            self.note(f"{self.raw.heading(field)}: “{self.cell(field)}” — {why}, kept in the notes.")

    def text(self, field: str, *, most: int) -> str:
        try:
            words = clean_label(self.cell(field))
        except LabelTooLong as problem:
            self.refuse(field, str(problem))
            return ""
        if len(words) > most:
            self.refuse(field, f"This is {len(words)} characters long; there is room for {most}. Shorten it.")
            return ""
        return words

    def needed(self, field: str, *, most: int) -> str:
        words = self.text(field, most=most)
        if not words and not self.cell(field):
            self.refuse(field, "Nothing stands here. Fill it in.")
        return words

    def day(self, field: str) -> PartialDate:
        try:
            return read_day(self.cell(field), today=self.ledger.today)
        except DateNotRead as problem:
            self.refuse(field, str(problem))
            return PartialDate()

    def word(self, field: str, known: Mapping[str, Value], *, otherwise: Value) -> Value:
        """The value of a word; an unknown word refuses the row and names the words we know."""
        said = plain(self.cell(field))
        if said not in known:
            self.refuse(field, f"We do not know this word. We know: {', '.join(examples(known))}.")
        return known.get(said, otherwise)

    def read(
        self, field: str, reader: Callable[[str], Value | None], *, otherwise: Value, hint: str
    ) -> Value:
        found = reader(self.cell(field))
        if found is None:
            self.refuse(field, f"We do not know this word. {hint}")
            return otherwise
        return found

    def keeper(self, field: str) -> Keeper | None:
        """Somebody who must be on record or in the sheets; blank is nobody."""
        words, before = self.cell(field), len(self.row.problems)
        found = self.person(field)
        if words and found is None and len(self.row.problems) == before:
            near = self.ledger.people.near(words)
            meant = f"Did you mean {' or '.join(near)}?" if near else "Add them to the members first."
            self.refuse(field, f"Nobody of this name is a member. {meant}")
        return found

    def person(self, field: str) -> Keeper | None:
        """Somebody if they are on record or in the sheets, else None: the words are kept."""
        try:
            return self.ledger.people.find(self.cell(field)) if self.cell(field) else None
        except UnclearPersonError as problem:
            self.refuse(field, str(problem))
            return None

    def reference(self, field: str, *, kinds: tuple[str, ...]) -> Ref | None:
        """The plant or sowing a cell names; None for words."""
        return self.reference_in(field, self.cell(field), kinds=kinds) if self.cell(field) else None

    def reference_in(self, field: str, words: str, *, kinds: tuple[str, ...]) -> Ref | None:
        try:
            found = self.ledger.refer(words, kinds=kinds)
        except UnknownReferenceError as problem:
            self.row.refuse(Problem(self.raw.heading(field), words, str(problem)))
            return None
        if found is not None:
            self.row.needs.append(found)
        return found

    def meeting(self, field: str = "meeting") -> str:
        """The plain name of a meeting on record or in the sheets; words that name none go to the notes."""
        words = plain(self.cell(field))
        if not words:
            return ""
        found: list[Meeting] = self.ledger.meetings.get(words, [])
        if len(found) > 1:
            self.refuse(field, "Several meetings bear this name. Write its name with the year.")
        if not found:
            self.keep_in_notes(field, why="no meeting of this name is on record")
        return words if found else ""

    def notes(self, *more: str) -> str:
        """The row's own notes and all that had no other place."""
        return "\n".join(part for part in (self.cell("notes"), *more, *self.extra) if part)

    def found(self, record: int) -> None:
        """It is on record: what would have been done with a new one need not be said."""
        self.row.fate, self.row.record = "on record", record
        self.row.notes.clear()

    def differing(self, pairs: Mapping[str, tuple[object, object]]) -> None:
        """Say which fields of a record already there differ from the row; an empty cell says nothing."""
        told = {field: pair for field, pair in pairs.items() if self.cell(field)}
        other = [self.raw.heading(field) for field, (here, there) in told.items() if here != there]
        if other:
            self.note(f"On record already, with another {', another '.join(other)}; left as it is.")


def examples(known: Mapping[str, object]) -> list[str]:
    """One word for each value, the first that is not empty."""
    first: dict[object, str] = {}
    for word, value in known.items():
        if word:
            first.setdefault(value, word)
    return list(first.values())
