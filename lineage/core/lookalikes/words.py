"""One word of a name: what kind of word it is, and the form it is compared in."""

import re
from dataclasses import dataclass

from .characters import split_words
from .endings import looks_latin, stem
from .remembering import Remembered
from .slips import WordShapes
from .vocabulary import Meaning, Vocabulary

_REMEMBERED = 200_000
_ROMAN = re.compile(r"x{0,3}(?:ix|iv|v?i{0,3})")
_ROMAN_VALUES = {"i": 1, "v": 5, "x": 10}


@dataclass(frozen=True, slots=True)
class Word:
    """``text``: plain letters. ``form``: what is compared (number, stem, first word of its meaning).

    ``kind``: number · title · place · given · initial · filler · joining · latin · word.
    """

    text: str
    form: str
    kind: str
    meaning: Meaning | None = None
    dotted: bool = False
    possessive: bool = False


class Tables:
    """Look-ups made once for a vocabulary."""

    def __init__(self, vocabulary: Vocabulary) -> None:
        self.vocabulary = vocabulary
        self.numbers = dict(vocabulary.numbers)
        self.meanings: dict[str, Meaning] = {}
        for meaning in vocabulary.lexicon:
            for word in meaning.words:
                plain = "".join(split_words(word)).rstrip(".")
                self.meanings.setdefault(plain, meaning)
                if meaning.kind == "translation" and (looks_latin(plain) or word == meaning.words[0]):
                    self.meanings.setdefault(stem(plain), meaning)
        self.given = vocabulary.given_names | {
            word for meaning in vocabulary.lexicon if meaning.kind == "nickname" for word in meaning.words
        }
        self.latin_stems = frozenset(stem(word) for word in vocabulary.latin_words)
        self.opposites = frozenset(
            frozenset((self.form_of(left), self.form_of(right))) for left, right in vocabulary.opposites
        )
        self.whole_words = (
            self.given | vocabulary.plain_words | vocabulary.latin_words | frozenset(self.meanings)
        )
        self.shapes = WordShapes(word for word in sorted(self.whole_words) if len(word) > 2)
        self.words = Remembered[str, Word](_REMEMBERED)
        self.pairs = Remembered[tuple[Word, Word, bool], tuple[float, str]](_REMEMBERED)

    def knows(self, text: str) -> bool:
        """Is it a word of its own, in whatever gender or number?"""
        return (
            text in self.whole_words
            or stem(text) in self.latin_stems
            or text.removesuffix("s") in self.whole_words
        )

    def form_of(self, text: str) -> str:
        meaning = self.meaning_of(text)
        if meaning is not None:
            return stem(meaning.words[0]) if meaning.kind == "translation" else meaning.words[0]
        return text if text in self.given or text in self.vocabulary.plain_words else stem(text)

    def meaning_of(self, text: str) -> Meaning | None:
        found = self.meanings.get(text)
        if found is None and looks_latin(text) and text not in self.given:
            found = self.meanings.get(stem(text))
        return found


def tables(vocabulary: Vocabulary) -> Tables:
    found = vocabulary.memory.get("tables")
    if not isinstance(found, Tables):
        found = vocabulary.memory["tables"] = Tables(vocabulary)
    return found


def words_of(text: str, vocabulary: Vocabulary) -> tuple[Word, ...]:
    """The words of tidied text, in order; filler words are kept and told by their kind."""
    known = tables(vocabulary)
    parts = split_words(text)
    words = []
    for place, part in enumerate(parts):
        number = _number(part, first=place == 0, last=place == len(parts) - 1, known=known)
        words.append(Word(number, number, "number") if number else _word(part, known))
    return tuple(words)


def _number(part: str, *, first: bool, last: bool, known: Tables) -> str:
    bare = part.rstrip(".")
    if bare.isdecimal():
        return str(int(bare))
    if bare in known.numbers:
        return str(known.numbers[bare])
    is_roman = bool(bare) and not first and _ROMAN.fullmatch(bare) and (last or len(bare) > 1)
    return str(_roman_value(bare)) if is_roman and not part.endswith(".") else ""


def _roman_value(numeral: str) -> int:
    values = [_ROMAN_VALUES[letter] for letter in numeral]
    pairs = zip(values, [*values[1:], 0], strict=True)
    return sum(-value if value < following else value for value, following in pairs)


def _word(part: str, known: Tables) -> Word:
    return known.words.get_or_make(part, lambda missing: _make_word(missing, known))


def _make_word(part: str, known: Tables) -> Word:
    bare = part.rstrip(".")
    owned = bare.endswith(("'s", "s'"))
    text = (bare[:-2] if bare.endswith("'s") else bare[:-1] if owned else bare).replace("'", "") or bare
    meaning = known.meaning_of(text)
    kind = _kind(text, meaning, known)
    form = text if kind in ("initial", "filler", "joining") else known.form_of(text)
    return Word(text, form, kind, meaning, dotted=part.endswith("."), possessive=owned)


def _kind(text: str, meaning: Meaning | None, known: Tables) -> str:
    if len(text) == 1:
        return "initial"
    if text in known.vocabulary.filler:
        return "filler"
    if text in known.vocabulary.joining:
        return "joining"
    if meaning is not None and meaning.kind in ("title", "place"):
        return meaning.kind
    if text in known.vocabulary.plain_words:
        return "word"
    if text in known.given:
        return "given"
    return "latin" if looks_latin(text) or stem(text) in known.latin_stems else "word"
