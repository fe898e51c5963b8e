"""Compositions of parentage classes: kept sparse, computed on a table of classes by species."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import numpy.typing as npt

from lineage.core.blocks import Block, inherit
from lineage.core.nodes import Interval, Species

Ints = npt.NDArray[np.int64]
Floats = npt.NDArray[np.float64]
Composition = dict[Species | None, Interval]

# Table cells computed at a time: 17 bytes each.
_CELLS = 1 << 22


@dataclass(slots=True)
class Entries:
    """Species of classes, one entry each, sorted by class: class, place in ``names``, lower and upper end."""

    owner: Ints
    species: Ints
    low: Floats
    high: Floats
    names: Sequence[Species | None]

    def between(self, first: int, last: int) -> Composition:
        """Return entries that belong to one class."""
        cells = zip(self.low[first:last].tolist(), self.high[first:last].tolist(), strict=True)
        names = [self.names[place] for place in self.species[first:last].tolist()]
        return dict(zip(names, cells, strict=True))


class Compositions:
    """The composition of each class: computed in bulk, or put one by one (which comes first)."""

    def __init__(self) -> None:
        self._put: dict[int, Composition] = {}
        self._bulk: Entries | None = None

    def of(self, k: int) -> Composition:
        """Return the composition of a class, in a dictionary of its own."""
        held = self._put.get(k)
        return self.computed(k) if held is None else dict(held)

    def computed(self, k: int) -> Composition:
        """Return the composition of a class as computed in bulk, none if it is not among those."""
        if self._bulk is None:
            return {}
        first, last = np.searchsorted(self._bulk.owner, [k, k + 1]).tolist()
        return self._bulk.between(first, last)

    def held(self, k: int) -> Composition | None:
        """Return the composition put for a class, if any; it is never changed, only replaced."""
        return self._put.get(k)

    def put(self, k: int, composition: Composition) -> None:
        """Set the composition of a class."""
        self._put[k] = composition

    def put_entries(self, entries: Entries) -> None:
        """Set the composition of every class that has entries."""
        bounds = [0, *(np.flatnonzero(np.diff(entries.owner)) + 1).tolist(), len(entries.owner)]
        for first, last in pairwise(bounds):
            self._put[int(entries.owner[first])] = entries.between(first, last)

    def put_bulk(self, entries: Entries) -> None:
        """Set the compositions of all classes that are not put one by one."""
        self._bulk = entries


def sweep_compositions(compositions: Compositions, blocks: Sequence[Block], classes: int) -> Entries:
    """Return the compositions of the members of all blocks; those of their other parents are given.

    On the table a species that a founder does not name is given all that is not known of it, so every
    species is inherited the same way, and so is ``None``.
    """
    members = np.concatenate([block.members for block in blocks])
    above = np.unique(np.concatenate([block.above.ravel() for block in blocks]))
    given = np.setdiff1d(above, members)
    place = np.zeros(classes, dtype=np.int64)
    place[given] = np.arange(len(given))
    place[members] = np.arange(len(given), len(given) + len(members))
    top = _Given([compositions.of(k) for k in given.tolist()])
    parts = [
        _sweep_some(top, blocks, place, members, columns)
        for columns in _column_spans(len(top.names), len(given) + len(members))
    ]
    owner, species, low, high = (np.concatenate(part) for part in zip(*parts, strict=True))
    order = np.argsort(owner, kind="stable")
    return Entries(owner[order], species[order], low[order], high[order], top.names)


def _column_spans(species: int, rows: int) -> Iterator[range]:
    width = max(4, _CELLS // rows)
    for first in range(0, species, width):
        yield range(first, min(species, first + width))


class _Given:
    """Compositions that are given, as entries of a table; a species that is not named lies below ``rest``."""

    def __init__(self, compositions: Sequence[Composition]) -> None:
        self.names = list(dict.fromkeys(name for each in compositions for name in each))
        number = {name: place for place, name in enumerate(self.names)}
        self.unknown = number.get(None, -1)
        flat = [(r, number[s], *ends) for r, each in enumerate(compositions) for s, ends in each.items()]
        rows, species, low, high = zip(*flat, strict=True)
        self.rows, self.species = np.array(rows), np.array(species)
        self.low, self.high = np.array(low), np.array(high)
        self.rest = np.array([each[None][1] if None in each else 0.0 for each in compositions])

    def fill(self, columns: range, low: Floats, high: Floats, named: npt.NDArray[np.bool_]) -> None:
        """Write the given rows into the top of a table of these species."""
        high[: len(self.rest)] = self.rest[:, None]
        if self.unknown in columns:
            high[: len(self.rest), self.unknown - columns.start] = 0
        here = (self.species >= columns.start) & (self.species < columns.stop)
        at = self.rows[here], self.species[here] - columns.start
        low[at], high[at], named[at] = self.low[here], self.high[here], True


def _sweep_some(
    top: _Given, blocks: Sequence[Block], place: Ints, members: Ints, columns: range
) -> tuple[Ints, Ints, Floats, Floats]:
    shape = len(top.rest) + len(members), len(columns)
    low, high, named = np.zeros(shape), np.zeros(shape), np.zeros(shape, dtype=np.bool_)
    top.fill(columns, low, high, named)
    for block in blocks:
        into, above = place[block.members], place[block.above]
        low[into], high[into] = inherit(block.kind, low[above], high[above])
        named[into] = named[above].any(axis=1)
    row, species = np.nonzero(named[len(top.rest) :])
    at = row + len(top.rest), species
    return members[row], species + columns.start, low[at], high[at]
