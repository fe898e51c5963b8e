"""What a plant's tag, belief and parent column say together; shared by plants and pieces."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from rapidfuzz import fuzz

from frondkeep.desk.importing.ledger import Ledger
from frondkeep.desk.importing.phrases import SPORT, TAG_OF_A_SOWING, is_raised_from, turned_doubt
from frondkeep.desk.importing.values import plain
from specimens.models import Identification, Name, Specimen
from specimens.services.reading import take_qualifier

if TYPE_CHECKING:
    from frondkeep.desk.importing.writing import Writing

SAYS_NOTHING = frozenset(
    {
        "no tag",
        "tag gone",
        "no label",
        "label lost",
        "tag lost",
        "none",
        "n n",
        "nn",
        "unknown",
        "not known",
        "?",
        "",
    }
)
ON_ITS_TAG = 80
Ground = Identification.Ground


@dataclass(frozen=True, slots=True)
class Thought:
    """What a plant is thought to be, in words that name it; empty words leave it unnamed or with its parent's name."""

    words: str = ""
    genus: str = ""
    ground: str = Ground.LABEL
    remarks: str = ""

    @property
    def is_ex(self) -> bool:
        return is_raised_from(self.words)


def names_nothing(words: str, ledger: Ledger) -> bool:
    """“tag gone”, “unknown”, or only the number of a sowing: “S7 no. 2”."""
    if plain(words) in SAYS_NOTHING:
        return True
    number = TAG_OF_A_SOWING.match(words.strip())
    return bool(number and known_number(plain(number["number"]), ledger))


def known_number(number: str, ledger: Ledger) -> bool:
    return any(
        (kind, number) in ledger.declared or ledger.on_record(kind, number) for kind in ("sowing", "plant")
    )


def read_thought(label: str, thought: str, ledger: Ledger) -> Thought:
    """The belief where one is written, else what the tag says."""
    if thought:
        if names_nothing(thought, ledger):
            return Thought()
        return Thought(turned_doubt(thought), ground=ground_of(label, thought, ledger))
    if names_nothing(label, ledger) or SPORT.match(label.strip()):
        return Thought()
    return Thought(turned_doubt(label))


def ground_of(label: str, thought: str, ledger: Ledger) -> str:
    """From its tag if the tag says the same, slips aside; else by its looks."""
    believed = ledger.match(turned_doubt(thought)).reading
    word = plain(believed.epithet or believed.species)
    same = bool(word) and fuzz.partial_ratio(word, plain(take_qualifier(label)[1])) >= ON_ITS_TAG
    return Ground.LABEL if same and len(plain(label)) > 2 else Ground.LOOKS


def known_name(thought: Thought, ledger: Ledger) -> Name | None:
    """The name on record or in the sheets that a thought surely means."""
    return ledger.match(thought.words, genus=thought.genus).name if thought.words else None


def inherited(parent: Specimen | None) -> tuple[Name | None, str, str]:
    """(name, doubt, ground) a piece has from its parent."""
    current = parent.identification if parent is not None else None
    if current is None:
        return None, "", Ground.LABEL
    return current.name, current.qualifier, current.ground


def named(writing: Writing, thought: Thought, parent: Specimen | None) -> tuple[Name | None, str, str]:
    """(name, doubt, ground): of the thought, else of the parent."""
    if not thought.words:
        return inherited(parent)
    name, qualifier = writing.name(thought.words, genus=thought.genus)
    return name, qualifier, thought.ground
