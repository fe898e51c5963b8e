"""The words of a name in order, and how names are sorted."""

import re
import unicodedata
from collections.abc import Iterator

from specimens.naming.name_parts import NameParts
from specimens.naming.runs import Word, italic, roman


def name_words(parts: NameParts, *, short_genus: bool, with_author: bool, quotes: bool) -> list[Word]:
    """The words of the name in order, for `name_runs` and for formulas."""
    genus = list(_genus(parts, short=short_genus))
    species = [italic(parts.species, hybrid=parts.species_hybrid)] if parts.species else []
    infra = [word for rank, epithet in parts.infra for word in (roman(rank), italic(epithet)) if word[0].text]
    garden = list(_garden_words(parts, quotes=quotes))
    _doubt((genus, species, infra, garden), parts.qualifier)
    if with_author and parts.author:
        _autonym_or_last(parts, genus, species, infra).append(roman(parts.author))
    return genus + species + infra + garden


def sort_key(parts: NameParts) -> str:
    """A text that sorts names as an index does: × and accents ignored (ICN Art. H.3.3), numbers by size.

    A genus comes first, then what is named directly under it, then its species, each with what is under it.
    """
    infra = " ".join(epithet for _, epithet in parts.infra)
    levels = (parts.genus, parts.species, infra, parts.informal, parts.group, parts.cultivar, parts.trade)
    return "  ".join(_folded(level) for level in levels).rstrip()


def _genus(parts: NameParts, *, short: bool) -> Iterator[Word]:
    if parts.genus:
        yield italic(f"{parts.genus[0]}." if short else parts.genus, hybrid=parts.genus_hybrid)


def _garden_words(parts: NameParts, *, quotes: bool) -> Iterator[Word]:
    """What stands after the botanical name: form, Group, trade designation, cultivar epithet."""
    epithet = parts.cultivar.replace("'", "’")
    named = bool(epithet or parts.trade)
    if parts.informal:
        yield roman(parts.informal)
    if parts.group:
        group = f"{parts.group.removesuffix(' Group')} Group"
        yield roman(f"({group})" if named else group)
    if parts.raised_from and named:
        yield roman("ex")
    if parts.trade:
        yield roman(parts.trade.upper())
    if epithet:
        yield roman(f"‘{epithet}’" if quotes else epithet)


def _doubt(sections: tuple[list[Word], ...], qualifier: str) -> None:
    """Put cf. or aff. before the first epithet (or the name, if it has none), ? after the last."""
    filled = [section for section in sections if section]
    if not qualifier or not filled:
        return
    if qualifier == "?":
        filled[-1][-1] += roman("?")
    else:
        doubted = filled[1] if sections[0] and len(filled) > 1 else filled[0]
        doubted.insert(0, roman(qualifier))


def _autonym_or_last(
    parts: NameParts, genus: list[Word], species: list[Word], infra: list[Word]
) -> list[Word]:
    """The part of the name the author follows: never an epithet that repeats the species' (ICN Art. 22.1)."""
    if infra and parts.infra[-1][1] != parts.species:
        return infra
    return species or genus


def _folded(text: str) -> str:
    bare = unicodedata.normalize("NFKD", text.replace("×", " ")).casefold()
    letters = "".join(each if each.isalnum() else " " for each in bare if not unicodedata.combining(each))
    return re.sub(r"\d+", lambda number: number[0].zfill(6), " ".join(letters.split()))
