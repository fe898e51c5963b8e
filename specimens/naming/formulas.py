"""Hybrid formulas: the names of the parents with × between (ICN Art. H.2, Rec. H.2A.1)."""

from collections.abc import Iterator, Sequence
from typing import Literal

from specimens.naming.name_parts import NameParts
from specimens.naming.name_words import name_words, sort_key
from specimens.naming.runs import Run, Word, join_words, plain, roman

Order = Literal["alphabetical", "given"]


def formula_runs(
    parents: Sequence[NameParts],
    *,
    order: Order = "alphabetical",
    egg_parent: int | None = None,
    with_author: bool = False,
) -> tuple[Run, ...]:
    """The formula of a cross as runs of italic and upright text.

    Parents stand in alphabetical order, or in the given one if that order is the statement to be made. If it
    is known which of them bore the egg (`egg_parent`, its place in `parents`), it is marked ♀, and of two
    parents the other ♂. A genus said before is shortened to its initial unless another genus here begins with
    it. A parent without any parts is written "unknown" and stands last in alphabetical order. No parents give
    no runs. Raises `ValueError` if `egg_parent` is no place in `parents`.

    >>> plain(formula_runs([NameParts("Platycerium", species="ridleyi"),
    ...                     NameParts("Platycerium", species="andinum")]))
    'Platycerium andinum × P. ridleyi'
    """
    if egg_parent is not None and not 0 <= egg_parent < len(parents):
        raise ValueError(f"The egg parent is no. {egg_parent} of {len(parents)} parents.")
    places = list(range(len(parents)))
    if order == "alphabetical":
        places.sort(key=lambda place: (parents[place] == NameParts(), sort_key(parents[place]), place))
    return join_words(_formula_words(parents, places, egg_parent, with_author))


def plain_formula(
    parents: Sequence[NameParts],
    *,
    order: Order = "alphabetical",
    egg_parent: int | None = None,
    with_author: bool = False,
) -> str:
    """The formula as plain text, as `formula_runs` writes it."""
    return plain(formula_runs(parents, order=order, egg_parent=egg_parent, with_author=with_author))


def _formula_words(
    parents: Sequence[NameParts], places: list[int], egg_parent: int | None, with_author: bool
) -> Iterator[Word]:
    said: set[tuple[str, bool]] = set()
    genera = {(parent.genus, parent.genus_hybrid) for parent in parents if parent.genus}
    for position, place in enumerate(places):
        if position:
            yield roman("×")
        parent = parents[place]
        genus = (parent.genus, parent.genus_hybrid)
        alone = sum(each[0][0] == parent.genus[0] for each in genera) == 1 if parent.genus else False
        words = name_words(parent, short_genus=alone and genus in said, with_author=with_author, quotes=True)
        yield from words or [roman("unknown")]
        yield from _sex(place, egg_parent, len(parents))
        said.add(genus)


def _sex(place: int, egg_parent: int | None, how_many: int) -> Iterator[Word]:
    if place == egg_parent:
        yield roman("♀")
    elif egg_parent is not None and how_many == 2:
        yield roman("♂")
