"""Links downward: which rows name a row as a parent."""

from __future__ import annotations

import numpy as np

from lineage.core.rows import Rows


class Children:
    """The rows below each row by its recorded links, dropped ones included; follows revised rows."""

    def __init__(self, rows: Rows) -> None:
        self._rows = rows
        size = len(rows.start) - 1
        owner = np.repeat(np.arange(size), np.diff(rows.start))
        known = rows.parents >= 0
        parents = rows.parents[known]
        self._child = owner[known][np.argsort(parents)]
        self._begin = np.concatenate([[0], np.cumsum(np.bincount(parents, minlength=size))])
        self._late: dict[int, set[int]] = {}
        for row in rows.late:
            self.note(row)

    def note(self, row: int) -> None:
        """Take notice of a row whose parents are revised."""
        for parent in self._rows.late[row]:
            if parent >= 0:
                self._late.setdefault(parent, set()).add(row)

    def of(self, row: int) -> list[int]:
        """Return the children of a row, each once."""
        late = self._rows.late
        found: list[int] = []
        if row < len(self._begin) - 1:
            found = self._child[self._begin[row] : self._begin[row + 1]].tolist()
        if late or self._late:
            found = [child for child in found if child not in late]
            found += [child for child in self._late.get(row, ()) if row in late[child]]
        return list(dict.fromkeys(found))
