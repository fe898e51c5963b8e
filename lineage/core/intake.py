"""A pedigree given as numpy columns: checked, and turned into rows."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

import numpy as np
import numpy.typing as npt

from lineage.core.ids import NumberedIds
from lineage.core.nodes import ORIGINS, PedigreeError, check_candidates, check_parent_count, read_composition
from lineage.core.rows import CROSS, FOUNDER, MIXED, SELF, UNKNOWN, Bools, Codes, Ints, Mixture, Rows

Column = npt.NDArray[Any]


def rows_from_columns(
    *,
    id: Column,
    origin: Column,
    parent_start: Column,
    parents: Column,
    species: Column,
    selfing: Column,
    selfs_excluded: Column | None = None,
    sport: Column | None = None,
    by_name: Column | None = None,
    mix_start: Column | None = None,
    mix_species: Column | None = None,
    mix_share: Column | None = None,
) -> Rows:
    """Return the columns as rows; see `lineage.core.Pedigree.from_columns` for what they hold."""
    ids, start = _numbers("id", id), _numbers("parent_start", parent_start)
    if not len(ids):
        raise PedigreeError("A pedigree has at least one node.")
    numbered = NumberedIds(ids)
    origins = _codes("origin", origin, len(ids), len(ORIGINS))
    _check_counts(ids, origins, start, len(parents))
    parent_ids = _numbers("parents", parents)
    excluded = _flags("selfs_excluded", selfs_excluded, len(ids))
    _check_candidates(ids, (origins == MIXED) & excluded, start, parent_ids)
    mixture, mixtures = _mixtures(
        ids, origins, _numbers("species", species), mix_start, mix_species, mix_share
    )
    return Rows(
        ids=numbered,
        origin=origins,
        start=start,
        parents=_parent_rows(numbered, ids, start, parent_ids),
        selfing=_codes("selfing", selfing, len(ids), 3),
        selfs_excluded=excluded,
        sport=_flags("sport", sport, len(ids)),
        by_name=_flags("by_name", by_name, len(ids)),
        mixture=mixture,
        mixtures=mixtures,
    )


def _numbers(name: str, column: Column) -> Ints:
    found = np.asarray(column)
    if found.ndim != 1 or not (np.can_cast(found.dtype, np.int64) or not len(found)):
        raise PedigreeError(f"Column {name}: integers of 64 bits at most.")
    return found.astype(np.int64, copy=False)


def _codes(name: str, column: Column, rows: int, codes: int) -> Codes:
    found = np.asarray(column)
    if len(found) != rows or found.min() < 0 or found.max() >= codes:
        raise PedigreeError(f"Column {name}: one code below {codes} a row.")
    return found.astype(np.uint8)


def _flags(name: str, column: Column | None, rows: int) -> Bools:
    if column is None:
        return np.zeros(rows, dtype=np.bool_)
    if len(column) != rows:
        raise PedigreeError(f"Column {name}: one value a row.")
    return np.asarray(column).astype(np.bool_)


def _check_counts(ids: Ints, origin: Codes, start: Ints, parents: int) -> None:
    count = np.diff(start)
    if len(start) != len(ids) + 1 or start[0] != 0 or start[-1] != parents or count.min() < 0:
        raise PedigreeError("Column parent_start: n + 1 places that ascend from 0 to the number of parents.")
    wanted = np.ones(len(ids), dtype=np.int64)
    wanted[(origin == FOUNDER) | (origin == UNKNOWN)] = 0
    wanted[origin == CROSS] = 2
    for row in np.flatnonzero((count != wanted) & ~((origin == MIXED) & (count > 0))).tolist():
        check_parent_count(int(ids[row]), ORIGINS[origin[row]], int(count[row]))


def _check_candidates(ids: Ints, excluded: Bools, start: Ints, parents: Ints) -> None:
    for row in np.flatnonzero(excluded & (np.diff(start) == 1)).tolist():
        check_candidates(
            int(ids[row]), "mixed", parents[start[row] : start[row + 1]].tolist(), True, nobody=-1
        )


def _parent_rows(numbered: NumberedIds, ids: Ints, start: Ints, parents: Ints) -> Ints:
    rows = numbered.rows_of(parents)
    absent = np.flatnonzero((rows < 0) & (parents != -1))
    if len(absent):
        child = int(ids[np.searchsorted(start, absent[0], side="right") - 1])
        parent = int(parents[absent[0]])
        raise PedigreeError(f"{child!r}: its parent {parent!r} is missing.", (child, parent))
    return rows


def _mixtures(
    ids: Ints,
    origin: Codes,
    species: Ints,
    mix_start: Column | None,
    mix_species: Column | None,
    mix_share: Column | None,
) -> tuple[Ints, list[Mixture]]:
    founder = origin == FOUNDER
    if len(species) != len(ids) or np.any((species >= 0) & ~founder):
        raise PedigreeError("Column species: one code a row, -1 for all but founders.")
    named = np.flatnonzero(species >= 0)
    codes, place = np.unique(species[named], return_inverse=True)
    mixtures: list[Mixture] = [{None: 1.0}, *({code: 1.0} for code in codes.tolist())]
    mixture = np.where((origin >= SELF) & (origin <= MIXED), -1, 0)
    mixture[named] = place + 1
    places: dict[frozenset[tuple[int | None, Fraction]], int] = {}
    for row, shares in _mixed_founders(len(ids), mix_start, mix_species, mix_share):
        if not founder[row] or species[row] >= 0:
            raise PedigreeError(
                "Columns mix: only a founder without a species is a mixture.", (int(ids[row]),)
            )
        key = frozenset(shares.items())
        if key not in places:
            places[key] = len(mixtures)
            mixtures.append(read_composition(int(ids[row]), dict(shares.items())))
        mixture[row] = places[key]
    return mixture, mixtures


def _mixed_founders(
    rows: int, start: Column | None, species: Column | None, share: Column | None
) -> Iterator[tuple[int, dict[int | None, Fraction]]]:
    if start is None and species is None and share is None:
        return
    if start is None or species is None or share is None or len(start) != rows + 1:
        raise PedigreeError("Columns mix_start, mix_species and mix_share come together, n + 1 starts.")
    if not start[-1] == len(species) == len(share):
        raise PedigreeError("Columns mix_species and mix_share: as many as the last of mix_start.")
    for row in np.flatnonzero(np.diff(start)).tolist():
        shares: dict[int | None, Fraction] = {}
        for place in range(int(start[row]), int(start[row + 1])):
            name = int(species[place]) if species[place] >= 0 else None
            shares[name] = shares.get(name, Fraction(0)) + Fraction(float(share[place]))
        yield row, shares
