"""Two names side by side: what is on record of each, and what agrees."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, field

from frondkeep.society.models import User
from lineage.models import Suspicion
from specimens.models import ClaimParent, Keeping, Name, ParentageClaim, Photo, Specimen, State, TraitRecord
from specimens.naming.names import Run, plain
from specimens.services.portrait_traits import sitters_for_names

NOT_KNOWN = (Run("not known", "roman"),)
MOST_WORDS = 8
BEFORE_PARENTS = {
    "self": "from spores of ",
    "sport": "a sport of ",
    "piece": "a piece of ",
    "apogamous": "from spores of ",
    "mixed": "from a pan of ",
}
# Which clue marks which row of facts, and which of its levels agree.
AGREES = {"same raiser", "same raiser, near years", "same two", "same kinds"}
DIFFERS = {"different raisers", "none shared"}


@dataclass(frozen=True, slots=True)
class Fact:
    """One row; `runs` is what stands there, `mark` “agrees”, “differs” or nothing."""

    label: str
    runs: tuple[Run, ...]
    mark: str = ""

    @property
    def words(self) -> str:
        """Where no name stands there: the words alone, which are set as words."""
        return "" if any(run.style == "italic" for run in self.runs) else plain(self.runs)

    @property
    def before(self) -> str:
        """Words that lead up to the names, as “a sport of ”."""
        first = self.runs[0].text if self.runs else ""
        return first if first in BEFORE_PARENTS.values() else ""

    @property
    def named(self) -> tuple[Run, ...]:
        """The names alone."""
        return self.runs[1:] if self.before else self.runs


@dataclass(slots=True)
class Side:
    """One of the two names with all its page says of it."""

    name: Name
    facts: list[Fact] = field(default_factory=list)
    photo: Photo | None = None
    plants: int = 0

    @property
    def photo_words(self) -> str:
        kind = "Drawing" if self.photo and self.photo.is_drawing else "Photo"
        return f"{kind} of a plant called {self.name}"


def sides_of(suspicion: Suspicion, reader: User) -> tuple[Side, Side]:
    """Both names, in their order, as a curator reads of them; nine queries."""
    names = [name for name in (suspicion.first_name, suspicion.second_name) if name is not None]
    sitters = sitters_for_names(names)
    for name in names:
        name.sitter = sitters[name.pk]  # type: ignore[attr-defined]  # for the template
    rows = [
        _raised(names, suspicion),
        _parents(names, suspicion),
        *_traits(names),
        _where_from(names),
        _kept_by(names, reader),
        _on_tags(names),
        _also_known_as(names),
    ]
    photos = _photos(names)
    sides = [Side(name, photo=photos.get(name.pk)) for name in names]
    for label, values, marks in filter(None, rows):
        for side, value, mark in zip(sides, values, marks, strict=True):
            side.facts.append(Fact(label, value or NOT_KNOWN, mark))
    return sides[0], sides[1]


Row = tuple[str, list[tuple[Run, ...]], tuple[str, str]]
NO_MARKS = ("", "")


def text(words: str) -> tuple[Run, ...]:
    return (Run(words, "roman"),) if words else ()


def _mark(suspicion: Suspicion, witness: str) -> tuple[str, str]:
    """What a clue says of a row, beside the second name; the first is what it is compared with."""
    level = suspicion.clues.get(witness, "")
    return ("", "agrees" if level in AGREES else "differs" if level in DIFFERS else "")


def _raised(names: Iterable[Name], suspicion: Suspicion) -> Row:
    told = [", ".join(filter(None, (name.raiser, name.introduced.words))) for name in names]
    return "Raised by", [text(words) for words in told], _mark(suspicion, "raiser")


def _where_from(names: Iterable[Name]) -> Row | None:
    told = [text(name.origin) for name in names]
    return ("Where from", told, NO_MARKS) if any(told) else None


def _parents(names: Iterable[Name], suspicion: Suspicion) -> Row:
    claims = ParentageClaim.objects.filter(name__in=names, standing=ParentageClaim.Standing.CURRENT)
    says = {claim.name_id: claim.says for claim in claims}
    mentioned: dict[int, list[ClaimParent]] = defaultdict(list)
    parents = ClaimParent.objects.filter(claim__in=says and [claim.pk for claim in claims])
    for parent in parents.select_related("name", "specimen", "claim").order_by("claim", "order"):
        mentioned[parent.claim.name_id or 0].append(parent)
    values = [_parent_runs(says.get(name.pk, ""), mentioned[name.pk]) for name in names]
    return "Parents", values, _mark(suspicion, "parents")


def _parent_runs(says: str, parents: Iterable[ClaimParent]) -> tuple[Run, ...]:
    runs = [*text(BEFORE_PARENTS.get(says, ""))]
    for place, parent in enumerate(parents):
        if place:
            runs += text(" × ")
        runs += parent.name.runs(short_genus=True) if parent.name else text(str(parent))
    return tuple(runs) if list(parents) else ()


def _traits(names: Iterable[Name]) -> list[Row]:
    """One row a trait that is on record for one of the names at least."""
    labels: dict[str, str] = {}
    states: dict[tuple[str, int], list[str]] = defaultdict(list)
    records = TraitRecord.objects.filter(name__in=names).order_by("state__trait__order", "state__order")
    for name, key, label, state in records.values_list(
        "name", "state__trait__key", "state__trait__label", "state__label"
    ):
        labels[key] = label
        states[key, name].append(state)
    rows: list[Row] = []
    for key, label in labels.items():
        first, second = (states.get((key, name.pk), []) for name in names)
        mark = "" if not first or not second else "agrees" if {*first} & {*second} else "differs"
        rows.append((label, [text(", ".join(found)) for found in (first, second)], ("", mark)))
    return rows


def _kept_by(names: Iterable[Name], reader: User) -> Row:
    counts: dict[int, Counter[str]] = {name.pk: Counter() for name in names}
    kept = Keeping.objects.filter(
        is_open=True, specimen__state=State.GROWING, specimen__identification__name__in=names
    ).select_related("keeper__member", "keeper__household", "specimen__identification")
    for keeping in kept.order_by("pk"):
        thought = keeping.specimen.identification
        if thought is not None and thought.name_id is not None:
            counts[thought.name_id][keeping.keeper.shown_to(reader)] += 1
    values = [text(keeper_words(counts[name.pk])) or text("nobody") for name in names]
    return "Kept by", values, NO_MARKS


def keeper_words(counts: Counter[str]) -> str:
    """“Ada, Bram (5 plants)”; of many only the first are named."""
    if not counts:
        return ""
    total = counts.total()
    named = ", ".join(list(counts)[:MOST_WORDS])
    more = f" and {len(counts) - MOST_WORDS} more" if len(counts) > MOST_WORDS else ""
    return f"{named}{more} ({total} plant{'' if total == 1 else 's'})"


def _on_tags(names: Iterable[Name]) -> Row:
    labels: dict[int, dict[str, None]] = {name.pk: {} for name in names}
    plants = Specimen.objects.standing().filter(identification__name__in=names).exclude(label_text="")
    for name, label in plants.order_by("code").values_list("identification__name", "label_text"):
        labels[name][label] = None
    values = [text("; ".join(list(labels[name.pk])[:MOST_WORDS])) or text("nothing") for name in names]
    return "What tags say", values, NO_MARKS


def _also_known_as(names: list[Name]) -> Row | None:
    """The other names accepted as the same today."""
    accepted = {name.accepted_id or name.pk for name in names}
    others: dict[int, list[Name]] = defaultdict(list)
    for other in Name.objects.standing().filter(accepted__in=accepted).in_reading_order():
        others[other.accepted_id or other.pk].append(other)
    values = [
        text(", ".join(str(other) for other in others[name.accepted_id or name.pk] if other.pk != name.pk))
        for name in names
    ]
    return ("Also known as", [value or text("–") for value in values], NO_MARKS) if any(values) else None


def _photos(names: Iterable[Name]) -> dict[int, Photo]:
    """The newest photo under each name that its owner lets members see."""
    photos = Photo.objects.filter(specimen__identification__name__in=names).exclude(
        shown_to=Photo.ShownTo.NOBODY
    )
    newest_last = photos.select_related("specimen__identification").order_by("added_at", "pk")
    named = ((photo.specimen.identification, photo) for photo in newest_last)
    return {thought.name_id: photo for thought, photo in named if thought and thought.name_id}
