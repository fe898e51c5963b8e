"""Nodes as they are derived from the records, before anything is computed from them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from lineage.models import Origin


class Key(NamedTuple):
    """Which node: a plant or a cultivar name by its id, or a mention by its text."""

    kind: str
    ref: int | str

    @classmethod
    def plant(cls, pk: int) -> Key:
        return cls("plant", pk)

    @classmethod
    def name(cls, pk: int) -> Key:
        return cls("name", pk)

    @classmethod
    def mention(cls, text: str) -> Key:
        return cls("mention", text)


@dataclass(frozen=True, slots=True)
class Definition:
    """Where a node comes from. `species` (a name's id) is a founder's; a parent None is a plant not known.

    `by_name`: the origin rests on the name the plant bears; `as_sown`: nobody has checked what came up.
    """

    origin: str
    parents: tuple[Key | None, ...] = ()
    species: int | None = None
    selfing: str = ""
    selfs_excluded: bool = False
    sport: bool = False
    by_name: bool = False
    as_sown: bool = False


NOT_KNOWN = Definition(Origin.UNKNOWN.value)
