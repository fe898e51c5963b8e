"""Clones: which plants are one genet, how many divisions lie between, which line since the last sport."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from lineage.core.rows import APOGAMOUS, DIVISION, Rows

Ints = npt.NDArray[np.int64]


@dataclass(slots=True)
class Clones:
    """For each row: the row of its ortet, clonal steps from it, the row its clone line starts at."""

    root: Ints
    steps: Ints
    line: Ints


def follow_clones(rows: Rows, dropped: set[int]) -> Clones | None:
    """Follow clone links to their ends by pointer doubling; ``None`` if they run in a circle.

    Rows in ``dropped`` have lost their link. Cost O(n log d) for the longest chain d.
    """
    everyone = np.arange(len(rows.origin))
    clone = _linked_clones(rows, dropped)
    parent = everyone.copy()
    parent[clone] = rows.parents[rows.start[clone]]
    if np.any(parent[clone] == clone):
        return None
    steps = np.zeros(len(parent), dtype=np.int64)
    steps[clone] = ~rows.by_name[clone]
    root = _double(parent, steps)
    # Doubling comes to rest on a circle of 2^k links, so the end of every chain is checked to be one.
    if root is None or np.any(parent[root] != root):
        return None
    if not rows.sport.any():
        return Clones(root=root, steps=steps, line=root)
    line = _double(np.where(rows.sport, everyone, parent), None)
    assert line is not None  # noqa: S101  chains that end still end when cut
    return Clones(root=root, steps=steps, line=line)


def _linked_clones(rows: Rows, dropped: set[int]) -> Ints:
    """Return the rows that are a piece of a plant known."""
    clone = (rows.origin == DIVISION) | (rows.origin == APOGAMOUS)
    clone[list(dropped)] = False
    place = np.flatnonzero(clone)
    return place[rows.parents[rows.start[place]] >= 0]


def _double(parent: Ints, steps: Ints | None) -> Ints | None:
    root = parent.copy()
    for _ in range(len(parent).bit_length() + 1):
        further = root[root]
        if np.array_equal(further, root):
            return root
        if steps is not None:
            steps += steps[root]
        root = further
    return None
