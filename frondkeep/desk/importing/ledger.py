"""What is on record and what the sheets declare, looked up once and asked for every row."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date
from typing import Any

from django.utils import timezone
from rapidfuzz import fuzz, process

from frondkeep.desk.importing.people import PeopleBook
from frondkeep.desk.importing.phrases import PLAIN_NUMBER, without_brackets
from frondkeep.desk.importing.rows import RawRow, Ref
from frondkeep.desk.importing.shows import ShowBook
from frondkeep.desk.importing.values import plain
from frondkeep.society.models import Meeting, Member
from specimens.models import Cross, Name, ParentageClaim, Rank, Specimen, SporeSowing, TraitState
from specimens.naming.codes import CodeNotRead, read_code
from specimens.services.reading import KnownNames, LabelMatch

PLANT_FIELDS = (
    "pk",
    "code",
    "society_number",
    "import_key",
    "label_text",
    "acquired_words",
    "state",
    "mount",
    "own_number",
    "notes",
)
SOWING_FIELDS = ("pk", "code", "old_number", "import_key", "sown_words", "medium", "came_up", "notes")


class UnknownReferenceError(ValueError):
    """A number or code that neither the records nor the sheets hold; `str()` says what may be meant."""


@dataclass
class Ledger:
    """Lookups for one planning or writing; none of them asks the database again."""

    today: date
    people: PeopleBook
    names: KnownNames
    meetings: dict[str, list[Meeting]]
    members: dict[str, Member]
    records: dict[str, dict[str, list[dict[str, Any]]]]
    states: dict[str, dict[str, str]]
    crosses: dict[str, Cross]
    claims: set[str]
    declared: dict[Ref, list[RawRow]] = field(default_factory=dict)
    first_plants: set[str] = field(default_factory=set)
    shows: ShowBook = field(default_factory=ShowBook.load)
    _matches: dict[tuple[str, str], LabelMatch] = field(default_factory=dict)

    @classmethod
    def load(cls) -> Ledger:
        return cls(
            today=timezone.localdate(),
            people=PeopleBook.load(),
            names=KnownNames.load(),
            meetings=grouped((plain(meeting.name), meeting) for meeting in Meeting.objects.all()),
            members=known_members(),
            records={
                "plant": indexed(Specimen.objects.values(*PLANT_FIELDS), "society_number"),
                "sowing": indexed(SporeSowing.objects.values(*SOWING_FIELDS), "old_number"),
            },
            states=known_states(),
            crosses={
                cross.import_key: cross for cross in Cross.objects.exclude(import_key="").select_related("by")
            },
            claims=set(ParentageClaim.objects.exclude(import_key="").values_list("import_key", flat=True)),
        )

    def declare(self, row: RawRow, *, kind: str) -> None:
        """Remember that this row of the sheets bears a number (or a code)."""
        for key in ("number", "code"):
            if row.cells.get(key):
                self.declared.setdefault((kind, plain(row.cells[key])), []).append(row)

    def on_record(self, kind: str, number: str) -> list[dict[str, Any]]:
        """The records of this number, code or import key."""
        return self.records[kind].get(plain(number), [])

    def refer(self, words: str, *, kinds: tuple[str, ...]) -> Ref | None:
        """The plant or sowing meant; None where these are words. Raises UnknownReferenceError for a slip."""
        said = without_brackets(words)
        for kind in kinds:
            found = len(self.on_record(kind, said))
            if found > 1:
                raise UnknownReferenceError(f"{found} records bear this number. Write the plant’s code.")
            if found or (kind, plain(said)) in self.declared:
                return (kind, plain(said))
        if PLAIN_NUMBER.match(said) or looks_like_a_code(said):
            raise UnknownReferenceError(
                f"Nothing on record or in these sheets bears it.{self.meant(said, kinds)}"
            )
        return None

    def meant(self, said: str, kinds: tuple[str, ...]) -> str:
        """“ Did you mean F12 or F21?”, or nothing."""
        near = [str(code) for code in slips_of(said) if any(self.on_record(k, str(code)) for k in kinds)]
        if not near:
            numbers = {number for kind, number in self.declared if kind in kinds}
            numbers.update(number for kind in kinds for number in self.records[kind] if ":" not in number)
            found = process.extract(plain(said), sorted(numbers), scorer=fuzz.ratio, score_cutoff=65, limit=3)
            near = [number.upper().replace(" ", "-") for number, _, _ in found]
        return f" Did you mean {' or '.join(near)}?" if near else " Check it against the tag."

    def match(self, text: str, *, genus: str = "") -> LabelMatch:
        """As KnownNames.match, remembered."""
        key = (text, genus)
        if key not in self._matches:
            self._matches[key] = self.names.match(text, genus=genus)
        return self._matches[key]

    def name_as_written(self, text: str, *, genus: str = "") -> Name | None:
        """The cultivar or species written exactly so; a near writing is another name."""
        reading = self.match(text, genus=genus).reading
        kind, word = ("cultivar", reading.epithet) if reading.epithet else ("species", reading.species)
        key = (f"={kind}", (reading.genus or genus).casefold(), self.names.word(word, written=True))
        found = self.names.by_key.get(key, []) if word else []
        return found[0] if found else None

    def add_name(self, name: Name) -> None:
        """A name the sheets declare; labels after it may mean it."""
        self.names.add(name)
        self._matches.clear()

    def genus(self, epithet: str) -> Name:
        """The genus on record, else one that will be."""
        return self.names.one("genus", "", epithet) or Name(rank=Rank.GENUS, epithet=epithet, written=epithet)


def known_members() -> dict[str, Member]:
    """Members by number and by full name; of two of one name the first."""
    found: dict[str, Member] = {}
    for member in Member.objects.select_related("household").order_by("pk"):
        found.setdefault(f"name:{plain(member.name)}", member)
        if member.number:
            found[f"number:{plain(member.number)}"] = member
    return found


def known_states() -> dict[str, dict[str, str]]:
    """Trait → plain key or label → state key."""
    found: dict[str, dict[str, str]] = defaultdict(dict)
    for trait, key, label in TraitState.objects.values_list("trait__key", "key", "label"):
        for word in (key, label):
            found[trait].setdefault(plain(word.replace("_", " ")), key)
    return dict(found)


def grouped(pairs: Iterable[tuple[str, Any]]) -> dict[str, list[Any]]:
    found: dict[str, list[Any]] = {}
    for key, value in pairs:
        found.setdefault(key, []).append(value)
    return found


def indexed(rows: Iterable[dict[str, Any]], number: str) -> dict[str, list[dict[str, Any]]]:
    """Records by code, by old number and by import key."""
    found: dict[str, list[dict[str, Any]]] = {}
    for row in rows:
        for word in {plain(row["code"]), plain(row[number]), row["import_key"]} - {""}:
            found.setdefault(word, []).append(row)
    return found


def looks_like_a_code(words: str) -> bool:
    return words[:4].isdigit() and "-" in words and len(words) < 16


def slips_of(words: str) -> tuple[Any, ...]:
    try:
        read_code(words)
    except CodeNotRead as slip:
        return slip.did_you_mean
    return ()
