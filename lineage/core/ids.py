"""Ids and the rows they stand in: a list with a dictionary, or a column of integers."""

from __future__ import annotations

from typing import Any, Protocol

import numpy as np
import numpy.typing as npt

from lineage.core.nodes import Id, PedigreeError

Ints = npt.NDArray[np.int64]

# Up to this many places a row, a table from number to row beats sorting and searching.
_TABLE_FACTOR = 8


class Ids(Protocol):
    """Ids in the order of rows."""

    def __len__(self) -> int: ...

    def id_of(self, row: int) -> Id:
        """Return the id of a row, a plain Python value."""

    def row_of(self, id: Id) -> int | None:
        """Return the row of an id, ``None`` if it is not here."""

    def column(self, rows: Ints) -> npt.NDArray[Any]:
        """Return the ids of many rows: int64 if all ids are integers, else objects."""


class NamedIds:
    """Any hashable ids."""

    def __init__(self, ids: list[Id]) -> None:
        """Raise `PedigreeError` for ``None`` and for an id given twice."""
        self._ids = ids
        self._rows = {id: row for row, id in enumerate(ids)}
        if None in self._rows:
            raise PedigreeError("None stands for a plant not known and cannot be an id.", (None,))
        if len(self._rows) < len(ids):
            twice = next(id for row, id in enumerate(ids) if self._rows[id] != row)
            raise PedigreeError(f"{twice!r} is given twice.", (twice,))

    def __len__(self) -> int:
        return len(self._ids)

    def id_of(self, row: int) -> Id:
        return self._ids[row]

    def row_of(self, id: Id) -> int | None:
        return self._rows.get(id)

    def column(self, rows: Ints) -> npt.NDArray[Any]:
        return as_column([self._ids[row] for row in rows.tolist()])


class NumberedIds:
    """A column of integers, sparse and in any order; -1 stands for a plant not known and is none."""

    def __init__(self, ids: Ints) -> None:
        """Raise `PedigreeError` for -1 and for an id given twice."""
        self._ids = ids
        self._low = int(ids.min())
        span = int(ids.max()) - self._low + 1
        self._table: Ints | None = None
        if span <= _TABLE_FACTOR * len(ids):
            self._table = np.full(span, -1, dtype=np.int64)
            self._table[ids - self._low] = np.arange(len(ids))
            twice = np.flatnonzero(self._table[ids - self._low] != np.arange(len(ids)))
        else:
            self._order = np.argsort(ids)
            self._sorted = ids[self._order]
            twice = self._order[np.flatnonzero(self._sorted[1:] == self._sorted[:-1])]
        if len(twice):
            id = self.id_of(int(twice[0]))
            raise PedigreeError(f"{id!r} is given twice.", (id,))
        if self.row_of(-1) is not None:
            raise PedigreeError("-1 stands for a plant not known and cannot be an id.", (-1,))

    def __len__(self) -> int:
        return len(self._ids)

    def id_of(self, row: int) -> Id:
        return int(self._ids[row])

    def row_of(self, id: Id) -> int | None:
        if not isinstance(id, (int, np.integer)) or not -(2**63) <= id < 2**63:
            return None
        if self._table is not None:
            place = int(id) - self._low
            row = int(self._table[place]) if 0 <= place < len(self._table) else -1
        else:
            row = int(self.rows_of(np.array([id], dtype=np.int64))[0])
        return row if row >= 0 else None

    def rows_of(self, ids: Ints) -> Ints:
        """Return the rows of many ids, -1 for one that is not here."""
        if self._table is not None:
            inside = (ids >= self._low) & (ids - self._low < len(self._table))
            return np.where(inside, self._table[np.where(inside, ids - self._low, 0)], -1)
        place = np.minimum(np.searchsorted(self._sorted, ids), len(self._sorted) - 1)
        return np.where(self._sorted[place] == ids, self._order[place], -1)

    def column(self, rows: Ints) -> npt.NDArray[Any]:
        return self._ids[rows]


class RevisedIds:
    """Ids with some gone and others added in later rows."""

    def __init__(self, first: Ids, rows: int) -> None:
        """Take over ``first``; added ids stand from row ``rows`` on."""
        self._first = first
        self._rows = rows
        self._added: list[Id] = []
        self._row_of_added: dict[Id, int] = {}
        self._gone: set[int] = set()

    def copy(self) -> RevisedIds:
        """Return the same ids, to be revised apart."""
        twin = RevisedIds(self._first, self._rows)
        twin._added = list(self._added)
        twin._row_of_added = dict(self._row_of_added)
        twin._gone = set(self._gone)
        return twin

    def __len__(self) -> int:
        return self._rows + len(self._added)

    def add(self, id: Id) -> int:
        """Add an id that is not here; return its row."""
        self._row_of_added[id] = len(self)
        self._added.append(id)
        return self._row_of_added[id]

    def remove(self, id: Id) -> None:
        """Remove an id that is here; its row is never used again."""
        row = self._row_of_added.pop(id, None)
        if row is None:
            row = self._first.row_of(id)
            assert row is not None  # noqa: S101  it is here
            self._gone.add(row)

    def id_of(self, row: int) -> Id:
        return self._first.id_of(row) if row < self._rows else self._added[row - self._rows]

    def row_of(self, id: Id) -> int | None:
        added = self._row_of_added.get(id)
        if added is not None:
            return added
        row = self._first.row_of(id)
        return None if row in self._gone else row

    def column(self, rows: Ints) -> npt.NDArray[Any]:
        early = rows < self._rows
        if early.all():
            return self._first.column(rows)
        return as_column([self.id_of(row) for row in rows.tolist()])


def as_column(ids: list[Id]) -> npt.NDArray[Any]:
    """Return ids as int64 if all are integers that fit, else as objects."""
    if all(type(id) is int and -(2**63) <= id < 2**63 for id in ids):
        return np.array(ids, dtype=np.int64)
    objects = np.empty(len(ids), dtype=object)
    objects[:] = ids
    return objects
