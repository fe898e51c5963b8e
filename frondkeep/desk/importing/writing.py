"""Writing a plan: everything in one transaction through the services, told once at the end, or nothing."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date

from django.db import transaction

from frondkeep.desk.importing.people import PeopleBook
from frondkeep.desk.importing.planning import Plan
from frondkeep.desk.importing.registry import SUBJECTS
from frondkeep.desk.importing.rows import PlannedRow, Ref
from frondkeep.desk.importing.values import plain
from frondkeep.shows.models import ShowClass
from frondkeep.society.models import Appearance, Keeper, Meeting, Role, User
from specimens.changes import announcing_once
from specimens.models import Name, Specimen, SporeSowing
from specimens.services.reading import KnownNames, name_for_label

Progress = Callable[[str, int, int], None]
AT_ONCE = 1_000


def silent(kind: str, done: int, total: int) -> None:
    """Progress told to nobody."""


@dataclass
class Writing:
    """What writers share: who writes, what was made so far, and lookups kept up to date as it grows."""

    by: User | None
    may_appoint: bool
    made: dict[Ref, Specimen | SporeSowing] = field(default_factory=dict)
    written: dict[int, object] = field(default_factory=dict)
    _people: PeopleBook | None = None
    _known: KnownNames | None = None
    _meetings: dict[str, Meeting] | None = None
    _classes: dict[tuple[str, date | None, int], ShowClass] = field(default_factory=dict)
    _numbers: dict[str, dict[str, int]] = field(default_factory=dict)
    _labels: dict[tuple[str, str], tuple[Name | None, str]] = field(default_factory=dict)

    @property
    def people(self) -> PeopleBook:
        """Loaded after the members were written."""
        if self._people is None:
            self._people = PeopleBook.load()
        return self._people

    @property
    def known(self) -> KnownNames:
        """Every name; writers of names add theirs."""
        if self._known is None:
            self._known = KnownNames.load()
        return self._known

    def keep(self, row: PlannedRow, record: Specimen | SporeSowing) -> None:
        """Remember what a row became, for the rows that refer to it."""
        self.written[id(row)] = record
        for ref in row.gives:
            self.made[ref] = record

    def keeper(self, words: str) -> Keeper | None:
        found = self.people.find(words) if words else None
        if found is not None and found.pk is None:
            found.save()  # the society's own row, made at its first plant
        return found

    def grower(self, words: str) -> dict[str, object]:
        """`by` and `by_words` of a record: a member as such, anybody else in words.

        A household that does not appear by name does not in words either.
        """
        found = self.people.find(words) if words else None
        if found is None or found.member is not None:
            return {"by": found.member if found else None, "by_words": "" if found else words[:120]}
        shown = found.name if found.appears == Appearance.BY_NAME else "a household"
        return {"by": None, "by_words": shown}

    def meeting(self, words: str) -> Meeting | None:
        if self._meetings is None:
            self._meetings = {plain(meeting.name): meeting for meeting in Meeting.objects.order_by("date")}
        return self._meetings.get(words)

    def show_class(self, show: str, day: date | None, number: int) -> ShowClass:
        """A class by the plain name and day of its show, and its number."""
        if not self._classes:
            self._classes = {
                (plain(one.show.name), one.show.date, one.number): one
                for one in ShowClass.objects.select_related("show")
            }
        return self._classes[show, day, number]

    def name(self, text: str, *, genus: str = "") -> tuple[Name | None, str]:
        """The name a label means and its doubt; a new one is added, not yet checked."""
        key = (text, genus)
        if key not in self._labels:
            self._labels[key] = name_for_label(text, by=self.by, known=self.known, genus=genus)
        return self._labels[key]

    def find(self, ref: Ref, model: type[Specimen] | type[SporeSowing]) -> Specimen | SporeSowing:
        """The plant or sowing of a reference: made by this import, or on record."""
        if ref not in self.made:
            self.made[ref] = model.objects.get(pk=self.numbers(ref[0], model)[ref[1]])
        return self.made[ref]

    def numbers(self, kind: str, model: type[Specimen] | type[SporeSowing]) -> dict[str, int]:
        """Ids of what was on record before, by code and old number; read once."""
        if kind not in self._numbers:
            number = "society_number" if model is Specimen else "old_number"
            found = self._numbers.setdefault(kind, {})
            for pk, code, old in model.objects.values_list("pk", "code", number):
                found.update({plain(code): pk, plain(old): pk})
        return self._numbers[kind]

    def plant(self, ref: Ref) -> Specimen:
        found = self.find(ref, Specimen)
        assert isinstance(found, Specimen)  # noqa: S101 — tells the type
        return found

    def sowing(self, ref: Ref) -> SporeSowing:
        found = self.find(ref, SporeSowing)
        assert isinstance(found, SporeSowing)  # noqa: S101 — tells the type
        return found


@transaction.atomic
def write_plan(
    plan: Plan, *, by: User | None, may_appoint: bool | None = None, tell: Progress = silent
) -> Writing:
    """Write every new row, or nothing at all.

    Offices and sign-ins are given only where `may_appoint` (by default: an administrator writes). Raises what
    the services raise (IntegrityError where somebody was quicker, a descent error); nothing is written then.
    """
    if may_appoint is None:
        may_appoint = by is not None and by.holds(Role.ADMINISTRATOR)
    writing = Writing(by=by, may_appoint=may_appoint)
    levels = plan.levels()
    with announcing_once():
        for step in sorted({step for subject in SUBJECTS.values() for step, _ in subject.steps}):
            write_step(writing, levels, step, tell)
        tell("what is computed from them", 0, 0)
    return writing


def write_step(writing: Writing, levels: list[list[PlannedRow]], step: int, tell: Progress) -> None:
    """Level by level, kind by kind, at most `AT_ONCE` rows at a time."""
    writers = {kind: write for kind, subject in SUBJECTS.items() for at, write in subject.steps if at == step}
    total, done = sum(row.kind in writers for level in levels for row in level), 0
    for level in levels:
        for kind, write in writers.items():
            rows = [row for row in level if row.kind == kind]
            for start in range(0, len(rows), AT_ONCE):
                write(writing, rows[start : start + AT_ONCE])
                done += len(rows[start : start + AT_ONCE])
                tell(kind, done, total)
