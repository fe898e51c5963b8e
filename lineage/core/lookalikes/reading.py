"""A label taken apart: genus, species, Group, trade designation, epithet, numbers, and what is left."""

import re
from dataclasses import dataclass, field, replace

from .characters import small, tidy
from .endings import looks_latin
from .genera import Genera, genera_of
from .vocabulary import Vocabulary
from .words import Word, words_of

_RANKS = {"subsp": "subsp.", "ssp": "subsp.", "var": "var.", "f": "f.", "fo": "f.", "forma": "f."}
_DROPPED = {"cv", "cv.", "hort", "hort.", "cultivar"}
_MARKS_CULTIVAR = {"cv", "cv.", "cultivar"}
_QUALIFIERS = {"cf", "aff"}
_NOT_SPECIES = {*_RANKS, "cv", "hort", "cultivar", "ex", "sp", "spp", "the"}
_GROUP = re.compile(r"\(?\s*([^\W\d_][\w' -]*?)\s+(?:Group|Gp\.?|Grp\.?)(?:\s*\)|(?=\s|$|'))", re.IGNORECASE)
_QUOTED = re.compile(r"(?<!\w)'+(?=[^'\s])(.+)(?<=[^'\s])'+(?!\w)")
_QUOTED_FIRST = re.compile(r"(?<!\w)'+(?=[^'\s])(.+?)(?<=[^'\s])'+(?!\w)")
_SECOND_QUOTE = re.compile(r"[^\w']'\w.*\w'[^\w']|'\s.*\s'")
_SIGN = re.compile(r"[×✕]|(?<![\w.'])[xX](?=\s)")
_SPORES = re.compile(
    r"(?:^|\s)(?:ex(?!\s+hort)|spores? (?:of|from)|seedling of|sporeling of)\s+(?=')", re.IGNORECASE
)
_MARK = re.compile(r"\s*(?:®|™|\(R\)|\(TM\)|(?<=[A-Z])TM\b)")


@dataclass(frozen=True, slots=True)
class NameReading:
    """What one label says. Empty string or tuple: it does not say.

    ``genus`` is spelled out in its usual form where it is known; ``initial`` is a single letter that may stand
    for the genus or for a person. ``ranks`` holds (rank, epithet) below the species. ``epithet`` is the
    cultivar epithet without quotes; ``spores``: the label says "ex", raised from spores of it.
    ``rest``: what could not be placed, as written.
    """

    text: str
    genus: str = ""
    initial: str = ""
    species: str = ""
    ranks: tuple[tuple[str, str], ...] = ()
    hybrid: bool = False
    group: str = ""
    trade: str = ""
    epithet: str = ""
    quoted: bool = False
    numbers: tuple[int, ...] = ()
    spores: bool = False
    rest: str = ""
    misspelt_genus: str = field(default="")

    @property
    def name(self) -> str:
        """What is compared: the epithet, or else the lowest botanical word, or else what is left."""
        lowest = self.ranks[-1][1] if self.ranks else self.species
        return self.epithet or lowest or self.trade or self.group or self.genus or self.rest


def read_name(text: str, *, genus: str | None = None, vocabulary: Vocabulary | None = None) -> NameReading:
    """Take a label apart. Never raises; what cannot be placed is in ``rest``.

    ``genus``: the genus the caller knows the label to be of; a genus written on the label outranks it.

    >>> reading = read_name("P. bifurcatum 'Silver Tassel No. 2'", genus="Platycerium")
    >>> reading.genus, reading.species, reading.epithet, reading.numbers
    ('Platycerium', 'bifurcatum', 'Silver Tassel No. 2', (2,))
    """
    return read_with_words(text, genus, vocabulary or Vocabulary.default())[0]


def read_with_words(
    text: str, genus: str | None, vocabulary: Vocabulary
) -> tuple[NameReading, tuple[Word, ...]]:
    """The reading, and the words of its ``name``."""
    tidied = tidy(text)
    signless = _SIGN.sub(" ", tidied)
    group, plain = _take_group(" ".join(signless.split()))
    before, epithet, after = _split_quoted(plain)
    parts = _Parts(
        text=text,
        hybrid=signless != tidied,
        group=group,
        spores="'" in plain and _SPORES.search(plain) is not None,
    )
    genera = genera_of(vocabulary)
    _read_unquoted(before, parts, known_genus=genus or "", has_epithet=bool(epithet), genera=genera)
    if epithet:
        _read_after(after, parts, epithet=epithet)
    reading = NameReading(**parts.__dict__)
    words = words_of(reading.name, vocabulary)
    numbers = tuple(int(word.form) for word in words if word.kind == "number" and len(word.form) < 10)
    return (replace(reading, numbers=numbers) if numbers else reading), words


@dataclass
class _Parts:
    """A reading in the making."""

    text: str
    hybrid: bool
    group: str
    spores: bool
    genus: str = ""
    initial: str = ""
    misspelt_genus: str = ""
    species: str = ""
    ranks: tuple[tuple[str, str], ...] = ()
    trade: str = ""
    epithet: str = ""
    quoted: bool = False
    rest: str = ""


def _take_group(plain: str) -> tuple[str, str]:
    low = plain.lower()
    found = _GROUP.search(plain) if "gr" in low or "gp" in low else None
    if not found:
        return "", plain
    words = found[1].split()
    start = next((i for i, word in enumerate(words) if i == 0 or not word[:1].isupper()), 0)
    named = words[-1:] if not found[0].startswith("(") and len(words) > 1 else words[start:]
    kept = words[: len(words) - len(named)]
    left = " ".join([plain[: found.start()], *kept, plain[found.end() :]])
    return " ".join(named), " ".join(left.split())


def _split_quoted(plain: str) -> tuple[str, str, str]:
    """Words before, within and after the quotes; without quotes all of it stands before."""
    found = _QUOTED.search(plain) if "'" in plain else None
    if found and _SECOND_QUOTE.search(found[1]):
        found = _QUOTED_FIRST.search(plain)
    if not found:
        return plain, "", ""
    return plain[: found.start()].strip(), found[1].strip(), plain[found.end() :].strip()


def _read_unquoted(
    before: str, parts: _Parts, *, known_genus: str, has_epithet: bool, genera: Genera
) -> None:
    words = before.strip(" '").split()
    parts.genus = genera.find(known_genus) or known_genus.strip().capitalize()
    left = _take_genus(words, parts, has_epithet=has_epithet, genera=genera)
    spelt_out = len(left) < len(words) and not parts.initial
    left = [word for word in left if word.strip(".").lower() not in _QUALIFIERS]
    if parts.initial and not parts.genus and left:
        possible = genera.with_initial(parts.initial, small(left[0]))
        parts.genus = possible[0] if len(possible) == 1 else ""
    marked = has_epithet or any(word.lower() in _MARKS_CULTIVAR for word in left[1:])
    if _starts_with_species(left, parts.genus, has_epithet=marked, genera=genera, spelt_out=spelt_out):
        left = _take_species(left, parts)
    left = [word for word in left if word.lower() not in _DROPPED] or ([] if has_epithet else left)
    _place_rest(" ".join(left).strip(" ()[],;:"), parts, has_epithet=has_epithet)


def _place_rest(left: str, parts: _Parts, *, has_epithet: bool) -> None:
    if not has_epithet:
        parts.epithet = left
    elif _is_trade(left):
        parts.trade = _MARK.sub("", left)
    else:
        parts.rest = left


def _take_genus(words: list[str], parts: _Parts, *, has_epithet: bool, genera: Genera) -> list[str]:
    """Enter the genus the words begin with; the words after it."""
    if not words:
        return words
    first = words[0].strip(".,:;()[]")
    more_follows = len(words) > 1 or has_epithet
    if genera.find(first):
        parts.genus = genera.find(first)
    elif len(first) == 1 and first.isalpha() and more_follows:
        parts.initial = first.upper()
    elif more_follows and genera.find_misspelt(first):
        parts.genus, parts.misspelt_genus = genera.find_misspelt(first), first
    else:
        return words
    return words[1:]


def _starts_with_species(
    words: list[str], genus: str, *, has_epithet: bool, genera: Genera, spelt_out: bool
) -> bool:
    """Known species in any letters; else a small Latin-looking word where a species word can stand."""
    if not words:
        return False
    low = small(words[0])
    if low in genera.species.get(genus.lower(), ()):
        return has_epithet or len(words) > 1 or words[0].islower()
    possible = words[0].islower() and low.replace("-", "").isalpha() and low.rstrip(".") not in _NOT_SPECIES
    if has_epithet:
        return possible and len(low) > 2
    return possible and spelt_out and looks_latin(low.rpartition("-")[2])


def _take_species(words: list[str], parts: _Parts) -> list[str]:
    parts.species, words = small(words[0]), words[1:]
    while len(words) > 1 and small(words[0]).rstrip(".") in _RANKS and words[1][:1].islower():
        parts.ranks += ((_RANKS[small(words[0]).rstrip(".")], small(words[1])),)
        words = words[2:]
    return words


def _read_after(after: str, parts: _Parts, *, epithet: str) -> None:
    left = after.strip(" ()[],;:'")
    parts.epithet, parts.quoted = epithet, True
    if _is_trade(left):
        parts.trade = parts.trade or _MARK.sub("", left)
    else:
        parts.rest = " ".join(part for part in (parts.rest, left) if part)


def _is_trade(left: str) -> bool:
    return bool(left) and (bool(_MARK.search(left)) or (left.isupper() and len(left) > 3))
