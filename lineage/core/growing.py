"""Columns that can grow, and rows that can be revised."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import replace
from typing import TypeVar

import numpy as np
import numpy.typing as npt

from lineage.core.ids import Ids, NamedIds, NumberedIds, RevisedIds
from lineage.core.nodes import ORIGINS, SELFINGS, Id, Node
from lineage.core.parentage import spans
from lineage.core.rows import UNKNOWN, Ints, Rows, mixture_place

Scalar = TypeVar("Scalar", bound=np.generic)


def grown(column: npt.NDArray[Scalar], size: int, fill: int = 0) -> npt.NDArray[Scalar]:
    """Return the column, or one longer by an eighth and more if it has fewer places than ``size``."""
    if len(column) >= size:
        return column
    room = np.full((size // 8 + 64, *column.shape[1:]), fill, dtype=column.dtype)
    return np.concatenate([column, room])


def revisable(rows: Rows) -> Rows:
    """Return a copy of the rows with room for more, whose ids can come and go."""
    size = len(rows.origin) + 1
    ids = rows.ids.copy() if isinstance(rows.ids, RevisedIds) else RevisedIds(rows.ids, len(rows.ids))
    gone = np.zeros(len(rows.origin), dtype=np.bool_) if rows.gone is None else rows.gone.copy()
    return replace(
        rows,
        ids=ids,
        origin=grown(rows.origin.copy(), size),
        selfing=grown(rows.selfing.copy(), size),
        selfs_excluded=grown(rows.selfs_excluded.copy(), size),
        sport=grown(rows.sport.copy(), size),
        by_name=grown(rows.by_name.copy(), size),
        mixture=grown(rows.mixture.copy(), size),
        mixtures=list(rows.mixtures),
        late=dict(rows.late),
        gone=grown(gone, size, 1),
    )


def write_rows(
    rows: Rows, changes: Mapping[Id, Node], removed: Collection[Id]
) -> tuple[list[int], list[int]]:
    """Write checked nodes into revisable rows; return the rows removed and the rows written."""
    ids = rows.ids
    assert isinstance(ids, RevisedIds)  # noqa: S101  the rows are revisable
    gone = [_remove(rows, ids, id) for id in removed]
    places = {id: _place(rows, ids, id) for id in changes}
    for id, node in changes.items():
        row = places[id]
        rows.origin[row] = ORIGINS.index(node.origin)
        rows.selfing[row] = SELFINGS.index(node.selfing)
        rows.selfs_excluded[row] = node.selfs_excluded
        rows.sport[row], rows.by_name[row] = node.sport, node.by_name
        rows.mixture[row] = mixture_place(rows.mixtures, node)
        rows.late[row] = [-1 if parent is None else _row(ids, parent) for parent in node.parents]
    return gone, list(places.values())


def _row(ids: Ids, id: Id) -> int:
    row = ids.row_of(id)
    assert row is not None  # noqa: S101  nodes are checked before they are written
    return row


def _remove(rows: Rows, ids: RevisedIds, id: Id) -> int:
    row = _row(ids, id)
    ids.remove(id)
    assert rows.gone is not None  # noqa: S101  the rows are revisable
    rows.gone[row] = True
    rows.late[row] = []
    rows.origin[row], rows.mixture[row] = UNKNOWN, -1
    return row


def _place(rows: Rows, ids: RevisedIds, id: Id) -> int:
    row = ids.row_of(id)
    if row is None:
        row = ids.add(id)
        for name, fill in (("origin", 0), ("selfing", 0), ("mixture", 0), ("gone", 1)):
            setattr(rows, name, grown(getattr(rows, name), row + 1, fill))
        for name in ("selfs_excluded", "sport", "by_name"):
            setattr(rows, name, grown(getattr(rows, name), row + 1))
        assert rows.gone is not None  # noqa: S101  the rows are revisable
        rows.gone[row] = False
    return row


def compact(rows: Rows) -> tuple[Rows, Ints]:
    """Return the rows in use alone, renumbered, and their former numbers."""
    kept = rows.present()
    number = np.full(len(rows.origin), -1, dtype=np.int64)
    number[kept] = np.arange(len(kept))
    early = kept[kept < len(rows.start) - 1]
    count = np.zeros(len(rows.origin), dtype=np.int64)
    count[early] = rows.start[early + 1] - rows.start[early]
    late = [row for row in rows.late if number[row] >= 0]
    for row in late:
        count[row] = len(rows.late[row])
    start = np.concatenate([[0], np.cumsum(count[kept])]).astype(np.int64)
    parents = np.full(int(start[-1]), -1, dtype=np.int64)
    as_given = np.ones(len(rows.origin), dtype=np.bool_)
    as_given[late] = False
    early = early[as_given[early]]
    parents[spans(start[number[early]], count[early])] = rows.parents[spans(rows.start[early], count[early])]
    for row in late:
        parents[start[number[row]] : start[number[row] + 1]] = rows.late[row]
    fresh = Rows(
        ids=_fresh_ids(rows, kept),
        origin=rows.origin[kept],
        start=start,
        parents=np.where(parents >= 0, number[parents], -1),
        selfing=rows.selfing[kept],
        selfs_excluded=rows.selfs_excluded[kept],
        sport=rows.sport[kept],
        by_name=rows.by_name[kept],
        mixture=rows.mixture[kept],
        mixtures=rows.mixtures,
    )
    return fresh, kept


def _fresh_ids(rows: Rows, kept: Ints) -> Ids:
    column = rows.ids.column(kept)
    if column.dtype == np.int64 and not (column == -1).any():
        return NumberedIds(column)
    return NamedIds(column.tolist())
