"""Parentage classes: all ortets that share parents, kind and mode share every computed fact."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from lineage.core.clones import Clones
from lineage.core.nodes import ORIGINS
from lineage.core.rows import Rows

Ints = npt.NDArray[np.int64]
Bools = npt.NDArray[np.bool_]

# The kinds of parentage left once parents are genets. NOBODY is class 0 alone: a parent not known.
NOBODY, FOUNDER, SELF, CROSS, MIXED, MIXED_CROSS = range(6)

_SELF = ORIGINS.index("self")
_CROSS = ORIGINS.index("cross")
_MIXED = ORIGINS.index("mixed")


@dataclass(slots=True)
class Parentages:
    """The distinct parentages of a pedigree, as columns: one row a class, class 0 is nobody.

    ``parents[begin[k]:begin[k] + count[k]]`` are the ortet rows of class k in ascending order, -1 for a plant
    not known. ``mixture`` is a founder's place in ``Rows.mixtures``, else -1. ``class_of`` has a class for
    each ortet row and -1 for other rows. ``contradictory`` are the rows whose exclusion of selfs was dropped.
    """

    kind: Ints
    mode: Ints
    mixture: Ints
    begin: Ints
    count: Ints
    parents: Ints
    class_of: Ints
    contradictory: Ints

    def parents_of(self, k: int) -> list[int]:
        """Return the parents of a class."""
        begin = self.begin[k]
        found: list[int] = self.parents[begin : begin + self.count[k]].tolist()
        return found

    def classes(self, rows: Ints) -> Ints:
        """Return the classes of ortet rows, class 0 for -1."""
        found: Ints = np.where(rows >= 0, self.class_of[rows], 0)
        return found


def read_parentages(rows: Rows, clones: Clones) -> Parentages:
    """Normalise the parents of every ortet and number the distinct parentages.

    A cross within one genet is a self; an unsettled plant of one genet is a self, selfs excluded or not; of
    two with selfs excluded a cross.
    """
    ortets = np.flatnonzero(clones.root == np.arange(len(rows.origin)))
    origin = rows.origin[ortets]
    spores = (origin >= _SELF) & (origin <= _MIXED)
    sown = ortets[spores]
    parents, count = _distinct_genets(rows, clones, sown)
    kind, mode, contradictory = _kinds(rows, sown, parents, count)
    first, class_of_sown = _group(kind * 4 + mode, parents, count, len(rows.origin))
    class_of = np.full(len(rows.origin), -1, dtype=np.int64)
    founders = len(rows.mixtures)
    class_of[ortets[~spores]] = rows.mixture[ortets[~spores]] + 1
    class_of[sown] = class_of_sown + founders + 1
    ends = np.cumsum(count)
    kept = spans(ends[first] - count[first], count[first])
    counts = np.concatenate([np.zeros(founders + 1, dtype=np.int64), count[first]])
    return Parentages(
        kind=np.concatenate([[NOBODY], np.full(founders, FOUNDER), kind[first]]).astype(np.int64),
        mode=np.concatenate([np.zeros(founders + 1, dtype=np.int64), mode[first]]),
        mixture=np.concatenate([[-1], np.arange(founders), np.full(len(first), -1)]).astype(np.int64),
        begin=np.cumsum(counts) - counts,
        count=counts,
        parents=parents[kept],
        class_of=class_of,
        contradictory=sown[contradictory],
    )


def spans(starts: Ints, lengths: Ints) -> Ints:
    """Return the places of all spans one after another."""
    before = np.cumsum(lengths) - lengths
    places: Ints = np.arange(int(lengths.sum())) + np.repeat(starts - before, lengths)
    return places


def _distinct_genets(rows: Rows, clones: Clones, sown: Ints) -> tuple[Ints, Ints]:
    """Return the parent genets of all, ascending within each, and how many each has."""
    starts = rows.start[sown]
    lengths = rows.start[sown + 1] - starts
    raw = rows.parents[spans(starts, lengths)]
    genet = np.where(raw >= 0, clones.root[raw], -1)
    width = len(rows.origin) + 1
    key = np.sort(np.repeat(np.arange(len(sown)), lengths) * width + genet + 1)
    owner, genet = np.divmod(key, width)
    genet -= 1
    fresh = np.ones(len(key), dtype=np.bool_)
    fresh[1:] = (key[1:] != key[:-1]) | (genet[1:] < 0)
    owner, genet = owner[fresh], genet[fresh]
    return genet, np.bincount(owner, minlength=len(sown))


def _kinds(rows: Rows, sown: Ints, parents: Ints, count: Ints) -> tuple[Ints, Ints, Bools]:
    origin = rows.origin[sown]
    excluded = rows.selfs_excluded[sown] & (origin == _MIXED)
    single = count == 1
    known = parents[np.cumsum(count) - count] >= 0 if len(sown) else single
    kind = np.where(excluded, MIXED_CROSS, MIXED)
    kind[(count == 2) & excluded | (origin == _CROSS)] = CROSS
    kind[single & (known | (origin != _MIXED))] = SELF
    mode = np.where(origin == _SELF, rows.selfing[sown], 0).astype(np.int64)
    return kind, mode, single & known & excluded


def _group(state: Ints, parents: Ints, count: Ints, width: int) -> tuple[Ints, Ints]:
    """Number the distinct (state, parents); return where each is first met, and each owner's number.

    Walks all owners through one tree of prefixes, a parent a step, so its cost is a sort for each place
    in the longest list, of the owners that have a parent there.
    """
    base = np.cumsum(count) - count
    state = state + 32 * count
    going = np.arange(len(count))
    offset = int(state.max(initial=0)) + 1
    for place in range(int(count.max(initial=0))):
        going = going[count[going] > place]
        key = state[going] * (width + 1) + parents[base[going] + place] + 1
        found, number = np.unique(key, return_inverse=True)
        state[going] = number + offset
        offset += len(found)
    _, first, inverse = np.unique(state, return_index=True, return_inverse=True)
    return first, inverse


def normal_parentage(
    *, origin: int, selfing: int, selfs_excluded: bool, genets: Sequence[int]
) -> tuple[int, int, tuple[int, ...], bool]:
    """Normalise one plant as `read_parentages` does all.

    Returns kind, mode, parents in ascending order, and whether its exclusion of selfs was dropped.
    """
    known = {genet for genet in genets if genet >= 0}
    parents = (*(-1 for genet in genets if genet < 0), *sorted(known))
    if origin == _SELF:
        return SELF, selfing, parents, False
    excluded = selfs_excluded and origin == _MIXED
    if len(parents) == 1 and (known or origin == _CROSS):
        return SELF, 0, parents, excluded
    if origin == _CROSS or (excluded and len(parents) == 2):
        return CROSS, 0, parents, False
    return (MIXED_CROSS if excluded else MIXED), 0, parents, False
