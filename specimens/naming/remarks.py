"""Remarks on a cultivar epithet by the cultivated-plant code.

Source: International Code of Nomenclature for Cultivated Plants, 9th edition (2016). A rule that binds names from
a year on is left unsaid where that year is not known: most fern names are older than the rules.
"""

import re
import unicodedata
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from specimens.naming import epithet_words as lists

LONGEST_EPITHET = 30
_QUOTES = "'\"‘’“”‚„‛‟`´«»"


class Remark(NamedTuple):
    """One remark: a lasting key, plain words for the page, and the tidied epithet where one can be offered."""

    key: str
    words: str
    offer: str = ""


def remarks(
    epithet: str, *, year_named: int | None, genus: str = "", known: Iterable[str] = ()
) -> tuple[Remark, ...]:
    """What there is to remark on a cultivar epithet, the most easily mended first; nothing if all is well.

    `year_named` is the year the name was given, None if not known; `genus` the genus it belongs to; `known` the
    other epithets of that genus. Remarks are advice: none of them forbids keeping a name as it is.

    >>> remarks("silver tassel", year_named=None)[0].offer
    'Silver Tassel'
    """
    bare = tidy_epithet(epithet)
    words = re.findall(r"\w+(?:[’']\w+)*", bare.casefold())
    year = year_named or 0
    return (
        *_writing(epithet, bare),
        *_too_short(bare),
        *(_too_long(bare) if year >= 1996 else ()),
        *(_looks_latin(words) if year >= 1959 else ()),
        *_banned(words, year),
        *(_exaggerates(words) if year >= 1959 else ()),
        *_names_its_genus(words, genus),
        *_in_use(bare, known),
    )


def tidy_epithet(epithet: str) -> str:
    """The epithet without quotation marks around it, with single spaces and the usual capitals.

    Capitals inside a word and words wholly in capitals stay, unless the whole epithet shouts; conjunctions and
    prepositions after the first word, and what follows a hyphen, stay small or as they were written.
    """
    words = _capitalised(_without_quotes(epithet).split())
    main = "".join(word for word in words if word.casefold() not in lists.SMALL_WORDS)
    shouts = main.isupper() and sum(map(str.isalpha, main)) > 3
    return " ".join(_capitalised([word.lower() for word in words]) if shouts else words)


def _capitalised(words: list[str]) -> list[str]:
    return [_capital(word, first=not place) for place, word in enumerate(words)]


def _without_quotes(epithet: str) -> str:
    text = epithet.strip()
    while len(text) > 1 and text[0] in _QUOTES and text[-1] in _QUOTES:
        text = text[1:-1].strip()
    return text


def _capital(word: str, *, first: bool) -> str:
    plain = word.casefold()
    if not first and plain in lists.SMALL_WORDS:
        return word.lower()
    if not first and plain in lists.LEFT_AS_WRITTEN:
        return word
    return word[:1].upper() + word[1:]


def _writing(epithet: str, bare: str) -> Iterator[Remark]:
    written = " ".join(epithet.split())
    inside = " ".join(_without_quotes(epithet).split())
    if written != inside:
        yield Remark("quotes", "The quotation marks are set by us; the name is kept without them.", bare)
    if inside != bare:
        yield Remark("capitals", f"A cultivar name has a capital on each main word: {bare}.", bare)


def _too_short(bare: str) -> Iterator[Remark]:
    signs = [each for each in bare if each.isalnum()]
    if len(signs) == 1 and not signs[0].isdigit():
        yield Remark("one letter", "A single letter is not enough for a cultivar name.")
    elif signs and all(each.isdigit() for each in signs):
        yield Remark("numerals", "Numerals alone are not enough for a cultivar name.")


def _too_long(bare: str) -> Iterator[Remark]:
    length = sum(not each.isspace() and each not in _QUOTES for each in bare)
    if length > LONGEST_EPITHET:
        yield Remark(
            "length",
            f"This has {length} letters and signs; a name given since 1996 has at most {LONGEST_EPITHET}.",
        )


def _looks_latin(words: list[str]) -> Iterator[Remark]:
    if words and all(word in lists.LATIN_WORDS or lists.LATIN_ENDING.fullmatch(word) for word in words):
        yield Remark("latin", "This looks like Latin; a name given since 1959 is in a living language.")


def _banned(words: list[str], year: int) -> Iterator[Remark]:
    for since, banned in ((1959, lists.BANNED_SINCE_1959), (1996, lists.BANNED_SINCE_1996)):
        for word in dict.fromkeys(words):
            if year >= since and word in banned:
                yield Remark("banned word", f"A name given since {since} does not use the word “{word}”.")


def _exaggerates(words: list[str]) -> Iterator[Remark]:
    for word in dict.fromkeys(words):
        if word in lists.EXAGGERATIONS:
            yield Remark("exaggeration", f"A name given since 1959 does not praise its plant as “{word}”.")


def _names_its_genus(words: list[str], genus: str) -> Iterator[Remark]:
    plain = genus.casefold().lstrip("× ")
    common = {plain, *lists.COMMON_NAMES[""], *lists.COMMON_NAMES.get(plain, ())} - {""}
    for word in dict.fromkeys(words):
        if word in common:
            yield Remark(
                "genus", f"“{word.capitalize()}” in a cultivar name is easily taken for the plant’s kind."
            )


def _in_use(bare: str, known: Iterable[str]) -> Iterator[Remark]:
    for other in known:
        if bare and other != bare and _letters(other) == _letters(bare):
            yield Remark(
                "in use", f"There is ‘{other}’ in this genus already, which is hard to tell from this."
            )
        elif bare and other == bare:
            yield Remark("in use", f"There is a ‘{other}’ in this genus already.")


def _letters(text: str) -> str:
    bare = unicodedata.normalize("NFKD", text.casefold())
    return "".join(each for each in bare if each.isalnum())
