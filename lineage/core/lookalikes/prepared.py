"""A name made ready to be compared, once, however often it is compared."""

from dataclasses import dataclass

from .characters import small, tidy
from .genera import genera_of
from .reading import NameReading, read_with_words
from .remembering import Remembered
from .vocabulary import Vocabulary
from .words import Word, words_of

_MOST_WORDS = 12
_REMEMBERED = 20_000


@dataclass(frozen=True, slots=True)
class Prepared:
    """``versions``: the words of the name, with and without a first letter that may stand for the genus."""

    reading: NameReading
    versions: tuple[tuple[Word, ...], ...]
    folded: str
    known_genus: str | None
    possible_genera: frozenset[str]
    standing: tuple[str, str]


def prepare(text: str, genus: str | None, vocabulary: Vocabulary) -> Prepared:
    """The name ready to be compared; kept for the next time."""
    memory = vocabulary.memory.get("prepared")
    if not isinstance(memory, Remembered):
        memory = vocabulary.memory["prepared"] = Remembered[tuple[str, str | None], Prepared](_REMEMBERED)
    found: Prepared = memory.get_or_make((text, genus), lambda key: _prepare(key[0], key[1], vocabulary))
    return found


def _prepare(text: str, genus: str | None, vocabulary: Vocabulary) -> Prepared:
    reading, words = read_with_words(text, genus, vocabulary)
    name, words = reading.name, _telling(words)
    versions = [words]
    if reading.initial and not reading.quoted:
        with_letter = _telling(words_of(f"{reading.initial}. {name}", vocabulary))
        stands_for_genus = not reading.genus or reading.genus[0].upper() == reading.initial
        versions = [words, with_letter] if stands_for_genus else [with_letter]
    standing = genera_of(vocabulary).standing(reading.genus, reading.species)
    return Prepared(
        reading=reading,
        versions=tuple(versions),
        known_genus=genus,
        folded=" ".join(word.form for word in versions[0]) or small(tidy(name)),
        possible_genera=_possible_genera(reading, standing[0], vocabulary),
        standing=standing,
    )


def _telling(words: tuple[Word, ...]) -> tuple[Word, ...]:
    """Without filler words, unless there is nothing else."""
    return (tuple(word for word in words if word.kind != "filler") or words)[:_MOST_WORDS]


def _possible_genera(reading: NameReading, standing: str, vocabulary: Vocabulary) -> frozenset[str]:
    if not reading.genus:
        return frozenset()
    elsewhere = genera_of(vocabulary).sometimes.get(standing, set()) if not reading.species else set()
    return frozenset({standing, *elsewhere})


def fold(text: str, *, genus: str | None = None, vocabulary: Vocabulary | None = None) -> str:
    """The form in which two ways of writing one name are equal. Never raises.

    Case, accents, quotes, hyphens, abbreviations, numerals, possessives, Latin endings and filler words are
    evened out, words of the lexicon stand under their first word, genus and species are left off when a
    cultivar name follows them.

    >>> fold("Platycerium 'Wavy Fan II'") == fold("undulatum fan no. 2")
    True
    """
    return prepare(text, genus, vocabulary or Vocabulary.default()).folded
