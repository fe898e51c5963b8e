"""What a name says of where a plant comes from.

A species, or a strain that comes true from spores, is no plant: whoever mentions it gets a plant of its
own, where a line starts. Only a cultivar kept by division is one plant.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from lineage.models import Origin
from lineage.services.definitions import NOT_KNOWN, Definition, Key
from lineage.services.records import ClaimRecord, Mentioned, NameRecord, Records
from specimens.models import INFRASPECIFIC_RANKS, Rank, Reproduction

CLAIM_ORIGINS = {
    "cross": Origin.CROSS,
    "self": Origin.SELF,
    "mixed": Origin.MIXED,
    "sport": Origin.DIVISION,
    "piece": Origin.DIVISION,
    "apogamous": Origin.APOGAMOUS,
    "unknown": Origin.UNKNOWN,
}
_UNDER_ANOTHER = (*INFRASPECIFIC_RANKS, Rank.GROUP, Rank.CULTIVAR)


@dataclass(frozen=True, slots=True)
class Meaning:
    """What a name stands for: one clone, one species, a hybrid of two names (None: not said), or nothing."""

    clone: int | None = None
    species: int | None = None
    hybrid_of: tuple[int | None, int | None] | None = None


NOTHING = Meaning()


def meaning_of(name: int | None, names: Mapping[int, NameRecord], *, as_taxon: bool = False) -> Meaning:
    """What a name stands for today; `as_taxon` passes over that a cultivar is a clone."""
    at = names.get(name) if name is not None else None
    seen: set[int] = set()
    while at is not None and at.id not in seen:
        seen.add(at.id)
        if at.accepted not in (None, at.id) and at.accepted not in seen:
            at = names.get(at.accepted)
            continue
        if is_clonal(at) and not as_taxon:
            return Meaning(clone=at.id)
        if at.first_parent or at.second_parent or at.rank == Rank.NOTHOSPECIES:
            return Meaning(hybrid_of=(at.first_parent, at.second_parent))
        if at.rank == Rank.SPECIES:
            return Meaning(species=at.id)
        at = names.get(at.parent) if at.rank in _UNDER_ANOTHER and at.parent is not None else None
    return NOTHING


def is_clonal(name: NameRecord) -> bool:
    return name.rank == Rank.CULTIVAR and name.reproduction == Reproduction.DIVISION


class NameOrigins:
    """Definitions that rest on names; plants merely mentioned on the way are put into `mentions`."""

    def __init__(self, records: Records) -> None:
        self.names = records.names
        self.claims = records.name_claims
        self.mentions: dict[Key, Definition] = {}
        self.groups = _groups(records.names)

    def of_name(self, name: int | None, mention: str, *, as_taxon: bool = False) -> Definition:
        """The origin of a plant of which the name is all that is known."""
        meaning = meaning_of(name, self.names, as_taxon=as_taxon)
        if meaning.clone is not None:
            return Definition(Origin.DIVISION.value, (Key.name(meaning.clone),), by_name=True)
        if meaning.species is not None:
            return Definition(Origin.FOUNDER.value, species=meaning.species)
        if meaning.hybrid_of is not None:
            pair = tuple(self.founder(part, f"{mention}:{n}") for n, part in enumerate(meaning.hybrid_of, 1))
            return Definition(Origin.CROSS.value, pair)
        return NOT_KNOWN

    def founder(self, name: int | None, mention: str) -> Key:
        """The plant behind a mention of a name: the clone itself, or a plant of this mention's own."""
        meaning = meaning_of(name, self.names)
        if meaning.clone is not None:
            return Key.name(meaning.clone)
        key = Key.mention(mention)
        if key not in self.mentions:
            self.mentions[key] = NOT_KNOWN  # a name that is its own parent ends here
            self.mentions[key] = self.of_name(name, mention)
        return key

    def parent(self, mentioned: Mentioned) -> Key | None:
        """The parent that a record names; None where it is not known."""
        if mentioned.plant is not None:
            return Key.plant(mentioned.plant)
        return None if mentioned.name is None else self.founder(mentioned.name, mentioned.key)

    def of_claim(self, claim: ClaimRecord) -> Definition | None:
        """What a claim says; None where it says only that the plant is a piece of a plant not known."""
        origin = CLAIM_ORIGINS[claim.says]
        parents = tuple(self.parent(each) for each in claim.parents)
        if origin in (Origin.DIVISION, Origin.APOGAMOUS) and parents[0] is None:
            return None
        excluded = origin == Origin.MIXED and claim.selfs_excluded
        if excluded and len(parents) == 1:
            # A hybrid with one known parent: the other is a plant not known.
            origin, parents, excluded = Origin.CROSS, (*parents, None), False
        return Definition(
            origin.value,
            () if origin == Origin.UNKNOWN else parents,
            selfing=claim.selfing if origin == Origin.SELF else "",
            selfs_excluded=excluded,
            sport=claim.says == "sport",
        )

    def of_cultivar(self, name: NameRecord) -> Definition:
        """The node of a cultivar kept by division: its original plant, its claim, its species, or nothing."""
        original = self.original_of(name)
        if original is not None:
            return Definition(Origin.DIVISION.value, (Key.plant(original),))
        return self.before_the_original(name)

    def original_of(self, name: NameRecord) -> int | None:
        """The original plant of a cultivar, recorded under its accepted name or under a synonym."""
        plants = (member.original_plant for member in self.groups.get(name.id, ()))
        return next((plant for plant in plants if plant is not None), None)

    def before_the_original(self, name: NameRecord) -> Definition:
        """Where the first plant of a cultivar came from, as far as its names tell."""
        claims = (self.claims.get(member.id) for member in self.groups.get(name.id, ()))
        claimed = (self.of_claim(claim) for claim in claims if claim is not None)
        said = next((one for one in claimed if one is not None), None)
        return said or self.of_name(name.id, f"name:{name.id}", as_taxon=True)


def _groups(names: Mapping[int, NameRecord]) -> dict[int, list[NameRecord]]:
    """For each accepted name itself and then its synonyms, the earliest record first."""
    groups: dict[int, list[NameRecord]] = {}
    for name in sorted(names.values(), key=lambda name: (name.accepted not in (None, name.id), name.id)):
        groups.setdefault(name.accepted or name.id, []).append(name)
    return groups


def presumed(definition: Definition) -> Definition:
    """The same, resting on the name alone."""
    return replace(definition, by_name=True)
