"""The parts a plant's name is made of."""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Any

QUALIFIERS = ("", "cf.", "aff.", "?")
_RANKS = {
    "subspecies": "subsp.",
    "ssp.": "subsp.",
    "ssp": "subsp.",
    "subsp": "subsp.",
    "variety": "var.",
    "varietas": "var.",
    "var": "var.",
    "forma": "f.",
    "form": "f.",
    "f": "f.",
    "fo.": "f.",
    "fma.": "f.",
    "subvar": "subvar.",
    "subf": "subf.",
}


@dataclass(frozen=True, slots=True)
class NameParts:
    """A name taken apart, without quotation marks, multiplication signs or the word Group.

    `infra` holds (rank, epithet) pairs from the highest rank down; ranks are written as botany abbreviates
    them, whatever was handed in. `qualifier` is '', 'cf.', 'aff.' or '?'. `raised_from` says the plant was
    raised from spores of the cultivar and does not by itself bear its name.
    """

    genus: str = ""
    genus_hybrid: bool = False
    species: str = ""
    species_hybrid: bool = False
    infra: tuple[tuple[str, str], ...] = ()
    informal: str = ""
    group: str = ""
    cultivar: str = ""
    trade: str = ""
    author: str = ""
    qualifier: str = ""
    raised_from: bool = False

    def __post_init__(self) -> None:
        if self.qualifier not in QUALIFIERS:
            raise ValueError(f"A qualifier is cf., aff. or ?, not {self.qualifier!r}.")
        ranked = tuple(
            (_RANKS.get(rank.strip().lower(), rank.strip()), epithet) for rank, epithet in self.infra
        )
        object.__setattr__(self, "infra", ranked)

    def to_json(self) -> dict[str, Any]:
        """The parts as a plain dict fit for JSON; parts at their defaults are left out."""
        given = {each.name: getattr(self, each.name) for each in fields(self)}
        kept = {name: value for name, value in given.items() if value}
        if self.infra:
            kept["infra"] = [list(pair) for pair in self.infra]
        return kept

    @classmethod
    def from_json(cls, data: Mapping[str, Any]) -> "NameParts":
        """The parts that `to_json` wrote. Raises `ValueError` for a part that does not exist."""
        strange = set(data) - {each.name for each in fields(cls)}
        if strange:
            raise ValueError(f"No part of a name: {', '.join(sorted(strange))}.")
        given = dict(data)
        if "infra" in given:
            given["infra"] = tuple((str(rank), str(epithet)) for rank, epithet in given["infra"])
        return cls(**given)
