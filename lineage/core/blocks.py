"""Parentage classes in blocks: one level, one kind, one number of parents, so that a block is a rectangle."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import numpy.typing as npt

from lineage.core.parentage import CROSS, MIXED, SELF, Parentages
from lineage.core.rounding_columns import mean_down, mean_up

Ints = npt.NDArray[np.int64]
Floats = npt.NDArray[np.float64]


@dataclass(slots=True)
class Block:
    """Classes raised from spores that can be computed in one go.

    ``members`` (g) are the classes; ``parents`` (g × c) the ortet rows of their parents, -1 for a plant not
    known; ``above`` (g × c) the classes of those.
    """

    level: int
    kind: int
    members: Ints
    parents: Ints
    above: Ints


def blocks_of(parentages: Parentages, level: Ints, classes: Ints) -> list[Block]:
    """Return the blocks of those of the classes that have parents, by ascending level."""
    return list(_blocks(parentages, level, classes[parentages.count[classes] > 0]))


def _blocks(parentages: Parentages, level: Ints, classes: Ints) -> Iterator[Block]:
    count, kind = parentages.count[classes], parentages.kind[classes]
    order = np.lexsort((count, kind, level[classes]))
    classes, count, kind = classes[order], count[order], kind[order]
    levels = level[classes]
    new = np.ones(len(classes) + 1, dtype=np.bool_)
    new[1:-1] = (np.diff(levels) != 0) | (np.diff(kind) != 0) | (np.diff(count) != 0)
    bounds = np.flatnonzero(new).tolist() if len(classes) else []
    for first, last in pairwise(bounds):
        members = classes[first:last]
        places = parentages.begin[members][:, None] + np.arange(count[first])
        parents = parentages.parents[places]
        above = parentages.classes(parents)
        yield Block(int(levels[first]), int(kind[first]), members, parents, above)


def inherit(kind: int, low: Floats, high: Floats) -> tuple[Floats, Floats]:
    """Return `lineage.core.bounds.combine` along axis 1 of the candidates' lower and upper ends."""
    if kind == SELF:
        return low[:, 0], high[:, 0]
    if kind == MIXED:
        return low.min(axis=1), high.max(axis=1)
    if kind != CROSS:
        low = np.partition(low, 1, axis=1)[:, :2]
        high = np.partition(high, -2, axis=1)[:, -2:]
    return mean_down(low[:, 0], low[:, 1]), mean_up(high[:, 0], high[:, 1])
