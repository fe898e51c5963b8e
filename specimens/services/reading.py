"""From what a label says to a name on record: surely, nearly, or a new one not yet checked."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from django.db import transaction

from frondkeep.society.models import User
from lineage.core.lookalikes import NameReading, Vocabulary, fold, read_name
from specimens.models import INFRASPECIFIC_RANKS, SPECIES_RANKS, Name, Rank
from specimens.services.names import NOT_PLACED, add_name, genus_named

QUALIFIERS = re.compile(r"(?<![\w.])(cf|aff)\.?(?=\s)|(\?)\s*$", re.IGNORECASE)
HYBRID_SIGN = re.compile(r"\s+[x×X]\s+|\s*×\s*")
BELOW_SPECIES = re.compile(r"([a-z-]+) (?:subsp|ssp|var|f|fo|forma)\.? ([a-z-]+)", re.IGNORECASE)
NOTHING_SAID = frozenset(
    {"", "unknown", "?", "not known", "no label", "no tag", "none", "n/a", "unnamed", "??"}
)


@dataclass(frozen=True, slots=True)
class LabelMatch:
    """What a label means: the name on record it surely is, if any, and how the label was read."""

    reading: NameReading
    name: Name | None = None
    qualifier: str = ""
    says_nothing: bool = False


@dataclass
class KnownNames:
    """Every standing name, looked up by its epithet as written, then folded; loaded once for many labels."""

    vocabulary: Vocabulary
    by_key: dict[tuple[str, str, str], list[Name]] = field(default_factory=dict)

    @classmethod
    def load(cls, vocabulary: Vocabulary | None = None) -> KnownNames:
        known = cls(vocabulary or Vocabulary.default())
        for name in Name.objects.standing().select_related("genus", "accepted", "parent").order_by("pk"):
            known.add(name)
        return known

    def add(self, name: Name) -> None:
        for key in self.keys_of(name):
            self.by_key.setdefault(key, []).append(name)

    def keys_of(self, name: Name) -> Iterable[tuple[str, str, str]]:
        """(kind, genus or empty, word): as written and folded, with its genus and without."""
        kind = kind_of(name)
        genus = (name.genus.epithet if name.genus else name.epithet).casefold()
        for written in (True, False):
            word = name.written.casefold() if kind == "formula" else self.word(name.epithet, written=written)
            if kind == "infra" and name.parent:
                word = f"{self.word(name.parent.epithet, written=written)} {word}"
            yield (f"={kind}" if written else kind, genus, word)
            yield (f"={kind}" if written else kind, "", word)

    def word(self, epithet: str, *, written: bool = False) -> str:
        """The form an epithet is looked up by: its letters as written, or folded."""
        return as_written(epithet) if written else fold(epithet, vocabulary=self.vocabulary)

    def one(self, kind: str, genus: str, epithet: str) -> Name | None:
        """The one name of this kind and epithet: as written first, then folded; the accepted before others.

        Several of one genus are perhaps one plant: the first recorded is taken. Of two genera, none is.
        """
        for key in (f"={kind}", kind):
            words = [self.word(part, written=key[0] == "=") for part in epithet.split("\0")]
            found = self.by_key.get((key, genus.casefold(), " ".join(words)), [])
            found = [name for name in found if name.is_accepted] or found
            if found:
                return found[0] if len({name.genus_id for name in found}) == 1 else None
        return None

    def match(self, text: str, *, genus: str = "") -> LabelMatch:
        """What the label says among the names on record. Never raises, whatever is on the label."""
        qualifier, bare = take_qualifier(text)
        reading = read_name(bare, genus=genus or None, vocabulary=self.vocabulary)
        if bare.strip(" .,'\"").casefold() in NOTHING_SAID:
            return LabelMatch(reading, says_nothing=True)
        return LabelMatch(reading, self.find(reading), qualifier)

    def find(self, reading: NameReading) -> Name | None:
        genus = reading.genus or self.genus_of_initial(reading)
        below = BELOW_SPECIES.fullmatch(reading.epithet) if not reading.quoted else None
        if below:
            return self.one("infra", genus, f"{below[1]}\0{below[2]}")
        if reading.epithet:
            found = self.one("cultivar", genus, reading.epithet)
            return found or (self.find_botanical(reading, genus) if not reading.quoted else None)
        return self.find_botanical(reading, genus)

    def find_botanical(self, reading: NameReading, genus: str) -> Name | None:
        if reading.ranks:
            found = self.one("infra", genus, f"{reading.species}\0{reading.ranks[-1][1]}")
            if found:
                return found
        word = reading.species or ("" if reading.quoted else reading.epithet)
        if word:
            return self.one("species", genus, word)
        return self.one("genus", "", genus) if genus else None

    def genus_of_initial(self, reading: NameReading) -> str:
        """The genus a lone initial stands for, if only one on record holds the epithet or species."""
        if not reading.initial:
            return ""
        word = self.word(reading.epithet or reading.species)
        kind = "cultivar" if reading.epithet else "species"
        genera = {
            name.genus.epithet
            for name in self.by_key.get((kind, "", word), [])
            if name.genus and name.genus.epithet.startswith(reading.initial)
        }
        return genera.pop() if len(genera) == 1 else ""


def as_written(epithet: str) -> str:
    """Letters and digits as they stand, whatever the capitals, quotes and spaces."""
    straight = epithet.translate({ord(sign): "'" for sign in "‘’`´"})
    return " ".join(straight.casefold().split()).strip("'\"")


def kind_of(name: Name) -> str:
    if name.rank in SPECIES_RANKS:
        return "species"
    if name.rank in INFRASPECIFIC_RANKS:
        return "infra"
    return {Rank.NOTHOGENUS: "genus"}.get(Rank(name.rank), str(name.rank))


def take_qualifier(text: str) -> tuple[str, str]:
    """('cf.' | 'aff.' | '?' | '', the label without it)."""
    found = QUALIFIERS.search(text)
    if not found or not text.strip(" ?"):
        return "", text
    qualifier = "?" if found[2] else f"{found[1].lower()}."
    return qualifier, " ".join((text[: found.start()] + " " + text[found.end() :]).split())


@transaction.atomic
def name_for_label(
    text: str, *, by: User | None, known: KnownNames | None = None, genus: str = ""
) -> tuple[Name | None, str]:
    """The name a label means, added *not yet checked* where it is new, and the label's doubt ('cf.' …).

    None where the label says nothing. A hybrid formula becomes a formula of its two names.
    """
    known = known or KnownNames.load()
    matched = known.match(text, genus=genus)
    if matched.says_nothing:
        return None, ""
    named = formula_for_label(text, by=by, known=known, genus=genus) or matched.name
    return named or add_read_name(matched.reading, by=by, known=known), matched.qualifier


def formula_for_label(text: str, *, by: User | None, known: KnownNames, genus: str = "") -> Name | None:
    """The formula “A × B”, if both sides are species or cultivars on record; else None."""
    _, bare = take_qualifier(text)
    sides = HYBRID_SIGN.split(bare)
    if len(sides) != 2 or not all(side.strip() for side in sides):
        return None
    first = known.match(sides[0], genus=genus).name
    second = known.match(sides[1], genus=first.genus.epithet if first and first.genus else genus).name
    if first is None or second is None or first.genus is None:
        return None
    first, second = sorted(
        (first.accepted or first, second.accepted or second), key=lambda name: (name.sort_text, name.pk)
    )
    found = (
        Name.objects.standing().filter(rank=Rank.FORMULA, first_parent=first, second_parent=second).first()
    )
    if found is None and first != second:
        found = add_name(rank=Rank.FORMULA, first_parent=first, second_parent=second, by=by)
        known.add(found)
    return found


def add_read_name(reading: NameReading, *, by: User | None, known: KnownNames) -> Name | None:
    """A new name as the label has it, not yet checked: a cultivar, or a species the society has not met."""
    genus = genus_named(reading.genus or known.genus_of_initial(reading) or NOT_PLACED, by=by)
    if not reading.epithet and not reading.species:
        return genus if reading.genus else None
    parent = genus
    if reading.species:
        parent = known.one(
            "species", genus.epithet, fold(reading.species, vocabulary=known.vocabulary)
        ) or add_name(rank=Rank.SPECIES, epithet=reading.species[:120], parent=genus, by=by, checked=False)
        known.add(parent)
    if not reading.epithet:
        return parent
    epithet = reading.epithet[:120]
    found = Name.objects.standing().filter(rank=Rank.CULTIVAR, parent=parent, epithet__iexact=epithet).first()
    made = found or add_name(rank=Rank.CULTIVAR, epithet=epithet, parent=parent, by=by, checked=False)
    known.add(made)
    return made
