"""From a row of the table of names to the parts that its formatting is made of."""

from __future__ import annotations

from dataclasses import replace

from specimens.models import INFRASPECIFIC_RANKS, Name, Rank
from specimens.naming.names import NameParts

RANK_WORDS = {Rank.SUBSPECIES: "subsp.", Rank.VARIETY: "var.", Rank.FORMA: "f."}


def parts_of(name: Name) -> NameParts:
    """The parts of a name, from the genus down. Raises ValueError where a name stands under itself."""
    chain: list[Name] = []
    above: Name | None = name
    while above is not None:
        if above in chain:
            raise ValueError("A name cannot stand under itself.")
        chain.append(above)
        above = above.parent
    parts = NameParts()
    for link in reversed(chain):
        parts = with_rank(parts, link)
    # An author belongs to the lowest name alone.
    return replace(
        parts,
        author=name.author,
        trade=name.trade_designation,
        group=name.group.epithet if name.group else parts.group,
    )


def with_rank(parts: NameParts, name: Name) -> NameParts:
    rank = Rank(name.rank)
    if rank in (Rank.GENUS, Rank.NOTHOGENUS):
        genus = "" if name.epithet.startswith("(") else name.epithet
        return replace(parts, genus=genus, genus_hybrid=rank == Rank.NOTHOGENUS)
    if rank in (Rank.SPECIES, Rank.NOTHOSPECIES):
        return replace(parts, species=name.epithet, species_hybrid=rank == Rank.NOTHOSPECIES)
    if rank == Rank.INFORMAL:
        return replace(parts, informal=name.epithet)
    if rank in INFRASPECIFIC_RANKS:
        return replace(parts, infra=(*parts.infra, (RANK_WORDS[rank], name.epithet)))
    if rank == Rank.GROUP:
        return replace(parts, group=name.epithet)
    if rank == Rank.CULTIVAR:
        return replace(parts, cultivar=name.epithet)
    return parts
